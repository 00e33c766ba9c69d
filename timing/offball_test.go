package timing_test

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestDriversOffTheBallSoundFromIt: drivers on faces (in the ball), at vertices or on
// blocks (out of it) are heard as from the ball, along their own directions: at the
// spot, by two ears, on the map, round the circle and in a room alike. Only the straight
// line, which a tape measures, is from where they are.
func TestDriversOffTheBallSoundFromIt(t *testing.T) {
	off := func(factor float64) *layout.Array {
		a := twelve(t, r3.Vec{X: 1.7, Y: 0.6, Z: 0.5})
		a.Coverage.Cells = 6
		a.Room = layout.Room{Present: true, Size: r3.Vec{X: 5, Y: 4, Z: 3}, Body: r3.Vec{X: 2, Y: 1.5, Z: 1}, Order: 1}
		for i, m := range a.Mounts {
			a.Mounts[i].Point = r3.Scale(factor*a.Body.BallRadius/r3.Norm(m.Point), m.Point)
		}
		return a
	}
	on := plan(t, off(1))
	for _, factor := range []float64{0.8, 0.91, 1.15} {
		p := plan(t, off(factor))
		for m, r := range p.Arrivals {
			want := on.Arrivals[m]
			if !alike(r.Time, want.Time) || !alike(r.Field, want.Field) || !alike(r.Delay, want.Delay) || !alike(r.Level, want.Level) || !alike(p.Peaks[m], on.Peaks[m]) {
				t.Errorf("%g: %+v, on the ball %+v", factor, r, want)
			}
			if straight := r3.Norm(r3.Sub(p.Array.Spot, p.Array.Mounts[m].Point)); r.Straight != straight {
				t.Errorf("%g: straight %g m, want %g", factor, r.Straight, straight)
			}
		}
		same := func(what string, got, want []float64) {
			for i := range want {
				if !alike(got[i], want[i]) {
					t.Fatalf("%g: %s %d: %g, on the ball %g", factor, what, i, got[i], want[i])
				}
			}
		}
		same("response", p.Response.Aligned, on.Response.Aligned)
		same("polar", p.Horizontal.Aligned[4], on.Horizontal.Aligned[4])
		map1, map2 := cover(t, p), cover(t, on)
		same("smear of the map", map1.Smear, map2.Smear)
		same("level of the map", map1.Level[4], map2.Level[4])
		l := timing.Listening{Cases: []timing.Case{timing.AsBuilt}, Dry: true}
		left, right := ears(t, p, l, p.Array.Spot, r3.Vec{X: -1})
		wantLeft, wantRight := ears(t, on, l, p.Array.Spot, r3.Vec{X: -1})
		for f := range left {
			if cmplx.Abs(left[f]-wantLeft[f]) > 1e-9*cmplx.Abs(wantLeft[f]) || cmplx.Abs(right[f]-wantRight[f]) > 1e-9*cmplx.Abs(wantRight[f]) {
				t.Fatalf("%g: ears %v and %v, on the ball %v and %v", factor, left[f], right[f], wantLeft[f], wantRight[f])
			}
		}
	}
}

func alike(a, b float64) bool {
	return math.IsNaN(a) && math.IsNaN(b) || a == b || math.Abs(a-b) <= 1e-9*(1e-3+math.Abs(b))
}

func cover(t *testing.T, p *timing.Plan) *timing.Coverage {
	t.Helper()
	c, err := timing.Cover(&p.Spot, timing.HorizontalSlice(&p.Spot))
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestMapMeetsTheSpot: where the map and the spot are one, so is the smear: with a delay
// for each driver, none; by the path, what path and field differ by.
func TestMapMeetsTheSpot(t *testing.T) {
	for _, by := range []string{"field", "path"} {
		a := twelve(t, r3.Vec{X: 1.7, Y: 0.6, Z: 0.5})
		a.Timing.DelaysBy, a.Wiring.Channels = by, 0
		p := plan(t, a)
		one := timing.Slice{Origin: a.Spot, Right: r3.Vec{X: 1}, Up: r3.Vec{Y: 1}, Step: 0.1, Columns: 1, Rows: 1}
		c, err := timing.Cover(&p.Spot, one)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(c.Smear[0]-p.Aligned.Smear) > 0.1e-6 {
			t.Errorf("by %s: smear %g s on the map, %g at the spot", by, c.Smear[0], p.Aligned.Smear)
		}
		if by == "field" && p.Aligned.Smear > 1e-12 || by == "path" && (p.Aligned.Smear < 1e-6 || p.Aligned.Smear > 30e-6) {
			t.Errorf("by %s: smear %g s", by, p.Aligned.Smear)
		}
	}
}

// TestBaffleIsHeardStraight: before an endless wall nothing is gone round, and what is
// behind it is not heard.
func TestBaffleIsHeardStraight(t *testing.T) {
	a := twelve(t, r3.Vec{X: 1.7, Y: 0.6, Z: 0.5})
	a.Timing.Model, a.Timing.DelaysBy = "baffle", "straight"
	heard := 0
	for m, r := range plan(t, a).Arrivals {
		front := r3.Dot(r3.Sub(a.Spot, a.Mounts[m].Point), a.Mounts[m].Normal) > 0
		if r.Path != r.Straight || r.Seen != front || math.IsNaN(r.Field) == front || front && math.Abs(r.Field-r.Time) > 1e-12 {
			t.Errorf("driver %d: %+v, in front: %t", m+1, r, front)
		}
		if front {
			heard++
		}
	}
	if heard == 0 || heard == 12 {
		t.Errorf("%d in front", heard)
	}
}
