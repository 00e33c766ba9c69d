package ball

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/testdata/reference"
)

const degree = math.Pi / 180

// worst returns the largest relative error of the table's rows up to ka = 60.
func worst(t *testing.T, name string, have func(t *testing.T, ka, alpha, s, gamma float64) complex128) float64 {
	t.Helper()
	rows, err := reference.Table(name)
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) < 100 {
		t.Fatalf("%s has only %d rows", name, len(rows))
	}
	var most float64
	for _, r := range rows {
		ka, s := r.Float("ka"), r.Float("r_over_a")
		alpha, gamma := r.Float("cap_half_angle_deg")*degree, r.Float("gamma_deg")*degree
		want := complex(r.Float("re"), r.Float("im"))
		e := cmplx.Abs(have(t, ka, alpha, s, gamma)-want) / cmplx.Abs(want)
		// Rounding is near 1e-15 of the largest terms; beyond the ka that is
		// asked for the shadow is so deep that it shows.
		tolerance := 5e-12
		if ka > 60 {
			tolerance = 1e-9
		}
		if !(e <= tolerance) {
			t.Errorf("%s: %v: relative error %.2g", name, r, e)
		}
		if ka <= 60 {
			most = max(most, e)
		}
	}
	return most
}

// The tables' values are over a point source at the centre, at the distance r.
func TestPressureTables(t *testing.T) {
	for _, name := range []string{"cap_on_rigid_sphere.csv", "cap_on_rigid_sphere_more.csv"} {
		const a = 0.16
		e := worst(t, name, func(t *testing.T, ka, alpha, s, gamma float64) complex128 {
			k, r := ka/a, s*a
			h, err := Cap{Radius: a, HalfAngle: alpha}.Pressure(k, r, gamma)
			if err != nil {
				t.Fatal(err)
			}
			return h / cmplx.Rect(1/r, -k*r)
		})
		t.Logf("%s: pressure to %.2g", name, e)
		e = worst(t, name, func(t *testing.T, ka, alpha, s, gamma float64) complex128 {
			k, r := ka/a, s*a
			series, err := NewSeries(Cap{Radius: a, HalfAngle: alpha}, []float64{0, k}, r)
			if err != nil {
				t.Fatal(err)
			}
			h := make([]complex128, 2)
			series.At(h, gamma)
			return h[1] / cmplx.Rect(1/r, -k*r)
		})
		t.Logf("%s: series to %.2g", name, e)
	}
}
