package body_test

import (
	"errors"
	"strings"
	"testing"

	"pappus/layout/body"
	"pappus/testdata/testkit"
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

// TestFromFile: a body from a file is as large as its farthest corner is far, and grows with
// all its lengths.
func TestFromFile(t *testing.T) {
	const file = "OFF\n5 5 8\n60 60 -30\n-60 60 -30\n-60 -60 -30\n60 -60 -30\n0 0 90\n" +
		"3 0 1 4\n3 1 2 4\n3 2 3 4\n3 3 0 4\n4 3 2 1 0\n"
	b := testkit.Body(t)(body.FromFile("pyramid.off", strings.NewReader(file), false))
	testkit.Near(t, "radius", b.Radius, 0.09, 1e-12)
	testkit.Near(t, "volume", b.Volume(), 0.12*0.12*0.12/3, 1e-12)
	cut := cutAt(t, b, 0)
	grown := cut.Times(2)
	testkit.Near(t, "grown volume", grown.Volume(), 8*cut.Volume(), 1e-12)
	testkit.Near(t, "grown ball", grown.BallRadius, 2*cut.BallRadius, 1e-12)
	testkit.Near(t, "grown radius", grown.Radius, 0.18, 1e-12)
	if _, err := body.FromFile("pyramid.stl", strings.NewReader(file), true); err == nil {
		t.Error("an OFF file is read as STL")
	}
}
