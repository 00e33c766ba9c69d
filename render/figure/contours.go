package figure

import (
	"image/color"
	"math"
	"slices"

	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/contour"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// The lines of one value, on dark and on light, and those round the place where one may lean and
// where the level is near that of the spot.
var (
	onDark  = color.NRGBA{255, 250, 240, 150}
	onLight = color.NRGBA{50, 25, 40, 140}

	halo     = draw.LineStyle{Color: color.NRGBA{255, 255, 255, 200}, Width: 3.2}
	leanLine = draw.LineStyle{Color: ink, Width: 1.5}
	nearLine = draw.LineStyle{Color: ink, Width: 1.5, Dashes: []vg.Length{5, 3}}
)

// edges are the edges of places on a map, with what they are.
type edges struct {
	name  string
	lines []plotter.XYs
	style draw.LineStyle
}

// edgesOf returns as far as one may lean at the spot, or at each seat, and of a level the 3 dB
// edge.
func (v view) edgesOf(c *timing.Coverage) []edges {
	lean := edges{style: leanLine}
	all := 0
	for _, at := range v.plan.Listeners() {
		edge := c.Slice.Lean(c.Loss, at)
		lean.lines = append(lean.lines, v.flattened(edge.Lines)...)
		all += edge.Cells
	}
	var out []edges
	if all > 0 {
		lean.name = words.MayLean(len(lean.lines) == 0, timing.LeanLoss)
		out = append(out, lean)
	}
	if v.quantity.Level {
		if near := c.Slice.LevelEdge(v.evened(), v.plan.Array.Spot); near.Cells > 0 && len(near.Lines) > 0 {
			out = append(out, edges{words.NearLevel, v.flattened(near.Lines), nearLine})
		}
	}
	return out
}

// evened returns the values as lines are drawn of: in a room, whose echoes are another in each
// cell, evened out over a few cells (four times 1 2 1 each way, as good as a normal curve of 1.4
// cells), so that there are lines at all.
func (v view) evened() []float64 {
	out := v.quantity.Values
	if !v.quantity.Level || !v.plan.Array.Room.Present {
		return out
	}
	for range 4 {
		out = eased(eased(out, v.slice.Columns, 1), v.slice.Columns, v.slice.Columns)
	}
	return out
}

// eased returns values weighed 1 2 1 with their neighbours so many cells before and behind
// in a grid; those that are not finite stay, and do not count.
func eased(values []float64, columns, step int) []float64 {
	out := slices.Clone(values)
	finite := func(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
	for i, v := range values {
		if !finite(v) {
			continue
		}
		sum, weight := 2*v, 2.0
		for _, j := range [2]int{i - step, i + step} {
			if j >= 0 && j < len(values) && (step > 1 || j/columns == i/columns) && finite(values[j]) {
				sum, weight = sum+values[j], weight+1
			}
		}
		out[i] = sum / weight
	}
	return out
}

// flattened returns lines on the axes of the slice, in m.
func (v view) flattened(lines [][]contour.Point) []plotter.XYs {
	low, step := v.flat(v.slice.Origin), v.slice.Step
	out := make([]plotter.XYs, len(lines))
	for i, line := range lines {
		for _, p := range line {
			out[i] = append(out[i], plotter.XY{X: low.X + step*p.Column, Y: low.Y + step*p.Row})
		}
	}
	return out
}

// edgesLegend explains edges; where there is no line, in words alone.
func edgesLegend(all []edges) []entry {
	var out []entry
	for _, e := range all {
		if len(e.lines) == 0 {
			out = append(out, entry{e.name, 0, 22, func(*draw.Canvas, vg.Length, vg.Length) {}})
			continue
		}
		out = append(out, entry{e.name, 36, 22, func(c *draw.Canvas, x, y vg.Length) {
			c.StrokeLine2(e.style, x, y, x+30, y)
		}})
	}
	return out
}

// contours draws lines of one value with their words, clear of what is taken; lines that are
// hardly there have none.
func (v view) contours(c draw.Canvas, p *plot.Plot, taken *occupied) {
	const least = 9 // points of a line: smaller islands are of a few cells
	x, y := p.Transforms(&c)
	values := v.evened()
	for _, t := range v.scale.contours() {
		lines := v.flattened(contour.Lines(values, v.slice.Columns, v.slice.Rows, t.Value))
		style := draw.LineStyle{Color: onDark, Width: 0.9}
		if v.scale.light(t.Value) > 0.6 {
			style.Color = onLight
		}
		lines = slices.DeleteFunc(lines, func(line plotter.XYs) bool { return len(line) < least })
		v.lines(c, p, lines, style)
		var points []vg.Point
		for _, line := range lines {
			for _, at := range line {
				points = append(points, vg.Point{X: x(at.X), Y: y(at.Y)})
			}
		}
		taken.label(&c, points, t.Label)
	}
}

// contours returns the values that have lines, with their names: a few, none at the ends.
func (s scale) contours() []plot.Tick {
	all := s.ticks()
	if !s.log {
		all = evenTicks{niceStep(s.high-s.low, 6)}.Ticks(s.low, s.high)
	}
	var out []plot.Tick
	for _, t := range all {
		if share := s.share(t.Value); t.Label != "" && share > 0.02 && share < 0.98 {
			out = append(out, t)
		}
	}
	return out
}
