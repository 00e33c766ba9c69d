// Package testkit holds what the tests of several packages of layout check alike.
package testkit

import (
	"errors"
	"math"
	"slices"
	"strings"

	"pappus/layout/body"
	"pappus/layout/poly"

	"gonum.org/v1/gonum/floats/scalar"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// Says tells whether an error is another or says so.
func Says(err, want error) bool {
	return errors.Is(err, want) || err != nil && want != nil && strings.Contains(err.Error(), want.Error())
}

// Body returns a function that passes a body on and ends the test on an error.
func Body(t rapid.TB) func(*body.Body, error) *body.Body {
	return func(b *body.Body, err error) *body.Body {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
}

// Near reports a number that is off by more than a relative share.
func Near(t rapid.TB, what string, got, want, relative float64) {
	t.Helper()
	if !scalar.EqualWithinAbsOrRel(got, want, 1e-15, relative) {
		t.Errorf("%s is %.15g, want %.15g", what, got, want)
	}
}

// Length returns an edge's length in m.
func Length(b *body.Body, e poly.Edge) float64 {
	return r3.Norm(r3.Sub(b.Vertices[e.A], b.Vertices[e.B]))
}

// SamePoints compares points in any order.
func SamePoints(t rapid.TB, got, want []r3.Vec, slack float64) {
	t.Helper()
	if len(got) != len(want) {
		t.Errorf("%d points, want %d", len(got), len(want))
		return
	}
	for _, p := range got {
		least := math.Inf(1)
		for _, q := range want {
			least = min(least, r3.Norm(r3.Sub(p, q)))
		}
		if least > slack {
			t.Errorf("%v is %g off", p, least)
			return
		}
	}
}

// Closed reports where a surface is not closed, convex, flat-faced and wound
// outward. Flatness is a length in m.
func Closed(t interface {
	Helper()
	Errorf(string, ...any)
}, b *body.Body, flat float64) {
	t.Helper()
	half := map[[2]int]int{}
	used := make([]bool, len(b.Vertices))
	for f, face := range b.Faces {
		if len(face.Corners) < 3 {
			t.Errorf("%s: face %d has %d corners", b.Name, f, len(face.Corners))
			return
		}
		for i, p := range face.Corners {
			used[p] = true
			half[[2]int{p, face.Corners[(i+1)%len(face.Corners)]}]++
		}
		out := b.Normal(f)
		for v, p := range b.Vertices {
			if height := r3.Dot(out, r3.Sub(p, b.Vertices[face.Corners[0]])); height > flat {
				t.Errorf("%s: vertex %d is %g m over face %d", b.Name, v, height, f)
			}
		}
		for _, v := range face.Corners {
			if height := r3.Dot(out, r3.Sub(b.Vertices[v], b.Vertices[face.Corners[0]])); height < -flat {
				t.Errorf("%s: vertex %d is %g m under its face %d", b.Name, v, -height, f)
			}
		}
	}
	for e, n := range half {
		if n != 1 || half[[2]int{e[1], e[0]}] != 1 {
			t.Errorf("%s: edge %d-%d has %d faces one way, %d the other", b.Name, e[0], e[1], n, half[[2]int{e[1], e[0]}])
		}
	}
	if slices.Contains(used, false) {
		t.Errorf("%s: a vertex has no face", b.Name)
	}
	edges := b.Edges()
	if x := len(b.Vertices) - len(edges) + len(b.Faces); x != 2 || 2*len(edges) != len(half) {
		t.Errorf("%s: Euler's formula gives %d", b.Name, x)
	}
	for _, e := range edges {
		if e.A >= e.B || !runs(b.Faces[e.Faces[0]], e.A, e.B) || !runs(b.Faces[e.Faces[1]], e.B, e.A) {
			t.Errorf("%s: edge %+v does not match its faces", b.Name, e)
		}
	}
}

// runs tells whether a face has an edge from p to q.
func runs(f poly.Face, p, q int) bool {
	for i, c := range f.Corners {
		if c == p && f.Corners[(i+1)%len(f.Corners)] == q {
			return true
		}
	}
	return false
}
