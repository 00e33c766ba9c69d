package figure

import (
	"pappus/render/sheets"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// look is a small picture of a body with its drivers.
type look sheets.Seen

// pictureScale is how many points a metre is in small pictures, so that the largest body fits
// into so much.
func (v frontView) pictureScale(wide, high vg.Length) float64 {
	most := r2.Vec{X: 1e-3, Y: 1e-3} // m
	for _, l := range v.looks {
		size := l.Box.Size()
		most = r2.Vec{X: max(most.X, size.X), Y: max(most.Y, size.Y)}
	}
	return min(float64(wide)/most.X, float64(high)/most.Y)
}

// draw draws the body with its middle at a place, so many points to the metre.
func (l look) draw(c *draw.Canvas, at vg.Point, scale float64) {
	middle := l.Box.Center()
	on := func(points []r2.Vec) []vg.Point {
		out := make([]vg.Point, len(points))
		for i, p := range points {
			out[i] = vg.Point{X: at.X + vg.Length(scale*(p.X-middle.X)), Y: at.Y + vg.Length(scale*(p.Y-middle.Y))}
		}
		return out
	}
	c.FillPolygon(rule, on(l.Body))
	for _, e := range l.Edges {
		c.StrokeLines(draw.LineStyle{Color: solid, Width: 0.3}, on(e))
	}
	for _, d := range l.Drivers {
		c.FillPolygon(faint(colours[0]), on(d))
	}
}
