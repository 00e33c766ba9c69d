package arrival_test

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"pappus/timing/arrival"
	"pappus/timing/ball"
	"pappus/timing/path"

	"gonum.org/v1/gonum/dsp/fourier"
	"pgregory.net/rapid"
)

func grid(low, high float64, n int) []float64 {
	f := make([]float64, n)
	for i := range f {
		f[i] = low + (high-low)*float64(i)/float64(n-1)
	}
	return f
}

// TestFindPureDelay: a delay alone is found to a nanosecond, whatever the level
// over frequency.
func TestFindPureDelay(t *testing.T) {
	frequency := grid(500, 12000, 200)
	finder := arrival.NewFinder(frequency)
	rapid.Check(t, func(t *rapid.T) {
		delay := rapid.Float64Range(5e-3, 6e-3).Draw(t, "delay")
		tilt := rapid.Float64Range(-2, 2).Draw(t, "tilt")
		p := make([]complex128, len(frequency))
		for i, f := range frequency {
			p[i] = cmplx.Rect(math.Pow(f/1000, tilt), -2*math.Pi*f*delay)
		}
		if got := finder.Find(p, 4.9e-3, 6.1e-3); math.Abs(got-delay) > 1e-9 {
			t.Fatalf("got %g s, want %g", got, delay)
		}
	})
}

// TestArrivalsOnABall compares, on a ball of 160 mm radius heard from 2 m, the
// path, the field's arrival and the peak of the impulse response of the same
// model up to 12 kHz, which the fast Fourier transform finds on its own. The
// path is from the middle of the cap; within 15 degrees past the shadow's edge a
// cap as wide as a cone is heard up to 3 us before that, from its near rim.
func TestArrivalsOnABall(t *testing.T) {
	for _, test := range []struct {
		name  string
		half  float64 // of the cap, degrees
		early float64 // us
	}{{"narrow cap", 1, 0}, {"cap as wide as a cone of 32 mm", 5.7, 3}} {
		t.Run(test.name, func(t *testing.T) { arrivalsOnABall(t, test.half, test.early) })
	}
}

func arrivalsOnABall(t *testing.T, half, early float64) {
	const (
		speed  = 343.2
		radius = 0.16
		r      = 2.0
		limit  = 12000.0
		bins   = 600 // 20 Hz apart
	)
	uniform := grid(limit/bins, limit, bins)
	k := make([]float64, bins)
	for i, f := range uniform {
		k[i] = 2 * math.Pi * f / speed
	}
	series, err := ball.NewSeries(ball.Cap{Radius: radius, HalfAngle: half * math.Pi / 180}, k, 1e-16)
	if err != nil {
		t.Fatal(err)
	}
	series.Move(r)
	const from = 24 // from 500 Hz
	finder := arrival.NewFinder(uniform[from:])
	h := make([]complex128, bins)
	for degrees := 0.0; degrees <= 165; degrees += 7.5 {
		gamma := degrees * math.Pi / 180
		series.At(h, gamma)
		for i := range h {
			h[i] *= cmplx.Rect(1/r, -k[i]*r)
		}
		way, seen := path.Round(radius, r, gamma)
		first := way / speed
		field := 1e6 * (finder.Find(h[from:], first-50e-6, first+300e-6) - first)
		peak := 1e6 * (peakOf(h, limit, 1<<16, first) - first)
		switch {
		case seen && math.Abs(peak) > 10:
			t.Errorf("%g degrees, seen: the peak is %.1f us after the path", degrees, peak)
		case !seen && (peak < -early || peak > 60):
			t.Errorf("%g degrees, in the shadow: the peak is %.1f us after the path", degrees, peak)
		}
		if degrees <= 150 && math.Abs(field-peak) > 10 {
			t.Errorf("%g degrees: field %.1f us, peak %.1f us after the path", degrees, field, peak)
		}
	}
}

// peakOf returns the time of the greatest value of the impulse response, by an
// inverse transform with the path's time taken out, between samples by a
// parabola.
func peakOf(h []complex128, limit float64, length int, first float64) float64 {
	spectrum := make([]complex128, length/2+1)
	step := limit / float64(len(h))
	for i, v := range h {
		f := step * float64(i+1)
		spectrum[i+1] = v * cmplx.Rect(1, 2*math.Pi*f*first)
	}
	spectrum[0] = complex(real(spectrum[1]), 0)
	x := fourier.NewFFT(length).Sequence(nil, spectrum)
	best := 0
	for i := range x {
		if x[i] > x[best] {
			best = i
		}
	}
	before, at, after := x[(best+length-1)%length], x[best], x[(best+1)%length]
	place := float64(best) + 0.5*(before-after)/(before-2*at+after)
	if place > float64(length)/2 {
		place -= float64(length)
	}
	return first + place/(step*float64(length))
}

func TestFindAllocatesNothing(t *testing.T) {
	finder := arrival.NewFinder(grid(500, 8000, 100))
	p := make([]complex128, 100)
	for i := range p {
		p[i] = 1
	}
	if n := testing.AllocsPerRun(10, func() { finder.Find(p, -1e-4, 1e-4) }); n > 0 {
		t.Errorf("%g allocations", n)
	}
}

func ExampleFinder_Find() {
	frequency := grid(500, 8000, 50)
	p := make([]complex128, len(frequency))
	for i, f := range frequency {
		p[i] = cmplx.Rect(1, -2*math.Pi*f*5.25e-3)
	}
	fmt.Printf("%.3f ms\n", 1e3*arrival.NewFinder(frequency).Find(p, 5e-3, 5.5e-3))
	// Output: 5.250 ms
}

func BenchmarkFind(b *testing.B) {
	frequency := grid(500, 12000, 120)
	finder := arrival.NewFinder(frequency)
	p := make([]complex128, len(frequency))
	for i, f := range frequency {
		p[i] = cmplx.Rect(1, -2*math.Pi*f*5.25e-3)
	}
	b.ReportAllocs()
	for b.Loop() {
		finder.Find(p, 5.2e-3, 5.5e-3)
	}
}
