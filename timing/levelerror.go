package timing

import (
	"math"

	"pappus/layout"
	"pappus/layout/advice"
	"pappus/timing/band"
	"pappus/timing/radiate"
	"pappus/timing/trust"

	"gonum.org/v1/gonum/spatial/r3"
)

// LevelError returns by how much in dB the level of one driver can be off at a frequency
// in Hz. Where a ball stands for the body that is what package trust says: 0 for a ball, whole or
// standing on something hard. Where the body's true field is solved for, it is what a finer mesh
// changes of it, going over into that of the ball as the field itself does. It is NaN in the
// models that have no body.
func (p *Spot) LevelError(hz float64) float64 { return p.levelError()(hz) }

// levelError is LevelError for many frequencies.
func (p *Spot) levelError() func(hz float64) float64 {
	if !hasBody(p.Array) {
		return func(float64) float64 { return math.NaN() }
	}
	b, solved := p.Array.Body, p.solved
	deviation, shift := b.Deviation(), r3.Norm(b.BallCentre)/b.BallRadius
	ball := func(hz float64) float64 {
		ka := 2 * math.Pi * hz / p.SpeedOfSound * b.BallRadius
		return max(trust.Faces(deviation, ka), trust.Cut(shift, ka))
	}
	if solved == nil {
		return ball
	}
	return func(hz float64) float64 {
		share := solved.Share(hz)
		return (1-share)*solved.Off(hz) + share*ball(hz)
	}
}

// Solved tells how far up the true field of the body is solved for; nil where the model is
// another.
func (p *Spot) Solved() *radiate.Solution { return p.solved }

// worthSolving in dB is the error of the ball from which on the body's true field is worth the
// wait: as much as a listener can just tell of a level (ISO 3382-1, table A.1: 1 dB of the
// strength of sound).
const worthSolving = 1

// IsWorthSolving tells whether a ball stands for the body and can be off so far in an octave
// within the design's timing.solve_to_hz that the body's true field would tell more.
func (p *Spot) IsWorthSolving() bool {
	if p.Array.Timing.Model != sphereModel {
		return false
	}
	octaves, dB := p.LevelErrors()
	for i, e := range dB {
		if octaves[i] <= p.Array.Timing.SolveTo && e >= worthSolving {
			return true
		}
	}
	return false
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
