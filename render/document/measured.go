package document

import (
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/recording"
	"pappus/timing/verdict"
)

// smoothParts of an octave are what a measured level is smoothed to beside its raw values.
const smoothParts = 6

// Measured is what recordings told, against the plan.
type Measured struct {
	Faults   []string          `json:"faults"`   // what is wrong, each a sentence
	Notes    []string          `json:"notes"`    // what else to know, each a sentence
	Findings []Finding         `json:"findings"` // in the plan itself, worst first
	Channels []MeasuredChannel `json:"channels"` // null: they were not recorded
	Level    *MeasuredLevel    `json:"level"`    // null: the whole array was not recorded
	Seats    *MeasuredSeats    `json:"seats"`    // null: nothing was recorded at seats
}

// OfMeasured returns the document of what recordings told.
func OfMeasured(p *timing.Plan, f verdict.Found) Measured {
	out := Measured{Faults: each(f.Faults, words.Measured), Notes: each(f.Notes, words.Measured), Findings: Findings(p.Warnings)}
	if f.Channels != nil {
		for i, c := range f.Channels.Channels {
			out.Channels = append(out.Channels, measuredChannelOf(c, p.Channels[i].Delay))
		}
	}
	if f.Level != nil {
		out.Level = measuredLevelOf(*f.Level, *f.Whole)
	}
	if f.Seats != nil {
		out.Seats = measuredSeatsOf(*f.Seats)
	}
	return out
}

// MeasuredChannel is what the recording of one channel told.
type MeasuredChannel struct {
	ID         int    `json:"id"`
	Planned    Number `json:"planned_us"`
	Arrival    Number `json:"measured_us"`       // null: not known
	Late       Number `json:"late_us"`           // over the middle channel; null: not known
	Error      Number `json:"error_us"`          // one standard error; null: not known
	Set        Number `json:"set_delay_us"`      // by the plan
	Delay      Number `json:"proposed_delay_us"` // null: none follows
	Level      Number `json:"level_db"`          // over its siblings; null: silent, or not known
	LevelError Number `json:"level_error_db"`    // one standard error; null: not known
	Beside     Number `json:"beside_db"`         // over siblings of like arrival; null: too few
	Residual   Number `json:"unlike"`            // share of the energy that does not fit; null: not known
	Missing    bool   `json:"missing"`           // not recorded, or not usable
	Reversed   bool   `json:"reversed"`
	Silent     bool   `json:"silent"`
	Quiet      bool   `json:"quiet"`
	Loud       bool   `json:"loud"`
	DeadString *int   `json:"dead_string"` // from 1; null: none
}

func measuredChannelOf(c verdict.Channel, set float64) MeasuredChannel {
	out := MeasuredChannel{c.ID, us(c.Planned), us(c.Arrival), us(c.Late), us(c.Error), us(set), us(c.Delay), db(c.Level), db(c.LevelError),
		db(c.Beside), To(4, c.Residual), c.Missing, c.Reversed, c.Silent, c.Quiet, c.Loud, nil}
	if c.DeadString >= 0 {
		from1 := c.DeadString + 1
		out.DeadString = &from1
	}
	return out
}

// MeasuredLevel is what the recording of the whole array told.
type MeasuredLevel struct {
	Low       Number         `json:"match_low_hz"`
	High      Number         `json:"match_high_hz"`
	Uneven    Number         `json:"uneven_db"` // RMS difference of thirds of octaves between
	Bands     []MeasuredBand `json:"bands"`
	Frequency Numbers        `json:"frequency_hz"`
	Measured  Numbers        `json:"measured_db"` // null: not known
	Smoothed  Numbers        `json:"smoothed_db"` // over sixths of octaves; null: not known
	Planned   Numbers        `json:"planned_db"`
	Drift     Number         `json:"drift_ppm"`
	Lowest    Number         `json:"gate_lowest_hz"`
	Inverted  bool           `json:"inverted"`
	Warnings  []string       `json:"warnings"`
}

func measuredLevelOf(v verdict.Level, m recording.Measured) *MeasuredLevel {
	out := &MeasuredLevel{Low: To(3, v.Low), High: To(3, v.High), Uneven: db(v.Uneven),
		Frequency: All(3, v.Frequency), Measured: All(3, v.Measured), Planned: All(3, v.Planned),
		Smoothed: All(3, band.SmoothGaps(nil, v.Frequency, v.Measured, smoothParts)),
		Drift:    To(3, m.Drift), Lowest: To(2, m.Gated.Lowest), Inverted: m.Inverted, Warnings: each(m.Cautions, words.Recording)}
	for _, b := range v.Bands {
		out.Bands = append(out.Bands, MeasuredBand{To(3, b.Centre), db(b.Measured), db(b.Planned), db(b.Difference), db(b.Error), To(2, m.SNR(b.Centre))})
	}
	return out
}

// MeasuredBand is a band of a measured level.
type MeasuredBand struct {
	Centre     Number `json:"band_hz"`
	Measured   Number `json:"measured_db"` // null: not known
	Planned    Number `json:"planned_db"`
	Difference Number `json:"difference_db"`      // null: not known
	Error      Number `json:"error_db"`           // one standard error; null: not known
	Ratio      Number `json:"signal_to_noise_db"` // null: not known
}

// MeasuredSeats is what recordings at seats told: losses against all drivers in step, in dB,
// over the seats that were recorded, where the microphone was; the plan's own figures are of
// heads that move.
type MeasuredSeats struct {
	Third    Numbers        `json:"third_hz"`
	Planned  SeatsLost      `json:"planned"`
	Measured SeatsLost      `json:"measured"`
	OwnMean  bool           `json:"mean_measured"`   // the measured mean is told by channels recorded one by one; else it is the planned one
	Wired    bool           `json:"levels_compared"` // by a wire in every recording; else each is matched to its own plan
	Each     []MeasuredSeat `json:"each"`
}

// MeasuredSeat is what the recording at a seat told.
type MeasuredSeat struct {
	Number         int     `json:"number"` // from 1
	Name           string  `json:"name"`
	Planned        Number  `json:"planned_db"`
	Measured       Number  `json:"measured_db"`
	Error          Number  `json:"error_db"` // one standard error
	PlannedThirds  Numbers `json:"planned_thirds_db"`
	MeasuredThirds Numbers `json:"measured_thirds_db"`
}

func measuredSeatsOf(v verdict.Seats) *MeasuredSeats {
	out := &MeasuredSeats{Third: All(2, v.Thirds), Planned: lostOf(v.Planned), Measured: lostOf(v.Measured), OwnMean: v.OwnMean, Wired: v.Wired}
	for i, h := range v.Heard {
		out.Each = append(out.Each, MeasuredSeat{h.Index + 1, h.Name, db(v.Planned.Seat[i]), db(v.Measured.Seat[i]), db(h.Error),
			All(3, v.Planned.Band[i]), All(3, v.Measured.Band[i])})
	}
	return out
}
