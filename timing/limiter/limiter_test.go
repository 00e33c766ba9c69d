package limiter_test

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/testdata/planned"
	"pappus/timing/excursion"
	"pappus/timing/limiter"

	"github.com/google/go-cmp/cmp"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within*math.Abs(want)) {
		t.Errorf("%s: %.6g, want %.6g", what, got, want)
	}
}

// TestChannels: in a string of two each driver gets half of the volts (Ohm's law), alone all of
// them; heat is U^2/R of the driver's least resistance, and the cones' limit that of a constant
// voltage less what ringing takes, both by hand.
func TestChannels(t *testing.T) {
	p := planned.Demo(t, nil)
	cone := p.Cone()
	z := 1 / (2 * cone.Q)
	still := cone.BL / (cone.DCOhm * cone.Mass * math.Pow(2*math.Pi*cone.Resonance, 2)) // m for a constant volt
	travel := p.Protection.Xmax / still * math.Tanh(math.Pi*z/(2*math.Sqrt(1-z*z)))
	for i, c := range limiter.Channels(p) {
		series := float64(p.Channels[i].Series)
		near(t, "heat", c.Heat, series*math.Sqrt(p.Array.Driver.PowerHandling*p.Array.Driver.DCOhm), 2e-3) // the impedance is hardly above Re
		near(t, "travel", c.Travel, series*travel, 1e-9)
		if !math.IsInf(c.Clip, 1) || c.RMS != c.Heat || c.Peak != c.Travel || !math.IsNaN(c.PeakFull) {
			t.Errorf("channel %d: %+v", c.ID, c)
		}
		if c.Tones <= c.Travel {
			t.Errorf("channel %d: a tone behind the high-pass may have %.3g V, whatever plays %.3g", c.ID, c.Tones, c.Travel)
		}
		if x := math.Sqrt(0.5) * cone.Peak(c.Tones/series, p.Protection.HighPass()); math.Abs(x/p.Protection.Xmax-1) > 1e-9 {
			t.Errorf("channel %d: that tone moves the cone %.4g m", c.ID, x)
		}
	}
}

// TestAmplifier: an amplifier's own peak is the root of two of its volts, and limiters are told
// from full scale with its gain.
func TestAmplifier(t *testing.T) {
	p := planned.Demo(t, func(d *design.Design) {
		d.Wiring.HasAmplifier, d.Wiring.Voltage, d.Wiring.Gain, d.Processor.FullScale = true, 4, 6, 2
	})
	for _, c := range limiter.Channels(p) {
		near(t, "clip", c.Clip, 4*math.Sqrt2, 1e-12)
		if c.RMS != min(4, c.Heat) || c.Peak != min(c.Clip, c.Travel) {
			t.Errorf("channel %d: %+v", c.ID, c)
		}
		full := 2 * math.Pow(10, 6.0/20)
		near(t, "RMS below full scale", c.RMSFull, 20*math.Log10(c.RMS/full), 1e-9)
		near(t, "peak below full scale", c.PeakFull, 20*math.Log10(c.Peak/math.Sqrt2/full), 1e-9)
	}
	channels := limiter.Channels(p)
	fit := limiter.Gain(channels, 2)
	near(t, "with that gain full scale just reaches the most", math.Sqrt2*2*math.Pow(10, fit/20), channels[0].Peak, 1e-9)
	if !math.IsNaN(limiter.Gain(channels, 0)) {
		t.Error("a gain without full scale")
	}
}

