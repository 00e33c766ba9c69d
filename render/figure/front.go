package figure

import (
	"fmt"
	"io"
	"slices"

	"pappus/layout/prose"
	"pappus/timing"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Front draws what shorter strings bring in level over what they cost in smear, each
// split that no other beats in both, and the plan's own. A plan without at least two is
// ErrNothing.
func Front(w io.Writer, f Format, p *timing.Plan) error {
	if len(p.Front) < 2 {
		return fmt.Errorf("front: %w", ErrNothing)
	}
	panel := frontPanel(p.Front)
	return write(w, f, func(c draw.Canvas) {
		c = heading(c, nameOf(p)+": what shorter strings cost and bring", fmt.Sprintf("%s; %d channels; level from the same amplifier", spotText(p), len(p.Channels)))
		c = legendAbove(c, []entry{{"the best splits with strings of so many drivers, and the least load of a channel", stroke(0, 2)}})
		out := newPlot("smear, µs", "louder than with the least smear, dB")
		out.Add(newGrid(), panel)
		panel.axes(out)
		out.Draw(draw.Crop(c, 0, -8, 0, 0))
	})
}

// frontPanel draws a front.
type frontPanel []timing.Strung

// axes begin with no smear, so that a little of it looks little, and leave room for
// labels.
func (f frontPanel) axes(p *plot.Plot) {
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, 1e-3, 0, 1
	for _, s := range f {
		p.X.Max = max(p.X.Max, 1.05*1e6*s.Smear)
		p.Y.Min, p.Y.Max = min(p.Y.Min, s.Louder), max(p.Y.Max, s.Louder)
	}
	room := 0.12 * (p.Y.Max - p.Y.Min)
	p.Y.Min, p.Y.Max = p.Y.Min-room, p.Y.Max+room
	p.X.Tick.Marker = evenTicks{niceStep(p.X.Max-p.X.Min, 10)}
	p.Y.Tick.Marker = evenTicks{niceStep(p.Y.Max-p.Y.Min, 8)}
}

// Plot draws the panel.
func (f frontPanel) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	place := func(s timing.Strung) vg.Point { return vg.Point{X: x(1e6 * s.Smear), Y: y(s.Louder)} }
	var line plotter.XYs
	for _, s := range f {
		line = append(line, plotter.XY{X: 1e6 * s.Smear, Y: s.Louder})
	}
	(&plotter.Line{XYs: line, LineStyle: stroke(0, 2)}).Plot(c, p)
	low := c.Min.Y
	for _, s := range slices.Backward(f) { // from the lowest up
		at, style := place(s), draw.GlyphStyle{Color: colours[0], Radius: 4, Shape: draw.CircleGlyph{}}
		if !s.InStep {
			style.Color = quiet
		}
		c.DrawGlyph(style, at)
		if s.Chosen {
			c.DrawGlyph(draw.GlyphStyle{Color: ink, Radius: 7, Shape: draw.RingGlyph{}}, at)
		}
		beside, side := vg.Point{X: at.X - 11, Y: at.Y + 8}, draw.XRight
		if at.X < c.Center().X {
			beside, side = vg.Point{X: at.X + 11, Y: at.Y - 8}, draw.XLeft
		}
		beside.Y = max(beside.Y, low)
		low = beside.Y + 13
		c.FillText(aligned(words(10, ink), side, draw.YCenter), beside, frontLabel(s))
	}
}

// frontLabel names a split by its strings and its load.
func frontLabel(s timing.Strung) string {
	text := fmt.Sprintf("up to %d", s.Longest)
	if s.Longest == 1 {
		text = "1"
	}
	text += prose.Sprintf(" in a string, %.3g ohm", s.LeastOhm)
	switch {
	case s.Chosen:
		text += ", as planned"
	case !s.InStep:
		text += ", an octave out of step"
	}
	return text
}
