package rehearsal

import (
	"math"
	"math/cmplx"

	"pappus/timing"
	"pappus/timing/drive"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// built returns the plan of what is built, as a place in m hears it: the plan's channels and
// delays with the body and the air that are there.
func (g *Stage) built(at r3.Vec) (*timing.Plan, error) {
	p, a := *g.plan, *g.plan.Array
	a.Air.Temperature += g.vary.Warmer
	if g.vary.True {
		a.Timing.Model = radiate.BodyModel
	}
	p.Array = &a
	return p.At(at)
}

// hear returns what the strings give at frequencies in Hz: [channel][string][frequency].
func (g *Stage) hear(c timing.Case, frequency []float64) ([][][]complex128, error) {
	if g.vary.isNone() {
		return g.plan.StringTransfers(c, frequency), nil
	}
	drivers, err := g.drivers(c, frequency)
	return g.wired(drivers, len(frequency)), err
}

// alone returns what drivers give in the planned air, on the planned body and at the planned place.
func (g *Stage) alone(c timing.Case, frequency []float64) [][]complex128 {
	only := &Stage{plan: g.plan, vary: Variation{Drivers: g.vary.Drivers}}
	drivers, err := only.drivers(c, frequency)
	if err != nil {
		panic(err) // the plan was made for this very place
	}
	return drivers
}

// drivers returns what each driver gives at frequencies in Hz, in the order of the mounts.
func (g *Stage) drivers(c timing.Case, frequency []float64) ([][]complex128, error) {
	spot := r3.Add(g.plan.Array.Spot, g.vary.Moved)
	there, err := g.built(spot)
	if err != nil {
		return nil, err
	}
	drivers := make([][]complex128, len(g.plan.Array.Mounts))
	g.add(drivers, there.DriverTransfers(c, frequency), nil)
	for _, e := range g.vary.Echoes {
		image, err := g.built(r3.Add(spot, e.Image))
		if err != nil {
			return nil, err
		}
		g.add(drivers, image.DriverTransfers(c, frequency), e.through(frequency))
	}
	off := make([]float64, len(frequency))
	if len(g.vary.Shape.waves) > 0 {
		for f, hz := range frequency {
			off[f] = g.plan.LevelError(hz)
		}
	}
	for m, h := range drivers {
		g.drive(h, m, spot, frequency, off)
	}
	return drivers, nil
}

// isNone tells whether drivers are heard as planned.
func (v *Variation) isNone() bool {
	return v.Drivers == nil && v.Moved == (r3.Vec{}) && v.Warmer == 0 && !v.True && len(v.Shape.waves) == 0 && len(v.Echoes) == 0
}

// add adds to each driver what it gives by itself, through a response; nil: as it is.
func (g *Stage) add(drivers [][]complex128, given [][][]complex128, through []complex128) {
	for c, channel := range g.plan.Channels {
		for i, m := range channel.Mounts {
			if drivers[m] == nil {
				drivers[m] = make([]complex128, len(given[c][i]))
			}
			for f, v := range given[c][i] {
				if through != nil {
					v *= through[f]
				}
				drivers[m][f] += v
			}
		}
	}
}

// wired sums drivers into the plan's strings.
func (g *Stage) wired(drivers [][]complex128, n int) [][][]complex128 {
	out := make([][][]complex128, len(g.plan.Channels))
	for c := range out {
		for _, members := range g.plan.Banks[c].Strings {
			sum := make([]complex128, n)
			for _, m := range members {
				for f, v := range drivers[m] {
					sum[f] += v
				}
			}
			out[c] = append(out[c], sum)
		}
	}
	return out
}

// through returns what an echo's way does, at frequencies in Hz.
func (e Echo) through(frequency []float64) []complex128 {
	out, gain := make([]complex128, len(frequency)), math.Pow(10, e.Level/20)
	for f, hz := range frequency {
		out[f] = complex(gain, 0) * complex(0, hz) / complex(e.From, hz)
	}
	return out
}

// drive makes of what a planned driver gives what the one at a mount does to a microphone at a place, on a body that is
// off the plan's by some dB.
func (g *Stage) drive(h []complex128, mount int, at r3.Vec, frequency, off []float64) {
	p := g.plan
	var d Driver
	if g.vary.Drivers != nil {
		d = g.vary.Drivers[mount]
	}
	own := d.over(p, frequency)
	out, most := p.Array.Mounts[mount].Normal, p.LevelError(shapeMost)
	lean := leaning(out, p.Array.PlacingOf(p.Array.Mounts[mount]).Into(at))
	for f, hz := range frequency {
		h[f] *= own[f]
		if off[f] > 0 {
			h[f] *= cmplx.Exp(g.vary.Shape.of(out, lean, hz, off[f], most))
		}
	}
}

// over returns what a driver gives over one as planned, at frequencies in Hz.
func (d Driver) over(p *timing.Plan, frequency []float64) []complex128 {
	out, gain := make([]complex128, len(frequency)), math.Pow(10, d.Level/20)
	if d.Reversed {
		gain = -gain
	}
	for f, hz := range frequency {
		out[f] = cmplx.Rect(gain, -2*math.Pi*hz*d.Late)
	}
	planned := p.Array.Driver
	if planned.Resonance == 0 || planned.Response != nil || d.Resonance == 0 {
		return out
	}
	was, is := make([]complex128, len(frequency)), make([]complex128, len(frequency))
	drive.HighPass(planned.Resonance, planned.ResonanceQ).Fill(was, frequency)
	drive.HighPass(planned.Resonance*d.Resonance, planned.ResonanceQ*d.Q).Fill(is, frequency)
	for f, hz := range frequency {
		if hz > 0 {
			out[f] *= is[f] / was[f]
		}
	}
	return out
}
