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
	Delay    float64 // s, as worked out, Common in it
	Common   float64 // s, the same in every row: what all wait for so that rounding costs least
	Samples  float64 // the same at the processor's rate
	Metre    float64 // the same as a way in air, in m
	Set      float64 // s, the nearest that can be set
	SetCount float64 // the same in samples
	Residual float64 // s, Set less Delay
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

// SignConvention says how the five coefficients are meant.
const SignConvention = "y[n] = b0 x[n] + b1 x[n-1] + b2 x[n-2] - a1 y[n-1] - a2 y[n-2], a0 = 1; where a processor adds a1 and a2, turn their signs"

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
	woofer, wait := []ProcessorRow(nil), 0.0
	if p.Array.Woofer.Present {
		row, high, delay, err := p.wooferRow()
		if err != nil {
			return nil, err
		}
		woofer, wait, filters = []ProcessorRow{row}, delay, append(high, filters...)
	}
	common := p.commonDelay(wait)
	out := make([]ProcessorRow, len(p.Channels), len(p.Channels)+1)
	for i, c := range p.Channels {
		r := ProcessorRow{Channel: c.ID, Gain: c.Gain, Invert: c.Invert, Filters: filters}
		r.setDelay(p, c.Delay+wait, common)
		if high := p.Protection.HighPass(); high.Corner() > 0 {
			r.HighPass = high.String()
		}
		out[i] = r
	}
	for i := range woofer {
		woofer[i].setDelay(p, woofer[i].Delay, common)
	}
	return append(out, woofer...), nil
}

// setDelay fills in a delay in s, with what all have in common on top, and what
// becomes of it.
func (r *ProcessorRow) setDelay(p *Plan, delay, common float64) {
	rate := p.Array.Processor.Rate
	delay += common
	r.Delay, r.Common, r.Set, r.Metre = delay, common, p.settable(delay), delay*p.SpeedOfSound
	r.Samples, r.SetCount = delay*rate, r.Set*rate
	r.Residual = r.Set - r.Delay
	r.Cost4k, r.Cost8k = stepCost(4000, r.Residual, rate), stepCost(8000, r.Residual, rate)
	if r.OutOfStep = 0.25 / math.Abs(r.Residual); r.OutOfStep >= rate/2 {
		r.OutOfStep = math.Inf(1)
	}
}

// settable returns the nearest delay that the processor can be set to.
func (p *Plan) settable(delay float64) float64 {
	step := p.Array.Processor.Step
	if !(step > 0) {
		return delay
	}
	return math.Round(delay/step) * step
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
func (p *Plan) filters(sections []equaliser.Section) ([]ProcessorFilter, error) {
	var out []ProcessorFilter
	rate := p.Array.Processor.Rate
	if high := p.Protection.HighPass(); high.Corner() > 0 {
		var err error
		if out, err = sectionsOf(high, "", rate); err != nil {
			return nil, prose.Errorf("processor.rate_hz = %g: %w", rate, err)
		}
	}
	chain, err := equaliser.Chain(sections, rate)
	if err != nil {
		return nil, err
	}
	for i, s := range sections {
		out = append(out, ProcessorFilter{Name: s.Shape.String(), Frequency: s.Frequency, Q: s.Q, Gain: s.Gain, Coefficients: chain[i]})
	}
	return out, nil
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
