package fit_test

import (
	"errors"
)

// What messages must say.
var (
	errDriver = errors.New("the driver cannot have this outline")
	errMount  = errors.New("the mount is no place on the body")
	errLimits = errors.New("a limit must be a finite length of at least 0")
	errNoFit  = errors.New("no size fits")
)
