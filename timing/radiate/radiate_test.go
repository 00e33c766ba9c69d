package radiate_test

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout"
	"pappus/testdata/reference"
	"pappus/timing/air"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

var room = air.Air{Temperature: 293.15, Humidity: 0.5, Pressure: 101325}

// still is a medium without loss whose wavenumbers are the given ones, rad/m.
func still(wavenumber ...float64) *radiate.Medium {
	frequency := make([]float64, len(wavenumber))
	for i, k := range wavenumber {
		frequency[i] = k * room.SpeedOfSound() / (2 * math.Pi)
	}
	return radiate.NewMedium(room, frequency).WithoutLoss()
}

// one answers a single value of a field.
func one(f radiate.Field, m layout.Mount, at r3.Vec) complex128 {
	dst := make([]complex128, 1)
	f.At(dst, []layout.Mount{m}, at)
	return dst[0]
}

var front = layout.Mount{ID: 1, Point: r3.Vec{X: 0.15}, Normal: r3.Vec{X: 1}}

func near(got, want complex128, relative float64) bool {
	return cmplx.Abs(got-want) <= relative*cmplx.Abs(want)
}

// TestPoint checks exp(-ikd)/d, Morse and Ingard, Theoretical Acoustics, 7.1.
func TestPoint(t *testing.T) {
	for _, k := range []float64{0.1, 1, 30, 300} {
		for _, at := range []r3.Vec{{X: 2}, {X: -1, Y: 2, Z: 0.5}, {X: 0.151}} {
			d := r3.Norm(r3.Sub(at, front.Point))
			want := cmplx.Rect(1/d, -k*d)
			if got := one(radiate.Point(still(k)), front, at); !near(got, want, 1e-12) {
				t.Errorf("k %g at %v: got %v, want %v", k, at, got, want)
			}
		}
	}
}

// TestDoubledDistance checks the inverse distance law, combs_and_sums.csv.
func TestDoubledDistance(t *testing.T) {
	f := radiate.Point(still(7))
	db := 20 * math.Log10(cmplx.Abs(one(f, front, r3.Vec{X: 4.15}))/cmplx.Abs(one(f, front, r3.Vec{X: 2.15})))
	rows, err := reference.Table("combs_and_sums.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows {
		if row["case"] == "distance doubled from a point source" && math.Abs(db-row.Float("value")) > 5e-5 {
			t.Errorf("got %g dB, want %s", db, row["value"])
		}
	}
}

// TestPiston checks against baffled_piston.csv (Kinsler et al., ch. 7).
func TestPiston(t *testing.T) {
	rows, err := reference.Table("baffled_piston.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows {
		got, want := radiate.Piston(row.Float("ka_sin_theta")), row.Float("amplitude")
		if math.Abs(got-want) > 1e-12*math.Abs(want)+2e-16 {
			t.Errorf("ka sin %s: got %.16g, want %.16g", row["ka_sin_theta"], got, want)
		}
	}
}

func TestPistonNearTheAxis(t *testing.T) {
	for _, x := range []float64{0, 1e-9, 0.99e-4, 1.01e-4, 1e-3} {
		want := 1 - x*x/8 + x*x*x*x/192 // the series of J1, DLMF 10.2.2
		if got := radiate.Piston(x); math.Abs(got-want) > 1e-12 {
			t.Errorf("x %g: got %.16g, want %.16g", x, got, want)
		}
	}
}

func TestBaffle(t *testing.T) {
	const cone, k = 0.016, 150.0
	f := radiate.Baffle(still(k), cone)
	tests := []struct {
		name string
		at   r3.Vec
		want float64 // magnitude times distance
	}{
		{"on the axis: twice a point source", r3.Vec{X: 2.15}, 2},
		{"30 degrees off", r3.Vec{X: 0.15 + 2*math.Cos(math.Pi/6), Y: 1}, 2 * 2 * math.J1(k*cone/2) / (k * cone / 2)},
		{"behind", r3.Vec{X: -2}, 0},
		{"in the baffle", r3.Vec{X: 0.15, Y: 2}, 2 * math.J1(k*cone) / (k * cone)},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			d := r3.Norm(r3.Sub(test.at, front.Point))
			want := cmplx.Rect(test.want/d, -k*d)
			if got := one(f, front, test.at); cmplx.Abs(got-want) > 1e-12 {
				t.Errorf("got %v, want %v", got, want)
			}
		})
	}
}

func TestLossIsThatOfTheAir(t *testing.T) {
	frequency := []float64{8000}
	lossy, still := radiate.NewMedium(room, frequency), radiate.NewMedium(room, frequency).WithoutLoss()
	at := r3.Vec{X: 10.15}
	got := 20 * math.Log10(cmplx.Abs(one(radiate.Point(lossy), front, at))/cmplx.Abs(one(radiate.Point(still), front, at)))
	want := -10 * 20 * math.Log10(math.E) * room.Loss(8000)
	if math.Abs(got-want) > 1e-12 {
		t.Errorf("10 m take %g dB, want %g", got, want)
	}
}

func TestAtTheMountThereIsNoNumber(t *testing.T) {
	if got := one(radiate.Point(still(1)), front, front.Point); !cmplx.IsNaN(got) {
		t.Errorf("got %v", got)
	}
}

func TestAtPanicsForShape(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("no panic")
		}
	}()
	radiate.Point(still(1)).At(make([]complex128, 3), make([]layout.Mount, 2), r3.Vec{X: 2})
}

func ExamplePoint() {
	medium := radiate.NewMedium(room, []float64{1000})
	mount := layout.Mount{Point: r3.Vec{X: 0.15}, Normal: r3.Vec{X: 1}}
	dst := make([]complex128, 1)
	radiate.Point(medium).At(dst, []layout.Mount{mount}, r3.Vec{X: 2.15})
	fmt.Printf("%.2f dB\n", 20*math.Log10(cmplx.Abs(dst[0])))
	// Output: -6.03 dB
}
