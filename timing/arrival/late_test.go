package arrival_test

import (
	"math"
	"testing"

	"pappus/timing/arrival"
	"pappus/timing/ball"
	"pappus/timing/path"
)

// fieldBand is the default band of the fit, as the plan has it.
func fieldBand() []float64 {
	var f []float64
	for hz := 525.0; hz <= 8000; hz += 75 {
		f = append(f, hz)
	}
	return f
}

// shortest returns the length in m of the shortest way round a cap's ball.
func shortest(c ball.Cap, r, gamma float64) float64 {
	long, _ := path.Round(c.Radius, r, gamma)
	return long
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
				series, err := ball.NewSeries(c, k, 1e-16)
				if err != nil {
					t.Fatal(err)
				}
				series.Move(r)
				var d arrival.Distance
				late.Prepare(&d, r)
				for i := 0; i <= 721; i++ {
					gamma := math.Pi * float64(i) / 721
					series.At(pressure, gamma)
					way := shortest(c, r, gamma) / speed
					after := way - r/speed // over a source at the centre, as the series is
					want := finder.Find(pressure, after-50e-6, after+350e-6) - after
					if got := late.At(&d, gamma); math.Abs(got-want) > test.within {
						t.Errorf("%g radii, %.2f degrees: got %.3f us, want %.3f", radii, gamma*180/math.Pi, 1e6*got, 1e6*want)
					}
				}
			}
		})
	}
}

// TestLateMakesNoJumps: over a narrow high band many delays fit nearly as well, and on a
// large ball the waves round both sides meet behind it; still the arrival moves on evenly
// from the front to the back, by far less than half a period from one half degree to the
// next.
func TestLateMakesNoJumps(t *testing.T) {
	const speed = 344.0
	var narrow []float64
	for hz := 7000.0; hz <= 8000; hz += 75 {
		narrow = append(narrow, hz)
	}
	for _, test := range []struct {
		name   string
		radius float64
		band   []float64
	}{{"narrow", 0.15, narrow}, {"large", 0.5, fieldBand()}, {"both", 0.4, narrow}} {
		t.Run(test.name, func(t *testing.T) {
			c := ball.Cap{Radius: test.radius, HalfAngle: 0.1}
			late, err := arrival.NewLate(c, test.band, speed)
			if err != nil {
				t.Fatal(err)
			}
			var d arrival.Distance
			for _, radii := range []float64{1.2, 3, 12} {
				r := radii * c.Radius
				late.Prepare(&d, r)
				before := shortest(c, r, 0)/speed + late.At(&d, 0)
				for i := 1; i <= 360; i++ {
					gamma := math.Pi * float64(i) / 360
					now := shortest(c, r, gamma)/speed + late.At(&d, gamma)
					if step := now - before; math.Abs(step) > 1.0/(2*8000) {
						t.Errorf("%g radii, %.1f degrees: %.1f us later than half a degree before", radii, 180*gamma/math.Pi, 1e6*step)
					}
					before = now
				}
			}
		})
	}
}
