package verdict

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/timing/band"
)

// TestLatest: the time of a pure delay is found within a nanosecond as far as the reach goes, upside
// down too, and not beyond.
func TestLatest(t *testing.T) {
	frequency := make([]float64, 300)
	band.Log(frequency, 200, 18000)
	for _, c := range []struct {
		late, sign float64
		found      bool
	}{{0, 1, true}, {1.2345e-3, 1, true}, {-2.7e-3, -1, true}, {3.3e-3, 1, false}} {
		cross := make([]complex128, len(frequency))
		for f, hz := range frequency {
			if cross[f] = complex(c.sign, 0) * cmplx.Rect(1, -2*math.Pi*hz*c.late); f%7 == 0 {
				cross[f] = cmplx.NaN()
			}
		}
		if got := latest(frequency, cross, 0); (math.Abs(got-c.late) < 1e-9) != c.found {
			t.Errorf("%g s: %g s", c.late, got)
		}
	}
	if got := latest(frequency, make([]complex128, 300), math.NaN()); got != 0 {
		t.Errorf("near nothing: %g s", got)
	}
}

// TestAveraged: a value and four on each side, those that are known.
func TestAveraged(t *testing.T) {
	x := make([]complex128, 20)
	x[10], x[1] = 9, cmplx.NaN()
	for i, v := range averaged(x) {
		want := complex(0, 0)
		switch {
		case i == 1:
			if !cmplx.IsNaN(v) {
				t.Errorf("what is not known is %v", v)
			}
			continue
		case i >= 6 && i <= 14:
			want = 1
		}
		if cmplx.Abs(v-want) > 1e-12 {
			t.Errorf("%d: %v, want %v", i, v, want)
		}
	}
}
