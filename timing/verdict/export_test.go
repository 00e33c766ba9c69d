package verdict

// What tests ask errors for.
var (
	ErrMeasured = errMeasured
)
