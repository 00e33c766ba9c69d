package search

import (
	"cmp"
	"context"
	"math"
	"slices"

	"pappus/layout"
	"pappus/timing"
	"pappus/timing/seats"
)

// screened is a candidate as screening left it.
type screened struct {
	variant int
	Broken  string // why it is out, by codes: "" where it is not
	Figures
}

// limits are what candidates must keep, and what is sought.
type limits struct {
	aims            []Aim
	most, least     int     // drivers
	level           float64 // dB; NaN: floor by the loudest
	floor           float64 // dB, settled after screening
	channels        int
	lowest          float64
	width, height   float64
	pieces          int
	hours, price    float64
	mass            float64
	litresLeast     float64
	litresMost      float64
	levelUnderFound float64
}

// Half as loud is 10 dB less (Stevens 1936, the sone): what is quieter than that under the
// loudest found is another thing.
const floorUnderLoudest = 10.0

// screen looks at a candidate by what is cheap.
func (r *run) screen(i int) screened {
	out := screened{variant: i}
	a, _, err := r.space.array(r.space.at(i))
	if err != nil {
		out.Broken = "cannot_be_built"
		return out
	}
	out.Figures = plain(a)
	if out.Broken = broken(a, r.limits, out.Figures); out.Broken != "" {
		return out
	}
	p, err := timing.Sketch(r.ctx, a)
	if err != nil {
		out.Broken = "cannot_be_planned"
		return out
	}
	out.Figures = figures(p)
	out.Broken = misfit(p.Warnings)
	return out
}

// plain are the figures that need no sound.
func plain(a *layout.Array) Figures {
	return Figures{Loss: math.NaN(), Level: math.NaN(), Onset: math.NaN(), Evenness: math.NaN(), Lowest: math.NaN(),
		Drivers: len(a.Mounts), Channels: a.Wiring.Channels, Price: math.NaN(), Mass: math.NaN()}
}

// figures are those of a plan.
func figures(p *timing.Plan) Figures {
	f := plain(p.Array)
	f.Loss, f.Level, f.Onset, f.Channels = p.Aligned.Loss, p.Loudest, p.Aligned.CombOnset, len(p.Channels)
	if p.Seating != nil {
		f.Loss = seats.Aim(p.Seating.Aim).Of(p.Seating.Planned)
		if p.Seating.Round != nil {
			f.Loss = p.Seating.Planned.Mean
		}
	}
	if len(p.Horizontal.Band) > 0 {
		f.Evenness = p.Unevenness()
	}
	f.Lowest = cmp.Or(p.Protection.Resonance, 0)
	if c := p.Protection.Corner; c > f.Lowest {
		f.Lowest = c
	}
	return f
}

// broken tells which limits and constraints an array breaks, by codes; "" for none.
func broken(a *layout.Array, l limits, f Figures) string {
	switch {
	case f.Drivers > l.most:
		return "search.drivers"
	case f.Drivers < l.least:
		return "search.least_drivers"
	}
	for _, w := range a.Warnings {
		if w.Rank.Stops() || slices.Contains(constraints, w.Code) {
			return w.Code
		}
	}
	return ""
}

// misfit returns the code of the first finding that stops a design; "" for none.
func misfit(found []timing.Finding) string {
	for _, w := range found {
		if w.Rank.Stops() || slices.Contains(constraints, w.Code) {
			return w.Code
		}
	}
	return ""
}

// constraints are the codes of findings below Misfit that no design offered may have.
var constraints = []string{"channels_unused", "channels_fewer", "strings_too_long"}

// aimed are figures as a point whose values are all to be made small.
func (r *run) aimed(f Figures) []float64 {
	out := make([]float64, len(r.Aims))
	for i, a := range r.Aims {
		out[i] = a.of(f)
	}
	return out
}

// of returns what an aim makes small of figures.
func (a Aim) of(f Figures) float64 {
	switch a {
	case Loss:
		return f.Loss
	case Level:
		return -f.Level
	case Evenness:
		return f.Evenness
	case Drivers:
		return float64(f.Drivers)
	case Price:
		return f.Price
	case Hours:
		return f.Hours
	case Litres:
		return f.Litres
	}
	if !math.IsNaN(f.Price) {
		return f.Price
	}
	return float64(f.Drivers)
}

// make gives a candidate its full figures; broken where it is out even so.
func (r *run) made(ctx context.Context, text []byte, a *layout.Array) (Figures, *timing.Plan, string) {
	p, err := timing.Make(ctx, a)
	if err != nil {
		return Figures{}, nil, "cannot_be_planned"
	}
	return figures(p), p, misfit(p.Warnings)
}
