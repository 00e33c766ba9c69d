package timing_test

import (
	"math"
	"math/cmplx"
	"slices"
	"testing"

	"pappus/layout"
	"pappus/timing"
	"pappus/timing/band"

	"gonum.org/v1/gonum/spatial/r3"
)

// processed plans an array and returns what its processor is set to.
func processed(t testing.TB, a *layout.Array) (*timing.Plan, []timing.ProcessorRow) {
	t.Helper()
	p := plan(t, a)
	rows, err := timing.Processor(p, nil)
	if err != nil {
		t.Fatal(err)
	}
	return p, rows
}

// TestResidualCost: two equal sounds that are late by t to each other add up to
// 2 cos(pi f t); what one loses of the sum in step is -20 log10 cos(2 pi f t) of its
// residual, and from a quarter of a period on it takes away from the sum. By hand, for
// steps of 100 us: delays of 0 and 140 us with 80 us in common are off by 20 us either
// way, which is 57.6 degrees at 8 kHz: 5.42 dB; 0 and 148 us by 24 us, 69.12 degrees.
func TestResidualCost(t *testing.T) {
	db := func(degrees float64) float64 { return -20 * math.Log10(math.Cos(degrees*math.Pi/180)) }
	inf := math.Inf(1)
	tests := []struct {
		name                                  string
		rate, delay                           float64 // Hz, us
		residual, cost4k, cost8k, out, common float64 // us, dB, dB, Hz, us
	}{
		{"20 us", 48000, 140, 20, db(28.8), db(57.6), 12500, 80},
		{"24 us", 48000, 148, 24, db(34.56), db(69.12), 250000.0 / 24, 76},
		{"15 us", 48000, 130, 15, db(21.6), db(43.2), 250000.0 / 15, 85},
		{"no figure from half the rate on", 16000, 140, 20, db(28.8), math.NaN(), inf, 80},
		{"nor at a rate of 8 kHz", 8000, 140, 20, math.NaN(), math.NaN(), inf, 80},
		{"on the steps already", 48000, 300, 0, 0, 0, inf, 0},
		{"but for a rounding of numbers", 48000, 300 - 1e-9, 0, 0, 0, inf, 0},
		{"or the other way", 48000, 300 + 1e-9, 0, 0, 0, inf, 0},
	}
	same := func(a, b float64) bool {
		return a == b || math.Abs(a-b) < 1e-6*(1+math.Abs(b)) || math.IsNaN(a) && math.IsNaN(b)
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			a := apart(t, 100e-6, 0, test.delay)
			a.Processor.Rate = test.rate
			p, rows := processed(t, a)
			for _, r := range rows {
				if !same(1e6*math.Abs(r.Residual), test.residual) || !same(r.Cost4k, test.cost4k) || !same(r.Cost8k, test.cost8k) ||
					(!same(r.OutOfStep, test.out) && test.residual > 0) || !same(1e6*p.Rounding.Common, test.common) {
					t.Errorf("got residual %g us, %g and %g dB, out of step from %g Hz, common %g us; want %+v",
						1e6*r.Residual, r.Cost4k, r.Cost8k, r.OutOfStep, 1e6*p.Rounding.Common, test)
				}
			}
		})
	}
	// Three thirds of a step apart: whatever is in common, some are off by a third.
	a := apart(t, 120e-6, 0, 40, 80)
	_, rows := processed(t, a)
	out := 0
	for _, r := range rows {
		if math.Abs(r.Residual) > 39e-6 {
			if out++; !math.IsInf(r.Cost8k, 1) || math.Abs(r.OutOfStep-6250) > 1e-6 {
				t.Errorf("40 us are 115 degrees at 8 kHz, yet %g dB, out of step from %g Hz", r.Cost8k, r.OutOfStep)
			}
		}
	}
	if out != 2 {
		t.Errorf("%d of 3 are out of step at 8 kHz", out)
	}
}

