package boundary_test

import (
	"flag"
	"math"
	"math/cmplx"
	"testing"

	"pappus/testdata/thorough"
	"pappus/timing/boundary"

	"gonum.org/v1/gonum/spatial/r3"
)

const ballRadius = 0.15

// ballWith is a ball of curved patches with a piston on top.
func ballWith(t testing.TB, radius float64) *boundary.Solver {
	t.Helper()
	p := &boundary.Problem{Patches: boundary.CutBall(ballRadius, -1)}
	one := []boundary.Piston{{At: r3.Vec{Z: ballRadius}, Axis: r3.Vec{Z: 1}, Radius: radius}}
	return ready(t, p, one)
}

// offBall returns how far the field 2 m away is from that of a cap whose rim is the piston's, at
// most, as a part of its RMS over the angles.
func offBall(t *testing.T, radius, k, density float64, change func(*boundary.Solver)) float64 {
	t.Helper()
	s := ballWith(t, radius)
	if change != nil {
		change(s)
	}
	x := solved(t, s, k, density)
	var got, want []complex128
	for angle := 0.0; angle <= 180; angle += 15 {
		got = append(got, x.At(0, towards(2, angle)))
		want = append(want, onBall(t, ballRadius, radius, k, 2, angle*radian))
	}
	return off(got, want)
}

// off is how far a field is from another at most, in dB where it is as loud as the RMS.
func off(got, want []complex128) float64 {
	most, sum := 0.0, 0.0
	for i, w := range want {
		most = max(most, cmplx.Abs(got[i]-w))
		sum += real(w)*real(w) + imag(w)*imag(w)
	}
	return 20 * math.Log10(1+most/math.Sqrt(sum/float64(len(want))))
}

// TestBall holds a small flat piston that touches the ball to a cap of equal radius. They are not
// the same: the disc lies before the cap, by a quarter of its radius squared over the ball's on average,
// 0.3 mm at 13 mm, and moves in one direction. Mesh and that together are below 0.03 dB.
func TestBall(t *testing.T) {
	for _, c := range []struct {
		radius, hz float64
	}{
		{0.005, 250}, {0.005, 1000}, {0.005, 2000}, {0.005, 3150}, {0.005, 5000},
		{0.013, 250}, {0.013, 1000}, {0.013, 5000},
	} {
		dB := offBall(t, c.radius, number(c.hz), density, nil)
		t.Logf("%g mm, %g Hz: %.4f dB", c.radius*1e3, c.hz, dB)
		if dB > 0.03 {
			t.Errorf("%g mm, %g Hz: %.4f dB off the cap", c.radius*1e3, c.hz, dB)
		}
	}
}

// dirichlet returns where the Helmholtz integral on a ball's surface alone has no single
// solution: the frequencies in Hz up to a highest of j_n(ka) = 0, found by their change of sign.
func dirichlet(highest float64) (hz []float64, degree []int) {
	j := func(n int, x float64) float64 { return math.Sqrt(math.Pi/2/x) * besselHalf(n, x) }
	for n := range 12 {
		for f := 100.0; f < highest; f += 20 {
			a, b := number(f)*ballRadius, number(f+20)*ballRadius
			if j(n, a)*j(n, b) > 0 {
				continue
			}
			for range 50 {
				if m := (a + b) / 2; j(n, a)*j(n, m) <= 0 {
					b = m
				} else {
					a = m
				}
			}
			hz, degree = append(hz, a/ballRadius*speed/2/math.Pi), append(degree, n)
		}
	}
	return hz, degree
}

// besselHalf is a factor times j_n, from j_0 and j_1 upward where that is safe, x > n, and nothing that
// changes sign below.
func besselHalf(n int, x float64) float64 {
	if x < float64(n) {
		return 1
	}
	sin, cos := math.Sincos(x)
	before, now := cos/x, sin/x
	for i := range n {
		before, now = now, float64(2*i+1)/x*now-before
	}
	return now
}

// TestNoIrregularFrequency: at and round the frequencies at which a ball's inside rings with no pressure
// on its wall, the field is as right as elsewhere. Without the second surface it is not.
func TestNoIrregularFrequency(t *testing.T) {
	alone := func(s *boundary.Solver) { s.Choices().Second = 0 }
	hz, degree := dirichlet(5000)
	worst, without := 0.0, 0.0
	for i, f := range hz {
		if !thorough.Set && i%7 != 0 {
			continue
		}
		for _, beside := range []float64{0, 0.3} {
			dB := offBall(t, 0.005, number(f+beside), density, nil)
			if worst = max(worst, dB); dB > 0.03 {
				t.Errorf("%.1f Hz, beside the ringing of degree %d: %.3f dB", f+beside, degree[i], dB)
			}
		}
		if degree[i] < 4 {
			without = max(without, offBall(t, 0.005, number(f), density, alone))
		}
	}
	t.Logf("%d frequencies: at most %.3f dB, without the inner surface %.1f dB", len(hz), worst, without)
	if len(hz) < 20 {
		t.Errorf("only %d frequencies found", len(hz))
	}
	if without < 1 {
		t.Errorf("without the inner surface %.3f dB: the test sees nothing", without)
	}
}

// everyHz is for the whole look, which takes some eight minutes: -everyhz 5.
var everyHz = flag.Float64("everyhz", 0, "Hz between the frequencies that TestEvenSteps tries")

// TestEvenSteps looks for irregular frequencies from 200 Hz to 5 kHz.
func TestEvenSteps(t *testing.T) {
	step := 600.0
	switch {
	case *everyHz > 0:
		step = *everyHz
	case thorough.Set:
		step = 65
	}
	for f := 200.0; f <= 5000; f += step {
		if dB := offBall(t, 0.005, number(f), density, nil); dB > 0.03 {
			t.Errorf("%g Hz: %.3f dB", f, dB)
		}
	}
}
