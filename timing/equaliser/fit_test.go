package equaliser_test

import (
	"errors"
	"fmt"
	"math"
	"math/cmplx"
	"math/rand/v2"
	"slices"
	"testing"

	"pappus/timing/equaliser"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

const rate = 48000.0

var usual = equaliser.Limits{Sections: 6, Low: 60, High: 16000, LeastQ: 0.4, MostQ: 6, Boost: 6, Cut: 12, LowShelf: true, HighShelf: true}

// axis returns n frequencies from 50 Hz to 18 kHz, evenly spaced in log frequency.
func axis(n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = 50 * math.Pow(360, float64(i)/float64(n-1))
	}
	return out
}

// level returns the level of sections in dB by the complex response.
func level(t testing.TB, frequency []float64, sections []equaliser.Section) []float64 {
	t.Helper()
	c, err := equaliser.Chain(sections, rate)
	if err != nil {
		t.Fatal(err)
	}
	h, out := make([]complex128, len(frequency)), make([]float64, len(frequency))
	c.Fill(h, frequency, rate)
	for i := range h {
		out[i] = 20 * math.Log10(cmplx.Abs(h[i]))
	}
	return out
}

// TestFitFindsWhatWasDone: the opposite of some sections is fitted almost to
// nothing with as many.
func TestFitFindsWhatWasDone(t *testing.T) {
	frequency := axis(200)
	tests := []struct {
		name string
		done []equaliser.Section
	}{
		{"one peak", []equaliser.Section{{equaliser.Peaking, 900, 2, 5}}},
		{"a dip and a peak", []equaliser.Section{{equaliser.Peaking, 300, 1.5, -4}, {equaliser.Peaking, 4000, 3, 6}}},
		{"a shelf", []equaliser.Section{{equaliser.HighShelf, 5000, equaliser.ShelfQ, -4}}},
		{"a shelf and a peak", []equaliser.Section{{equaliser.LowShelf, 250, equaliser.ShelfQ, 5}, {equaliser.Peaking, 2500, 2, -3}}},
		{"three peaks", []equaliser.Section{{equaliser.Peaking, 150, 2, 5}, {equaliser.Peaking, 900, 4, -5}, {equaliser.Peaking, 7000, 1.2, 4}}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			l := usual
			l.Sections = len(test.done)
			got, err := equaliser.Fit(frequency, level(t, frequency, test.done), make([]float64, 200), nil, rate, l)
			if err != nil {
				t.Fatal(err)
			}
			if got.After > 0.05 || got.After > got.Before/20 {
				t.Errorf("%.3f dB of %.3f dB left by %v", got.After, got.Before, got.Sections)
			}
		})
	}
}

