package figure

import (
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// numbered are points with numbers from 1, each in a disc on its point, or beside it with a
// thin line to it where two discs would lie on each other. A point that is not finite has none.
type numbered plotter.XYs

// markRadius is that of a number's disc, in points: two digits that can be read fit.
const markRadius = 7

// Plot draws the points.
func (n numbered) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	var points []vg.Point
	var ids []int
	for i, at := range n {
		if isFinite(at) {
			points, ids = append(points, vg.Point{X: x(at.X), Y: y(at.Y)}), append(ids, i+1)
		}
	}
	discs := spaced(points, 2*markRadius+1, c.Rectangle)
	for i, at := range discs {
		c.StrokeLine2(draw.LineStyle{Color: ink, Width: 0.7}, points[i].X, points[i].Y, at.X, at.Y)
		c.DrawGlyph(draw.GlyphStyle{Color: ink, Radius: 1.8, Shape: draw.CircleGlyph{}}, points[i])
	}
	for i, at := range discs {
		numberDisc(&c, at, ids[i], markRadius)
	}
}

func isFinite(at plotter.XY) bool { return !math.IsNaN(at.X-at.X) && !math.IsNaN(at.Y-at.Y) }

// spacedRounds is how often discs that lie on each other are pushed: ten on one point come
// apart in under 60.
const spacedRounds = 200

// spaced moves points until any two are so far from each other, each pair by halves along the
// line between them, and none beyond the edge of a picture by less than half of that. Points on
// one place go up and down. The order of points settles ties.
func spaced(points []vg.Point, least vg.Length, within vg.Rectangle) []vg.Point {
	out := append([]vg.Point(nil), points...)
	for range spacedRounds {
		moved := false
		for i := range out {
			for k := range i {
				moved = push(&out[k], &out[i], least) || moved
			}
			out[i].X = min(max(out[i].X, within.Min.X+least/2), within.Max.X-least/2)
			out[i].Y = min(max(out[i].Y, within.Min.Y+least/2), within.Max.Y-least/2)
		}
		if !moved {
			break
		}
	}
	return out
}

// push moves two points that are nearer than so far to that distance, and tells whether it did.
func push(a, b *vg.Point, least vg.Length) bool {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	near := math.Hypot(dx, dy)
	if near >= float64(least)-0.01 {
		return false
	}
	if near < 0.01 {
		dx, dy, near = 0.3, 1, math.Hypot(0.3, 1)
	}
	half := (float64(least) - math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y))) / 2 / near
	a.X, a.Y = a.X-vg.Length(half*dx), a.Y-vg.Length(half*dy)
	b.X, b.Y = b.X+vg.Length(half*dx), b.Y+vg.Length(half*dy)
	return true
}
