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
	Meetings []KitMeeting `json:"meetings"` // of segments; none where the shell is in one
	Vents    *KitVents    `json:"vents"`    // null: none are made
	Takes    Takes        `json:"takes"`
}

// KitPart is one of them, printed solid.
type KitPart struct {
	Name  string  `json:"name"`
	Count int     `json:"count"`
	Mass  Number  `json:"mass_g"` // of one
	Hours Number  `json:"hours"`  // of one
	Off   *KitOff `json:"off"`    // how a segment comes off those of lower numbers; null: nothing keeps it, or it is no segment
}

// KitOff is how a segment comes off those that were there before it, and from where it goes onto them.
type KitOff struct {
	Azimuth   Number `json:"azimuth_deg"` // from the front to the left
	Elevation Number `json:"elevation_deg"`
	Lean      Number `json:"lean_deg"` // by which it may go otherwise; 0: it slides along an edge
}

// KitMeeting is where two segments meet, and what holds them there.
type KitMeeting struct {
	Segments  [2]int `json:"segments"`  // their numbers
	Long      Number `json:"long_mm"`   // of the seam
	Lapped    Number `json:"lapped_mm"` // of it that have a tongue under them; of a flange 0
	Fasteners int    `json:"fasteners"` // screws and dowels
	Bare      bool   `json:"bare"`      // long enough for a screw, and drivers leave no room for one
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
	out := Kit{Written: files, Parts: []KitPart{}, Fittings: []KitFitting{}, Meetings: each(m.Meetings, ofMeeting), Takes: OfTakes(b)}
	for _, p := range m.Parts {
		volume := p.Mesh.Volume()
		out.Parts = append(out.Parts, KitPart{p.Name, p.Count, To(1, 1000*volume*a.Print.Density), To(2, volume/a.Print.Flow/3600), ofOff(p)})
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

func ofOff(p kit.Part) *KitOff {
	azimuth, elevation, ok := p.From()
	if !ok {
		return nil
	}
	return &KitOff{To(1, azimuth*degrees), To(1, elevation*degrees), To(1, p.Lean*degrees)}
}

func ofMeeting(j kit.Meeting) KitMeeting {
	return KitMeeting{[2]int{j.A, j.B}, To(1, 1e3*j.Long), To(1, 1e3*j.Lapped), j.Fasteners, j.Bare()}
}
