package page

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/prose"
	"pappus/render/document"
	"pappus/timing"
	"pappus/timing/radiate"
)

const (
	mostCells = 96
	dragCells = 32 // up to as many the spot is being dragged
)

// move is a message that asks for a spot.
type move struct {
	Seq      int64    `json:"seq"`
	ID       string   `json:"id"`
	Spot     triple   `json:"spot_m"`
	Seats    []triple `json:"seats_m"`                // of all seats that the design has, in its order; none: they are where it has them
	View     string   `json:"view" ts:"View"`         // above, side
	Quantity string   `json:"quantity" ts:"Quantity"` // level, direct_level, smear, comb_onset, summing_loss, loss; empty: no map
	Delays   string   `json:"delays" ts:"Delays"`     // of the map: empty as planned, chair of the chair alone, own of each place by itself
	Turned   []turned `json:"turned"`                 // what is tried with channels
	Phase    bool     `json:"phase"`                  // wanted too: how the sound turns over frequency
	Band     float64  `json:"band_hz"`
	Cells    int      `json:"cells"` // of the map along one side, at the most
}

// rests tells whether the spot is no longer being dragged.
func (m move) rests() bool { return m.Cells > dragCells }

// check tells what a message asks that cannot be.
func (m move) check() error {
	switch {
	case m.Cells < 0 || m.Cells > mostCells:
		return fmt.Errorf("cells = %d: must be from 0 to %d", m.Cells, mostCells)
	case m.Cells > 0 && m.Cells < 4:
		return fmt.Errorf("cells = %d: must be 4 or more, or 0 for no map", m.Cells)
	case m.View != "" && m.View != "above" && m.View != "side":
		return errors.New("view: must be above or side")
	case m.Quantity != "" && !slices.ContainsFunc(quantities, func(q quantity) bool { return q.name == m.Quantity }):
		return errors.New("quantity: must be level, direct_level, smear, comb_onset, summing_loss or loss")
	case m.Delays != "" && m.Delays != "chair" && m.Delays != "own":
		return errors.New("delays: must be chair, own or nothing")
	case m.Band != 0 && !(m.Band >= 80 && m.Band <= 12000):
		return prose.Errorf("band_hz = %g: must be from 80 to 12000", m.Band)
	}
	if far(m.Spot) {
		return errors.New("spot_m: must be within 100 m")
	}
	if slices.ContainsFunc(m.Seats, far) {
		return errors.New("seats_m: must be within 100 m")
	}
	return checkTurned(m.Turned)
}

// far tells whether a place is none that a design can have.
func far(at triple) bool {
	return slices.ContainsFunc(at[:], func(v float64) bool { return !(math.Abs(v) <= 100) })
}

// moved is the answer to a move: the figures there, or why there are none. What is drawn
// follows.
type moved struct {
	Seq     int64  `json:"seq"`
	Unknown bool   `json:"unknown,omitempty"` // plan the text again
	Fault   string `json:"fault,omitempty"`   // why the spot is none
	Error   string `json:"error,omitempty"`
	Place   *place `json:"place,omitempty"` // where the spot is none, too
	*figures
	AsPlanned *asPlanned `json:"as_planned,omitempty"` // where something is tried
}

// session is one spot that is being moved: what is kept from one move to the next.
// It is for one goroutine.
type session struct {
	plans   *plans
	made    *planned
	planner *timing.Planner
}

// answer works a move's figures out, and returns what a map is made of; nil: there is none.
func (s *session) answer(m move) (moved, *timing.Spot) {
	out := moved{Seq: m.Seq}
	if err := m.check(); err != nil {
		out.Error = err.Error()
		return out, nil
	}
	found, err := s.open(m.ID)
	switch {
	case err != nil:
		out.Error = prose.Error(err)
		return out, nil
	case !found:
		out.Unknown = true
		return out, nil
	}
	at := placeOf(s.made.array, vector(m.Spot))
	out.Place = &at
	p, err := s.plan(m)
	switch {
	case errors.Is(err, errSeats):
		out.Error = err.Error()
		return out, nil
	case err != nil:
		out.Fault = noSpot(err)
		return out, nil
	}
	if len(m.Turned) > 0 {
		out.AsPlanned = asPlannedOf(p)
		if p, err = s.planner.Tried(p, seconds(m.Turned)); err != nil {
			out.Error = prose.Error(err)
			return out, nil
		}
	}
	out.figures = figuresOf(p, m)
	at = placeOf(s.made.array, p.Array.Spot)
	return out, p
}

// errSeats is an error of a message with other seats than the design has.
var errSeats = errors.New("seats_m: must be as many as the design has")

// plan plans for where a move has the chair and the seats. The spot of a design that has none
// of its own is the middle seat.
func (s *session) plan(m move) (*timing.Spot, error) {
	at, seats := vector(m.Spot), s.made.array.Seats
	if len(seats) < 2 {
		return s.planner.Spot(at)
	}
	if len(m.Seats) > 0 && len(m.Seats) != len(seats) {
		return nil, errSeats
	}
	moved := slices.Clone(seats)
	for i, place := range m.Seats {
		if place == document.TripleOf(6, 1, seats[i].At) {
			continue // as the page was told it
		}
		moved[i].At = vector(place)
		if err := s.made.array.ReachSpot(moved[i].At); err != nil {
			return nil, &seatFault{seats[i].Name, err}
		}
	}
	if !s.made.ownSpot {
		at = moved[design.MiddleSeat(moved)].At
	}
	switch {
	case !slices.Equal(moved, seats), s.made.rough && at != s.made.array.Spot:
		return s.planner.Seats(at, moved)
	case at != s.made.array.Spot:
		return s.planner.Spot(at)
	}
	return &s.made.plan.Spot, nil
}

// seatFault is what is wrong with the place of a seat.
type seatFault struct {
	name string
	error
}

func (f *seatFault) Unwrap() error { return f.error }

// open makes the session one of a plan, and tells whether there is such a plan.
func (s *session) open(id string) (bool, error) {
	if s.made != nil && s.made.id == id {
		return true, nil
	}
	made, ok := s.plans.kept.Get(id)
	if !ok || !radiate.IsSolved(made.array) {
		return false, nil
	}
	planner, err := timing.NewPlanner(made.array)
	if err != nil {
		return false, err
	}
	planner.Know(&made.plan.Spot)
	s.made, s.planner = made, planner
	return true, nil
}

// noSpot says why a spot, or a seat, is none.
func noSpot(err error) string {
	who := "the spot"
	if f := new(seatFault); errors.As(err, &f) {
		who = "seat " + strconv.Quote(f.name)
	}
	switch {
	case errors.Is(err, layout.ErrOutsideRoom):
		return who + " is outside the room"
	case errors.Is(err, layout.ErrBelowSurface):
		return who + " is below the surface"
	case errors.Is(err, layout.ErrAboveCeiling):
		return who + " is above the ceiling"
	case errors.Is(err, layout.ErrBehindWall):
		return who + " is behind the wall"
	case errors.Is(err, layout.ErrInside):
		return who + " is inside the body"
	}
	return faultOf(err).Reason
}
