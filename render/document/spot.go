package document

import (
	"pappus/layout"
	"pappus/timing"
)

// Spot is what of a plan changes with the listening spot.
type Spot struct {
	At       Triple   `json:"spot_m"`
	Drivers  []Heard  `json:"drivers"`
	Channels []Output `json:"channels"`
	Response Response `json:"response"`
	Measures Measures `json:"measures"`
	Seats    *Seats   `json:"seats,omitempty"` // only where there are several
	Echoes   []Echo   `json:"echoes"`
}

// OfSpot returns what a plan has for its spot.
func OfSpot(p *timing.Spot) Spot {
	a := p.Array
	out := Spot{
		At:       TripleOf(6, 1, a.Spot),
		Channels: each(p.Channels, func(c timing.Channel) Output { return outputOf(a, c) }),
		Response: responseOf(p), Measures: measuresOf(p), Seats: seatsOf(p), Echoes: echoesOf(p),
	}
	for i := range p.Arrivals {
		out.Drivers = append(out.Drivers, heardOf(p, i))
	}
	return out
}

// Heard is how a driver is heard at the spot.
type Heard struct {
	ID       int    `json:"id"`
	Channel  int    `json:"channel"`          // its id
	Path     Number `json:"path_m"`           // round the ball that stands for the body
	Arrival  Number `json:"arrival_us"`       // by that path
	Straight Number `json:"straight_path_m"`  // from the driver itself
	Field    Number `json:"field_arrival_us"` // by the model's own field: what smear is measured by; null: not computed
	Delay    Number `json:"delay_us"`         // what its channel is set to
	Level    Number `json:"level_db"`         // of its direct sound; null: silent
	Seen     bool   `json:"seen"`             // from the spot
}

func heardOf(p *timing.Spot, mount int) Heard {
	r := p.Arrivals[mount]
	return Heard{p.Array.Mounts[mount].ID, p.Channels[r.Channel].ID, m(r.Path), us(r.Time), m(r.Straight), us(r.Field), us(r.Delay), db(r.Level), r.Seen}
}

// Output is a channel with what it is set to.
type Output struct {
	ID      int    `json:"id"`
	Drivers []int  `json:"drivers"`  // ids
	Delay   Number `json:"delay_us"` // what can be set
	Exact   Number `json:"exact_us"` // before rounding
	Gain    Number `json:"gain_db"`
}

func outputOf(a *layout.Array, c timing.Channel) Output {
	return Output{c.ID, a.IDs(c.Mounts), us(c.Delay), us(c.Exact), db(c.Gain)}
}

// Response is the level at the spot.
type Response struct {
	Frequency Numbers `json:"frequency_hz"`
	Aligned   Numbers `json:"aligned_db"`   // with the delays; null: silent
	Unaligned Numbers `json:"unaligned_db"` // without; null: silent
	InStep    Numbers `json:"in_step_db"`   // the most that timing can give; null: silent
}

func responseOf(p *timing.Spot) Response {
	r := p.Response
	return Response{All(3, r.Frequency), All(3, r.Aligned), All(3, r.Unaligned), All(3, r.InStep)}
}

// Measures are of the direct sound, without the surface below or the room.
type Measures struct {
	Aligned   AtSpot `json:"aligned"`
	Unaligned AtSpot `json:"unaligned"`
}

// AtSpot are the figures of merit at a point.
type AtSpot struct {
	Smear     Number `json:"smear_us"`      // null: silent
	Spread    Number `json:"spread_us"`     // null: silent
	CombOnset Number `json:"comb_onset_hz"` // null: none up to the highest frequency
	Loss      Number `json:"loss_db"`       // from 500 Hz to 8 kHz against all drivers in step; null: silent
}

func measuresOf(p *timing.Spot) Measures {
	of := func(f timing.Measures) AtSpot {
		return AtSpot{us(f.Smear), us(f.Spread), To(1, f.CombOnset), db(f.Loss)}
	}
	return Measures{of(p.Aligned), of(p.Unaligned)}
}

// Echo is what the surface below or a wall of the room sends back to the spot.
type Echo struct {
	By      string `json:"by"`       // its name
	Extra   Number `json:"extra_mm"` // of way behind the direct sound
	Late    Number `json:"late_us"`
	Dip     Number `json:"dip_hz"`                // the first of its comb
	Depth   Number `json:"depth_db"`              // there
	At      Triple `json:"at_m"`                  // where it is thrown back
	Nearer  Number `json:"dip_100_mm_nearer_hz"`  // about where the dip goes with the body nearer to it; null: there is no room
	Further Number `json:"dip_100_mm_further_hz"` // and further away; null: there is no room
}

func echoesOf(p *timing.Spot) []Echo {
	return each(p.Echoes, func(e timing.Echo) Echo {
		return Echo{e.Wall, mm(e.Extra), us(e.Late), To(1, e.Dip), db(e.Depth), TripleOf(6, 1, e.At), To(1, e.Nearer), To(1, e.Further)}
	})
}

// Polar is the level round the vertical axis through the spot.
type Polar struct {
	Angle     Numbers   `json:"angle_deg"`
	Band      Numbers   `json:"band_hz"`
	Aligned   []Numbers `json:"level_db"`     // [band][angle]; null: no sound can be there
	Unaligned []Numbers `json:"unaligned_db"` // without the delays; null: no sound can be there
}

// OfPolar returns the document of a circle.
func OfPolar(c timing.Polar) Polar {
	levels := func(in [][]float64) []Numbers {
		return each(in, func(v []float64) Numbers { return All(2, v) })
	}
	return Polar{each(c.Angle, func(v float64) Number { return To(1, v*degrees) }), All(0, c.Band), levels(c.Aligned), levels(c.Unaligned)}
}
