package sheets

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"pappus/layout"
	"pappus/layout/body"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// view is an orthographic look at the body.
type view struct {
	towards, right, up r3.Vec  // unit vectors; towards points at the eye
	centre             r2.Vec  // on the sheet, mm
	at                 r2.Vec  // what is drawn there, m along right and up
	scale              float64 // mm for each m
}

// look returns the directions of a view from a side, up being as far up as can be.
func look(towards, up r3.Vec) view {
	right := r3.Unit(r3.Cross(up, towards))
	return view{towards: towards, right: right, up: r3.Cross(towards, right)}
}

// flat returns a point in m along right and up.
func (v view) flat(p r3.Vec) r2.Vec { return r2.Vec{X: r3.Dot(p, v.right), Y: r3.Dot(p, v.up)} }

func (v view) on(p r3.Vec) r2.Vec {
	f := r2.Sub(v.flat(p), v.at)
	return r2.Vec{X: v.centre.X + v.scale*f.X, Y: v.centre.Y - v.scale*f.Y}
}

func (v view) all(points []r3.Vec) []r2.Vec {
	out := make([]r2.Vec, len(points))
	for i, p := range points {
		out[i] = v.on(p)
	}
	return out
}

// fit centres what a view has of the body, flanges included, in a box on the
// sheet, no larger than a scale in mm for each m.
func (v view) fit(a *layout.Array, box r2.Box, most float64) view {
	var points []r2.Vec
	for _, p := range outlinePoints(a.Body, v.towards) {
		points = append(points, v.flat(p))
	}
	for _, m := range a.Own() {
		for _, p := range disc(m, a.Driver.FlangeRadius) {
			points = append(points, v.flat(p))
		}
	}
	seen := bounds(points)
	v.at, v.centre = seen.Center(), box.Center()
	v.scale = min(most, box.Size().X/seen.Size().X, box.Size().Y/seen.Size().Y)
	return v
}

// outlinePoints returns points whose hull is the outline of a body seen from a
// side.
func outlinePoints(b *body.Body, towards r3.Vec) []r3.Vec {
	if !b.IsBall() {
		return b.Vertices
	}
	right := r3.Unit(r3.Cross(towards, r3.Vec{X: 0.3, Y: 0.5, Z: 0.7}))
	up := r3.Cross(towards, right)
	var out []r3.Vec
	for _, p := range circleOf(r3.Vec{}, right, up, b.Radius) {
		if !b.IsCut || p.Z >= b.Cut {
			out = append(out, p)
		}
	}
	if b.IsCut {
		reach := math.Sqrt(max(0, b.Radius*b.Radius-b.Cut*b.Cut))
		out = append(out, circleOf(r3.Vec{Z: b.Cut}, r3.Vec{X: 1}, r3.Vec{Y: 1}, reach)...)
	}
	return out
}

func circleOf(centre, right, up r3.Vec, radius float64) []r3.Vec {
	const steps = 180
	out := make([]r3.Vec, steps)
	for i := range out {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / steps)
		out[i] = r3.Add(centre, r3.Add(r3.Scale(radius*cos, right), r3.Scale(radius*sin, up)))
	}
	return out
}

// disc returns the rim of a disc at a mount.
func disc(m layout.Mount, radius float64) []r3.Vec {
	side := r3.Vec{Z: 1}
	if math.Abs(m.Normal.Z) > 0.9 {
		side = r3.Vec{X: 1}
	}
	right := r3.Unit(r3.Cross(side, m.Normal))
	return circleOf(m.Point, right, r3.Cross(m.Normal, right), radius)
}

// faces tells whether a mount looks at the eye.
func (v view) faces(m layout.Mount) bool { return r3.Dot(m.Normal, v.towards) > 1e-9 }

// body draws the outline and the edges that are seen; hidden edges too, dashed,
// where that is asked for.
func (v view) body(s *Sheet, b *body.Body, hidden bool) {
	s.polygon(pen{fill: pale}, hull(v.all(outlinePoints(b, v.towards)))...)
	seen := make([]bool, len(b.Faces))
	for f := range seen {
		seen[f] = r3.Dot(b.Normal(f), v.towards) > 1e-9
	}
	var front [][]r2.Vec
	for _, e := range b.Edges() {
		line := []r2.Vec{v.on(b.Vertices[e.A]), v.on(b.Vertices[e.B])}
		if seen[e.Faces[0]] || seen[e.Faces[1]] {
			front = append(front, line)
		} else if hidden {
			s.line(pen{colour: faint, width: 0.15, dashes: []float64{1, 1}}, line...)
		}
	}
	for _, l := range front {
		s.line(pen{colour: middling, width: 0.2}, l...)
	}
	s.polygon(pen{colour: ink, width: 0.35}, hull(v.all(outlinePoints(b, v.towards)))...)
}

// edgeOn is the cosine of the lean from which a flange is too narrow for its
// number, which then stands beside it.
const edgeOn = 0.35

// mount draws a mount that is seen, with its number.
func (v view) mount(s *Sheet, a *layout.Array, m layout.Mount) {
	s.polygon(pen{colour: blue, width: 0.25, fill: sky}, v.all(disc(m, a.Driver.FlangeRadius))...)
	size := max(1.6, min(4.5, v.scale*a.Driver.FlangeRadius*0.75))
	at := v.on(m.Point)
	if r3.Dot(m.Normal, v.towards) < edgeOn {
		out := v.flat(m.Normal)
		at = r2.Add(at, r2.Scale(0.95*size/r2.Norm(out), r2.Vec{X: out.X, Y: -out.Y}))
		size *= 0.8
	}
	s.label(at, size, ink, strconv.Itoa(m.ID))
}

// hiddenMount draws a mount on the far side, faint and dashed.
func (v view) hiddenMount(s *Sheet, a *layout.Array, m layout.Mount) {
	s.polygon(pen{colour: faint, width: 0.2, dashes: []float64{1, 0.8}}, v.all(disc(m, a.Driver.FlangeRadius))...)
}

// farFirst returns the mounts from the farthest to the nearest to the eye.
func (v view) farFirst(a *layout.Array) []layout.Mount {
	out := slices.Clone(a.Own())
	slices.SortStableFunc(out, func(m, n layout.Mount) int {
		return cmp.Compare(r3.Dot(m.Point, v.towards), r3.Dot(n.Point, v.towards))
	})
	return out
}

// hull returns the convex outline round points (A. M. Andrew, Information
// Processing Letters 9, 1979).
func hull(points []r2.Vec) []r2.Vec {
	p := slices.Clone(points)
	slices.SortFunc(p, func(a, b r2.Vec) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	half := func(points []r2.Vec) []r2.Vec {
		var out []r2.Vec
		for _, q := range points {
			for len(out) > 1 && r2.Cross(r2.Sub(out[len(out)-1], out[len(out)-2]), r2.Sub(q, out[len(out)-2])) <= 1e-9 {
				out = out[:len(out)-1]
			}
			out = append(out, q)
		}
		return out[:len(out)-1]
	}
	low := half(p)
	slices.Reverse(p)
	return append(low, half(p)...)
}