// TestLoudest: a crest factor of 0 dB is held by heat or travel at its RMS; with each more the
// peaks leave as much less, and the level at the spot follows.
func TestLoudest(t *testing.T) {
	p := planned.Demo(t, nil)
	channels := limiter.Channels(p)
	last := limiter.Loudest(p, channels, 6)
	for _, crest := range []float64{10, 14, 20} {
		m := limiter.Loudest(p, channels, crest)
		if m.By != excursion.ByExcursion || m.Channel != 1 {
			t.Fatalf("%+v", m)
		}
		near(t, "volts", m.Volt, channels[0].Travel*math.Pow(10, -crest/20), 1e-9)
		near(t, "level", m.Level-last.Level, last.Crest-crest, 1e-9)
		last = m
	}
	if m := limiter.Loudest(p, channels, 0); m.By != excursion.ByHeat {
		t.Errorf("with a crest factor of 0 dB the coils' heat is the limit, not %v", m.By)
	}
	p.Channels[0].Gain = 6
	near(t, "level with the channel that limits 6 dB louder", limiter.Loudest(p, limiter.Channels(p), 20).Level-last.Level, -6, 1e-9)
	if diff := cmp.Diff([]float64{6, 10, 14, 20}, limiter.Crests); diff != "" {
		t.Error(diff)
	}
	// Pink noise of the wiring's volts ahead of a high-pass is that of fewer behind it: of an
	// ideal one at 150 Hz the share of ten octaves that are left, a little off for its slope.
	part := math.Log(20000.0/150) / math.Log(1000)
	volt := p.Array.Wiring.Voltage * math.Sqrt(part)
	near(t, "level of the noise itself", last.Level+20*math.Log10(volt/last.Volt), p.Maximum.Noise, 0.0002)
}

// TestPlaces: without seats the spot, with seats each of them, nearer ones louder; nothing where
// no level is known.
func TestPlaces(t *testing.T) {
	p := planned.Demo(t, nil)
	l, err := limiter.Of(p, 12)
	if err != nil || len(l.Places) != 1 || len(l.Music) != len(limiter.Crests)+1 || l.Music[2].Crest != 12 {
		t.Fatalf("%v, %+v", err, l)
	}
	near(t, "level", l.Places[0].Level, l.Music[2].Level, 1e-12)
	if l.Places[0].Child >= l.Places[0].Adult {
		t.Error("children may listen as long as adults")
	}
	there, err := p.Noise(p.Array.Spot)
	if err != nil || math.Abs(there-p.Maximum.Noise) > 1e-9 {
		t.Errorf("noise at the spot %.4f, the plan has %.4f, %v", there, p.Maximum.Noise, err)
	}
	p.Array.Seats = []layout.Seat{{Name: "alone", At: p.Array.Spot}}
	if l, err = limiter.Of(p, 12); err != nil || len(l.Places) != 1 || l.Places[0].Name != "" {
		t.Errorf("one seat, which is the spot: %v, %+v", err, l.Places)
	}
	p.Array.Seats = []layout.Seat{{Name: "near", At: p.Array.Spot}, {Name: "far", At: p.Array.Spot}}
	p.Array.Seats[1].At.X *= 2
	if l, err = limiter.Of(p, 12); err != nil || len(l.Places) != 2 || l.Places[0].Level < l.Places[1].Level+3 {
		t.Errorf("%v, %+v", err, l.Places)
	}
	unknown := planned.Demo(t, func(d *design.Design) { d.Driver.Sensitivity = math.NaN() })
	if l, err := limiter.Of(unknown, 12); err == nil && !math.IsNaN(unknown.Maximum.Noise) != (l.Places != nil) {
		t.Errorf("%v, %+v", err, l.Places)
	}
}

// TestNeed: the watts of a sine of the peak into the least load; nothing where a driver's limits
// are not known.
func TestNeed(t *testing.T) {
	p := planned.Demo(t, nil)
	channels := limiter.Channels(p)
	n, known := limiter.NeedFor(channels, 14)
	if !known || n.Channels != 8 {
		t.Fatalf("%+v, %v", n, known)
	}
	near(t, "peak", n.Peak, channels[0].Travel, 1e-12)
	near(t, "watts", n.Watt, n.Peak*n.Peak/2/n.Ohm, 1e-12)
	low, _ := limiter.NeedFor(channels, 0) // no more than what heats
	near(t, "peak without crest", low.Peak, channels[0].Heat, 1e-12)
	crest, _ := limiter.NeedFor([]limiter.Channel{{Heat: 2, Travel: 100}}, 6)
	near(t, "peak that heat allows", crest.Peak, 2*1.99526231, 1e-8)
	unknown := planned.Demo(t, func(d *design.Design) { d.Driver.PowerHandling, d.Driver.Small.Reach = 0, 0 })
	if _, known := limiter.NeedFor(limiter.Channels(unknown), 14); known {
		t.Error("an amplifier is named for drivers that nothing is known of")
	}
	if m := limiter.Loudest(unknown, limiter.Channels(unknown), 14); !math.IsNaN(m.Level) {
		t.Errorf("%+v", m)
	}
}
