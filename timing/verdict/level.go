package verdict

import (
	"fmt"
	"math"

	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/recording"

	"gonum.org/v1/gonum/spatial/r3"
)

// The band in Hz over which levels are matched where none is given, and how much has to be
// left of each third of an octave.
const (
	matchLow, matchHigh = 500.0, 4000.0
	leastOfBand         = 0.5
	mostOver            = 40.0 // dB over the plan that nothing built is by chance
	otherUneven         = 2.0  // dB, from which on it is asked whether the other case fits better,
	otherBetter         = 0.5  // and by how much it must
)

// Position is a measurement of the whole array at a place.
type Position struct {
	At       r3.Vec // m
	Measured recording.Measured
}

// LevelSetting says how a whole array was measured.
type LevelSetting struct {
	Case      timing.Case // what played
	Low, High float64     // Hz, the band over which the levels are matched; 0: 500 Hz and 4 kHz
	// Gated takes what comes within the gate, against the array without its surroundings;
	// else all that was measured counts, against all that was planned.
	Gated bool
}

// Level is the level of a whole array over what was planned.
type Level struct {
	Gated     bool    // as LevelSetting has it
	Low, High float64 // Hz, the band over which both were matched
	Offset    float64 // dB, what was taken off the measurement for that
	Frequency []float64
	// Measured and Planned are energy means over the positions, in dB, not smoothed; NaN where
	// one of them tells nothing.
	Measured, Planned []float64
	Bands             []Band
	Uneven            float64 // dB, RMS difference of the bands within Low and High
	// OtherCase tells that it fits far better what is planned with the delays set where they
	// were said not to be, or the other way round; OtherUneven is Uneven for that, in dB.
	OtherCase   bool
	OtherUneven float64
}

// Furthest returns the band that is furthest off, and how many differ by more than their
// expanded errors; false where there are none.
func (l Level) Furthest() (worst Band, beyond int, found bool) {
	for i, b := range l.Bands {
		if i == 0 || math.Abs(b.Difference) > math.Abs(worst.Difference) {
			worst = b
		}
		if math.Abs(b.Difference) > Expanded*b.Error {
			beyond++
		}
	}
	return worst, beyond, len(l.Bands) > 0
}

// ErrorAt returns one standard error in dB at a frequency in Hz: straight over log frequency
// between the centres of bands, of which there is one at least.
func (l Level) ErrorAt(hz float64) float64 {
	i := 0
	for i < len(l.Bands)-1 && l.Bands[i+1].Centre < hz {
		i++
	}
	b := l.Bands[i]
	if hz <= b.Centre || i == len(l.Bands)-1 {
		return b.Error
	}
	next := l.Bands[i+1]
	return b.Error + (next.Error-b.Error)*math.Log(hz/b.Centre)/math.Log(next.Centre/b.Centre)
}

// Band is a third of an octave.
type Band struct {
	Centre                        float64 // Hz, exact
	Measured, Planned, Difference float64 // dB, after matching
	// Error in dB is one standard error of Difference: noise, gate, bands, positions and model.
	Error float64
}

// OfLevel holds measurements of a whole array at one or more positions against a plan.
// Errors wrap ErrMeasured, or those of layout.Array.Reach.
func OfLevel(p *timing.Plan, positions []Position, set LevelSetting) (Level, error) {
	v, err := ofLevel(p, positions, set)
	if err != nil || v.Uneven < otherUneven || len(p.Channels) < 2 {
		return v, err
	}
	if set.Case == timing.AsBuilt {
		set.Case = timing.Aligned
	} else {
		set.Case = timing.AsBuilt
	}
	other, err := ofLevel(p, positions, set)
	v.OtherCase, v.OtherUneven = err == nil && other.Uneven < otherBetter*v.Uneven, other.Uneven
	return v, nil
}

