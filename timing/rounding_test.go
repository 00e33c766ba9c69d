package timing_test

import (
	"math"
	"math/cmplx"
	"slices"
	"testing"

	"pappus/layout"
	"pappus/timing"
	"pappus/timing/band"
)

// processed plans an array and returns what its processor is set to, as if the
// delays of its channels had been found, not set by hand.
func processed(t testing.TB, a *layout.Array) (*timing.Plan, []timing.ProcessorRow) {
	t.Helper()
	p := plan(t, a)
	p.Array.Channels = slices.Clone(p.Array.Channels)
	for i := range p.Array.Channels {
		p.Array.Channels[i].Delay = math.NaN()
	}
	rows, err := timing.Processor(p, nil)
	if err != nil {
		t.Fatal(err)
	}
	return p, rows
}

// byHand gives the demo a channel for each delay in us.
func byHand(t testing.TB, step float64, delays ...float64) *layout.Array {
	a := demo(t)
	a.Wiring.Channels, a.Channels, a.Processor.Step = 0, nil, step
	for i, d := range delays {
		a.Channels = append(a.Channels, layout.Channel{ID: i + 1, Series: 1, Parallel: 1, NominalOhm: 8, DCOhm: 7.1, Delay: d * 1e-6})
	}
	for m := range a.Mounts {
		c := &a.Channels[m%len(delays)]
		c.Mounts = append(c.Mounts, m)
	}
	return a
}

// TestResidualCost: two equal sounds that are late by t to each other add up to
// 2 cos(pi f t); what one loses of the sum in step is -20 log10 cos(2 pi f t) of its
// residual, and from a quarter of a period on it takes away from the sum. By hand, for
// steps of 100 us: delays of 0 and 140 us with 80 us in common are off by 20 us either
// way, which is 57.6 degrees at 8 kHz: 5.42 dB; 0 and 150 us by 25 us, 72 degrees.
func TestResidualCost(t *testing.T) {
	db := func(degrees float64) float64 { return -20 * math.Log10(math.Cos(degrees*math.Pi/180)) }
	inf := math.Inf(1)
	tests := []struct {
		name                                  string
		rate, delay                           float64 // Hz, us
		residual, cost4k, cost8k, out, common float64 // us, dB, dB, Hz, us
	}{
		{"20 us", 48000, 140, 20, db(28.8), db(57.6), 12500, 80},
		{"25 us", 48000, 150, 25, db(36), db(72), 10000, 75},
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
			a := byHand(t, 100e-6, 0, test.delay)
			a.Processor.Rate = test.rate
			_, rows := processed(t, a)
			for _, r := range rows {
				if !same(1e6*math.Abs(r.Residual), test.residual) || !same(r.Cost4k, test.cost4k) || !same(r.Cost8k, test.cost8k) ||
					(!same(r.OutOfStep, test.out) && test.residual > 0) || !same(1e6*r.Common, test.common) {
					t.Errorf("got residual %g us, %g and %g dB, out of step from %g Hz, common %g us; want %+v",
						1e6*r.Residual, r.Cost4k, r.Cost8k, r.OutOfStep, 1e6*r.Common, test)
				}
			}
		})
	}
	// Three thirds of a step apart: whatever is in common, some are off by a third.
	a := byHand(t, 120e-6, 0, 40, 80)
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
			p, rows := processed(t, a)
			if c := rows[0].Common; c < 0 || c >= test.step {
				t.Errorf("%g s in common, the step is %g s", c, test.step)
			}
			lost := func(rows []timing.ProcessorRow) float64 {
				sum := 0.0
				for _, loss := range timing.RoundingCost(p, rows).Loss {
					if loss > 0 {
						sum += loss
					}
				}
				return sum
			}
			got := lost(rows)
			for i := range 100 {
				common := test.step * float64(i) / 100
				other := append([]timing.ProcessorRow(nil), rows...)
				without, worst := 0.0, 0.0
				for c := range other {
					residual := func(delay float64) float64 { return test.step*math.Round(delay/test.step) - delay }
					other[c].Residual = residual(p.Channels[c].Delay + common)
					without, worst = max(without, math.Abs(residual(p.Channels[c].Delay))), max(worst, math.Abs(other[c].Residual))
				}
				if worst > without {
					continue // is not looked for
				}
				if l := lost(other); l < got-0.1-1e-9 {
					t.Fatalf("%g us in common lose %g dB, %g us would lose %g dB", 1e6*rows[0].Common, got, 1e6*common, l)
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
	a.Processor.Step = 1e-9
	fine := timing.RoundingCost(processed(t, a))
	for b, loss := range fine.Loss {
		if math.Abs(loss) > 1e-3 {
			t.Errorf("%s: %g dB at a nanosecond", band.Name(fine.Band[b]), loss)
		}
	}
	if fine.Worst > 0.5e-9 {
		t.Errorf("worst residual %g s", fine.Worst)
	}
	a.Processor.Step, a.Processor.Rate = 0.02, 16000
	p, rows := processed(t, a)
	rough := timing.RoundingCost(p, rows)
	frequency := band.Frequencies(rough.Band, 1, 12)
	exact, none := p.Transfer(nil, timing.Aligned, frequency), p.Transfer(nil, timing.AsBuilt, frequency)
	for b := range rough.Band {
		if last := b == len(rough.Band)-1; last != math.IsNaN(rough.Loss[b]) {
			t.Errorf("%s: %g dB at a rate of 16 kHz", band.Name(rough.Band[b]), rough.Loss[b])
		} else if last {
			continue
		}
		var e, n float64
		for i := b * 12; i < (b+1)*12; i++ {
			e += real(exact[i] * cmplx.Conj(exact[i]))
			n += real(none[i] * cmplx.Conj(none[i]))
		}
		if want := 10 * math.Log10(e/n); math.Abs(rough.Loss[b]-want) > 1e-9 {
			t.Errorf("%s: %g dB, want %g", band.Name(rough.Band[b]), rough.Loss[b], want)
		}
	}
}

// TestCommonDelayHelps: on the demo at 48 kHz the worst residual is less than with
// nothing in common, and less than a tenth of a decibel is lost in any octave.
func TestCommonDelayHelps(t *testing.T) {
	p, rows := processed(t, demo(t))
	got, without := timing.RoundingCost(p, rows), 0.0
	for _, c := range p.Channels {
		step := p.Array.Processor.Step
		without = max(without, math.Abs(step*math.Round(c.Delay/step)-c.Delay))
	}
	if got.Worst >= without || got.Common != rows[0].Common || got.Common <= 0 {
		t.Errorf("%g us in common: worst %g us, %g us with none", 1e6*got.Common, 1e6*got.Worst, 1e6*without)
	}
	for b, loss := range got.Loss {
		if loss > 0.1 {
			t.Errorf("%s: %g dB lost", band.Name(got.Band[b]), loss)
		}
	}
}
