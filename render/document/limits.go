package document

import (
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/limiter"
)

// Limits is what limiters are set to, and how loud music may be for how long.
type Limits struct {
	Channels []Limiter        `json:"channels"`
	Crest    Number           `json:"crest_db"` // of the music that listening and the amplifier are told for
	Music    []LoudestMusic   `json:"music"`
	There    []Listening      `json:"listening"`
	Need     *AmplifierNeeded `json:"amplifier_needed"` // null: not known
	Gain     Number           `json:"gain_that_fits_db"`
	Found
}

// Limiter is what one channel's limiters are set to, at the amplifier's terminals; null is what
// nothing known limits.
type Limiter struct {
	Channel  int    `json:"channel"`
	RMS      Number `json:"rms_v"`
	Peak     Number `json:"peak_v"`
	RMSFull  Number `json:"rms_dbfs"` // null: the design does not tell of full scale
	PeakFull Number `json:"peak_dbfs"`
	Heat     Number `json:"heat_rms_v"`
	Travel   Number `json:"travel_peak_v"`
	Tones    Number `json:"tones_peak_v"` // the like for tones alone, behind the high-pass
	Clip     Number `json:"amplifier_peak_v"`
}

// LoudestMusic is the loudest that music of a crest factor may be.
type LoudestMusic struct {
	Crest   Number `json:"crest_db"`
	Volt    Number `json:"rms_v"`
	Channel int    `json:"channel"` // whose limit is reached first
	By      string `json:"limited_by"`
	Level   Number `json:"spot_dba"`
}

// Listening is how long one may hear the music at a place.
type Listening struct {
	Name   string `json:"name"` // empty: the spot
	Level  Number `json:"level_dba"`
	AtWork Number `json:"at_work_hours_a_day"`
	Adult  Number `json:"adult_hours_a_week"`
	Child  Number `json:"child_hours_a_week"`
}

// AmplifierNeeded is what an amplifier must give so that the drivers are the limit.
type AmplifierNeeded struct {
	Channels int    `json:"channels"`
	Ohm      Number `json:"least_ohm"`
	Peak     Number `json:"peak_v"`
	Watt     Number `json:"watt"`
}

// OfLimits returns the document of a plan's limits.
func OfLimits(p *timing.Plan, l limiter.Limits) Limits {
	out := Limits{Crest: To(2, l.Crest), Gain: db(limiter.Gain(l.Channels, p.Array.Processor.FullScale)), Found: foundOf(p.Warnings),
		Channels: each(l.Channels, func(c limiter.Channel) Limiter {
			return Limiter{c.ID, To(3, c.RMS), To(3, c.Peak), db(c.RMSFull), db(c.PeakFull), To(3, c.Heat), To(3, c.Travel), To(3, c.Tones), To(3, c.Clip)}
		}),
		Music: each(l.Music, func(m limiter.Music) LoudestMusic {
			return LoudestMusic{To(2, m.Crest), To(3, m.Volt), m.Channel, words.LimitedBy(m.Volt, m.By), To(1, m.Level)}
		}),
		There: each(l.Places, func(p limiter.Place) Listening {
			return Listening{p.Name, To(1, p.Level), To(3, p.AtWork), To(3, p.Adult), To(3, p.Child)}
		})}
	if n, known := limiter.NeedFor(l.Channels, l.Crest); known {
		out.Need = &AmplifierNeeded{n.Channels, To(3, n.Ohm), To(3, n.Peak), To(3, n.Watt)}
	}
	return out
}
