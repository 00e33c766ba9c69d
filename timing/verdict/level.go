package verdict

import (
	"fmt"
	"math"
	"pappus/layout"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/recording"

	"gonum.org/v1/gonum/spatial/r3"
)

// What is told of a level.
const (
	leastOfBand = 0.5  // of a third of an octave must be left: less is another band than that by name
	mostOver    = 40.0 // dB over the plan that nothing built is by chance: 100 times the voltage
	otherUneven = 2.0  // dB, from which on it is asked whether the other case fits better: as rooms let thirds of octaves be (common practice)
	otherBetter = 0.5  // and by how much it must: 6 dB less
	roughBands  = 2    // on each side, by which it is told how rough the bands are: over 21 loudspeakers of the trial
	// 96.4 percent of intervals held with 2, 95.8 with 3, 96.8 with 5, 85.8 without
	pieces = 4 // of a third of an octave, of which each is left out in turn: a twelfth of an octave each, as narrow as 6 ms tell apart at 3 kHz
)

// Position is a measurement of the whole array at a place.
type Position struct {
	At       r3.Vec // m
	Measured recording.Measured
	// Repeats are the recordings of which Measured is the mean; fewer than two: there is one.
	Repeats []recording.Measured
}

// LevelSetting says how a whole array was measured.
type LevelSetting struct {
	Case      timing.Case // what played
	Low, High float64     // Hz, the band over which the levels are matched; 0: layout.WeightLowHz and WeightHighHz
	// Gated takes what comes within the gate, against the array without its surroundings;
	// else all that was measured counts, against all that was planned.
	Gated bool

	surface bool // what comes within the gate is held against the array with the surface, but without the room
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
	// Noise is what noise alone would give, in dB, brought to the plan's level as Measured is,
	// known where that is not, too; -Inf: there is none.
	Noise  []float64
	Bands  []Band
	Uneven float64 // dB, RMS difference of the bands within Low and High
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
// Where sound cannot reach a place the error is that of layout.Array.Reach.
func OfLevel(p *timing.Plan, positions []Position, set LevelSetting) (Level, error) {
	v, err := ofLevel(p, positions, set)
	if err != nil || v.Uneven < otherUneven || len(p.Channels) == 1 {
		return v, err
	}
	if set.Case == timing.AsBuilt {
		set.Case = timing.Aligned
	} else {
		set.Case = timing.AsBuilt
	}
	other, err := ofLevel(p, positions, set)
	v.OtherCase, v.OtherUneven = err == nil && v.isOther(other), other.Uneven
	return v, nil
}

// isOther tells whether a measurement fits the other case far better than the one that was
// said.
func (v Level) isOther(other Level) bool {
	return v.Uneven >= otherUneven && other.Uneven < otherBetter*v.Uneven
}

func ofLevel(p *timing.Plan, positions []Position, set LevelSetting) (Level, error) {
	if len(positions) == 0 {
		return Level{}, fmt.Errorf("%w: none", errMeasured)
	}
	v := Level{Gated: set.Gated, Low: set.Low, High: set.High, Frequency: positions[0].Measured.Frequency}
	n := len(v.Frequency)
	if v.Low == 0 {
		v.Low = layout.WeightLowHz
	}
	if v.High == 0 {
		v.High = layout.WeightHighHz
	}
	if set.Low == 0 && set.High == 0 && n > 0 && len(band.ThirdsWithin(max(v.Low, v.Frequency[0]), min(v.High, v.Frequency[n-1]))) == 0 {
		v.Low, v.High = v.Frequency[0], v.Frequency[n-1] // the sweep is beside the usual band, as with a high-pass at 3 kHz
	}
	measured, planned, noise := make([]float64, n), make([]float64, n), make([]float64, n)
	var all []heard
	for i, position := range positions {
		m := position.Measured
		if len(m.Frequency) != n || n == 0 || m.Frequency[0] != v.Frequency[0] || m.Frequency[n-1] != v.Frequency[n-1] {
			return Level{}, fmt.Errorf("position %d: %w: not the same sweep as for the others", i+1, errMeasured)
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
		h.hear(position, set.Gated)
		all = append(all, h)
		for f := range v.Frequency {
			measured[f] += h.measured[f] / float64(len(positions))
			planned[f] += h.planned[f] / float64(len(positions))
			noise[f] += h.noise[f] / float64(len(positions))
		}
	}
	v.match(measured, planned)
	for _, e := range noise {
		v.Noise = append(v.Noise, 10*math.Log10(e)-v.Offset)
	}
	v.bandErrors(p, all, v.placed(p, positions, set))
	if len(v.Bands) == 0 || math.IsNaN(v.Offset) {
		return Level{}, fmt.Errorf("%w: nothing was measured from %.0f to %.0f Hz", errMeasured, v.Low, v.High)
	}
	return v, v.check()
}

// check returns an error where something built cannot be so loud.
func (v Level) check() error {
	for _, b := range v.Bands {
		if b.Difference > mostOver {
			return fmt.Errorf("%w: at %s it is %.0f dB over the plan: that is another sweep than was played, or no recording of this array", errMeasured, band.Hertz(b.Centre), b.Difference)
		}
	}
	return nil
}

// at returns what is planned at a place.
func at(p *timing.Plan, place r3.Vec, set LevelSetting, frequency []float64) ([]complex128, error) {
	h, err := timing.NewHearing(&p.Spot, timing.Listening{Cases: []timing.Case{set.Case}, Dry: set.Gated && !(set.surface && p.Array.Surface.Present)}, []r3.Vec{place}, frequency)
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
		from, to := band.Range(v.Frequency, low, high)
		var count, m, p float64
		for f := from; f < to; f++ {
			if !math.IsNaN(measured[f]) {
				count, m, p = count+1, m+measured[f], p+planned[f]
			}
		}
		if count == 0 || count < leastOfBand*float64(to-from) {
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

// heard is what was measured and planned at one position: energies at each frequency, that of
// noise alone, the measured one's variance by noise and gate, and for how long the response
// listens, in s.
type heard struct {
	measured, planned, noise, variance []float64
	length                             float64
	repeats                            [][]float64 // energies of each recording
	wired                              bool        // their gains can be compared
}

// newHeard returns that of one response and what is planned.
func newHeard(r recording.Response, at float64, plan []complex128) heard {
	n := len(plan)
	h := heard{measured: make([]float64, n), planned: make([]float64, n), noise: make([]float64, n), variance: make([]float64, n), length: r.To - at}
	for f, v := range plan {
		e := energy(r.Transfer[f])
		share := r.Error[f] * math.Ln10 / 10 // of the energy
		h.measured[f], h.planned[f], h.noise[f], h.variance[f] = e, energy(v), math.Pow(10, r.Floor[f]/10), e*e*share*share
	}
	return h
}
