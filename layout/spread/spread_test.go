package spread_test

import (
	"fmt"
	"math"
	"testing"

	"pappus/layout/body"
	"pappus/layout/poly"
	"pappus/layout/spread"
	"pappus/testdata/reference"
	"pappus/testdata/testkit"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
)

// TestEvenEnergy checks against points_on_sphere.csv, which a search apart from this
// program computed (Wales and Ulker, Phys. Rev. B 74 (2006) 212101, list the same
// energies). The energy is summed here once more.
func TestEvenEnergy(t *testing.T) {
	rows, err := reference.Table("points_on_sphere.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows {
		t.Run(row["n"], func(t *testing.T) {
			want := row.Float("energy")
			for seed := range uint64(3) {
				points, energy, err := even(int(row.Float("n")), seed)
				if err != nil {
					t.Fatal(err)
				}
				if math.Abs(energy/want-1) > 1e-9 {
					t.Errorf("energy %.9f, want %.9f", energy, want)
				}
				if own := sum(points); math.Abs(own/energy-1) > 1e-12 {
					t.Errorf("the points have energy %.12f, told %.12f", own, energy)
				}
			}
		})
	}
}

func sum(points []r3.Vec) float64 {
	total := 0.0
	for i, p := range points {
		for _, q := range points[i+1:] {
			total += 1 / r3.Norm(r3.Sub(p, q))
		}
	}
	return total
}

// TestEvenSolids: 4, 6 and 12 points are the corners of the regular solids with
// triangles for faces (N. N. Andreev, East J. Approx. 2 (1996) 459, for 12).
func TestEvenSolids(t *testing.T) {
	for _, name := range []string{"tetrahedron", "octahedron", "icosahedron"} {
		solid, err := body.Platonic(name, 1)
		if err != nil {
			t.Fatal(err)
		}
		points, _, err := even(len(solid.Vertices), 1)
		if err != nil {
			t.Fatal(err)
		}
		for i, p := range points {
			if d := r3.Norm(r3.Sub(p, solid.Vertices[i])); d > 1e-7 {
				t.Errorf("%s: point %d is %v, want %v", name, i, p, solid.Vertices[i])
			}
		}
	}
}

// TestEvenFew: one at the top, two across, three round, five as a double
// pyramid (R. E. Schwartz, Exp. Math. 22 (2013) 157).
func TestEvenFew(t *testing.T) {
	for n, want := range map[int]float64{1: 0, 2: 0.5, 3: math.Sqrt(3), 5: 0.5 + 6/math.Sqrt2 + math.Sqrt(3)} {
		points, energy, err := even(n, 7)
		if err != nil || len(points) != n || math.Abs(energy-want) > 1e-12 {
			t.Errorf("%d: %v, energy %.15g, want %.15g", n, err, energy, want)
		}
	}
}

// TestEvenStance: any count gives points on the sphere, in order, the first at
// the top and the second at azimuth 0; the same each time.
func TestEvenStance(t *testing.T) {
	for _, n := range []int{1, 2, 3, 5, 13, 17, 101, 450, 2000} {
		points, energy, err := even(n, 5)
		if err != nil || len(points) != n {
			t.Fatalf("%d: %d points, %v", n, len(points), err)
		}
		for i, p := range points {
			if math.Abs(r3.Norm(p)-1) > 1e-14 {
				t.Errorf("%d: point %d is %g from the centre", n, i, r3.Norm(p))
			}
		}
		if points[0].Z < 1-1e-14 || n > 2 && (math.Abs(points[1].Y) > 1e-14 || points[1].X <= 0) {
			t.Errorf("%d: not upright: %v", n, points[:min(n, 2)])
		}
		for i, at := range poly.Order(points) {
			if i != at {
				t.Errorf("%d: point %d is out of order", n, at)
				break
			}
		}
		again, same, _ := even(n, 5)
		if diff := cmp.Diff(points, again); diff != "" || energy != same {
			t.Errorf("%d: not the same again: %s", n, diff)
		}
	}
}

// TestEvenBeatsSpiral: even the few steps for very many points do something.
// The energy of the best is near n^2/2 - 0.5523 n^1.5 (A. B. J. Kuijlaars and E.
// B. Saff, Trans. Amer. Math. Soc. 350 (1998) 523; the factor from memory).
func TestEvenBeatsSpiral(t *testing.T) {
	for _, n := range []int{60, 150, 400, 800, 2000} {
		_, energy, err := even(n, 1)
		if err != nil {
			t.Fatal(err)
		}
		count := float64(n)
		before, best := sum(spread.Spiral(n)), count*count/2-0.5523*math.Pow(count, 1.5)
		if energy >= before || math.Abs(energy/best-1) > 5e-4 {
			t.Errorf("%d: energy %.6f, spiral %.6f, asymptote %.6f", n, energy, before, best)
		}
	}
}

func TestEvenCount(t *testing.T) {
	for _, n := range []int{math.MinInt, -1, 0, 2001, math.MaxInt} {
		if points, _, err := even(n, 1); !testkit.Says(err, errCount) || points != nil {
			t.Errorf("%d: %v", n, err)
		}
	}
}

// TestSpiral: the heights are those of zones of equal area, by Archimedes.
func TestSpiral(t *testing.T) {
	for _, n := range []int{-3, 0, 1, 2, 50} {
		points := spread.Spiral(n)
		if len(points) != max(n, 0) {
			t.Errorf("%d: %d points", n, len(points))
		}
		for i, p := range points {
			zone := int(math.Floor((1 - p.Z) / 2 * float64(n)))
			if math.Abs(r3.Norm(p)-1) > 1e-14 || zone != i {
				t.Errorf("%d: point %d is %v", n, i, p)
			}
		}
	}
}

func ExampleSettle_even() {
	points, energy, err := even(24, 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	next := r3.Norm(r3.Sub(points[1], points[0]))
	fmt.Printf("energy %.6f; neighbours are %.3f radii apart\n", energy, next)
	// Output: energy 223.347074; neighbours are 0.718 radii apart
}

func ExampleSpiral() {
	for _, p := range spread.Spiral(3) {
		fmt.Printf("%.3f %.3f %.3f\n", p.X, p.Y, p.Z)
	}
	// Output:
	// 0.745 0.000 0.667
	// -0.737 0.675 0.000
	// 0.065 -0.743 -0.667
}

func BenchmarkEven(b *testing.B) {
	for _, n := range []int{12, 60, 100, 150, 400, 2000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, _, err := even(n, 1); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
