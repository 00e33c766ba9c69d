package radiate_test

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout"
	"pappus/layout/body"
	"pappus/testdata/reference"
	try "pappus/testdata/thorough"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// solved is an array of a body, in its true field up to a frequency in Hz.
func solved(b *body.Body, coneRadius, upTo float64, mounts ...layout.Mount) *layout.Array {
	return &layout.Array{Body: b, Driver: layout.Driver{ConeRadius: coneRadius}, Mounts: mounts,
		Timing: layout.Timing{Model: radiate.BodyModel, SolveTo: upTo}}
}

// scene is an array as its design has it.
func scene(t testing.TB, a *layout.Array, m *radiate.Medium) *radiate.Scene {
	t.Helper()
	s, err := radiate.NewScene(a, m)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// about turns half round the upright axis: as faceted_given.csv has bodies, so are ours turned.
func about(v r3.Vec) r3.Vec { return r3.Vec{X: -v.X, Y: -v.Y, Z: v.Z} }

// TestBodyFaceted holds the model body to every row of faceted_given.csv, in level and phase to
// within twice its uncertainty plus 0.1 dB and 1 degree, or, near a null, the complex value to
// within twice the uncertainty's share of the RMS of the piston's rows.
func TestBodyFaceted(t *testing.T) {
	upTo := 1000.0 // Hz
	if try.Set {
		upTo = 4000
	}
	tests := []struct {
		body    string
		drivers []string
		most    float64 // Hz, of the rows
	}{
		{"dodecahedron", []string{"top"}, upTo},
		{"half_dodecahedron", []string{"top", "side"}, 2000},
		{"half_dodecahedron", []string{"tip"}, 2000},
	}
	rows, err := reference.Table("faceted_given.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, test := range tests {
		t.Run(test.body+" "+test.drivers[0], func(t *testing.T) {
			a := solved(solid(t, test.body != "dodecahedron"), pistons[test.drivers[0]].radius, 1.45*min(test.most, upTo))
			for i, name := range test.drivers {
				a.Mounts = append(a.Mounts, layout.Mount{ID: i + 1, Point: about(pistons[name].at), Normal: about(pistons[name].axis)})
			}
			held := 0
			for i, name := range test.drivers {
				heard := map[float64][]reference.Row{}
				for _, row := range rows {
					if hz := row.Float("frequency_hz"); row["body"] == test.body && row["driver"] == name && hz <= upTo {
						heard[hz] = append(heard[hz], row)
					}
				}
				for hz, rows := range heard {
					k := 2 * math.Pi * hz / 343.2
					f := scene(t, a, still(k)).Field
					for _, row := range rows {
						holds(t, row, one(f, a.Mounts[i], about(place(row)))*cmplx.Rect(2, 2*k))
						held++
					}
				}
			}
			t.Logf("%d rows", held)
		})
	}
}

// holds compares a value with a row of faceted_given.csv.
func holds(t *testing.T, row reference.Row, got complex128) {
	want := complex(row.Float("re"), row.Float("im"))
	dB, deg := 20*math.Abs(math.Log10(cmplx.Abs(got/want))), math.Abs(cmplx.Phase(got/want))/radian
	e := cmplx.Abs(want) * (math.Pow(10, row.Float("uncertainty_db")/20) - 1) // of the RMS
	if (dB > 2*row.Float("uncertainty_db")+0.1 || deg > 2*row.Float("uncertainty_deg")+1) && cmplx.Abs(got-want) > 2*e {
		t.Errorf("%v: off by %.3f dB and %.2f degrees", row, dB, deg)
	}
}
