package radiate_test

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout"
	"pappus/layout/body"
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

// sphere is the field of a ball with its centre at a place.
func sphere(t testing.TB, m *radiate.Medium, c ball.Cap, centre r3.Vec) radiate.Field {
	t.Helper()
	f, err := radiate.Sphere(m, c, centre, 1e-16)
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
		got := one(sphere(t, still(k), c, r3.Vec{}), front, at(row.Float("gamma_deg")*radian, r))
		got *= cmplx.Rect(r, k*r)
		want := complex(row.Float("re"), row.Float("im"))
		if !near(got, want, 1e-9) {
			t.Errorf("%v: got %v, off by %g", row, got, cmplx.Abs(got-want)/cmplx.Abs(want))
		}
	}
}

// TestSphereTurns: turning mount and point together changes nothing.
func TestSphereTurns(t *testing.T) {
	f := sphere(t, still(100), small, r3.Vec{})
	want := one(f, front, at(1.8, 2))
	rapid.Check(t, func(t *rapid.T) {
		turn := r3.NewRotation(rapid.Float64Range(-4, 4).Draw(t, "turn"), r3.Vec{X: 0.2, Y: 1, Z: rapid.Float64Range(-1, 1).Draw(t, "z")})
		m := layout.Mount{Point: turn.Rotate(front.Point), Normal: turn.Rotate(front.Normal)}
		if got := one(f, m, turn.Rotate(at(1.8, 2))); !near(got, want, 1e-10) {
			t.Fatalf("got %v, want %v", got, want)
		}
	})
}

// TestSmallBallIsAPoint: well below ka = 1 and far away the body does not matter.
func TestSmallBallIsAPoint(t *testing.T) {
	m := still(0.01 / 0.15)
	got := one(sphere(t, m, small, r3.Vec{}), front, at(2, 300))
	if db := 20 * math.Log10(cmplx.Abs(got)*300); math.Abs(db) > 0.01 {
		t.Errorf("off by %g dB", db)
	}
}

// TestSphereOffTheBall: a mount in the ball or out of it, as on a flat face or at a
// vertex, is moved along its own direction to the ball, whatever its normal; and a ball about
// another centre sounds as one about the origin with all places moved along.
func TestSphereOffTheBall(t *testing.T) {
	direction := r3.Unit(r3.Vec{X: 1, Y: 0.2, Z: -0.3})
	centre := r3.Vec{X: 0.01, Z: 0.05}
	here, there := sphere(t, still(50), small, r3.Vec{}), sphere(t, still(50), small, centre)
	for _, p := range []r3.Vec{{X: 1.7, Y: 0.4, Z: 0.2}, {X: -1.5, Y: 0.3}} {
		want := one(here, layout.Mount{Point: r3.Scale(small.Radius, direction), Normal: direction}, r3.Sub(p, centre))
		for _, distance := range []float64{0.6, 0.93, 1, 1.2} {
			off := layout.Mount{Point: r3.Add(centre, r3.Scale(distance*small.Radius, direction)), Normal: r3.Vec{Z: 1}}
			if got := one(there, off, p); !near(got, want, 1e-12) {
				t.Errorf("at %g radii: got %v, want %v", distance, got, want)
			}
		}
	}
}

// TestNearest: what is nearer than 1.02 radii is heard as from there.
func TestNearest(t *testing.T) {
	f := sphere(t, still(50), small, r3.Vec{})
	want := one(f, front, at(1, 1.02*small.Radius))
	for _, radii := range []float64{0.5, 1, 1.019} {
		if got := one(f, front, at(1, radii*small.Radius)); !near(got, want, 1e-12) {
			t.Errorf("%g radii: %v, want %v", radii, got, want)
		}
	}
	if got := one(f, front, at(1, 1.03*small.Radius)); near(got, want, 1e-3) {
		t.Errorf("1.03 radii: %v as from 1.02", got)
	}
}

// TestHalfBallOnAPlane: drivers on a rigid half ball that stands on a rigid
// plane sound like those drivers and their mirror images on a whole ball.
func TestHalfBallOnAPlane(t *testing.T) {
	a := &layout.Array{Body: body.Ball(small.Radius), Driver: layout.Driver{ConeRadius: 0.016},
		Timing: layout.Timing{Model: radiate.SphereModel}, Surface: layout.Surface{Present: true}, Mounts: make([]layout.Mount, 1)}
	half, err := radiate.NewScene(a, still(0.5, 10, 80, 300))
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(t *rapid.T) {
		unit := func(name string) r3.Vec {
			return r3.Unit(r3.Vec{X: rapid.Float64Range(-1, 1).Draw(t, name), Y: rapid.Float64Range(-1, 1).Draw(t, name), Z: rapid.Float64Range(0.01, 1).Draw(t, name)})
		}
		u, p := unit("mount"), r3.Scale(1.7, unit("point"))
		a.Mounts[0] = layout.Mount{Point: r3.Scale(0.15, u), Normal: u}
		mirrored := a.Mounts[0]
		mirrored.Point.Z, mirrored.Normal.Z = -mirrored.Point.Z, -mirrored.Normal.Z
		got, want := make([]complex128, 4), make([]complex128, 8)
		half.Hear(got, half.Ways, p)
		half.Field.At(want, []layout.Mount{a.Mounts[0], mirrored}, p)
		for f := range got {
			if w := want[f] + want[4+f]; cmplx.Abs(got[f]-w) > 1e-6*(cmplx.Abs(want[f])+cmplx.Abs(want[4+f])) {
				t.Fatalf("got %v, want %v", got[f], w)
			}
		}
	})
}

func TestSphereAddsNothingToTheHeap(t *testing.T) {
	f, dst, mounts := sphere(t, still(1, 20, 110), small, r3.Vec{}), make([]complex128, 6), []layout.Mount{front, front}
	f.At(dst, mounts, at(1, 0.16))
	if n := testing.AllocsPerRun(50, func() { f.At(dst, mounts, at(1, 2)) }); n > 0 {
		t.Errorf("%g allocations", n)
	}
}
