package kit

import (
	"math"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// screws is how many hold a driver (common practice), on a ring midway between its cut-out and
// its rim.
const screws = 4

// behind is the radius that a driver takes inside of the wall.
func (k *maker) behind() float64 {
	if k.Mounting == Rear {
		return k.array.Driver.FlangeRadius + k.Gap + clearRing
	}
	return k.array.Driver.CutoutRadius + clearRing
}

// depth is how far a driver reaches inward from the face.
func (k *maker) depth() float64 { return k.array.Driver.Depth + k.wall.thick + 2e-3 }

// findSeats finds the poles of all mounts: on the outer face, out of the body, up as far up as
// can be.
func (k *maker) findSeats() {
	holes := k.array.Holes()
	for i, h := range holes {
		plane := k.wall.planes[i%len(k.wall.planes)]
		if !k.array.Body.IsBall() {
			plane = k.array.Body.Plane(h.Face)
		}
		p := poleAt(plane.Foot(h.Point), plane.Normal).upright(r3.Vec{Z: 1})
		k.seats = append(k.seats, p)
	}
}

// ring is the radius of the circle of a driver's screws.
func (k *maker) ring() float64 {
	return (k.array.Driver.CutoutRadius + k.array.Driver.FlangeRadius) / 2
}

// seated cuts what a driver needs beside its cut-out: a recess for its flange and pilot holes,
// in front or, for one that is mounted from the rear, inside. Pilot holes are 0.8 of the
// screw's own (common practice for self-tapping screws in plastic) and blind.
func (k *maker) seated(p pole) (out []poly.Mesh) {
	d := k.array.Driver
	face, deep := p, k.wall.thick-skin
	if k.Mounting == Rear {
		face = pole{p.place(0, 0, -k.wall.thick), r3.Scale(-1, p.out), r3.Scale(-1, p.right), p.up}
	}
	if r := k.recess(); r > 0 {
		out = append(out, face.pin(d.FlangeRadius+k.Gap, -r, 5e-3, 48))
	}
	if d.ScrewRadius > 0 && deep > k.recess() && d.FlangeRadius-d.CutoutRadius > 2*d.ScrewRadius {
		for _, c := range circle(k.ring(), screws) {
			hole := face
			hole.at = face.place(c[0], c[1], 0)
			out = append(out, hole.pin(0.8*d.ScrewRadius, -deep, 4e-3, 12))
		}
	}
	return out
}

// recess is as deep as asked for, and leaves half of the wall.
func (k *maker) recess() float64 { return min(k.Recess, k.wall.thick/2) }

// room is what is kept clear behind a driver.
func (k *maker) room(p pole) poly.Mesh {
	return p.pin(k.behind(), -k.depth()-flangeTall, -k.wall.thick/3, 24)
}

// turned returns a pole turned to the left about where it points.
func (p pole) turned(by float64) pole {
	sin, cos := math.Sincos(by)
	right := r3.Add(r3.Scale(cos, p.right), r3.Scale(sin, p.up))
	return pole{p.at, p.out, right, r3.Cross(p.out, right)}
}
