package document

import (
	"pappus/layout"
	"pappus/layout/kit"
	"pappus/timing/bill"
)

// Kit is the parts that are printed and go together.
type Kit struct {
	Written
	Parts    []KitPart    `json:"parts"`
	Fittings []KitFitting `json:"fittings"` // to buy, for one body
	Vents    *KitVents    `json:"vents"`    // null: none are made
	Takes    Takes        `json:"takes"`
}

// KitPart is one of them, printed solid.
type KitPart struct {
	Name  string `json:"name"`
	Count int    `json:"count"`
	Mass  Number `json:"mass_g"` // of one
	Hours Number `json:"hours"`  // of one
}

// KitFitting is something to buy; a length or a mass of 0 is none, or not known.
type KitFitting struct {
	Name   string `json:"name"`
	Count  int    `json:"count"`
	Length Number `json:"length_m"`
	Mass   Number `json:"mass_g"`
}

// KitVents is what the vents of one body come to.
type KitVents struct {
	Thread     string  `json:"thread"`
	Count      int     `json:"count"`
	Bore       Number  `json:"bore_mm"`
	Area       Number  `json:"area_cm2"`
	Q          Number  `json:"q"`
	Reached    bool    `json:"reached"` // the design's target
	Resistance Number  `json:"pa_s_m3"`
	AirMass    Number  `json:"air_kg_m4"`
	Under      Number  `json:"air_under_stand_kg_m4"`
	Gap        *Number `json:"gap_over_area"` // null: no stand
	Fill       Number  `json:"fill_g"`        // of one
	LeastFill  Number  `json:"least_fill_g"`
	MostFill   Number  `json:"most_fill_g"`
}

// OfKit returns the document of a kit.
func OfKit(files Written, a *layout.Array, m kit.Made, b bill.Bill) Kit {
	out := Kit{Written: files, Parts: []KitPart{}, Fittings: []KitFitting{}, Takes: OfTakes(b)}
	for _, p := range m.Parts {
		volume := p.Mesh.Volume()
		out.Parts = append(out.Parts, KitPart{p.Name, p.Count, To(1, 1000*volume*a.Print.Density), To(2, volume/a.Print.Flow/3600)})
	}
	for _, f := range m.Fittings {
		out.Fittings = append(out.Fittings, KitFitting{string(f.Bought), f.Count, To(3, f.Length), To(2, 1000*f.Mass)})
	}
	if v := m.Vents; v.Count > 0 {
		likely, least, most := v.Grams()
		out.Vents = &KitVents{Thread: v.Thread(), Count: v.Count, Bore: To(2, 1e3*v.Bore), Area: To(2, 1e4*v.Area()), Q: To(4, v.Box.Q), Reached: v.Reached,
			Resistance: To(0, v.Box.Resistance), AirMass: To(3, v.Box.Mass), Under: To(3, v.Under),
			Fill: To(2, 1e3*likely), LeastFill: To(2, 1e3*least), MostFill: To(2, 1e3*most)}
		if a.Body.IsCut && a.Stand > 0 {
			out.Vents.Gap = some(To(2, v.Gap))
		}
	}
	return out
}
