package figure

import (
	"fmt"
	"io"
	"slices"

	"pappus/timing"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg/draw"
)

// lowestTone in Hz is where the picture of a woofer begins.
const lowestTone = 20

// Woofer draws the level at the spot over frequency of the array behind its high-pass,
// of the woofer behind its low-pass, of both together, and, thin, of both together
// with the woofer's other polarity; a line marks the crossover. Levels of no
// frequency are ErrNothing.
func Woofer(w io.Writer, f Format, p *timing.Plan, x timing.Woofer) error {
	if len(x.Frequency) < 2 {
		return fmt.Errorf("woofer: %w", ErrNothing)
	}
	other, array, woofer, sum := stroke(3, 1), stroke(1, 1.8), stroke(2, 1.8), stroke(0, 2.6)
	curves := []curve{
		{"the sum, other polarity", x.Frequency, x.SumOtherPolarity, other},
		{"array", x.Frequency, x.ArrayLevel, array},
		{"woofer", x.Frequency, x.WooferLevel, woofer},
		{"the sum", x.Frequency, x.Sum, sum},
	}
	polarity := ""
	if x.Invert {
		polarity = " and inverted"
	}
	title := nameOf(p) + ": array and woofer at the listening spot"
	below := fmt.Sprintf("%v of order %d at %.4g Hz; woofer delayed by %.2f ms%s, %.2f ms for it in all the array's delays",
		x.LowPass.Family(), x.LowPass.Order(), x.LowPass.Corner(), 1000*x.Delay, polarity, 1000*x.ArrayDelay)
	return write(w, f, func(c draw.Canvas) {
		drawWoofer(heading(c, title, below), curves, x.LowPass.Corner(), p.IsAbsolute())
	})
}

// drawWoofer draws the curves from the lowest tones on.
func drawWoofer(c draw.Canvas, curves []curve, crossover float64, absolute bool) {
	p := newPlot("frequency, Hz", "level, "+levelUnit(absolute))
	p.X.Scale, p.X.Tick.Marker = plot.LogScale{}, frequencyTicks{}
	p.Add(newGrid())
	low, high := levelRange(curves)
	mark := curve{"crossover", []float64{crossover, crossover}, []float64{low, high}, stroke(6, 1)}
	mark.style.Color, mark.style.Dashes = quiet, dashes[2]
	var entries []entry
	for _, l := range slices.Insert(slices.Clone(curves), 0, mark) {
		p.Add(&plotter.Line{XYs: l.points(), LineStyle: l.style})
		entries = append(entries, entry{l.name, l.style})
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = lowestTone, highest, low, high
	p.Y.Tick.Marker = evenTicks{niceStep(high-low, 10)}
	slices.Reverse(entries)
	c = legendAbove(c, entries)
	p.Draw(draw.Crop(c, 0, -8, 0, 0))
}
