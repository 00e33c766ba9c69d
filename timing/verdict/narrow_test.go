package verdict

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"pappus/testdata/planned"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestMisplaced: a microphone by a tape stands 10 mm off along each axis, and a room that is as likely to be
// anywhere within 5 K of what was said has a standard deviation of 5 K over the root of three.
func TestMisplaced(t *testing.T) {
	p := planned.Text(t, fmt.Sprintf(bodyText, `shape = "cube"`, 2, 1.5, 0.8, 0.4))
	at := p.Array.Spot
	all := misplaced(p, at)
	if len(all) != 4 {
		t.Fatalf("%d plans, want 4", len(all))
	}
	for i, want := range []r3.Vec{{X: 0.01}, {Y: 0.01}, {Z: 0.01}, {}} {
		if off := r3.Sub(all[i].Array.Spot, at); r3.Norm(r3.Sub(off, want)) > 1e-12 {
			t.Errorf("%d: %v off, want %v", i, off, want)
		}
		warmer := 0.0
		if i == 3 {
			warmer = 2.886751
		}
		if by := all[i].Array.Air.Temperature - p.Array.Air.Temperature; math.Abs(by-warmer) > 1e-6 {
			t.Errorf("%d: %.6f K warmer, want %.6f", i, by, warmer)
		}
	}
}

// TestRough: how rough bands are is told by two second differences on each side, as far as there are: of
// 1, 3 and 9 dB the first band has the median of two, 2 dB, and a straight course has none.
func TestRough(t *testing.T) {
	var v Level
	a, b := 0.0, 0.0
	v.Bands = []Band{{Difference: a}, {Difference: b}}
	for _, bend := range []float64{1, 3, 9, 9, 9, 9} {
		a, b = b, bend+2*b-a
		v.Bands = append(v.Bands, Band{Difference: b})
	}
	if got, want := v.rough()[0], 1.4826*2/math.Sqrt(6); math.Abs(got-want) > 1e-3 {
		t.Errorf("%.4f dB, want %.4f", got, want)
	}
	for i := range v.Bands {
		v.Bands[i].Difference = 0.5 * float64(i)
	}
	if got := v.rough(); got[0] > 1e-12 || got[4] > 1e-12 {
		t.Errorf("%.4f dB of a straight course", got)
	}
}

// sounds returns a fit of one channel, planned at once, that is heard at some times in s, each with a factor.
func sounds(times, factors []float64) (*fit, *channel) {
	f, o := &fit{low: 1000, high: 8000}, &channel{dead: -1, strings: make([][]complex128, 1)}
	for hz := 1000.0; hz <= 8000; hz += 20 {
		f.frequency, f.common = append(f.frequency, hz), append(f.common, 1)
		sum := complex128(0)
		for i, at := range times {
			sum += cmplx.Rect(factors[i], -2*math.Pi*hz*at)
		}
		o.strings[0], o.heard = append(o.strings[0], 1), append(o.heard, sum)
	}
	o.leave(-1)
	f.channels = []*channel{o}
	return f, o
}

// TestSearch: a channel is looked for within 2 ms of all others, and taken where it is strongest, within 0.3 ms
// of that, only where it is 3.5 dB stronger there.
func TestSearch(t *testing.T) {
	const ms = 1e-3
	for _, test := range []struct {
		why            string
		times, factors []float64 // s
		strongest      float64   // s, as it was found before
		want           float64   // s
		found          bool
	}{
		{"1.9 ms late", []float64{1.9 * ms}, []float64{1}, 0, 1.9 * ms, true},
		{"2.1 ms late is out of reach", []float64{2.1 * ms}, []float64{1}, 0, 2.1 * ms, false},
		{"1.9 ms early", []float64{-1.9 * ms}, []float64{1}, 0, -1.9 * ms, true},
		{"an echo 1.4 times as strong", []float64{0, 5 * ms}, []float64{1, 1.4}, 5 * ms, 0, true},
		{"at 1.6 times it is the channel", []float64{0, 5 * ms}, []float64{1, 1.6}, 5 * ms, 5 * ms, true},
		{"0.28 ms beside where it was found", []float64{5 * ms}, []float64{1}, 4.72 * ms, 5 * ms, true},
		{"0.33 ms beside", []float64{5 * ms}, []float64{1}, 4.67 * ms, 5 * ms, false},
	} {
		t.Run(test.why, func(t *testing.T) {
			f, o := sounds(test.times, test.factors)
			o.late = test.strongest
			if f.search(o, 0); (math.Abs(o.late-test.want) < 5e-6) != test.found {
				t.Errorf("%.3f ms, want %.3f: %v", 1e3*o.late, 1e3*test.want, test.found)
			}
		})
	}
}

// TestHighest: the top is found within a 32nd of a period of the highest frequency, and hardly nearer.
func TestHighest(t *testing.T) {
	worst := 0.0
	for k := range 50 {
		late := 1e-4 + 0.7e-6*float64(k)
		f, o := sounds([]float64{late}, []float64{1})
		found, _ := f.highest(o, 0, nearby)
		worst = max(worst, f.high*math.Abs(found-late))
	}
	if worst > 1.0/31 || worst < 1.0/36 {
		t.Errorf("%.4f of a period off at most, want %.4f", worst, 1.0/32)
	}
}
