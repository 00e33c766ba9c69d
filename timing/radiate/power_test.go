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
	a := &layout.Array{Body: body.Ball(0.15), Timing: layout.Timing{Model: model}, Driver: layout.Driver{ConeRadius: 0.02}}
	for _, p := range at {
		a.Mounts = append(a.Mounts, layout.Mount{Point: p, Normal: r3.Unit(p)})
	}
	m := NewMedium(air.Air{Temperature: 293.15, Humidity: 0.5, Pressure: 101325}, frequency).WithoutLoss()
	s, err := NewScene(a, m)
	if err != nil {
		t.Fatal(err)
	}
	return s.Power(feed), m
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

// far hears a field a thousand times as far away, where it is a far one.
type far struct{ field Field }

func (x far) At(dst []complex128, mounts []layout.Mount, place r3.Vec) {
	x.field.At(dst, mounts, r3.Scale(1000, place))
	for i := range dst {
		dst[i] *= 1000
	}
}
