package sweep

import "fmt"

// The names of files without their endings: of the sweep for all channels, and of what is
// recorded of it.
const (
	WholeName    = "sweep"
	RecordedName = "all"
)

// ChannelName returns the name of the sweep for a channel by its number.
func ChannelName(id int) string { return fmt.Sprintf("sweep_channel_%d", id) }

// RecordedChannelName returns the name of what is recorded of a channel; take counts from 1.
func RecordedChannelName(id, take int) string { return TakeName(fmt.Sprintf("channel_%d", id), take) }

// TakeName returns the name of a further recording of the same place, with the same on; take
// counts from 1.
func TakeName(name string, take int) string {
	if take > 1 {
		return fmt.Sprintf("%s_%d", name, take)
	}
	return name
}

// RecordedSeatName returns the name of what is recorded of all channels at a seat, and what
// the names of single channels recorded there begin with, before an underscore; seats count
// from 1 in the design's order.
func RecordedSeatName(seat int) string { return fmt.Sprintf("seat_%d", seat) }
