package timing

import (
	"math"

	"pappus/layout"
	"pappus/layout/advice"
	"pappus/timing/band"
	"pappus/timing/trust"

	"gonum.org/v1/gonum/spatial/r3"
)

// LevelError returns by how much in dB the level of one driver can be off at a frequency
// in Hz because a ball stands for the body (package trust): 0 for a ball, whole or
// standing on something hard; NaN in the models that have no body.
func (p *Spot) LevelError(hz float64) float64 { return p.levelError()(hz) }

// levelError is LevelError for many frequencies.
func (p *Spot) levelError() func(hz float64) float64 {
	if p.Array.Timing.Model != sphereModel {
		return func(float64) float64 { return math.NaN() }
	}
	b := p.Array.Body
	deviation, shift := b.Deviation(), r3.Norm(b.BallCentre)/b.BallRadius
	return func(hz float64) float64 {
		ka := 2 * math.Pi * hz / p.SpeedOfSound * b.BallRadius
		return max(trust.Faces(deviation, ka), trust.Cut(shift, ka))
	}
}

// LevelErrors returns the octave bands' exact centres in Hz and the mean of LevelError
// over each, in dB.
func (p *Spot) LevelErrors() (octaves, dB []float64) {
	octaves = band.Octaves()
	frequency := band.Frequencies(octaves, 1, perOctave)
	dB = make([]float64, len(octaves))
	off := p.levelError()
	for i, hz := range frequency {
		dB[i/perOctave] += off(hz) / perOctave
	}
	return octaves, dB
}

// farFromBall warns of a body that is farther from a ball than any that the model was
// held to. How near the ball of a cut body in open air is, Notes says.
func farFromBall(a *layout.Array) []Finding {
	b := a.Body
	off := b.Deviation()
	if a.Timing.Model != sphereModel || b.BallCentre != (r3.Vec{}) || off <= trust.Known {
		return nil
	}
	return []Finding{{"far_from_ball", advice.Cost, FarFromBall{b.BallRadius, off * b.BallRadius}}}
}
