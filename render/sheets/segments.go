package sheets

import (
	"math"

	"pappus/layout/printing"
	"pappus/layout/shell"

	"gonum.org/v1/gonum/spatial/r3"
)

// Cuts returns the half-spaces of each segment of a printing plan, for
// Options.Segments; nil for a shell that is printed whole.
func Cuts(p printing.Plan) [][]shell.Plane {
	if len(p.Segments) < 2 {
		return nil
	}
	out := make([][]shell.Plane, len(p.Segments))
	low, high := math.Inf(1), math.Inf(-1)
	for _, s := range p.Segments {
		low, high = min(low, s.Low), max(high, s.High)
	}
	for i, s := range p.Segments {
		if s.Low > low {
			out[i] = append(out[i], shell.Plane{Normal: r3.Vec{Z: -1}, Offset: -s.Low})
		}
		if s.High < high {
			out[i] = append(out[i], shell.Plane{Normal: r3.Vec{Z: 1}, Offset: s.High})
		}
		if s.To-s.From < 2*math.Pi-1e-9 {
			out[i] = append(out[i], side(s.From, 1), side(s.To, -1))
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
