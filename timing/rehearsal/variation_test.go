package rehearsal_test

import (
	"math"
	"math/cmplx"
	"reflect"
	"strings"
	"testing"

	"pappus/testdata/planned"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/rehearsal"

	"gonum.org/v1/gonum/spatial/r3"
	"gonum.org/v1/gonum/stat"
)

// planOf returns the plan of a design.
func planOf(t testing.TB, text string) *timing.Plan {
	t.Helper()
	return planned.Text(t, text)
}

// small is a dodecahedron with a driver on each face, in open air.
var small = strings.Replace(planned.Faces("dodecahedron", "[timing]\nsolve_to_hz = 1200\n[wiring]\nchannels = 4"), "resonance_q = 0.707", "resonance_q = 0.7", 1)

// TestDraw: a seed gives the same each time, another gives another; over 400 seeds each thing is
// spread as it is said to be.
func TestDraw(t *testing.T) {
	p := planOf(t, small)
	if a, b := rehearsal.Draw(p, 7), rehearsal.Draw(p, 7); !reflect.DeepEqual(a, b) {
		t.Error("not the same again")
	}
	var level, tune, q, late, moved, warm, clock, snr, image, echo, hum, pop []float64
	echoes, hums, woofers, pops, slopes := 0.0, 0.0, 0.0, 0.0, map[float64]int{}
	const n = 400
	for seed := range uint64(n) {
		v := rehearsal.Draw(p, seed)
		for _, d := range v.Drivers {
			level, tune, q, late = append(level, d.Level), append(tune, math.Log(d.Resonance)), append(q, math.Log(d.Q)), append(late, 1e6*d.Late)
		}
		moved = append(moved, 1000*v.Moved.X, 1000*v.Moved.Y, 1000*v.Moved.Z)
		warm, clock, snr = append(warm, v.Warmer), append(clock, v.Drift), append(snr, v.Noise.SNR)
		slopes[v.Noise.Slope]++
		for _, e := range v.Echoes {
			image, echo = append(image, r3.Norm(e.Image)), append(echo, e.Level)
		}
		if v.Hum.Hz > 0 {
			hum = append(hum, v.Hum.Level)
			hums++
		}
		if v.Woofer.Corner > 0 {
			woofers++
		}
		for _, x := range v.Pops {
			pop = append(pop, x.Level)
			pops++
		}
		echoes += float64(len(v.Echoes))
	}
	for _, test := range []struct {
		name       string
		x          []float64
		mean, size float64 // standard deviation
	}{
		{"levels of drivers in dB", level, 0, 0.5}, {"resonances", tune, 0, 0.07}, {"Q", q, 0, 0.07}, {"lateness in us", late, 0, 3},
		{"microphone in mm", moved, 0, 10}, {"air in K, evenly within 5", warm, 0, 5 / math.Sqrt(3)}, {"clocks in ppm", clock, 0, 30},
		{"noise in dB, evenly from 35 to 65", snr, 50, 30 / math.Sqrt(12)}, {"images in m, evenly from 0.8 to 3", image, 1.9, 2.2 / math.Sqrt(12)},
		{"echoes in dB, evenly from -14 to -4", echo, -9, 10 / math.Sqrt(12)}, {"hum in dB, evenly from -80 to -45", hum, -62.5, 35 / math.Sqrt(12)},
		{"pops in dB, evenly from -30 to -6", pop, -18, 24 / math.Sqrt(12)},
		{"echoes", []float64{echoes / n}, 1.5, 0}, {"hums", []float64{hums / n}, 0.5, 0}, {"woofers", []float64{woofers / n}, 0.1, 0}, {"pops", []float64{pops / n}, 0.15, 0},
	} {
		mean, size := stat.MeanStdDev(test.x, nil)
		if len(test.x) == 1 {
			size = 0
		}
		room := 4 * max(test.size, 0.5) / math.Sqrt(float64(max(len(test.x), 400))) // four standard errors
		if math.Abs(mean-test.mean) > room || math.Abs(size-test.size) > room {
			t.Errorf("%s: %.3f, give or take %.3f, want %.3f and %.3f", test.name, mean, size, test.mean, test.size)
		}
	}
	if len(slopes) != 3 || slopes[0] < n/4 || slopes[-3] < n/4 {
		t.Errorf("slopes %v", slopes)
	}
}

