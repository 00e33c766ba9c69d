package spread_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"pappus/layout/spread"
	"pappus/testdata/reference"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
)

// TestEvenEnergy checks against points_on_sphere.csv (Wales and Ulker, Phys.
// Rev. B 74 (2006) 212101).
func TestEvenEnergy(t *testing.T) {
	rows, err := reference.Table("points_on_sphere.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows {
		t.Run(row["n"], func(t *testing.T) {
			points, energy, err := spread.Even(int(row.Float("n")), 1)
			if err != nil {
				t.Fatal(err)
			}
			if want := row.Float("energy"); math.Abs(energy/want-1) > 1e-6 {
				t.Errorf("energy %.9f, want %.9f", energy, want)
			}
			own := 0.0
			for i, p := range points {
				if math.Abs(r3.Norm(p)-1) > 1e-12 {
					t.Errorf("point %d is %g from the centre", i, r3.Norm(p))
				}
				for _, q := range points[i+1:] {
					own += 1 / r3.Norm(r3.Sub(p, q))
				}
			}
			if math.Abs(own/energy-1) > 1e-12 {
				t.Errorf("the points have energy %.9f, told %.9f", own, energy)
			}
		})
	}
}

func TestEvenIsRepeatable(t *testing.T) {
	a, _, _ := spread.Even(17, 5)
	b, _, _ := spread.Even(17, 5)
	if diff := cmp.Diff(a, b); diff != "" {
		t.Error(diff)
	}
	if math.Abs(a[0].Z-1) > 1e-12 || math.Abs(a[1].Y) > 1e-12 || a[1].X < 0 {
		t.Errorf("not upright: %v, %v", a[0], a[1])
	}
}

func TestEvenTakesAnyCount(t *testing.T) {
	for _, n := range []int{1, 2, 3, 5, 101, 400, 2000} {
		points, _, err := spread.Even(n, 1)
		if err != nil || len(points) != n {
			t.Errorf("%d: got %d points, %v", n, len(points), err)
		}
	}
	for _, n := range []int{-1, 0, 2001} {
		if _, _, err := spread.Even(n, 1); !errors.Is(err, spread.ErrCount) {
			t.Errorf("%d: got %v", n, err)
		}
	}
}

func ExampleEven() {
	_, energy, _ := spread.Even(12, 1)
	fmt.Printf("%.6f\n", energy)
	// Output: 49.165253
}

func BenchmarkEven(b *testing.B) {
	for _, n := range []int{60, 2000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				spread.Even(n, 1)
			}
		})
	}
}
