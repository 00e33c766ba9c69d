package figure

import (
	"fmt"
	"image/color"
	"io"
	"math"
	"slices"

	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/recording"
	"pappus/timing/verdict"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Measured draws what was measured of a whole array over what was planned, matched in level and
// smoothed to sixths of octaves, with what 95 of 100 measurements lie within and what noise alone
// would give; below, by how much the thirds of octaves differ, each with its error. What is not
// to be trusted (verdict.Level.Doubtful) is shaded. Nothing measured is an error.
func Measured(w io.Writer, f Format, p *timing.Plan, v verdict.Level) error {
	heard := runs("measured", v.Frequency, v.Measured, stroke(0, 2))
	if len(heard) == 0 {
		return nothing("measurement")
	}
	planned := runs("planned", v.Frequency, v.Planned, stroke(1, 1.8))
	doubt := shadows(v.Doubtful(lowest, highest))
	sure := within(v)
	upper := levels(levelAxis(p.IsAbsolute()), lowest, highest, append(heard, planned...), doubt, sure)
	upper.X.Label.Text = ""
	upper.noise(v)
	upper.steps(0, 8)
	upper.legend = append(upper.legend, ofLine(words.ErrorBand, draw.LineStyle{Color: tint, Width: 9}), ofLine(words.Doubtful, draw.LineStyle{Color: pale, Width: 9}))
	lower := differences(v, doubt)
	upper.legend = append(upper.legend, ofWhisker(words.BeyondError, beyondMark), ofWhisker(words.WithinError, insideMark))
	return writePair(w, f, words.OfMeasured(p, v), upper, lower)
}

// tint fills what a curve may be within, by its error.
var tint = color.NRGBA{0, 114, 178, 62}

// strip is filled round its pieces, each an outline over frequency.
type strip []plotter.XYs

// within returns the strip of what 95 of 100 measurements lie within, about the measured level.
func within(v verdict.Level) strip {
	if len(v.Bands) == 0 {
		return nil
	}
	var out strip
	high, low := about(v.Measured, func(f int) float64 { return verdict.Expanded * v.ErrorAt(v.Frequency[f]) })
	above, below := runs("", v.Frequency, high, edge), runs("", v.Frequency, low, edge)
	for i := range above {
		back := below[i].points()
		slices.Reverse(back)
		out = append(out, append(above[i].points(), back...))
	}
	return out
}

// about returns levels with an error added, and taken away.
func about(level []float64, by func(f int) float64) (high, low []float64) {
	high, low = slices.Clone(level), slices.Clone(level)
	for f := range level {
		e := by(f)
		high[f], low[f] = high[f]+e, low[f]-e
	}
	return high, low
}

// Plot fills the strip.
func (s strip) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	for _, piece := range s {
		points := make([]vg.Point, len(piece))
		for i, at := range piece {
			points[i] = vg.Point{X: x(at.X), Y: y(at.Y)}
		}
		c.FillPolygon(tint, c.ClipPolygonXY(points))
	}
}

// noiseDeepest in dB is how far down an axis of levels goes at most, to have the noise on it: small
// differences have a pane of their own.
const noiseDeepest = 75.0

// noise draws what noise alone would give where that is not below the picture, and makes room
// for it.
func (c *chart) noise(v verdict.Level) {
	known := slices.Clone(v.Noise)
	for f, db := range known {
		if math.IsInf(db, 0) {
			known[f] = math.NaN()
		}
	}
	curves := runs(words.NoiseAlone, v.Frequency, known, stroke(3, 1.5))
	low, top := math.Inf(1), math.Inf(-1)
	for _, at := range curves {
		low, top = min(low, slices.Min(at.level)), max(top, slices.Max(at.level))
	}
	deepest := c.Y.Max - noiseDeepest
	if !(top > deepest+5) {
		return
	}
	for _, at := range curves {
		c.line(at.name, at.points(), at.style)
	}
	c.Y.Min = max(min(c.Y.Min, 5*math.Floor((low-2)/5)), deepest)
}

// differenceEnds in dB are how far the axis of differences may go.
var differenceEnds = []float64{3, 6, 12}

// differences returns a chart of by how much thirds of octaves differ from the plan, what is
// shaded under it.
func differences(v verdict.Level, doubt shadows) *chart {
	c := newChart("frequency, Hz", words.DifferenceAxis, doubt)
	c.frequencies(lowest, highest)
	far := differenceEnd(v.Bands)
	c.Y.Min, c.Y.Max = -far, far
	c.steps(0, 6)
	c.Add(&plotter.Line{XYs: plotter.XYs{{X: lowest}, {X: highest}}, LineStyle: draw.LineStyle{Color: ink, Width: 0.8}})
	c.Add(whiskers(v.Bands))
	return c
}

