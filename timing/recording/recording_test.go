package recording_test

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"pappus/timing/biquad"
	"pappus/timing/recording"
)

// system is something that a sweep goes through, known in closed form.
type system struct {
	name     string
	response func(hz float64) complex128
	clocks   bool // to be heard with several clocks
}

// chain is two sections of the W3C Audio EQ Cookbook at 48 kHz: a peaking one of +6 dB, Q 2
// at 1 kHz, and a low-pass of Q 0.7071 at 16 kHz.
var chain = biquad.Chain{peaking(1000, 2, 6), lowPass(16000, math.Sqrt2/2)}

func peaking(hz, q, gain float64) biquad.Section {
	w := 2 * math.Pi * hz / rate
	a, alpha := math.Pow(10, gain/40), math.Sin(w)/(2*q)
	a0 := 1 + alpha/a
	return biquad.Section{B0: (1 + alpha*a) / a0, B1: -2 * math.Cos(w) / a0, B2: (1 - alpha*a) / a0, A1: -2 * math.Cos(w) / a0, A2: (1 - alpha/a) / a0}
}

func lowPass(hz, q float64) biquad.Section {
	w := 2 * math.Pi * hz / rate
	c, alpha := math.Cos(w), math.Sin(w)/(2*q)
	a0 := 1 + alpha
	return biquad.Section{B0: (1 - c) / 2 / a0, B1: (1 - c) / a0, B2: (1 - c) / 2 / a0, A1: -2 * c / a0, A2: (1 - alpha) / a0}
}

// delayed turns a response by a delay in s.
func delayed(response func(hz float64) complex128, delay float64) func(hz float64) complex128 {
	return func(hz float64) complex128 { return response(hz) * cmplx.Rect(1, -2*math.Pi*hz*delay) }
}

func plain(float64) complex128 { return 1 }

func filtered(hz float64) complex128 {
	h := complex(1, 0)
	for _, s := range chain {
		h *= s.At(min(hz, rate/2), rate)
	}
	return h
}

// comb is a sound and its echo 0.6 times as strong 2.137 ms later.
func comb(hz float64) complex128 { return 1 + 0.6*cmplx.Rect(1, -2*math.Pi*hz*0.002137) }

var systems = []system{
	{"nothing", delayed(plain, 0.0061234), false},
	{"upside down", delayed(func(float64) complex128 { return -0.5 }, 0.0051), false},
	{"filters", delayed(filtered, 0.00577701), false},
	{"comb", delayed(comb, 0.0071239), true},
}

// take records a sweep through a system, with or without the player's signal beside it.
func take(t testing.TB, seconds float64, of system, amplitude, snr, ppm float64, reference bool) recording.Take {
	t.Helper()
	x, y := of.passed(t, seconds, ppm)
	out := recording.Take{Rate: rate, Samples: noisy(scaled(y, amplitude), amplitude, snr, 1)}
	if reference {
		out.Reference = noisy(scaled(x, amplitude), amplitude, 90, 2)
	}
	return out
}

// pass is a sweep through a system that has a name, by a clock.
type pass struct {
	name         string
	seconds, ppm float64
}

// passed are sweeps that went through: many tests spoil the same.
var passed = map[pass][2][]float64{}

// passed returns a sweep, and what comes of it through a system.
func (sys system) passed(t testing.TB, seconds, ppm float64) (x, y []float64) {
	t.Helper()
	key := pass{sys.name, seconds, ppm}
	if known, ok := passed[key]; ok && sys.name != "" {
		return known[0], known[1]
	}
	actual := rate * (1 + ppm/1e6)
	x = usual(t, seconds).Samples(actual)
	y = through(x, actual, sys.response)
	passed[key] = [2][]float64{x, y}
	return x, y
}

