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
	"pappus/timing/directivity"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// EvenBall lays drivers out evenly on a ball of 150 mm radius.
func EvenBall(t testing.TB, drivers int) *layout.Array {
	t.Helper()
	directions, _, err := points.Within(drivers, 1, points.Zone{})
	if err != nil {
		t.Fatal(err)
	}
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
			a := EvenBall(t, 150) // so many that harmonics are worth their cost
			test.with(a)
			p, err := Make(a)
			if err != nil {
				t.Fatal(err)
			}
			frequency := band.Frequencies(band.Octaves(), 1, 5)
			m := radiate.NewMedium(p.airState(), frequency)
			s := Slice{Origin: r3.Vec{X: -0.9, Y: -1.1, Z: 0.02}, Right: r3.Vec{X: 1}, Up: r3.Vec{Y: 1}, Step: 0.17, Columns: 13, Rows: 12}
			places, _ := s.within(a)
			weight, nf := newKernel(p, nil, frequency).weight, len(frequency)
			got := make([]complex128, len(places)*nf)
			w := newWhole(a, m, scene{a, m}.images(), s.frame(), weight)
			if w.dear(len(places), len(places)) {
				t.Fatal("drivers are summed one by one")
			}
			if err := w.add(got, places); err != nil {
				t.Fatal(err)
			}
			worst := 0.0
			for i, at := range places {
				field, err := newField(a, m, []r3.Vec{at}) // exact: one distance for each image
				if err != nil {
					t.Fatal(err)
				}
				want, size := make([]complex128, nf), make([]float64, nf)
				for k, mount := range a.Mounts {
					one := make([]complex128, nf)
					field.Add(one, mount, places[i:i+1], weight[k*nf:(k+1)*nf])
					for f, v := range one {
						want[f] += v
						size[f] += cmplx.Abs(v)
					}
				}
				tolerance := 2e-5
				if r3.Norm(r3.Sub(at, a.Body.BallCentre)) < closeBy*0.15 {
					tolerance = 6e-3 // the table's 0.05 dB
				}
				for f := range want {
					e := cmplx.Abs(got[i*nf+f]-want[f]) / size[f]
					worst = max(worst, e/tolerance)
					if e > tolerance {
						t.Errorf("%v, %.0f Hz: off by %.2g of the sizes", at, frequency[f], e)
					}
				}
			}
			t.Logf("%d places, at worst %.2f of what is allowed", len(places), worst)
		})
	}
}

// TestFewDriversOneByOne: where it costs less, drivers are summed one by one, within what the
// table promises.
func TestFewDriversOneByOne(t *testing.T) {
	a := EvenBall(t, 5)
	a.Room = layout.Room{Present: true, Size: r3.Vec{X: 5, Y: 4, Z: 3}, Body: r3.Vec{X: 2, Y: 2, Z: 1}, Order: 2}
	p, err := Make(a)
	if err != nil {
		t.Fatal(err)
	}
	frequency := band.Frequencies(band.Octaves(), 1, 3)
	m := radiate.NewMedium(p.airState(), frequency)
	s := Slice{Origin: r3.Vec{X: -0.9, Y: -1.1, Z: 0.02}, Right: r3.Vec{X: 1}, Up: r3.Vec{Y: 1}, Step: 0.31, Columns: 7, Rows: 6}
	places, _ := s.within(a)
	weight, nf := newKernel(p, nil, frequency).weight, len(frequency)
	w := newWhole(a, m, scene{a, m}.images(), s.frame(), weight)
	if !w.dear(len(places), len(places)) {
		t.Fatal("harmonics are taken for cheap")
	}
	got, want := make([]complex128, len(places)*nf), make([]complex128, len(places)*nf)
	if err := w.add(got, places); err != nil {
		t.Fatal(err)
	}
	if err := (oneByOne{a, m, scene{a, m}.images(), weight}).add(want, places); err != nil {
		t.Fatal(err)
	}
	for i := range got {
		if cmplx.Abs(got[i]-want[i]) > 1e-9*cmplx.Abs(want[i]) {
			t.Fatalf("%d: %v, want %v", i, got[i], want[i])
		}
	}
}

