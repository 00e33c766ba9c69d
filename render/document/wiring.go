package document

import (
	"pappus/timing"
)

// Wiring is how the channels are strung and what a dead driver does.
type Wiring struct {
	Channels []Bank    `json:"channels"`
	Front    []Strung  `json:"front"`
	Held     *HeldDown `json:"held_down,omitempty"` // only where channels hold the others down
	Dead     []Dead    `json:"dead"`                // the worst of each kind
	Found
}

// OfWiring returns the document of a plan's wiring and of its faults.
func OfWiring(p *timing.Plan, deaths []timing.Death) Wiring {
	return Wiring{banksOf(p), frontOf(p), heldOf(p), each(deaths, func(d timing.Death) Dead { return deadOf(p, d) }), foundOf(p.Warnings)}
}

// Load is what a channel's amplifier sees, and the most that a tone draws.
type Load struct {
	Lowest       Number `json:"lowest_ohm"` // where the load is least; null: not known
	LowestAt     Number `json:"lowest_hz"`  // null: not known
	Volt         Number `json:"amplifier_v"`
	Ampere       Number `json:"amplifier_a"`
	Watt         Number `json:"amplifier_w"`
	DriverVolt   Number `json:"driver_v"` // of the driver that gets most; null: not known
	DriverAmpere Number `json:"driver_a"` // null: not known
	DriverWatt   Number `json:"driver_w"` // null: not known
}

func loadOf(b timing.Bank) Load {
	return Load{To(3, b.LowestOhm), To(1, b.LowestHz), To(4, b.Volt), To(5, b.Ampere), To(4, b.Watt),
		To(4, b.DriverVolt), To(5, b.DriverAmpere), To(5, b.DriverWatt)}
}

// Bank is how a channel's drivers are strung, and its load.
type Bank struct {
	Channel int    `json:"channel"`
	DC      Number `json:"dc_ohm"`
	Load
	Near    bool           `json:"of_neighbours"` // strung so, for they lose less than spread ones
	Strings []DriverString `json:"strings"`
}

// DriverString is drivers in series, in the order of their joints.
type DriverString struct {
	Drivers []int  `json:"drivers"`
	Wire    Number `json:"wire_m"`
}

func banksOf(p *timing.Plan) []Bank {
	out := make([]Bank, len(p.Channels))
	for i, c := range p.Channels {
		out[i] = Bank{Channel: c.ID, DC: To(3, c.DCOhm), Load: loadOf(p.Banks[i]), Near: p.Banks[i].Near}
	}
	for _, r := range timing.Harness(p) {
		out[r.Channel].Strings = append(out[r.Channel].Strings, DriverString{p.Array.IDs(r.Order), m(r.Length)})
	}
	return out
}

// Strung is a split that no other beats in both smear and level.
type Strung struct {
	Longest   int    `json:"longest_string"` // drivers
	Smear     Number `json:"smear_us"`       // null: silent
	CombOnset Number `json:"comb_onset_hz"`  // null: none up to the highest frequency
	Louder    Number `json:"louder_db"`      // than the last, at the spot; null: not known
	Volt      Number `json:"driver_v"`       // the most over each driver
	Limit     string `json:"limited_by"`     // amplifier, or driver: it stands no more
	LeastOhm  Number `json:"least_ohm"`      // of any channel; null: not known
	Most      int    `json:"most_drivers"`   // in one channel
	InStep    bool   `json:"in_step"`        // the rule allows it
	Rule      bool   `json:"rule"`           // its choice
	Chosen    bool   `json:"chosen"`         // the plan's own
}

func frontOf(p *timing.Plan) []Strung {
	return each(p.Front, func(f timing.Strung) Strung {
		return Strung{f.Longest, us(f.Smear), To(1, f.CombOnset), db(f.Louder), To(4, f.DriverVolt), f.Limit(),
			To(3, f.LeastOhm), f.Most, f.InStep, f.Rule, f.Chosen}
	})
}

// HeldDown is which channels hold the others down, and what cures it.
type HeldDown struct {
	Channels []int    `json:"channels"` // ids
	Series   int      `json:"series"`   // drivers in their strings
	By       Number   `json:"by_db"`
	Cure     HeldCure `json:"cure"`
}

// HeldCure is a longest string that holds nobody down.
type HeldCure struct {
	Longest int    `json:"longest_string"` // 0: none found
	Louder  Number `json:"louder_db"`
	Smear   Number `json:"smear_us"`
}

// heldOf returns nil where nothing is held down.
func heldOf(p *timing.Plan) *HeldDown {
	h, held := p.Held()
	if !held {
		return nil
	}
	return &HeldDown{h.Channels, h.Series, db(h.By), HeldCure{h.Cure, db(h.Louder), us(h.Smear)}}
}

// Dead is what a fault of a driver or a string does.
type Dead struct {
	Channel    int    `json:"channel"`
	String     int    `json:"string"`           // from 1
	Driver     int    `json:"driver,omitempty"` // not of a whole string
	Fault      string `json:"fault"`
	DC         Number `json:"dc_ohm"`     // null: open
	Lowest     Number `json:"lowest_ohm"` // null: open
	Under      bool   `json:"under_minimum"`
	Quiet      []int  `json:"quiet"`       // ids
	Power      Number `json:"power_times"` // in the drivers that play louder
	Louder     []int  `json:"louder"`      // ids
	Loss       Number `json:"loss_db"`     // at the worst angle
	Angle      Number `json:"angle_deg"`
	Spread     Number `json:"loss_spread_db"`          // of an open string; else null
	Neighbours Number `json:"loss_with_neighbours_db"` // of an open string; else null
}

func deadOf(p *timing.Plan, d timing.Death) Dead {
	out := Dead{Channel: p.Channels[d.Channel].ID, String: d.String + 1, Fault: d.Fault(),
		DC: To(3, d.DCOhm), Lowest: To(3, d.LowestOhm), Under: d.Under(p.Array.Wiring.MinimumLoad), Quiet: p.Array.IDs(d.Quiet),
		Power: To(3, d.Power), Louder: p.Array.IDs(d.Hotter), Loss: db(d.Loss), Angle: To(1, d.Angle*degrees),
		Spread: db(d.LossSpread), Neighbours: db(d.LossNeighbours)}
	if !d.Whole {
		out.Driver = p.Array.Mounts[d.Mount].ID
	}
	return out
}
