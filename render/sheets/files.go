package sheets

import (
	"errors"
	"fmt"
	"io"
	"math"

	"pappus/layout"
	"pappus/layout/printing"
	"pappus/layout/shell"
	"pappus/render/outdir"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// Options say what else there is to write.
type Options struct {
	// Segments are the parts that the shell is printed in; empty: it is printed whole.
	Segments []Part
	// NoShell leaves the STL out, for bodies that are built of panels or whose
	// mounts sit on no face.
	NoShell bool
	// Print is how the shell is printed, for the bill of parts; without segments it is not
	// known.
	Print printing.Plan
	// Stuffing is the mass in kg to begin with; 0: not known.
	Stuffing float64
}

// File is a file to be written.
type File = outdir.File

// Files gives all that there is to write for a plan: sheets.pdf with every sheet,
// each sheet as SVG, edges.csv, faces.csv and parts.csv, and the shell as
// shell.stl or shell-1.stl and so on. All that can go wrong with the shell does
// so here, before anything is written; those errors wrap package shell's.
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
	if o.NoShell {
		return files, nil
	}
	meshes, err := Shells(a, o.Segments)
	if err != nil {
		return nil, err
	}
	for i, m := range meshes {
		name := "shell.stl"
		if len(meshes) > 1 {
			name = fmt.Sprintf("shell-%d.stl", i+1)
		}
		files = append(files, File{Name: name, Write: func(w io.Writer) error { return shell.WriteSTL(w, m, a.Name) }})
	}
	return files, nil
}

// All draws every sheet there is for a plan: the picture, the map, tables,
// templates and the net.
func All(p *timing.Plan, o Options) []*Sheet {
	a := p.Array
	out := []*Sheet{Picture(a), Map(a)}
	out = append(out, Tables(p, o)...)
	out = append(out, Templates(a)...)
	return append(out, Net(a)...)
}

// ErrSegment tells of stepped seams that a shell cannot be parted along; the whole can be
// made all the same.
var ErrSegment = errors.New("the shell cannot be parted round segment")

// Shells makes the printed shell, whole or in segments.
func Shells(a *layout.Array, segments []Part) ([]shell.Mesh, error) {
	whole, err := shell.Make(a.Body, a.Wall, Holes(a))
	if err != nil {
		return nil, err
	}
	if len(segments) == 0 {
		return []shell.Mesh{whole}, nil
	}
	out := make([]shell.Mesh, len(segments))
	for i, s := range segments {
		if len(s.Cells) > 0 {
			if out[i], err = whole.Cells(s.Cells); err != nil {
				return nil, fmt.Errorf("%w %d: %w", ErrSegment, i+1, err)
			}
			continue
		}
		if id := crossed(a, s.Planes); id != 0 {
			return nil, fmt.Errorf("segment %d: mount %d: %w: a cut goes through it", i+1, id, shell.ErrCutout)
		}
		if out[i], err = whole.Part(s.Planes...); err != nil {
			return nil, fmt.Errorf("segment %d: %w", i+1, err)
		}
	}
	return out, nil
}

// crossed returns the number of a mount whose cut-out a side of a segment goes
// through, 0 for none.
func crossed(a *layout.Array, planes []shell.Plane) int {
	for _, m := range a.Mounts {
		seat := a.Seat(m)
		for i, p := range planes {
			across := r3.Sub(p.Normal, r3.Scale(r3.Dot(p.Normal, m.Normal), m.Normal))
			steep := r3.Norm(across)
			away := r3.Dot(p.Normal, seat) - p.Offset
			if math.Abs(away) >= a.Driver.CutoutRadius*steep {
				continue
			}
			// The middle of the chord in which the plane meets the cut-out.
			at := r3.Sub(seat, r3.Scale(away/(steep*steep), across))
			if within(at, planes[:i]) && within(at, planes[i+1:]) {
				return m.ID
			}
		}
	}
	return 0
}

func within(p r3.Vec, planes []shell.Plane) bool {
	for _, q := range planes {
		if r3.Dot(q.Normal, p) > q.Offset {
			return false
		}
	}
	return true
}

// Holes gives the cut-outs of an array's shell. One on a ball that does not look
// straight outward gets no seat, which the shell then refuses.
func Holes(a *layout.Array) []shell.Hole {
	out := make([]shell.Hole, len(a.Mounts))
	for i, m := range a.Mounts {
		h := shell.Hole{ID: m.ID, Point: a.Seat(m), Face: m.Face, Radius: a.Driver.CutoutRadius, Seat: a.Driver.FlangeRadius}
		if a.Body.IsBall() && r3.Dot(m.Normal, r3.Unit(m.Point)) < leastSquare {
			h.Seat = 0
		}
		out[i] = h
	}
	return out
}

// leastSquare is the cosine of how far a mount on a ball may lean from straight
// outward: one degree, as on faces.
const leastSquare = 0.9998
