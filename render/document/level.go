package document

import (
	"pappus/render/words"
	"pappus/timing"
)

// Level is what levels the spot.
type Level struct {
	Unit     string       `json:"level_unit"`
	Target   Number       `json:"target_db"`
	Before   Number       `json:"uneven_before_db"`
	After    Number       `json:"uneven_after_db"`
	Boost    Number       `json:"boost_db"` // the most anywhere
	Sections []Filter     `json:"sections"` // the same on every channel
	Rate     Number       `json:"rate_hz"`  // of the coefficients and the filters
	Signs    string       `json:"signs"`    // how the five coefficients are meant
	Filters  []FIRFilter  `json:"filters"`
	Nulls    []Null       `json:"nulls"` // left alone
	Curve    LevelCurve   `json:"curve"`
	Seats    *SeatFilters `json:"seat_filters,omitempty"` // left out: fewer than two seats, nobody in particular, or too many channels
	Findings []Finding    `json:"findings"`               // in the plan, worst first
}

// SeatFilters are short filters, one for each channel after its delay, that make seats more
// even.
type SeatFilters struct {
	Taps    int       `json:"taps"`
	Latency Number    `json:"latency_ms"` // of all channels alike
	Pays    bool      `json:"pays"`       // whether they are worth setting; then they are in seats_channel_1.wav and so on
	Planned SeatsLost `json:"planned"`    // with delays alone
	With    SeatsLost `json:"with_filters"`
	Words   string    `json:"words"`
}

// seatFiltersOf returns filters for seats; nil where there are none.
func seatFiltersOf(f *timing.SeatFilters) *SeatFilters {
	if f == nil {
		return nil
	}
	return &SeatFilters{len(f.Taps[0]), To(4, 1000*f.Lead), f.Pays, lostOf(f.Planned), lostOf(f.Figures), words.SeatFilters(f)}
}

// OfLevel returns the document of a levelling.
func OfLevel(p *timing.Plan, l timing.Levelling, c timing.Correction, f *timing.SeatFilters) Level {
	fir := func(name string, t timing.Taps) FIRFilter {
		return FIRFilter{name, len(t.Samples), To(4, 1000*t.Latency), To(4, t.Off)}
	}
	return Level{unit(p), db(l.Target), db(l.UnevenBefore), db(l.UnevenAfter), db(l.Boost()), each(c.Sections, filterOf), To(3, c.Rate), words.Signs,
		[]FIRFilter{fir("minimum phase", c.Minimum), fir("linear phase", c.Linear)},
		each(l.Nulls, func(n timing.Null) Null {
			return Null{To(1, n.Low), To(1, n.High), db(n.Loss), words.Nulls([]timing.Null{n})}
		}),
		LevelCurve{All(2, l.Frequency), All(3, l.Before), All(3, l.After), All(3, l.Error)}, seatFiltersOf(f), Findings(p.Warnings)}
}

// FIRFilter is the levelling as a convolution.
type FIRFilter struct {
	Name    string `json:"name"`
	Taps    int    `json:"taps"`
	Latency Number `json:"latency_ms"`
	Off     Number `json:"off_db"` // at most, from the sections, above 100 Hz
}

// Null is a dip that no filter fills.
type Null struct {
	Low  Number `json:"low_hz"`
	High Number `json:"high_hz"`
	Loss Number `json:"loss_db"`
	Why  string `json:"why"`
}

// LevelCurve is the level at the spot.
type LevelCurve struct {
	Frequency Numbers `json:"frequency_hz"`
	Before    Numbers `json:"before_db"`
	After     Numbers `json:"after_db"`
	Error     Numbers `json:"model_error_db"` // what is within it of the mean is left alone
}
