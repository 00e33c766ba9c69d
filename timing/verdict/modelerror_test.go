package verdict

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"pappus/testdata/planned"
	"pappus/timing"
)

// TestBodyLevelError holds what blocks have alike to closed forms. Three frequencies in a block each, half an octave
// apart, are alike by r = exp(-d^2/(2 0.36^2)): 0.381171 and, for the outer ones, 0.021110.
func TestBodyLevelError(t *testing.T) {
	frequency, edges := []float64{1000, 1000 * math.Sqrt2, 2000}, []float64{900, 1200, 1700, 2100}
	off := []float64{0.5, 0.5, 0.5}
	ones := []complex128{1, 1, 1}
	late := []complex128{1, 1i, -1} // turned by a quarter from each to the next
	whole := math.Sqrt(1.5 * 2 * (2*0.381171 + 0.021110) / 9)
	for _, test := range []struct {
		why     string
		drivers [][]complex128
		edges   []float64
		want    float64 // dB
	}{
		{"one driver", [][]complex128{ones}, edges, 0.5 * whole},
		{"one that is later, and stronger", [][]complex128{{3i, -3, -3i}}, edges, 0.5 * whole},
		{"four of one strength, each off by itself", [][]complex128{ones, ones, ones, ones}, edges, 0.25 * whole},
		{"one of them alone is heard", [][]complex128{ones, {0, 0, 0}}, edges, 0.5 * whole},
		// P is 2, 1 + i, 0, whose squares are 6 together; a is 2, 1 - i, 0 of one and 2, 1 + i, 0 of the other, and the real
		// part of 2 (1 + i) is 2, as that of 2 (1 - i) is.
		{"two that are apart", [][]complex128{ones, late}, edges, 0.5 * math.Sqrt(1.5*2*(2+2)*0.381171) / 6},
		{"all in two blocks", [][]complex128{ones}, []float64{900, 1200, 2100}, 0.5 * math.Sqrt(2*2*(0.381171+0.021110)/9)},
		{"all in one of two: the jackknife tells all", [][]complex128{ones}, []float64{900, 2050, 2100}, 0},
	} {
		if got := bodyLevelError(frequency, off, test.drivers, test.edges); math.Abs(got-test.want) > 1e-5 {
			t.Errorf("%s: %.5f dB, want %.5f", test.why, got, test.want)
		}
	}
	if got := bodyLevelError(frequency, []float64{0, 0, 0}, [][]complex128{late}, edges); got != 0 {
		t.Errorf("a ball: %g dB", got)
	}
}

