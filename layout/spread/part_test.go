package spread_test

import (
	"math"
	"testing"

	"pappus/layout/poly"
	"pappus/layout/solve"
	"pappus/layout/spread"
	"pappus/testdata/testkit"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// TestLeastAngle: by comparing all with all, and for what is known.
func TestLeastAngle(t *testing.T) {
	if got := spread.LeastAngle([]r3.Vec{{Z: 1}}); !math.IsInf(got, 1) {
		t.Errorf("one point: %g", got)
	}
	if got := spread.LeastAngle([]r3.Vec{{Z: 1}, {Z: -1}}); math.Abs(got-math.Pi) > 1e-7 {
		t.Errorf("two ends: %g", got)
	}
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 60).Draw(t, "points")
		points := scattered(n, spread.Zone{})
		if rapid.Bool().Draw(t, "even") {
			points, _, _ = even(n, 3)
		}
		want := math.Inf(1)
		for i, p := range points {
			for _, q := range points[:i] {
				want = min(want, 2*math.Asin(min(1, r3.Norm(r3.Sub(p, q))/2)))
			}
		}
		if got := spread.LeastAngle(points); math.Abs(got-want) > 1e-12 {
			t.Errorf("%g, want %g", got, want)
		}
	})
}

// TestHoldsKnown: the widest angles that points on a sphere can keep (Tammes's
// problem), proven for these counts: 4, 6 and 12 (L. Fejes Toth, 1943), 5 and 7 to 9
// (K. Schuette, B. L. van der Waerden, 1951), 13 and 14 (O. R. Musin, A. S. Tarasov,
// 2012 and 2015), 24 (R. M. Robinson, 1961); degrees from memory. Nothing may hold
// more, and what is a percent under is found.
func TestHoldsKnown(t *testing.T) {
	for n, degrees := range map[int]float64{4: 109.4712, 5: 90, 6: 90, 7: 77.8695, 8: 74.8585, 9: 70.5288, 12: 63.4349, 13: 57.1367, 14: 55.6706, 24: 43.6908} {
		for factor, want := range map[float64]bool{1.0001: false, 0.99: true} {
			if got := spread.Holds(n, spread.Zone{Apart: factor * degrees * degree}); got != want {
				t.Errorf("%d points %g times %g degrees apart: %v", n, factor, degrees, got)
			}
		}
	}
	for most, want := range map[int]int{30: 12, 12: 12, 8: 8} {
		if got := spread.Capacity(most, spread.Zone{Apart: 63 * degree}); got != want {
			t.Errorf("of at most %d points 63 degrees apart: %d, want %d", most, got, want)
		}
	}
}

// TestHoldsSteadily: what holds so holds in each zone whose sizes are a little less; nothing
// holds wider than to the last step that known packings leave (TestHoldsKnown).
func TestHoldsSteadily(t *testing.T) {
	for _, c := range []struct {
		name string
		n    int
		zone spread.Zone
	}{
		{"a ball", 34, spread.Zone{}},
		{"a dome", 40, spread.Zone{Clear: []spread.Cap{down(95)}}},
		{"a ball on a stand", 45, spread.Zone{Clear: []spread.Cap{down(80)}}},
		{"a dome with a handle", 39, spread.Zone{Clear: []spread.Cap{down(108), {Axis: r3.Vec{X: -6, Y: 6, Z: 8}, HalfAngle: 0.25}}}},
		{"a dome in fours", 40, spread.Zone{Fold: 4, Clear: []spread.Cap{down(90)}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			angle := widest(c.n, c.zone)
			for k := range 24 {
				zone := spread.Zone{Fold: c.zone.Fold, Apart: angle * (1 - 0.0003*float64(k/3)) * (1 - 1e-15*float64(k%3))}
				for _, cap := range c.zone.Clear {
					zone.Clear = append(zone.Clear, spread.Cap{Axis: cap.Axis, HalfAngle: cap.HalfAngle - 0.0001*float64(k/3)})
				}
				if !spread.Holds(c.n, zone) {
					t.Errorf("holds steadily %.17g apart, but not %.17g: %v", angle, zone.Apart, zone)
				}
			}
		})
	}
	for n, steps := range map[int]float64{12: 141. / 128, 24: 195. / 256} {
		for apart, want := range map[float64]bool{steps: true, steps + 1e-6: false} {
			if got := spread.HoldsSteadily(n, spread.Zone{Apart: apart}); got != want {
				t.Errorf("%d points %g apart: %v", n, apart, got)
			}
		}
	}
}

