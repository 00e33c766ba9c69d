package document

import (
	"pappus/render/words"
	"pappus/timing"
)

// Round is level against evenness for people all round, on circles round the body's axis.
type Round struct {
	Radius  Number       `json:"radius_m"`
	Loud    Number       `json:"loud"` // from 0, even, to 1, loud
	Octave  Numbers      `json:"octave_hz"`
	Circles []Circle     `json:"circles"` // by height
	Front   []RoundPoint `json:"front"`   // what other choices of loud would bring, those that no other beats in both; empty while a seat is dragged
	Words   string       `json:"words"`
}

// Circle is what is heard on one circle, by octave.
type Circle struct {
	Height    Number  `json:"z_m"`
	Gain      Numbers `json:"gain_db"`              // over all drivers in parallel
	Deviation Numbers `json:"deviation_db"`         // of the 30-degree gliding mean that is furthest from the circle's
	Without   Numbers `json:"without_deviation_db"` // the same without delays
}

// RoundPoint is a plan between even and loud.
type RoundPoint struct {
	Loud      Number `json:"loud"`
	Gain      Number `json:"gain_db"`      // mean over heights and octaves
	Deviation Number `json:"deviation_db"` // furthest off even, mean over heights and octaves
}

// roundOf returns level against evenness all round; nil where another aim is planned for.
func roundOf(r *timing.Round) *Round {
	if r == nil {
		return nil
	}
	out := &Round{Radius: m(r.Radius), Loud: To(3, r.Loud), Octave: All(1, r.Octaves), Words: words.Round(r),
		Front: each(r.Front, func(p timing.RoundPoint) RoundPoint { return RoundPoint{To(3, p.Loud), db(p.Gain), db(p.Deviation)} })}
	for h, z := range r.Height {
		out.Circles = append(out.Circles, Circle{m(z), All(3, r.Planned.Gain[h]), All(3, r.Planned.Deviation[h]), All(3, r.Without.Deviation[h])})
	}
	return out
}
