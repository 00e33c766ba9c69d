package figure

import (
	"io"

	"pappus/render/words"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// chart is a plot in the look of this package, with its legend.
type chart struct {
	*plot.Plot
	legend []entry
	beside besideAxis // its times 0: none
}

// newChart returns a chart with names for its axes, with a grid over what lies under it.
func newChart(across, up string, under ...plot.Plotter) *chart {
	c := &chart{Plot: newPlot(across, up)}
	grid := plotter.NewGrid()
	grid.Horizontal = draw.LineStyle{Color: rule, Width: 0.5}
	grid.Vertical = draw.LineStyle{Color: rule, Width: 0.5}
	c.Add(append(under, grid)...)
	return c
}

// newPlot returns an empty plot in the look of this package.
func newPlot(across, up string) *plot.Plot {
	p := plot.New()
	p.BackgroundColor = nil
	for _, a := range []*plot.Axis{&p.X, &p.Y} {
		a.Padding = 0
		a.LineStyle = draw.LineStyle{Color: quiet, Width: 0.6}
		a.Tick.LineStyle = draw.LineStyle{Color: quiet, Width: 0.6}
		a.Tick.Length = 4
		a.Tick.Label = aligned(font(9.5, ink), a.Tick.Label.XAlign, a.Tick.Label.YAlign)
		a.Label.TextStyle = aligned(font(10.5, ink), a.Label.TextStyle.XAlign, a.Label.TextStyle.YAlign)
		a.Label.Padding = 5
	}
	p.X.Label.Text, p.Y.Label.Text = across, up
	return p
}

// line adds a line, and its name to the legend where it has one.
func (c *chart) line(name string, points plotter.XYs, style draw.LineStyle) {
	c.Add(&plotter.Line{XYs: points, LineStyle: style})
	if name != "" {
		c.legend = append(c.legend, ofLine(name, style))
	}
}

// scatter adds marks.
func (c *chart) scatter(points plotter.XYs, style draw.GlyphStyle) {
	c.Add(&plotter.Scatter{XYs: points, GlyphStyle: style})
}

// frequencies makes the axis across one of frequencies in Hz.
func (c *chart) frequencies(low, high float64) {
	c.X.Scale, c.X.Tick.Marker = plot.LogScale{}, frequencyTicks{}
	c.X.Min, c.X.Max = low, high
}

// steps marks both axes evenly, with so many steps at most; 0 leaves an axis as it is.
func (c *chart) steps(across, up int) {
	for i, a := range []*plot.Axis{&c.X, &c.Y} {
		if most := []int{across, up}[i]; most > 0 {
			a.Tick.Marker = evenTicks{niceStep(a.Max-a.Min, most)}
		}
	}
}

// write writes a picture of the chart alone, below its heading and its legend.
func (c *chart) write(w io.Writer, f Format, head words.Picture) error {
	return write(w, f, func(page draw.Canvas) {
		c.draw(draw.Crop(legendAbove(heading(page, head), c.legend), 0, -8, 0, 0))
	})
}

// writePair writes a picture of two charts one above the other, with their left edges in
// line, below the legend of the upper one, which gets three fifths of the height.
func writePair(w io.Writer, f Format, head words.Picture, upper, lower *chart) error {
	return write(w, f, func(page draw.Canvas) {
		c := legendAbove(heading(page, head), upper.legend)
		cut := c.Min.Y + (c.Max.Y-c.Min.Y)*0.4
		top, bottom := draw.Crop(c, 0, -8, cut-c.Min.Y+6, 0), draw.Crop(c, 0, -8, 0, cut-c.Max.Y-6)
		top, bottom = upper.inner(top, lower), lower.inner(bottom, upper)
		left := max(upper.DataCanvas(top).Min.X, lower.DataCanvas(bottom).Min.X)
		top.Min.X += left - upper.DataCanvas(top).Min.X
		bottom.Min.X += left - lower.DataCanvas(bottom).Min.X
		upper.drawIn(top)
		lower.drawIn(bottom)
	})
}

// besideWide is how wide a second axis is, in points.
const besideWide = 52

// inner returns what is left of a canvas for a chart beside its second axis, or beside that of
// the one above or below it.
func (c *chart) inner(canvas draw.Canvas, other *chart) draw.Canvas {
	if c.beside.times == 0 && other.beside.times == 0 {
		return canvas
	}
	return draw.Crop(canvas, 0, -besideWide, 0, 0)
}

// draw draws the chart with its second axis.
func (c *chart) draw(canvas draw.Canvas) { c.drawIn(c.inner(canvas, c)) }

func (c *chart) drawIn(canvas draw.Canvas) {
	if c.Draw(canvas); c.beside.times != 0 {
		c.drawBeside(c.DataCanvas(canvas))
	}
}

// leastSize is the smallest that words are written, in points: what can still be read on
// paper (common practice).
const leastSize = 6.5

// heading writes what the picture shows and returns the room left below.
func heading(c draw.Canvas, head words.Picture) draw.Canvas {
	c.FillText(aligned(font(14, ink), draw.XLeft, draw.YTop), vg.Point{X: c.Min.X, Y: c.Max.Y}, head.Title)
	second := aligned(font(10, quiet), draw.XLeft, draw.YTop)
	if wide, room := second.Width(head.Below), c.Max.X-c.Min.X; wide > room {
		second = aligned(font(max(leastSize, 10*room/wide), quiet), draw.XLeft, draw.YTop)
	}
	c.FillText(second, vg.Point{X: c.Min.X, Y: c.Max.Y - 20}, head.Below)
	return draw.Crop(c, 0, 0, 0, -44)
}

// entry is one line of a legend: a sample, so wide with the gap behind it, and a name, with
// a gap to the next entry.
type entry struct {
	name      string
	wide, gap vg.Length
	sample    func(c *draw.Canvas, x, y vg.Length)
}

// ofLine is an entry for a line.
func ofLine(name string, style draw.LineStyle) entry {
	return entry{name, 36, 22, func(c *draw.Canvas, x, y vg.Length) { c.StrokeLine2(style, x, y, x+30, y) }}
}

// ofMark is an entry for a mark.
func ofMark(name string, style draw.GlyphStyle) entry {
	return entry{name, 14, 20, func(c *draw.Canvas, x, y vg.Length) { c.DrawGlyph(style, vg.Point{X: x + 5, Y: y}) }}
}

// ofPoints is an entry for measured points.
func ofPoints(name string, style draw.GlyphStyle) entry {
	style.Radius = 2.2
	return entry{name, 26, 22, func(c *draw.Canvas, x, y vg.Length) {
		for _, right := range []vg.Length{3, 10, 17} {
			c.DrawGlyph(style, vg.Point{X: x + right, Y: y})
		}
	}}
}

// wideOf returns how wide a legend in one row is.
func wideOf(entries []entry) vg.Length {
	wide := vg.Length(0)
	for i, e := range entries {
		if wide += e.wide + font(10, ink).Width(e.name); i < len(entries)-1 {
			wide += e.gap
		}
	}
	return wide
}

// legendAbove writes a legend in rows above a plot and returns the room left.
func legendAbove(c draw.Canvas, entries []entry) draw.Canvas {
	const line = 16
	style := aligned(font(10, ink), draw.XLeft, draw.YCenter)
	x, y := c.Min.X, c.Max.Y-line/2
	for _, e := range entries {
		wide := e.wide + style.Width(e.name)
		if x > c.Min.X && x+wide > c.Max.X+0.01 {
			x, y = c.Min.X, y-line
		}
		e.sample(&c, x, y)
		c.FillText(style, vg.Point{X: x + e.wide, Y: y + lift}, e.name)
		x += wide + e.gap
	}
	c.Max.Y = y - line/2 - 8
	return c
}