// TestKnownSystems recovers filters and combs by Farina's method (AES 108th Convention,
// 2000, preprint 5093): at a signal-to-noise ratio of 60 dB within 0.05 dB and 2
// microseconds, at 20 dB within the error bars that are stated.
func TestKnownSystems(t *testing.T) {
	for _, sys := range systems {
		for _, reference := range []bool{true, false} {
			for _, snr := range []float64{60, 20} {
				for _, ppm := range []float64{100, 0, -180} {
					if ppm != 100 && !sys.clocks {
						continue // once is enough
					}
					t.Run(fmt.Sprintf("%s/reference %v/%g dB/%g ppm", sys.name, reference, snr, ppm), func(t *testing.T) {
						s := usual(t, 4)
						m, err := recording.Analyse(take(t, 4, sys, 0.5, snr, ppm, reference), s, recording.Options{Gate: 0.03})
						if err != nil {
							t.Fatal(err)
						}
						if math.Abs(m.Drift-ppm) > 0.1 {
							t.Errorf("clock differs by %g ppm, want %g", m.Drift, ppm)
						}
						if m.Absolute != reference {
							t.Errorf("absolute %v", m.Absolute)
						}
						compare(t, m, sys, snr)
					})
				}
			}
		}
	}
}

// compare holds a measured response against a system's.
func compare(t *testing.T, m recording.Measured, sys system, snr float64) {
	t.Helper()
	gain := 1.0
	if !m.Absolute {
		gain = 0.5 // over full scale
	}
	shift := 0.0
	if !m.Absolute { // times count from an unknown instant
		shift = later(m, sys)
	}
	for name, r := range map[string]recording.Response{"gated": m.Gated, "whole": m.Whole} {
		count, square := 0.0, 0.0
		for f, hz := range m.Frequency {
			if hz < r.Lowest {
				if !math.IsNaN(r.Level[f]) {
					t.Fatalf("%s: a level at %g Hz, below %g Hz", name, hz, r.Lowest)
				}
				continue
			}
			want := sys.response(hz) * complex(gain, 0) * cmplx.Rect(1, 2*math.Pi*hz*shift)
			off := r.Transfer[f] / want
			db, late := 20*math.Log10(cmplx.Abs(off)), -cmplx.Phase(off)/(2*math.Pi*hz)
			if math.IsNaN(db) && snr < 60 {
				continue // in the noise, and said to be
			}
			if math.IsNaN(db) {
				t.Fatalf("%s: nothing at %g Hz", name, hz)
			}
			most := 2e-6
			if hz < 1.6*sweepStart {
				most = 3.5e-6 // the gate cuts off some of the ringing of the band's edge
			}
			if snr >= 60 && (math.Abs(db) > 0.05 || math.Abs(late) > most) {
				t.Errorf("%s: at %.0f Hz off by %.4f dB and %.3f us", name, hz, db, 1e6*late)
			}
			if math.Abs(db) > 5*r.Error[f]+0.02 {
				t.Errorf("%s: at %.0f Hz off by %.3f dB; one standard deviation is said to be %.3f dB", name, hz, db, r.Error[f])
			}
			square += db * db / (r.Error[f]*r.Error[f] + 0.002*0.002)
			count++
		}
		if rms := math.Sqrt(square / count); snr < 60 && (rms < 0.6 || rms > 1.5) {
			t.Errorf("%s: errors are %.2f of those stated", name, rms)
		}
	}
}

// later returns by how much a system's times are later than those of a recording without a
// reference, from the phase of both: first within a period or two by what is below 2 kHz, then by all.
func later(m recording.Measured, sys system) float64 {
	most := 2000.0
	sum := func(delay float64) (v float64) {
		for f, hz := range m.Frequency {
			if h := m.Whole.Transfer[f]; !cmplx.IsNaN(h) && hz < most {
				v += real(h * cmplx.Conj(sys.response(hz)) * cmplx.Rect(1, -2*math.Pi*hz*delay))
			}
		}
		return v
	}
	search := func(from, to, step float64) float64 {
		best, top := 0.0, math.Inf(-1)
		for d := from; d < to; d += step {
			if v := sum(d); v > top {
				best, top = d, v
			}
		}
		return best
	}
	near := search(-0.03, 0.03, 5e-5)
	most = 16000
	best := search(near-1e-4, near+1e-4, 5e-6)
	top := sum(best)
	for h := 2.5e-6; h > 1e-10; h /= 2 {
		for _, d := range []float64{best - h, best + h} {
			if v := sum(d); v > top {
				best, top = d, v
			}
		}
	}
	return best
}
