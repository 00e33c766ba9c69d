package sheets

import (
	"math"
	"slices"

	"pappus/layout/printing"
	"pappus/layout/shell"

	"gonum.org/v1/gonum/spatial/r3"
)

// Part is what one segment of the shell is: what lies in all half-spaces, or, where there
// are any, in the cells.
type Part struct {
	Planes []shell.Plane
	Cells  []shell.Cell
}

// Cuts returns the part of each segment of a printing plan, for Options.Segments; nil for
// a shell that is printed whole.
func Cuts(p printing.Plan) []Part {
	if len(p.Segments) < 2 {
		return nil
	}
	out := make([]Part, len(p.Segments))
	if len(p.Cells) > 0 {
		for i, s := range p.Segments {
			out[i].Cells = cells(p, s)
		}
		return out
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, s := range p.Segments {
		low, high = min(low, s.Low), max(high, s.High)
	}
	for i, s := range p.Segments {
		if s.Low > low {
			out[i].Planes = append(out[i].Planes, shell.Plane{Normal: r3.Vec{Z: -1}, Offset: -s.Low})
		}
		if s.High < high {
			out[i].Planes = append(out[i].Planes, shell.Plane{Normal: r3.Vec{Z: 1}, Offset: s.High})
		}
		if s.To-s.From < 2*math.Pi-1e-9 {
			out[i].Planes = append(out[i].Planes, side(s.From, 1), side(s.To, -1))
		}
	}
	return out
}

// cells returns the cells of a segment with stepped seams.
func cells(p printing.Plan, s printing.Segment) []shell.Cell {
	out := make([]shell.Cell, len(s.Cells))
	for i, c := range s.Cells {
		for _, side := range p.Cells[c].Sides {
			out[i].Sides = append(out[i].Sides, shell.Plane{Normal: side.Normal})
			out[i].Open = append(out[i].Open, slices.Contains(s.Cells, side.Beyond))
		}
	}
	return out
}

// side returns the half-space counter-clockwise of an azimuth in rad, or
// clockwise of it for a sign of -1.
func side(azimuth, sign float64) shell.Plane {
	sin, cos := math.Sincos(azimuth)
	return shell.Plane{Normal: r3.Vec{X: sign * sin, Y: -sign * cos}}
}
