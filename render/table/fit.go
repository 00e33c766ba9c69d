package table

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"pappus/layout"
	"pappus/layout/prose"
)

// Fit writes one row for each mount: every clearance in mm, negative where
// something is in the way, empty where the driver's outline does not tell.
func Fit(w io.Writer, a *layout.Array, f layout.Fits) error {
	rows := [][]string{{"driver", "fits", "flange_to_edge_mm", "cutout_to_inner_edge_mm", "flange_gap_mm", "gap_to",
		"basket_gap_mm", "basket_gap_to", "basket_to_wall_mm", "terminal_gap_mm", "least_screw_radius_mm", "screw_to_rim_mm", "screw_to_edge_mm"}}
	for i, r := range f.Reports {
		rows = append(rows, []string{
			strconv.Itoa(a.Mounts[i].ID), strconv.FormatBool(r.Fits(a.Limits)),
			clearance(r.Flange), clearance(r.Cutout), clearance(r.Gap), neighbour(a, r.GapTo),
			clearance(r.Inside), neighbour(a, r.InsideTo), clearance(r.Wall), clearance(r.Terminal),
			clearance(r.ScrewRing), clearance(r.ScrewFlange), clearance(r.ScrewEdge),
		})
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// clearance writes a length in mm; nothing for what is not known or not there.
func clearance(m float64) string {
	if math.IsInf(m, 0) {
		return ""
	}
	return fixed(1000*m, 2)
}

// neighbour writes the number of a mount by its index.
func neighbour(a *layout.Array, index int) string {
	if index < 0 {
		return ""
	}
	return strconv.Itoa(a.Mounts[index].ID)
}

// FitWords says in plain words whether the drivers fit, and where all do which sizes
// just would. What makes the others fit the finding says, which stands on the screen
// before.
func FitWords(a *layout.Array, f layout.Fits) string {
	var bad []string
	for i, r := range f.Reports {
		if !r.Fits(a.Limits) {
			bad = append(bad, strconv.Itoa(a.Mounts[i].ID))
		}
	}
	switch {
	case len(bad) > 8:
		return fmt.Sprintf("%d of %s not fit: %s and others; see fit.csv.", len(bad), prose.Count(len(f.Reports), "driver does", "drivers do"), strings.Join(bad[:8], ", "))
	case len(bad) > 0:
		return fmt.Sprintf("%d of %s not fit: %s.", len(bad), prose.Count(len(f.Reports), "driver does", "drivers do"), strings.Join(bad, ", "))
	}
	b := &strings.Builder{}
	fmt.Fprintf(b, "%s.", allFit(len(f.Reports)))
	if f.Largest.FlangeRadius > 0 {
		fmt.Fprintf(b, " The largest of this driver's proportions has a flange of %.1f mm", 2000*f.Largest.FlangeRadius)
		if f.Smallest > 0 {
			fmt.Fprintf(b, "; the smallest body that takes it as it is has a radius of %.0f mm", 1000*f.Smallest)
		}
		b.WriteString(".")
	}
	return wrap(b.String())
}

// allFit says that all of some drivers fit.
func allFit(n int) string {
	if n == 1 {
		return "The driver fits"
	}
	return fmt.Sprintf("All %d drivers fit", n)
}