// differenceEnd returns how far the axis goes for some bands: with the errors of those that can be
// trusted.
func differenceEnd(bands []verdict.Band) float64 {
	far := 0.0
	for _, b := range bands {
		off := math.Abs(b.Difference)
		if b.IsTrusted() {
			off += verdict.Expanded * b.Error
		}
		far = max(far, off)
	}
	last := len(differenceEnds) - 1
	for _, end := range differenceEnds[:last] {
		if far <= end {
			return end
		}
	}
	return differenceEnds[last]
}

// What thirds of octaves are drawn as: off by more than their error, and within it.
var (
	beyondMark = draw.GlyphStyle{Color: colours[1], Radius: 3, Shape: draw.CircleGlyph{}}
	insideMark = draw.GlyphStyle{Color: colours[0], Radius: 3, Shape: draw.RingGlyph{}}
)

// ofWhisker is an entry for a mark with its error.
func ofWhisker(name string, style draw.GlyphStyle) entry {
	return entry{name, 14, 20, func(c *draw.Canvas, x, y vg.Length) { whisker(c, vg.Point{X: x + 5, Y: y}, y-6, y+6, style) }}
}

// whisker draws a mark on its error.
func whisker(c *draw.Canvas, at vg.Point, low, high vg.Length, style draw.GlyphStyle) {
	c.StrokeLine2(draw.LineStyle{Color: style.Color, Width: 1.1}, at.X, low, at.X, high)
	if _, ring := style.Shape.(draw.RingGlyph); ring {
		c.DrawGlyph(draw.GlyphStyle{Color: paper, Radius: style.Radius, Shape: draw.CircleGlyph{}}, at)
	}
	c.DrawGlyph(style, at)
}

// whiskers draws thirds of octaves with what 95 of 100 lie within. One that is off the axis is a
// triangle at its end.
type whiskers []verdict.Band

// Plot draws them.
func (b whiskers) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	into := func(v vg.Length) vg.Length { return min(max(v, c.Min.Y), c.Max.Y) }
	for _, one := range b {
		if one.Centre < p.X.Min || one.Centre > p.X.Max {
			continue
		}
		style, e := insideMark, verdict.Expanded*one.Error
		if math.Abs(one.Difference) > e {
			style = beyondMark
		}
		at := vg.Point{X: x(one.Centre), Y: y(one.Difference)}
		low, high := into(y(one.Difference-e)), into(y(one.Difference+e))
		if at.Y < c.Min.Y || at.Y > c.Max.Y {
			arrow(&c, at.X, at.Y > c.Max.Y, style.Color)
			continue
		}
		whisker(&c, at, low, high, style)
	}
}

// arrow draws a triangle at the upper or lower end of a plot's data, pointing out of it.
func arrow(c *draw.Canvas, x vg.Length, up bool, style color.Color) {
	const wide, high = 4.0, 6.0
	end, foot := c.Max.Y, c.Max.Y-high
	if !up {
		end, foot = c.Min.Y, c.Min.Y+high
	}
	c.FillPolygon(style, []vg.Point{{X: x - wide, Y: foot}, {X: x + wide, Y: foot}, {X: x, Y: end}})
}

// Harmonics draws what the array adds to a tone, over the tone's frequency; where
// nothing stands out of the noise nothing is drawn. No harmonics are an error.
func Harmonics(w io.Writer, f Format, p *timing.Plan, m recording.Measured) error {
	var curves []curve
	for i, h := range m.Harmonics {
		curves = append(curves, runs(fmt.Sprintf("%d times the frequency", h.Order), m.Frequency, h.Clear(), stroke(i, 1.8))...)
	}
	if len(curves) == 0 {
		return nothing("harmonics")
	}
	return levels("level over the tone, dB", lowest, highest, curves).write(w, f, words.OfHarmonics(p))
}

// runs smooths a level to sixths of octaves and splits it, at what is not known, into
// curves; the first carries the name.
func runs(name string, frequency, level []float64, style draw.LineStyle) []curve {
	level = band.SmoothGaps(nil, frequency, level, 6)
	var out []curve
	for from := 0; from < len(level); from++ {
		to := from
		for to < len(level) && !math.IsNaN(level[to]) {
			to++
		}
		if to > from {
			out = append(out, curve{name, frequency[from:to], level[from:to], style})
			name = ""
		}
		from = max(from, to)
	}
	return out
}
