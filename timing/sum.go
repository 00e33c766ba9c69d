package timing

import (
	"pappus/layout"
	"pappus/timing/cores"
	"pappus/timing/harmonic"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// sum is the pressure of a whole array in its surroundings at places in m: it sets
// dst[place][frequency]. Places in the body or behind a wall get what the formulae give
// there. All cores are used; the result is the same to the bit for any number of them.
type sum interface {
	fill(dst []complex128, places []r3.Vec) error
}

// newSum returns the sum over drivers of weight and field, [mount][frequency], for a medium's
// frequencies: over harmonics where the drivers are on a ball, else one by one. The frame's Z
// is best the normal of the plane that the places are in.
func newSum(a *layout.Array, m *radiate.Medium, frame harmonic.Frame, weight []complex128) sum {
	if a.Timing.Model == sphereModel {
		return newWhole(a, m, frame, weight)
	}
	return oneByOne{a, m, weight}
}

// oneByOne sums driver after driver.
type oneByOne struct {
	array  *layout.Array
	medium *radiate.Medium
	weight []complex128
}

func (o oneByOne) fill(dst []complex128, places []r3.Vec) error {
	field, err := newField(o.array, o.medium, places)
	if err != nil {
		return err
	}
	clear(dst)
	nf := len(o.medium.Frequency)
	cores.Each(len(places), func(_, i int) {
		for m, mount := range o.array.Mounts {
			field.Add(dst[i*nf:(i+1)*nf], mount, places[i:i+1], o.weight[m*nf:(m+1)*nf])
		}
	})
	return nil
}

// frameOf returns a frame whose polar axis is a direction, which must not be zero.
func frameOf(axis r3.Vec) harmonic.Frame {
	z := r3.Unit(axis)
	x := r3.Vec{X: 1}
	if z.X > 0.9 || z.X < -0.9 {
		x = r3.Vec{Y: 1}
	}
	x = r3.Unit(r3.Sub(x, r3.Scale(r3.Dot(x, z), z)))
	return harmonic.Frame{X: x, Y: r3.Cross(z, x), Z: z}
}
