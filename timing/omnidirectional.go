package timing

import "pappus/timing/omni"

// Omni is how even an array is all round by ISO 3382-1, whose sources play all drivers in
// parallel: so AsBuilt is what the standard asks of a body. Delays aim an array at its
// spot, and the more they do, the less even it is.
type Omni struct {
	AsBuilt []omni.Result // all drivers at once, no delays
	Aligned []omni.Result // with the delays
}

// Omni judges the plan's array on the circle round the vertical axis through the spot, in
// open air as the standard has it. A body that is cut to stand on a surface is judged on
// it, since it is half of a source without.
func (p *Plan) Omni() (Omni, error) {
	h := p.Horizontal
	if p.Array.Surface.Present && !p.Array.Body.IsCut {
		open := *p.Array
		open.Surface.Present = false
		var err error
		if h, err = p.circle(&open, p.listeningCircle); err != nil {
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
