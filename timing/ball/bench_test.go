package ball

import (
	"math"
	"testing"
)

var driver = Cap{Radius: 0.15, HalfAngle: 5.4 * degree}

func linear(n int, to float64) []float64 {
	k := make([]float64, n)
	for i := range k {
		k[i] = to * float64(i+1) / float64(n)
	}
	return k
}

// One value; the last two on the surface and just above it.
func BenchmarkPressure(b *testing.B) {
	for _, c := range []struct {
		name  string
		ka, s float64
	}{{"ka44_13a", 44, 13}, {"ka44_1.1a", 44, 1.1}, {"ka5_1.002a", 5, 1.002}, {"ka44_surface", 44, 1}, {"ka44_1.0001a", 44, 1.0001}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := driver.Pressure(c.ka/driver.Radius, c.s*driver.Radius, 2); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// A spot 2 m away: 256 wavenumbers up to ka = 44, 60 angles, coefficients
// included.
func BenchmarkSeries(b *testing.B) {
	k := linear(256, 44/driver.Radius)
	dst := make([]complex128, len(k))
	b.ReportAllocs()
	for b.Loop() {
		s, err := NewSeries(driver, k, 2)
		if err != nil {
			b.Fatal(err)
		}
		for i := range 60 {
			s.At(dst, float64(i)*math.Pi/60)
		}
	}
}

// The coefficients alone.
func BenchmarkNewSeries(b *testing.B) {
	k := linear(256, 44/driver.Radius)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := NewSeries(driver, k, 2); err != nil {
			b.Fatal(err)
		}
	}
}
