package fit_test

import (
	"errors"
	"strings"
)

// What messages must say.
var (
	errDriver = errors.New("the driver cannot have this outline")
	errMount  = errors.New("the mount is no place on the body")
	errLimits = errors.New("a limit must be a finite length of at least 0")
	errNoFit  = errors.New("no size fits")
)

// is tells whether an error says what another does.
func is(err, want error) bool { return err != nil && strings.Contains(err.Error(), want.Error()) }
