package timing_test

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/timing"
	"pappus/timing/seats"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"gonum.org/v1/gonum/spatial/r3"
)

// TestSeat: designs with seats are judged at their own; one without, whose spot is the middle
// seat, loses at them what delays for that seat alone do; one whose body is where a seat is
// tells nothing; and without any seats nothing is judged.
func TestSeat(t *testing.T) {
	with := arcOf(t, -60, 0, 60)
	with.Wiring.Channels = 4
	candidate := func(change func(a *layout.Array)) timing.Candidate {
		a := *with
		change(&a)
		return timing.Candidate{Plan: &timing.Plan{Spot: *spotOf(t, &a)}}
	}
	single := func(a *layout.Array) { a.Seats = nil }
	all := []timing.Candidate{
		candidate(func(a *layout.Array) { single(a); a.Spot = with.Seats[1].At }),
		candidate(func(*layout.Array) {}),
		candidate(func(a *layout.Array) {
			single(a)
			a.Surface = layout.Surface{}
			a.Room = layout.Room{Present: true, Size: r3.Vec{X: 6, Y: 2.4, Z: 3}, Body: r3.Vec{X: 1, Y: 1.2, Z: 1}}
			a.Spot = r3.Vec{X: 2, Z: 0.6}
		}),
		candidate(func(a *layout.Array) { a.Seats = a.Seats[:2] }),
	}
	if err := timing.Seat(all); err != nil {
		t.Fatal(err)
	}
	seating := all[1].Plan.Seating
	want := []*timing.AtSeats{
		{Seats: with.Seats, Figures: seating.Middle},
		{Seats: with.Seats, Own: true, Figures: seating.Planned},
		nil,
		{Seats: with.Seats[:2], Own: true, Figures: all[3].Plan.Seating.Planned},
	}
	for i, c := range all {
		if want[i] != nil {
			want[i].Value = seats.Even.Of(want[i].Figures)
		}
		if diff := cmp.Diff(want[i], c.Seats, cmpopts.EquateApprox(1e-9, 0)); diff != "" {
			t.Errorf("%d:\n%s", i, diff)
		}
	}
	if v := all[1].Seats.Value; !(v > 0 && v < all[0].Seats.Value) || math.IsInf(v, 0) {
		t.Errorf("planned for all seats %.2f dB, for one %.2f dB", v, all[0].Seats.Value)
	}
	none := []timing.Candidate{all[0], all[0]}
	none[0].Seats, none[1].Seats = nil, nil
	if err := timing.Seat(none); err != nil || none[0].Seats != nil {
		t.Errorf("without seats: %v, %v", none[0].Seats, err)
	}
}
