package preview

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout"
	"pappus/layout/body"
	"pappus/timing"
	"pappus/timing/air"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// echoes is the transfer function of arrivals of given strength and time: the
// closed form that the impulse responses are checked against.
func echoes(strength, time []float64) func([]complex128, []float64) {
	return func(dst []complex128, frequency []float64) {
		clear(dst)
		for i, f := range frequency {
			for k, a := range strength {
				dst[i] += complex(a, 0) * cmplx.Rect(1, -2*math.Pi*f*time[k])
			}
		}
	}
}

// impulse is the impulse response of a transfer function, given its first arrival
// and how long it lasts, in s.
func impulse(transfer func([]complex128, []float64), first, seconds float64, rate int) []float64 {
	n := grid(seconds, rate)
	frequency := frequencies(n, rate)
	spectrum := make([]complex128, len(frequency))
	transfer(spectrum, frequency)
	return sequence(spectrum, frequency, first, n, rate)
}

// at returns the transform of an impulse response at any frequency in Hz, its
// pre-roll taken out.
func at(h []float64, rate int, frequency float64) complex128 {
	sum := complex128(0)
	for i, v := range h {
		t := float64(i)/float64(rate) - preRoll
		sum += complex(v, 0) * cmplx.Rect(1, -2*math.Pi*frequency*t)
	}
	return sum
}

// An arrival may fall anywhere between two samples, and a frequency anywhere
// between two of the grid: up to 18 kHz the error must stay below -80 dB of both
// arrivals in step.
func TestArrivalsBetweenSamples(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rate := rapid.SampledFrom([]int{44100, 48000, 96000}).Draw(t, "rate")
		first := rapid.Float64Range(0.001, 0.02).Draw(t, "first arrival, s")
		gap := rapid.Float64Range(0, 0.005).Draw(t, "gap, s")
		second := rapid.Float64Range(-1, 1).Draw(t, "second strength")
		h := impulse(echoes([]float64{1, second}, []float64{first, first + gap}), first, lasting(gap, gap), rate)
		for range 8 {
			f := rapid.Float64Range(20, 18000).Draw(t, "frequency, Hz")
			want := 1 + complex(second, 0)*cmplx.Rect(1, -2*math.Pi*f*gap)
			if e := cmplx.Abs(at(h, rate, f)-want) / (1 + math.Abs(second)); 20*math.Log10(e) > -80 {
				t.Fatalf("%g Hz: %.1f dB off", f, 20*math.Log10(e))
			}
		}
	})
}

func TestImpulseLength(t *testing.T) {
	for _, c := range []struct {
		rate   int
		spread float64
		want   int
	}{{48000, 0, 4096}, {44100, 0, 4096}, {96000, 0, 8192}, {48000, 0.05, 16384}, {8000, 0, 1024}} {
		if have := len(impulse(echoes([]float64{1}, []float64{0.01}), 0.01, lasting(c.spread, c.spread), c.rate)); have != c.want {
			t.Errorf("%d a second, spread %g s: %d samples, want %d", c.rate, c.spread, have, c.want)
		}
	}
}

// The ringing of an arrival between two samples must have died down by the
// beginning of the pre-roll, so that nothing wraps round to the end.
func TestRingingIsShort(t *testing.T) {
	for _, rate := range []int{44100, 48000, 96000} {
		arrival := 0.01 + 0.5/float64(rate)
		h := impulse(echoes([]float64{1}, []float64{arrival}), 0.01, lasting(0, 0), rate)
		centre := preRoll*float64(rate) + 0.5
		for i, v := range h {
			away := math.Abs(float64(i)-centre) / float64(rate)
			if away > 0.0009 && 20*math.Log10(math.Abs(v)) > -85 {
				t.Errorf("rate %d: %.1f dB at %.2f ms from the arrival", rate, 20*math.Log10(math.Abs(v)), 1000*away)
			}
		}
	}
}

// pair is a plan of two drivers in line with the spot, whose sounds arrive 0.5
// ms apart and within 0.2 dB of the same strength.
func pair() *timing.Spot {
	a := &layout.Array{
		Air:    layout.Air{Temperature: 293.15, Humidity: 0.5, Pressure: 101325},
		Body:   body.Ball(0.1),
		Timing: layout.Timing{Model: "point"},
		Spot:   r3.Vec{X: 10},
	}
	p := &timing.Spot{Array: a, SpeedOfSound: air.Air(a.Air).SpeedOfSound()}
	half := 0.00025 * p.SpeedOfSound
	for i, x := range []float64{half, -half} {
		a.Mounts = append(a.Mounts, layout.Mount{ID: i + 1, Point: r3.Vec{X: x}})
		far := a.Spot.X - x
		p.Arrivals = append(p.Arrivals, timing.Arrival{
			Path: far, Straight: far, Time: far / p.SpeedOfSound, Channel: i,
		})
		p.Channels = append(p.Channels, timing.Channel{Channel: layout.Channel{ID: i + 1, Mounts: []int{i}}})
	}
	p.Arrivals[0].Delay = 0.0005
	p.Unaligned.Spread = 0.0005
	return p
}

// Two equal arrivals from 10 m: 0.2 times the cosine of half their phase
// difference, and 0.2 when in step. The air and the 0.1 dB to either side of equal
// make less than 2 percent below 2.5 kHz.
func TestImpulseOfPlan(t *testing.T) {
	p := pair()
	for _, c := range []struct {
		name string
		timing.Case
		gap float64 // s
	}{
		{"as built", timing.AsBuilt, 0.0005},
		{"aligned", timing.Aligned, 0},
		{"ideal point", timing.IdealPoint, 0},
	} {
		h := Impulse(p, c.Case, 48000)
		for _, f := range []float64{40, 250, 500, 750, 1000, 1500, 2000, 2500} {
			want := 0.2 * math.Abs(math.Cos(math.Pi*f*c.gap))
			if have := cmplx.Abs(at(h, 48000, f)); math.Abs(have-want) > 0.02*0.2 {
				t.Errorf("%s: %g at %g Hz, want %g", c.name, have, f, want)
			}
		}
		peak := 0
		for i := range h {
			if h[i] > h[peak]+1e-3 {
				peak = i
			}
		}
		if peak != 48 {
			t.Errorf("%s: first arrival at sample %d, want 1 ms", c.name, peak)
		}
	}
}

// Impulse is what one ear hears of a click at the spot.
func Impulse(p *timing.Spot, c timing.Case, rate int) []float64 {
	r, err := Listener{}.Responses(p, []timing.Case{c}, rate)
	if err != nil || r[0].Right != nil {
		panic(err) // the plan was made for this very spot
	}
	return r[0].Left
}

func BenchmarkImpulse(b *testing.B) {
	p := pair()
	for b.Loop() {
		Impulse(p, timing.AsBuilt, 48000)
	}
}

func ExampleListener_Responses_apart() {
	h := Impulse(pair(), timing.AsBuilt, 48000)
	first, second := 0, 0
	for i, v := range h {
		if v > 0.05 {
			first, second = second, i
		}
	}
	fmt.Println(len(h), second-first, "samples apart")
	// Output: 4096 24 samples apart
}
