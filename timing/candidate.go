package timing

import (
	"slices"

	"pappus/layout"
	"pappus/timing/seats"
)

// Candidate is one plan among those that are compared.
type Candidate struct {
	Plan       *Plan
	Unevenness float64 // dB over angle, on the level circle through the spot
	Within3DB  float64 // m2 at the ears' height where the level is within 3 dB of the spot's; mean from 500 Hz to 4 kHz
	Omni       Omni
	Spatial    Spatial
	Seats      *AtSeats // nil: no design that is compared has several seats, or a seat cannot be in the room of this one
}

// AtSeats is what a candidate loses at seats against all drivers in step.
type AtSeats struct {
	Seats []layout.Seat
	Own   bool // its own; else those of the first candidate that has some
	seats.Figures
	Value float64 // dB, what the aim of the first candidate with seats makes of it
}

// NewCandidate computes what a plan is compared by.
func NewCandidate(p *Plan) (Candidate, error) {
	c, err := Cover(&p.Spot, HorizontalSlice(&p.Spot))
	if err != nil {
		return Candidate{}, err
	}
	even, err := p.Omni()
	if err != nil {
		return Candidate{}, err
	}
	around, err := p.Spatial()
	return Candidate{Plan: p, Spatial: around, Unevenness: p.Unevenness(), Within3DB: MeanFrom500To4k(c.Band, c.AreaWithin(p.Array.Spot, 3)), Omni: even}, err
}

// Seat judges candidates at seats, where any has several: each at its own, and one without,
// set for its own spot as it is, at those of the first that has some.
func Seat(all []Candidate) error {
	first := slices.IndexFunc(all, func(c Candidate) bool { return c.Plan.Seating != nil })
	if first < 0 {
		return nil
	}
	with := all[first].Plan
	for i := range all {
		p := &all[i].Plan.Spot
		at := AtSeats{Seats: with.Array.Seats}
		if p.Seating != nil {
			at.Seats, at.Own, at.Figures = p.Array.Seats, true, p.Seating.Planned
		} else {
			if slices.ContainsFunc(at.Seats, func(s layout.Seat) bool { return p.Array.ReachSpot(s.At) != nil }) {
				continue
			}
			var err error
			if at.Figures, err = p.lostAt(with.Array); err != nil {
				return err
			}
		}
		at.Value = seats.Aim(with.Seating.Aim).Of(at.Figures)
		all[i].Seats = &at
	}
	return nil
}

// Still returns what a spot's channels lose at its seats where the heads are held still, as a
// microphone stands: with the delays, or as built.
func (p *Spot) Still(c Case) (seats.Figures, error) {
	a := *p.Array
	a.Seating.Head = 0
	return p.lost(&a, c)
}

// lostAt returns what a spot's channels lose at the seats of another array.
func (p *Spot) lostAt(other *layout.Array) (seats.Figures, error) {
	a := *p.Array
	a.Seats, a.Seating = other.Seats, other.Seating
	return p.lost(&a, Aligned)
}

// lost returns what a spot's channels lose at the seats of an array that is its own but for
// them, with the delays or, as built, without.
func (p *Spot) lost(a *layout.Array, c Case) (seats.Figures, error) {
	h, err := newHall(a)
	if err != nil {
		return seats.Figures{}, err
	}
	var delay []float64
	if c != AsBuilt {
		for _, channel := range p.Channels {
			delay = append(delay, channel.Delay)
		}
	}
	return h.field(a).Judge(mountsOf(p.Channels), gains(a, p.Channels), delay), nil
}