// TestVaried: each variation does what it says to what a microphone hears.
func TestVaried(t *testing.T) {
	p := planOf(t, small)
	frequency := []float64{200, 700, 1000, 3000}
	hear := func(v rehearsal.Variation, set rehearsal.Setting, channel int) []complex128 {
		t.Helper()
		set.Case = timing.Aligned
		h, err := rehearsal.NewVaried(p, v).Channel(set, channel, frequency)
		if err != nil {
			t.Fatal(err)
		}
		return h
	}
	drivers := func(d rehearsal.Driver) []rehearsal.Driver {
		out := make([]rehearsal.Driver, len(p.Array.Mounts))
		for i := range out {
			out[i] = d
		}
		return out
	}
	plain := hear(rehearsal.Variation{}, rehearsal.Setting{}, 1)
	turn := func(hz, late float64) complex128 { return cmplx.Rect(1, -2*math.Pi*hz*late) }
	box := func(hz, resonance, q float64) complex128 {
		x := hz / resonance
		return complex(-x*x, 0) / complex(1-x*x, x/q)
	}
	for _, test := range []struct {
		name string
		v    rehearsal.Variation
		set  rehearsal.Setting
		want func(hz float64) complex128
	}{
		{"nothing", rehearsal.Variation{Drivers: drivers(rehearsal.Driver{})}, rehearsal.Setting{}, func(float64) complex128 { return 1 }},
		{"level", rehearsal.Variation{Drivers: drivers(rehearsal.Driver{Level: 6})}, rehearsal.Setting{}, func(float64) complex128 { return complex(math.Pow(10, 0.3), 0) }},
		{"polarity", rehearsal.Variation{Drivers: drivers(rehearsal.Driver{Reversed: true})}, rehearsal.Setting{}, func(float64) complex128 { return -1 }},
		{"late", rehearsal.Variation{Drivers: drivers(rehearsal.Driver{Late: 1e-4})}, rehearsal.Setting{}, func(hz float64) complex128 { return turn(hz, 1e-4) }},
		{"tuning", rehearsal.Variation{Drivers: drivers(rehearsal.Driver{Resonance: 1.5, Q: 2})}, rehearsal.Setting{}, func(hz float64) complex128 { return box(hz, 300, 1.4) / box(hz, 200, 0.7) }},
		{"a channel's gain", rehearsal.Variation{}, rehearsal.Setting{Gain: []float64{1, -20, 3, 4}}, func(float64) complex128 { return 0.1 }},
		{"a channel's time", rehearsal.Variation{}, rehearsal.Setting{Late: []float64{0, 3e-4, 0, 0}}, func(hz float64) complex128 { return turn(hz, 3e-4) }},
	} {
		for f, v := range hear(test.v, test.set, 1) {
			if got, want := v/plain[f], test.want(frequency[f]); cmplx.Abs(got-want) > 1e-9 {
				t.Errorf("%s at %g Hz: %.4f, want %.4f", test.name, frequency[f], got, want)
			}
		}
	}
	// An echo of a mirror behind the microphone comes later by twice the way to it, and softer.
	away := r3.Scale(1, r3.Unit(p.Array.Spot))
	echo := hear(rehearsal.Variation{Echoes: []rehearsal.Echo{{Image: away, Level: -6, From: 0}}}, rehearsal.Setting{}, 1)
	far := r3.Norm(p.Array.Spot)
	for f, hz := range frequency {
		rest := (echo[f]/plain[f] - 1) / turn(hz, 1/p.SpeedOfSound)
		if want := math.Pow(10, -0.3) * far / (far + 1); math.Abs(cmplx.Abs(rest)/want-1) > 0.1 || math.Abs(cmplx.Phase(rest)) > 0.2 {
			t.Errorf("an echo at %g Hz: %.3f, want %.3f", hz, rest, want)
		}
	}
	// A true body differs from the ball as faceted solutions say: at 1 kHz by less than 1 dB, more than 0.1.
	most := 0.0
	for c := range p.Channels {
		ball, body := hear(rehearsal.Variation{}, rehearsal.Setting{}, c), hear(rehearsal.Variation{True: true}, rehearsal.Setting{}, c)
		most = max(most, math.Abs(20*math.Log10(cmplx.Abs(body[2]/ball[2]))))
	}
	if most < 0.1 || most > 1.5 {
		t.Errorf("a true body is off its ball by %.2f dB at 1 kHz", most)
	}
}

