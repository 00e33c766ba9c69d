package search

import (
	"math"
	"slices"
	"strings"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/space"
	"pappus/timing"
	"pappus/timing/seats"
)

// screened is a candidate as screening left it, or with full figures.
type screened struct {
	variant int
	Broken  string // keys of limits and codes of findings that it breaks, parted by spaces; empty: none
	Figures
}

// Why a candidate has no figures.
const (
	notBuilt   = "cannot_be_built"
	notPlanned = "cannot_be_planned"
)

// constraints are the codes of findings below Misfit that no design offered may have: strings
// or channels that are not what was asked for.
var constraints = []string{"channels_unused", "channels_fewer", "strings_too_long"}

// screen looks at a candidate by what is cheap: what it takes, and if that may be its sketch.
func (r *run) screen(i int) screened {
	s := r.judge(r.space.Variant(i).Settings)
	s.variant = i
	return s
}

// judge is screen for settings.
func (r *run) judge(set []Setting) screened {
	a, err := r.array(set)
	if err != nil {
		return screened{Broken: notBuilt}
	}
	figures, broken := r.plain(a)
	if len(broken) > 0 {
		return screened{Broken: strings.Join(broken, " "), Figures: figures}
	}
	p, err := timing.Sketch(r.ctx, a)
	if err != nil {
		return screened{Broken: notPlanned, Figures: figures}
	}
	heard(&figures, p)
	return screened{Broken: strings.Join(r.unheard(figures, p), " "), Figures: figures}
}

// plain returns the figures that need no sound, and what limits they break.
func (r *run) plain(a *layout.Array) (f Figures, broken []string) {
	f = Figures{Loss: math.NaN(), Level: math.NaN(), Onset: math.NaN(), Evenness: math.NaN(), Lowest: lowest(a.Driver.Resonance, a.Protection.Corner),
		Drivers: len(a.Mounts), Channels: a.Wiring.Channels}
	c, err := space.CostOf(a)
	if err != nil {
		return f, []string{notBuilt}
	}
	const litre = 1e-3 // m3
	f.Price, f.Plastic, f.Mass, f.Hours, f.Litres = c.Price, c.Plastic, c.Mass, c.Hours, c.Volume/litre
	f.Width, f.Height, f.Depth = c.Width, c.Height, c.Depth
	if c.InOne {
		f.Pieces = 1
	}
	if a.Driver.Mass == 0 {
		f.Mass = math.NaN()
	}
	for _, l := range space.Broken(r.Job.Design.Search, a, c) {
		if word := l.Key + l.Code; !slices.Contains(broken, word) {
			broken = append(broken, word)
		}
	}
	if r.tooHigh(f) && !slices.Contains(broken, keyLowest) {
		broken = append(broken, keyLowest)
	}
	return f, broken
}

// tooHigh tells whether figures leave out low frequencies that are sought.
func (r *run) tooHigh(f Figures) bool { return r.Lowest > 0 && f.Lowest > r.Lowest*(1+1e-9) }

// speechLow in Hz is where the telephone's band begins (ITU-T G.712): with less, speech loses
// its body. A closed box as stiff as the driver itself raises its resonance boxRise times
// (Small, JAES 20 (1972) 798).
const (
	speechLow = 300.0
	boxRise   = 1.4
)

// lowestOf is the lowest frequency in Hz that a search's designs must play: the file's. Where
// that says nothing, not even which bodies to try, and there is no woofer, no array is a toy
// for treble; 0: any will do.
func lowestOf(d *design.Design) float64 {
	if s := d.Search; s.Lowest > 0 || len(s.Vary) > 0 || d.Woofer.Present || !(d.Driver.Small.Fs > 0) {
		return s.Lowest
	}
	return max(speechLow, boxRise*d.Driver.Small.Fs)
}

// lowest is the higher of two frequencies in Hz; NaN where neither is known.
func lowest(resonance, corner float64) float64 {
	if v := max(resonance, corner); v > 0 {
		return v
	}
	return math.NaN()
}

// heard fills in the figures of a plan, or of a sketch.
func heard(f *Figures, p *timing.Plan) {
	f.Loss, f.Level, f.Onset, f.Channels = p.Aligned.Loss, p.Loudest, p.Aligned.CombOnset, len(p.Channels)
	if s := p.Seating; s != nil {
		if f.Loss = s.Planned.Mean; s.Aim != string(seats.Round) {
			f.Loss = seats.Aim(s.Aim).Of(s.Planned)
		}
	}
	if len(p.Horizontal.Band) > 0 {
		f.Evenness = p.Unevenness()
	}
	resonance := p.Protection.Resonance
	if math.IsNaN(resonance) {
		resonance = 0
	}
	f.Lowest = lowest(resonance, p.Protection.Corner)
}

// unheard lists what a plan breaks: limits of its sound, but for the level's own floor, and
// findings.
func (r *run) unheard(f Figures, p *timing.Plan) (broken []string) {
	s := r.Job.Design.Search
	if s.Level != nil && !(f.Level >= *s.Level) {
		broken = append(broken, keyLevel)
	}
	if r.tooHigh(f) {
		broken = append(broken, keyLowest)
	}
	for _, w := range p.Warnings {
		if (w.Rank.Stops() || slices.Contains(constraints, w.Code)) && !slices.Contains(broken, w.Code) {
			broken = append(broken, w.Code)
		}
	}
	if math.IsNaN(f.Loss) || math.IsNaN(f.Level) {
		broken = append(broken, notPlanned)
	}
	return broken
}

// planned gives an array its full figures.
func (r *run) planned(a *layout.Array) (screened, *timing.Plan) {
	figures, broken := r.plain(a)
	p, err := timing.Make(r.ctx, a)
	if err != nil {
		return screened{Broken: notPlanned, Figures: figures}, nil
	}
	heard(&figures, p)
	return screened{Broken: strings.Join(append(broken, r.unheard(figures, p)...), " "), Figures: figures}, p
}

// finest is by what arithmetic may be off in dB, hours and all else that is aimed at: mirrored
// and turned designs are otherwise better than each other by the last bits of a sum.
const finest = 1e-9

// aimed are figures as a point whose values are all to be made small, in steps of finest.
func (r *run) aimed(f Figures) []float64 {
	out := make([]float64, len(r.Aims))
	for i, a := range r.Aims {
		out[i] = math.Round(a.of(f)/finest) * finest
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
