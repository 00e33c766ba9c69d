package sheets

import (
	"fmt"
	"io"
	"strconv"

	"pappus/layout"
	"pappus/layout/poly"
	"pappus/layout/shell"
	"pappus/render/outdir"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r2"
)

// Options say what else there is to write.
type Options struct {
	// NoShell leaves the STL out, for bodies that are built of panels or whose
	// mounts sit on no face.
	NoShell bool
	// Shell is the whole shell, where it is made already; without triangles it is made here.
	Shell poly.Mesh
	// Print is how the shell is printed; without segments it is whole, and what it weighs
	// is not known.
	Print shell.Plan
	// Stuffing is the mass in kg to begin with; 0: not known.
	Stuffing float64
	// Notes are what to know first, in paragraphs, on a page of their own; none: there is none.
	Notes []string
}

// File is a file to be written.
type File = outdir.File

// Files gives all that there is to write for a plan: sheets.pdf with every sheet,
// each sheet as SVG, edges.csv, faces.csv and parts.csv, and the shell as
// shell.stl or shell-1.stl and so on. All that can go wrong with the shell does so here, before
// anything is written; those errors wrap package shell's.
func Files(p *timing.Plan, o Options) ([]File, error) {
	a := p.Array
	sheets := All(p, o)
	files := []File{
		{Name: "sheets.pdf", Write: func(w io.Writer) error { return WritePDF(w, a.Name, sheets...) }},
		{Name: "edges.csv", Write: func(w io.Writer) error { return Edges(w, a) }},
		{Name: "faces.csv", Write: func(w io.Writer) error { return Faces(w, a) }},
		{Name: "parts.csv", Write: func(w io.Writer) error { return Parts(w, p, o) }},
	}
	for _, s := range sheets {
		files = append(files, File{Name: s.Name + ".svg", Write: s.WriteSVG})
	}
	if a.Body.IsBall() {
		files = append(files, File{Name: "marks.csv", Write: func(w io.Writer) error { return marks(w, a) }})
	}
	if o.NoShell {
		return files, nil
	}
	whole, err := o.Shell, error(nil)
	if len(whole.Triangles) == 0 {
		whole, err = shell.Make(a.Body, a.Wall, a.Holes())
	}
	if err != nil {
		return nil, err
	}
	meshes, err := o.Print.Parts(whole)
	if err != nil {
		return nil, err
	}
	for i, m := range meshes {
		name := "shell.stl"
		if len(meshes) > 1 {
			name = fmt.Sprintf("shell-%d.stl", i+1)
		}
		files = append(files, File{Name: name, Write: func(w io.Writer) error { return poly.WriteSTL(w, m, a.Name) }})
	}
	return files, nil
}

// All draws every sheet there is for a plan: the picture, the map, tables,
// templates and the net.
func All(p *timing.Plan, o Options) []*Sheet {
	a := p.Array
	out := []*Sheet{Picture(a), Map(a)}
	if len(o.Notes) > 0 {
		out = append(out, notes(a, o.Notes))
	}
	out = append(out, Tables(p, o)...)
	out = append(out, Templates(a)...)
	out = append(out, Strips(a)...)
	return append(out, Net(a)...)
}

// notes draws what to know first.
func notes(a *layout.Array, said []string) *Sheet {
	return saying("notes", "What to know first: "+cutShort(a.Name, 50), "The order of work is in wiring.pdf, and for the printed parts in kit.pdf, which pappus kit writes.", said)
}

// saying is a page of paragraphs.
func saying(name, title, below string, said []string) *Sheet {
	s := page(name, title, below, short, long)
	y := margin + heading + 2
	for _, text := range said {
		y = s.paragraph(r2.Vec{X: margin, Y: y}, 3.1, 116, ink, text) + 2.5
	}
	return s
}

// steps writes numbered steps from the head of a page down, and returns the height in mm below them.
func (s *Sheet) steps(all []string) (y float64) {
	y = margin + heading + 2
	for i, step := range all {
		s.text(r2.Vec{X: margin, Y: y}, 3.4, left, blue, strconv.Itoa(i+1))
		y = s.paragraph(r2.Vec{X: margin + 8, Y: y}, 3.1, 112, ink, step) + 1.6
	}
	return y
}
