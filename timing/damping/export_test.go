package damping

// What tests ask errors for.
var (
	ErrReach    = errReach
	ErrResponse = errResponse
)

// FibreOf is fibreOf.
var FibreOf = fibreOf
