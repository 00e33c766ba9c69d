package timing_test

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout"
	"pappus/layout/body"
	"pappus/layout/spread"
	"pappus/testdata/reference"
	"pappus/testdata/thorough"
	"pappus/timing"
	"pappus/timing/path"

	"gonum.org/v1/gonum/spatial/r3"
)

// tableSpeed is the speed of sound of faceted_given.csv in m/s, tableBall the radius of
// the dodecahedron's ball in m, tableStep the rad between its angles.
const (
	tableSpeed = 343.2
	tableBall  = 0.1309218
	tableStep  = 15 * math.Pi / 180
)

// faceted is the pressure of a piston on a face of the dodecahedron at one frequency, 2 m
// from the centre: the table's rows with the way round the ball taken out, over plane
// (a corner, an edge's middle) and angle.
type faceted struct {
	k    float64
	rest [2][13]complex128
}

func readFaceted(t *testing.T, hz float64) faceted {
	t.Helper()
	rows, err := reference.Table("faceted_given.csv")
	if err != nil {
		t.Fatal(err)
	}
	f := faceted{k: 2 * math.Pi * hz / tableSpeed}
	for _, row := range rows {
		if row["body"] == "dodecahedron" && row.Float("frequency_hz") == hz {
			plane, angle := int(row.Float("plane_deg")/36), int(row.Float("angle_deg")/15)
			f.rest[plane][angle] = complex(row.Float("re"), row.Float("im")) * cmplx.Rect(1, f.k*f.way(float64(angle)*tableStep))
		}
	}
	return f
}

// way is the way round the ball to the spot, less 2 m.
func (f faceted) way(angle float64) float64 {
	long, _ := path.Round(tableBall, 2, angle)
	return long - 2
}

// at returns the pressure at an angle from the piston's axis, in a half plane turned by
// so much from one that holds a corner of the face: over the angle by the cubic through
// four rows, over the turn by the first harmonic that five corners leave.
func (f faceted) at(angle, turn float64) complex128 {
	node := func(plane, i int) complex128 { // even about the front and the back
		if i < 0 {
			i = -i
		}
		if i > 12 {
			i = 24 - i
		}
		return f.rest[plane][i]
	}
	x := angle / tableStep
	i := min(int(x), 11)
	x -= float64(i)
	weight := [4]float64{-x * (x - 1) * (x - 2) / 6, (x + 1) * (x - 1) * (x - 2) / 2, -(x + 1) * x * (x - 2) / 2, (x + 1) * x * (x - 1) / 6}
	var corner, edge complex128
	for n, w := range weight {
		corner += complex(w, 0) * node(0, i-1+n)
		edge += complex(w, 0) * node(1, i-1+n)
	}
	return ((corner+edge)/2 + (corner-edge)/2*complex(math.Cos(5*turn), 0)) * cmplx.Rect(1, -f.k*f.way(angle))
}

// turnOf returns the turn of a spot's half plane about a face's axis, from the one that
// holds the face's first corner.
func turnOf(b *body.Body, face int, spot r3.Vec) float64 {
	n := b.Normal(face)
	flat := func(v r3.Vec) r3.Vec { return r3.Sub(v, r3.Scale(r3.Dot(v, n), n)) }
	return path.Angle(flat(b.Vertices[b.Faces[face].Corners[0]]), flat(spot))
}

// short returns by how many dB twelve drivers with delays of -arrival fall short of all in
// step, by the table.
func short(f faceted, b *body.Body, spot r3.Vec, arrival []float64) float64 {
	var sum complex128
	parts := 0.0
	for face, at := range arrival {
		p := f.at(path.Angle(b.Normal(face), spot), turnOf(b, face, spot))
		sum += p * cmplx.Rect(1, f.k*(tableSpeed*at-2))
		parts += cmplx.Abs(p)
	}
	return 20 * math.Log10(parts/cmplx.Abs(sum))
}

// TestDelaysOnADodecahedron: what delays for 12 drivers on a dodecahedron of 150 mm lose
// at 2 m against all in step, judged by the boundary-element solution, mean of 500 Hz to
// 3 kHz and of 60 directions: 1.12 dB by the straight line, 0.65 by the path with each
// mount's own distance, 0.24 by the path on the ball, and, fitted over the same band, 0.11 by
// the ball's field and 0.08 by the body's own. Fitted up to 8 kHz, as is the default, both lose
// more below 3 kHz: 0.14 and 0.13.
func TestDelaysOnADodecahedron(t *testing.T) {
	want := map[string]float64{"straight": 1.12, "own": 0.65, "path": 0.24, "field": 0.11}
	if thorough.Set {
		want["body"] = 0.08
	}
	lost := delaysLose(t, []float64{500, 1000, 1500, 2000, 3000}, thorough.Set)
	for by, want := range want {
		t.Logf("by %s: %.3f dB", by, lost[by])
		if math.Abs(lost[by]-want) > 0.05 || by == "body" && math.Abs(lost[by]-want) > 0.015 {
			t.Errorf("by %s: %.3f dB lost, want %g", by, lost[by], want)
		}
	}
	if thorough.Set && lost["body"] > lost["field"]-0.02 {
		t.Errorf("%.3f dB lost by the body's field, %.3f by the ball's", lost["body"], lost["field"])
	}
}

