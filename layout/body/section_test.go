package body_test

import (
	"math"
	"testing"

	"pappus/layout/body"
	"pappus/testdata/testkit"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// enclosed is the area inside a closed outline, counter-clockwise above 0 (the
// surveyor's formula).
func enclosed(outline [][2]float64) float64 {
	sum := 0.0
	for i := 1; i < len(outline); i++ {
		p, q := outline[i-1], outline[i]
		sum += (p[0]*q[1] - p[1]*q[0]) / 2
	}
	return sum
}

var x, y, z = r3.Vec{X: 1}, r3.Vec{Y: 1}, r3.Vec{Z: 1}

// TestSections checks outlines that every geometry book has.
func TestSections(t *testing.T) {
	cube, octa := platonic(t, "cube"), platonic(t, "octahedron")
	a := 2 * radius / math.Sqrt(3) // edge of the cube
	s2, s6 := math.Sqrt2, math.Sqrt(6)
	cases := []struct {
		name              string
		b                 *body.Body
		origin, right, up r3.Vec
		corners           int
		area              float64
	}{
		{"square through a cube", cube, r3.Vec{}, x, z, 4, a * a},
		{"the same from beside", cube, r3.Vec{X: 7, Z: -3}, x, z, 4, a * a},
		{"in the face of a cube", cube, r3.Vec{Z: a / 2}, x, y, 4, a * a},
		{"along diagonals of a cube", cube, r3.Vec{}, r3.Vec{X: 1 / s2, Y: 1 / s2}, z, 4, s2 * a * a},
		{"hexagon through a cube", cube, r3.Vec{}, r3.Vec{X: 1 / s2, Y: -1 / s2}, r3.Vec{X: 1 / s6, Y: 1 / s6, Z: -2 / s6}, 6, 3 * math.Sqrt(3) / 4 * a * a},
		{"equator of an octahedron", octa, r3.Vec{}, x, y, 4, 2 * radius * radius},
		{"between faces of an octahedron", octa, r3.Vec{}, r3.Vec{X: 1 / s2, Y: 1 / s2}, z, 4, s2 * radius * radius},
		{"beside an octahedron", octa, r3.Vec{Y: 1}, x, z, 0, 0},
		{"a corner only", octa, r3.Vec{Z: radius}, x, y, 0, 0},
		{"an edge only", cube, r3.Vec{X: a / 2, Y: a / 2}, r3.Vec{X: 1 / s2, Y: -1 / s2}, z, 0, 0},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			outline := c.b.Section(c.origin, c.right, c.up)
			if c.corners == 0 {
				if outline != nil {
					t.Errorf("%v, want none", outline)
				}
				return
			}
			if len(outline) != c.corners+1 || outline[0] != outline[c.corners] {
				t.Errorf("%v is not %d corners and the first again", outline, c.corners)
			}
			testkit.Near(t, "area", enclosed(outline), c.area, 1e-12)
		})
	}
}

// TestRoundSections: circles, and the part of one above a chord.
func TestRoundSections(t *testing.T) {
	ball := body.Ball(radius)
	dome := cutAt(t, ball, 0)
	low := cutAt(t, ball, 0.05)
	full, small := math.Pi*radius*radius, math.Pi*(radius*radius-0.05*0.05)
	cases := []struct {
		name              string
		b                 *body.Body
		origin, right, up r3.Vec
		area              float64
	}{
		{"middle", ball, r3.Vec{X: 3, Z: 0}, x, z, full},
		{"off the middle", ball, r3.Vec{Y: 0.05}, x, z, small},
		{"touching", ball, r3.Vec{Y: radius}, x, z, 0},
		{"beside", ball, r3.Vec{Y: 1}, x, z, 0},
		{"half", dome, r3.Vec{X: -1, Z: 2}, x, z, full / 2},
		{"half, upside down", dome, r3.Vec{}, x, r3.Scale(-1, z), full / 2},
		{"half, on its side", dome, r3.Vec{}, z, y, full / 2},
		{"level, above the cut", dome, r3.Vec{Z: 0.05}, x, y, small},
		{"level, in the cut", low, r3.Vec{Z: 0.05}, x, y, small},
		{"level, below the cut", dome, r3.Vec{Z: -0.05}, x, y, 0},
		{"beside what the cut left", low, r3.Vec{Y: 0.145}, x, z, 0},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			outline := c.b.Section(c.origin, c.right, c.up)
			if c.area == 0 {
				if outline != nil {
					t.Errorf("%d points, want none", len(outline))
				}
				return
			}
			if len(outline) != 181 || outline[0] != outline[180] {
				t.Errorf("%d points from %v to %v", len(outline), outline[0], outline[len(outline)-1])
			}
			testkit.Near(t, "area", enclosed(outline), c.area, 3e-4)
			for _, p := range outline {
				at := r3.Add(c.origin, r3.Add(r3.Scale(p[0], c.right), r3.Scale(p[1], c.up)))
				if math.Abs(r3.Norm(at)-radius) > 1e-12 || c.b.IsCut && at.Z < c.b.Cut-1e-12 {
					t.Errorf("%v is not on the rim", at)
				}
			}
		})
	}
}

// A level section has the area of the base of a cut there, and an upright one
// of a cut body is inside that of the whole.
func TestSectionIsBase(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBody(t)
		height := b.Lowest() + (top(b)-b.Lowest())*rapid.Float64Range(0.001, 0.999).Draw(t, "height")
		cut := cutAt(t, b, height)
		base := len(cut.Faces) - 1
		var want float64
		for i, p := range cut.Faces[base].Corners {
			q := cut.Faces[base].Corners[(i+1)%len(cut.Faces[base].Corners)]
			want += r3.Cross(cut.Vertices[q], cut.Vertices[p]).Z / 2
		}
		got := enclosed(b.Section(r3.Vec{Z: cut.Cut}, x, y))
		if math.Abs(got-want) > 1e-5*radius*radius {
			t.Errorf("section %g m2, base %g m2", got, want)
		}
		turn := rapid.Float64Range(0, math.Pi).Draw(t, "turn")
		right := r3.Vec{X: math.Cos(turn), Y: math.Sin(turn)}
		if part, whole := enclosed(cut.Section(r3.Vec{}, right, z)), enclosed(b.Section(r3.Vec{}, right, z)); part > whole*(1+1e-12) {
			t.Errorf("part %g m2, whole %g m2", part, whole)
		}
	})
}
