package timing_test

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/timing"
	"pappus/timing/unlike"

	"gonum.org/v1/gonum/spatial/r3"
)

func ear(t testing.TB, p *timing.Plan) *timing.UnlikeEar {
	t.Helper()
	u, err := timing.NewUnlike(p, timing.NominalDriver(p.Array.Driver))
	if err != nil {
		t.Fatal(err)
	}
	e, err := u.Ear()
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// twins are nominal drivers for each mount, each changed.
func twins(e *timing.UnlikeEar, mounts int, change func(m int, d *unlike.Driver)) []unlike.Driver {
	out := make([]unlike.Driver, mounts)
	for m := range out {
		if out[m] = e.Nominal; change != nil {
			change(m, &out[m])
		}
	}
	return out
}

// TestTwinsAreThePlan: with twins all is what the plan says: level and measures to the last
// digits, loads and powers as near as both look at frequencies.
func TestTwinsAreThePlan(t *testing.T) {
	a := demo(t)
	p := plan(t, a)
	e := ear(t, p)
	for range 2 { // an ear is used again
		h, err := e.Hear(twins(e, len(a.Mounts), nil))
		if err != nil {
			t.Fatal(err)
		}
		for f, want := range p.Response.Aligned {
			if math.Abs(h.Response.Aligned[f]-want) > 1e-9 || math.Abs(h.Response.InStep[f]-p.Response.InStep[f]) > 1e-9 {
				t.Fatalf("%.0f Hz: %g dB, want %g", p.Response.Frequency[f], h.Response.Aligned[f], want)
			}
		}
		if math.Abs(h.Smear-p.Aligned.Smear) > 1e-12 || math.Abs(h.Loss-p.Aligned.Loss) > 1e-9 || math.Abs(h.CombOnset/p.Aligned.CombOnset-1) > 1e-9 {
			t.Errorf("%+v, want %+v", h.Measures, p.Aligned)
		}
		least, watt := math.Inf(1), 0.0
		for _, b := range p.Banks {
			least, watt = min(least, b.LowestOhm), max(watt, b.DriverWatt)
		}
		if math.Abs(h.LeastOhm/least-1) > 1e-4 || math.Abs(h.Watt/watt-1) > 1e-9 || math.Abs(h.Rise) > 1e-9 {
			t.Errorf("%g ohm and %g W, %g dB, want %g, %g and 0", h.LeastOhm, h.Watt, h.Rise, least, watt)
		}
		most := 0.0
		for _, x := range p.Maximum.Excursion {
			most = max(most, x)
		}
		if math.Abs(h.Travel/most-1) > 0.01 {
			t.Errorf("%g m of travel, want about %g", h.Travel, most)
		}
	}
}

// TestUnlikeLevels: all twice as loud are 6.02 dB more; of two drivers in one place the sum
// follows from their levels and the time between them.
func TestUnlikeLevels(t *testing.T) {
	a := plain(t)
	a.Mounts = []layout.Mount{a.Mounts[0], a.Mounts[0]}
	a.Mounts[1].Point = r3.Add(a.Mounts[1].Point, r3.Vec{X: 1e-6})
	a.Wiring.MinimumLoad, a.Wiring.Channels = 2, 1
	p := plan(t, a)
	e := ear(t, p)
	loud, err := e.Hear(twins(e, 2, func(_ int, d *unlike.Driver) { d.Level = 2 }))
	if err != nil {
		t.Fatal(err)
	}
	const late = 50e-6
	apart, err := e.Hear(twins(e, 2, func(m int, d *unlike.Driver) {
		if m == 1 {
			d.Level, d.Late = 0.5, late
		}
	}))
	if err != nil {
		t.Fatal(err)
	}
	for f, hz := range p.Response.Frequency {
		if more := loud.Response.Aligned[f] - p.Response.Aligned[f]; math.Abs(more-20*math.Log10(2)) > 0.3 || hz > 1000 && math.Abs(more-20*math.Log10(2)) > 0.01 {
			t.Errorf("%.0f Hz: %g dB more, want 6.02", hz, more)
		}
		sin, cos := math.Sincos(2 * math.Pi * hz * late)
		want := 20 * math.Log10(math.Hypot(1+cos/2, sin/2)/1.5)
		if lost := apart.Response.Aligned[f] - apart.Response.InStep[f]; hz > 1000 && math.Abs(lost-want) > 0.05 {
			t.Errorf("%.0f Hz: %g dB, want %g", hz, lost, want)
		}
	}
	// Weights of 1 and 1/4, 50 us apart: sqrt(0.8 0.2) of it.
	if math.Abs(apart.Smear-0.4*late) > 0.01*late {
		t.Errorf("smear of %g s, want %g", apart.Smear, 0.4*late)
	}
}

// TestUnlikeCurves: of a driver with more wire alone the impedance far from resonance goes as
// its resistance, and the velocity for an ampere stays.
func TestUnlikeCurves(t *testing.T) {
	p := plan(t, demo(t))
	e := ear(t, p)
	d := e.Nominal
	d.DCOhm, d.Qes = 1.1*d.DCOhm, 1.1*d.Qes
	ohm, velocity, err := e.Curves(d)
	if err != nil {
		t.Fatal(err)
	}
	frequency := e.Frequencies()
	if n := len(frequency); n != len(ohm) || n != len(velocity) || frequency[n-1] != layout.WeightHighHz {
		t.Fatalf("%d frequencies to %g Hz", n, frequency[n-1])
	}
	// Two octaves below the resonance in the box, and a third of an octave or a little less apart.
	step := math.Log2(frequency[1] / frequency[0])
	if low := p.Array.Driver.Resonance / 4; math.Abs(frequency[0]/low-1) > 1e-9 || step > 1.0/3+1e-9 || step < 0.28 {
		t.Errorf("from %g Hz, %g octaves apart; want from %g", frequency[0], step, low)
	}
	last := len(ohm) - 1
	if got := real(ohm[last]); math.Abs(got-math.Log(1.1)) > 0.005 {
		t.Errorf("impedance by %g, want %g", got, math.Log(1.1))
	}
	for f, v := range velocity {
		if math.Abs(real(v)) > 1e-9 || math.Abs(imag(v)) > 1e-9 {
			t.Errorf("%.0f Hz: velocity by %v", frequency[f], v)
		}
	}
	sum := 0.0
	for _, w := range e.Weights() {
		sum += w
	}
	if math.Abs(sum-1) > 1e-12 {
		t.Errorf("weights sum to %g", sum)
	}
}

func TestUnlikeErrors(t *testing.T) {
	e := ear(t, plan(t, demo(t)))
	if _, err := e.Hear(nil); err == nil {
		t.Error("no drivers")
	}
	if _, err := e.Hear(twins(e, len(e.Weights()), func(_ int, d *unlike.Driver) { d.Qes = -1 })); err == nil {
		t.Error("a Qes below 0")
	}
}

func BenchmarkUnlike(b *testing.B) {
	a, err := demo(b), error(nil)
	p := plan(b, a)
	e := ear(b, p)
	d := twins(e, len(a.Mounts), nil)
	b.ReportAllocs()
	for b.Loop() {
		if _, err = e.Hear(d); err != nil {
			b.Fatal(err)
		}
	}
}
