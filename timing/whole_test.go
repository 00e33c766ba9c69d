package timing

import (
	"fmt"
	"math"
	"math/cmplx"
	"runtime"
	"testing"

	"pappus/layout"
	"pappus/layout/body"
	points "pappus/layout/spread"
	"pappus/timing/band"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// EvenBall lays drivers out evenly on a ball of 150 mm radius.
func EvenBall(t testing.TB, drivers int) *layout.Array {
	t.Helper()
	settled, err := points.Settle(drivers, 1, points.Zone{})
	if err != nil {
		t.Fatal(err)
	}
	directions, _ := settled.Apart(0)
	a := &layout.Array{
		Air:      layout.Air{Temperature: 294.15, Humidity: 0.45, Pressure: 101325},
		Body:     body.Ball(0.15),
		Driver:   layout.Driver{ConeRadius: 0.016, NominalOhm: 8, DCOhm: 7, Sensitivity: math.NaN()},
		Timing:   layout.Timing{Model: sphereModel, DelaysBy: "path", FieldLow: 500, FieldHigh: 8000},
		Wiring:   layout.Wiring{MinimumLoad: 4},
		Coverage: layout.Coverage{HalfWidth: 2.8, Cells: 64},
		Spot:     r3.Vec{X: 1.8, Y: 0.4, Z: 0.6},
	}
	for i, d := range directions {
		a.Mounts = append(a.Mounts, layout.Mount{ID: i + 1, Point: r3.Scale(0.15, d), Normal: d, Face: -1})
	}
	return a
}

// TestWholeIsTheSum: the harmonics of the whole array give what its drivers give one by one,
// near and far, in open air, over a floor and in a room.
func TestWholeIsTheSum(t *testing.T) {
	for _, test := range []struct {
		name string
		with func(*layout.Array)
	}{
		{"open air", func(*layout.Array) {}},
		{"over a floor", func(a *layout.Array) { a.Surface = layout.Surface{Present: true, Height: -0.4} }},
		{"in a room", func(a *layout.Array) {
			a.Room = layout.Room{Present: true, Size: r3.Vec{X: 5, Y: 4, Z: 3}, Body: r3.Vec{X: 2, Y: 2, Z: 1}, Order: 1}
		}},
		{"in a room of order 2 whose walls differ", func(a *layout.Array) {
			a.Room = layout.Room{Present: true, Size: r3.Vec{X: 5, Y: 4, Z: 3}, Body: r3.Vec{X: 2, Y: 2, Z: 1}, Order: 2,
				Absorption: [6]layout.Absorption{0: {0.1, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6}, 4: {0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5}}}
		}},
		{"a cut body's ball", func(a *layout.Array) { a.Body.BallCentre = r3.Vec{Z: 0.05} }},
	} {
		t.Run(test.name, func(t *testing.T) {
			a := EvenBall(t, 50)
			test.with(a)
			p, err := Make(t.Context(), a)
			if err != nil {
				t.Fatal(err)
			}
			frequency := band.Frequencies(band.Octaves(), 1, 5)
			m := radiate.NewMedium(p.airState(), frequency)
			s := Slice{Origin: r3.Vec{X: -0.9, Y: -1.1, Z: 0.02}, Right: r3.Vec{X: 1}, Up: r3.Vec{Y: 1}, Step: 0.17, Columns: 13, Rows: 12}
			places, _ := s.within(a)
			x, err := radiate.NewScene(a, m)
			if err != nil {
				t.Fatal(err)
			}
			fed, nf := p.feed(true, frequency, p.response(frequency)), len(frequency)
			got := make([]complex128, len(places)*nf)
			x.NewSummed(fed, x.Ways, s.frame(), places).Add(got, nil)
			worst, near := 0.0, 0
			pressure := make([]complex128, len(a.Mounts)*nf)
			for i, at := range places {
				x.Hear(pressure, x.Ways, at)
				want, size := make([]complex128, nf), make([]float64, nf)
				fed.AddTo(want, pressure)
				for k := range a.Mounts {
					for f, w := range fed.Of(k) {
						size[f] += cmplx.Abs(w * pressure[k*nf+f])
					}
				}
				tolerance := 2e-5
				if r3.Norm(r3.Sub(at, a.Body.BallCentre)) < 1.25*0.15 && len(x.Ways) == 1 {
					tolerance = 1e-8 // one by one, by the quick field
					near++
				}
				for f := range want {
					e := cmplx.Abs(got[i*nf+f]-want[f]) / size[f]
					worst = max(worst, e/tolerance)
					if e > tolerance {
						t.Errorf("%v, %.0f Hz: off by %.2g of the sizes", at, frequency[f], e)
					}
				}
			}
			if near == 0 && len(x.Ways) == 1 {
				t.Error("no place is near")
			}
			t.Logf("%d places, at worst %.2f of what is allowed", len(places), worst)
		})
	}
}

// TestWholeIsTheSameOnAnyNumberOfCores compares bit by bit, over harmonics in a room and one
// by one near the body.
func TestWholeIsTheSameOnAnyNumberOfCores(t *testing.T) {
	a := EvenBall(t, 300)
	a.Wiring.Channels = 8
	a.Room = layout.Room{Present: true, Size: r3.Vec{X: 5, Y: 4, Z: 3}, Body: r3.Vec{X: 2, Y: 2, Z: 1}, Order: 2}
	p, err := Make(t.Context(), a)
	if err != nil {
		t.Fatal(err)
	}
	frequency := band.Frequencies(band.Octaves(), 1, 3) // more than one slab
	m := radiate.NewMedium(p.airState(), frequency)
	s := Slice{Origin: r3.Vec{X: -0.4, Y: -0.4, Z: 0.02}, Right: r3.Vec{X: 1}, Up: r3.Vec{Y: 1}, Step: 0.17, Columns: 6, Rows: 5}
	places, _ := s.within(a)
	var first []complex128
	for _, cores := range []int{1, 2, 5} {
		x, err := radiate.NewScene(a, m)
		if err != nil {
			t.Fatal(err)
		}
		got := make([]complex128, len(places)*len(frequency))
		before := runtime.GOMAXPROCS(cores)
		x.NewSummed(p.feed(true, frequency, p.response(frequency)), x.Ways, s.frame(), places).Add(got, nil)
		runtime.GOMAXPROCS(before)
		if first == nil {
			first = got
		}
		for i, v := range got {
			if v != first[i] {
				t.Fatalf("%d cores, %v, %.0f Hz: %v, on one %v", cores, places[i/len(frequency)], frequency[i%len(frequency)], v, first[i])
			}
		}
	}
}

// BenchmarkMap is the map of the design's numbers: 4,096 cells, 105 frequencies, with what
// Cover does for it. What numpy takes for as many terms: testdata/reference/free_field_rate.py.
func BenchmarkMap(b *testing.B) {
	for _, c := range []struct{ drivers, channels int }{{60, 60}, {500, 16}, {2000, 16}, {2000, 2000}} {
		b.Run(fmt.Sprintf("%d drivers on %d channels", c.drivers, c.channels), func(b *testing.B) {
			a := EvenBall(b, c.drivers)
			a.Wiring.Channels = c.channels
			p, err := Make(b.Context(), a)
			if err != nil {
				b.Fatal(err)
			}
			s, frequency := HorizontalSlice(&p.Spot), band.Frequencies(band.Octaves(), 1, 15)
			at, _ := s.within(a)
			sum := make([]complex128, len(at)*len(frequency))
			b.ReportAllocs()
			for b.Loop() {
				x, err := newPlaces(&p.Spot, frequency, s.frame(), at, false)
				if err != nil {
					b.Fatal(err)
				}
				x.hear(heard{sum: sum}, &p.Spot)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(sum)*c.drivers), "ns/term")
		})
	}
}
