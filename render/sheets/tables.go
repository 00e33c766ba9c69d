package sheets

import (
	"encoding/csv"
	"fmt"
	"image/color"
	"io"
	"math"
	"strconv"

	"pappus/layout"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// rows is a table: the names of its columns and what stands in them.
type rows struct {
	names  []string
	values [][]string
}

// edgeRows gives one row for each class of edges.
func edgeRows(a *layout.Array) rows {
	t := rows{names: []string{"edge", "count", "length_mm", "chord_factor", "dihedral_deg", "bevel_deg", "where"}}
	if a.Body.IsBall() {
		return t
	}
	edges := a.Body.Edges()
	for _, c := range a.Body.EdgeClasses() {
		where := "wall"
		for _, e := range c.Edges {
			if a.Body.Faces[edges[e].Faces[0]].Base() || a.Body.Faces[edges[e].Faces[1]].Base() {
				where = "cut"
			}
		}
		deg := c.Dihedral * 180 / math.Pi
		t.values = append(t.values, []string{c.Name, strconv.Itoa(len(c.Edges)), fixed(1e3*c.Length, 2),
			fixed(c.Chord, 6), fixed(deg, 3), fixed(90-deg/2, 3), where})
	}
	return t
}

// faceRows gives one row for each class of faces.
func faceRows(a *layout.Array) rows {
	t := rows{names: []string{"template", "count", "sides", "area_cm2", "largest_circle_mm", "kind", "mounts"}}
	for i, c := range faceClasses(a) {
		f := c.faces[0]
		kind := "wall"
		if c.base {
			kind = "base"
		}
		t.values = append(t.values, []string{letters(i), strconv.Itoa(len(c.faces)), strconv.Itoa(len(a.Body.Faces[f].Corners)),
			fixed(1e4*areaOf(a, f), 2), fixed(2e3*a.Body.InscribedRadius(f), 2), kind, numbers(ids(a, c.mounts))})
	}
	return t
}

// areaOf returns a face's area in m2.
func areaOf(a *layout.Array, face int) float64 {
	c := a.Body.Faces[face].Corners
	sum := 0.0
	for i := 2; i < len(c); i++ {
		sum += r3.Norm(r3.Triangle{a.Body.Vertices[c[0]], a.Body.Vertices[c[i-1]], a.Body.Vertices[c[i]]}.Normal()) / 2
	}
	return sum
}

func (t rows) write(w io.Writer) error {
	out := csv.NewWriter(w)
	if err := out.WriteAll(append([][]string{t.names}, t.values...)); err != nil {
		return err
	}
	return nil
}

// Edges writes one row for each class of edges as CSV: how many, their length,
// their length over the radius of the body, the angle inside the body between
// their faces, and the angle to bevel each face by where panels are mitred.
func Edges(w io.Writer, a *layout.Array) error { return edgeRows(a).write(w) }

// Faces writes one row for each class of faces as CSV.
func Faces(w io.Writer, a *layout.Array) error { return faceRows(a).write(w) }

// Parts writes the bill of parts as CSV: what there is of each, its length in m, volume in
// cm3 and mass in g where they are known.
func Parts(w io.Writer, p *timing.Plan, o Options) error { return partRows(p, o).write(w) }

// block is a table as it stands on a sheet.
type block struct {
	title   string
	names   []string
	widths  []float64 // mm
	numeric []bool
	values  [][]string
}

// Tables draws edges, faces, parts and the body's measures on as many pages as
// they take.
func Tables(plan *timing.Plan, o Options) []*Sheet {
	a := plan.Array
	e, f, p := edgeRows(a), faceRows(a), partRows(plan, o)
	n, w := true, false
	blocks := []block{
		{"The body", []string{"", ""}, []float64{70, 120}, []bool{w, w}, bodyRows(a)},
		{"Edges by class", []string{"edge", "count", "length, mm", "length / radius", "between faces, °", "bevel, °", "where"},
			[]float64{16, 18, 28, 32, 34, 26, 20}, []bool{w, n, n, n, n, n, w}, e.values},
		{"Faces by class", []string{"template", "count", "sides", "area, cm²", "largest circle, mm", "kind", "mounts"},
			[]float64{20, 16, 16, 24, 36, 16, 62}, []bool{w, n, n, n, n, w, w}, f.values},
		{"Bill of parts", []string{"part", "count", "length, m", "volume, cm³", "mass, g", "note"},
			[]float64{34, 16, 22, 26, 20, 72}, []bool{w, n, n, n, n, w}, p.values},
	}
	t := tabler{array: a}
	for _, b := range blocks {
		if len(b.values) > 0 {
			t.block(b)
		}
	}
	return t.sheets
}

func bodyRows(a *layout.Array) [][]string {
	b := a.Body
	out := [][]string{
		{"shape", b.Name},
		{"radius of the uncut body", trimmed(1e3*b.Radius, 2) + " mm"},
	}
	if b.IsCut {
		out = append(out, []string{"cut at a height of", trimmed(1e3*b.Cut, 2) + " mm over the centre"})
	}
	if !b.IsBall() {
		out = append(out, []string{"vertices, edges, faces", fmt.Sprintf("%d, %d, %d", len(b.Vertices), len(b.Edges()), len(b.Faces))})
	}
	ball := "radius " + fixed(1e3*b.BallRadius, 2) + " mm"
	if up := b.BallCentre.Z; up != 0 {
		ball += ", its centre " + trimmed(1e3*up, 1) + " mm over the body's"
	}
	return append(out,
		[]string{"surface, base included", fixed(1e4*b.Area(), 1) + " cm²"},
		[]string{"volume enclosed, walls included", fixed(1e3*b.Volume(), 3) + " litres"},
		[]string{"ball that the plan takes for it", ball})
}

// tabler fills pages with tables.
type tabler struct {
	array  *layout.Array
	sheets []*Sheet
	y      float64
}

const rowTall = 5.2

// room makes sure that so much height is left, on a new page where it is not.
func (t *tabler) room(height float64) *Sheet {
	if t.sheets == nil || t.y+height > long-margin {
		name := fmt.Sprintf("tables-%d", len(t.sheets)+1)
		t.sheets = append(t.sheets, page(name, "Tables: "+cutShort(t.array.Name, 60), "Edges, faces and parts.", short, long))
		t.y = margin + heading
	}
	return t.sheets[len(t.sheets)-1]
}

func (t *tabler) block(b block) {
	s := t.room(6 + 4*rowTall)
	t.y += 6
	s.text(r2.Vec{X: margin, Y: t.y}, 4, left, ink, b.title)
	t.y += 2
	if b.names[0] != "" {
		t.row(s, b, b.names, quiet)
	}
	for _, v := range b.values {
		// The last column wraps.
		last := len(v) - 1
		lines := wrap(v[last], int(b.widths[last]/1.55))
		s = t.room(rowTall * float64(max(1, len(lines))))
		for i := range max(1, len(lines)) {
			cells := make([]string, len(v))
			if i == 0 {
				copy(cells, v)
			}
			if i < len(lines) {
				cells[last] = lines[i]
			}
			t.row(s, b, cells, ink)
		}
		s.line(thin, r2.Vec{X: margin, Y: t.y + 1.6}, r2.Vec{X: short - margin, Y: t.y + 1.6})
	}
	t.y += 4
}

func (t *tabler) row(s *Sheet, b block, cells []string, c color.NRGBA) {
	t.y += rowTall
	x := margin
	for i, cell := range cells {
		if b.numeric[i] {
			s.text(r2.Vec{X: x + b.widths[i] - 5, Y: t.y}, 3, right, c, cell)
		} else {
			s.text(r2.Vec{X: x, Y: t.y}, 3, left, c, cell)
		}
		x += b.widths[i]
	}
}