// lossOf returns by how many dB each octave of the direct sound at the spot gets weaker
// with some delays, one for each channel, than with the exact ones: through the whole
// model, at every third of the response's frequencies.
func lossOf(t testing.TB, p *timing.Plan, delay []float64) []float64 {
	t.Helper()
	var frequency []float64
	var of []int
	for b, centre := range band.Octaves() {
		low, high := band.Edges(centre, 1)
		from := slices.IndexFunc(p.Response.Frequency, func(f float64) bool { return f >= low })
		for i := from; p.Response.Frequency[i] <= high; i += 3 {
			frequency, of = append(frequency, p.Response.Frequency[i]), append(of, b)
		}
	}
	energy := func(delay []float64) []float64 {
		set := *p
		set.Arrivals = slices.Clone(p.Arrivals)
		for m, r := range p.Arrivals {
			set.Arrivals[m].Delay = delay[r.Channel]
		}
		h, err := timing.NewHearing(&set.Spot, timing.Listening{Cases: []timing.Case{timing.Aligned}, Dry: true, Flat: true}, []r3.Vec{p.Array.Spot}, frequency)
		if err != nil {
			t.Fatal(err)
		}
		sum := make([]complex128, len(frequency))
		h.At([][]complex128{sum}, p.Array.Spot)
		out := make([]float64, len(band.Octaves()))
		for i, v := range sum {
			out[of[i]] += real(v * cmplx.Conj(v))
		}
		return out
	}
	exact := make([]float64, len(p.Channels))
	for c := range exact {
		exact[c] = p.Channels[c].Exact
	}
	a, b := energy(exact), energy(delay)
	for i := range a {
		a[i] = 10 * math.Log10(a[i]/b[i])
	}
	return a
}

// delaysOf returns what the channels of a plan are set to.
func delaysOf(p *timing.Plan) []float64 {
	out := make([]float64, len(p.Channels))
	for c := range out {
		out[c] = p.Channels[c].Delay
	}
	return out
}

// TestCommonDelayIsCheapest: of a hundred delays that all could have in common, each
// set through the whole model, none loses less by more than a tenth of a decibel over
// all octaves; and it is shorter than a step.
func TestCommonDelayIsCheapest(t *testing.T) {
	for _, test := range []struct {
		name       string
		channels   int
		rate, step float64
	}{
		{"the demo", 8, 48000, 1.0 / 48000},
		{"the demo at 96 kHz", 8, 96000, 1.0 / 96000},
		{"coarse steps", 5, 48000, 100e-6},
		{"a low rate", 6, 16000, 1.0 / 16000},
		{"one channel", 1, 48000, 30e-6},
	} {
		t.Run(test.name, func(t *testing.T) {
			a := demo(t)
			a.Wiring.Channels, a.Processor.Rate, a.Processor.Step = test.channels, test.rate, test.step
			p := plan(t, a)
			if c := p.Rounding.Common; c < 0 || c >= test.step {
				t.Errorf("%g s in common, the step is %g s", c, test.step)
			}
			lost := func(delay []float64) float64 {
				sum := 0.0
				for b, loss := range lossOf(t, p, delay) {
					if loss > 0 && !math.IsNaN(p.Rounding.Loss[b]) {
						sum += loss
					}
				}
				return sum
			}
			got := lost(delaysOf(p))
			for i := range 50 {
				common := test.step * float64(i) / 50
				other := make([]float64, len(p.Channels))
				without, worst := 0.0, 0.0
				for c, channel := range p.Channels {
					bare := channel.Exact - p.Rounding.Common
					rounded := func(delay float64) float64 { return test.step * math.Round(delay/test.step) }
					// What all have in common is no loss, so the rest may stand for the exact delay.
					other[c] = rounded(bare+common) - common + p.Rounding.Common
					without, worst = max(without, math.Abs(rounded(bare)-bare)), max(worst, math.Abs(rounded(bare+common)-bare-common))
				}
				if worst > without {
					continue // is not looked for
				}
				if l := lost(other); l < got-0.1-1e-3 {
					t.Fatalf("%g us in common lose %g dB, %g us would lose %g dB", 1e6*p.Rounding.Common, got, 1e6*common, l)
				}
			}
		})
	}
}

