package timing

import (
	"math"
	"slices"

	"pappus/timing/band"
	"pappus/timing/equaliser"

	"gonum.org/v1/gonum/spatial/r3"
)

// What Level fits, and how: few, broad and mostly downward (common practice).
const (
	levelCount   = 160
	levelLow     = 100.0   // Hz, or what stands below
	levelHigh    = 10000.0 // Hz, or near half the processor's rate
	nearHalf     = 0.45    // of the rate
	levelApart   = 0.1     // m from the spot to the six places round it
	levelSmooth  = 6       // parts of an octave
	nullLoss     = 6.0     // dB of summing loss that a null reaches: half the pressure
	nullEdge     = 3.0     // dB down to which it lasts: half the energy, as at the comb onset
	aboveCorner  = 1.25    // times the driver's resonance and the high-pass
	aboveWoofer  = 2.0     // times the crossover: there a woofer of order 2 is 14 dB down
	leastOctaves = 2.0
	worthLevel   = 0.3 // dB of the whole's RMS that each section must take off
	levelGuard   = 0.5 // octaves from a null in which nothing is boosted, and from a boost to a cut
)

// levelLimits returns the limits of the fit. Beside a woofer there is no low shelf: it
// would move the array's level at the crossover.
func (p *Spot) levelLimits(low, high float64) equaliser.Limits {
	return equaliser.Limits{Sections: 5, Low: low, High: high, LeastQ: 0.4, MostQ: 2.5, Boost: 3, Cut: 9,
		LowShelf: !p.Array.Woofer.Present, HighShelf: true, AnyLevel: true, Worth: worthLevel, Apart: levelGuard}
}

// Levelling is the sections that make the spot's level even, the same on every
// channel.
type Levelling struct {
	Sections []equaliser.Section
	// Frequency in Hz, the level in dB before and after, as the mean energy of the
	// places round the spot, smoothed to a sixth of an octave.
	Frequency, Before, After []float64
	Target                   float64 // dB, the mean after where all counts: away from nulls, if there is such a place
	// Uneven is the RMS distance in dB from the mean before and after, nulls left out.
	UnevenBefore, UnevenAfter float64
	Nulls                     []Null // left alone
	// Echoes are those whose first dip is as deep as a null: nothing is boosted near it, for
	// a boost goes into the echo too, and the dip moves with the ear.
	Echoes []Echo
	// Error in dB at each frequency is how far the level of one driver can be off by
	// the model of the body (Plan.LevelError); 0 where nothing is known of that. What
	// keeps within it of the mean is left alone, and of what does not only the rest is evened
	// out: the model cannot know more.
	Error []float64
}

// Null is a stretch that is weak because sounds arrive out of step there.
type Null struct {
	Low, High float64 // Hz
	Loss      float64 // dB, the greatest summing loss there
}

// Level fits a few sections to the level at the spot and six places 0.1 m round it,
// those of them that sound can reach. It is the array's level, above where a woofer is
// heard. Errors wrap equaliser.ErrCurve where nothing can be levelled, as where all of it
// is out of step, and name the key that it comes from.
func Level(p *Spot) (Levelling, error) {
	low, high := p.levelFrom().low(), min(levelHigh, nearHalf*p.Array.Processor.Rate)
	if err := p.levelled(high); err != nil {
		return Levelling{}, err
	}
	frequency := make([]float64, levelCount)
	band.Log(frequency, low, high)
	energy, lost, err := p.around(frequency)
	if err != nil {
		return Levelling{}, err
	}
	out := Levelling{Frequency: frequency, Nulls: nulls(frequency, lost), Echoes: deepEchoes(p.Echoes, low, high)}
	care := levelCare(frequency, out.Nulls)
	careForEchoes(care, frequency, out.Echoes)
	level := make([]float64, levelCount)
	for f, e := range energy {
		level[f] = 10 * math.Log10(e)
	}
	out.Before = band.Smooth(nil, frequency, level, levelSmooth)
	mean := levelMean(out.Before, care)
	if math.IsNaN(mean) {
		return Levelling{}, p.outOfStep(low, high)
	}
	target := make([]float64, levelCount)
	for f := range target {
		target[f] = mean
	}
	out.Error = p.errorBand(frequency)
	fit, err := equaliser.Fit(frequency, beyond(out.Before, mean, out.Error), target, care, p.Array.Processor.Rate, p.levelLimits(low, out.top()))
	if err != nil {
		return Levelling{}, err
	}
	out.Sections, out.Target, out.After = fit.Sections, mean, make([]float64, levelCount)
	sum, n := 0.0, 0.0
	for f := range out.After {
		out.After[f] = out.Before[f] + fit.Correction[f]
		if care[f] == equaliser.Count {
			sum, n = sum+out.After[f], n+1
		}
	}
	if n > 0 {
		out.Target = sum / n
	}
	out.UnevenBefore, out.UnevenAfter = uneven(out.Before, care), uneven(out.After, care)
	return out, nil
}

