package timing

import (
	"sort"

	"pappus/layout"
	"pappus/timing/band"
	"pappus/timing/measure"
	"pappus/timing/omni"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/spatial/r3"
	"gonum.org/v1/gonum/stat"
)

// Spatial is how uneven an array is over all directions, up and down as well as round: the
// spatial standard deviation of the level (omni.Spatial), in dB, where ISO 3382-1 asks of one
// circle. Omni is taken where somebody sits; this, as the directivity, far away, so that it
// tells of the loudspeaker alone and of none of its places.
type Spatial struct {
	Octave, Third []float64  // Hz, exact centres; the octaves are those of the thirds
	AsBuilt       Deviations // all drivers at once, no delays
	Aligned       Deviations // with the delays
}

// Deviations are spatial standard deviations in dB; +Inf where a direction is silent, as
// behind a baffle, NaN where all are.
type Deviations struct {
	Octave, Third []float64
	Mean          float64 // of the thirds from 100 Hz to 4 kHz, each hertz alike: over the bandwidth that loudspeakers were measured in, so that it tells most of 1 to 4 kHz
}

// How fine the sphere and the bands are looked at: 32 rings of 63 directions. Against degree 63
// and 9 frequencies in each third, bodies of 0.15 to 0.2 m radius, built and with delays, are
// within 0.1 dB in each octave and 0.06 dB in the mean, one of 0.6 m within 0.5 and 0.1 dB;
// degree 23 is off by up to 0.6 dB in an octave, two frequencies by up to 0.2 dB in the mean.
const (
	spatialDegree = 31
	spatialThird  = 3      // frequencies in each third
	spatialHigh   = 4500.0 // Hz, between the thirds of 4 and 5 kHz
)

// Spatial finds how uneven the plan's array is over all directions, in open air; a body that a
// surface makes whole on that, over the half before it, see judged.
func (p *Plan) Spatial() (Spatial, error) { return p.spatial(spatialDegree, spatialThird) }

// spatial is Spatial looked at as finely as directions of a degree and so many frequencies in
// each third make it.
func (p *Plan) spatial(degree, count int) (Spatial, error) {
	a := p.judged()
	out := Spatial{Octave: band.Octaves(), Third: thirdsOf(band.Octaves())}
	frequency := band.Frequencies(out.Third, 3, count)
	s, err := radiate.NewScene(a, radiate.NewMedium(p.airState(), frequency).WithoutLoss())
	if err != nil {
		return out, err
	}
	response, around := p.response(frequency), radiate.NewAround(spatialAxis(a), a.Surface.Present, degree)
	energy := s.Energy([]radiate.Feed{p.feed(false, frequency, response), p.feed(true, frequency, response)}, around)
	out.AsBuilt, out.Aligned = out.of(around.Share, energy[0], count), out.of(around.Share, energy[1], count)
	return out, nil
}

// spatialAxis returns what the rings of directions are round: the normal of the surface; in the
// open an axis that is no body's, since a plane without sound along a ring would be told wrong.
func spatialAxis(a *layout.Array) r3.Vec {
	if a.Surface.Present {
		return r3.Scale(-1, layout.Towards(a.Surface.On))
	}
	return r3.Vec{X: 0.31, Y: -0.52, Z: 0.77}
}

// thirdsOf returns the exact centres of the thirds of octaves that follow each other, in Hz.
func thirdsOf(octaves []float64) []float64 {
	low, _ := band.Edges(octaves[0], 1)
	_, high := band.Edges(octaves[len(octaves)-1], 1)
	return band.ThirdsWithin(low*(1-1e-9), high*(1+1e-9))
}

// of returns the deviations of energies [direction*frequency], with so many frequencies in
// each third, that stand for shares of the sphere.
func (s *Spatial) of(share, energy []float64, count int) Deviations {
	out := Deviations{Octave: spatialOf(share, energy, 3*count), Third: spatialOf(share, energy, count)}
	var width []float64
	for _, centre := range s.Third[:sort.SearchFloat64s(s.Third, spatialHigh)] {
		low, high := band.Edges(centre, 3)
		width = append(width, high-low)
	}
	out.Mean = stat.Mean(out.Third[:len(width)], width)
	return out
}

// spatialOf returns the deviation of each band of so many frequencies.
func spatialOf(share, energy []float64, count int) (out []float64) {
	n, level := len(energy)/len(share), make([]float64, len(share))
	for from := 0; from < n; from += count {
		for i := range level {
			level[i] = measure.Decibels(floats.Sum(energy[i*n+from : i*n+from+count]))
		}
		out = append(out, omni.Spatial(share, level))
	}
	return out
}
