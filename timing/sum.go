package timing

import (
	"slices"

	"pappus/layout"
	"pappus/timing/cores"
	"pappus/timing/harmonic"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// sum is the pressure of a whole array, by some of the ways that its sound takes, at places
// in m: it is added to dst[place][frequency]. Places in the body or behind a wall get what
// the formulae give there. All cores are used; the result is the same to the bit for any
// number of them.
type sum interface {
	add(dst []complex128, places []r3.Vec) error
}

// newSum returns the sum over drivers and ways, still without fields (see scene.images), of weight,
// [mount][frequency], and field, for a medium's frequencies: over harmonics where the drivers
// are on a ball, else one by one. The frame's Z
// is best the normal of the plane that the places are in.
func newSum(a *layout.Array, m *radiate.Medium, ways []radiate.Image, frame harmonic.Frame, weight []complex128) sum {
	if a.Timing.Model == sphereModel {
		return newWhole(a, m, ways, frame, weight)
	}
	return oneByOne{a, m, ways, weight}
}

// oneByOne sums driver after driver.
type oneByOne struct {
	array  *layout.Array
	medium *radiate.Medium
	ways   []radiate.Image
	weight []complex128
}

func (o oneByOne) add(dst []complex128, places []r3.Vec) error {
	ways, nf := slices.Clone(o.ways), len(o.medium.Frequency)
	if err := (scene{o.array, o.medium}).equip(ways, places); err != nil {
		return err
	}
	field := radiate.Images(ways, nf)
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