func ofLevel(p *timing.Plan, positions []Position, set LevelSetting) (Level, error) {
	if len(positions) == 0 {
		return Level{}, fmt.Errorf("%w: none", ErrMeasured)
	}
	v := Level{Gated: set.Gated, Low: set.Low, High: set.High, Frequency: positions[0].Measured.Frequency}
	if v.Low == 0 {
		v.Low = matchLow
	}
	if v.High == 0 {
		v.High = matchHigh
	}
	n := len(v.Frequency)
	measured, planned := make([]float64, n), make([]float64, n)
	var all []heard
	for i, position := range positions {
		m := position.Measured
		if len(m.Frequency) != n || n == 0 || m.Frequency[0] != v.Frequency[0] || m.Frequency[n-1] != v.Frequency[n-1] {
			return Level{}, fmt.Errorf("position %d: %w: not the same sweep as for the others", i+1, ErrMeasured)
		}
		plan, err := at(p, position.At, set, v.Frequency)
		if err != nil {
			return Level{}, fmt.Errorf("position %d: %w", i+1, err)
		}
		r := m.Whole
		if set.Gated {
			r = m.Gated
		}
		h := newHeard(r, m.At, plan)
		all = append(all, h)
		for f := range v.Frequency {
			measured[f] += h.measured[f] / float64(len(positions))
			planned[f] += h.planned[f] / float64(len(positions))
		}
	}
	v.match(measured, planned)
	v.bandErrors(p, all)
	if len(v.Bands) == 0 || math.IsNaN(v.Offset) {
		return Level{}, fmt.Errorf("%w: nothing was measured from %.0f to %.0f Hz", ErrMeasured, v.Low, v.High)
	}
	for _, b := range v.Bands {
		if b.Difference > mostOver {
			return Level{}, fmt.Errorf("%w: at %s it is %.0f dB over the plan: that is another sweep than was played, or no recording of this array", ErrMeasured, band.Hertz(b.Centre), b.Difference)
		}
	}
	return v, nil
}

// at returns what is planned at a place.
func at(p *timing.Plan, place r3.Vec, set LevelSetting, frequency []float64) ([]complex128, error) {
	h, err := timing.NewHearing(p, timing.Listening{Cases: []timing.Case{set.Case}, Dry: set.Gated}, []r3.Vec{place}, frequency)
	if err != nil {
		return nil, err
	}
	out := make([]complex128, len(frequency))
	h.At([][]complex128{out}, place)
	return out, nil
}

// match fills in the bands and brings the measurement to the plan's level.
func (v *Level) match(measured, planned []float64) {
	for _, centre := range band.ThirdsWithin(v.Frequency[0], v.Frequency[len(v.Frequency)-1]) {
		low, high := band.Edges(centre, 3)
		var all, count, m, p float64
		for f, hz := range v.Frequency {
			if hz < low || hz >= high {
				continue
			}
			all++
			if !math.IsNaN(measured[f]) {
				count, m, p = count+1, m+measured[f], p+planned[f]
			}
		}
		if all == 0 || count < leastOfBand*all {
			continue
		}
		v.Bands = append(v.Bands, Band{Centre: centre, Measured: 10 * math.Log10(m/count), Planned: 10 * math.Log10(p/count)})
	}
	v.Offset, v.Uneven = v.spread()
	for i := range v.Bands {
		b := &v.Bands[i]
		b.Measured -= v.Offset
		b.Difference = b.Measured - b.Planned
	}
	for f := range v.Frequency {
		v.Measured = append(v.Measured, 10*math.Log10(measured[f])-v.Offset)
		v.Planned = append(v.Planned, 10*math.Log10(planned[f]))
	}
}

// spread returns the mean difference of the bands within the band of matching in dB and the
// RMS of what is left; NaN where there are none.
func (v *Level) spread() (mean, rms float64) {
	sum, square, count := 0.0, 0.0, 0.0
	for _, b := range v.Bands {
		if b.Centre >= v.Low && b.Centre <= v.High {
			d := b.Measured - b.Planned
			sum, square, count = sum+d, square+d*d, count+1
		}
	}
	mean = sum / count
	return mean, math.Sqrt(max(0, square/count-mean*mean))
}