// widest returns the widest angle in rad at which points hold steadily.
func widest(n int, z spread.Zone) float64 {
	return solve.Edge(func(angle float64) bool {
		z.Apart = angle
		return spread.HoldsSteadily(n, z)
	}, 0.01, math.Pi, 0, 1e-12)
}

// TestApart: where points hold, Within puts them as far apart as asked, in the zone
// and its symmetry, the same again; and as many as Capacity says hold.
func TestApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, fold := rapid.IntRange(1, 40).Draw(t, "points"), rapid.SampledFrom([]int{0, 1, 2, 3, 5}).Draw(t, "fold")
		zone := spread.Zone{Fold: fold, Apart: rapid.Float64Range(0, 1).Draw(t, "apart")}
		if rapid.Bool().Draw(t, "dome") {
			zone.Clear = append(zone.Clear, spread.Below(rapid.Float64Range(-0.9, 0.6).Draw(t, "height")))
		}
		if rapid.Bool().Draw(t, "handle") {
			axis := r3.Vec{X: rapid.Float64Range(-1, 1).Draw(t, "x"), Z: 1}
			zone.Clear = append(zone.Clear, spread.Cap{Axis: axis, HalfAngle: rapid.Float64Range(0, 0.4).Draw(t, "half-angle")})
		}
		points, energy, err := within(n, 1, zone)
		if err != nil {
			if spread.Holds(n, zone) {
				t.Fatalf("holds, but %v", err)
			}
			return
		}
		inside(t, zone, points)
		if math.Abs(sum(points)-energy) > 1e-11*energy {
			t.Errorf("the points have energy %.12f, told %.12f", sum(points), energy)
		}
		for i, at := range poly.Order(points) {
			if i != at {
				t.Errorf("point %d is out of order", at)
			}
		}
		if holds := spread.Holds(n, zone); holds && spread.LeastAngle(points) < zone.Apart-1e-12 {
			t.Errorf("%g apart, asked %g", spread.LeastAngle(points), zone.Apart)
		} else if !holds {
			m := spread.Capacity(n, zone)
			if m >= n || m > 0 && !spread.Holds(m, zone) {
				t.Errorf("%d do not hold, but %d", n, m)
			}
		}
	})
}

// TestApartMany: charges press against the rim of a dome until neighbours there are
// far nearer than they must be. Parted they keep half as much again and more.
func TestApartMany(t *testing.T) {
	for _, n := range []int{52, 300, 1000} {
		zone := spread.Zone{Clear: []spread.Cap{spread.Below(0.1)}}
		even, _, err := within(n, 1, zone)
		if err != nil {
			t.Fatal(err)
		}
		zone.Apart = 1.3 * spread.LeastAngle(even)
		parted, _, err := within(n, 1, zone)
		if err != nil || len(parted) != n || spread.LeastAngle(parted) < zone.Apart-1e-12 {
			t.Errorf("%d: %g apart, asked %g, %v", n, spread.LeastAngle(parted), zone.Apart, err)
		}
		inside(t, zone, parted)
	}
}

func TestApartErrors(t *testing.T) {
	for _, apart := range []float64{-1, 4, math.NaN()} {
		zone := spread.Zone{Apart: apart}
		if _, _, err := within(5, 1, zone); !testkit.Says(err, errApart) {
			t.Errorf("%g: %v", apart, err)
		}
		if spread.Holds(5, zone) || spread.Capacity(5, zone) != 0 {
			t.Errorf("%g holds", apart)
		}
	}
	for _, n := range []int{-1, 0, spread.Most + 1} {
		if spread.Holds(n, spread.Zone{}) {
			t.Errorf("%d points hold", n)
		}
	}
	if spread.Capacity(13, spread.Zone{Fold: 5}) != 0 {
		t.Error("13 points in fives hold")
	}
}
