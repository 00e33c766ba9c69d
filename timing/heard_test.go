package timing

import (
	"math"
	"math/cmplx"
	"slices"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing/band"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestHeardIsOneByOne: what harmonics and tables make of the direct sound is what all
// drivers give one by one: magnitudes within 0.04 dB, the smear within 0.3 us.
func TestHeardIsOneByOne(t *testing.T) {
	for _, test := range []struct {
		name    string
		drivers int
		with    func(*layout.Array)
	}{
		{"one driver", 1, func(*layout.Array) {}},
		{"two", 2, func(*layout.Array) {}},
		{"sixty in eight channels", 60, func(a *layout.Array) { a.Wiring.Channels = 8 }},
		{"over a floor, which is no direct sound", 20, func(a *layout.Array) { a.Surface = layout.Surface{Present: true, Height: -0.4} }},
		{"wide cones", 12, func(a *layout.Array) { a.Driver.ConeRadius = 0.06 }},
		{"turned", 12, func(a *layout.Array) {
			a.Placings = []layout.Placing{{Turn: design.Placing{On: design.OnCeiling}.Turn(design.Angles{YawDeg: 30, PitchDeg: 20, RollDeg: -50})}}
		}},
		{"two bodies, one turned", 12, func(a *layout.Array) {
			a.Placings = []layout.Placing{{}, {At: r3.Vec{X: 1.1, Y: 0.4, Z: 0.3}, Turn: design.Placing{On: design.OnWall}.Turn(design.Angles{YawDeg: 30})}}
			for _, m := range a.Own() {
				m.Body = 1
				a.Mounts = append(a.Mounts, m)
			}
		}},
		{"a ball beside the origin", 12, func(a *layout.Array) { a.Body.BallCentre = r3.Vec{Z: 0.05} }},
	} {
		t.Run(test.name, func(t *testing.T) {
			a := EvenBall(t, test.drivers)
			test.with(a)
			p, err := Make(t.Context(), a)
			if err != nil {
				t.Fatal(err)
			}
			s := Slice{Origin: r3.Vec{X: -2.1, Y: -1.9, Z: 0.31}, Right: r3.Vec{X: 1}, Up: r3.Vec{Y: 1}, Step: 0.2, Columns: 21, Rows: 20}
			places, _ := s.within(a)
			frequency := band.Frequencies(band.Octaves(), 1, 5)
			x, err := newPlaces(&p.Spot, frequency, s.frame(), places, true)
			if err != nil {
				t.Fatal(err)
			}
			room := func() heard {
				n := len(places) * len(frequency)
				return heard{make([]complex128, n), make([]float64, n), make([]float64, len(places))}
			}
			got, want := room(), room()
			x.hear(got, &p.Spot)
			for i := range x.bodies {
				x.bodies[i].rings.Ring, x.bodies[i].rings.Near, x.bodies[i].sizes = nil, all(len(places)), nil
			}
			x.hear(want, &p.Spot)
			for i, v := range want.sum {
				if cmplx.Abs(got.sum[i]-v) > 2e-5*want.parts[i] {
					t.Fatalf("%v: %v, want %v", places[i/len(frequency)], got.sum[i], v)
				}
			}
			size, late := 0.0, 0.0
			for i, v := range want.parts {
				size = max(size, math.Abs(20*math.Log10(got.parts[i]/v)))
			}
			for i, v := range want.smear {
				late = max(late, math.Abs(got.smear[i]-v))
			}
			if limit := 0.3e-6 + 1e-3*slices.Max(want.smear)*float64(len(x.bodies)-1); size > 0.04 || late > limit {
				t.Errorf("sizes off by %.4f dB, smear by %.2f us", size, 1e6*late)
			}
			t.Logf("sizes off by %.5f dB, smear by %.3f us", size, 1e6*late)
		})
	}
}
