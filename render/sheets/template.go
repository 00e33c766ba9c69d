package sheets

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"pappus/layout"
	"pappus/layout/body"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r2"
)

// Templates draws a drilling template at 1:1 for each distinct face but the
// base; where mounts sit on no face, one more of the cut-out alone. A face too
// large for A4 gets the next larger size.
func Templates(a *layout.Array) []*Sheet {
	classes := faceClasses(a)
	var sheets []*Sheet
	for i, c := range classes {
		if !c.base {
			sheets = append(sheets, template(a, c, letters(i)))
		}
	}
	var loose []int
	for i, m := range a.Own() {
		if m.Face < 0 {
			loose = append(loose, i)
		}
	}
	if loose != nil {
		sheets = append(sheets, roundTemplate(a, loose))
	}
	return sheets
}

const atScale = "1:1. Print at 100 %, not fitted to the page: the bar must measure 100 mm. "

// template draws one face as seen from outside.
func template(a *layout.Array, c faceClass, name string) *Sheet {
	f := c.faces[0]
	flat := flatten(a, f, 0, mountsOn(a)[f])
	outline := millimetres(flat.corners)
	box := bounds(outline)
	const around = 12 // for edge letters
	width, height := paper(box.Size().X+2*around+2*margin, box.Size().Y+2*around+2*margin+heading+footing)
	s := page("template-"+strings.ToLower(name), fmt.Sprintf("Drilling template %s: %s", name, prose.Count(len(c.faces), "face", "faces")),
		atScale+"Seen from outside.", width, height)
	shift := r2.Vec{X: (width - box.Max.X - box.Min.X) / 2, Y: margin + heading + around + box.Max.Y}
	place := func(p r2.Vec) r2.Vec { return r2.Vec{X: shift.X + p.X, Y: shift.Y - p.Y} }

	s.polygon(cutLine, each(outline, place)...)
	past := beyondOf(a.Body)[f]
	s.inside(a, flat, past, place)
	s.edgeLetters(a.Body, outline, past, place)
	centres := millimetres(flat.mounts)
	for i, m := range centres {
		s.cutout(a.Driver, place(m))
		if len(centres) > 1 {
			s.label(r2.Add(place(m), r2.Vec{X: 3, Y: -3}), 3, ink, centreName(i))
		}
	}
	for i, p := range outline {
		away := r2.Unit(r2.Sub(p, middleOf(outline)))
		s.label(r2.Add(place(p), r2.Vec{X: 3.5 * away.X, Y: -3.5 * away.Y}), 2.8, quiet, strconv.Itoa(i+1))
	}
	s.legend(a, c, byHand(outline, centres), height)
	return s
}

// centreName names one of several centres on a face by a small letter.
func centreName(i int) string { return strings.ToLower(letters(i)) }

// mostByHand is for how many centres on a face distances are written; more are pricked through the paper.
const mostByHand = 6

// byHand says how far centres are from three corners of a face, for marking with dividers where no paper
// is to lie on it.
func byHand(corners, centres []r2.Vec) string {
	if len(centres) == 0 || len(centres) > mostByHand {
		return ""
	}
	var all []string
	for i, m := range centres {
		var far []string
		for _, p := range corners[:3] {
			far = append(far, prose.Fixed(r2.Norm(r2.Sub(m, p)), 1))
		}
		name := "the centre"
		if len(centres) > 1 {
			name = centreName(i)
		}
		all = append(all, name+" "+strings.Join(far, ", "))
	}
	return " By hand, in mm along the face from corners 1, 2 and 3: " + strings.Join(all, "; ") + "."
}

// footing is the room for what is written below a template, in mm.
const footing = 44.0

// inside draws how far the face reaches inside of the wall, dashed.
func (s *Sheet) inside(a *layout.Array, flat flatFace, past []beyond, place func(r2.Vec) r2.Vec) {
	rest, edges := flat.corners, a.Body.Edges()
	for i, p := range flat.corners {
		in := a.Wall / math.Tan(a.Body.Dihedral(edges[past[i].edge])/2)
		if a.Body.Faces[past[i].face].Base() {
			in = 0
		}
		along := r2.Unit(r2.Sub(flat.corners[(i+1)%len(flat.corners)], p))
		rest = clipLeft(rest, r2.Add(p, r2.Scale(in, r2.Vec{X: -along.Y, Y: along.X})), along)
	}
	if len(rest) > 2 {
		s.polygon(foldLine, each(millimetres(rest), place)...)
	}
}

// clipLeft keeps what of a convex outline is left of a line.
func clipLeft(outline []r2.Vec, at, along r2.Vec) []r2.Vec {
	var kept []r2.Vec
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		hp, hq := r2.Cross(along, r2.Sub(p, at)), r2.Cross(along, r2.Sub(q, at))
		if hp >= 0 {
			kept = append(kept, p)
		}
		if hp*hq < 0 {
			kept = append(kept, r2.Add(p, r2.Scale(hp/(hp-hq), r2.Sub(q, p))))
		}
	}
	return kept
}