// TestFitKeepsItsLimits on random curves, and says truly what it does.
func TestFitKeepsItsLimits(t *testing.T) {
	frequency := axis(60)
	rapid.Check(t, func(t *rapid.T) {
		l := equaliser.Limits{
			Sections: rapid.IntRange(1, 4).Draw(t, "sections"),
			Low:      rapid.Float64Range(60, 400).Draw(t, "low"), High: rapid.Float64Range(500, 16000).Draw(t, "high"),
			LeastQ: rapid.Float64Range(0.3, 1).Draw(t, "least Q"), MostQ: rapid.Float64Range(1, 6).Draw(t, "most Q"),
			Boost: rapid.Float64Range(0, 6).Draw(t, "boost"), Cut: rapid.Float64Range(0, 12).Draw(t, "cut"),
			LowShelf: rapid.Bool().Draw(t, "low shelf"), HighShelf: rapid.Bool().Draw(t, "high shelf"),
			AnyLevel: rapid.Bool().Draw(t, "any level"),
			Worth:    rapid.Float64Range(0, 1).Draw(t, "worth"), Apart: rapid.Float64Range(0, 2).Draw(t, "apart"),
		}
		r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 1))
		curve, care := make([]float64, len(frequency)), make([]equaliser.Care, len(frequency))
		for i := range curve {
			curve[i] = 8 * math.Sin(float64(i)/(2+8*r.Float64()))
			if u := r.Float64(); u < 0.1 {
				care[i] = equaliser.Leave
			} else if u < 0.2 && !l.AnyLevel { // else it would depend on where the target went
				care[i] = equaliser.CutOnly
			}
		}
		care[0] = equaliser.Count
		got, err := equaliser.Fit(frequency, curve, make([]float64, len(curve)), care, rate, l)
		if err != nil {
			t.Fatal(err)
		}
		if len(got.Sections) > l.Sections || got.After > got.Before+1e-12 {
			t.Fatalf("%d sections, %g dB of %g", len(got.Sections), got.After, got.Before)
		}
		shelves := map[equaliser.Shape]int{}
		for n, s := range got.Sections {
			for _, other := range got.Sections[:n] {
				if s.Gain*other.Gain < 0 && math.Abs(math.Log2(s.Frequency/other.Frequency)) < l.Apart {
					t.Fatalf("%v beside %v, %g octaves are asked for", s, other, l.Apart)
				}
			}
			leastQ, mostQ := l.LeastQ, l.MostQ
			if s.Shape != equaliser.Peaking {
				leastQ, mostQ = equaliser.ShelfQ, equaliser.ShelfQ
				shelves[s.Shape]++
			}
			const hair = 1e-12
			if s.Frequency < l.Low*(1-hair) || s.Frequency > l.High*(1+hair) || s.Q < leastQ*(1-hair) || s.Q > mostQ*(1+hair) || s.Gain < -l.Cut || s.Gain > l.Boost {
				t.Fatalf("%v is outside %+v", s, l)
			}
		}
		for shape, may := range map[equaliser.Shape]bool{equaliser.LowShelf: l.LowShelf, equaliser.HighShelf: l.HighShelf} {
			if n := shelves[shape]; n > 1 || n > 0 && !may {
				t.Fatalf("%d of shape %v", n, shape)
			}
		}
		c, err := equaliser.Chain(got.Sections, rate)
		if err != nil {
			t.Fatal(err)
		}
		h := make([]complex128, len(frequency))
		c.Fill(h, frequency, rate)
		square, n := 0.0, 0.0
		if !l.AnyLevel && got.Lift != 0 {
			t.Fatalf("%g dB are taken off what is left", got.Lift)
		}
		for i := range h {
			db := 20 * math.Log10(cmplx.Abs(h[i]))
			if math.Abs(db-got.Correction[i]) > 1e-6 {
				t.Fatalf("%g Hz: %g dB, said to be %g", frequency[i], db, got.Correction[i])
			}
			if db > l.Boost+1e-6 {
				t.Fatalf("%g Hz: boost of %g dB", frequency[i], db)
			}
			e := curve[i] + db
			switch care[i] {
			case equaliser.Leave:
				continue
			case equaliser.CutOnly:
				e -= min(0, curve[i])
			case equaliser.Count:
				e -= got.Lift
			}
			square += e * e
			n++
		}
		if after := math.Sqrt(square / n); math.Abs(after-got.After) > 1e-6 {
			t.Fatalf("%g dB is left, said to be %g", after, got.After)
		}
	})
}

// TestFitLeavesNullsAlone: a deep notch from timing in an otherwise flat level is
// boosted when it counts, and not touched when it is marked.
func TestFitLeavesNullsAlone(t *testing.T) {
	frequency := axis(200)
	curve, leave := make([]float64, 200), make([]equaliser.Care, 200)
	for i, hz := range frequency {
		comb := cmplx.Abs(1+0.95*cmplx.Rect(1, -2*math.Pi*hz*400e-6)) / 1.95
		if octaves := math.Abs(math.Log2(hz / 1250)); octaves < 0.5 {
			curve[i] = 20 * math.Log10(comb)
			leave[i] = equaliser.Leave
		}
	}
	counted, err := equaliser.Fit(frequency, curve, make([]float64, 200), nil, rate, usual)
	if err != nil {
		t.Fatal(err)
	}
	if top := slices.Max(counted.Correction); top < 3 {
		t.Errorf("a dip that counts is boosted by %g dB only", top)
	}
	left, err := equaliser.Fit(frequency, curve, make([]float64, 200), leave, rate, usual)
	if err != nil {
		t.Fatal(err)
	}
	if top := slices.Max(left.Correction); top > 0.05 || len(left.Sections) > 0 {
		t.Errorf("a null that is left alone is boosted by %g dB: %v", top, left.Sections)
	}
}

