package body_test

import (
	"errors"
	"strings"
)

// What messages must say.
var (
	errRadius      = errors.New("radius must be a finite length above 0")
	errSubdivision = errors.New("subdivision must be from 1 to 16")
	errHeight      = errors.New("the cut height is not a number")
	errSides       = errors.New("sides must be from 3 to 256")
	errProportion  = errors.New("a hundredth to a hundred times the radius")
	errNoDual      = errors.New("there is no dual")
)

// is tells whether an error is another or says so.
func is(err, want error) bool {
	return errors.Is(err, want) || err != nil && want != nil && strings.Contains(err.Error(), want.Error())
}
