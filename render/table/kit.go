package table

import (
	"fmt"
	"io"
	"strings"

	"pappus/layout"
	"pappus/layout/kit"
	"pappus/render/words"
)

// KitScreen writes for people which parts there are to print, on which plates, and what they take.
// volt is the RMS voltage over each driver; more is said after that, in paragraphs.
func KitScreen(w io.Writer, a *layout.Array, m kit.Made, volt float64, more ...string) error {
	s := &screen{}
	on := make([][]int, len(m.Parts))
	for _, at := range m.Spots {
		if n := len(on[at.Print]); n == 0 || on[at.Print][n-1] != at.Plate+1 {
			on[at.Print] = append(on[at.Print], at.Plate+1)
		}
	}
	row := s.list("part            count  plate      size, mm             g    hours", "%-16s %4d  %-9s  %-19s %4.0f %8.2f%s")
	for i, p := range m.Parts {
		size, volume := m.Prints[i].Size, p.Mesh.Volume()
		plate, missing := runs(on[i]), ""
		if plate == "" {
			plate = "none"
		}
		if len(p.Unmarked) > 0 {
			missing = "  no room for " + strings.Join(p.Unmarked, ", ")
		}
		row(p.Name, p.Count, plate, fmt.Sprintf("%.0f by %.0f by %.0f", 1e3*size.X, 1e3*size.Y, 1e3*size.Z), 1e3*volume*a.Print.Density, volume/a.Print.Flow/3600, missing)
	}
	s.note("  grams and hours of one; a part on no plate is larger than the bed")
	for _, text := range words.KitSentences(a, m, volt, more...) {
		s.say(text)
	}
	return s.to(w)
}
