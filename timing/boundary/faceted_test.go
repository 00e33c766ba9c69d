package boundary_test

import (
	"math"
	"math/cmplx"
	"testing"
	"time"

	"pappus/layout/body"
	"pappus/testdata/reference"
	"pappus/timing/boundary"

	"gonum.org/v1/gonum/spatial/r3"
)

var pistons = map[string]boundary.Piston{
	"top":  {r3.Vec{Z: 0.119198}, r3.Vec{Z: 1}, 0.025},
	"side": {r3.Vec{X: 0.086253, Y: 0.062666, Z: 0.053307}, r3.Unit(r3.Vec{X: 0.086253, Y: 0.062666, Z: 0.053307}), 0.025},
	"tip":  {r3.Vec{X: 0.139560, Z: 0.012584}, r3.Vec{X: 0.894427, Z: -0.447214}, 0.010},
}

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

func TestFaceted(t *testing.T) {
	whole, err := body.Platonic("dodecahedron", 0.15)
	if err != nil {
		t.Fatal(err)
	}
	cut, err := whole.CutAt(0)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := reference.Table("faceted_given.csv")
	if err != nil {
		t.Fatal(err)
	}
	problems := map[string]*boundary.Problem{
		"dodecahedron":      {Patches: boundary.Polyhedron(faces(whole))},
		"half_dodecahedron": {Patches: boundary.Polyhedron(faces(cut)), Inside: r3.Vec{Z: 0.05}},
	}
	type key struct {
		body, driver string
		hz           float64
	}
	solved := map[key]*boundary.Pressure{}
	worst := map[key][3]float64{}
	for _, row := range rows {
		hz := row.Float("frequency_hz")
		id := key{row["body"], row["driver"], hz}
		k := 2 * math.Pi * hz / 343.2
		p := problems[id.body]
		one := []boundary.Piston{pistons[id.driver]}
		if solved[id] == nil {
			from := time.Now()
			solved[id] = p.NewSolver(one).Solve(k, 7, 1e-6)
			_ = from
		}
		got := p.At(one, solved[id], k, 0, place(row)) * cmplx.Rect(2, 2*k)
		want := complex(row.Float("re"), row.Float("im"))
		ratio := got / want
		dB, deg := math.Abs(20*math.Log10(cmplx.Abs(ratio))), math.Abs(cmplx.Phase(ratio))/radian
		w := worst[id]
		w[0], w[1] = max(w[0], dB), max(w[1], deg)
		w[2] = max(w[2], dB/(2*row.Float("uncertainty_db")+0.1), deg/(2*row.Float("uncertainty_deg")+1))
		worst[id] = w
	}
	for id, w := range worst {
		t.Logf("%v: %.3f dB %.2f deg, of what is allowed %.2f", id, w[0], w[1], w[2])
	}
}
