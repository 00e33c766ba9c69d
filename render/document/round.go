package document

import "pappus/timing"

// Round is how loud and how even a plan is all round, for nobody in particular, on circles
// round the body's axis.
type Round struct {
	Octave  Numbers      `json:"octave_hz"`
	Heights Numbers      `json:"height_m"` // of the circles, from the body's centre
	Radius  Number       `json:"radius_m"`
	Loud    Number       `json:"loud"` // as planned: 0 even to 1 loud
	Planned Circles      `json:"planned"`
	Without Circles      `json:"without"` // without delays, all in parallel
	Front   []RoundPoint `json:"front"`   // plans between even and loud
}

// Circles are what is heard on the circles.
type Circles struct {
	Gain      []Numbers `json:"gain_db"`      // [circle][octave] mean energy, over that without delays
	Deviation []Numbers `json:"deviation_db"` // [circle][octave] the furthest of the 30-degree gliding means from the circle's (ISO 3382-1)
}

// RoundPoint is a plan between even and loud.
type RoundPoint struct {
	Loud      Number `json:"loud"`
	Gain      Number `json:"gain_db"`      // mean over circles and octaves
	Deviation Number `json:"deviation_db"` // the greatest of any
}

// roundOf returns how a plan is all round; nil where that is not the aim.
func roundOf(r *timing.Round) *Round {
	if r == nil {
		return nil
	}
	circles := func(c timing.Circles) Circles {
		rows := func(in [][]float64) []Numbers { return each(in, func(v []float64) Numbers { return All(3, v) }) }
		return Circles{rows(c.Gain), rows(c.Deviation)}
	}
	return &Round{All(2, r.Octaves), All(6, r.Height), m(r.Radius), To(3, r.Loud), circles(r.Planned), circles(r.Without),
		each(r.Front, func(p timing.RoundPoint) RoundPoint { return RoundPoint{To(3, p.Loud), db(p.Gain), db(p.Deviation)} })}
}
