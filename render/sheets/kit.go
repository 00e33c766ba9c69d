package sheets

import (
	"context"
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"sync/atomic"

	"pappus/layout"
	"pappus/layout/kit"
	"pappus/layout/poly"
	"pappus/layout/prose"
	"pappus/layout/shell"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/bill"
	"pappus/timing/cores"
)

// Kit is what is printed to put the whole together.
type Kit struct{ kit.Made }

// NewKit makes the parts of a shell's meshes, which a cable of so many cores leaves, and lays
// them on plates. made, which may be nil, is told how many of how many are made, by several at once.
// The error is that of ctx, which is looked at between parts, or wraps kit.ErrPart where one cannot
// be made.
func NewKit(ctx context.Context, a *layout.Array, plan shell.Plan, meshes []poly.Mesh, wires int, made func(n, of int)) (Kit, error) {
	work, err := kit.Plan(a, plan, meshes, wires)
	if err != nil {
		return Kit{}, fmt.Errorf("%w: %w", kit.ErrPart, err)
	}
	jobs := work.Jobs
	k := Kit{kit.Made{Parts: make([]kit.Part, len(jobs)), Prints: make([]kit.Print, len(jobs)), Beside: work.Beside}}
	errs := make([]error, len(jobs))
	var ready atomic.Int64
	cores.Each(len(jobs), func(_, i int) {
		if errs[i] = ctx.Err(); errs[i] != nil {
			return
		}
		if k.Parts[i], errs[i] = jobs[i](); errs[i] == nil {
			k.Prints[i] = kit.Lay(k.Parts[i], a.Print.Bed)
		}
		if n := int(ready.Add(1)); made != nil {
			made(n, len(jobs))
		}
	})
	counts := make([]int, len(jobs))
	for i, err := range errs {
		if err != nil {
			return Kit{}, err
		}
		counts[i] = k.Parts[i].Count
	}
	k.Spots = kit.Plates(k.Prints, counts, a.Print.Bed)
	return k, nil
}

// Files are the kit's book, where more is said in paragraphs, the parts as STL, as they are printed, the plates as 3MF, and the table of all.
func (k Kit) Files(p *timing.Plan, b bill.Bill, more ...string) []File {
	a := p.Array
	out := []File{{Name: "kit.csv", Write: func(w io.Writer) error { return k.table(w, a) }},
		{Name: "kit-parts.csv", Write: func(w io.Writer) error { return k.bill(p, b).write(w) }},
		{Name: "kit.pdf", Write: func(w io.Writer) error { return WritePDF(w, a.Name, k.Book(p, b, more...)...) }}}
	out = append(out, File{Name: "assembly.svg", Write: func(w io.Writer) error { return k.assembly(w, a) }})
	for i, p := range k.Parts {
		out = append(out, File{Name: "kit-" + p.Name + ".stl", Write: func(w io.Writer) error {
			return poly.WriteSTL(w, k.Prints[i].Mesh, p.Name)
		}})
	}
	for plate, items := range k.plates() {
		name := fmt.Sprintf("kit-plate-%d.3mf", plate+1)
		out = append(out, File{Name: name, Write: func(w io.Writer) error {
			return write3MF(w, fmt.Sprintf("%s, plate %d", a.Name, plate+1), items)
		}})
	}
	return out
}

// bill is what building takes with the kit: in place of parts.csv, whose shell is the plain one.
func (k Kit) bill(p *timing.Plan, b bill.Bill) table {
	t := table{title: "Bill", columns: slices.Clone(billColumns)}
	t.columns[0].wide, t.columns[len(t.columns)-1].wide = 42, 39
	for _, it := range b.Items {
		name, note := partName(p, it), partNote(p, Options{}, it)
		switch it.Kind {
		case bill.Printed:
			name, note = k.Parts[it.Index].Name, ""
			if it.Index == 0 {
				note = "printed solid, as all prints here: infill, supports and brim are not in it"
			}
		case bill.Fitting:
			f := k.Fittings[it.Index]
			name, note = string(f.Bought), fittingNotes[f.Bought]
			if f.IsGland() {
				note = words.CableThrough(k.Made)
			}
		}
		t.rows = append(t.rows, partRow(it, name, note))
		if it.Kind == bill.Driver {
			t.rows = append(t.rows, k.uncounted(p.Array)...)
		}
	}
	t.rows = append(t.rows, sumRow(b))
	return t
}