// delaysLose returns what delays lose, in dB, by how they are taken, judged at frequencies in Hz.
func delaysLose(t *testing.T, frequency []float64, byBody bool) map[string]float64 {
	t.Helper()
	var tables []faceted
	for _, hz := range frequency {
		tables = append(tables, readFaceted(t, hz))
	}
	settled, err := spread.Settle(60, 1, spread.Zone{})
	if err != nil {
		t.Fatal(err)
	}
	directions, _ := settled.Apart(0)
	a := twelve(t, r3.Vec{X: 2})
	a.Timing.FieldHigh = frequency[len(frequency)-1]
	planners := map[string]*timing.Planner{"field": planner(t, a)}
	if byBody {
		own := *a
		own.Timing.Model, own.Timing.SolveTo = "body", 4000
		planners["body"] = planner(t, &own)
	}
	lost := map[string]float64{}
	for _, u := range directions {
		spot, times := r3.Scale(2, u), map[string][]float64{}
		for model, p := range planners {
			moved, err := p.Spot(spot)
			if err != nil {
				t.Fatal(err)
			}
			for m, r := range moved.Arrivals {
				times[model] = append(times[model], r.Field)
				if model == "body" {
					continue
				}
				own, _, _ := path.Between(a.Mounts[m].Point, spot)
				for by, s := range map[string]float64{"straight": r.Straight, "own": own, "path": r.Path} {
					times[by] = append(times[by], s/tableSpeed)
				}
			}
		}
		for by, arrival := range times {
			for _, f := range tables {
				lost[by] += short(f, a.Body, spot, arrival) / float64(len(tables)*len(directions))
			}
		}
	}
	return lost
}

func planner(t *testing.T, a *layout.Array) *timing.Planner {
	t.Helper()
	p, err := timing.NewPlanner(a)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// TestDelaysByTheBody: solved up to 1.5 kHz only, and timed below 1 kHz, delays by the body's own
// field lose less there than by the way round the ball, as choices.csv has both.
func TestDelaysByTheBody(t *testing.T) {
	a := twelve(t, r3.Vec{X: 1.2, Y: 0.9, Z: 1.3})
	a.Timing.Model, a.Timing.SolveTo, a.Timing.FieldHigh = "body", 1500, 1000
	p := plan(t, a)
	short := map[string][]float64{}
	for _, c := range p.Choices {
		short[c.By] = c.Short
	}
	for b, hz := range p.Choices[0].Band {
		if hz > 400 && hz < 1100 && short["field"][b] > short["path"][b] {
			t.Errorf("%.0f Hz: %.3f dB lost by the field, %.3f by the path", hz, short["field"][b], short["path"][b])
		}
		t.Logf("%.0f Hz: %.3f dB lost by the field, %.3f by the path", hz, short["field"][b], short["path"][b])
	}
}

// TestPathsRoundADodecahedron holds a driver's path and straight line to
// geodesic_paths.csv at all its spots, and both arcs to the true shortest way round the
// faces: on the ball it is off by less than 12 mm, with the mount's own distance by up to
// 25.
func TestPathsRoundADodecahedron(t *testing.T) {
	rows, err := reference.Table("geodesic_paths.csv")
	if err != nil {
		t.Fatal(err)
	}
	a := twelve(t, r3.Vec{X: 2})
	top := 0
	for i, m := range a.Mounts {
		if m.Normal.Z > a.Mounts[top].Normal.Z {
			top = i
		}
	}
	a.Mounts = a.Mounts[top : top+1]
	up := a.Mounts[0].Normal
	across := r3.Unit(r3.Cross(up, r3.Vec{X: 0.3, Y: 1}))
	worst, worstOwn := 0.0, 0.0
	for _, row := range rows {
		sin, cos := math.Sincos(row.Float("angle_deg") * math.Pi / 180)
		a.Spot = r3.Add(r3.Scale(2*cos, up), r3.Scale(2*sin, across))
		p, err := timing.NewPlanner(a)
		if err != nil {
			t.Fatal(err)
		}
		moved, err := p.Spot(a.Spot)
		if err != nil {
			t.Fatal(err)
		}
		r := moved.Arrivals[0]
		if got, want := 1000*r.Path, row.Float("arc_equal_volume_mm"); math.Abs(got-want) > 2e-4 {
			t.Errorf("%v: path %.5f mm", row, got)
		}
		if got, want := 1000*r.Straight, row.Float("straight_mm"); math.Abs(got-want) > 2e-4 {
			t.Errorf("%v: straight %.5f mm", row, got)
		}
		worst = max(worst, math.Abs(1000*r.Path-row.Float("geodesic_mm")))
		worstOwn = max(worstOwn, math.Abs(row.Float("arc_inscribed_mm")-row.Float("geodesic_mm")))
	}
	if worst > 12 || worstOwn < 2*worst-1 {
		t.Errorf("off the shortest way by %.1f mm on the ball, %.1f with the own distance", worst, worstOwn)
	}
}
