package radiate_test

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout"
	"pappus/testdata/reference"
	"pappus/timing/ball"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

const radian = math.Pi / 180

var small = ball.Cap{Radius: 0.15, HalfAngle: 6 * radian}

// at returns the point at an angle from x and a distance.
func at(gamma, r float64) r3.Vec {
	sin, cos := math.Sincos(gamma)
	return r3.Vec{X: r * cos, Z: r * sin}
}

func sphere(t testing.TB, m *radiate.Medium, c ball.Cap, near, far float64) radiate.Field {
	t.Helper()
	f, err := radiate.Sphere(m, c, r3.Vec{}, near, far)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// TestSphereReference checks every row of cap_on_rigid_sphere.csv (Morse and
// Ingard, ch. 7; Beranek and Mellow, 12.6; computed with mpmath), through the
// field as the rest of the program uses it.
func TestSphereReference(t *testing.T) {
	rows, err := reference.Table("cap_on_rigid_sphere.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows {
		c := ball.Cap{Radius: 0.15, HalfAngle: row.Float("cap_half_angle_deg") * radian}
		k, r := row.Float("ka")/c.Radius, row.Float("r_over_a")*c.Radius
		got := one(sphere(t, still(k), c, r, r), front, at(row.Float("gamma_deg")*radian, r))
		got *= cmplx.Rect(r, k*r)
		want := complex(row.Float("re"), row.Float("im"))
		if !near(got, want, 1e-9) {
			t.Errorf("%v: got %v, off by %g", row, got, cmplx.Abs(got-want)/cmplx.Abs(want))
		}
	}
}

// TestSphereTable: the table gives what the series gives, within 0.05 dB and
// 1 degree, up to ka 55.
func TestSphereTable(t *testing.T) {
	m := still(1, 20, 110, 366)
	table := sphere(t, m, small, 0.16, 5)
	one := []complex128{1, 1, 1, 1}
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.Float64Range(0.16, 5).Draw(t, "r")
		point := at(rapid.Float64Range(0, math.Pi).Draw(t, "gamma"), r)
		exact, err := radiate.Sphere(m, small, r3.Vec{}, r, r)
		if err != nil {
			t.Fatal(err)
		}
		want, got := make([]complex128, 4), make([]complex128, 4)
		exact.Add(want, front, []r3.Vec{point}, one)
		table.Add(got, front, []r3.Vec{point}, one)
		for f := range want {
			ratio := got[f] / want[f]
			if db := 20 * math.Log10(cmplx.Abs(ratio)); math.Abs(db) > 0.05 || math.Abs(cmplx.Phase(ratio)) > radian {
				t.Fatalf("k %g: off by %g dB and %g degrees", m.Wavenumber[f], db, cmplx.Phase(ratio)/radian)
			}
		}
	})
}

// TestSphereTurns: turning mount and point together changes nothing.
func TestSphereTurns(t *testing.T) {
	f := sphere(t, still(100), small, 2, 2)
	want := one(f, front, at(1.8, 2))
	rapid.Check(t, func(t *rapid.T) {
		turn := r3.NewRotation(rapid.Float64Range(-4, 4).Draw(t, "turn"), r3.Vec{X: 0.2, Y: 1, Z: rapid.Float64Range(-1, 1).Draw(t, "z")})
		m := layout.Mount{Point: turn.Rotate(front.Point), Normal: turn.Rotate(front.Normal)}
		if got := one(f, m, turn.Rotate(at(1.8, 2))); !near(got, want, 1e-10) {
			t.Fatalf("got %v, want %v", got, want)
		}
	})
}

// TestSphereOffTheBall: a mount in the ball or out of it, as on a flat face or at a
// vertex, is moved along its own direction to the ball, whatever its normal.
func TestSphereOffTheBall(t *testing.T) {
	direction := r3.Unit(r3.Vec{X: 1, Y: 0.2, Z: -0.3})
	centre := r3.Vec{X: 0.01, Z: 0.05}
	at := []r3.Vec{{X: 1.7, Y: 0.4, Z: 0.2}, {X: -1.5, Y: 0.3}}
	for name, f := range map[string]radiate.Field{
		"series": shifted(t, centre, r3.Norm(r3.Sub(at[0], centre)), r3.Norm(r3.Sub(at[0], centre))),
		"table":  shifted(t, centre, 1, 3),
	} {
		on := layout.Mount{Point: r3.Add(centre, r3.Scale(small.Radius, direction)), Normal: direction}
		for _, distance := range []float64{0.6, 0.93, 1.2} {
			off := layout.Mount{Point: r3.Add(centre, r3.Scale(distance*small.Radius, direction)), Normal: r3.Vec{Z: 1}}
			for _, p := range at {
				if got, want := one(f, off, p), one(f, on, p); !near(got, want, 1e-6) {
					t.Errorf("%s at %g radii: got %v, want %v", name, distance, got, want)
				}
			}
		}
	}
}

