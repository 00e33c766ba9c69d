package document

import (
	"pappus/render/tape"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/seats"
)

// Seats is how one set of delays serves several seats. Losses are in dB, against all drivers
// in step, over the thirds, as the loudspeaker sounds with what it stands on or hangs from,
// without the room.
type Seats struct {
	Aim     string    `json:"aim"` // even, worst, mean or round
	Head    Number    `json:"head_mm"`
	Third   Numbers   `json:"third_hz"`
	Middle  string    `json:"middle_seat"`  // its name
	Planned SeatsLost `json:"planned"`      // with the plan's delays
	Alone   SeatsLost `json:"middle_alone"` // with channels and delays for the middle seat alone
	Without SeatsLost `json:"without"`      // without delays
	Bound   SeatsLost `json:"bound"`        // what no processing of the plan's channels can be below
	Each    []Seat    `json:"each"`
	// What numbers of channels would leave, each with its own best delays.
	Counts  []SeatsCount   `json:"counts"`
	Strings []SeatsStrings `json:"strings"`         // what shorter strings cost and bring, from the shortest
	Round   *Round         `json:"round,omitempty"` // only where the aim is round
	Words   []string       `json:"words"`           // what all this comes to, in sentences
}

// SeatsLost are losses of all seats; null where they were not worked out.
type SeatsLost struct {
	Worst   Number `json:"worst_db"`   // over the whole band at the seat that loses most; null: not worked out
	Mean    Number `json:"mean_db"`    // of the thirds' losses over seats, by their weights; holes count, so it may be above the worst; null: not worked out
	Between Number `json:"between_db"` // standard deviation between seats, RMS over the thirds; null: not worked out
}

// Seat is what one seat loses.
type Seat struct {
	Number int    `json:"number"` // from 1
	Name   string `json:"name"`
	Point
	Where         string  `json:"where"` // as a tape measure finds it
	Weight        Number  `json:"weight"`
	Planned       Number  `json:"planned_db"`
	Alone         Number  `json:"middle_alone_db"`
	Without       Number  `json:"without_db"`
	Bound         Number  `json:"bound_db"` // null: not worked out
	PlannedThirds Numbers `json:"planned_thirds_db"`
	AloneThirds   Numbers `json:"middle_alone_thirds_db"`
	WithoutThirds Numbers `json:"without_thirds_db"`
	BoundThirds   Numbers `json:"bound_thirds_db"` // null: not worked out
}

// SeatsCount is what a number of channels would leave.
type SeatsCount struct {
	Channels int `json:"channels"`
	Longest  int `json:"longest_string"` // drivers
	SeatsLost
}

// SeatsStrings is a plan for all seats with strings of so many drivers at most.
type SeatsStrings struct {
	Longest int    `json:"longest_string"`
	Aim     Number `json:"aim_db"`    // what the aim makes small
	Louder  Number `json:"louder_db"` // at the seats, from the same amplifier, than with strings of any length
	Chosen  bool   `json:"chosen"`    // the plan's own
	SeatsLost
}

// seatsOf returns what seats lose; nil where there are fewer than two.
func seatsOf(p *timing.Spot) *Seats {
	s := p.Seating
	if s == nil {
		return nil
	}
	a, all := p.Array, words.Losses(p)
	planned, alone, without, bound := all[0], all[1], all[2], all[3]
	out := &Seats{
		Aim: s.Aim, Head: mm(a.Seating.Head), Third: All(2, s.Thirds), Middle: a.Seats[s.MiddleSeat].Name,
		Planned: lostOf(planned), Alone: lostOf(alone), Without: lostOf(without), Bound: lostOf(bound),
		Counts: each(s.Counts, func(c timing.SeatCount) SeatsCount { return SeatsCount{c.Channels, c.Longest, lostOf(c.Figures)} }),
		Strings: each(s.Strings, func(c timing.SeatStrings) SeatsStrings {
			return SeatsStrings{c.Longest, db(c.Value), db(c.Louder), c.Chosen, lostOf(c.Figures)}
		}),
		Round: roundOf(s.Round), Words: words.Seats(p),
	}
	for i, seat := range a.Seats {
		out.Each = append(out.Each, Seat{
			Number: i + 1, Name: seat.Name, Point: Point{m(seat.At.X), m(seat.At.Y), m(seat.At.Z)}, Where: tape.Of(a, seat.At).Full(), Weight: To(6, seat.Weight),
			Planned: db(planned.Seat[i]), Alone: db(alone.Seat[i]), Without: db(without.Seat[i]), Bound: db(bound.Seat[i]),
			PlannedThirds: All(3, planned.Band[i]), AloneThirds: All(3, alone.Band[i]), WithoutThirds: All(3, without.Band[i]), BoundThirds: All(3, bound.Band[i]),
		})
	}
	return out
}

func lostOf(f seats.Figures) SeatsLost { return SeatsLost{db(f.Worst), db(f.Mean), db(f.Between)} }
