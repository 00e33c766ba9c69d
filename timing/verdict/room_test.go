package verdict_test

import (
	"fmt"
	"math"
	"testing"

	"pappus/layout"
	"pappus/timing"
	"pappus/timing/recording"
	"pappus/timing/rehearsal"
	"pappus/timing/verdict"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
)

// inRoom records every channel of a plan in a room, and measures.
func inRoom(t *testing.T, p *timing.Plan, order int, absorption float64, set rehearsal.Setting) []*recording.Measured {
	t.Helper()
	a := *p.Array
	a.Room = layout.Room{Present: true, Size: r3.Vec{X: 5.2, Y: 4.1, Z: 2.6}, Body: r3.Vec{X: 1.6, Y: 1.9, Z: 0.9}, Order: order}
	for i := range a.Room.Absorption {
		for band := range a.Room.Absorption[i] {
			a.Room.Absorption[i][band] = absorption
		}
	}
	there, err := timing.Make(t.Context(), &a)
	if err != nil {
		t.Fatal(err)
	}
	return hear(t, there, set)
}

// TestInARoom: recordings made in a room tell the faults and the delays to those who know
// of the room and to those who do not, whose echoes are those of a living room: late by
// less than 10 us, or within three of the errors told where the few drivers of a channel
// look away.
func TestInARoom(t *testing.T) {
	p := demo(t)
	dead, reversed := withStrings(t, p)
	a := *p.Array
	a.Surface = layout.Surface{}
	p, err := timing.Make(t.Context(), &a)
	if err != nil {
		t.Fatal(err)
	}
	set := rehearsal.Setting{Case: timing.Aligned, SNR: 55, Latency: 0.0123, Drift: 30, DeadStrings: [][2]int{{dead, 1}}, Reversed: []int{reversed}}
	measured := inRoom(t, p, 2, 0.3, set)
	v, err := verdict.OfChannels(p, measured, verdict.Setting{Case: timing.Aligned})
	if err != nil {
		t.Fatal(err)
	}
	for c, got := range v.Channels {
		t.Logf("channel %d: late %.1f us (%.1f), level %.2f dB, unlike %.3f", got.ID, 1e6*got.Late, 1e6*got.Error, got.Level, got.Residual)
		if got.Reversed != (c == reversed) || got.Silent || got.Quiet != (c == dead) || !(math.Abs(got.Late) < max(10e-6, 3*got.Error)) {
			t.Errorf("channel %d: %+v", got.ID, got)
		}
	}
	// The string is missed, and the channel named; which string it is the echoes hide.
	if diff := cmp.Diff([]string{fmt.Sprintf("quiet [%d] one of 3", p.Channels[dead].ID), fmt.Sprintf("reversed [%d]", p.Channels[reversed].ID)}, told(v.Faults)); diff != "" {
		t.Error(diff)
	}
}
