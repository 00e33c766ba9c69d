package timing_test

import (
	"fmt"
	"math"
	"testing"

	"pappus/layout"
	"pappus/timing"
	"pappus/timing/seats"

	"github.com/google/go-cmp/cmp"
)

// TestSketchIsThePlan: of one spot to the bit.
func TestSketchIsThePlan(t *testing.T) {
	for name, a := range map[string]*layout.Array{"demo": demo(t), "even": even(t, 40, false), "room": inRoom(t)} {
		t.Run(name, func(t *testing.T) {
			want := plan(t, a)
			got, err := timing.Sketch(t.Context(), a)
			if err != nil {
				t.Fatal(err)
			}
			if got.Aligned != want.Aligned || math.Float64bits(got.Loudest) != math.Float64bits(want.Loudest) {
				t.Errorf("sketched %+v, %v dB, planned %+v, %v dB", got.Aligned, got.Loudest, want.Aligned, want.Loudest)
			}
			if diff := cmp.Diff(want.Maximum.Levels, got.Maximum.Levels); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// TestSketchAtSeats: a sketch strings drivers by the plan's rule, so that it is about as loud
// and loses little more.
func TestSketchAtSeats(t *testing.T) {
	for _, channels := range []int{2, 4, 6} {
		t.Run(fmt.Sprint(channels), func(t *testing.T) {
			a := arcOf(t, -30, 0, 30)
			a.Wiring.Channels, a.Seating.Head = channels, 0.1
			want := plan(t, a)
			got, err := timing.Sketch(t.Context(), a)
			if err != nil {
				t.Fatal(err)
			}
			loss := func(p *timing.Plan) float64 { return seats.Even.Of(p.Seating.Planned) }
			if loss(got) > loss(want)+1 || math.Abs(got.Loudest-want.Loudest) > 2 {
				t.Errorf("sketched %v dB, %v dB, planned %v dB, %v dB", loss(got), got.Loudest, loss(want), want.Loudest)
			}
		})
	}
}
