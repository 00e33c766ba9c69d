package boundary

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Patch is a piece of the surface with four sides, a map of the unit square: u and v from 0
// to 1, the vectors along them square to the surface in the order that points outward.
type Patch struct {
	corner [4]r3.Vec // at (0,0), (1,0), (1,1), (0,1)
	flat   int       // which of the flat faces it is of; -1: it is curved
	onto   func(flat, along, across r3.Vec) (at, du, dv r3.Vec)
	bendU  float64 // by how much the surface bends at u = 0, in rad
	bendV  float64 // and at v = 0
}

// at returns the point of the patch and its derivatives.
func (p *Patch) at(u, v float64) (x, du, dv r3.Vec) {
	a, b, c, d := p.corner[0], p.corner[1], p.corner[2], p.corner[3]
	mix := func(a, b, c, d float64) (x, du, dv float64) {
		low, high := a+u*(b-a), d+u*(c-d)
		return low + v*(high-low), (1-v)*(b-a) + v*(c-d), high - low
	}
	x.X, du.X, dv.X = mix(a.X, b.X, c.X, d.X)
	x.Y, du.Y, dv.Y = mix(a.Y, b.Y, c.Y, d.Y)
	x.Z, du.Z, dv.Z = mix(a.Z, b.Z, c.Z, d.Z)
	if p.onto != nil {
		return p.onto(x, du, dv)
	}
	return x, du, dv
}

// Polyhedron returns the patches of a closed surface of flat faces, each given by its corners
// in m, counter-clockwise seen from outside: of a face with n corners n kites, one at each
// corner, that meet at its middle. What is symmetrical in the surface is so in its patches.
func Polyhedron(faces [][]r3.Vec) []Patch {
	var out []Patch
	bend := bends(faces)
	for f, corners := range faces {
		middle, n := centroid(corners), len(corners)
		for i, at := range corners {
			after, before := corners[(i+1)%n], corners[(i+n-1)%n]
			out = append(out, Patch{
				corner: [4]r3.Vec{at, half(at, after), middle, half(before, at)},
				flat:   f, bendU: bend(before, at), bendV: bend(at, after),
			})
		}
	}
	return out
}

// bends tells of a side of a face, by its ends, by how much the surface bends there, in rad.
func bends(faces [][]r3.Vec) func(a, b r3.Vec) float64 {
	normal := map[[2]r3.Vec]r3.Vec{} // of the face whose side runs from a corner to the next
	for _, corners := range faces {
		out := r3.Unit(r3.Cross(r3.Sub(corners[1], corners[0]), r3.Sub(corners[2], corners[1])))
		for i, at := range corners {
			normal[[2]r3.Vec{at, corners[(i+1)%len(corners)]}] = out
		}
	}
	return func(a, b r3.Vec) float64 {
		one, other := normal[[2]r3.Vec{a, b}], normal[[2]r3.Vec{b, a}]
		return math.Acos(min(1, max(-1, r3.Dot(one, other))))
	}
}

func half(a, b r3.Vec) r3.Vec { return r3.Scale(0.5, r3.Add(a, b)) }

// centroid returns the centroid of the area of a flat convex polygon.
func centroid(corners []r3.Vec) r3.Vec {
	var sum r3.Vec
	area := 0.0
	for i := 2; i < len(corners); i++ {
		a, b, c := corners[0], corners[i-1], corners[i]
		part := r3.Norm(r3.Cross(r3.Sub(b, a), r3.Sub(c, a)))
		sum = r3.Add(sum, r3.Scale(part/3, r3.Add(a, r3.Add(b, c))))
		area += part
	}
	return r3.Scale(1/area, sum)
}

// CutBall returns the patches of a ball about the origin, of a radius in m, above a height in
// m, closed by a flat base; whole where the height is not above -radius. Cap and base are each
// five patches: a square in the middle and four round it.
func CutBall(radius, height float64) []Patch {
	if height <= -radius {
		return roundBall(radius)
	}
	angle, rim := math.Acos(height/radius), math.Sqrt(radius*radius-height*height)
	// A place of the flat unit disc, at rho from its middle, is angle*rho from the pole.
	cap := func(x, dx, dy r3.Vec) (at, du, dv r3.Vec) {
		return overPole(radius, angle, x, dx, dy)
	}
	base := func(x, dx, dy r3.Vec) (at, du, dv r3.Vec) {
		at = r3.Vec{X: rim * x.X, Y: -rim * x.Y, Z: height}
		return at, r3.Vec{X: rim * dx.X, Y: -rim * dx.Y}, r3.Vec{X: rim * dy.X, Y: -rim * dy.Y}
	}
	bend := math.Pi - angle // between the normals of cap and base
	return append(disc(cap, -1, bend), disc(base, 0, bend)...)
}