// TestFitAroundANull: dips beside a marked null are levelled, the null gets next
// to nothing of their boost.
func TestFitAroundANull(t *testing.T) {
	frequency := axis(240)
	curve := level(t, frequency, []equaliser.Section{{equaliser.Peaking, 200, 2, 6}, {equaliser.Peaking, 6000, 2, -5}})
	leave := make([]equaliser.Care, 240)
	for i, hz := range frequency {
		if math.Abs(math.Log2(hz/1250)) < 0.3 {
			leave[i] = equaliser.Leave
			curve[i] = math.NaN() // may be anything
		}
	}
	got, err := equaliser.Fit(frequency, curve, make([]float64, 240), leave, rate, usual)
	if err != nil {
		t.Fatal(err)
	}
	if got.After > 0.15 {
		t.Errorf("%g dB of %g left", got.After, got.Before)
	}
	for i := range leave {
		if leave[i] == equaliser.Leave && got.Correction[i] > 0.3 {
			t.Errorf("%.0f Hz: boost of %.2f dB in the null", frequency[i], got.Correction[i])
		}
	}
}

// TestFitAtAnyLevel: a peak of 6 dB that stands over a target in the middle of its curve
// goes with one cut. What is left is its shape; the level of that is told apart.
func TestFitAtAnyLevel(t *testing.T) {
	frequency := axis(200)
	curve, mean := level(t, frequency, []equaliser.Section{{equaliser.Peaking, 1000, 1, 6}}), 0.0
	for _, v := range curve {
		mean += v / 200
	}
	target := make([]float64, 200)
	for i := range target {
		target[i] = mean
	}
	l := usual
	l.AnyLevel, l.Worth = true, 0.3
	got, err := equaliser.Fit(frequency, curve, target, nil, rate, l)
	if err != nil {
		t.Fatal(err)
	}
	if len(got.Sections) != 1 || got.Sections[0].Gain > -5.5 || got.Lift > -0.5 || got.After > got.Before/5 {
		t.Errorf("%v, %g dB off the target, %g dB left of %g", got.Sections, got.Lift, got.After, got.Before)
	}
}

// TestFitLeavesNoise: ripple of half a decibel beside a bump of 6 dB is noise: with a
// worth asked for, the bump goes and nothing is done to the ripple, which a fit that is
// asked for none goes after.
func TestFitLeavesNoise(t *testing.T) {
	frequency := axis(200)
	curve := level(t, frequency, []equaliser.Section{{equaliser.Peaking, 1000, 1, 6}})
	for i := range curve {
		curve[i] += 0.5 * math.Sin(float64(i)/8)
	}
	l := usual
	l.Worth, l.Apart = 0.3, 0.5
	got, err := equaliser.Fit(frequency, curve, make([]float64, 200), nil, rate, l)
	if err != nil {
		t.Fatal(err)
	}
	if len(got.Sections) != 1 || math.Abs(got.Sections[0].Gain+6) > 0.5 || math.Abs(got.Sections[0].Frequency-1000) > 50 {
		t.Errorf("fits %v", got.Sections)
	}
	if got.After < 0.3 || got.After > 0.4 { // 0.5/sqrt 2 is the ripple's own
		t.Errorf("leaves %g dB", got.After)
	}
	if all, _ := equaliser.Fit(frequency, curve, make([]float64, 200), nil, rate, usual); len(all.Sections) < 2 {
		t.Errorf("without a worth: %v", all.Sections)
	}
}

