package kit

import (
	"math"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// pole is a place with a direction out of the material and two across it, right-handed: where
// a hole is drilled, a post stands or a number is cut.
type pole struct{ at, out, right, up r3.Vec }

func poleAt(at, out r3.Vec) pole {
	right, up := poly.Across(out)
	return pole{at, out, right, up}
}

// upright turns a pole about where it points, so that its up is as near to a direction as can be.
func (p pole) upright(to r3.Vec) pole {
	flat := r3.Sub(to, r3.Scale(r3.Dot(to, p.out), p.out))
	if r3.Norm(flat) < 1e-6 {
		return p
	}
	p.up = r3.Unit(flat)
	p.right = r3.Cross(p.up, p.out)
	return p
}

// place returns a point so far to the right, up and out.
func (p pole) place(x, y, z float64) r3.Vec {
	return r3.Add(p.at, r3.Add(r3.Scale(x, p.right), r3.Add(r3.Scale(y, p.up), r3.Scale(z, p.out))))
}

// extrude returns a prism over an outline that goes round counter-clockwise seen from where the
// pole points, from one height to another along it.
func (p pole) extrude(outline [][2]float64, low, high float64) poly.Mesh {
	n := len(outline)
	var m poly.Mesh
	for _, z := range []float64{low, high} {
		for _, c := range outline {
			m.Vertices = append(m.Vertices, p.place(c[0], c[1], z))
		}
	}
	for i := range n {
		k := (i + 1) % n
		m.Triangles = append(m.Triangles, [3]int{i, k, n + k}, [3]int{i, n + k, n + i})
	}
	for i := 2; i < n; i++ {
		m.Triangles = append(m.Triangles, [3]int{0, i, i - 1}, [3]int{n, n + i - 1, n + i})
	}
	return m
}

// pin is a cylinder; its sides touch the circle from outside where it is a hole, so that what
// goes in has room.
func (p pole) pin(radius, low, high float64, sides int) poly.Mesh {
	return p.extrude(circle(radius/math.Cos(math.Pi/float64(sides)), sides), low, high)
}

func circle(radius float64, sides int) [][2]float64 {
	out := make([][2]float64, sides)
	for i := range out {
		sin, cos := math.Sincos(2 * math.Pi * (float64(i) + 0.5) / float64(sides))
		out[i] = [2]float64{radius * cos, radius * sin}
	}
	return out
}

// about moves planes outward by a length; inward below 0.
func about(planes []poly.Plane, by float64) []poly.Plane {
	out := make([]poly.Plane, len(planes))
	for i, p := range planes {
		p.Offset += by
		out[i] = p
	}
	return out
}

// inside returns how far a point is inside of all planes; below 0 outside.
func inside(planes []poly.Plane, at r3.Vec) float64 {
	least := math.Inf(1)
	for _, p := range planes {
		least = min(least, -p.Above(at))
	}
	return least
}
