package sweep_test

import (
	"testing"

	"pappus/timing/sweep"
)

// TestNames: a further take counts from 2.
func TestNames(t *testing.T) {
	for got, want := range map[string]string{
		sweep.ChannelName(3): "sweep_channel_3", sweep.RecordedChannelName(3, 1): "channel_3", sweep.RecordedChannelName(3, 2): "channel_3_2",
		sweep.RecordedSeatName(2): "seat_2", sweep.TakeName(sweep.RecordedName, 1): "all", sweep.TakeName(sweep.RecordedName, 3): "all_3",
	} {
		if got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}
