package poly_test

import (
	"errors"
	"io"
	"testing"

	"pappus/layout/body"
	"pappus/testdata/testkit"

	"pgregory.net/rapid"
)

const radius = 0.15 // m

// What messages must say.
var (
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
	errNothingLeft   = errors.New("nothing is left")
	errOpenMesh      = errors.New("not a closed surface")
)

func fromOFF(name string, r io.Reader) (*body.Body, error) { return body.FromFile(name, r, false) }

func fromSTL(name string, r io.Reader) (*body.Body, error) { return body.FromFile(name, r, true) }

func platonic(t rapid.TB, name string) *body.Body {
	t.Helper()
	return testkit.Body(t)(body.Platonic(name, radius))
}

func geodesic(t rapid.TB, base string, subdivision int) *body.Body {
	t.Helper()
	return testkit.Body(t)(body.Geodesic(base, subdivision, radius))
}

// all calls f with bodies of every kind.
func all(t *testing.T, f func(*testing.T, *body.Body)) {
	soccer := testkit.Body(t)(body.Archimedean("truncated icosahedron", radius))
	for _, b := range []*body.Body{
		platonic(t, "tetrahedron"), platonic(t, "cube"), platonic(t, "dodecahedron"), geodesic(t, "octahedron", 4),
		testkit.Body(t)(body.Archimedean("snub cube", radius)), soccer, testkit.Body(t)(body.Dual(soccer)),
		testkit.Body(t)(body.GeodesicMN("icosahedron", 2, 1, radius)), testkit.Body(t)(body.Prism(7, radius, 0.3)),
	} {
		t.Run(b.Name, func(t *testing.T) { f(t, b) })
	}
}
