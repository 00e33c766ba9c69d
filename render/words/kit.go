package words

import (
	"pappus/layout"
	"pappus/layout/kit"
	"pappus/layout/prose"
)

// Kit says what the parts take together, printed solid at the printer's flow.
func Kit(a *layout.Array, parts []kit.Part, spots []kit.Spot) string {
	volume, n, plates := 0.0, 0, 0
	for _, p := range parts {
		volume += float64(p.Count) * p.Mesh.Volume()
		n += p.Count
	}
	for _, s := range spots {
		plates = max(plates, s.Plate+1)
	}
	return prose.Sprintf("%s on %s: %.0f g of material, %s of printing, all solid: infill, supports and brim are not in it. Segments are marked inside with their number, their neighbours', and which way is up; supports go where kit.csv has overhang. Print the seat first and try a driver in it, and two parts that meet: where they bind or rattle, change kit.gap_mm (%.2g mm).",
		prose.Count(n, "part", "parts"), prose.Count(plates, "plate", "plates"), 1e3*volume*a.Print.Density, lasting(volume/a.Print.Flow/3600), 1000*a.Kit.Gap)
}

// Small is the caution for what is printed.
const Small = "Small parts are not for children. A printer's nozzle and bed burn; leave no printer alone with a job for hours that nobody looks after."
