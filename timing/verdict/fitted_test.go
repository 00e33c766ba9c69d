package verdict

import (
	"fmt"
	"math"
	"math/cmplx"
	"strings"
	"testing"

	"pappus/testdata/planned"
	"pappus/timing"
	"pappus/timing/recording"
)

// heardFlat returns a recording of so many frequencies from 500 Hz on, 48 to an octave, the same at all of them.
func heardFlat(n int) *recording.Measured {
	m := &recording.Measured{}
	for i := range n {
		m.Frequency = append(m.Frequency, 500*math.Exp2(float64(i)/48))
		m.Whole.Transfer = append(m.Whole.Transfer, 1)
	}
	return m
}

// TestLeastCount: a channel counts from half an octave on, 24 frequencies of 48 to an octave, of the band and of what it
// is heard at; two are the least that can be compared.
func TestLeastCount(t *testing.T) {
	p := planned.Text(t, fmt.Sprintf(bodyText, `shape = "cube"`, 2, 1.5, 0.8, 0.4))
	weak := heardFlat(40)
	for i := range 17 {
		weak.Whole.Transfer[i] = cmplx.NaN()
	}
	just := heardFlat(40)
	copy(just.Whole.Transfer, weak.Whole.Transfer[:16])
	for _, test := range []struct {
		why       string
		one, both *recording.Measured
		want      string
	}{
		{"23 in the band", heardFlat(23), heardFlat(23), "little of"},
		{"24 in the band", heardFlat(24), heardFlat(24), ""},
		{"23 of 40 are heard", weak, heardFlat(40), "only one channel"},
		{"24 of 40 are", just, heardFlat(40), ""},
	} {
		f, err := newFit(p, []*recording.Measured{test.one, test.both}, Setting{})
		if (err == nil) != (test.want == "") || err != nil && !strings.Contains(err.Error(), test.want) {
			t.Errorf("%s: %v, want %q", test.why, err, test.want)
		} else if err == nil && len(f.channels) != 2 {
			t.Errorf("%s: %d channels", test.why, len(f.channels))
		}
	}
}

// TestDecibels: what is ten times as large is 20 dB more, and of two equal strings one that does not play takes 6.02 dB.
func TestDecibels(t *testing.T) {
	if got := (&fit{common: []complex128{10i}}).commonLevel()[0]; math.Abs(got-20) > 1e-12 {
		t.Errorf("alike: %g dB", got)
	}
	o := &channel{size: 10, gain: -10, heard: make([]complex128, 2), strings: [][]complex128{{1, 2}, {1, 2}}}
	if o.leave(1); math.Abs(o.loudness()-20) > 1e-12 || math.Abs(o.level()-20) > 1e-12 || math.Abs(o.without+6.0206) > 1e-4 {
		t.Errorf("%g and %g dB; without a string %g", o.loudness(), o.level(), o.without)
	}
}

// TestBuryLine: only of a channel that is weaker than its siblings by 0.75 dB, half of what drivers of one make differ
// by, a string is taken for dead, however well the rest fits.
func TestBuryLine(t *testing.T) {
	for level, want := range map[float64]int{-0.85: 1, -0.65: -1} {
		f := &fit{low: 1000, high: 8000}
		o := &channel{dead: -1, strings: make([][]complex128, 2)}
		for hz := 1000.0; hz < 8000; hz += 10 { // over 70 periods of 0.1 ms less the first: apart, all in all
			f.frequency, f.common = append(f.frequency, hz), append(f.common, 1)
			o.strings[0] = append(o.strings[0], 1)
			o.strings[1] = append(o.strings[1], cmplx.Rect(math.Sqrt(math.Pow(10, -level/20)-1), -2*math.Pi*hz*1e-3))
			o.heard = append(o.heard, 1)
		}
		o.leave(-1)
		f.channels = []*channel{o}
		f.estimate(o)
		if math.Abs(o.level()-level) > 0.02 {
			t.Fatalf("%.3f dB, want %.2f", o.level(), level)
		}
		if f.bury(o, 0); o.dead != want {
			t.Errorf("%.2f dB: string %d, want %d", level, o.dead, want)
		}
	}
}

// TestBeside: a channel is held against two on each side, so that of six the middle two are, and on a line none is off.
func TestBeside(t *testing.T) {
	p := planned.Text(t, fmt.Sprintf(bodyText, `shape = "cube"`, 6, 1.5, 0.8, 0.4))
	f := &fit{}
	first := math.Inf(1)
	for c := range p.Channels {
		first = min(first, p.ChannelTime(c))
	}
	for c := range p.Channels {
		f.planned = append(f.planned, 0)
		f.channels = append(f.channels, &channel{index: c, gain: math.Pow(10, -1e3*(p.ChannelTime(c)-first)/20)})
	}
	known := 0
	for c, by := range f.beside(p, 0) {
		if !math.IsNaN(by) {
			if known++; math.Abs(by) > 1e-9 {
				t.Errorf("channel %d: %g dB", c+1, by)
			}
		}
	}
	if known != 2 {
		t.Errorf("%d of six are held against others", known)
	}
}

