package document

import (
	"pappus/render/tape"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/seats"
)

// Seats is how one set of delays serves several seats. Losses are of the direct sound against
// all drivers in step, in dB, over the thirds.
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
	Counts []SeatsCount `json:"counts"`
	Words  []string     `json:"words"` // what all this comes to, in sentences
}

// SeatsLost are losses of all seats.
type SeatsLost struct {
	Worst   Number `json:"worst_db"`   // over the whole band at the seat that loses most
	Mean    Number `json:"mean_db"`    // of the thirds' losses over seats, by their weights; holes count, so it may be above the worst
	Between Number `json:"between_db"` // standard deviation between seats, RMS over the thirds
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
	Bound         Number  `json:"bound_db"`
	PlannedThirds Numbers `json:"planned_thirds_db"`
	AloneThirds   Numbers `json:"middle_alone_thirds_db"`
	WithoutThirds Numbers `json:"without_thirds_db"`
	BoundThirds   Numbers `json:"bound_thirds_db"`
}

// SeatsCount is what a number of channels would leave.
type SeatsCount struct {
	Channels int `json:"channels"`
	SeatsLost
}

// seatsOf returns what seats lose; nil where there are fewer than two.
func seatsOf(p *timing.Spot) *Seats {
	s := p.Seating
	if s == nil {
		return nil
	}
	a := p.Array
	out := &Seats{
		Aim: s.Aim, Head: mm(a.Seating.Head), Third: All(2, s.Thirds), Middle: a.Seats[s.MiddleSeat].Name,
		Planned: lostOf(s.Planned), Alone: lostOf(s.Middle), Without: lostOf(s.Without), Bound: lostOf(s.Bound),
		Counts: each(s.Counts, func(c timing.SeatCount) SeatsCount { return SeatsCount{c.Channels, lostOf(c.Figures)} }),
		Words:  words.Seats(p),
	}
	for i, seat := range a.Seats {
		out.Each = append(out.Each, Seat{
			Number: i + 1, Name: seat.Name, Point: Point{m(seat.At.X), m(seat.At.Y), m(seat.At.Z)}, Where: tape.Of(a, seat.At).Full(), Weight: To(6, seat.Weight),
			Planned: db(s.Planned.Seat[i]), Alone: db(s.Middle.Seat[i]), Without: db(s.Without.Seat[i]), Bound: db(s.Bound.Seat[i]),
			PlannedThirds: All(3, s.Planned.Band[i]), AloneThirds: All(3, s.Middle.Band[i]), WithoutThirds: All(3, s.Without.Band[i]), BoundThirds: All(3, s.Bound.Band[i]),
		})
	}
	return out
}

func lostOf(f seats.Figures) SeatsLost { return SeatsLost{db(f.Worst), db(f.Mean), db(f.Between)} }
