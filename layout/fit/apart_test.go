package fit

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

func rod(at, axis r3.Vec, length, front, back float64) solid {
	axis = r3.Unit(axis)
	return between(Mount{Point: at, Normal: axis}, 0, front, length, back)
}

// TestApart checks distances that follow from plane geometry by hand.
func TestApart(t *testing.T) {
	x, y, z := r3.Vec{X: 1}, r3.Vec{Y: 1}, r3.Vec{Z: 1}
	root := math.Sqrt(0.5)
	cases := []struct {
		name string
		a, b solid
		want float64
	}{
		{"rods side by side", rod(r3.Vec{}, z, 4, 1, 1), rod(r3.Vec{X: 5}, z, 4, 2, 2), 2},
		{"rods end to end", rod(r3.Vec{}, z, 4, 1, 1), rod(r3.Vec{X: 0.5, Z: -7}, z, 4, 2, 2), 3},
		{"rods crossing at a distance", rod(r3.Vec{Z: 2}, z, 4, 1, 1), rod(r3.Vec{X: -2, Y: 5}, r3.Scale(-1, x), 4, 2, 2), 2},
		{"a rim and a side", rod(r3.Vec{}, z, 4, 1, 1), rod(r3.Vec{X: 6}, x, 3, 1, 1), 2},
		{"rim to rim round a corner", rod(r3.Vec{Z: 10}, z, 2, 1, 1), rod(r3.Vec{X: 10}, x, 2, 1, 1), 7 * math.Sqrt2},
		{"a cone's slope and a point", rod(r3.Vec{}, z, 2, 2, 0), rod(r3.Vec{X: 3, Z: 1}, y, 0, 0, 0), 4*root - 2*root},
		{"touching", rod(r3.Vec{}, z, 4, 1, 1), rod(r3.Vec{X: 3}, z, 4, 2, 2), 0},
		{"one through the other", rod(r3.Vec{}, z, 9, 1, 1), rod(r3.Vec{X: 2.5}, z, 9, 2, 2), -0.5},
		{"one in the other", rod(r3.Vec{Z: -1}, z, 2, 1, 1), rod(r3.Vec{}, z, 9, 4, 4), -3},
		{"one and the same", rod(r3.Vec{}, z, 2, 3, 3), rod(r3.Vec{}, z, 2, 3, 3), -2},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			for _, got := range []float64{apart(&c.a, &c.b, math.Inf(1)), apart(&c.b, &c.a, math.Inf(1))} {
				if !(got <= c.want+1e-12 && got > c.want-1e-6) {
					t.Errorf("%.12g, want %.12g or a hair less", got, c.want)
				}
			}
		})
	}
}

func randomRod(t *rapid.T, name string) solid {
	number := func(what string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name+what) }
	up, turn := number("up", -1, 1), number("turn", 0, 6.3)
	sin, cos := math.Sincos(turn)
	out := math.Sqrt(1 - up*up)
	at := r3.Vec{X: number("x", -1, 1), Y: number("y", -1, 1), Z: number("z", -1, 1)}
	return rod(at, r3.Vec{X: out * cos, Y: out * sin, Z: up}, number("length", 0, 1), number("front", 0, 0.5), number("back", 0, 0.5))
}

// project returns the point of a solid nearest to p. In the half plane of p
// beside the axis a solid is a trapezium.
func project(s *solid, p r3.Vec) r3.Vec {
	length := r3.Norm(r3.Sub(s.front.centre, s.back.centre))
	d := r3.Sub(p, s.front.centre)
	depth := -r3.Dot(d, s.axis)
	out := r3.Add(d, r3.Scale(depth, s.axis))
	far := r3.Norm(out)
	if far > 0 {
		out = r3.Scale(1/far, out)
	}
	inside := length > 0 && depth >= 0 && depth <= length && far*length <= s.front.radius*(length-depth)+s.back.radius*depth
	if inside {
		return p
	}
	best, where := math.Inf(1), [2]float64{}
	path := [][2]float64{{0, 0}, {0, s.front.radius}, {length, s.back.radius}, {length, 0}}
	for i := range 3 {
		a, b := path[i], path[i+1]
		dx, dy := b[0]-a[0], b[1]-a[1]
		u := 0.0
		if n := dx*dx + dy*dy; n > 0 {
			u = min(1, max(0, ((depth-a[0])*dx+(far-a[1])*dy)/n))
		}
		q := [2]float64{a[0] + u*dx, a[1] + u*dy}
		if h := math.Hypot(depth-q[0], far-q[1]); h < best {
			best, where = h, q
		}
	}
	return r3.Add(s.front.centre, r3.Add(r3.Scale(-where[0], s.axis), r3.Scale(where[1], out)))
}

// Going to and fro between the nearest points of two convex bodies ends at
// their distance (W. Cheney, A. A. Goldstein, Proc. AMS 10 (1959) 448). It takes
// many rounds where they are nearly parallel, so that it is only a bound there.
func TestApartIsNearest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := randomRod(t, "a"), randomRod(t, "b")
		p := a.middle()
		var q r3.Vec
		far := math.Inf(1)
		for range 500 {
			before := far
			for range 200 {
				q = project(&b, p)
				p = project(&a, q)
			}
			if far = r3.Norm(r3.Sub(p, q)); before-far < 1e-9 {
				break
			}
		}
		got := apart(&a, &b, math.Inf(1))
		if got > far+1e-9 {
			t.Fatalf("%g apart, but points are %g from each other", got, far)
		}
		if far > 1e-3 && got < far-1e-3 {
			t.Fatalf("%g apart, points no nearer than %g", got, far)
		}
		if back := apart(&b, &a, math.Inf(1)); far > 1e-3 && math.Abs(back-got) > 1e-8 {
			t.Fatalf("%g one way and %g the other", got, back)
		}
	})
}

// A clash is cured by the move that it speaks of, and by none that is shorter
// by a tenth in any direction that is tried.
func TestClashIsCured(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := randomRod(t, "a"), randomRod(t, "b")
		deep := -apart(&a, &b, math.Inf(1))
		if !(deep > 1e-6) {
			return // apart: nothing to cure
		}
		for i := range 400 {
			height := 1 - (2*float64(i)+1)/400
			sin, cos := math.Sincos(float64(i) * 2.4)
			out := math.Sqrt(1 - height*height)
			u := r3.Vec{X: out * cos, Y: out * sin, Z: height}
			if gap := -a.extent(r3.Scale(-1, u)) - b.extent(u); gap > -0.9*deep {
				t.Fatalf("said to be %g deep, but %g is enough", deep, -gap)
			}
		}
	})
}

func BenchmarkApart(b *testing.B) {
	p := rod(r3.Vec{Z: 0.15}, r3.Vec{Z: 1}, 0.04, 0.0165, 0.01)
	q := rod(r3.Vec{X: 0.09, Y: 0.02, Z: 0.12}, r3.Vec{X: 0.6, Y: 0.1, Z: 0.8}, 0.04, 0.0165, 0.01)
	b.ReportAllocs()
	for b.Loop() {
		apart(&p, &q, math.Inf(1))
	}
}