// errorBand returns the plan's level error in dB at frequencies in Hz, 0 where there is
// none to be told.
func (p *Spot) errorBand(frequency []float64) []float64 {
	out, off := make([]float64, len(frequency)), p.levelError()
	for f, hz := range frequency {
		if e := off(hz); !math.IsNaN(e) {
			out[f] = e
		}
	}
	return out
}

// beyond returns a level with each distance from its mean in dB made smaller by a band,
// down to 0.
func beyond(level []float64, mean float64, band []float64) []float64 {
	out := make([]float64, len(level))
	for f, v := range level {
		over := v - mean
		out[f] = mean + math.Copysign(max(0, math.Abs(over)-band[f]), over)
	}
	return out
}

// deepEchoes returns the echoes whose first dip is as deep as a null, near what is levelled
// from low to high, Hz.
func deepEchoes(all []Echo, low, high float64) []Echo {
	var out []Echo
	for _, e := range all {
		if e.Depth >= nullLoss && e.Dip*math.Exp2(levelGuard) >= low && e.Dip <= high*math.Exp2(levelGuard) {
			out = append(out, e)
		}
	}
	return out
}

// careForEchoes lets nothing be boosted near the dips of echoes.
func careForEchoes(care []equaliser.Care, frequency []float64, echoes []Echo) {
	for f, hz := range frequency {
		for _, e := range echoes {
			if math.Abs(math.Log2(hz/e.Dip)) <= levelGuard {
				care[f] = max(care[f], equaliser.CutOnly)
			}
		}
	}
}

// levelMean returns the mean of a level in dB, nulls left out; NaN where all is null.
func levelMean(level []float64, care []equaliser.Care) float64 {
	sum, n := 0.0, 0.0
	for f, v := range level {
		if care[f] != equaliser.Leave {
			sum += v
			n++
		}
	}
	return sum / n
}

// uneven returns the RMS distance in dB of a level from its mean, nulls left out.
func uneven(level []float64, care []equaliser.Care) float64 {
	mean, square := levelMean(level, care), make([]float64, len(level))
	for f, v := range level {
		square[f] = (v - mean) * (v - mean)
	}
	return math.Sqrt(levelMean(square, care))
}

// top returns the frequency in Hz up to which sections are of use: where a null
// begins that lasts to the end.
func (l Levelling) top() float64 {
	last := l.Frequency[len(l.Frequency)-1]
	if n := len(l.Nulls); n > 0 && l.Nulls[n-1].High == last {
		return l.Nulls[n-1].Low
	}
	return last
}

// around returns the mean energy and the summing loss in dB, by energy, of the
// places round the spot at frequencies in Hz.
func (p *Spot) around(frequency []float64) (energy, lost []float64, err error) {
	var places []r3.Vec
	for _, by := range []r3.Vec{{}, {X: levelApart}, {X: -levelApart}, {Y: levelApart}, {Y: -levelApart}, {Z: levelApart}, {Z: -levelApart}} {
		if at := r3.Add(p.Array.Spot, by); p.Array.Reach(at) == nil {
			places = append(places, at)
		}
	}
	s, err := newScene(p.Array, frequency)
	if err != nil {
		return nil, nil, err
	}
	fed, nf := p.feed(true, frequency, p.response(frequency)), len(frequency)
	sum, parts := make([]complex128, len(places)*nf), make([]float64, len(places)*nf)
	s.Each(s.Ways, places, func(_, place int, pressure []complex128) {
		for m := range p.Array.Mounts {
			for f, w := range fed.Of(m) {
				v := w * pressure[m*nf+f]
				sum[place*nf+f] += v
				parts[place*nf+f] += math.Sqrt(energyOf(v))
			}
		}
	})
	energy, lost = make([]float64, nf), make([]float64, nf)
	for f := range frequency {
		inStep := 0.0
		for i := f; i < len(sum); i += nf {
			energy[f] += energyOf(sum[i]) / float64(len(places))
			inStep += parts[i] * parts[i] / float64(len(places))
		}
		lost[f] = 10 * math.Log10(inStep/energy[f])
	}
	return energy, lost, nil
}

// nulls returns the stretches where the summing loss in dB reaches nullLoss, out to
// where it falls below nullEdge.
func nulls(frequency, lost []float64) []Null {
	var out []Null
	begin := 0
	for f, loss := range lost {
		if loss < nullEdge {
			begin = f + 1
			continue
		}
		if f+1 < len(lost) && lost[f+1] >= nullEdge {
			continue
		}
		if most := slices.Max(lost[begin : f+1]); most >= nullLoss {
			out = append(out, Null{Low: frequency[begin], High: frequency[f], Loss: most})
		}
	}
	return out
}

// levelCare leaves nulls alone, and lets nothing be boosted near one: what the level
// lacks there the drivers lose because they drift out of step.
func levelCare(frequency []float64, all []Null) []equaliser.Care {
	care := make([]equaliser.Care, len(frequency))
	for f, hz := range frequency {
		for _, n := range all {
			switch {
			case n.Low <= hz && hz <= n.High:
				care[f] = equaliser.Leave
			case n.Low <= hz*math.Exp2(levelGuard) && hz <= n.High*math.Exp2(levelGuard):
				care[f] = max(care[f], equaliser.CutOnly)
			}
		}
	}
	return care
}
