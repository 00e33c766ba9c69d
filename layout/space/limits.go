package space

import (
	"math"

	"pappus/layout"
	"pappus/layout/design"
)

// Limit is a limit that a design breaks, or a finding that should stop a builder.
type Limit struct {
	Key   string  // of the design's [search], such as search.width_mm; empty for a finding
	Code  string  // of a finding, such as drivers_misfit; empty for a key
	Asked float64 // in the key's unit
	Has   float64 // in the key's unit; NaN of a finding
}

// Broken lists the limits of a search that an array breaks, and what else forbids it: findings
// of the layout that stop a builder, and channels without use. What needs sound, such as a
// level, is not among them; nor are printed parts where there may be more than one, for which the
// shell must be cut.
func Broken(s design.Search, a *layout.Array, c Cost) []Limit {
	var out []Limit
	most := func(key string, asked, has, unit float64) {
		if asked > 0 && has > asked*(1+rounding) {
			out = append(out, Limit{Key: "search." + key, Asked: asked / unit, Has: has / unit})
		}
	}
	least := func(key string, asked, has, unit float64) {
		if asked > 0 && has < asked*(1-rounding) {
			out = append(out, Limit{Key: "search." + key, Asked: asked / unit, Has: has / unit})
		}
	}
	most("drivers", float64(s.Drivers), float64(c.Drivers), 1)
	least("least_drivers", float64(s.LeastDrivers), float64(c.Drivers), 1)
	most("channels", float64(s.Channels), float64(channelsOf(a)), 1)
	most("width_mm", s.Width, c.Width, mm)
	most("height_mm", s.Height, c.Height, mm)
	most("depth_mm", s.Depth, c.Depth, mm)
	most("mass_kg", s.Mass, c.Mass, 1)
	most("price", s.Price, c.Price, 1)
	most("hours", s.Hours, c.Hours, 1)
	least("litres_least", s.LeastVolume, c.Volume, litre)
	most("litres_most", s.MostVolume, c.Volume, litre)
	most("lowest_hz", s.Lowest, max(a.Driver.Resonance, a.Protection.Corner), 1)
	if s.Pieces == 1 && !c.InOne {
		out = append(out, Limit{Key: "search.pieces", Asked: 1, Has: 2})
	}
	for _, f := range a.Warnings {
		if f.Rank.Stops() || f.Code == "channels_unused" {
			out = append(out, Limit{Code: f.Code, Asked: math.NaN(), Has: math.NaN()})
		}
	}
	return out
}

const (
	litre    = 1e-3 // m3
	rounding = 1e-9 // share of a limit that arithmetic may be off by
)

// channelsOf is how many channels of the amplifier an array takes.
func channelsOf(a *layout.Array) int {
	if n := len(a.Channels); n > 0 {
		return n
	}
	return a.Wiring.Channels
}
