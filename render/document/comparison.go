package document

import (
	"pappus/layout"
	"pappus/timing"
)

// Compared is one of several designs side by side.
type Compared struct {
	Name      string    `json:"name"`
	Drivers   int       `json:"drivers"`
	Before    Number    `json:"unaligned_smear_us"`
	After     Number    `json:"aligned_smear_us"`
	OnsetThen Number    `json:"unaligned_comb_onset_hz"`  // null: none
	OnsetNow  Number    `json:"aligned_comb_onset_hz"`    // null: none
	OmniBuilt *Number   `json:"omni_as_built_up_to_hz"`   // null: not even the lowest octave
	OmniNow   *Number   `json:"omni_aligned_up_to_hz"`    // null: not even the lowest octave
	Built     Number    `json:"spatial_as_built_mean_db"` // null: a direction is silent
	Spatial   Number    `json:"spatial_mean_db"`          // null: a direction is silent
	Uneven    Number    `json:"unevenness_db"`
	Area      Number    `json:"area_within_3_db_m2"`
	Model     string    `json:"model"`
	Field     *Field    `json:"field,omitempty"` // only of the model body
	Seats     *AtSeats  `json:"seats"`           // null: no design has several, or a seat cannot be in this one's room
	Findings  []Finding `json:"findings"`
}

// AtSeats is what a design loses at seats against all drivers in step, in dB.
type AtSeats struct {
	Own bool `json:"own"` // its own seats; else those of the first design that has some
	SeatsLost
	Value Number   `json:"aim_db"` // what the aim of the first design with seats makes of it
	Names []string `json:"names"`
	Lost  Numbers  `json:"lost_db"` // at each seat
}

func atSeatsOf(at *timing.AtSeats) *AtSeats {
	if at == nil {
		return nil
	}
	return &AtSeats{at.Own, lostOf(at.Figures), db(at.Value), each(at.Seats, func(s layout.Seat) string { return s.Name }), All(3, at.Seat)}
}

// OfComparison returns the document of several designs.
func OfComparison(designs []timing.Candidate) []Compared {
	return each(designs, func(d timing.Candidate) Compared {
		p := d.Plan
		return Compared{p.Array.Name, len(p.Array.Mounts), us(p.Unaligned.Smear), us(p.Aligned.Smear),
			To(1, p.Unaligned.CombOnset), To(1, p.Aligned.CombOnset), some(To(2, timing.UpTo(d.Omni.AsBuilt))), some(To(2, timing.UpTo(d.Omni.Aligned))),
			db(d.Spatial.AsBuilt.Mean), db(d.Spatial.Aligned.Mean), db(d.Unevenness), To(4, d.Within3DB), p.Array.Timing.Model, fieldOf(&p.Spot), atSeatsOf(d.Seats), Findings(p.Warnings)}
	})
}