// overPole maps a place of the unit disc, and two vectors there, onto the cap of a ball.
func overPole(radius, angle float64, x, dx, dy r3.Vec) (at, du, dv r3.Vec) {
	rho := math.Hypot(x.X, x.Y)
	sin, cos := math.Sincos(angle * rho)
	over := angle // sin(angle rho)/rho
	slope := 0.0  // its derivative over rho, over rho
	if rho > 1e-9 {
		over = sin / rho
		slope = (angle*cos*rho - sin) / (rho * rho * rho)
	}
	at = r3.Vec{X: radius * over * x.X, Y: radius * over * x.Y, Z: radius * cos}
	move := func(d r3.Vec) r3.Vec {
		along := x.X*d.X + x.Y*d.Y // rho times the change of rho
		return r3.Vec{
			X: radius * (over*d.X + slope*along*x.X),
			Y: radius * (over*d.Y + slope*along*x.Y),
			Z: -radius * angle * over * along,
		}
	}
	return at, move(dx), move(dy)
}

// disc returns five patches of the unit disc, mapped onto a surface that bends at its rim.
func disc(onto func(x, dx, dy r3.Vec) (at, du, dv r3.Vec), flat int, bend float64) []Patch {
	const inner = 0.5 // how far the middle square's corners reach
	out := make([]Patch, 0, 5)
	at := func(i int, r float64) r3.Vec {
		sin, cos := math.Sincos(math.Pi/4 + math.Pi/2*float64(i))
		return r3.Vec{X: r * cos, Y: r * sin}
	}
	out = append(out, Patch{corner: [4]r3.Vec{at(0, inner), at(1, inner), at(2, inner), at(3, inner)}, flat: flat, onto: onto})
	for i := range 4 {
		from := math.Pi/4 + math.Pi/2*float64(i)
		// v from the rim inward to the square's side, u along it.
		ring := func(x, du, dv r3.Vec) (r3.Vec, r3.Vec, r3.Vec) {
			u, v := x.X, x.Y
			sin, cos := math.Sincos(from + math.Pi/2*u)
			a, b := at(i, inner), at(i+1, inner)
			rim, along := r3.Vec{X: cos, Y: sin}, r3.Vec{X: -sin * math.Pi / 2, Y: cos * math.Pi / 2}
			side, step := r3.Add(a, r3.Scale(u, r3.Sub(b, a))), r3.Sub(b, a)
			p := r3.Add(r3.Scale(1-v, rim), r3.Scale(v, side))
			pu := r3.Add(r3.Scale(1-v, along), r3.Scale(v, step))
			pv := r3.Sub(side, rim)
			return onto(p, r3.Add(r3.Scale(du.X, pu), r3.Scale(du.Y, pv)), r3.Add(r3.Scale(dv.X, pu), r3.Scale(dv.Y, pv)))
		}
		out = append(out, Patch{corner: [4]r3.Vec{{}, {X: 1}, {X: 1, Y: 1}, {Y: 1}}, flat: flat, onto: ring, bendV: bend})
	}
	return out
}

// roundBall returns the six sides of a cube, blown up to a ball.
func roundBall(radius float64) []Patch {
	var out []Patch
	onto := func(x, dx, dy r3.Vec) (at, du, dv r3.Vec) {
		r := r3.Norm(x)
		unit := r3.Scale(1/r, x)
		move := func(d r3.Vec) r3.Vec { return r3.Scale(radius/r, r3.Sub(d, r3.Scale(r3.Dot(unit, d), unit))) }
		return r3.Scale(radius, unit), move(dx), move(dy)
	}
	for axis := range 3 {
		for _, s := range []float64{1, -1} {
			turn := func(a, b float64) r3.Vec {
				v := [3]float64{}
				v[axis], v[(axis+1)%3], v[(axis+2)%3] = s, a, b*s
				return r3.Vec{X: v[0], Y: v[1], Z: v[2]}
			}
			out = append(out, Patch{corner: [4]r3.Vec{turn(-1, -1), turn(1, -1), turn(1, 1), turn(-1, 1)}, flat: -1, onto: onto})
		}
	}
	return out
}