// TestRoundingCost: with steps far below a sample nothing is lost; with one longer
// than any delay all are set alike, as if there were none. No figure stands for an
// octave that the rate does not carry.
func TestRoundingCost(t *testing.T) {
	a := demo(t)
	a.Driver.Resonance, a.Driver.Response, a.Protection = 0, nil, layout.Protection{} // what all have alike
	a.Processor.Step = 1e-9
	fine := plan(t, a).Rounding
	for b, loss := range fine.Loss {
		if math.Abs(loss) > 1e-3 {
			t.Errorf("%s: %g dB at a nanosecond", band.Name(fine.Band[b]), loss)
		}
	}
	if fine.Worst > 0.5e-9 {
		t.Errorf("worst residual %g s", fine.Worst)
	}
	a.Processor.Step, a.Processor.Rate = 0.02, 16000
	p := plan(t, a)
	for c, want := range lossOf(t, p, make([]float64, len(p.Channels))) {
		switch got, last := p.Rounding.Loss[c], c == len(p.Rounding.Band)-1; {
		case last != math.IsNaN(got):
			t.Errorf("%s: %g dB at a rate of 16 kHz", band.Name(p.Rounding.Band[c]), got)
		case !last && math.Abs(got-want) > 1e-3:
			t.Errorf("%s: %g dB, want %g", band.Name(p.Rounding.Band[c]), got, want)
		}
	}
}

// TestCommonDelayHelps: on the demo at 48 kHz the worst residual is less than with
// nothing in common, and less than a sixth of a decibel is lost in any octave.
func TestCommonDelayHelps(t *testing.T) {
	p := plan(t, demo(t))
	got, without := p.Rounding, 0.0
	for _, c := range p.Channels {
		step, bare := p.Array.Processor.Step, c.Exact-got.Common
		without = max(without, math.Abs(step*math.Round(bare/step)-bare))
	}
	if got.Worst >= without || got.Common <= 0 {
		t.Errorf("%g us in common: worst %g us, %g us with none", 1e6*got.Common, 1e6*got.Worst, 1e6*without)
	}
	for b, loss := range got.Loss {
		if loss > 1.0/6 {
			t.Errorf("%s: %g dB lost", band.Name(got.Band[b]), loss)
		}
	}
}

// TestOneDelay: every channel has one delay, a step of the processor's and by no more
// than half a step off the exact one; its drivers and the processor's rows have it too,
// and the level at the spot is that of the sum with it.
func TestOneDelay(t *testing.T) {
	for name, with := range map[string]func(*layout.Array){
		"the demo":            func(*layout.Array) {},
		"coarse steps":        func(a *layout.Array) { a.Processor.Step = 100e-6 },
		"one for each driver": func(a *layout.Array) { a.Wiring.Channels, a.Wiring.MinimumLoad = 0, 2 },
		"by the field":        func(a *layout.Array) { a.Timing.DelaysBy = "field" },
		"with a woofer": func(a *layout.Array) {
			a.Woofer = layout.Woofer{Present: true, At: r3.Vec{X: -3, Z: 0.3}, Crossover: 300, Order: 4}
		},
	} {
		t.Run(name, func(t *testing.T) {
			a := demo(t)
			with(a)
			p, rows := processed(t, a)
			step, moved := a.Processor.Step, 0.0
			for i, c := range p.Channels {
				if steps := c.Delay / step; math.Abs(steps-math.Round(steps)) > 1e-9 || math.Abs(c.Delay-c.Exact) > step/2+1e-12 || c.Delay < 0 {
					t.Errorf("channel %d: %g s, exactly %g s, in steps of %g s", c.ID, c.Delay, c.Exact, step)
				}
				moved = max(moved, math.Abs(c.Delay-c.Exact))
				if rows[i].Delay != c.Delay || rows[i].Exact != c.Exact {
					t.Errorf("channel %d: the processor has %+v, the plan %g s and %g s", c.ID, rows[i], c.Delay, c.Exact)
				}
				for _, m := range c.Mounts {
					if p.Arrivals[m].Delay != c.Delay {
						t.Errorf("driver %d has %g s, its channel %g s", a.Mounts[m].ID, p.Arrivals[m].Delay, c.Delay)
					}
				}
			}
			if moved == 0 || moved != p.Rounding.Worst {
				t.Errorf("the worst is %g s off, told are %g s", moved, p.Rounding.Worst)
			}
			for i, v := range p.Transfer(nil, timing.Aligned, p.Response.Frequency) {
				if got := 20 * math.Log10(cmplx.Abs(v)); math.Abs(got-p.Response.Aligned[i]) > 1e-6 {
					t.Fatalf("%g Hz: %g dB, the sum is %g dB", p.Response.Frequency[i], p.Response.Aligned[i], got)
				}
			}
		})
	}
}
