package timing

import (
	"context"

	"pappus/timing/seats"
)

const (
	// seatTaps is how many taps each channel's filter for seats has: 1.3 ms at 48 kHz, some
	// ways round a body of the size of a head; twice as many are hardly better.
	seatTaps = 64
	// tapsWorth is from how many dB less of the aim on filters are offered: a standard
	// deviation between seats that is 0.3 dB smaller brings the best and the worst of ten
	// about 1 dB nearer (a range of about three), the least that is heard of a level.
	tapsWorth = 0.3
	// mostFiltered is the most channels that filters are looked for; more take minutes.
	mostFiltered = 32
)

// SeatFilters are short filters, one for each channel on top of its delay, that make seats
// more even than delays alone.
type SeatFilters struct {
	seats.Filtered
	Rate    float64       // Hz
	Planned seats.Figures // with delays alone
	Pays    bool          // whether they are worth setting
}

// FilterSeats designs them for a plan; nil where it serves fewer than two seats, nobody in
// particular, or has more than 32 channels. The error is that of ctx, or of the search.
func FilterSeats(ctx context.Context, p *Plan) (*SeatFilters, error) {
	if p.Seating == nil || p.Seating.Round != nil || len(p.Channels) > mostFiltered {
		return nil, nil
	}
	h, err := newHall(p.Array)
	if err != nil {
		return nil, err
	}
	field := h.field(p.Array)
	out := &SeatFilters{Rate: p.Array.Processor.Rate, Planned: p.Seating.Planned}
	if out.Filtered, err = field.Taps(ctx, mountsOf(p.Channels), gains(p.Array, p.Channels), delaysOf(p.Channels), seatTaps, out.Rate); err != nil {
		return nil, err
	}
	out.Pays = field.Value(seats.Even, out.Figures) <= field.Value(seats.Even, out.Planned)-tapsWorth
	return out, nil
}
