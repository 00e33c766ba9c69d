package document

import (
	"pappus/layout"
	"pappus/layout/kit"
)

// Kit is the parts that are printed and go together.
type Kit struct {
	Written
	Parts []KitPart `json:"parts"`
}

// KitPart is one of them, printed solid.
type KitPart struct {
	Name  string `json:"name"`
	Count int    `json:"count"`
	Mass  Number `json:"mass_g"` // of one
	Hours Number `json:"hours"`  // of one
}

// OfKit returns the document of a kit's parts.
func OfKit(files Written, a *layout.Array, parts []kit.Part) Kit {
	out := Kit{Written: files, Parts: []KitPart{}}
	for _, p := range parts {
		volume := p.Mesh.Volume()
		out.Parts = append(out.Parts, KitPart{p.Name, p.Count, To(1, 1000*volume*a.Print.Density), To(2, volume/a.Print.Flow/3600)})
	}
	return out
}
