package sheets

import (
	"encoding/csv"
	"fmt"
	"image/color"
	"io"
	"math"
	"strconv"

	"pappus/layout"
	"pappus/layout/prose"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// table is what stands in a file of CSV and on a sheet.
type table struct {
	title   string
	columns []column
	rows    [][]string
}

// column is one of a table.
type column struct {
	key      string  // in a file
	head     string  // on a sheet
	wide     float64 // there, mm
	isNumber bool
}

// edgeTable has one row for each class of edges.
func edgeTable(a *layout.Array) table {
	t := table{title: "Edges by class", columns: []column{{"edge", "edge", 16, false}, {"count", "count", 18, true}, {"length_mm", "length, mm", 28, true},
		{"chord_factor", "length / radius", 32, true}, {"dihedral_deg", "between faces, °", 34, true}, {"bevel_deg", "bevel, °", 26, true}, {"where", "where", 20, false}}}
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
		t.rows = append(t.rows, []string{c.Name, strconv.Itoa(len(c.Edges)), prose.Fixed(1e3*c.Length, 2),
			prose.Fixed(c.Chord, 6), prose.Fixed(deg, 3), prose.Fixed(90-deg/2, 3), where})
	}
	return t
}

// faceTable has one row for each class of faces.
func faceTable(a *layout.Array) table {
	t := table{title: "Faces by class", columns: []column{{"template", "template", 20, false}, {"count", "count", 16, true}, {"sides", "sides", 16, true},
		{"area_cm2", "area, cm²", 24, true}, {"largest_circle_mm", "largest circle, mm", 36, true}, {"kind", "kind", 16, false}, {"mounts", "mounts", 62, false}}}
	for i, c := range faceClasses(a) {
		f := c.faces[0]
		kind := "wall"
		if c.base {
			kind = "base"
		}
		t.rows = append(t.rows, []string{letters(i), strconv.Itoa(len(c.faces)), strconv.Itoa(len(a.Body.Faces[f].Corners)),
			prose.Fixed(1e4*r3.Norm(a.Body.AreaVector(f)), 2), prose.Fixed(2e3*a.Body.InscribedRadius(f), 2), kind, numbers(a.IDs(c.mounts))})
	}
	return t
}

func (t table) write(w io.Writer) error {
	names := make([]string, len(t.columns))
	for i, c := range t.columns {
		names[i] = c.key
	}
	return csv.NewWriter(w).WriteAll(append([][]string{names}, t.rows...))
}

// Edges writes one row for each class of edges as CSV: how many, their length,
// their length over the radius of the body, the angle inside the body between
// their faces, and the angle to bevel each face by where panels are mitred.
func Edges(w io.Writer, a *layout.Array) error { return edgeTable(a).write(w) }

// Faces writes one row for each class of faces as CSV.
func Faces(w io.Writer, a *layout.Array) error { return faceTable(a).write(w) }

// Parts writes the bill of parts as CSV: what there is of each, its length in m, volume in
// cm3 and mass in g where they are known.
func Parts(w io.Writer, p *timing.Plan, o Options) error { return partTable(p, o).write(w) }

// Tables draws edges, faces, parts and the body's measures on as many pages as
// they take.
func Tables(plan *timing.Plan, o Options) []*Sheet {
	a := plan.Array
	t := tabler{name: "tables", title: "Tables: " + cutShort(a.Name, 60), below: "Edges, faces and parts."}
	for _, one := range []table{bodyTable(a), edgeTable(a), faceTable(a), partTable(plan, o)} {
		if len(one.rows) > 0 {
			t.table(one)
		}
	}
	return t.sheets
}

// bodyTable has the measures of the body; it is in no file.
func bodyTable(a *layout.Array) table {
	b := a.Body
	rows := [][]string{
		{"shape", b.Name},
		{"radius of the uncut body", prose.Trimmed(1e3*b.Radius, 2) + " mm"},
	}
	if b.IsCut {
		rows = append(rows, []string{"cut at a height of", prose.Trimmed(1e3*b.Cut, 2) + " mm over the centre"})
	}
	if !b.IsBall() {
		rows = append(rows, []string{"vertices, edges, faces", fmt.Sprintf("%d, %d, %d", len(b.Vertices), len(b.Edges()), len(b.Faces))})
	}
	ball := "radius " + prose.Fixed(1e3*b.BallRadius, 2) + " mm"
	if up := b.BallCentre.Z; up != 0 {
		ball += ", its centre " + prose.Trimmed(1e3*up, 1) + " mm over the body's"
	}
	rows = append(rows,
		[]string{"surface, base included", prose.Fixed(1e4*b.Area(), 1) + " cm²"},
		[]string{"volume enclosed, walls included", prose.Fixed(1e3*b.Volume(), 3) + " litres"},
		[]string{"ball that the plan takes for it", ball})
	return table{"The body", []column{{wide: 70}, {wide: 120}}, rows}
}

// tabler fills pages with tables.
type tabler struct {
	name, title, below string // of its pages
	sheets             []*Sheet
	y                  float64
}

const rowTall = 5.2

// room makes sure that so much height is left, on a new page where it is not.
func (t *tabler) room(height float64) *Sheet {
	if t.sheets == nil || t.y+height > long-margin {
		name := fmt.Sprintf("%s-%d", t.name, len(t.sheets)+1)
		t.sheets = append(t.sheets, page(name, t.title, t.below, short, long))
		t.y = margin + heading
	}
	return t.sheets[len(t.sheets)-1]
}

func (t *tabler) table(of table) {
	s := t.room(6 + 4*rowTall)
	t.y += 6
	s.text(r2.Vec{X: margin, Y: t.y}, 4, left, ink, of.title)
	t.y += 2
	head := func() {
		if of.columns[0].head == "" {
			return
		}
		heads := make([]string, len(of.columns))
		for i, c := range of.columns {
			heads[i] = c.head
		}
		t.row(t.sheets[len(t.sheets)-1], of.columns, heads, quiet)
	}
	head()
	last := len(of.columns) - 1
	for _, row := range of.rows {
		// The last column wraps; an empty one is a line all the same.
		lines := wrap(row[last], int(of.columns[last].wide/1.55))
		if lines == nil {
			lines = []string{""}
		}
		pages := len(t.sheets)
		if s = t.room(rowTall * float64(len(lines))); len(t.sheets) > pages {
			head()
		}
		for i, line := range lines {
			cells := make([]string, len(row))
			if i == 0 {
				copy(cells, row)
			}
			cells[last] = line
			t.row(s, of.columns, cells, ink)
		}
		s.line(thin, r2.Vec{X: margin, Y: t.y + 1.6}, r2.Vec{X: short - margin, Y: t.y + 1.6})
	}
	t.y += 4
}

func (t *tabler) row(s *Sheet, columns []column, cells []string, c color.NRGBA) {
	t.y += rowTall
	x := margin
	for i, cell := range cells {
		at, anchor := x, left
		if columns[i].isNumber {
			at, anchor = x+columns[i].wide-5, right
		}
		s.text(r2.Vec{X: at, Y: t.y}, 3, anchor, c, cell)
		x += columns[i].wide
	}
}
