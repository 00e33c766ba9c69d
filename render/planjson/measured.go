package planjson

import (
	"io"

	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/recording"
	"pappus/timing/verdict"
)

// smoothParts of an octave are what a measured level is smoothed to beside its raw values.
const smoothParts = 6

// WriteMeasured writes what recordings told, against the plan:
//
//	faults[]      what is wrong, each a sentence
//	notes[]       what else to know, each a sentence
//	findings[]    what to look out for in the plan itself, worst first
//	channels[]    id, planned_us, measured_us, late_us (over the middle channel), error_us (one
//	              standard error), set_delay_us, proposed_delay_us (null: none
//	              follows), level_db (over its siblings), level_error_db (one standard error), beside_db
//	              (over siblings of like arrival; null: too few), unlike (share of the energy that does
//	              not fit), missing (not recorded, or not usable), reversed, silent, quiet, loud,
//	              dead_string (from 1; null: none); null: channels were not recorded
//	level         null: the whole array was not recorded; else
//	  match_low_hz, match_high_hz, uneven_db (RMS difference of thirds of octaves between)
//	  bands[]     band_hz, measured_db, planned_db, difference_db, error_db (one standard error),
//	              signal_to_noise_db
//	  frequency_hz[], measured_db[], smoothed_db[] (sixths of octaves), planned_db[]
//	  drift_ppm, gate_lowest_hz, inverted, warnings[]
func WriteMeasured(w io.Writer, p *timing.Plan, m verdict.Found) error {
	out := measuredAll{Faults: []string{}, Notes: []string{}, Findings: Findings(p.Warnings)}
	for _, f := range m.Faults {
		out.Faults = append(out.Faults, words.Measured(f))
	}
	for _, f := range m.Notes {
		out.Notes = append(out.Notes, words.Measured(f))
	}
	if m.Channels != nil {
		out.Channels = measuredChannels(p, *m.Channels)
	}
	if m.Level != nil {
		out.Level = measuredLevelOf(*m.Level, *m.Whole)
	}
	return encode(w, out)
}

func measuredChannels(p *timing.Plan, v verdict.Channels) []measuredChannel {
	var out []measuredChannel
	for i, c := range v.Channels {
		row := measuredChannel{ID: c.ID, Planned: us(c.Planned), Arrival: us(c.Arrival), Late: us(c.Late), Error: us(c.Error),
			Set: us(p.Channels[i].Delay), Delay: us(c.Delay), Level: db(c.Level), LevelError: db(c.LevelError), Beside: db(c.Beside), Unlike: to(4, c.Unlike),
			Missing: c.Missing, Reversed: c.Reversed, Silent: c.Silent, Quiet: c.Quiet, Loud: c.Loud}
		if c.DeadString >= 0 {
			from1 := c.DeadString + 1
			row.DeadString = &from1
		}
		out = append(out, row)
	}
	return out
}

func measuredLevelOf(v verdict.Level, m recording.Measured) *measuredLevel {
	out := &measuredLevel{Low: to(3, v.Low), High: to(3, v.High), Uneven: db(v.Uneven),
		Frequency: all(3, v.Frequency), Measured: all(3, v.Measured), Planned: all(3, v.Planned),
		Smoothed: all(3, band.SmoothGaps(nil, v.Frequency, v.Measured, smoothParts)),
		Drift:    to(3, m.Drift), Lowest: to(2, m.Gated.Lowest), Inverted: m.Inverted, Warnings: append([]string{}, m.Warnings...)}
	for _, b := range v.Bands {
		out.Bands = append(out.Bands, measuredBand{to(3, b.Centre), db(b.Measured), db(b.Planned), db(b.Difference), db(b.Error), to(2, m.SNR(b.Centre))})
	}
	return out
}

type measuredAll struct {
	Faults   []string          `json:"faults"`
	Notes    []string          `json:"notes"`
	Findings []Finding         `json:"findings"` // of the plan
	Channels []measuredChannel `json:"channels"`
	Level    *measuredLevel    `json:"level"`
}

type measuredChannel struct {
	ID         int    `json:"id"`
	Planned    number `json:"planned_us"`
	Arrival    number `json:"measured_us"`
	Late       number `json:"late_us"`
	Error      number `json:"error_us"`
	Set        number `json:"set_delay_us"`
	Delay      number `json:"proposed_delay_us"`
	Level      number `json:"level_db"`
	LevelError number `json:"level_error_db"`
	Beside     number `json:"beside_db"`
	Unlike     number `json:"unlike"`
	Missing    bool   `json:"missing"`
	Reversed   bool   `json:"reversed"`
	Silent     bool   `json:"silent"`
	Quiet      bool   `json:"quiet"`
	Loud       bool   `json:"loud"`
	DeadString *int   `json:"dead_string"`
}

type measuredLevel struct {
	Low       number         `json:"match_low_hz"`
	High      number         `json:"match_high_hz"`
	Uneven    number         `json:"uneven_db"`
	Bands     []measuredBand `json:"bands"`
	Frequency []number       `json:"frequency_hz"`
	Measured  []number       `json:"measured_db"`
	Smoothed  []number       `json:"smoothed_db"`
	Planned   []number       `json:"planned_db"`
	Drift     number         `json:"drift_ppm"`
	Lowest    number         `json:"gate_lowest_hz"`
	Inverted  bool           `json:"inverted"`
	Warnings  []string       `json:"warnings"`
}

type measuredBand struct {
	Centre     number `json:"band_hz"`
	Measured   number `json:"measured_db"`
	Planned    number `json:"planned_db"`
	Difference number `json:"difference_db"`
	Error      number `json:"error_db"`
	Ratio      number `json:"signal_to_noise_db"`
}
