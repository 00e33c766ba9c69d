package document

import (
	"math"

	"pappus/timing"
)

// Compared is one of several designs side by side.
type Compared struct {
	Name      string    `json:"name"`
	Drivers   int       `json:"drivers"`
	Before    float64   `json:"unaligned_smear_us"`
	After     float64   `json:"aligned_smear_us"`
	OnsetThen *float64  `json:"unaligned_comb_onset_hz"` // null: none
	OnsetNow  *float64  `json:"aligned_comb_onset_hz"`   // null: none
	OmniBuilt *float64  `json:"omni_as_built_up_to_hz"`  // null: not even the lowest octave
	OmniNow   *float64  `json:"omni_aligned_up_to_hz"`   // null: not even the lowest octave
	Uneven    float64   `json:"unevenness_db"`
	Area      float64   `json:"area_within_3_db_m2"`
	Findings  []Finding `json:"findings"`
}

// OfComparison returns the document of several designs.
func OfComparison(designs []timing.Candidate) []Compared {
	known := func(v float64) *float64 {
		if v == 0 || math.IsInf(v, 0) {
			return nil
		}
		return &v
	}
	return each(designs, func(d timing.Candidate) Compared {
		p := d.Plan
		return Compared{p.Array.Name, len(p.Array.Mounts), 1e6 * p.Unaligned.Smear, 1e6 * p.Aligned.Smear,
			known(p.Unaligned.CombOnset), known(p.Aligned.CombOnset),
			known(timing.UpTo(d.Omni.AsBuilt)), known(timing.UpTo(d.Omni.Aligned)), d.Unevenness, d.Within3DB, Findings(p.Warnings)}
	})
}
