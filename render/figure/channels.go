package figure

import (
	"fmt"
	"io"
	"math"
	"slices"

	"pappus/render/words"
	"pappus/timing"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Counts draws what each number of channels leaves at the spot: the smear above,
// the comb onset below, where the plan stands and where more channels stop paying.
// A plan without counts is an error.
func Counts(w io.Writer, f Format, p *timing.Plan) error {
	if len(p.Counts) == 0 {
		return nothing("counts")
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
	legend := []entry{
		ofLine("smear by energy", weighed),
		ofLine("smear, all drivers alike", alike),
		ofLine("comb onset", draw.LineStyle{Color: colours[1], Width: 2}),
		ofLine(fmt.Sprintf("as planned, %d", own.Channels), ownLine),
	}
	if smear.bends() || onset.bends() {
		legend = append(legend, ofLine("more hardly pay", kneeLine))
	}
	above, below := newChart("", "smear, µs"), newChart("channels", "comb onset, kHz")
	above.line("", plain, alike)
	above.Add(smear)
	below.Add(onset)
	most := max(own.Channels, p.Counts[len(p.Counts)-1].Channels)
	above.countAxes(most, append(plain, append(smear.points, smear.own)...))
	below.countAxes(most, append(onset.points, onset.own))
	return write(w, f, func(c draw.Canvas) {
		c = legendAbove(heading(c, words.OfCounts(p)), legend)
		panels := [][]*plot.Plot{{above.Plot}, {below.Plot}}
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
func (c *chart) countAxes(most int, points plotter.XYs) {
	c.X.Min, c.X.Max = 0.5, float64(max(most, 2))+0.5
	c.X.Tick.Marker = evenTicks{max(1, niceStep(c.X.Max-c.X.Min, 16))}
	c.Y.Min, c.Y.Max = 0, 1
	if !anyFinite(points) {
		c.Y.Tick.Marker = plot.ConstantTicks{}
		return
	}
	for _, at := range points {
		if !math.IsInf(at.Y, 0) {
			c.Y.Max = max(c.Y.Max, 1.12*at.Y)
		}
	}
	c.steps(0, 6)
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
		label(&c, aligned(font(10.5, quiet), draw.XCenter, draw.YCenter), c.Center(),
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

// Front draws what shorter strings bring in level over what they cost in smear, each
// split that no other beats in both, and the plan's own. A plan without at least two is
// an error.
func Front(w io.Writer, f Format, p *timing.Plan) error {
	if len(p.Front) < 2 {
		return nothing("front")
	}
	c := newChart("smear, µs", "louder than with the least smear, dB")
	c.Add(frontPanel(p.Front))
	// The axes begin with no smear, so that a little of it looks little, and leave room for
	// labels.
	c.X.Min, c.X.Max, c.Y.Min, c.Y.Max = 0, 1e-3, 0, 1
	for _, s := range p.Front {
		c.X.Max = max(c.X.Max, 1.05*1e6*s.Smear)
		c.Y.Min, c.Y.Max = min(c.Y.Min, s.Louder), max(c.Y.Max, s.Louder)
	}
	room := 0.12 * (c.Y.Max - c.Y.Min)
	c.Y.Min, c.Y.Max = c.Y.Min-room, c.Y.Max+room
	c.steps(10, 8)
	c.legend = []entry{ofLine("the best splits with strings of so many drivers, and the least load of a channel", stroke(0, 2))}
	return c.write(w, f, words.OfFront(p))
}

// frontPanel draws a front.
type frontPanel []timing.Strung

// Plot draws the panel.
func (f frontPanel) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	line := make(plotter.XYs, len(f))
	for i, s := range f {
		line[i] = plotter.XY{X: 1e6 * s.Smear, Y: s.Louder}
	}
	(&plotter.Line{XYs: line, LineStyle: stroke(0, 2)}).Plot(c, p)
	low := c.Min.Y
	for i, s := range slices.Backward(f) { // from the lowest up
		at, style := vg.Point{X: x(line[i].X), Y: y(line[i].Y)}, draw.GlyphStyle{Color: colours[0], Radius: 4, Shape: draw.CircleGlyph{}}
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
		c.FillText(aligned(font(10, ink), side, draw.YCenter), beside, words.Strung(s))
	}
}

// Excursion draws how far the cone of the driver that gets most moves, with the
// high-pass and without, and how far it may. A plan whose driver's values are
// not known is an error.
func Excursion(w io.Writer, f Format, p *timing.Plan) error {
	x, most := p.Maximum, p.Protection.Xmax
	if len(x.Excursion) == 0 {
		return nothing("excursion")
	}
	last := x.Frequency[len(x.Frequency)-1]
	c := newChart("frequency, Hz", "excursion, mm")
	c.Y.Max = 1100 * most
	c.line("with the high-pass", over(x.Frequency, x.Excursion, 1000), stroke(0, 2.4))
	c.line("without", over(x.Frequency, x.Unprotected, 1000), stroke(1, 1.8))
	c.line("as far as it may", over([]float64{lowest, last}, []float64{most, most}, 1000), stroke(6, 1.2))
	c.frequencies(lowest, last)
	c.Y.Min = 0
	for i, hz := range x.Frequency {
		if hz >= lowest {
			c.Y.Max = max(c.Y.Max, 1100*x.Excursion[i], 1100*x.Unprotected[i])
		}
	}
	c.steps(0, 8)
	return c.write(w, f, words.OfExcursion(p))
}
