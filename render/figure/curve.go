package figure

import (
	"math"

	"pappus/timing/band"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// The frequencies in Hz that a response is drawn over.
const (
	lowest  = 50
	highest = 20000
)

// silence in dB stands for a level that is not a number or has no bound.
const silence = -200

// deepest in dB is the most that a dB axis spans.
const deepest = 50

// curve is one line of a frequency plot.
type curve struct {
	name             string // empty: not in the legend
	frequency, level []float64
	style            draw.LineStyle
}

func smooth(frequency, level []float64) []float64 {
	return band.Smooth(nil, frequency, audible(level), 3)
}

// audible returns levels with silence for what is no finite number.
func audible(level []float64) []float64 {
	out := make([]float64, len(level))
	for i, v := range level {
		out[i] = v
		if math.IsNaN(v) || math.IsInf(v, 0) || v < silence {
			out[i] = silence
		}
	}
	return out
}

func (c curve) points() plotter.XYs {
	level := audible(c.level)
	out := make(plotter.XYs, len(level))
	for i := range level {
		out[i] = plotter.XY{X: c.frequency[i], Y: level[i]}
	}
	return out
}

// drawCurves draws curves over log-frequency, with a legend above.
func drawCurves(c draw.Canvas, curves []curve, absolute bool) {
	drawLevels(c, curves, "level, "+levelUnit(absolute))
}

// drawLevels is drawCurves with words of its own beside the axis.
func drawLevels(c draw.Canvas, curves []curve, words string) {
	p := newPlot("frequency, Hz", words)
	p.X.Scale, p.X.Tick.Marker = plot.LogScale{}, frequencyTicks{}
	p.Add(newGrid())
	for _, l := range curves {
		p.Add(&plotter.Line{XYs: l.points(), LineStyle: l.style})
	}
	p.X.Min, p.X.Max = lowest, highest
	p.Y.Min, p.Y.Max = levelRange(curves)
	p.Y.Tick.Marker = evenTicks{niceStep(p.Y.Max-p.Y.Min, 10)}
	var entries []entry
	for _, l := range curves {
		if l.name != "" {
			entries = append(entries, entry{l.name, l.style})
		}
	}
	c = legendAbove(c, entries)
	p.Draw(draw.Crop(c, 0, -8, 0, 0))
}

// levelUnit names the unit of levels.
func levelUnit(absolute bool) string {
	if absolute {
		return "dB SPL"
	}
	return "dB over one driver at 1 m"
}

// levelRange returns the ends of the dB axis: the named curves and some air.
func levelRange(curves []curve) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, l := range curves {
		for i, v := range audible(l.level) {
			if f := l.frequency[i]; f < lowest || f > highest || v == silence {
				continue
			}
			high = max(high, v)
			if l.name != "" {
				low = min(low, v)
			}
		}
	}
	if low > high {
		return -30, 0
	}
	high = 5 * math.Ceil((high+1)/5)
	low = 5 * math.Floor((low-2)/5)
	return max(min(low, high-20), high-deepest), high
}

func newGrid() *plotter.Grid {
	g := plotter.NewGrid()
	g.Horizontal = draw.LineStyle{Color: rule, Width: 0.5}
	g.Vertical = draw.LineStyle{Color: rule, Width: 0.5}
	return g
}

// entry is one line of a legend.
type entry struct {
	name  string
	style draw.LineStyle
}

// legendAbove writes a legend in rows above a plot and returns the room left.
func legendAbove(c draw.Canvas, entries []entry) draw.Canvas {
	const sample, line = 30, 16
	style := aligned(words(10, ink), draw.XLeft, draw.YCenter)
	x, y := c.Min.X, c.Max.Y-line/2
	for _, e := range entries {
		wide := sample + 6 + style.Width(e.name)
		if x > c.Min.X && x+wide > c.Max.X {
			x, y = c.Min.X, y-line
		}
		c.StrokeLine2(e.style, x, y, x+sample, y)
		c.FillText(style, vg.Point{X: x + sample + 6, Y: y + lift}, e.name)
		x += wide + 22
	}
	c.Max.Y = y - line/2 - 8
	return c
}
