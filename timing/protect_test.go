package timing_test

import (
	"errors"
	"math"
	"math/cmplx"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing"
	"pappus/timing/biquad"
	"pappus/timing/crossover"
	"pappus/timing/equaliser"
	"pappus/timing/excursion"
	"pappus/timing/exposure"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestHighPassKeepsXmax: the corner found is the least: the cones just stay
// within their reach.
func TestHighPassKeepsXmax(t *testing.T) {
	for _, test := range []struct {
		name   string
		family string
		order  int
	}{{"Butterworth 4", "butterworth", 4}, {"Linkwitz-Riley 2", "linkwitz-riley", 2}, {"Bessel 8", "bessel", 8}} {
		t.Run(test.name, func(t *testing.T) {
			a := loudDemo(t)
			a.Protection = layout.Protection{Family: test.family, Order: test.order}
			p := plan(t, a)
			g, x := p.Protection, p.Maximum
			if !(g.Corner > 0) || g.Corner != g.Least {
				t.Fatalf("corner %g Hz, least %g", g.Corner, g.Least)
			}
			most := 0.0
			for i, metre := range x.Excursion {
				most = max(most, metre)
				if metre > x.Unprotected[i] {
					t.Fatalf("at %g Hz the high-pass makes it worse", x.Frequency[i])
				}
			}
			if most > g.Xmax*(1+1e-9) || most < 0.995*g.Xmax {
				t.Errorf("the cones move by %g m, and may by %g", most, g.Xmax)
			}
		})
	}
}

// TestHighPassIsInTheResponse, by -3.01 dB at a Butterworth corner, and leaves the
// measures alone.
func TestHighPassIsInTheResponse(t *testing.T) {
	a := demo(t)
	bare := plan(t, a)
	if bare.Protection.Corner != 0 || bare.Protection.Least != 0 {
		t.Fatalf("the demo needs no high-pass at 2.83 V, got %g Hz", bare.Protection.Corner)
	}
	a.Protection.Corner = 700
	p := plan(t, a)
	for _, c := range []timing.Case{timing.AsBuilt, timing.Aligned, timing.IdealPoint} {
		with, without := p.Transfer(nil, c, []float64{700})[0], bare.Transfer(nil, c, []float64{700})[0]
		if got := 20 * math.Log10(cmplx.Abs(with/without)); math.Abs(got+20*math.Log10(math.Sqrt2)) > 1e-9 {
			t.Errorf("case %d: %g dB at the corner", c, got)
		}
	}
	for i, v := range p.Transfer(nil, timing.Aligned, p.Response.Frequency) {
		if got := 20 * math.Log10(cmplx.Abs(v)); math.Abs(got-p.Response.Aligned[i]) > 1e-6 {
			t.Fatalf("at %g Hz: %g dB, response says %g", p.Response.Frequency[i], got, p.Response.Aligned[i])
		}
	}
	if p.Aligned != bare.Aligned || p.Unaligned != bare.Unaligned {
		t.Errorf("measures %+v %+v, without the high-pass %+v %+v", p.Aligned, p.Unaligned, bare.Aligned, bare.Unaligned)
	}
}

func TestProtectionWarns(t *testing.T) {
	low := loudDemo(t)
	low.Protection.Corner = 20
	hopeless := demo(t)
	hopeless.Driver.Small.Reach = 1e-9
	for _, test := range []struct {
		name, code string
		is         func(fact any) bool
		a          *layout.Array
	}{
		{"too low a corner", "excursion", func(f any) bool { c := f.(timing.ConeTravel); return c.Corner == 20 && c.Least > 20 && c.Least < 1000 }, low},
		{"none will do", "excursion", func(f any) bool { return math.IsInf(f.(timing.ConeTravel).Least, 1) }, hopeless},
		{"loud", "hearing", func(f any) bool { return f.(timing.HearingRisk).ByNoise }, low},
	} {
		t.Run(test.name, func(t *testing.T) {
			if f, found := finding(plan(t, test.a), test.code); !found || !test.is(f.Fact) {
				t.Errorf("%v: %+v", found, f)
			}
		})
	}
}

// TestUnknownDriverHasNoExcursion: what is not known limits nothing.
func TestUnknownDriverHasNoExcursion(t *testing.T) {
	a := loudDemo(t)
	a.Driver.Small, a.Driver.PowerHandling = layout.Small{}, 0
	p := plan(t, a)
	g := p.Protection
	if !math.IsNaN(g.Least) || g.Corner != 0 || p.Maximum.Excursion != nil {
		t.Errorf("corner %g Hz, least %g, excursion %v", g.Corner, g.Least, p.Maximum.Excursion)
	}
	for _, h := range p.Maximum.Levels {
		if h.By != excursion.ByAmplifier || math.IsNaN(h.Level) {
			t.Errorf("%+v", h)
		}
	}
	if !math.IsNaN(p.Banks[0].LowestOhm) {
		t.Errorf("lowest load %g ohm", p.Banks[0].LowestOhm)
	}
}

// TestInBody: the cones, the load and the box's sheet have one resonance, that of the
// net volume: the square root of 1 + Vas/Vb over that in free air (Small, J. Audio Eng.
// Soc. 20 (1972) 798), Vb being a driver's share of what walls and drivers leave.
func TestInBody(t *testing.T) {
	a := demo(t)
	h, err := a.Hollow()
	if err != nil {
		t.Fatal(err)
	}
	s := a.Driver.Small
	up := math.Sqrt(1 + h.Driver.Vas/h.Room.Share)
	wantHz, wantQ := s.Fs*up, s.Qms*s.Qes/(s.Qms+s.Qes)*up
	p := plan(t, a)
	if g := p.Protection; math.Abs(g.Resonance/wantHz-1) > 1e-12 || math.Abs(g.Q/wantQ-1) > 1e-12 {
		t.Errorf("%g Hz, Q %g; want %g and %g", g.Resonance, g.Q, wantHz, wantQ)
	}
	if _, curve, known := p.PlannedLoad(0); !known || cmplx.Abs(curve.At(wantHz)) < cmplx.Abs(curve.At(0.99*wantHz)) ||
		cmplx.Abs(curve.At(wantHz)) < cmplx.Abs(curve.At(1.01*wantHz)) {
		t.Errorf("the impedance has no peak at %g Hz", wantHz)
	}
	a.Driver.Resonance = 0 // as if layout did not know it
	if g := plan(t, a).Protection; !math.IsNaN(g.Resonance) || !math.IsNaN(g.Q) {
		t.Errorf("%g Hz, Q %g from another volume than the box's", g.Resonance, g.Q)
	}
}

// TestHighest: the coil's rating takes as many dB off everywhere as V^2/Re is over
// it.
func TestHighest(t *testing.T) {
	a := demo(t)
	a.Wiring.LongestString = 2 // whatever the drivers stand
	free := plan(t, a)
	a.Driver.PowerHandling = 0.01
	p := plan(t, a)
	volt := p.Protection.Volt
	want := 10 * math.Log10(0.01*a.Driver.DCOhm/(volt*volt))
	for i, h := range p.Maximum.Levels {
		if got := h.Level - free.Maximum.Levels[i].Level; h.By != excursion.ByHeat || math.Abs(got-want) > 1e-9 {
			t.Errorf("%g Hz: %v takes %g dB off, want %g", h.Band, h.By, got, want)
		}
	}
	loud := loudDemo(t)
	safe := plan(t, loud).Maximum.Levels
	loud.Protection.Corner = 20 // too low
	unsafe := plan(t, loud).Maximum.Levels
	for _, test := range []struct {
		name string
		got  excursion.Cause
		want excursion.Cause
	}{
		{"behind the least high-pass the lowest octave is the amplifier's", safe[0].By, excursion.ByAmplifier},
		{"without one it is the excursion's", unsafe[0].By, excursion.ByExcursion},
		{"heat limits 1 kHz", safe[3].By, excursion.ByHeat},
	} {
		if test.got != test.want {
			t.Errorf("%s: %v", test.name, test.got)
		}
	}
}

// TestPinkNoise: a lone flat driver's pink noise, A-weighted, against third-octave
// bands of one thirtieth of the power each (IEC 61672-1 weights).
func TestPinkNoise(t *testing.T) {
	a := plain(t)
	a.Mounts = a.Mounts[:1]
	a.Driver.Sensitivity = 100
	a.Wiring.Voltage, a.Wiring.Channels = 2.83, 1
	a.Air.Humidity = 0.5
	a.Spot = r3.Add(a.Mounts[0].Point, r3.Vec{X: 1})
	var frequency, level []float64
	for n := -17; n <= 13; n++ { // 20 Hz to 20 kHz
		frequency = append(frequency, 1000*math.Pow(10, float64(n)/10))
		level = append(level, 100-20*math.Log10(2)-10*math.Log10(31))
	}
	g := plan(t, a).Maximum
	want := exposure.Level(frequency, level)
	if math.Abs(g.Noise-want) > 0.25 { // the ends of the band are cut otherwise
		t.Errorf("%g dBA, want %g", g.Noise, want)
	}
	if math.Abs(g.Hours-8*math.Pow(2, (85-g.Noise)/3)) > 1e-9 {
		t.Errorf("%g hours at %g dBA", g.Hours, g.Noise)
	}
	if g := plan(t, plain(t)).Maximum; !math.IsNaN(g.Noise) || !math.IsNaN(g.Hours) {
		t.Errorf("relative levels: %g dBA, %g hours", g.Noise, g.Hours)
	}
}

func TestProcessor(t *testing.T) {
	a := demo(t)
	a.Protection.Corner = 150
	a.Processor.Rate, a.Processor.Step = 48000, 100e-6
	p := plan(t, a)
	sections := []equaliser.Section{{Shape: equaliser.Peaking, Frequency: 1000, Q: 2, Gain: -4}}
	rows, err := timing.Processor(p, sections)
	if err != nil {
		t.Fatal(err)
	}
	for i, r := range rows {
		c := p.Channels[i]
		steps := r.Delay / 100e-6
		switch {
		case r.Channel != c.ID, r.Delay != c.Delay, r.Exact != c.Exact, r.Gain != c.Gain:
			t.Errorf("row %+v", r)
		case math.Abs(r.Samples-48000*r.Delay) > 1e-9, math.Abs(r.Metre-r.Delay*p.SpeedOfSound) > 1e-12:
			t.Errorf("%g s: %g samples, %g m", r.Delay, r.Samples, r.Metre)
		case math.Abs(steps-math.Round(steps)) > 1e-9, math.Abs(r.Residual) > 50.0001e-6, r.Delay < 0:
			t.Errorf("set to %g s, by %g off", r.Delay, r.Residual)
		case !strings.Contains(r.HighPass, "Butterworth high-pass of order 4 at 150 Hz"):
			t.Errorf("%q", r.HighPass)
		}
	}
	var chain biquad.Chain
	for _, f := range rows[0].Filters {
		chain = append(chain, f.Coefficients)
	}
	if len(chain) != 3 { // two sections of the high-pass and one of the equaliser
		t.Fatalf("%d filters", len(chain))
	}
	h := make([]complex128, 2)
	chain[:2].Fill(h[:1], []float64{150}, 48000)
	chain[2:].Fill(h[1:], []float64{1000}, 48000)
	for i, want := range []float64{-10 * math.Log10(2), -4} {
		if got := 20 * math.Log10(cmplx.Abs(h[i])); math.Abs(got-want) > 1e-9 {
			t.Errorf("filter %d: %g dB, want %g", i, got, want)
		}
	}
	a.Processor.Rate, a.File, a.Lines = 250, "d.toml", design.Lines{"processor.rate_hz": 8}
	const want = "d.toml:8: processor.rate_hz = 250: the high-pass has its corner at 150 Hz, as worked out; must be above 300, twice that"
	if _, err := timing.Processor(plan(t, a), nil); !errors.Is(err, crossover.ErrRate) || err.Error() != want {
		t.Errorf("rate too low: %v\nwant %s", err, want)
	}
}
