package document

import (
	"pappus/render/words"
	"pappus/timing/impedancefit"
	"pappus/timing/intake"
)

// Drivers is what became of a folder of single drivers.
type Drivers struct {
	Written
	Drivers  []OneDriver    `json:"drivers"`
	Middles  []DriverMiddle `json:"middles"`
	Ignored  []string       `json:"ignored_files"`
	Sorted   *SortedDrivers `json:"sorted"` // null: no design, or too few drivers
	Lacking  int            `json:"lacking_drivers"`
	Cautions []string       `json:"cautions"`
}

// OneDriver is what was measured of a driver, and what was decided.
type OneDriver struct {
	Name      string    `json:"name"`
	Files     []string  `json:"files"`
	Good      bool      `json:"good"`
	Why       []string  `json:"why"` // it is not
	Notes     []string  `json:"notes"`
	Resonance *Estimate `json:"resonance_hz"` // null, as all below to re_ohm: no impedance
	Qms       *Estimate `json:"qms"`
	Qes       *Estimate `json:"qes"`
	Qts       *Estimate `json:"qts"`
	DCOhm     *Estimate `json:"re_ohm"`
	Level     *Estimate `json:"level_db"` // over the middle of all; null, as all below to reversed: no recording
	Uneven    *Number   `json:"uneven_db"`
	Late      *Number   `json:"late_us"`
	Reversed  *bool     `json:"reversed"`
	Bin       *string   `json:"bin"` // steps of resonance, Q and resistance; null: none
}

// DriverMiddle is the median of a value.
type DriverMiddle struct {
	Value   string `json:"value"`
	Middle  Number `json:"middle"`
	Scatter Number `json:"scatter"` // in dB for level and response, else as a factor less 1
	Count   int    `json:"drivers"`
}

// SortedDrivers is which driver goes where, and what that brings.
type SortedDrivers struct {
	Strings []SortedString `json:"strings"`
	Spares  []string       `json:"spares"`
	Twins   Lot            `json:"twins"`
	Middle  Lot            `json:"twins_of_the_middle"`
	AsCome  Lot            `json:"as_they_come"`
	Sorted  Lot            `json:"sorted"`
	// What drivers give scatters by, an RMS of relative errors, half of it by their weight at the spot.
	ScatterAsCome Number `json:"scatter_as_they_come"`
	ScatterSorted Number `json:"scatter_sorted"`
	RiseAsCome    Number `json:"rise_as_they_come_db"` // by which a cone moves further than its twin, at most
	RiseSorted    Number `json:"rise_sorted_db"`
}

// SortedString is a string.
type SortedString struct {
	Channel int      `json:"channel"`
	String  int      `json:"string"`
	Mounts  []int    `json:"mounts"` // in the order of the joints
	Drivers []string `json:"drivers"`
}

// OfDrivers returns the document of a lot; d is nil without a design.
func OfDrivers(files Written, l *intake.Lot, d *intake.Deal) Drivers {
	out := Drivers{Written: files, Drivers: each(l.Drivers, oneDriver), Ignored: append([]string{}, l.Ignored...),
		Cautions: append(append([]string{}, words.LotNotes(l)...), words.DealCautions(d)...)}
	for v, m := range l.Middles {
		if m.Count > 0 {
			out.Middles = append(out.Middles, DriverMiddle{words.ValueOf(intake.Value(v)), To(4, m.Value), To(5, m.Scatter), m.Count})
		}
	}
	if d == nil {
		return out
	}
	if out.Lacking = d.Lacking; d.Places == nil {
		return out
	}
	name := func(i int) string { return l.Drivers[i].Name }
	out.Sorted = &SortedDrivers{Spares: each(d.Spares, name), Twins: lotOf(d.Twins), Middle: lotOf(d.Middle), AsCome: lotOf(d.AsCome.UnlikeHeard), Sorted: lotOf(d.Sorted.UnlikeHeard),
		ScatterAsCome: To(5, d.AsCome.Scatter), ScatterSorted: To(5, d.Sorted.Scatter), RiseAsCome: db(d.AsCome.Rise), RiseSorted: db(d.Sorted.Rise),
		Strings: each(d.Strings(), func(s intake.InString) SortedString {
			return SortedString{d.Plan.Channels[s.Channel].ID, s.String + 1, d.Plan.Array.IDs(s.Mounts), each(s.Drivers, name)}
		})}
	return out
}

func oneDriver(d intake.Driver) OneDriver {
	out := OneDriver{Name: d.Name, Files: append([]string{}, d.Files...), Good: d.Good(), Why: each(d.Reasons, words.Reason), Notes: each(d.Notes, words.Reason)}
	of := func(places int, e impedancefit.Estimate) *Estimate { v := estimate(places, e, 1); return &v }
	if f := d.Fit; f != nil {
		out.Resonance, out.Qms, out.Qes, out.Qts, out.DCOhm = of(3, f.Resonance), of(5, f.Qms), of(5, f.Qes), of(5, f.Qts), of(5, f.DCOhm)
		if d.Good() {
			bin := d.Bin.String()
			out.Bin = &bin
		}
	}
	if h := d.Heard; h != nil {
		uneven, late, reversed := To(3, h.Uneven), To(2, 1e6*h.Late), h.Reversed
		out.Level, out.Uneven, out.Late, out.Reversed = of(3, impedancefit.Estimate{Value: h.Level, Error: h.Error}), &uneven, &late, &reversed
	}
	return out
}
