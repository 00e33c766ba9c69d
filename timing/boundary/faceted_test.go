package boundary_test

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/testdata/reference"
	"pappus/timing/boundary"

	"gonum.org/v1/gonum/spatial/r3"
)

// pistons are those of faceted_given.csv.
var pistons = map[string]boundary.Piston{
	"top":  {At: r3.Vec{Z: 0.119198}, Axis: r3.Vec{Z: 1}, Radius: 0.025},
	"side": {At: r3.Vec{X: 0.086253, Y: 0.062666, Z: 0.053307}, Axis: r3.Unit(r3.Vec{X: 0.086253, Y: 0.062666, Z: 0.053307}), Radius: 0.025},
	"tip":  {At: r3.Vec{X: 0.139560, Z: 0.012584}, Axis: r3.Vec{X: 0.894427, Z: -0.447214}, Radius: 0.010},
}

// given is a piston of faceted_given.csv on a body at a frequency.
type given struct {
	body, driver string
	hz           float64
}

// place returns where a row of faceted_given.csv listens.
func place(row reference.Row) r3.Vec {
	axis := pistons[row["driver"]].Axis
	up := r3.Vec{X: 1}
	if axis.Z < 0.999 {
		up = r3.Unit(r3.Sub(r3.Vec{Z: 1}, r3.Scale(axis.Z, axis)))
	}
	sinP, cosP := math.Sincos(row.Float("plane_deg") * radian)
	sinA, cosA := math.Sincos(row.Float("angle_deg") * radian)
	across := r3.Add(r3.Scale(cosP, up), r3.Scale(sinP, r3.Cross(axis, up)))
	return r3.Scale(2, r3.Add(r3.Scale(cosA, axis), r3.Scale(sinA, across)))
}

// tableRows returns the rows of faceted_given.csv by piston and frequency.
func tableRows(t *testing.T) map[given][]reference.Row {
	t.Helper()
	rows, err := reference.Table("faceted_given.csv")
	if err != nil {
		t.Fatal(err)
	}
	out := map[given][]reference.Row{}
	for _, row := range rows {
		id := given{row["body"], row["driver"], row.Float("frequency_hz")}
		out[id] = append(out[id], row)
	}
	return out
}

// TestFaceted holds every row of faceted_given.csv to within twice its uncertainty plus 0.1 dB
// and 1 degree, or, near a null, the complex value to within twice the uncertainty's share e of
// the RMS of the piston's rows. The nodes to a wavelength are those that are used.
func TestFaceted(t *testing.T) {
	whole := solid(t, "dodecahedron", 0.15)
	problems := map[string]*boundary.Problem{
		"dodecahedron":      {Patches: boundary.Polyhedron(faces(whole))},
		"half_dodecahedron": {Patches: boundary.Polyhedron(faces(cut(t, whole, 0))), Inside: r3.Vec{Z: 0.05}},
	}
	for id, rows := range tableRows(t) {
		k, p := number(id.hz), problems[id.body]
		one := []boundary.Piston{pistons[id.driver]}
		x := solved(t, ready(t, p, one), k, density)
		power, loudest := 0.0, 0.0
		for _, row := range rows {
			power += (square(row.Float("re")) + square(row.Float("im"))) / float64(len(rows))
		}
		for _, row := range rows {
			got := x.At(0, place(row)) * cmplx.Rect(2, 2*k)
			want := complex(row.Float("re"), row.Float("im"))
			dB, deg := math.Abs(level(got/want)), math.Abs(cmplx.Phase(got/want))/radian
			e := cmplx.Abs(want) * (math.Pow(10, row.Float("uncertainty_db")/20) - 1) // e times the RMS
			if (dB > 2*row.Float("uncertainty_db")+0.1 || deg > 2*row.Float("uncertainty_deg")+1) && cmplx.Abs(got-want) > 2*e {
				t.Errorf("%v, plane %s, %s degrees: off by %.3f dB and %.2f degrees", id, row["plane_deg"], row["angle_deg"], dB, deg)
			}
			loudest = max(loudest, cmplx.Abs(got-want)/math.Sqrt(power))
		}
		t.Logf("%v: %d nodes, %d rounds, at most %.1e of the RMS off", id, x.Nodes(), x.Rounds(), loudest)
	}
}

func square(x float64) float64 { return x * x }
