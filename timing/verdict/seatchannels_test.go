package verdict_test

import (
	"errors"
	"fmt"
	"slices"
	"testing"

	"pappus/layout"
	"pappus/timing"
	"pappus/timing/rehearsal"
	"pappus/timing/seats"
	"pappus/timing/sweep"
	"pappus/timing/verdict"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestTwoChannelsAtASeat: of two channels that were recorded one by one at a seat it is told that they are of opposite
// polarity; one of them by itself tells nothing.
func TestTwoChannelsAtASeat(t *testing.T) {
	p := planOf(t, fmt.Sprintf(cubeText, "[wiring]\nchannels = 2\n"))
	_, thirds, _ := seats.Frequencies()
	p.Seating = &timing.Seating{Thirds: thirds}
	p.Array.Seats = []layout.Seat{{Name: "chair", At: r3.Vec{X: 1.9, Z: 0.6}, Weight: 1}}
	s := sweep.Sweep{Start: 150, Stop: 5600, Length: 0.8, Rise: 0.02, Fall: 0.005, Lead: 0.3, Gap: 0.2, Tail: 0.3}
	g, err := rehearsal.NewStage(p).At(p.Array.Seats[0].At)
	if err != nil {
		t.Fatal(err)
	}
	recorded := takes{}
	for c, name := range []string{"seat_1", "seat_1_channel_1", "seat_1_channel_2"} {
		set := rehearsal.Setting{Case: timing.Aligned, Channel: c - 1, Rate: 2.4 * s.Stop, SNR: 70, Seed: uint64(c + 1), Latency: 0.011, Reversed: []int{1}}
		if recorded[name+".wav"], err = g.Record(s, set); err != nil {
			t.Fatal(err)
		}
	}
	judge := verdict.Takes{Sweep: s, Read: recorded.read, Level: verdict.LevelSetting{Case: timing.Aligned}}
	found, err := judge.Judge(p)
	if got := told(found.Faults); !slices.Equal(got, []string{"halves [2] [1]"}) {
		t.Errorf("%q, %v", got, err)
	}
	delete(recorded, "seat_1_channel_2.wav")
	found, err = judge.Judge(p)
	if !errors.Is(err, verdict.ErrNone) || len(found.Faults) > 0 {
		t.Errorf("one channel: %q, %v", told(found.Faults), err)
	}
}