// TestWholeIsTheSameOnAnyNumberOfCores compares bit by bit, over harmonics in a room and one
// by one near the body.
func TestWholeIsTheSameOnAnyNumberOfCores(t *testing.T) {
	a := EvenBall(t, 300)
	a.Wiring.Channels = 8
	a.Room = layout.Room{Present: true, Size: r3.Vec{X: 5, Y: 4, Z: 3}, Body: r3.Vec{X: 2, Y: 2, Z: 1}, Order: 2}
	p, err := Make(a)
	if err != nil {
		t.Fatal(err)
	}
	frequency := band.Frequencies(band.Octaves(), 1, 3) // more than one slab
	m := radiate.NewMedium(p.airState(), frequency)
	s := Slice{Origin: r3.Vec{X: -0.4, Y: -0.4, Z: 0.02}, Right: r3.Vec{X: 1}, Up: r3.Vec{Y: 1}, Step: 0.17, Columns: 6, Rows: 5}
	places, _ := s.within(a)
	weight := newKernel(p, nil, frequency).weight
	var first []complex128
	for _, cores := range []int{1, 2, 5} {
		w := newWhole(a, m, scene{a, m}.images(), s.frame(), weight)
		if w.dear(len(places), len(places)) {
			t.Fatal("harmonics are not taken")
		}
		got := make([]complex128, len(places)*len(frequency))
		before := runtime.GOMAXPROCS(cores)
		err := w.add(got, places)
		runtime.GOMAXPROCS(before)
		if err != nil {
			t.Fatal(err)
		}
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

// TestRadiatedIsTheMean: the power out of the harmonics is the mean over all directions of the
// squared far field, by a rule for the sphere.
func TestRadiatedIsTheMean(t *testing.T) {
	a := EvenBall(t, 17)
	a.Wiring.Channels = 4
	p, err := Make(a)
	if err != nil {
		t.Fatal(err)
	}
	frequency := []float64{125, 1000, 4000}
	m := radiate.NewMedium(p.airState(), frequency).WithoutLoss()
	weight := newKernel(p, nil, frequency).weight
	got, want := make([]float64, 3), make([]float64, 3)
	if err := radiated(got, a, m, weight); err != nil {
		t.Fatal(err)
	}
	const far = 1e5
	field, err := newField(a, m, []r3.Vec{{X: far}})
	if err != nil {
		t.Fatal(err)
	}
	directivity.Quadrature(m.Wavenumber[2]*0.15).Power(want, far, func(dst []complex128, points []r3.Vec) {
		for i, mount := range a.Mounts {
			field.Add(dst, mount, points, weight[3*i:3*i+3])
		}
	})
	for f := range got {
		if e := math.Abs(got[f]/want[f] - 1); e > 1e-5 {
			t.Errorf("%.0f Hz: %g, want %g, off by %.2g", frequency[f], got[f], want[f], e)
		}
	}
}

// BenchmarkWhole is the map of the design's numbers: 4,096 cells, 105 frequencies.
func BenchmarkWhole(b *testing.B) {
	for _, drivers := range []int{60, 500, 2000} {
		b.Run(fmt.Sprintf("%d drivers", drivers), func(b *testing.B) {
			a := EvenBall(b, drivers)
			p, err := Make(a)
			if err != nil {
				b.Fatal(err)
			}
			s := HorizontalSlice(p)
			frequency := band.Frequencies(band.Thirds(), 3, 5)
			m := radiate.NewMedium(p.airState(), frequency)
			places, _ := s.within(a)
			weight := newKernel(p, nil, frequency).weight
			dst := make([]complex128, len(places)*len(frequency))
			b.ReportAllocs()
			for b.Loop() {
				w := newWhole(a, m, scene{a, m}.images(), s.frame(), weight)
				if err := w.add(dst, places); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
