package radiate

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/layout/body"
	"pappus/timing/air"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestDegree holds the rule for the degree to its formula, by hand.
func TestDegree(t *testing.T) {
	for ka, want := range map[float64]int{0: 8, 1: 12, 8: 22, 27: 44, 64: 84} {
		if got := degree(ka); got != want {
			t.Errorf("ka %g: degree %d, want %d", ka, got, want)
		}
	}
}

// powers returns the power of a ball's array, as its model has it, at frequencies in Hz.
func powers(t *testing.T, model string, frequency []float64, at []r3.Vec, feed Feed) ([]float64, *Medium) {
	t.Helper()
	s := sceneOf(t, model, frequency, at)
	return s.Power(feed), s.Medium
}

// sceneOf is a ball's array in open air that takes nothing from the sound.
func sceneOf(t *testing.T, model string, frequency []float64, at []r3.Vec) *Scene {
	t.Helper()
	a := &layout.Array{Body: body.Ball(0.15), Timing: layout.Timing{Model: model}, Driver: layout.Driver{ConeRadius: 0.02}}
	for _, p := range at {
		a.Mounts = append(a.Mounts, layout.Mount{Point: p, Normal: r3.Unit(p)})
	}
	m := NewMedium(air.Air{Temperature: 293.15, Humidity: 0.5, Pressure: 101325}, frequency).WithoutLoss()
	s, err := NewScene(a, m)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestTwoPoints: two equal sources a distance b apart radiate 2 (1 + sin(kb)/(kb))
// times the power of one (Beranek and Mellow, chapter 4; Lord Rayleigh, Theory
// of Sound, 280), several frequencies at once.
func TestTwoPoints(t *testing.T) {
	const half = 0.16
	frequency, one := []float64{20, 125, 1000, 2500, 8000}, []complex128{1, 1, 1, 1, 1}
	axis := r3.Unit(r3.Vec{X: 0.31, Y: -0.52, Z: 0.77})
	power, m := powers(t, PointModel, frequency, []r3.Vec{r3.Scale(half, axis), r3.Scale(-half, axis)}, Feed{[]int{0, 0}, [][]complex128{one}})
	for f, k := range m.Wavenumber {
		want := 2 * (1 + math.Sin(2*k*half)/(2*k*half))
		if math.Abs(power[f]/want-1) > 1e-5 { // 1/r at 100 m
			t.Errorf("%g Hz: power %.9f, want %.9f", frequency[f], power[f], want)
		}
	}
}

// TestPowerOfBall: the power out of the harmonics is the mean of the squared far field over
// all directions, heard driver by driver.
func TestPowerOfBall(t *testing.T) {
	at := []r3.Vec{{X: 0.15}, {Y: 0.15}, {Y: -0.09, Z: 0.12}}
	feed := Feed{[]int{0, 1, 0}, [][]complex128{{1, 1i}, {0.5i, -1}}}
	power, m := powers(t, SphereModel, []float64{300, 3000}, at, feed)
	a := &layout.Array{Body: body.Ball(0.15), Timing: layout.Timing{Model: PointModel}, Driver: layout.Driver{ConeRadius: 0.02}}
	for _, p := range at {
		a.Mounts = append(a.Mounts, layout.Mount{Point: p})
	}
	field, err := Sphere(m, ConeCap(a), r3.Vec{}, exact)
	if err != nil {
		t.Fatal(err)
	}
	want := (&Scene{a, m, far{field}, Ways(a, m), far{field}}).Power(feed)
	for f := range want {
		if math.Abs(power[f]/want[f]-1) > 1e-5 {
			t.Errorf("power %g, heard %g", power[f], want[f])
		}
	}
}

// TestEnergy: the mean of the energy over all directions is the power, out of the harmonics and
// heard, however the directions lie.
func TestEnergy(t *testing.T) {
	at := []r3.Vec{{X: 0.15}, {Y: 0.15}, {Y: -0.09, Z: 0.12}}
	feeds := []Feed{{[]int{0, 1, 0}, [][]complex128{{1, 1i}, {0.5i, -1}}}, {[]int{0, 0, 0}, [][]complex128{{1, 1}}}}
	for _, model := range []string{SphereModel, PointModel} {
		s := sceneOf(t, model, []float64{300, 3000}, at)
		around := NewAround(r3.Vec{X: 0.3, Y: -0.5, Z: 0.8}, false, 31)
		for i, energy := range s.Energy(feeds, around) {
			for f, want := range s.Power(feeds[i]) {
				got := 0.0
				for d, share := range around.Share {
					got += share * energy[2*d+f]
				}
				if math.Abs(got/want-1) > 1e-4 { // the power of points is of 100 m away
					t.Errorf("%s, feed %d: %.8g, want %.8g", model, i, got, want)
				}
			}
		}
	}
}

// TestHalf: half of the directions are on the axis' side, and stand for all of the half.
func TestHalf(t *testing.T) {
	axis := r3.Unit(r3.Vec{X: 1, Y: 2, Z: -0.5})
	all, half, sum := NewAround(axis, false, 31), NewAround(axis, true, 31), 0.0
	for i, d := range half.direction {
		sum += half.Share[i]
		if r3.Dot(d, axis) <= 0 {
			t.Fatalf("%v is on the other side of %v", d, axis)
		}
	}
	if 2*len(half.Share) != len(all.Share) || math.Abs(sum-1) > 1e-12 {
		t.Errorf("%d of %d directions, shares of %g", len(half.Share), len(all.Share), sum)
	}
}

// far hears a field a thousand times as far away, where it is a far one.
type far struct{ field Field }

func (x far) At(dst []complex128, mounts []layout.Mount, place r3.Vec) {
	x.field.At(dst, mounts, r3.Scale(1000, place))
	for i := range dst {
		dst[i] *= 1000
	}
}
