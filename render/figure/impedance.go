package figure

import (
	"image/color"
	"io"
	"math"
	"math/cmplx"

	"pappus/layout/impedance"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// ImpedanceLines is what a picture of an impedance shows: the points that were
// measured and up to two lines, each a function of the frequency in Hz; nil: none.
type ImpedanceLines struct {
	Title, Below    string
	Measured        []impedance.Point
	Fitted, Planned func(hz float64) complex128
}

const (
	lineSteps = 500 // along the axis of frequency
	// Beyond this many times the measured range a planned load is not drawn.
	farOff  = 5
	crowded = 150 // points, from which on they lie under the lines
)

// Impedance draws the magnitude of an impedance in ohm above, its phase below.
// Without points it is ErrNothing.
func Impedance(w io.Writer, f Format, l ImpedanceLines) error {
	if len(l.Measured) < 2 {
		return ErrNothing
	}
	low, high := l.Measured[0].Frequency, l.Measured[len(l.Measured)-1].Frequency
	size, phase := newPlot("", "magnitude, Ω"), newPlot("frequency, Hz", "phase, degrees")
	size.Add(newGrid())
	phase.Add(newGrid())
	var entries []entry
	sizes, phases := l.points()
	marks := draw.GlyphStyle{Color: ink, Radius: 1.6, Shape: draw.CircleGlyph{}}
	mark := func() {
		size.Add(&plotter.Scatter{XYs: sizes, GlyphStyle: marks})
		phase.Add(&plotter.Scatter{XYs: phases, GlyphStyle: marks})
	}
	many := len(l.Measured) > crowded
	if many { // they would hide the lines
		marks.Color, marks.Radius = quiet, 1.3
		mark()
	}
	for _, c := range l.curves(low, high) {
		if many {
			c.style.Width *= 0.8
		}
		size.Add(&plotter.Line{XYs: c.sizes, LineStyle: c.style})
		phase.Add(&plotter.Line{XYs: c.phases, LineStyle: c.style})
		entries = append(entries, entry{c.name, c.style})
	}
	if !many {
		mark()
	}
	size.Y.Min, size.Y.Max = l.ohms(sizes)
	phase.Y.Min, phase.Y.Max = -95, 95
	phase.Y.Tick.Marker = evenTicks{45}
	size.Y.Tick.Marker = evenTicks{niceStep(size.Y.Max-size.Y.Min, 8)}
	for _, p := range []*plot.Plot{size, phase} {
		p.X.Scale, p.X.Tick.Marker = plot.LogScale{}, frequencyTicks{}
		p.X.Min, p.X.Max = low, high
	}
	return write(w, f, func(c draw.Canvas) {
		c = pointLegend(heading(c, l.Title, l.Below), marks, entries)
		drawPair(c, size, phase, 0.6)
	})
}

// drawPair draws two plots one above the other, with their left edges in line; the
// upper one gets a share of the height.
func drawPair(c draw.Canvas, upper, lower *plot.Plot, share float64) {
	cut := c.Min.Y + (c.Max.Y-c.Min.Y)*vg.Length(1-share)
	top, bottom := draw.Crop(c, 0, -8, cut-c.Min.Y+6, 0), draw.Crop(c, 0, -8, 0, cut-c.Max.Y-6)
	left := max(upper.DataCanvas(top).Min.X, lower.DataCanvas(bottom).Min.X)
	top.Min.X += left - upper.DataCanvas(top).Min.X
	bottom.Min.X += left - lower.DataCanvas(bottom).Min.X
	upper.Draw(top)
	lower.Draw(bottom)
}

// pointLegend writes a legend in one row that begins with a mark for measured points,
// and returns the room left.
func pointLegend(c draw.Canvas, marks draw.GlyphStyle, entries []entry) draw.Canvas {
	const row = 16
	style := aligned(words(10, ink), draw.XLeft, draw.YCenter)
	y := c.Max.Y - row/2
	marks.Radius = 2.2
	for _, x := range []vg.Length{3, 10, 17} {
		c.DrawGlyph(marks, vg.Point{X: c.Min.X + x, Y: y})
	}
	const name = "measured"
	c.FillText(style, vg.Point{X: c.Min.X + 26, Y: y + lift}, name)
	rest := draw.Crop(c, 26+style.Width(name)+22, 0, 0, 0)
	rest = legendAbove(rest, entries)
	c.Max.Y = min(rest.Max.Y, y-row/2-8)
	return c
}

type impedanceCurve struct {
	name          string
	sizes, phases plotter.XYs
	style         draw.LineStyle
}

// curves samples the lines over the measured frequencies.
func (l ImpedanceLines) curves(low, high float64) []impedanceCurve {
	var out []impedanceCurve
	add := func(name string, at func(float64) complex128, style draw.LineStyle, colour color.Color) {
		if at == nil {
			return
		}
		style.Color = colour
		c := impedanceCurve{name: name, style: style}
		for i := range lineSteps + 1 {
			hz := low * math.Pow(high/low, float64(i)/lineSteps)
			z := at(hz)
			if cmplx.IsInf(z) || cmplx.IsNaN(z) {
				continue
			}
			c.sizes = append(c.sizes, plotter.XY{X: hz, Y: cmplx.Abs(z)})
			c.phases = append(c.phases, plotter.XY{X: hz, Y: cmplx.Phase(z) * 180 / math.Pi})
		}
		if len(c.sizes) > 1 {
			out = append(out, c)
		}
	}
	add("fitted", l.Fitted, stroke(0, 2.2), colours[0])
	add("planned", l.Planned, stroke(1, 1.8), colours[1]) // dashed, so that what is under it shows
	return out
}

// points returns what was measured, magnitude and phase.
func (l ImpedanceLines) points() (sizes, phases plotter.XYs) {
	for _, p := range l.Measured {
		sizes = append(sizes, plotter.XY{X: p.Frequency, Y: p.Ohm})
		phases = append(phases, plotter.XY{X: p.Frequency, Y: max(-95, min(95, p.Degrees))})
	}
	return sizes, phases
}

// ohms returns the ends of the axis of magnitude: from 0 to over all that was
// measured, and planned where that is not far off.
func (l ImpedanceLines) ohms(sizes plotter.XYs) (low, high float64) {
	for _, p := range sizes {
		high = max(high, p.Y)
	}
	most := farOff * high
	if l.Planned != nil {
		for i := range lineSteps + 1 {
			first, last := sizes[0].X, sizes[len(sizes)-1].X
			if v := cmplx.Abs(l.Planned(first * math.Pow(last/first, float64(i)/lineSteps))); v < most {
				high = max(high, v)
			}
		}
	}
	return 0, 1.08 * high
}