// TestTruth: what drivers and faults do is told of each channel, whatever the polarity; an error of
// level and one of time stay apart.
func TestTruth(t *testing.T) {
	p := planOf(t, small)
	frequency := make([]float64, 100)
	band.Log(frequency, 500, 4000)
	v := rehearsal.Draw(p, 1)
	v.Drivers = make([]rehearsal.Driver, len(p.Array.Mounts))
	for _, m := range p.Channels[2].Mounts {
		v.Drivers[m] = rehearsal.Driver{Level: 1, Late: 2e-5}
	}
	for _, test := range []struct {
		kind        rehearsal.Kind
		level, late float64 // dB, us
	}{{rehearsal.Sound, 0, 0}, {rehearsal.ReversedChannel, 0, 0}, {rehearsal.LateChannel, 0, 300}, {rehearsal.QuietChannel, -3, 0}, {rehearsal.LoudChannel, 3, 0}} {
		s := rehearsal.NewSession(p, v, rehearsal.Fault{Kind: test.kind, Channel: 1}, rehearsal.Setting{})
		is := s.Truth(frequency)
		for c := range p.Channels {
			level, late := 0.0, 0.0
			switch c {
			case 1:
				level, late = test.level, test.late
			case 2:
				level, late = 1, 20
			}
			if math.Abs(is.Level[c]-level) > 1e-9 || math.Abs(1e6*is.Late[c]-late) > 1e-3 {
				t.Errorf("%s: channel %d is %.3f dB and %.3f us off, want %.3f and %.3f", test.kind, c, is.Level[c], 1e6*is.Late[c], level, late)
			}
		}
	}
}

// TestShape: over many seeds a driver on an icosahedron is off its ball by what goes by its angle on the mean, more in
// front and less aside, and by as much as is said beside that; two drivers and two frequencies an octave apart are not off
// alike, and two half an octave apart by a half.
func TestShape(t *testing.T) {
	p := planOf(t, planned.Faces("icosahedron", "[wiring]\nchannels = 20\nminimum_load_ohm = 2"))
	frequency := []float64{1500, 1500 * math.Sqrt2, 3000}
	const seeds = 400
	n := len(p.Channels)
	plain := make([][]complex128, n)
	hear := func(v rehearsal.Variation, c int) []complex128 {
		h, err := rehearsal.NewVaried(p, v).Channel(rehearsal.Setting{Case: timing.Aligned}, c, frequency)
		if err != nil {
			t.Fatal(err)
		}
		return h
	}
	of := make([][][]float64, n) // [channel][frequency][seed], of what the plan says
	for c := range of {
		plain[c], of[c] = hear(rehearsal.Variation{}, c), make([][]float64, len(frequency))
	}
	for seed := range uint64(seeds) {
		shape := rehearsal.Draw(p, seed).Shape
		all, err := rehearsal.NewVaried(p, rehearsal.Variation{Shape: shape}).Channels(timing.Aligned, frequency)
		if err != nil {
			t.Fatal(err)
		}
		for c, h := range all {
			for f, hz := range frequency {
				of[c][f] = append(of[c][f], 20*math.Log10(cmplx.Abs(h[f]/plain[c][f]))/p.LevelError(hz))
			}
		}
	}
	var front, aside []float64
	for c, channel := range p.Channels {
		mount := p.Array.Mounts[channel.Mounts[0]]
		degrees := 180 / math.Pi * math.Acos(r3.Dot(mount.Normal, r3.Unit(p.Array.PlacingOf(mount).Into(p.Array.Spot))))
		mean, size := stat.MeanStdDev(of[c][0], nil)
		if math.Abs(size-0.24) > 0.04 {
			t.Errorf("channel %d: beside its angle %.3f of what is said, want 0.24", c+1, size)
		}
		switch {
		case degrees < 31:
			front = append(front, mean)
		case degrees > 82 && degrees < 98:
			aside = append(aside, mean)
		}
		half, octave := stat.Correlation(of[c][0], of[c][1], nil), stat.Correlation(of[c][0], of[c][2], nil)
		if other := stat.Correlation(of[c][0], of[(c+1)%n][0], nil); math.Abs(half-0.49) > 0.15 || math.Abs(octave) > 0.2 || math.Abs(other) > 0.2 {
			t.Errorf("channel %d: alike by %.2f half an octave apart, %.2f an octave, and another driver by %.2f", c+1, half, octave, other)
		}
	}
	if got := stat.Mean(front, nil); !(math.Abs(got-0.21) < 0.03) {
		t.Errorf("in front %.3f of what is said, want 0.21", got)
	}
	if got := stat.Mean(aside, nil); !(math.Abs(got+0.17) < 0.03) {
		t.Errorf("aside %.3f of what is said, want -0.17", got)
	}
}
