package document

import (
	"math"

	"pappus/timing"
	"pappus/timing/omni"
)

const degrees = 180 / math.Pi

// Survey is what the loudspeaker does beyond the spot.
type Survey struct {
	Octaves []Octave `json:"octaves"`
	Spatial Spatial  `json:"spatial"`
	InStep  Number   `json:"in_step_area_m2"` // area round the spot with the smear under the design's limit
}

// Octave is one octave of a survey.
type Octave struct {
	Band        Number `json:"octave_hz"`
	Directivity Number `json:"directivity_db"` // towards the spot, in open air
	Power       Number `json:"power_db"`       // over one driver, in open air
	Unevenness  Number `json:"unevenness_db"`  // round the listening circle
	Reach       Number `json:"within_3_db_m2"` // area round the spot
	// By ISO 3382-1, all drivers in parallel as the standard has it, and with the delays, which
	// aim at the spot.
	BuiltDeviation *Number `json:"omni_as_built_deviation_db"` // null: the standard has no limit
	BuiltPass      *bool   `json:"omni_as_built_pass"`         // null: the standard has no limit
	Deviation      *Number `json:"omni_deviation_db"`          // null: the standard has no limit
	Pass           *bool   `json:"omni_pass"`                  // null: the standard has no limit
	BuiltSpatial   Number  `json:"spatial_as_built_db"`        // standard deviation over all directions far away, by area; null: a direction is silent
	Spatial        Number  `json:"spatial_db"`                 // null: a direction is silent
	Sabine         *Number `json:"reverb_sabine_s"`            // null: there is no room
	Eyring         *Number `json:"reverb_eyring_s"`            // null: there is no room
}

// Spatial is the standard deviation of the level in dB over all directions far away, by area, as
// built and with the delays. The means are of 100 Hz to 4 kHz, each hertz alike.
type Spatial struct {
	Third       Numbers `json:"third_hz"`
	BuiltThird  Numbers `json:"as_built_third_db"` // null: a direction is silent
	Aligned     Numbers `json:"third_db"`          // null: a direction is silent
	BuiltMean   Number  `json:"as_built_mean_db"`  // null: a direction is silent
	AlignedMean Number  `json:"mean_db"`           // null: a direction is silent
}

// OfSurvey returns the document of a survey.
func OfSurvey(s *timing.Survey) Survey {
	out := Survey{InStep: To(4, s.InStep), Spatial: spatialOf(s.Spatial)}
	for b, o := range s.Octaves {
		row := Octave{Band: To(2, o.Band), Directivity: db(o.Directivity), Power: db(o.Power), Unevenness: db(o.Unevenness), Reach: To(4, o.Reach)}
		row.Deviation, row.Pass = judged(s.Omni.Aligned, o.Band)
		row.BuiltDeviation, row.BuiltPass = judged(s.Omni.AsBuilt, o.Band)
		row.BuiltSpatial, row.Spatial = db(s.Spatial.AsBuilt.Octave[b]), db(s.Spatial.Aligned.Octave[b])
		if len(s.Reverb) > 0 {
			sabine, eyring := To(3, s.Reverb[b].Sabine), To(3, s.Reverb[b].Eyring)
			row.Sabine, row.Eyring = &sabine, &eyring
		}
		out.Octaves = append(out.Octaves, row)
	}
	return out
}

// judged returns the judgement of an octave; nil where the standard has none.
func judged(results []omni.Result, centre float64) (*Number, *bool) {
	for _, r := range results {
		if r.Band == centre {
			deviation := db(r.Deviation)
			return &deviation, &r.Pass
		}
	}
	return nil, nil
}

func spatialOf(s timing.Spatial) Spatial {
	return Spatial{All(2, s.Third), All(3, s.AsBuilt.Third), All(3, s.Aligned.Third), db(s.AsBuilt.Mean), db(s.Aligned.Mean)}
}
