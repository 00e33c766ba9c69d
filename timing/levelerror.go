package timing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pappus/layout"
	"pappus/layout/advice"
	"pappus/timing/band"
	"pappus/timing/trust"

	"gonum.org/v1/gonum/spatial/r3"
)

// LevelError returns by how much in dB the level of one driver can be off at a frequency
// in Hz because a ball stands for the body (package trust): 0 for a ball, whole or
// standing on something hard; NaN in the models that have no body.
func (p *Plan) LevelError(hz float64) float64 { return p.levelError()(hz) }

// levelError is LevelError for many frequencies.
func (p *Plan) levelError() func(hz float64) float64 {
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
func (p *Plan) LevelErrors() (octaves, dB []float64) {
	octaves = band.Octaves()
	frequency := band.Frequencies(octaves, 1, perOctave)
	dB = make([]float64, len(octaves))
	off := p.levelError()
	for i, hz := range frequency {
		dB[i/perOctave] += off(hz) / perOctave
	}
	return octaves, dB
}

// hardlyOff is the error in dB below which it would be shown as 0.0.
const hardlyOff = 0.05

// trusted says how far to trust the levels; nothing where a ball is no approximation.
func (p *Plan) trusted() string {
	octaves, dB := p.LevelErrors()
	var parts []string
	for b, centre := range octaves {
		if name := band.Name(centre); name == "500" || name == "1k" || name == "2k" || name == "4k" {
			parts = append(parts, fmt.Sprintf("%.1f dB at %s", dB[b], map[string]string{"500": "500 Hz", "1k": "1 kHz", "2k": "2 kHz", "4k": "4 kHz"}[name]))
		}
	}
	if !(slices.Max(dB) >= hardlyOff) {
		return ""
	}
	why := "the body's faces are flat"
	if p.Array.Body.BallCentre != (r3.Vec{}) {
		why = "the body is cut and stands free"
	}
	return fmt.Sprintf("Since %s, the level of one driver can be off by %s; most near its front (by an independent boundary-element solution).",
		why, strings.Join(parts, ", "))
}

// farFromBall warns of a body that is farther from a ball than any that the model was
// held to. How near the ball of a cut body in open air is, Notes says.
func farFromBall(a *layout.Array) []advice.Finding {
	b := a.Body
	off := b.Deviation()
	if a.Timing.Model != sphereModel || b.BallCentre != (r3.Vec{}) || off <= trust.Known {
		return nil
	}
	return []advice.Finding{{Code: "far_from_ball", Rank: advice.Cost,
		What: fmt.Sprintf("the plan takes the body for a ball of %.0f mm radius, but a face lies %.0f mm off that ball: more than on any body that the model has been checked with, so levels and delays are a guess",
			1000*b.BallRadius, 1000*off*b.BallRadius),
		Cure: "measure once it is built, or take a rounder body"}}
}
