package timing

import (
	"math"

	"pappus/layout"
	"pappus/timing/band"
	"pappus/timing/harmonic"
	"pappus/timing/measure"

	"gonum.org/v1/gonum/spatial/r3"
)

const polarSteps = 120 // 3 degrees

// ListeningPolar returns the responses round the vertical axis through the spot. Like
// uprightPolar's they are the loudspeaker's own, on its surface, without the room.
func (plan *Spot) ListeningPolar() (Polar, error) {
	return plan.circle(unroomed(plan.Array), plan.listeningCircle)
}

// uprightPolar returns the responses round the circle over the top of the body through the
// spot.
func (plan *Spot) uprightPolar() (Polar, error) {
	return plan.circle(unroomed(plan.Array), plan.uprightCircle)
}

// circle returns the levels at the octave bands round a circle, of an array in its
// surroundings fed as the plan's own; NaN where no sound can be: inside the body and below
// the surface that it stands on.
func (plan *Spot) circle(a *layout.Array, place func(angle float64) r3.Vec) (Polar, error) {
	octaves, angles := band.Octaves(), circleAngles(polarSteps)
	polar := Polar{Angle: angles, Band: octaves, Aligned: table(len(octaves), len(angles)), Unaligned: table(len(octaves), len(angles))}
	places := make([]r3.Vec, len(angles))
	for i, angle := range angles {
		places[i] = place(angle)
	}
	frequency := band.Frequencies(octaves, 1, perOctave)
	s, err := newScene(a, frequency)
	if err != nil {
		return polar, err
	}
	response, n := plan.response(frequency), len(frequency)
	for _, by := range []struct {
		delayed bool
		level   [][]float64
	}{{true, polar.Aligned}, {false, polar.Unaligned}} {
		sum := make([]complex128, len(places)*n)
		s.NewSummed(plan.feed(by.delayed, frequency, response), s.Ways, harmonic.Round(normal(places)), places).Add(sum, nil)
		for i, at := range places {
			silent := a.Reach(at) != nil
			for b := range octaves {
				by.level[b][i] = bandLevel(sum[i*n:(i+1)*n], b, silent)
			}
		}
	}
	return polar, nil
}

// circleAngles returns so many even angles of a circle in rad, 0 among them, from -pi.
func circleAngles(steps int) []float64 {
	angle := make([]float64, steps)
	for i := range angle {
		angle[i] = 2 * math.Pi * float64(i-steps/2) / float64(steps)
	}
	return angle
}

// listeningCircle returns the place at an azimuth on the circle round the
// vertical axis through the spot.
func (plan *Spot) listeningCircle(azimuth float64) r3.Vec {
	spot := plan.Array.Spot
	reach := math.Hypot(spot.X, spot.Y)
	sin, cos := math.Sincos(azimuth)
	return r3.Vec{X: reach * cos, Y: reach * sin, Z: spot.Z}
}

// uprightCircle returns the place at an elevation on the circle round the
// body's centre through the spot: 0 is level on the spot's side, 90 degrees is
// overhead, 180 degrees is level behind.
func (plan *Spot) uprightCircle(elevation float64) r3.Vec {
	spot := plan.Array.Spot
	reach := r3.Norm(spot)
	sin, cos := math.Sincos(elevation)
	at := r3.Scale(reach*cos, towards(spot))
	at.Z = reach * sin
	return at
}

// normal returns the direction square to the plane of a circle's places, upright where
// they are one.
func normal(places []r3.Vec) r3.Vec {
	third := len(places) / 3
	n := r3.Cross(r3.Sub(places[third], places[0]), r3.Sub(places[2*third], places[0]))
	if r3.Norm2(n) == 0 {
		return r3.Vec{Z: 1}
	}
	return n
}

// bandLevel returns the level in dB of the octave band b of a spectrum; NaN where no
// sound can be.
func bandLevel(spectrum []complex128, b int, silent bool) float64 {
	if silent {
		return math.NaN()
	}
	return measure.Decibels(meanEnergy(spectrum[b*perOctave : (b+1)*perOctave]))
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
