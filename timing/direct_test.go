package timing_test

import (
	"math"
	"testing"

	"pappus/timing"
)

// TestDirect: in a room the direct sound measures as the same array does in the open,
// with the same channels; in the open it is the whole sound.
func TestDirect(t *testing.T) {
	room := inRoom(t)
	open := *room
	open.Room.Present = false
	for _, c := range []struct {
		name   string
		inRoom bool
	}{{"in a room", true}, {"in the open", false}} {
		t.Run(c.name, func(t *testing.T) {
			a := open
			if c.inRoom {
				a = *room
			}
			planner, err := timing.NewPlanner(&a)
			if err != nil {
				t.Fatal(err)
			}
			plan, err := planner.Move(a.Spot)
			if err != nil {
				t.Fatal(err)
			}
			unaligned, aligned, err := planner.Direct(plan)
			if err != nil {
				t.Fatal(err)
			}
			free, err := timing.NewPlanner(&open)
			if err != nil {
				t.Fatal(err)
			}
			want, err := free.Move(a.Spot)
			if err != nil {
				t.Fatal(err)
			}
			// As built no delay counts, and no gain where all strings are alike.
			if got, want := unaligned.CombOnset, want.Unaligned.CombOnset; math.Abs(got-want) > 1e-9*want {
				t.Errorf("as built it combs from %g Hz, in the open from %g", got, want)
			}
			if got := aligned.CombOnset; !(got > 4*plan.Unaligned.CombOnset) {
				t.Errorf("with the delays it combs from %g Hz, the whole sound without them from %g", got, plan.Unaligned.CombOnset)
			}
			if c.inRoom && !(plan.Aligned.CombOnset < aligned.CombOnset/2) {
				t.Errorf("the room combs from %g Hz, the direct sound from %g: no room", plan.Aligned.CombOnset, aligned.CombOnset)
			}
			if !c.inRoom && (aligned != plan.Aligned || unaligned != plan.Unaligned) {
				t.Errorf("in the open %+v and %+v, direct %+v and %+v", plan.Unaligned, plan.Aligned, unaligned, aligned)
			}
		})
	}
}