// TestFitBesideANull: a droop marked as a null's edge gets no boost, a bump there is cut.
func TestFitBesideANull(t *testing.T) {
	frequency := axis(200)
	for _, test := range []struct {
		name       string
		gain       float64
		least, top float64 // dB of correction there
	}{{"droop", -4, -0.1, 0.1}, {"bump", 4, -4.2, -3}} {
		t.Run(test.name, func(t *testing.T) {
			curve, care := level(t, frequency, []equaliser.Section{{equaliser.Peaking, 1000, 2, test.gain}}), make([]equaliser.Care, 200)
			at := 0
			for i, hz := range frequency {
				if math.Abs(math.Log2(hz/1000)) < 1.5 {
					care[i] = equaliser.CutOnly
				}
				if hz < 1000 {
					at = i
				}
			}
			got, err := equaliser.Fit(frequency, curve, make([]float64, 200), care, rate, usual)
			if err != nil {
				t.Fatal(err)
			}
			if c := got.Correction[at]; c < test.least || c > test.top {
				t.Errorf("%g dB at 1 kHz by %v", c, got.Sections)
			}
		})
	}
}

func TestFitIsTheSameEachTime(t *testing.T) {
	frequency := axis(100)
	curve := level(t, frequency, []equaliser.Section{{equaliser.Peaking, 300, 1.5, -4}, {equaliser.Peaking, 4000, 3, 6}})
	first, _ := equaliser.Fit(frequency, curve, make([]float64, 100), nil, rate, usual)
	again, _ := equaliser.Fit(frequency, curve, make([]float64, 100), nil, rate, usual)
	if diff := cmp.Diff(first, again); diff != "" {
		t.Error(diff)
	}
}

func TestFitErrors(t *testing.T) {
	curve := func(frequency, level []float64, leave []equaliser.Care) error {
		_, err := equaliser.Fit(frequency, level, make([]float64, len(level)), leave, rate, usual)
		return err
	}
	tests := []struct {
		name string
		err  error
		want error
	}{
		{"empty", curve(nil, nil, nil), equaliser.ErrCurve},
		{"no level", curve([]float64{50, 60}, []float64{0, math.NaN()}, nil), equaliser.ErrCurve},
		{"all left alone", curve([]float64{50, 60}, make([]float64, 2), []equaliser.Care{equaliser.Leave, equaliser.Leave}), equaliser.ErrCurve},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if !errors.Is(test.err, test.want) {
				t.Errorf("%v, want %v", test.err, test.want)
			}
		})
	}
}

func ExampleFit() {
	frequency, curve := make([]float64, 100), make([]float64, 100)
	for i := range frequency {
		frequency[i] = 100 * math.Pow(100, float64(i)/99)
		curve[i] = 5 * math.Exp(-math.Pow(2*math.Log2(frequency[i]/1000), 2)) // a bump at 1 kHz
	}
	got, err := equaliser.Fit(frequency, curve, make([]float64, 100), nil, 48000, equaliser.Limits{
		Sections: 1, Low: 100, High: 10000, LeastQ: 0.5, MostQ: 4, Boost: 3, Cut: 10,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f Hz, %.0f dB; error %.1f to %.1f dB\n", got.Sections[0].Frequency, got.Sections[0].Gain, got.Before, got.After)
	// Output: 1000 Hz, -5 dB; error 1.5 to 0.2 dB
}

func BenchmarkFit(b *testing.B) {
	frequency := axis(200)
	curve := level(b, frequency, []equaliser.Section{{equaliser.Peaking, 150, 2, 5}, {equaliser.Peaking, 900, 4, -5}, {equaliser.Peaking, 7000, 1.2, 4}})
	for i := range curve {
		curve[i] += math.Sin(float64(i) / 6)
	}
	target := make([]float64, 200)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := equaliser.Fit(frequency, curve, target, nil, rate, usual); err != nil {
			b.Fatal(err)
		}
	}
}
