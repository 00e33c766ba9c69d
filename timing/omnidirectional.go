package timing

import (
	"pappus/layout"
	"pappus/timing/omni"

	"gonum.org/v1/gonum/spatial/r3"
)

// Omni is how even an array is all round by ISO 3382-1, whose sources play all drivers in
// parallel: so AsBuilt is what the standard asks of a body. Delays aim an array at its
// spot, and the more they do, the less even it is.
type Omni struct {
	AsBuilt []omni.Result // all drivers at once, no delays
	Aligned []omni.Result // with the delays
}

// judged returns the plan's array as its evenness is judged: in open air, as ISO 3382-1 has
// it; a body that a surface makes whole (body.Body.InOpenAir) on that, since it is half of a
// source without.
func (p *Plan) judged() *layout.Array {
	if b := p.Array.Body; b.IsCut && b.BallCentre == (r3.Vec{}) {
		return unroomed(p.Array)
	}
	return alone(p.Array)
}

// Omni judges the plan's array, see judged, on the circle round the vertical axis through the
// spot.
func (p *Plan) Omni() (Omni, error) {
	h := p.Horizontal
	if open := p.judged(); p.Array.Surface.Present && !open.Surface.Present {
		var err error
		if h, err = p.circle(open, p.listeningCircle); err != nil {
			return Omni{}, err
		}
	}
	return Omni{omni.Check(h.Band, h.Angle, h.Unaligned), omni.Check(h.Band, h.Angle, h.Aligned)}, nil
}

// UpTo returns the highest octave, by its exact centre in Hz, up to which all that the
// standard has a limit for pass; 0 where the lowest fails.
func UpTo(results []omni.Result) float64 {
	last := 0.0
	for _, r := range results {
		if !r.Pass {
			break
		}
		last = r.Band
	}
	return last
}
