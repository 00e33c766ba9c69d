package radiate

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout"
	"pappus/layout/body"
	"pappus/timing/air"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestBodyJoin: up to where the ball takes over the field is the body's, from the end on the
// ball's, and level and phase go from one to the other without a step.
func TestBodyJoin(t *testing.T) {
	a := laid(t, small)
	speed := air.Air{Temperature: 293.15, Humidity: 0.5, Pressure: 101325}.SpeedOfSound()
	told := hearing(t, a, 100).Solution(speed)
	from, to := told.From, told.To
	if !(from >= 500 && to >= 590) || math.Abs(to/from-math.Sqrt(math.Sqrt2)) > 1e-9 {
		t.Fatalf("the ball takes over from %g to %g Hz", from, to)
	}
	frequency := []float64{0.999 * from, 1.0001 * to}
	for f := 0.9 * from; f < 1.1*to; f *= 1.002 {
		frequency = append(frequency, f)
	}
	s := hearing(t, a, frequency...)
	b, n := s.Field.(*bodyField), len(frequency)
	if b.share[0] != 0 || b.share[1] != 1 {
		t.Errorf("shares %g and %g of the ball at the ends", b.share[0], b.share[1])
	}
	at := r3.Vec{X: 1, Y: 0.7, Z: 0.2}
	got, ball := make([]complex128, 6*n), make([]complex128, 6*n)
	s.Field.At(got, a.Mounts, at)
	b.full.At(ball, a.Mounts, at)
	most := 0.0
	for m := range a.Mounts {
		if v := ball[m*n+1]; cmplx.Abs(got[m*n+1]-v) > 1e-12*cmplx.Abs(v) {
			t.Errorf("mount %d: %v above the end, the ball has %v", m+1, got[m*n+1], v)
		}
		for f := 3; f < n; f++ {
			// The way out turns by so much from one to the next.
			turn := cmplx.Rect(1, (s.Medium.Wavenumber[f]-s.Medium.Wavenumber[f-1])*r3.Norm(at))
			most = max(most, cmplx.Abs(got[m*n+f]*turn/got[m*n+f-1]-1))
		}
	}
	if most > 0.01 {
		t.Errorf("a step of a part of %.4f", most)
	}
}

// TestBodyOfBall: the true field of an even ball is the sphere's, within 0.05 dB and 0.5 degrees
// below the join.
func TestBodyOfBall(t *testing.T) {
	a := &layout.Array{Body: body.Ball(0.12), Driver: layout.Driver{ConeRadius: 0.02}, Timing: layout.Timing{Model: BodyModel, SolveTo: 500}}
	for i, v := range []r3.Vec{{X: 1}, {Y: 1}, {Z: 1}, {X: -1}, {Y: -1}, {Z: -1}} {
		a.Mounts = append(a.Mounts, layout.Mount{ID: i + 1, Point: r3.Scale(0.12, v), Normal: v})
	}
	from := hearing(t, a, 100).Solution(343.2).From
	s := hearing(t, a, 30, 100, 200, 0.7*from, 0.99*from)
	n := len(s.Medium.Frequency)
	got, want := make([]complex128, 6*n), make([]complex128, 6*n)
	dB, degrees := 0.0, 0.0
	for _, at := range []r3.Vec{{X: 2}, {X: 0.1, Y: 0.1, Z: 0.1}, {X: 0.3, Y: -0.2, Z: 0.8}} {
		s.Field.At(got, a.Mounts, at)
		s.Field.(*bodyField).full.At(want, a.Mounts, at)
		for i := range got {
			dB = max(dB, 20*math.Abs(math.Log10(cmplx.Abs(got[i]/want[i]))))
			degrees = max(degrees, math.Abs(cmplx.Phase(got[i]/want[i]))*180/math.Pi)
		}
	}
	t.Logf("%.4f dB, %.3f degrees", dB, degrees)
	if dB > 0.05 || degrees > 0.5 {
		t.Errorf("%.3f dB and %.2f degrees off", dB, degrees)
	}
}
