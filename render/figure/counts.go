package figure

import (
	"fmt"
	"io"
	"math"
	"slices"

	"pappus/layout/prose"
	"pappus/timing"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Counts draws what each number of channels leaves at the spot: the smear above,
// the comb onset below, where the plan stands and where more channels stop paying.
// A plan without counts is ErrNothing.
func Counts(w io.Writer, f Format, p *timing.Plan) error {
	if len(p.Counts) == 0 {
		return fmt.Errorf("counts: %w", ErrNothing)
	}
	own, _ := p.Own()
	smearKnee, onsetKnee := p.Knees()
	smear := countPanel{colour: 0, knee: smearKnee, own: plotter.XY{X: float64(own.Channels), Y: 1e6 * own.Smear}}
	onset := countPanel{colour: 1, knee: onsetKnee, own: plotter.XY{X: float64(own.Channels), Y: own.CombOnset / 1000}}
	var plain plotter.XYs
	for _, c := range p.Counts {
		n := float64(c.Channels)
		smear.points = append(smear.points, plotter.XY{X: n, Y: 1e6 * c.Smear})
		plain = append(plain, plotter.XY{X: n, Y: 1e6 * c.Plain})
		onset.points = append(onset.points, plotter.XY{X: n, Y: c.CombOnset / 1000})
	}
	weighed, alike := stroke(0, 2), stroke(2, 1.4)
	entries := []entry{
		{"smear by energy", weighed},
		{"smear, all drivers alike", alike},
		{"comb onset", draw.LineStyle{Color: colours[1], Width: 2}},
		{fmt.Sprintf("as planned, %d", own.Channels), ownLine},
	}
	if smear.bends() || onset.bends() {
		entries = append(entries, entry{"more hardly pay", kneeLine})
	}
	return write(w, f, func(c draw.Canvas) {
		c = heading(c, nameOf(p)+": what more channels bring", spotText(p)+"; split by "+p.CountedBy())
		c = legendAbove(c, entries)
		above, below := newPlot("", "smear, µs"), newPlot("channels", "comb onset, kHz")
		above.Add(newGrid(), &plotter.Line{XYs: plain, LineStyle: alike}, smear)
		below.Add(newGrid(), onset)
		most := max(own.Channels, p.Counts[len(p.Counts)-1].Channels)
		countAxes(above, most, append(plain, append(smear.points, smear.own)...))
		countAxes(below, most, append(onset.points, onset.own))
		panels := [][]*plot.Plot{{above}, {below}}
		for i, room := range plot.Align(panels, draw.Tiles{Rows: 2, Cols: 1, PadY: vg.Points(8), PadRight: vg.Points(4)}, c) {
			panels[i][0].Draw(room[0])
		}
	})
}

// The upright lines of a panel.
var (
	ownLine  = draw.LineStyle{Color: ink, Width: 0.8}
	kneeLine = draw.LineStyle{Color: quiet, Width: 1, Dashes: []vg.Length{3, 3}}
)

// countAxes sets the axes of a panel for 1 to most channels and some values.
func countAxes(p *plot.Plot, most int, points plotter.XYs) {
	p.X.Min, p.X.Max = 0.5, float64(max(most, 2))+0.5
	p.X.Tick.Marker = evenTicks{max(1, niceStep(p.X.Max-p.X.Min, 16))}
	p.Y.Min, p.Y.Max = 0, 1
	if !anyFinite(points) {
		p.Y.Tick.Marker = plot.ConstantTicks{}
		return
	}
	for _, at := range points {
		if !math.IsInf(at.Y, 0) {
			p.Y.Max = max(p.Y.Max, 1.12*at.Y)
		}
	}
	p.Y.Tick.Marker = evenTicks{niceStep(p.Y.Max-p.Y.Min, 6)}
}

// anyFinite tells whether any value is finite.
func anyFinite(points plotter.XYs) bool {
	return slices.ContainsFunc(points, func(at plotter.XY) bool { return !math.IsInf(at.Y, 0) })
}

// countPanel draws a value over the number of channels, the plan's own and the
// knee. A value that is infinite is drawn as an arrow at the upper edge: there is
// no comb onset up to the highest computed.
type countPanel struct {
	points plotter.XYs
	own    plotter.XY
	knee   int
	colour int
}

// bends tells whether there is a knee with anything beyond it.
func (m countPanel) bends() bool {
	return anyFinite(m.points) && float64(m.knee) < m.points[len(m.points)-1].X
}

// Plot draws the panel.
func (m countPanel) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	if !anyFinite(append(m.points, m.own)) {
		label(&c, aligned(words(10.5, quiet), draw.XCenter, draw.YCenter), c.Center(),
			"no comb onset with any number of channels: the drivers never fall 3 dB short")
		return
	}
	upright := func(style draw.LineStyle, channels float64) {
		c.StrokeLine2(style, x(channels), c.Min.Y, x(channels), c.Max.Y)
	}
	if m.bends() {
		upright(kneeLine, float64(m.knee))
	}
	upright(ownLine, m.own.X)
	place := func(at plotter.XY) vg.Point {
		if math.IsInf(at.Y, 0) {
			return vg.Point{X: x(at.X), Y: c.Max.Y - 6}
		}
		return vg.Point{X: x(at.X), Y: y(at.Y)}
	}
	style := stroke(0, 2)
	style.Color = colours[m.colour]
	for i, at := range m.points {
		shape := draw.GlyphDrawer(draw.CircleGlyph{})
		if math.IsInf(at.Y, 0) {
			shape = draw.TriangleGlyph{}
		} else if i > 0 && !math.IsInf(m.points[i-1].Y, 0) {
			last, here := place(m.points[i-1]), place(at)
			c.StrokeLine2(style, last.X, last.Y, here.X, here.Y)
		}
		c.DrawGlyph(draw.GlyphStyle{Color: style.Color, Radius: 3, Shape: shape}, place(at))
	}
	c.DrawGlyph(draw.GlyphStyle{Color: ink, Radius: 6, Shape: draw.RingGlyph{}}, place(m.own))
}

