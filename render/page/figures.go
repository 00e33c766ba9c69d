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
	Seats    *document.Seats   `json:"seats,omitempty"` // only where there are several
	Echoes   []document.Echo   `json:"echoes"`
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

// short rounds numbers in place.
func short(places int, in document.Numbers) document.Numbers {
	for i, v := range in {
		in[i] = document.To(places, float64(v))
	}
	return in
}

// figuresOf returns those of a plan.
func figuresOf(p *timing.Spot, rests bool) *figures {
	s := document.OfSpot(p)
	out := &figures{At: s.At, Channels: s.Channels, Measures: s.Measures, Seats: s.Seats, Echoes: s.Echoes,
		Levels: levels{short(curvePlaces, s.Response.Aligned), short(curvePlaces, s.Response.Unaligned), short(curvePlaces, s.Response.InStep)}}
	c := &out.Drivers
	for _, d := range s.Drivers {
		c.Level = append(c.Level, document.To(levelPlaces, float64(d.Level)))
		if rests {
			c.Path, c.Straight = append(c.Path, document.To(4, float64(d.Path))), append(c.Straight, document.To(4, float64(d.Straight)))
			c.Arrival, c.Field = append(c.Arrival, document.To(1, float64(d.Arrival))), append(c.Field, document.To(1, float64(d.Field)))
			c.Seen = append(c.Seen, d.Seen)
		}
	}
	return out
}
