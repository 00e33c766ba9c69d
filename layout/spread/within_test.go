package spread_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"pappus/layout/poly"
	"pappus/layout/spread"
	"pappus/testdata/testkit"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

const degree = math.Pi / 180

func down(degrees float64) spread.Cap {
	return spread.Cap{Axis: r3.Vec{Z: -1}, HalfAngle: degrees * degree}
}

// TestWithinKnown: where the best arrangement of all has the symmetry or leaves
// the caps clear, it is found (energies of Wales and Ulker, Phys. Rev. B 74
// (2006) 212101, quoted from memory; Thomson's problem for 24 is the snub cube,
// for 32 the corners of an icosahedron and a dodecahedron).
func TestWithinKnown(t *testing.T) {
	handle := spread.Cap{Axis: r3.Vec{X: 2, Y: 1, Z: 3}, HalfAngle: 15 * degree}
	cases := []struct {
		name string
		n    int
		zone spread.Zone
		want float64
	}{
		{"12, a cable", 12, spread.Zone{Clear: []spread.Cap{down(20)}}, 49.165253058},
		{"12, a cable and a handle", 12, spread.Zone{Clear: []spread.Cap{down(15), handle}}, 49.165253058},
		{"12 in fives", 12, spread.Zone{Fold: 5}, 49.165253058},
		{"12 in threes", 12, spread.Zone{Fold: 3}, 49.165253058},
		{"12 in threes, a cable", 12, spread.Zone{Fold: 3, Clear: []spread.Cap{down(20)}}, 49.165253058},
		{"8 in fours", 8, spread.Zone{Fold: 4}, 19.675287861},
		{"24 in fours", 24, spread.Zone{Fold: 4}, 223.347074052},
		{"32 in fives", 32, spread.Zone{Fold: 5}, 412.261274651},
		{"50 in sixes", 50, spread.Zone{Fold: 6}, 1055.182314726},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			points, energy, err := within(c.n, 1, c.zone)
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(energy/c.want-1) > 1e-9 || math.Abs(sum(points)/energy-1) > 1e-12 {
				t.Errorf("energy %.9f, of the points %.9f, want %.9f", energy, sum(points), c.want)
			}
		})
	}
}

// TestWithinDome: a few on a half ball, by hand. Up to four stand round the
// rim; a fifth goes to the top.
func TestWithinDome(t *testing.T) {
	dome := spread.Zone{Clear: []spread.Cap{spread.Below(0)}}
	for n, want := range map[int]float64{1: 0, 2: 0.5, 3: math.Sqrt(3), 4: 4/math.Sqrt2 + 1, 5: 4/math.Sqrt2 + 1 + 4/math.Sqrt2} {
		_, energy, err := within(n, 3, dome)
		if err != nil || math.Abs(energy-want) > 1e-9 {
			t.Errorf("%d: energy %.12f, want %.12f, %v", n, energy, want, err)
		}
	}
	points, _, err := within(1, 3, dome)
	if err != nil || points[0] != (r3.Vec{Z: 1}) {
		t.Errorf("one stands at %v, %v", points, err)
	}
}

// TestWithin: all points in the zone, in their symmetry, better than a spiral
// and than chance, and the same again.
func TestWithin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fold := rapid.SampledFrom([]int{0, 1, 2, 3, 5}).Draw(t, "fold")
		rings := rapid.IntRange(1, 8).Draw(t, "rings")
		zone := spread.Zone{Fold: fold}
		if rapid.Bool().Draw(t, "dome") {
			zone.Clear = append(zone.Clear, spread.Below(rapid.Float64Range(-0.9, 0.6).Draw(t, "height")))
		}
		for range rapid.IntRange(0, 2).Draw(t, "caps") {
			axis := r3.Vec{X: rapid.Float64Range(-1, 1).Draw(t, "x"), Y: rapid.Float64Range(-1, 1).Draw(t, "y"), Z: 1.5}
			zone.Clear = append(zone.Clear, spread.Cap{Axis: axis, HalfAngle: rapid.Float64Range(0, 0.35).Draw(t, "half-angle")})
		}
		n := rings * max(fold, 1)
		points, energy, err := within(n, 2, zone)
		if errors.Is(err, spread.ErrZone) {
			return
		}
		if err != nil || len(points) != n {
			t.Fatalf("%d points, %v", len(points), err)
		}
		inside(t, zone, points)
		if math.Abs(sum(points)-energy) > 1e-11*energy {
			t.Errorf("the points have energy %.12f, told %.12f", sum(points), energy)
		}
		for i := 1; i < fold; i++ {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(fold))
			for _, p := range points {
				image := r3.Vec{X: cos*p.X - sin*p.Y, Y: sin*p.X + cos*p.Y, Z: p.Z}
				least := math.Inf(1)
				for _, q := range points {
					least = min(least, r3.Norm(r3.Sub(q, image)))
				}
				if least > 1e-14 {
					t.Errorf("the image of %v is %g off", p, least)
				}
			}
		}
		for i, at := range poly.Order(points) {
			if i != at {
				t.Errorf("point %d is out of order", at)
			}
		}
		again, same, _ := within(n, 2, zone)
		if diff := cmp.Diff(points, again); diff != "" || energy != same {
			t.Errorf("not the same again: %s", diff)
		}
		if fold > 1 || n < 2 {
			return
		}
		spiral := spiralIn(n, zone)
		inside(t, zone, spiral)
		if before := sum(spiral); energy > before*(1+1e-12) {
			t.Errorf("energy %.9f, spiral %.9f", energy, before)
		}
		if chance := sum(scattered(n, zone)); energy > chance*(1+1e-12) {
			t.Errorf("energy %.9f, by chance %.9f", energy, chance)
		}
	})
}