// TestCommonErrors: a middle of four is off by half of what one of them is, and 1.2533 times that.
func TestCommonErrors(t *testing.T) {
	f := &fit{}
	for range 4 {
		f.channels = append(f.channels, &channel{levelError: 0.4, lateError: 3e-6})
	}
	f.channels = append(f.channels, &channel{levelError: 9, lateError: 9, residual: 0.6})
	if level, late := f.commonErrors(); math.Abs(level-0.25066) > 1e-5 || math.Abs(late-1.87995e-6) > 1e-11 {
		t.Errorf("%.5f dB and %.5f us", level, 1e6*late)
	}
}

// TestCommonIn: what all channels have alike in a third, from 891.25 to 1122.02 Hz, and the middle one's gain.
func TestCommonIn(t *testing.T) {
	v := &Channels{Gain: 3}
	sum, count := 0.0, 0.0
	for hz := 800.0; hz < 1300; hz += 5 {
		v.Frequency, v.Common = append(v.Frequency, hz), append(v.Common, hz*hz/1e6)
		if hz > 891.25 && hz < 1122.02 {
			sum, count = sum+hz*hz/1e6, count+1
		}
	}
	if got, want := v.commonIn(1000), 3+sum/count; math.Abs(got-want) > 1e-9 {
		t.Errorf("%.4f dB, want %.4f", got, want)
	}
}

// TestMisfit: where one of two equal channels is silent at one of two seats, and not at the other, that seat is 6.02 dB
// less and the two are 3.01 dB off their mean, but not for who takes that channel for silent where it was planned to play.
func TestMisfit(t *testing.T) {
	flat := func(by complex128) (out []complex128) {
		for range perThird {
			out = append(out, by)
		}
		return out
	}
	g := gains{Seats: &Seats{Thirds: []float64{1000}, Wired: true}, over: [][]float64{{-20 * math.Log10(2), 0}}}
	g.given = [][][]complex128{{flat(1), flat(1)}, {flat(1), flat(0)}}
	if got := g.misfit(-1, 1); math.Abs(got-3.0103) > 1e-4 {
		t.Errorf("as it is: %.4f dB", got)
	}
	if got := g.misfit(1, 0); math.Abs(got) > 1e-9 {
		t.Errorf("with the second silent: %.4f dB", got)
	}
}

// TestWithin: 16 frequencies stand in the middles of as many parts of a third, the outer ones of that at 1 kHz at
// 10^-0.046875 and 10^0.046875 of it.
func TestWithin(t *testing.T) {
	f := within([]float64{1000})
	if n := len(f) - 1; math.Abs(f[0]-897.687) > 1e-3 || math.Abs(f[n]-1113.974) > 1e-3 {
		t.Errorf("%.3f to %.3f Hz", f[0], f[n])
	}
}

// TestLevelAndTurns: of a recording that is as planned, but twice as loud, with noise 40 dB below 1, both are brought to
// the plan's level; an error of 0.3 dB is one of 0.0345 rad.
func TestLevelAndTurns(t *testing.T) {
	p := planned.Text(t, fmt.Sprintf(bodyText, `shape = "cube"`, 2, 1.5, 0.8, 0.4))
	m := heardFlat(145)
	plan, err := at(p, p.Array.Spot, LevelSetting{Case: timing.Aligned}, m.Frequency)
	if err != nil {
		t.Fatal(err)
	}
	for i, v := range plan {
		m.Whole.Transfer[i] = 2 * v
		m.Whole.Error, m.Whole.Floor = append(m.Whole.Error, 0.3), append(m.Whole.Floor, -40)
	}
	m.Whole.To, m.Gated = 1, m.Whole
	v, err := OfLevel(p, []Position{{At: p.Array.Spot, Measured: *m}}, LevelSetting{Case: timing.Aligned})
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(v.Offset-6.0206) > 1e-4 || math.Abs(v.Noise[0]+46.0206) > 1e-4 {
		t.Errorf("%.4f dB over the plan, noise at %.4f", v.Offset, v.Noise[0])
	}
	turns, err := turnsOf(p, *m, timing.Aligned)
	if err != nil {
		t.Fatal(err)
	}
	if got := turns.Error[0]; math.Abs(got-0.0345388) > 1e-6 {
		t.Errorf("%.6f rad", got)
	}
}