// TestModelErrors: on a cube of 150 mm, whose faces lie 20.85 mm inside its ball, the time is off by 0.27 of what sound
// takes over that, or what the level is, as a phase; where the level can be off by 3.9 dB at all frequencies, a driver is
// by 0.3 of that. A string that does not play has no part in it, and what is said to be known of the model counts alone.
func TestModelErrors(t *testing.T) {
	p := planned.Text(t, fmt.Sprintf(bodyText, `shape = "cube"`, 2, 1.5, 0.8, 0.4))
	f := &fit{low: 2000, high: 4000, frequency: []float64{2100, 2700, 3400}}
	drivers := p.DriverTransfers(timing.Aligned, f.frequency)
	for c := range p.Channels {
		f.channels = append(f.channels, &channel{index: c, dead: -1, gain: 1 + float64(c), window: window{to: 1}})
	}
	alone := *p
	alone.Banks = make([]timing.Bank, len(p.Channels))
	for c, channel := range p.Channels { // all but the first driver are a string
		alone.Banks[c].Strings = [][]int{channel.Mounts[:1], channel.Mounts[1:]}
		f.channels[c].dead = 1
	}
	level, lean, late := f.modelErrors(&alone, Setting{Case: timing.Aligned})
	for c := range f.channels {
		w := make([]float64, 3)
		for i, v := range drivers[c][0] {
			w[i] = real(v * cmplx.Conj(v))
		}
		r := func(octaves float64) float64 { return math.Exp(-octaves * octaves / 0.2592) }
		pairs := w[0]*w[1]*r(math.Log2(2.7/2.1)) + w[1]*w[2]*r(math.Log2(3.4/2.7)) + w[0]*w[2]*r(math.Log2(3.4/2.1))
		if want := 0.2 * 3.9 * math.Sqrt(1.5*2*pairs) / (w[0] + w[1] + w[2]); math.Abs(level[c]-want) > 1e-3 {
			t.Errorf("channel %d: %.4f dB, want %.4f", c+1, level[c], want)
		}
	}
	// Of one driver each, the lean is 3.9 dB times bodyLeans at its angle, over that of the louder one of the two.
	angle := func(c int) float64 { return bodyLean(offAxis(p, p.Channels[c].Mounts[0])) }
	if want := 3.9 * (angle(0) - angle(1)); math.Abs(lean[0]-want) > 1e-6 || lean[1] != 0 || math.Abs(want) < 0.1 {
		t.Errorf("the channels lean by %.4f dB, want %.4f and nothing", lean, want)
	}
	if want := 0.27 * 20.85e-3 / p.SpeedOfSound; math.Abs(late-want) > 2e-3*want {
		t.Errorf("%.2f us, want %.2f", 1e6*late, 1e6*want)
	}
	f.frequency = []float64{1000, 1000, 1000}
	_, _, late = f.modelErrors(p, Setting{Case: timing.Aligned})
	if want := 0.3 * p.LevelError(1000) * 0.115129 / (2000 * math.Pi); math.Abs(late-want) > 1e-3*want || want < 17e-6 {
		t.Errorf("at 1 kHz: %.2f us, want %.2f", 1e6*late, 1e6*want)
	}
	level, lean, late = f.modelErrors(p, Setting{LevelError: 0.7, TimeError: 3e-6})
	if len(level) != 2 || level[1] != 0.7 || lean[0] != 0 || late != 3e-6 {
		t.Errorf("as was said: %g dB, %g s", level, late)
	}
}

// TestMatchedBy: on a cube of 150 mm, of which the plan says 3.9 dB from 1.6 kHz on, three thirds of octaves are off by 1.17
// dB each, alike by exp(-(1/3)^2/0.2592) = 0.6514 of neighbours and 0.1800 of the outer ones; bands beside those of
// matching tell nothing, and where there is no body there is no such error.
func TestMatchedBy(t *testing.T) {
	p := planned.Text(t, fmt.Sprintf(bodyText, `shape = "cube"`, 2, 1.5, 0.8, 0.4))
	third := math.Cbrt(2)
	v := Level{Low: 1900, High: 4000, Bands: []Band{{Centre: 2000 / third}, {Centre: 2000}, {Centre: 2000 * third}, {Centre: 2000 * third * third}, {Centre: 8000}}}
	if got, want := v.matchedBy(p), 1.17*1.17*(3+4*0.6514+2*0.18)/9; math.Abs(got-want) > 1e-3 {
		t.Errorf("%.4f dB2, want %.4f", got, want)
	}
	a := *p.Array
	a.Timing.Model = "point"
	p.Array = &a
	if got := v.matchedBy(p); got != 0 {
		t.Errorf("of points: %g dB2", got)
	}
}

// TestBodyLean: what a face adds stands at the angles that are there, goes straight between, and on level beyond.
func TestBodyLean(t *testing.T) {
	for degrees, want := range map[float64]float64{0: 0.28, 30: 0.28, 44: 0.14, 58: 0, 69: -0.105, 80: -0.21, 100: -0.28, 122: -0.21, 137: -0.15, 152: -0.09, 180: -0.09} {
		if got := bodyLean(degrees); math.Abs(got-want) > 1e-12 {
			t.Errorf("%g degrees: %g, want %g", degrees, got, want)
		}
	}
	if got := withBias(0.5, -0.6); math.Abs(got-0.8) > 1e-12 {
		t.Errorf("%g dB, want 0.8", got)
	}
	p := planned.Text(t, fmt.Sprintf(bodyText, `shape = "cube"`, 2, 3.0, 0.0, 0.0))
	for m, mount := range p.Array.Mounts {
		if got, want := offAxis(p, m), math.Acos(mount.Normal.X)*180/math.Pi; math.Abs(got-want) > 1e-6 {
			t.Errorf("mount %d: %g degrees, want %g", m, got, want)
		}
	}
}