// shifted is the field of a ball whose centre is not the origin.
func shifted(t *testing.T, centre r3.Vec, near, far float64) radiate.Field {
	t.Helper()
	f, err := radiate.Sphere(still(50), small, centre, near, far)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// TestSphereElsewhere: a ball about another centre sounds as one about the origin with
// all places moved along.
func TestSphereElsewhere(t *testing.T) {
	centre := r3.Vec{X: 0.02, Y: -0.01, Z: 0.06}
	for name, far := range map[string]float64{"series": 2, "table": 2.5} {
		here, there := sphere(t, still(50), small, 2, far), shifted(t, centre, 2, far)
		for _, gamma := range []float64{0, 0.7, 2, math.Pi} {
			moved := layout.Mount{Point: r3.Add(front.Point, centre), Normal: front.Normal}
			got, want := one(there, moved, r3.Add(at(gamma, 2), centre)), one(here, front, at(gamma, 2))
			if !near(got, want, 1e-6) {
				t.Errorf("%s at %g rad: got %v, want %v", name, gamma, got, want)
			}
		}
	}
}

// TestHalfBallOnAPlane: drivers on a rigid half ball that stands on a rigid
// plane sound like those drivers and their mirror images on a whole ball.
func TestHalfBallOnAPlane(t *testing.T) {
	m := still(0.5, 10, 80, 300)
	weight := []complex128{1, 1i, -0.5, 2}
	whole := sphere(t, m, small, 1.7, 1.7)
	half := radiate.Images([]radiate.Image{radiate.Direct(whole), radiate.Floor(whole, 0, []float64{1, 1, 1, 1})}, 4)
	rapid.Check(t, func(t *rapid.T) {
		unit := func(name string) r3.Vec {
			v := r3.Vec{X: rapid.Float64Range(-1, 1).Draw(t, name), Y: rapid.Float64Range(-1, 1).Draw(t, name), Z: rapid.Float64Range(0.01, 1).Draw(t, name)}
			return r3.Unit(v)
		}
		u, p := unit("mount"), r3.Scale(1.7, unit("point"))
		mount := layout.Mount{Point: r3.Scale(0.15, u), Normal: u}
		mirrored := mount
		mirrored.Point.Z, mirrored.Normal.Z = -mount.Point.Z, -mount.Normal.Z
		got, want := make([]complex128, 4), make([]complex128, 4)
		half.Add(got, mount, []r3.Vec{p}, weight)
		whole.Add(want, mount, []r3.Vec{p}, weight)
		whole.Add(want, mirrored, []r3.Vec{p}, weight)
		for f := range got {
			if cmplx.Abs(got[f]-want[f]) > 1e-14*(1+cmplx.Abs(want[f])) {
				t.Fatalf("got %v, want %v", got[f], want[f])
			}
		}
	})
}

// TestSmallBallIsAPoint: well below ka = 1 and far away the body does not matter.
func TestSmallBallIsAPoint(t *testing.T) {
	m := still(0.01 / 0.15)
	got := one(sphere(t, m, small, 300, 300), front, at(2, 300))
	if db := 20 * math.Log10(cmplx.Abs(got)*300); math.Abs(db) > 0.01 {
		t.Errorf("off by %g dB", db)
	}
}

// TestTableFollowsThePath holds the quick geometry of the table to that of
// package path, through the phase of what is heard.
func TestTableFollowsThePath(t *testing.T) {
	table := sphere(t, still(300), small, 0.2, 3)
	for _, gamma := range []float64{0, 1e-5, 1, 1.49, 1.5, 2, 3, math.Pi} {
		exact := sphere(t, still(300), small, 1.9, 1.9)
		ratio := one(table, front, at(gamma, 1.9)) / one(exact, front, at(gamma, 1.9))
		if math.Abs(cmplx.Phase(ratio)) > radian {
			t.Errorf("%g rad: off by %g degrees", gamma, cmplx.Phase(ratio)/radian)
		}
	}
}

func TestSphereAddsNothingToTheHeap(t *testing.T) {
	m := still(1, 20, 110)
	points := []r3.Vec{at(1, 2), at(2, 2)}
	dst, weight := make([]complex128, 6), []complex128{1, 1, 1}
	for name, f := range map[string]radiate.Field{"series": sphere(t, m, small, 2, 2), "table": sphere(t, m, small, 1, 3)} {
		if n := testing.AllocsPerRun(50, func() { f.Add(dst, front, points, weight) }); n > 0 {
			t.Errorf("%s: %g allocations", name, n)
		}
	}
}

func BenchmarkSphere(b *testing.B) {
	frequency := make([]float64, 35)
	for i := range frequency {
		frequency[i] = 100 * math.Pow(1.16, float64(i))
	}
	m := radiate.NewMedium(room, frequency)
	points := make([]r3.Vec, 64)
	for i := range points {
		points[i] = at(math.Pi*float64(i)/64, 2)
	}
	weight, dst := make([]complex128, 35), make([]complex128, 35*64)
	for i := range weight {
		weight[i] = 1
	}
	for name, f := range map[string]radiate.Field{"series": sphere(b, m, small, 2, 2), "table": sphere(b, m, small, 1, 3)} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				f.Add(dst, front, points, weight)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(dst)), "ns/value")
		})
	}
}