// edgeLetters writes the class and the length of each edge beside it.
func (s *Sheet) edgeLetters(b *body.Body, outline []r2.Vec, past []beyond, place func(r2.Vec) r2.Vec) {
	names := edgeNames(b)
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		away := r2.Unit(r2.Vec{X: q.Y - p.Y, Y: p.X - q.X})
		at := place(r2.Add(r2.Scale(0.5, r2.Add(p, q)), r2.Scale(6, away)))
		s.label(r2.Vec{X: at.X, Y: at.Y - 1.8}, 4, ink, names[past[i].edge])
		s.label(r2.Vec{X: at.X, Y: at.Y + 1.8}, 2.5, quiet, prose.Fixed(r2.Norm(r2.Sub(q, p)), 1))
	}
}

// cutout draws what a driver needs: cut-out, flange and a cross for the centre.
func (s *Sheet) cutout(d layout.Driver, at r2.Vec) {
	s.circle(flange, at, 1e3*d.FlangeRadius)
	s.circle(hole, at, 1e3*d.CutoutRadius)
	const arm = 6
	s.line(hair, r2.Vec{X: at.X - arm, Y: at.Y}, r2.Vec{X: at.X + arm, Y: at.Y})
	s.line(hair, r2.Vec{X: at.X, Y: at.Y - arm}, r2.Vec{X: at.X, Y: at.Y + arm})
}

// legend writes below a template what it is for, with the check bar.
func (s *Sheet) legend(a *layout.Array, c faceClass, byHand string, height float64) {
	y := height - margin - footing + 8
	s.checkBar(r2.Vec{X: margin, Y: y})
	words := "No mount on these faces: they stay whole."
	if c.mounts != nil {
		words = "Mounts " + numbers(a.IDs(c.mounts)) + ". " + roundText(a.Driver)
	}
	var over []int
	for _, m := range c.mounts {
		if slices.Contains(c.turned, a.Mounts[m].Face) {
			over = append(over, m)
		}
	}
	if over != nil {
		words += " Turn the template over for mounts " + numbers(a.IDs(over)) + "."
	}
	if a.Wall > 0 {
		words += fmt.Sprintf(" Dashed inside: where the face ends behind a wall of %s mm.", prose.Trimmed(1e3*a.Wall, 2))
	}
	if c.mounts != nil {
		words += byHand + drilling
	}
	s.paragraph(r2.Vec{X: margin, Y: y + 8}, 3, int((s.Width-2*margin)/1.45), ink, words)
}

const drilling = " Prick the centre through the paper. Mark the screw holes through the driver's own flange." +
	" Clamp the part and wear eye protection when you drill."

func roundText(d layout.Driver) string {
	return fmt.Sprintf("Blue: cut-out of %s mm. Dashed circle: flange of %s mm.",
		prose.Trimmed(2e3*d.CutoutRadius, 2), prose.Trimmed(2e3*d.FlangeRadius, 2))
}

// roundTemplate draws the cut-out alone, for mounts that sit on no flat face.
func roundTemplate(a *layout.Array, mounts []int) *Sheet {
	wide := 2e3 * max(a.Driver.FlangeRadius, a.Driver.CutoutRadius)
	width, height := paper(wide+2*margin+10, wide+2*margin+10+heading+footing)
	s := page("template-round", "Drilling template: "+prose.Count(len(mounts), "mount", "mounts")+" on no flat face", atScale, width, height)
	s.cutout(a.Driver, r2.Vec{X: width / 2, Y: margin + heading + (height-2*margin-heading-footing)/2})
	y := height - margin - footing + 8
	s.checkBar(r2.Vec{X: margin, Y: y})
	s.paragraph(r2.Vec{X: margin, Y: y + 8}, 3, int((width-2*margin)/1.45), ink,
		"Mounts "+numbers(a.IDs(mounts))+". "+roundText(a.Driver)+" The flange needs a flat seat."+drilling)
	return s
}

// paper returns the smallest page from A4 to A0 that holds a width and a height
// in mm, upright where both ways do (ISO 216); beyond A0 one of the size needed.
func paper(width, height float64) (float64, float64) {
	for _, p := range [][2]float64{{short, long}, {long, short}, {long, 420}, {420, long}, {420, 594}, {594, 420}, {594, 841}, {841, 594}, {841, 1189}, {1189, 841}} {
		if width <= p[0] && height <= p[1] {
			return p[0], p[1]
		}
	}
	return math.Ceil(width), math.Ceil(height)
}

func millimetres(points []r2.Vec) []r2.Vec {
	return each(points, func(p r2.Vec) r2.Vec { return r2.Scale(1e3, p) })
}

func each(points []r2.Vec, do func(r2.Vec) r2.Vec) []r2.Vec {
	out := make([]r2.Vec, len(points))
	for i, p := range points {
		out[i] = do(p)
	}
	return out
}

// bounds returns the box round points.
func bounds(points []r2.Vec) r2.Box {
	box := r2.Box{Min: points[0], Max: points[0]}
	for _, p := range points {
		box.Min = r2.Vec{X: min(box.Min.X, p.X), Y: min(box.Min.Y, p.Y)}
		box.Max = r2.Vec{X: max(box.Max.X, p.X), Y: max(box.Max.Y, p.Y)}
	}
	return box
}
