package path_test

import (
	"fmt"
	"math"
	"testing"

	"pappus/timing/path"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

const degree = math.Pi / 180

func TestRound(t *testing.T) {
	tests := []struct {
		name                string
		mount, point, gamma float64
		length              float64
		seen                bool
	}{
		{"straight ahead", 0.16, 2, 0, 1.84, true},
		{"at the centre", 0, 2, 1, 2, true},
		// Tangent point exactly: the line of sight is a leg of a right triangle.
		{"at the tangent", 0.6, 1, math.Acos(0.6), 0.8, true},
		// A quarter of the ball's circumference past the tangent.
		{"a quarter round", 0.6, 1, math.Acos(0.6) + math.Pi/2, 0.8 + 0.6*math.Pi/2, false},
		{"right behind", 0.16, 2, math.Pi, math.Sqrt(4-0.0256) + 0.16*(math.Pi-math.Acos(0.08)), false},
		{"point nearer than the mount", 1, 0.6, math.Acos(0.6) + math.Pi/2, 0.8 + 0.6*math.Pi/2, false},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			length, seen := path.Round(test.mount, test.point, test.gamma)
			if math.Abs(length-test.length) > 1e-14 || seen != test.seen {
				t.Errorf("got %.16g, seen %v; want %.16g, %v", length, seen, test.length, test.seen)
			}
		})
	}
}

// TestRearmostDriver checks a figure of common practice worked by hand: on a
// ball of 320 mm heard from 2 m the sound of the rearmost driver is about
// 0.28 ms later than the straight line through the body says.
func TestRearmostDriver(t *testing.T) {
	way, _ := path.Round(0.16, 2, math.Pi)
	late := (way - path.Straight(0.16, 2, math.Pi)) / 343.2
	if math.Abs(late-0.28e-3) > 0.02e-3 {
		t.Errorf("later by %.3f ms, want about 0.28", late*1e3)
	}
}

// TestRoundAgainstPolygon finds the shortest way on its own: the straight line
// from the point to the best place on a fine polygon round the ball, and from
// there along the polygon.
func TestRoundAgainstPolygon(t *testing.T) {
	const steps = 200000
	for _, gamma := range []float64{100, 120, 150, 179} {
		const rho, d = 0.15, 1.0
		best := math.Inf(1)
		for i := range steps {
			leave := gamma * degree * float64(i) / steps
			if math.Cos(leave) < rho/d {
				break // the line from here to the point would enter the ball
			}
			way := rho*(gamma*degree-leave) + path.Straight(rho, d, leave)
			best = min(best, way)
		}
		got, _ := path.Round(rho, d, gamma*degree)
		if math.Abs(got-best) > 1e-9 {
			t.Errorf("%g degrees: got %.12f, polygon %.12f", gamma, got, best)
		}
	}
}

func TestProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mount := rapid.Float64Range(0.01, 1).Draw(t, "mount")
		point := rapid.Float64Range(mount, 100).Draw(t, "point")
		gamma := rapid.Float64Range(0, math.Pi).Draw(t, "gamma")
		way, seen := path.Round(mount, point, gamma)
		straight := path.Straight(mount, point, gamma)
		if way < straight*(1-1e-15) {
			t.Fatalf("the way round, %g, is below the straight line, %g", way, straight)
		}
		if seen && way != straight {
			t.Fatalf("seen, yet %g is not %g", way, straight)
		}
		back, _ := path.Round(point, mount, gamma)
		if back != way && math.Abs(back-way) > 1e-15*way {
			t.Fatalf("there %g, back %g", way, back)
		}
		// The slope over the angle never passes the mount's radius (Fermat), but for
		// some last bits of both ways.
		further, _ := path.Round(mount, point, min(math.Pi, gamma+1e-4))
		if further-way > mount*1e-4*(1+1e-9)+1e-15*further {
			t.Fatalf("%g m more for %g rad at radius %g", further-way, 1e-4, mount)
		}
	})
}

func TestBetweenTurnsWithTheRoom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		coordinate := rapid.Float64Range(-1, 1)
		vector := func(name string) r3.Vec {
			return r3.Vec{X: coordinate.Draw(t, name+"x"), Y: coordinate.Draw(t, name+"y"), Z: coordinate.Draw(t, name+"z")}
		}
		mount, point := vector("mount"), r3.Add(vector("point"), r3.Vec{X: 3})
		axis := vector("axis")
		if r3.Norm(axis) < 1e-3 {
			return
		}
		turn := r3.NewRotation(rapid.Float64Range(-7, 7).Draw(t, "turn"), axis)
		a, sa, _ := path.Between(mount, point)
		b, sb, _ := path.Between(turn.Rotate(mount), turn.Rotate(point))
		if math.Abs(a-b) > 1e-13 || math.Abs(sa-sb) > 1e-13 {
			t.Fatalf("turned: %g and %g against %g and %g", b, sb, a, sa)
		}
	})
}

func TestAngleAtItsEnds(t *testing.T) {
	x := r3.Vec{X: 1}
	for _, want := range []float64{0, 1e-9, 1, math.Pi - 1e-9, math.Pi} {
		sin, cos := math.Sincos(want)
		if got := path.Angle(x, r3.Vec{X: cos, Y: sin}); math.Abs(got-want) > 1e-15 {
			t.Errorf("got %.17g, want %.17g", got, want)
		}
	}
}

func ExampleRound() {
	way, seen := path.Round(0.150, 1.9, 140*math.Pi/180)
	straight := path.Straight(0.150, 1.9, 140*math.Pi/180)
	fmt.Printf("%.3f m round the body, %.3f m through it, seen: %v\n", way, straight, seen)
	// Output: 2.037 m round the body, 2.017 m through it, seen: false
}

func BenchmarkRound(b *testing.B) {
	b.ReportAllocs()
	for i := range b.N {
		path.Round(0.15, 2, float64(i%180)*degree)
	}
}
