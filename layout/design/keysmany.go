package design

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// place lists the keys of a place in the room.
func place(at *r3.Vec) []Row {
	return []Row{
		{"x_m", &at.X, From(-100, 100), 1, needed, "forward"},
		{"y_m", &at.Y, From(-100, 100), 1, needed, "to the loudspeaker's left"},
		{"z_m", &at.Z, From(-100, 100), 1, needed, "up"},
	}
}

// rows lists the keys of how a body is turned.
func (a *Angles) rows() []Row {
	return []Row{
		{"yaw_deg", &a.YawDeg, From(-180, 180), 1, nil, "turned to the left"},
		{"pitch_deg", &a.PitchDeg, From(-180, 180), 1, nil, "front tipped down"},
		{"roll_deg", &a.RollDeg, From(-180, 180), 1, nil, "left side tipped up"},
	}
}

// walls lists the keys for walls that are not like the others. They come after
// the one for all walls, which they override.
func (r *Room) walls() []Row {
	rows := make([]Row, len(walls))
	for i, name := range walls {
		rows[i] = Row{name + "_absorption", &r.Absorption[i], From(0, 1), 1, nil, ""}
	}
	return rows
}

// rows lists the keys of one [[body_at]].
func (c *Copy) rows() []Row {
	return slices.Concat(place(&c.At), c.Angles.rows(),
		[]Row{{"channels", &c.Channels, among(OwnChannels, SharedChannels), 1, OwnChannels, "driven by channels"}})
}

// rows lists the keys of one [[channel]].
func (c *Channel) rows() []Row {
	return []Row{
		{"drivers", &c.Drivers, From(1, maxNumber), 1, needed, ""},
		{"gain_db", &c.Gain, From(-60, 12), 1, nil, ""},
		{"invert", &c.Invert, Limits{}, 1, nil, "wires swapped"},
		{"delay_us", &c.Delay, From(0, 1e6), us, nil, ""},
	}
}

// rows lists the keys of one [[part]].
func (p *Part) rows() []Row {
	return []Row{
		{"name", &p.Name, Letters(longestName), 1, nil, ""},
		{"count", &p.Count, From(1, 100000), 1, 1, ""},
		{"price", &p.Price, From(0, 1e6), 1, nil, "price of one"},
		{"mass_g", &p.Mass, From(0, 1e6), milli, nil, "mass of one"},
		{"minutes", &p.Time, From(0, 10000), minute, nil, "work for one"},
	}
}

// rows lists the keys of one [[seat]].
func (s *Seat) rows() []Row {
	return slices.Concat([]Row{{"name", &s.Name, Letters(longestName), 1, nil, ""}}, place(&s.At),
		[]Row{{"weight", &s.Weight, From(leastWeight, mostWeight), 1, 1.0, "counts as so many"}})
}

// rows lists the keys of one [[area]].
func (a *Area) rows() []Row {
	return []Row{
		{"name", &a.Name, Letters(longestName), 1, nil, ""},
		{"shape", &a.Shape, among(areas...), 1, needed, ""},
		{"count", &a.Count, From(1, MaxSeats), 1, needed, "how many seats"},
		{"weight", &a.Weight, From(leastWeight, MaxSeats*mostWeight), 1, nil, "counts as so many"},
		{"from_m", &a.From, From(-100, 100), 1, nil, "from"},
		{"to_m", &a.To, From(-100, 100), 1, nil, "to"},
		{"radius_m", &a.Radius, From(0.01, 100), 1, nil, "from the body's axis"},
		{"z_m", &a.Z, From(-100, 100), 1, nil, "up"},
		{"from_deg", &a.FromDeg, From(-360, 360), 1, nil, "from angle"},
		{"to_deg", &a.ToDeg, From(-360, 360), 1, nil, "to angle"},
	}
}
