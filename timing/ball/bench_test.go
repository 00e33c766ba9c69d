package ball

import (
	"math"
	"math/rand/v2"
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

// octaves is bands of five frequencies each, as wavenumbers up to 18 kHz.
func octaves(bands int, per float64) []float64 {
	const speed = 343.2
	var k []float64
	top := 18000.0 / math.Pow(2, 0.4/per)
	for b := bands - 1; b >= 0; b-- {
		for j := -2; j <= 2; j++ {
			f := top * math.Pow(2, (float64(j)/5-float64(b))/per)
			k = append(k, 2*math.Pi*f/speed)
		}
	}
	return k
}

func benchTable(b *testing.B, k []float64) *Table {
	t, err := NewTable(driver, k, 0.17, 6, nil)
	if err != nil {
		b.Fatal(err)
	}
	return t
}

// 105 frequencies up to 18 kHz, 0.17 m to 6 m.
func BenchmarkNewTable(b *testing.B) {
	k := octaves(21, 3)
	b.ReportAllocs()
	var t *Table
	for b.Loop() {
		t = benchTable(b, k)
	}
	b.ReportMetric(float64(t.Bytes())/1e6, "MB")
}

// Sixty drivers at scattered points, one core: ns for one driver, point and
// frequency.
func BenchmarkAdd(b *testing.B) {
	for _, c := range []struct {
		name string
		k    []float64
	}{{"35", octaves(7, 1)}, {"105", octaves(21, 3)}} {
		t := benchTable(b, c.k)
		dst, abs, weight := make([]complex128, len(c.k)), make([]float64, len(c.k)), make([]complex128, len(c.k))
		for f := range weight {
			weight[f] = complex(1, 0.5)
		}
		rnd := rand.New(rand.NewPCG(3, 4))
		type point struct{ r, gamma, path float64 }
		points := make([]point, 60*1024)
		for i := range points {
			if i%60 == 0 {
				points[i].r = 0.3 + 4*rnd.Float64()
			} else {
				points[i].r = points[i-1].r
			}
			points[i].gamma = math.Acos(2*rnd.Float64() - 1)
			points[i].path = driver.Path(points[i].r, points[i].gamma)
		}
		per := func(b *testing.B) {
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(points)*len(c.k)), "ns/value")
		}
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				var at Distance
				for i, p := range points {
					if i%60 == 0 {
						at, _ = t.At(p.r)
					}
					t.Add(dst, weight, at, p.gamma, p.path)
				}
			}
			per(b)
		})
		b.Run(c.name+"_abs", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				var at Distance
				for i, p := range points {
					if i%60 == 0 {
						at, _ = t.At(p.r)
					}
					t.AddAbs(dst, abs, weight, at, p.gamma, p.path)
				}
			}
			per(b)
		})
	}
}
