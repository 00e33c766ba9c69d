package timing_test

import (
	"errors"
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout"
	"pappus/layout/body"
	"pappus/layout/design"
	"pappus/timing"
	"pappus/timing/equaliser"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestLevelUndoesAPeak: one driver with a measured bump in open air: the fit takes
// it off, and finds no null.
func TestLevelUndoesAPeak(t *testing.T) {
	a := plain(t)
	a.Mounts = a.Mounts[:1]
	a.Wiring.Channels = 1
	bump := equaliser.Section{Shape: equaliser.Peaking, Frequency: 1500, Q: 1.5, Gain: 6}
	digital, err := bump.Digital(48000)
	if err != nil {
		t.Fatal(err)
	}
	for hz := 50.0; hz < 20000; hz *= 1.05 {
		a.Driver.Response = append(a.Driver.Response,
			layout.ResponsePoint{Frequency: hz, Level: 20 * math.Log10(cmplx.Abs(digital.At(hz, 48000)))})
	}
	l, err := timing.Level(&plan(t, a).Spot)
	if err != nil {
		t.Fatal(err)
	}
	if len(l.Nulls) != 0 || l.UnevenAfter > 0.5 || l.UnevenBefore < 1 {
		t.Errorf("uneven by %g dB, then %g; nulls %v", l.UnevenBefore, l.UnevenAfter, l.Nulls)
	}
}

// TestLevelLeavesNullsAlone: two drivers a long way apart in one channel: where
// they cancel nothing is boosted.
func TestLevelLeavesNullsAlone(t *testing.T) {
	a := plain(t)
	a.Wiring.Channels = 1
	a.Mounts = []layout.Mount{
		{ID: 1, Point: r3.Vec{X: 0.15}, Normal: r3.Vec{X: 1}, Face: -1},
		{ID: 2, Point: r3.Vec{X: -0.15}, Normal: r3.Vec{X: -1}, Face: -1},
	}
	a.Spot = r3.Vec{X: 40}
	p := plan(t, a)
	l, err := timing.Level(&p.Spot)
	if err != nil {
		t.Fatal(err)
	}
	notch := p.SpeedOfSound / 0.6 // 1/(2T), T = 0.3 m of way
	if len(l.Nulls) == 0 || notch < l.Nulls[0].Low || notch > l.Nulls[0].High {
		t.Fatalf("the notch at %g Hz is in no null: %v", notch, l.Nulls)
	}
	for f, hz := range l.Frequency {
		if boost := l.After[f] - l.Before[f]; hz > l.Nulls[0].Low && hz < l.Nulls[0].High && boost > 1 {
			t.Errorf("boost of %g dB at %g Hz", boost, hz)
		}
	}
}

func TestLevelOfTheDemo(t *testing.T) {
	p := plan(t, demo(t))
	l, err := timing.Level(&p.Spot)
	if err != nil {
		t.Fatal(err)
	}
	if l.UnevenAfter > l.UnevenBefore || len(l.Sections) == 0 || len(l.Sections) > 5 {
		t.Errorf("uneven by %g dB, then %g with %v", l.UnevenBefore, l.UnevenAfter, l.Sections)
	}
	for _, n := range l.Nulls {
		for f, hz := range l.Frequency {
			if did := l.After[f] - l.Before[f]; hz >= n.Low && hz <= n.High && (did > 1 || did < -2) {
				t.Errorf("%.0f Hz: %.2f dB in the null %v", hz, did, n)
			}
		}
	}
	// Without echoes the comb onset is where half the energy is lost, and so is a null's edge.
	free := demo(t)
	free.Surface.Present = false
	p = plan(t, free)
	if l, err = timing.Level(&p.Spot); err != nil {
		t.Fatal(err)
	}
	if n := l.Nulls[0]; math.Abs(n.Low/p.Aligned.CombOnset-1) > 0.05 {
		t.Errorf("the null begins at %g Hz, the comb at %g Hz", n.Low, p.Aligned.CombOnset)
	}
	rows, err := timing.Processor(p, l.Sections)
	if err != nil || len(rows[0].Filters) != len(l.Sections) {
		t.Errorf("%v: %d filters", err, len(rows[0].Filters))
	}
}

// TestLevelOfOneChannel: where but half an octave is left under the nulls, and that
// is nearly even, nothing is done.
func TestLevelOfOneChannel(t *testing.T) {
	a := demo(t)
	a.Wiring.Channels = 1
	l, err := timing.Level(&plan(t, a).Spot)
	if err != nil || len(l.Sections) != 0 || l.UnevenBefore != l.UnevenAfter || l.Boost() != 0 {
		t.Errorf("uneven by %g dB, then %g with %v; %v", l.UnevenBefore, l.UnevenAfter, l.Sections, err)
	}
}

// TestLevelFitsNoNoise: on balls that are nearly even under their nulls, as on others,
// each section is worth 0.3 dB of the whole, boosts and cuts keep half an octave apart
// and nothing is boosted within half an octave of a null. These bounds are common
// practice.
func TestLevelFitsNoNoise(t *testing.T) {
	ball := func(channels int) *layout.Array {
		a := even(t, 24, false)
		a.Wiring.Channels = channels
		return a
	}
	for _, test := range []struct {
		name string
		a    *layout.Array
		most int // sections
	}{
		{"one channel", ball(1), 0}, {"three channels", ball(3), 0}, {"four channels", ball(4), 0},
		{"a channel each", ball(0), 4}, {"the demo", demo(t), 4},
	} {
		t.Run(test.name, func(t *testing.T) {
			rate := 48000.0
			test.a.Processor.Rate = rate
			l, err := timing.Level(&plan(t, test.a).Spot)
			if err != nil {
				t.Fatal(err)
			}
			if len(l.Sections) > test.most {
				t.Errorf("uneven by %g dB, then %g with %v", l.UnevenBefore, l.UnevenAfter, l.Sections)
			}
			for i, s := range l.Sections {
				for _, other := range l.Sections[:i] {
					if s.Gain*other.Gain < 0 && math.Abs(math.Log2(s.Frequency/other.Frequency)) < 0.5 {
						t.Errorf("%v beside %v", s, other)
					}
				}
			}
			if off := l.UnevenBefore - l.UnevenAfter; off < 0.3*float64(len(l.Sections)) {
				t.Errorf("%d sections take %g dB off", len(l.Sections), off)
			}
			for f, hz := range l.Frequency {
				for _, n := range l.Nulls {
					if boost := l.After[f] - l.Before[f]; hz > n.Low/math.Sqrt2 && hz < n.High*math.Sqrt2 && boost > 0.3 {
						t.Errorf("boost of %g dB at %g Hz, near the null %v", boost, hz, n)
					}
				}
			}
		})
	}
}

// TestLevelBesideAWoofer begins an octave above the crossover, without a low shelf.
func TestLevelBesideAWoofer(t *testing.T) {
	a := demo(t)
	a.Woofer = layout.Woofer{Present: true, At: r3.Vec{X: -0.5, Z: 0.2}, Crossover: 450, Order: 4}
	l, err := timing.Level(&plan(t, a).Spot)
	if err != nil {
		t.Fatal(err)
	}
	if low := l.Frequency[0]; math.Abs(low-900) > 1e-6 {
		t.Errorf("from %g Hz", low)
	}
	for _, s := range l.Sections {
		if s.Shape == equaliser.LowShelf || s.Frequency < 900*(1-1e-9) {
			t.Errorf("%v", s)
		}
	}
}

func TestLevelErrors(t *testing.T) {
	lines := func(of ...string) design.Lines {
		out := design.Lines{}
		for i, key := range of {
			out[key] = i + 7
		}
		return out
	}
	behind := func(a *layout.Array) {
		a.Timing.Model, a.Timing.DelaysBy = "baffle", "straight"
		a.Surface.Present, a.Mounts, a.Wiring.Channels, a.Spot = false, a.Mounts[:1], 1, r3.Scale(-20, a.Mounts[0].Point)
	}
	for _, test := range []struct {
		name   string
		change func(*layout.Array)
		want   string
	}{
		{"a high corner", func(a *layout.Array) {
			a.Protection.Corner, a.Lines = 5000, lines("protection", "protection.corner_hz")
		}, "d.toml:8: protection.corner_hz = 5000: the level is evened out from 1.25 times this on, 6250 Hz, and fewer than 2 octaves are left below 10000 Hz; must be at most 2000"},
		{"one worked out, at a low rate", func(a *layout.Array) {
			a.Protection.Corner, a.Processor.Rate, a.Lines = 1000, 8000, lines("protection")
		}, "d.toml:7: protection.corner_hz: stands at 1000 Hz as worked out; the level is evened out from 1.25 times this on, 1250 Hz, and fewer than 2 octaves are left below 3600 Hz; must be at most 720"},
		{"a high resonance", func(a *layout.Array) {
			a.Driver.Resonance, a.Driver.ResonanceQ, a.Lines = 3000, 0.7, lines("driver", "driver.resonance_hz")
		}, "d.toml:8: driver.resonance_hz = 3000: the level is evened out from 1.25 times this on, 3750 Hz, and fewer than 2 octaves are left below 10000 Hz; must be at most 2000"},
		{"a high crossover", func(a *layout.Array) {
			a.Woofer.Present, a.Woofer.Crossover, a.Woofer.Order, a.Woofer.At, a.Lines = true, 1500, 4, r3.Vec{X: -1}, lines("woofer", "woofer.crossover_hz")
		}, "d.toml:8: woofer.crossover_hz = 1500: the level is evened out from 2 times this on, 3000 Hz, and fewer than 2 octaves are left below 10000 Hz; must be at most 1250"},
		{"no sound", behind, "d.toml: timing.model = \"baffle\": no sound comes to the spot, so there is no level to even out; must be another model, or the spot before the drivers"},
	} {
		t.Run(test.name, func(t *testing.T) {
			a := demo(t)
			a.File, a.Lines = "d.toml", nil
			test.change(a)
			if _, err := timing.Level(&plan(t, a).Spot); !errors.Is(err, equaliser.ErrCurve) || err.Error() != test.want {
				t.Errorf("got %v\nwant %s", err, test.want)
			}
		})
	}
}

// TestLevelOutOfStep: of drivers that cancel one another nothing is left to level; the error names
// the channel by hand that does it.
func TestLevelOutOfStep(t *testing.T) {
	for _, test := range []struct {
		name   string
		change func(*layout.Array)
		want   string
	}{
		{"inverted", func(a *layout.Array) { a.Channels[1].Invert = true }, "d.toml:9: channel[2].invert = true: "},
		{"late", func(a *layout.Array) {
			a.Mounts, a.Channels = nil, nil
			for i := range 24 {
				a.Mounts, a.Channels = append(a.Mounts, plain(t).Mounts[0]), append(a.Channels, hand(i+1, i))
				a.Channels[i].Delay = float64(i*i) * 0.00017
			}
		}, "d.toml:9: channel[1].delay_us = 0: "},
	} {
		t.Run(test.name, func(t *testing.T) {
			a := plain(t)
			a.File, a.Lines = "d.toml", design.Lines{"channel[1].delay_us": 9, "channel[2].invert": 9}
			a.Mounts = []layout.Mount{a.Mounts[0], a.Mounts[0]}
			a.Channels = []layout.Channel{hand(1, 0), hand(2, 1)}
			test.change(a)
			_, err := timing.Level(&plan(t, a).Spot)
			const most = "from 100 to 10000 Hz all sounds arrive out of step, so there is no level to even out; must be such that channels are in step at the spot"
			if !errors.Is(err, equaliser.ErrCurve) || err.Error() != test.want+most {
				t.Errorf("got %v\nwant %s%s", err, test.want, most)
			}
		})
	}
}

// hand is a channel laid out by hand of one driver.
func hand(id, mount int) layout.Channel {
	return layout.Channel{ID: id, Mounts: []int{mount}, Delay: math.NaN(), Series: 1, Parallel: 1, NominalOhm: 8, DCOhm: 7}
}

// TestLevelAtALowRate ends below half the processor's rate.
func TestLevelAtALowRate(t *testing.T) {
	a := demo(t)
	a.Processor.Rate = 8000
	l, err := timing.Level(&plan(t, a).Spot)
	if err != nil {
		t.Fatal(err)
	}
	if last := l.Frequency[len(l.Frequency)-1]; last > 3600.001 || l.UnevenAfter > l.UnevenBefore {
		t.Errorf("up to %g Hz; uneven by %g dB, then %g", last, l.UnevenBefore, l.UnevenAfter)
	}
	if _, err := l.Correction(8000); err != nil {
		t.Error(err)
	}
}

func BenchmarkDead(b *testing.B) {
	for _, drivers := range []int{60, 500} {
		b.Run(fmt.Sprintf("%d drivers", drivers), func(b *testing.B) {
			a := even(b, drivers, false)
			a.Wiring.Channels = 8
			p := plan(b, a)
			b.ReportAllocs()
			for b.Loop() {
				if _, err := timing.Dead(p); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkLevel(b *testing.B) {
	p := plan(b, demo(b))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := timing.Level(&p.Spot); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkMake(b *testing.B) {
	for _, drivers := range []int{60, 2000} {
		b.Run(fmt.Sprintf("%d drivers in 8 channels", drivers), func(b *testing.B) {
			a := even(b, drivers, false)
			a.Wiring.Channels = 8
			b.ReportAllocs()
			for b.Loop() {
				if _, err := timing.Make(b.Context(), a); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// TestLevelLeavesWhatTheModelCannotKnow: on a dodecahedron nothing is corrected that keeps
// within the error of the level (up to 3.9 dB, from a boundary-element solution); on the
// ball of the same volume, where there is no such error, the same drivers get sections.
func TestLevelLeavesWhatTheModelCannotKnow(t *testing.T) {
	a := twelve(t, r3.Vec{X: 1.7, Y: 0.6, Z: 0.5})
	a.Processor.Rate, a.Driver.Resonance, a.Driver.ResonanceQ = 48000, 0, 0
	faces := levelled(t, a)
	p := plan(t, a)
	for f, hz := range faces.Frequency {
		if want := p.LevelError(hz); faces.Error[f] != want {
			t.Fatalf("%g Hz: error %g dB, want %g", hz, faces.Error[f], want)
		}
	}
	a.Body = body.Ball(a.Body.BallRadius)
	for i := range a.Mounts {
		a.Mounts[i].Face = -1
	}
	ball := levelled(t, a)
	if len(faces.Sections) > 0 || faces.UnevenAfter != faces.UnevenBefore || len(ball.Sections) == 0 {
		t.Errorf("sections on the faces %v, on the ball %v", faces.Sections, ball.Sections)
	}
}

func levelled(t *testing.T, a *layout.Array) timing.Levelling {
	t.Helper()
	l, err := timing.Level(&plan(t, a).Spot)
	if err != nil {
		t.Fatal(err)
	}
	return l
}
