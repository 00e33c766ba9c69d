package timing_test

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/timing/split"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestCountsAgreeWithPlan: what the counts say of the plan's own number of channels
// is what the plan has, however it is split, and one channel is as if there were no
// delays.
func TestCountsAgreeWithPlan(t *testing.T) {
	for _, by := range []string{"", "neighbours", "height"} {
		for _, channels := range []int{1, 3, 8, 12} {
			a := demo(t)
			a.Wiring.Channels, a.Wiring.Split = channels, by
			p := plan(t, a)
			c := p.Counts[channels-1]
			if c.Channels != channels || math.Abs(c.Smear-p.Aligned.Smear) > 1e-15 || math.Abs(c.CombOnset/p.Aligned.CombOnset-1) > 1e-9 {
				t.Errorf("split %q, %d channels: counted %+v, planned %+v", by, channels, c, p.Aligned)
			}
			if own, at := p.Own(); own != c || at != channels-1 {
				t.Errorf("split %q: the plan's own is %+v at %d, want %+v", by, own, at, c)
			}
			if one := p.Counts[0]; math.Abs(one.Smear-p.Unaligned.Smear) > 1e-15 || math.Abs(one.CombOnset/p.Unaligned.CombOnset-1) > 1e-9 {
				t.Errorf("one channel: %+v, without delays %+v", one, p.Unaligned)
			}
		}
	}
}

// TestOwnCount of channels that no count stands for.
func TestOwnCount(t *testing.T) {
	hand := demo(t)
	free := math.NaN()
	hand.Mounts = hand.Mounts[:6]
	hand.Channels = []layout.Channel{
		{ID: 1, Mounts: []int{0, 5}, Series: 2, Parallel: 1, NominalOhm: 8, DCOhm: 7, Delay: free},
		{ID: 2, Mounts: []int{1, 2, 3, 4}, Series: 2, Parallel: 2, NominalOhm: 4, DCOhm: 3.5, Delay: free},
	}
	each := demo(t)
	each.Wiring.Channels, each.Driver.DCOhm, each.Wiring.MinimumLoad, each.Processor.Step = 0, 3, 4, 0
	for split, a := range map[string]*layout.Array{"hand": hand, "each": each} {
		p := plan(t, a)
		own, at := p.Own()
		if at != -1 || own.Split != split || own.Channels != len(p.Channels) || own.Smear != p.Aligned.Smear || own.CombOnset != p.Aligned.CombOnset {
			t.Errorf("%s: %+v at %d, the plan has %+v", split, own, at, p.Aligned)
		}
		if split == "each" && own.Plain > 1e-15 {
			t.Errorf("with a delay each %g s of smear are left", own.Plain)
		}
	}
}

// TestCountsGoToAll: up to one channel for each driver where the wiring allows it,
// plain smear being the least there is for equal weights (package split, which
// is held against every assignment).
func TestCountsGoToAll(t *testing.T) {
	a := plain(t)
	a.Timing.DelaysBy = "path"
	a.Driver.DCOhm, a.Wiring.MinimumLoad = 7, 4
	a.Wiring.LongestString = len(a.Mounts) // whatever the strings cost
	p := plan(t, a)
	if len(p.Counts) != len(a.Mounts) {
		t.Fatalf("%d counts for %d drivers", len(p.Counts), len(a.Mounts))
	}
	arrival, alike := make([]float64, len(a.Mounts)), make([]float64, len(a.Mounts))
	for m, r := range p.Arrivals {
		arrival[m], alike[m] = r.Time, 1
	}
	best := split.NewSplits(arrival, alike, func(int) bool { return true })
	for k := range arrival {
		want := split.Smear(best.Groups(k+1), arrival, alike)
		if got := p.Counts[k].Plain; math.Abs(got-want) > 1e-9 {
			t.Errorf("%d channels leave %g s, want %g", k+1, got, want)
		}
	}
	if last := p.Counts[len(p.Counts)-1]; last.Smear > 1e-15 || last.Plain > 1e-15 {
		t.Errorf("with one each: %+v", last)
	}
}

// TestCountsAndKnees: how far the counts go, and from where more hardly pay.
func TestCountsAndKnees(t *testing.T) {
	tests := []struct {
		name  string
		with  func(*layout.Array)
		count int
		smear int
		onset int
	}{
		{"two to a channel at least", func(a *layout.Array) { a.Driver.DCOhm, a.Driver.Small = 3, layout.Small{} }, 19, 6, 16},
		{"nothing can be wired", func(a *layout.Array) {
			a.Mounts = a.Mounts[:2]
			a.Wiring.MinimumLoad = 100
			a.Channels = []layout.Channel{{ID: 1, Mounts: []int{0, 1}, Series: 2, Parallel: 1, NominalOhm: 8, DCOhm: 7, Delay: math.NaN()}}
		}, 0, 0, 0},
		{"a ring round the spot", func(a *layout.Array) {
			a.Mounts = a.Mounts[:6]
			a.Driver.DCOhm, a.Spot = 7, r3.Vec{Z: 2}
			for i := range a.Mounts {
				sin, cos := math.Sincos(float64(i))
				a.Mounts[i].Point = r3.Vec{X: 0.15 * cos, Y: 0.15 * sin}
				a.Mounts[i].Normal = r3.Vec{X: cos, Y: sin}
			}
		}, 6, 1, 1},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			a := plain(t)
			test.with(a)
			p := plan(t, a)
			if len(p.Counts) != test.count {
				t.Errorf("%d counts", len(p.Counts))
			}
			if smear, onset := p.Knees(); smear != test.smear || onset != test.onset {
				t.Errorf("more hardly pay from %d and %d on", smear, onset)
			}
		})
	}
}
