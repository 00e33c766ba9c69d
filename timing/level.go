package timing

import (
	"fmt"
	"math"

	"pappus/timing/band"
	"pappus/timing/equaliser"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// What Level fits, and how: few, broad and mostly downward (common practice).
const (
	levelCount   = 160
	levelLow     = 100.0   // Hz, or a quarter above the driver's resonance and the high-pass
	levelHigh    = 10000.0 // Hz
	levelApart   = 0.1     // m from the spot to the six places round it
	levelSmooth  = 6       // parts of an octave
	nullLoss     = 6.0     // dB of summing loss from which on a dip comes from timing
	aboveCorner  = 1.25
	leastOctaves = 2.0
)

// levelLimits returns the limits of the fit.
func levelLimits(low, high float64) equaliser.Limits {
	return equaliser.Limits{Sections: 5, Low: low, High: high, LeastQ: 0.4, MostQ: 4, Boost: 3, Cut: 9, Shelves: true}
}

// Levelling is the sections that make the spot's level even, the same on every
// channel.
type Levelling struct {
	Sections []equaliser.Section
	// Frequency in Hz, the level in dB before and after, as the mean energy of the
	// places round the spot, smoothed to a sixth of an octave.
	Frequency, Before, After []float64
	Target                   float64 // dB
	// Uneven is the RMS distance in dB from the target before and after, nulls left
	// out.
	UnevenBefore, UnevenAfter float64
	Nulls                     []Null // left alone
}

// Null is a stretch that is weak because sounds arrive out of step there.
type Null struct {
	Low, High float64 // Hz
	Loss      float64 // dB, the greatest summing loss there
}

// String says why a null is left alone.
func (n Null) String() string {
	return fmt.Sprintf("%s to %s: up to %.0f dB are lost because the drivers are out of step; a boost would be spent on all of them alike and only heat them",
		band.Hertz(n.Low), band.Hertz(n.High), n.Loss)
}

// Level fits a few sections to the level at the spot and six places 0.1 m round it,
// those of them that sound can reach. Errors wrap equaliser.ErrCurve where nothing
// can be levelled, as where all of it is out of step, or equaliser.ErrLimits.
func Level(p *Plan) (Levelling, error) {
	low := levelLow
	if r := p.Protection.Resonance; r > 0 {
		low = max(low, aboveCorner*r)
	}
	low = max(low, aboveCorner*p.Protection.Corner)
	if low > levelHigh/math.Exp2(leastOctaves) {
		return Levelling{}, fmt.Errorf("timing: %w: little is left above %.0f Hz", equaliser.ErrCurve, low)
	}
	frequency := make([]float64, levelCount)
	band.Log(frequency, low, levelHigh)
	energy, lost, err := p.around(frequency)
	if err != nil {
		return Levelling{}, err
	}
	out := Levelling{Frequency: frequency, Nulls: nulls(frequency, lost)}
	leave := make([]bool, levelCount)
	sum, count := 0.0, 0.0
	level := make([]float64, levelCount)
	for f, e := range energy {
		level[f] = 10 * math.Log10(e)
	}
	out.Before = band.Smooth(nil, frequency, level, levelSmooth)
	for f := range frequency {
		if leave[f] = lost[f] >= nullLoss; !leave[f] {
			sum += out.Before[f]
			count++
		}
	}
	if count == 0 {
		return Levelling{}, fmt.Errorf("timing: %w: all of it is out of step", equaliser.ErrCurve)
	}
	out.Target = sum / count
	target := make([]float64, levelCount)
	for f := range target {
		target[f] = out.Target
	}
	fit, err := equaliser.Fit(frequency, out.Before, target, leave, p.Array.Processor.Rate, levelLimits(low, levelHigh))
	if err != nil {
		return Levelling{}, fmt.Errorf("timing: %w", err)
	}
	out.Sections, out.UnevenBefore, out.UnevenAfter = fit.Sections, fit.Before, fit.After
	out.After = make([]float64, levelCount)
	for f := range out.After {
		out.After[f] = out.Before[f] + fit.Correction[f]
	}
	return out, nil
}

// around returns the mean energy and the summing loss in dB, by energy, of the
// places round the spot at frequencies in Hz.
func (p *Plan) around(frequency []float64) (energy, lost []float64, err error) {
	var places []r3.Vec
	for _, by := range []r3.Vec{{}, {X: levelApart}, {X: -levelApart}, {Y: levelApart}, {Y: -levelApart}, {Z: levelApart}, {Z: -levelApart}} {
		if at := r3.Add(p.Array.Spot, by); !outOfReach(p.Array, at) {
			places = append(places, at)
		}
	}
	field, err := newField(p.Array, radiate.NewMedium(p.airState(), frequency), places)
	if err != nil {
		return nil, nil, err
	}
	k, nf := newKernel(p, field, frequency), len(frequency)
	sum, parts := make([]complex128, len(places)*nf), make([]float64, len(places)*nf)
	one := make([]complex128, len(places)*nf)
	for m, mount := range p.Array.Mounts {
		clear(one)
		field.Add(one, mount, places, k.weight[m*nf:(m+1)*nf])
		for i, v := range one {
			sum[i] += v
			parts[i] += math.Sqrt(energyOf(v))
		}
	}
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

// nulls returns the stretches where the summing loss reaches nullLoss.
func nulls(frequency, lost []float64) []Null {
	var out []Null
	inside := false
	for f, loss := range lost {
		if loss < nullLoss {
			inside = false
			continue
		}
		if !inside {
			out = append(out, Null{Low: frequency[f]})
			inside = true
		}
		last := &out[len(out)-1]
		last.High, last.Loss = frequency[f], max(last.Loss, loss)
	}
	return out
}
