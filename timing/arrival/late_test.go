package arrival_test

import (
	"math"
	"testing"

	"pappus/timing/arrival"
	"pappus/timing/ball"
)

// fieldBand is the default band of the fit, as the plan has it.
func fieldBand() []float64 {
	var f []float64
	for hz := 525.0; hz <= 8000; hz += 75 {
		f = append(f, hz)
	}
	return f
}

// TestLateIsTheFit holds the table to the fit itself, searched over the whole range
// that a body of 0.3 m radius can need, at places between the nodes.
func TestLateIsTheFit(t *testing.T) {
	const speed = 344.0
	for _, test := range []struct {
		name            string
		radius, cone    float64 // m
		nearest, within float64 // radii; s
	}{
		{"small", 0.05, 0.01, 1.2, 0.2e-6},
		{"as the demo's", 0.15, 0.016, 1.2, 0.7e-6},
		{"near to it", 0.15, 0.016, 1.11, 1e-6},
		{"large", 0.2, 0.03, 1.2, 2e-6},
	} {
		t.Run(test.name, func(t *testing.T) {
			c := ball.Cap{Radius: test.radius, HalfAngle: math.Asin(test.cone / test.radius)}
			frequency := fieldBand()
			k := make([]float64, len(frequency))
			for i, hz := range frequency {
				k[i] = 2 * math.Pi * hz / speed
			}
			late, err := arrival.NewLate(c, frequency, speed)
			if err != nil {
				t.Fatal(err)
			}
			finder, pressure := arrival.NewFinder(frequency), make([]complex128, len(k))
			for _, radii := range []float64{test.nearest, 1.37, 1.9, 3.3, 7.7, 13.33, 90} {
				r := radii * c.Radius
				series, err := ball.NewSeries(c, k, r)
				if err != nil {
					t.Fatal(err)
				}
				var d arrival.Distance
				late.Prepare(&d, r)
				for i := 0; i <= 721; i++ {
					gamma := math.Pi * float64(i) / 721
					series.At(pressure, gamma)
					way := c.Path(r, gamma) / speed
					want := finder.Find(pressure, way-50e-6, way+350e-6) - way
					if got := late.At(&d, gamma); math.Abs(got-want) > test.within {
						t.Errorf("%g radii, %.2f degrees: got %.3f us, want %.3f", radii, gamma*180/math.Pi, 1e6*got, 1e6*want)
					}
				}
			}
		})
	}
}