func inside(t rapid.TB, z spread.Zone, points []r3.Vec) {
	t.Helper()
	for _, p := range points {
		if math.Abs(r3.Norm(p)-1) > 1e-14 {
			t.Errorf("%v is %g from the centre", p, r3.Norm(p))
		}
		for _, c := range z.Clear {
			// By the angle, which loses half the digits near an axis: 1e-12 of the cosine, which
			// count as on the border, are 1.4e-6 rad there.
			if off := math.Acos(min(1, r3.Dot(p, r3.Unit(c.Axis)))); off < c.HalfAngle-2e-6 {
				t.Errorf("%v is %g rad from the axis of a cap of %g", p, off, c.HalfAngle)
			}
		}
	}
}

func scattered(n int, z spread.Zone) []r3.Vec {
	random := rand.New(rand.NewPCG(1, 2))
	var points []r3.Vec
	for len(points) < n {
		p := r3.Unit(r3.Vec{X: random.NormFloat64(), Y: random.NormFloat64(), Z: random.NormFloat64()})
		if z.Contains(p) {
			points = append(points, p)
		}
	}
	return points
}

// TestWithinMany: large counts hold the zone too, and beat their spiral.
func TestWithinMany(t *testing.T) {
	zone := spread.Zone{Clear: []spread.Cap{spread.Below(-0.2), {Axis: r3.Vec{X: 1, Z: 1}, HalfAngle: 12 * degree}}}
	for _, n := range []int{60, 150, 500, 2000} {
		if testing.Short() && n > 500 {
			continue
		}
		points, energy, err := within(n, 1, zone)
		if err != nil {
			t.Fatal(err)
		}
		inside(t, zone, points)
		spiral := spiralIn(n, zone)
		if before := sum(spiral); energy >= before {
			t.Errorf("%d: energy %.6f, spiral %.6f", n, energy, before)
		}
	}
}

// TestWithinWhole: no symmetry is one of 1.
func TestWithinWhole(t *testing.T) {
	want, energy, _ := even(17, 4)
	got, same, err := within(17, 4, spread.Zone{Fold: 1})
	if diff := cmp.Diff(want, got); err != nil || diff != "" || same != energy {
		t.Errorf("%v: %s", err, diff)
	}
}

func TestWithinErrors(t *testing.T) {
	all := spread.Cap{Axis: r3.Vec{Z: 1}, HalfAngle: math.Pi}
	cases := []struct {
		name string
		n    int
		zone spread.Zone
		want error
	}{
		{"none", 0, spread.Zone{}, errCount},
		{"too many", spread.Most + 1, spread.Zone{}, errCount},
		{"no direction", 5, spread.Zone{Clear: []spread.Cap{{HalfAngle: 1}}}, errCap},
		{"direction is no number", 5, spread.Zone{Clear: []spread.Cap{{Axis: r3.Vec{X: math.NaN()}, HalfAngle: 1}}}, errCap},
		{"endless direction", 5, spread.Zone{Clear: []spread.Cap{{Axis: r3.Vec{X: math.Inf(1)}, HalfAngle: 1}}}, errCap},
		{"negative half-angle", 5, spread.Zone{Clear: []spread.Cap{down(-1)}}, errCap},
		{"half-angle is no number", 5, spread.Zone{Clear: []spread.Cap{spread.Below(1.1)}}, errCap},
		{"all clear", 5, spread.Zone{Clear: []spread.Cap{all}}, spread.ErrZone},
		{"two halves clear", 5, spread.Zone{Clear: []spread.Cap{spread.Below(0.01), spread.Cap{Axis: r3.Vec{Z: 1}, HalfAngle: math.Acos(-0.01)}}}, spread.ErrZone},
		{"no wider than a line", 2, spread.Zone{Clear: []spread.Cap{spread.Below(0), spread.Cap{Axis: r3.Vec{Z: 1}, HalfAngle: math.Pi / 2}}}, spread.ErrZone},
		{"negative symmetry", 5, spread.Zone{Fold: -1}, errSymmetry},
		{"not in fives", 13, spread.Zone{Fold: 5}, errSymmetry},
		{"both ends of the axis, one clear", 12, spread.Zone{Fold: 5, Clear: []spread.Cap{down(10)}}, spread.ErrZone},
	}
	for _, c := range cases {
		if points, _, err := within(c.n, 1, c.zone); !testkit.Says(err, c.want) || points != nil {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

func ExampleSettle() {
	zone := spread.Zone{
		Clear: []spread.Cap{spread.Below(0), {Axis: r3.Vec{Z: 1}, HalfAngle: 0.3}}, // a dome with a handle
		Fold:  6,
	}
	settled, err := spread.Settle(24, 1, zone)
	if err != nil {
		fmt.Println(err)
		return
	}
	points, energy := settled.Apart(0)
	fmt.Printf("energy %.6f; the highest is at %.3f, the second ring at %.3f\n", energy, points[0].Z, points[6].Z)
	// Output:
	// energy 251.387751; the highest is at 0.820, the second ring at 0.438
}

func BenchmarkWithin(b *testing.B) {
	zone := spread.Zone{Clear: []spread.Cap{spread.Below(0)}}
	for _, n := range []int{12, 60, 150, 400, 2000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, _, err := within(n, 1, zone); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
