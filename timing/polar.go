package timing

import (
	"math"

	"pappus/layout"
	"pappus/timing/band"
	"pappus/timing/measure"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

const polarSteps = 120 // 3 degrees

// polars fills in the responses round the two circles through the spot. They
// are the loudspeaker's own, on its surface, without the room.
func (p *Planner) polars(plan *Plan) (err error) {
	a := unroomed(plan.Array)
	if plan.Horizontal, err = plan.circle(a, plan.listeningCircle); err != nil {
		return err
	}
	plan.Vertical, err = plan.circle(a, plan.uprightCircle)
	return err
}

// circle returns the levels round a circle of an array in its surroundings, fed as the
// plan's own.
func (plan *Plan) circle(a *layout.Array, place func(angle float64) r3.Vec) (Polar, error) {
	octaves := band.Octaves()
	frequency, angles := band.Frequencies(octaves, 1, perOctave), polarAngles()
	places := make([]r3.Vec, len(angles))
	for i, angle := range angles {
		places[i] = place(angle)
	}
	field, err := newField(a, radiate.NewMedium(plan.airState(), frequency), places)
	if err != nil {
		return Polar{}, err
	}
	return newKernel(plan, field, frequency).round(octaves, angles, places), nil
}

// polarAngles returns the angles of a circle in rad, 0 among them, from -pi.
func polarAngles() []float64 {
	angle := make([]float64, polarSteps)
	for i := range angle {
		angle[i] = 2 * math.Pi * float64(i-polarSteps/2) / polarSteps
	}
	return angle
}

// listeningCircle returns the place at an azimuth on the circle round the
// vertical axis through the spot.
func (plan *Plan) listeningCircle(azimuth float64) r3.Vec {
	spot := plan.Array.Spot
	reach := math.Hypot(spot.X, spot.Y)
	sin, cos := math.Sincos(azimuth)
	return r3.Vec{X: reach * cos, Y: reach * sin, Z: spot.Z}
}

// uprightCircle returns the place at an elevation on the circle round the
// body's centre through the spot: 0 is level on the spot's side, 90 degrees is
// overhead, 180 degrees is level behind.
func (plan *Plan) uprightCircle(elevation float64) r3.Vec {
	spot := plan.Array.Spot
	reach := r3.Norm(spot)
	sin, cos := math.Sincos(elevation)
	at := r3.Scale(reach*cos, towards(spot))
	at.Z = reach * sin
	return at
}

// round returns the levels at the octave bands at the places round a circle, NaN where
// no sound can be: inside the body and below the surface that it stands on.
func (k *kernel) round(octaves, angles []float64, places []r3.Vec) Polar {
	polar := Polar{
		Angle:     angles,
		Band:      octaves,
		Aligned:   table(len(octaves), len(angles)),
		Unaligned: table(len(octaves), len(angles)),
	}
	nf, free := len(k.frequency), unroomed(k.plan.Array)
	undelayed := k.undelayed()
	spread(len(places), func(_, i int) {
		at := places[i : i+1]
		sum, plain := make([]complex128, nf), make([]complex128, nf)
		for m, mount := range k.plan.Array.Mounts {
			k.field.Add(sum, mount, at, k.weight[m*nf:(m+1)*nf])
			k.field.Add(plain, mount, at, undelayed[m*nf:(m+1)*nf])
		}
		silent := outOfReach(free, at[0])
		for b := range octaves {
			polar.Aligned[b][i] = bandLevel(sum, b, silent)
			polar.Unaligned[b][i] = bandLevel(plain, b, silent)
		}
	})
	return polar
}

// undelayed returns the kernel's weights without the delays.
func (k *kernel) undelayed() []complex128 {
	d, nf := newFeed(k.plan), len(k.frequency)
	w := make([]complex128, len(k.weight))
	for m := range d.gain {
		d.weights(w[m*nf:(m+1)*nf], m, false, k.frequency, k.driver)
	}
	return w
}

// bandLevel returns the level in dB of the octave band b of a spectrum; NaN where no
// sound can be.
func bandLevel(spectrum []complex128, b int, silent bool) float64 {
	if silent {
		return math.NaN()
	}
	return measure.Decibels(meanEnergy(spectrum[b*perOctave : (b+1)*perOctave]))
}

func table(rows, columns int) [][]float64 {
	t := make([][]float64, rows)
	for i := range t {
		t[i] = make([]float64, columns)
	}
	return t
}

// Unevenness returns how uneven the aligned array is round the listening
// circle: the standard deviation of the level in dB, mean of the octave bands
// from 500 Hz to 4 kHz.
func (plan *Plan) Unevenness() float64 {
	uneven := make([]float64, len(plan.Horizontal.Band))
	for b, level := range plan.Horizontal.Aligned {
		uneven[b] = measure.Deviation(level)
	}
	return MeanFrom500To4k(plan.Horizontal.Band, uneven)
}
