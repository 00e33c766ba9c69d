package layout

import (
	"fmt"
	"math"

	"pappus/layout/advice"
	"pappus/layout/body"
	"pappus/layout/design"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// A printed shell is as true as this: 0.5 mm, or 0.5 percent where that is more (common
// practice for filament printers without tuning, from memory). A point nearer to the
// body's surface is on it.
const (
	printTolerance      = 0.5 * mm
	printToleranceShare = 0.005 // of the body's radius
)

// Seat returns where the shell's seat for a mount is: on the body, in the direction that
// the mount's point has from its centre. For mounts on the body it is the point itself;
// points of a list may be off it.
func (a *Array) Seat(m Mount) r3.Vec {
	if m.Face < 0 {
		if a.Body.IsBall() {
			return r3.Scale(a.Body.Radius/r3.Norm(m.Point), m.Point)
		}
		return m.Point
	}
	n := a.Body.Normal(m.Face)
	distance := r3.Dot(n, a.Body.Vertices[a.Body.Faces[m.Face].Corners[0]])
	if along := r3.Dot(n, m.Point); along > 0 {
		return r3.Scale(distance/along, m.Point)
	}
	return m.Point
}

// off is how far points are off a body.
type off struct {
	away []float64 // m along the normal there, above 0 outside
	best float64   // m, the radius of the like body that fits the points best
	left []float64 // m, what away would be with it
}

// offsets measures points against a whole body. A like body, s times as large, has its
// surface where n.p = s d, with n and d the normal and distance of the face that p is
// towards, for a ball p's own direction and the radius; so s = sum(d n.p) / sum(d d) has
// the least squares of what is left.
func offsets(b *body.Body, m []Mount) off {
	ps := facePlanes(b)
	o := off{away: make([]float64, len(m)), left: make([]float64, len(m))}
	distance, along := make([]float64, len(m)), make([]float64, len(m))
	above, below := 0.0, 0.0
	for i := range m {
		distance[i], along[i] = b.Radius, r3.Norm(m[i].Point)
		if !b.IsBall() {
			f := ps[ps.towards(m[i].Point)]
			distance[i], along[i] = f.distance, r3.Dot(f.normal, m[i].Point)
		}
		o.away[i] = along[i] - distance[i]
		above, below = above+distance[i]*along[i], below+distance[i]*distance[i]
	}
	factor := above / below
	o.best = factor * b.Radius
	for i := range m {
		o.left[i] = along[i] - factor*distance[i]
	}
	return o
}

// side says on which side of the surface something is.
func side(away float64) string {
	if away < 0 {
		return "inside"
	}
	return "outside"
}

// worst returns where a distance is largest.
func worst(away []float64) int {
	at := 0
	for i := range away {
		if math.Abs(away[i]) > math.Abs(away[at]) {
			at = i
		}
	}
	return at
}

// offBody tells of points of a list that are off the body by more than a print is.
func offBody(d *design.Design, whole *body.Body, a *Array) []advice.Finding {
	if d.Mounts.On != "list" {
		return nil
	}
	tolerance := max(printTolerance, printToleranceShare*whole.Radius)
	o := offsets(whole, a.Mounts)
	n := 0
	for _, v := range o.away {
		if math.Abs(v) > tolerance {
			n++
		}
	}
	if n == 0 {
		return nil
	}
	at, still := worst(o.away), worst(o.left)
	size := fmt.Sprintf("radius_mm = %.1f", o.best/mm)
	if d.Body.Shape == "prism" || d.Body.Shape == "antiprism" {
		size += fmt.Sprintf(" and height_mm = %.1f", d.Number("body.height_mm")*o.best/whole.Radius)
	}
	cure := fmt.Sprintf("set %s, which fits best and leaves mount %d %.1f mm off, or correct the list", size, a.Mounts[still].ID, math.Abs(o.left[still])/mm)
	if math.Abs(o.left[still]) > tolerance {
		cure = fmt.Sprintf("correct the list: no radius fits all its points; the best, %s, leaves mount %d %.1f mm off", size, a.Mounts[still].ID, math.Abs(o.left[still])/mm)
	}
	return []advice.Finding{{Code: "list_off_body", Rank: advice.Misfit,
		What: prose.Sprintf("%s of %d in %s off the body by more than a print's %.2g mm; mount %d most, %.1f mm %s, where the shell's seat stays on the body",
			prose.Count(n, "point", "points"), len(a.Mounts), d.Mounts.List, tolerance/mm, a.Mounts[at].ID, math.Abs(o.away[at])/mm, side(o.away[at])),
		Cure: cure}}
}
