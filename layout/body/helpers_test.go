package body_test

import (
	"errors"
	"io"
	"strings"

	"pappus/layout/body"
)

// What messages must say.
var (
	errRadius        = errors.New("radius must be a finite length above 0")
	errSubdivision   = errors.New("subdivision must be from 1 to 16")
	errHeight        = errors.New("the cut height is not a number")
	errSides         = errors.New("sides must be from 3 to 256")
	errProportion    = errors.New("a hundredth to a hundred times the radius")
	errNoDual        = errors.New("there is no dual")
	errFormat        = errors.New("not a file of this format")
	errTooLarge      = errors.New("too large a file")
	errNotFinite     = errors.New("not a finite number")
	errSize          = errors.New("from 1 mm to 100 m from the origin")
	errOpen          = errors.New("the surface is open")
	errInsideOut     = errors.New("wound inward")
	errPieces        = errors.New("more than one surface")
	errFlat          = errors.New("encloses no room")
	errConcave       = errors.New("the surface is not convex")
	errOriginOutside = errors.New("the origin is not inside")
	errCrossing      = errors.New("crosses or touches itself")
)

// is tells whether an error is another or says so.
func is(err, want error) bool {
	return errors.Is(err, want) || err != nil && want != nil && strings.Contains(err.Error(), want.Error())
}

func fromOFF(name string, r io.Reader) (*body.Body, error) { return body.FromFile(name, r, false) }

func fromSTL(name string, r io.Reader) (*body.Body, error) { return body.FromFile(name, r, true) }
