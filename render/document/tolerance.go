package document

import (
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/tolerance"
)

// Tolerance is what drivers that are not alike do to a plan.
type Tolerance struct {
	Written
	Runs    int    `json:"runs"`
	Seed    uint64 `json:"seed"`
	Percent Number `json:"percent"`        // of fs, Qms, Qes and Re, either way
	Level   Number `json:"sensitivity_db"` // either way
	Place   Number `json:"place_mm"`       // either way
	Time    Number `json:"time_us"`        // either way
	Twins   Lot    `json:"twins"`
	Causes  []Lots `json:"causes"` // each that is off by itself, then all together

	Frequency Numbers  `json:"frequency_hz"`
	Alike     Numbers  `json:"twins_db"` // third-octave smoothed, as all levels here
	Low       Numbers  `json:"percentile_5_db"`
	Middle    Numbers  `json:"percentile_50_db"`
	High      Numbers  `json:"percentile_95_db"`
	Cautions  []string `json:"cautions"`
}

// Lot is what one lot of drivers comes to.
type Lot struct {
	Level    Number `json:"level_db"` // mean from 500 Hz to 4 kHz
	Loss     Number `json:"loss_db"`
	Smear    Number `json:"smear_us"`
	LeastOhm Number `json:"least_ohm"`
	Watt     Number `json:"most_w"`
	Travel   Number `json:"most_travel_mm"` // null: not known
}

// lotOf returns the document of a lot of drivers.
func lotOf(h timing.UnlikeHeard) Lot {
	return Lot{db(h.Mean), db(h.Loss), To(2, 1e6*h.Smear), To(4, h.LeastOhm), To(5, h.Watt), To(4, 1000*h.Travel)}
}

// Lots is what all lots with a cause come to.
type Lots struct {
	Cause    string `json:"cause"`
	Level    Range  `json:"level_over_twins_db"`
	Loss     Range  `json:"loss_db"`
	Smear    Range  `json:"smear_us"`
	LeastOhm Range  `json:"least_ohm"`
	Watt     Range  `json:"most_w"`
	Travel   Range  `json:"most_travel_mm"`
	Under    int    `json:"lots_below_minimum"`
	Hot      int    `json:"lots_too_hot"`
	Far      int    `json:"lots_too_far"`
}

// Range is percentiles.
type Range struct {
	Low    Percentile `json:"percentile_5"`
	Middle Percentile `json:"percentile_50"`
	High   Percentile `json:"percentile_95"`
}

// Percentile is one of all lots that there could be, with what holds it with 90 percent certainty.
type Percentile struct {
	Value Number `json:"value"`
	From  Number `json:"from"`
	To    Number `json:"to"`
}

// OfTolerance returns the document of a study.
func OfTolerance(files Written, s *tolerance.Study) Tolerance {
	of := func(places int, per float64, r tolerance.Range) Range {
		one := func(q tolerance.Quantile) Percentile {
			return Percentile{To(places, per*q.Value), To(places, per*q.From), To(places, per*q.To)}
		}
		return Range{one(r.Low), one(r.Middle), one(r.High)}
	}
	return Tolerance{Written: files, Runs: s.Runs, Seed: s.Seed, Percent: To(3, 100*s.Share), Level: To(3, s.Level), Place: To(3, 1000*s.Place), Time: To(3, 1e6*s.Time),
		Twins: lotOf(s.Twins),
		Causes: each(s.Causes, func(c tolerance.Outcome) Lots {
			return Lots{words.CauseOf(c.Cause), of(3, 1, c.Level), of(3, 1, c.Loss), of(2, 1e6, c.Smear), of(4, 1, c.LeastOhm), of(5, 1, c.Watt), of(4, 1000, c.Travel), c.Under, c.Hot, c.Far}
		}),
		Frequency: All(2, s.Frequency), Alike: All(2, s.Alike), Low: All(2, s.Low), Middle: All(2, s.Middle), High: All(2, s.High),
		Cautions: append([]string{}, words.ToleranceCautions(s)...)}
}
