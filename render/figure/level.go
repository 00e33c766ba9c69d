package figure

import (
	"fmt"
	"image/color"
	"io"
	"slices"

	"pappus/timing"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// pale lies under the frequencies that are left alone.
var pale = color.NRGBA{239, 239, 239, 255}

// Levelling draws the level round the spot over frequency before and after it is
// levelled, what it is to be, and the stretches that are left alone. A levelling
// without frequencies is ErrNothing.
func Levelling(w io.Writer, f Format, p *timing.Plan, l timing.Levelling) error {
	if len(l.Frequency) < 2 {
		return fmt.Errorf("levelling: %w", ErrNothing)
	}
	target := make([]float64, len(l.Frequency))
	for i := range target {
		target[i] = l.Target
	}
	aim, before, after := stroke(6, 1.2), stroke(1, 1.8), stroke(0, 2.4)
	aim.Color, aim.Dashes = quiet, dashes[2]
	curves := []curve{
		{"aimed at", l.Frequency, target, aim},
		{"before", l.Frequency, l.Before, before},
		{"after", l.Frequency, l.After, after},
	}
	curves = append(curves, errorBand(l)...)
	return write(w, f, func(c draw.Canvas) {
		c = heading(c, nameOf(p)+": levelling the listening spot",
			fmt.Sprintf("uneven by %.1f dB before, %.1f dB after with the same sections on every channel; sixth-octave smoothed", l.UnevenBefore, l.UnevenAfter))
		var entries []entry
		for _, k := range curves[:min(len(curves), 4)] { // one for both edges of the band
			entries = append(entries, entry{k.name, k.style})
		}
		if len(l.Nulls) > 0 {
			entries = append(entries, entry{"left alone, with what is lost out of step", draw.LineStyle{Color: pale, Width: 9}})
		}
		c = legendAbove(c, entries)
		levelPlot(l, curves, p.IsAbsolute()).Draw(draw.Crop(c, 0, -8, 0, 0))
	})
}

// leastError is the model's error in dB that is wide enough to be drawn.
const leastError = 0.1

// errorBand returns the edges of the band about the mean in which the level is left
// alone, since the model does not know it better; none where that is no band.
func errorBand(l timing.Levelling) []curve {
	if len(l.Error) != len(l.Frequency) || slices.Max(l.Error) < leastError {
		return nil
	}
	style := stroke(2, 1)
	style.Dashes = dashes[1]
	high, low := make([]float64, len(l.Error)), make([]float64, len(l.Error))
	for i, e := range l.Error {
		high[i], low[i] = l.Target+e, l.Target-e
	}
	return []curve{{"the model's own error", l.Frequency, high, style}, {"", l.Frequency, low, style}}
}

func levelPlot(l timing.Levelling, curves []curve, absolute bool) *plot.Plot {
	p := newPlot("frequency, Hz", "level, "+levelUnit(absolute))
	p.X.Scale, p.X.Tick.Marker = plot.LogScale{}, frequencyTicks{}
	p.Add(shadows(l.Nulls), newGrid())
	for _, k := range curves {
		p.Add(&plotter.Line{XYs: k.points(), LineStyle: k.style})
	}
	p.Add(losses(l.Nulls))
	p.X.Min, p.X.Max = l.Frequency[0], l.Frequency[len(l.Frequency)-1]
	p.Y.Min, p.Y.Max = levelRange(curves)
	p.Y.Tick.Marker = evenTicks{niceStep(p.Y.Max-p.Y.Min, 10)}
	return p
}

// stretch returns where a null lies across a plot, 2 points wide at least.
func stretch(c draw.Canvas, p *plot.Plot, n timing.Null) (left, right vg.Length) {
	x, _ := p.Transforms(&c)
	left, right = x(n.Low), x(n.High)
	if right-left < 2 {
		middle := (left + right) / 2
		left, right = middle-1, middle+1
	}
	return max(left, x(p.X.Min)), min(right, x(p.X.Max))
}

// shadows shades nulls from the bottom of a plot to its top.
type shadows []timing.Null

// Plot draws the shades.
func (s shadows) Plot(c draw.Canvas, p *plot.Plot) {
	c.SetColor(pale)
	for _, n := range s {
		left, right := stretch(c, p, n)
		c.Fill(vg.Rectangle{Min: vg.Point{X: left, Y: c.Min.Y}, Max: vg.Point{X: right, Y: c.Max.Y}}.Path())
	}
}

// losses writes what is lost in nulls at the top of a plot, in those wide enough.
type losses []timing.Null

// Plot writes the labels.
func (s losses) Plot(c draw.Canvas, p *plot.Plot) {
	style := aligned(words(9, quiet), draw.XCenter, draw.YTop)
	for _, n := range s {
		left, right := stretch(c, p, n)
		text := fmt.Sprintf("\u2212%.0f dB", n.Loss)
		if style.Width(text) < right-left-2 {
			c.FillText(style, vg.Point{X: (left + right) / 2, Y: c.Max.Y - 5}, text)
		}
	}
}