// Excursion draws how far the cone of the driver that gets most moves, with the
// high-pass and without, and how far it may. A plan whose driver's values are
// not known is ErrNothing.
func Excursion(w io.Writer, f Format, p *timing.Plan) error {
	x, most := p.Maximum, 1000*p.Protection.Xmax
	if len(x.Excursion) == 0 {
		return ErrNothing
	}
	mm := func(v []float64) plotter.XYs {
		out := make(plotter.XYs, len(v))
		for i := range v {
			out[i] = plotter.XY{X: x.Frequency[i], Y: 1000 * v[i]}
		}
		return out
	}
	last := x.Frequency[len(x.Frequency)-1]
	reach := plotter.XYs{{X: lowest, Y: most}, {X: last, Y: most}}
	lines := []struct {
		name   string
		points plotter.XYs
		style  draw.LineStyle
	}{
		{"with the high-pass", mm(x.Excursion), stroke(0, 2.4)},
		{"without", mm(x.Unprotected), stroke(1, 1.8)},
		{"as far as it may", reach, stroke(6, 1.2)},
	}
	return write(w, f, func(c draw.Canvas) {
		c = heading(c, nameOf(p)+": how far a cone moves", prose.Sprintf("peak, one way, at %.3g V over the driver", p.Protection.Volt))
		out := newPlot("frequency, Hz", "excursion, mm")
		out.X.Scale, out.X.Tick.Marker = plot.LogScale{}, frequencyTicks{}
		out.Add(newGrid())
		var entries []entry
		out.Y.Max = 1.1 * most
		for _, l := range lines {
			out.Add(&plotter.Line{XYs: l.points, LineStyle: l.style})
			entries = append(entries, entry{l.name, l.style})
			for _, at := range l.points {
				if at.X >= lowest {
					out.Y.Max = max(out.Y.Max, 1.1*at.Y)
				}
			}
		}
		out.X.Min, out.X.Max, out.Y.Min = lowest, last, 0
		out.Y.Tick.Marker = evenTicks{niceStep(out.Y.Max, 8)}
		out.Draw(draw.Crop(legendAbove(c, entries), 0, -8, 0, 0))
	})
}
