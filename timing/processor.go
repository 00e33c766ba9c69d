package timing

import (
	"math"

	"pappus/layout/prose"
	"pappus/timing/biquad"
	"pappus/timing/crossover"
	"pappus/timing/equaliser"
)

// ProcessorRow is what one channel's processor is set to.
type ProcessorRow struct {
	Channel  int     // its number, from 1; the woofer's is the next that is free
	Name     string  // WooferName for the woofer; else empty
	Delay    float64 // s, what can be set: the channel's own, Channel.Delay
	Samples  float64 // the same at the processor's rate
	Metre    float64 // the same as a way in air, in m
	Exact    float64 // s, before rounding
	Residual float64 // s, Delay less Exact
	// At 4 and 8 kHz, by how many dB the residual lowers this channel's part of a
	// sum in step: -20 log10 cos(2 pi f residual). +Inf from a quarter of a period
	// on, where the channel no longer adds to the sum; NaN from half the rate on.
	Cost4k, Cost8k float64
	OutOfStep      float64 // Hz, where the residual is a quarter of a period; +Inf from half the rate on
	Gain           float64 // dB
	Invert         bool
	HighPass       string // in words; empty where there is none
	Filters        []ProcessorFilter
}

// ProcessorFilter is one section in both of the forms that processors ask for.
// The coefficients have a0 = 1 and a1, a2 subtracted, as package biquad says.
type ProcessorFilter struct {
	Name         string  // "high-pass", the same or "low-pass" behind "crossover ", or the shape of an equaliser's section
	Frequency, Q float64 // Hz; Q is 0 for a section of first order
	Gain         float64 // dB
	Coefficients biquad.Section
}

// WooferName is the name of the woofer's row.
const WooferName = "woofer"

// Processor returns the settings of every channel, in order, with the same
// equaliser sections on all, which may be nil. Where there is a woofer every channel
// has its crossover's high-pass and the delay that waits for it, and the last row is
// the woofer's own, without those sections. All delays have that in common which
// makes rounding to the processor's step cost least. A high-pass or a section that the
// processor's rate cannot have is an error that wraps crossover.ErrRate or
// equaliser.ErrSection; those of WithWoofer come through.
func Processor(p *Plan, sections []equaliser.Section) ([]ProcessorRow, error) {
	filters, err := p.filters(sections)
	if err != nil {
		return nil, err
	}
	woofer := []ProcessorRow(nil)
	if p.Array.Woofer.Present {
		row, high, err := p.wooferRow()
		if err != nil {
			return nil, err
		}
		woofer, filters = []ProcessorRow{row}, append(high, filters...)
	}
	out := make([]ProcessorRow, len(p.Channels), len(p.Channels)+1)
	for i, c := range p.Channels {
		r := ProcessorRow{Channel: c.ID, Gain: c.Gain, Invert: c.Invert, Filters: filters}
		r.setDelay(&p.Spot, c.Delay, c.Exact)
		if high := p.Protection.HighPass(); high.Corner() > 0 {
			r.HighPass = high.String()
		}
		out[i] = r
	}
	return append(out, woofer...), nil
}

// setDelay fills in a delay in s, and what the step has made of the exact one.
func (r *ProcessorRow) setDelay(p *Spot, delay, exact float64) {
	rate := p.Array.Processor.Rate
	r.Delay, r.Exact, r.Samples, r.Metre = delay, exact, delay*rate, delay*p.SpeedOfSound
	r.Residual = r.Delay - r.Exact
	r.Cost4k, r.Cost8k = stepCost(4000, r.Residual, rate), stepCost(8000, r.Residual, rate)
	if r.OutOfStep = 0.25 / math.Abs(r.Residual); r.OutOfStep >= rate/2 {
		r.OutOfStep = math.Inf(1)
	}
}

// stepCost returns by how many dB a sound that is late, or early, by so many s
// lowers its part of a sum in step; +Inf and NaN as ProcessorRow has them.
func stepCost(hz, late, rate float64) float64 {
	turns := math.Abs(hz * late)
	switch {
	case hz >= rate/2:
		return math.NaN()
	case turns >= 0.25:
		return math.Inf(1)
	}
	return max(0, -20*math.Log10(math.Cos(2*math.Pi*turns)))
}

// filters returns the high-pass and some sections as the processor's rate has them.
func (p *Spot) filters(sections []equaliser.Section) ([]ProcessorFilter, error) {
	var out []ProcessorFilter
	rate := p.Array.Processor.Rate
	if high := p.Protection.HighPass(); high.Corner() > 0 {
		var err error
		if out, err = sectionsOf(high, "", rate); err != nil {
			return nil, p.Array.Fault("processor.rate_hz", prose.Number(rate, 6), prose.Sprintf(
				"the high-pass has its corner at %.4g Hz, as worked out; must be above %.0f, twice that", high.Corner(), math.Ceil(2*high.Corner())), err)
		}
	}
	chain, err := equaliser.Chain(sections, rate)
	if err != nil {
		return nil, err
	}
	return append(out, equaliserFilters(sections, chain)...), nil
}

// equaliserFilters returns sections with their coefficients.
func equaliserFilters(sections []equaliser.Section, chain biquad.Chain) (out []ProcessorFilter) {
	for i, s := range sections {
		out = append(out, ProcessorFilter{Name: s.Shape.String(), Frequency: s.Frequency, Q: s.Q, Gain: s.Gain, Coefficients: chain[i]})
	}
	return out
}

// sectionsOf returns the sections of a filter at a rate in Hz, a word before their
// names.
func sectionsOf(f crossover.Filter, before string, rate float64) ([]ProcessorFilter, error) {
	chain, err := f.Digital(rate)
	if err != nil {
		return nil, err
	}
	out := make([]ProcessorFilter, len(chain))
	for i, s := range f.Sections() {
		out[i] = ProcessorFilter{Name: before + f.Kind().String(), Frequency: s.Frequency, Q: s.Q, Coefficients: chain[i]}
	}
	return out, nil
}

// ofCrossover stands before the names of a crossover's sections.
const ofCrossover = "crossover "

// wooferRow returns the settings of the woofer, and what its crossover puts on every
// channel of the array.
func (p *Spot) wooferRow() (row ProcessorRow, high []ProcessorFilter, err error) {
	w, err := WithWoofer(p)
	if err != nil {
		return row, nil, err
	}
	rate := p.Array.Processor.Rate
	row = ProcessorRow{Name: WooferName, Gain: p.Array.Woofer.Gain, Invert: w.Invert}
	row.setDelay(p, w.Delay, w.Exact)
	row.Channel = p.WooferID()
	if row.Filters, err = sectionsOf(w.LowPass, ofCrossover, rate); err != nil {
		return row, nil, err
	}
	high, err = sectionsOf(w.HighPass, ofCrossover, rate)
	return row, high, err
}

// WooferID returns the number of the woofer's channel: the next that is free.
func (p *Spot) WooferID() int {
	id := 0
	for _, c := range p.Channels {
		id = max(id, c.ID+1)
	}
	return id
}
