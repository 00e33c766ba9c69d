package figure

import (
	"math"

	"pappus/layout"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// wall is a wall, a floor or a ceiling as a slice cuts it: a straight line at one place along
// an axis of the slice, with what is beyond it on one side.
type wall struct {
	name    string
	upright bool    // it runs up the picture
	at      float64 // m along the other axis
	beyond  float64 // 1 or -1: the way out of the room along it
}

// walls returns what of the room a slice cuts.
func (v view) walls() []wall {
	switch a := v.plan.Array; {
	case a.Room.Present:
		return v.roomWalls()
	case !a.Surface.Present:
		return nil
	case a.Surface.On == layout.OnWall && !v.upright():
		return []wall{{"wall", true, a.Surface.Height, -1}}
	case a.Surface.On == layout.OnWall && math.Abs(v.slice.Right.X) > 1e-9:
		return []wall{{"wall", true, a.Surface.Height / v.slice.Right.X, -math.Copysign(1, v.slice.Right.X)}}
	case a.Surface.On == layout.OnWall || !v.upright():
		return nil
	case a.Surface.On == layout.OnCeiling:
		return []wall{{"ceiling", false, a.Surface.Height, 1}}
	default:
		return []wall{{"table or floor", false, a.Surface.Height, -1}}
	}
}

// roomWalls returns the walls of a room; from the side those that the slice leaves it by.
func (v view) roomWalls() []wall {
	r := v.plan.Array.Room
	back, front, right, left := -r.Body.X, r.Size.X-r.Body.X, -r.Body.Y, r.Size.Y-r.Body.Y
	if !v.upright() {
		return []wall{{"back wall", true, back, -1}, {"front wall", true, front, 1}, {"right wall", false, right, -1}, {"left wall", false, left, 1}}
	}
	out := []wall{{"floor", false, -r.Body.Z, -1}, {"ceiling", false, r.Size.Z - r.Body.Z, 1}}
	for _, side := range []float64{-1, 1} {
		next := wall{at: math.Inf(1)}
		for _, along := range []struct {
			step, low, high float64
			names           [2]string
		}{{side * v.slice.Right.X, back, front, [2]string{"back wall", "front wall"}}, {side * v.slice.Right.Y, right, left, [2]string{"right wall", "left wall"}}} {
			far, name := along.high/along.step, along.names[1]
			if along.step < 0 {
				far, name = along.low/along.step, along.names[0]
			}
			if along.step != 0 && far < next.at {
				next = wall{name, true, far, side}
			}
		}
		next.at *= side
		out = append(out, next)
	}
	return out
}

// wallShare is how much of a picture's height is left for what is beyond a wall at its edge: a
// line of small words.
const wallShare = 0.055

// widen makes room at the edges of a plot for the walls that are there.
func (v view) widen(p *plot.Plot) {
	room := wallShare * (p.Y.Max - p.Y.Min)
	for _, w := range v.walls() {
		axis := &p.Y
		if w.upright {
			axis = &p.X
		}
		switch near := v.slice.Step; {
		case w.beyond < 0 && math.Abs(w.at-axis.Min) < near:
			axis.Min = w.at - room
		case w.beyond > 0 && math.Abs(w.at-axis.Max) < near:
			axis.Max = w.at + room
		}
	}
}

// drawWalls draws the walls, and what is beyond them in grey.
func (v view) drawWalls(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	for _, w := range v.walls() {
		from, to := vg.Point{X: c.Min.X, Y: y(w.at)}, vg.Point{X: c.Max.X, Y: y(w.at)}
		outside := vg.Rectangle{Min: c.Min, Max: to}
		if w.beyond > 0 {
			outside = vg.Rectangle{Min: from, Max: c.Max}
		}
		if w.upright {
			from, to = vg.Point{X: x(w.at), Y: c.Min.Y}, vg.Point{X: x(w.at), Y: c.Max.Y}
			if outside = (vg.Rectangle{Min: c.Min, Max: to}); w.beyond > 0 {
				outside = vg.Rectangle{Min: from, Max: c.Max}
			}
		}
		if !c.Contains(from) {
			continue
		}
		c.SetColor(solid)
		c.Fill(outside.Path())
		c.StrokeLine2(draw.LineStyle{Color: ink, Width: 1.8}, from.X, from.Y, to.X, to.Y)
		style := aligned(font(8, ink), draw.XCenter, draw.YCenter)
		middle := vg.Point{X: (from.X + to.X) / 2, Y: from.Y + vg.Length(7*w.beyond)}
		if w.upright {
			style.Rotation = math.Pi / 2
			middle = vg.Point{X: from.X + vg.Length(7*w.beyond), Y: (from.Y + to.Y) / 2}
		}
		c.FillText(style, middle, w.name)
	}
}

// lines draws lines of the slice.
func (v view) lines(c draw.Canvas, p *plot.Plot, lines []plotter.XYs, styles ...draw.LineStyle) {
	x, y := p.Transforms(&c)
	for _, style := range styles {
		for _, line := range lines {
			points := make([]vg.Point, len(line))
			for i, at := range line {
				points[i] = vg.Point{X: x(at.X), Y: y(at.Y)}
			}
			c.StrokeLines(style, c.ClipLinesXY(points)...)
		}
	}
}