// uncounted are parts that neither the design nor the kit counts.
func (k Kit) uncounted(a *layout.Array) [][]string {
	rows := uncounted(a, false)
	if slices.ContainsFunc(k.Fittings, func(f kit.Fitting) bool { return f.Bought == kit.DriverScrew }) {
		rows = slices.DeleteFunc(rows, func(r []string) bool { return r[0] == "screw" })
	}
	return rows
}

// fittingNotes say what fittings are for.
var fittingNotes = map[kit.Bought]string{
	kit.FloorScrew:  "the floor to its posts from below, feet from above",
	kit.LapScrew:    "from inside, holds a lap while the glue sets",
	kit.StripScrew:  "from above, parts of the floor to one another",
	kit.FlangeBolt:  "across flanges",
	kit.DriverScrew: "of the design's screw_mm, self-tapping, as long as flange and wall",
	kit.Dowel:       "pieces of 8 mm, to keep segments in place",
	kit.Glue:        "epoxy in the laps' grooves, or a seal",
	kit.Foam:        "soft, closed-cell, on the ledge: seals the floor",
	kit.Filling:     "cushion fibre for the vents' cartridges, to begin with; weigh it",
}

// plates returns what stands on each plate.
func (k Kit) plates() (out [][]standing) {
	for _, s := range k.Spots {
		for s.Plate >= len(out) {
			out = append(out, nil)
		}
		out[s.Plate] = append(out[s.Plate], standing{k.Parts[s.Print].Name, k.Prints[s.Print].Mesh, s.X, s.Y})
	}
	return out
}

// table writes one row for each part: where it is printed, its size as it lies there, what it
// takes printed solid, from where a segment goes on, and what there was no room to mark.
func (k Kit) table(w io.Writer, a *layout.Array) error {
	out := csv.NewWriter(w)
	rows := [][]string{{"file", "count", "plate", "x_mm", "y_mm", "z_mm", "volume_cm3", "mass_g", "hours", "overhang_cm2", "from_azimuth_deg", "from_elevation_deg", "lean_deg", "unmarked"}}
	plate := make(map[int]int)
	for _, s := range k.Spots {
		if _, ok := plate[s.Print]; !ok {
			plate[s.Print] = s.Plate + 1
		}
	}
	for i, p := range k.Parts {
		volume, size := p.Mesh.Volume(), k.Prints[i].Size
		on := ""
		if n, ok := plate[i]; ok {
			on = strconv.Itoa(n)
		}
		missing := ""
		for j, m := range p.Unmarked {
			if j > 0 {
				missing += " "
			}
			missing += m
		}
		rows = append(rows, append([]string{"kit-" + p.Name + ".stl", strconv.Itoa(p.Count), on,
			prose.Fixed(1e3*size.X, 1), prose.Fixed(1e3*size.Y, 1), prose.Fixed(1e3*size.Z, 1),
			prose.Fixed(1e6*volume, 2), prose.Fixed(1e3*volume*a.Print.Density, 1), prose.Fixed(volume/a.Print.Flow/3600, 2),
			prose.Fixed(1e4*k.Prints[i].Overhang, 1)}, append(fromOf(p), missing)...))
	}
	return out.WriteAll(rows)
}

// fromOf returns from where a segment goes on and by how much it may lean, in degrees; nothing of what
// goes on from anywhere.
func fromOf(p kit.Part) []string {
	azimuth, elevation, ok := p.From()
	if !ok {
		return []string{"", "", ""}
	}
	const degrees = 180 / math.Pi
	return []string{prose.Fixed(azimuth*degrees, 0), prose.Fixed(elevation*degrees, 0), prose.Fixed(p.Lean*degrees, 1)}
}
