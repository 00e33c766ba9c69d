package damping

// What tests ask errors for.
var (
	ErrHumps    = errHumps
	ErrReach    = errReach
	ErrResponse = errResponse
)

// FibreOf is fibreOf.
var FibreOf = fibreOf

// SoundingOf is soundingOf.
var SoundingOf = soundingOf
