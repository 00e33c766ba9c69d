package page

import (
	"pappus/render/document"
	"pappus/timing"
)

// figures is what of a plan changes with the spot, as short as can be: of many drivers in
// columns, and of the curves without their frequencies, which are those of the plan.
type figures struct {
	At       triple            `json:"spot_m"`
	Channels []document.Output `json:"channels"`
	Drivers  columns           `json:"columns"`
	Levels   levels            `json:"levels"`
	Measures document.Measures `json:"measures"`
	Seats    *seating          `json:"seats,omitempty"` // only where there are several
	Echoes   []document.Echo   `json:"echoes"`
	Phase    *document.Phase   `json:"phase,omitempty"` // only where it is wanted
}

// seating is what seats lose, in short: of document.Seats what changes and is shown, that is
// nothing of single thirds, which are four fifths of it.
type seating struct {
	Aim     string             `json:"aim"`          // even, worst, mean or round
	Middle  string             `json:"middle_seat"`  // its name
	Planned document.SeatsLost `json:"planned"`      // with the plan's delays, or those that are tried
	Alone   document.SeatsLost `json:"middle_alone"` // with channels and delays for the middle seat alone
	Without document.SeatsLost `json:"without"`      // without delays
	Bound   document.SeatsLost `json:"bound"`        // what no processing of the plan's channels can be below
	Each    []seatLost         `json:"each"`
	Round   *document.Round    `json:"round,omitempty"` // only where the aim is round
}

// seatLost is what one seat loses, in dB.
type seatLost struct {
	Name    string `json:"name"`
	Where   string `json:"where,omitempty"` // as a tape measure finds it; only of seats at rest
	Planned number `json:"planned_db"`
	Alone   number `json:"middle_alone_db"`
	Without number `json:"without_db"`
	Bound   number `json:"bound_db"` // null: not worked out
}

// seatingOf returns that of seats, with or without where they are; nil where there are none.
func seatingOf(s *document.Seats, places bool) *seating {
	if s == nil {
		return nil
	}
	out := &seating{s.Aim, s.Middle, s.Planned, s.Alone, s.Without, s.Bound, make([]seatLost, len(s.Each)), s.Round}
	for i, e := range s.Each {
		out.Each[i] = seatLost{e.Name, "", e.Planned, e.Alone, e.Without, e.Bound}
		if places {
			out.Each[i].Where = e.Where
		}
	}
	return out
}

// columns are how each driver is heard, in the plan's order: their levels, and of a spot at rest
// what a table has.
type columns struct {
	Level    document.Numbers `json:"level_db"` // null: silent
	Path     document.Numbers `json:"path_m,omitempty"`
	Straight document.Numbers `json:"straight_path_m,omitempty"`
	Arrival  document.Numbers `json:"arrival_us,omitempty"`
	Field    document.Numbers `json:"field_arrival_us,omitempty"` // null: not computed
	Seen     []bool           `json:"seen,omitempty"`
}

// levels are the curves, each at the frequencies that the plan's response has.
type levels struct {
	Aligned   document.Numbers `json:"aligned_db"`   // with the delays; null: silent
	Unaligned document.Numbers `json:"unaligned_db"` // without; null: silent
	InStep    document.Numbers `json:"in_step_db"`   // the most that timing can give; null: silent
}

// Decimals of what is only drawn: of levels a tenth is read, of curves a pixel is a twentieth.
const (
	levelPlaces = 2
	curvePlaces = 2
)

// phaseEvery is of how many frequencies of a response one has its phase in an answer: 15 in an
// octave, one in six pixels of a picture that is 800 wide.
const phaseEvery = 2

// short rounds numbers in place.
func short(places int, in document.Numbers) document.Numbers {
	for i, v := range in {
		in[i] = document.To(places, float64(v))
	}
	return in
}

// figuresOf returns those of a spot that a move asks for.
func figuresOf(p *timing.Spot, m move) *figures {
	s := document.OfSpot(p)
	out := &figures{At: s.At, Channels: s.Channels, Measures: s.Measures, Seats: seatingOf(s.Seats, m.rests()), Echoes: s.Echoes,
		Levels: levels{short(curvePlaces, s.Response.Aligned), short(curvePlaces, s.Response.Unaligned), short(curvePlaces, s.Response.InStep)}}
	if m.Phase {
		phase := document.OfPhase(p.Phase, phaseEvery)
		out.Phase = &phase
	}
	c := &out.Drivers
	for _, d := range s.Drivers {
		c.Level = append(c.Level, document.To(levelPlaces, float64(d.Level)))
		if m.rests() {
			c.Path, c.Straight = append(c.Path, document.To(4, float64(d.Path))), append(c.Straight, document.To(4, float64(d.Straight)))
			c.Arrival, c.Field = append(c.Arrival, document.To(1, float64(d.Arrival))), append(c.Field, document.To(1, float64(d.Field)))
			c.Seen = append(c.Seen, d.Seen)
		}
	}
	return out
}
