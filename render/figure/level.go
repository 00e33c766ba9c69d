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

// curve is one line of levels over frequency.
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

func (c curve) points() plotter.XYs { return over(c.frequency, audible(c.level), 1) }

// over pairs values, scaled, with what they are over.
func over(x, y []float64, scale float64) plotter.XYs {
	out := make(plotter.XYs, len(y))
	for i := range y {
		out[i] = plotter.XY{X: x[i], Y: scale * y[i]}
	}
	return out
}

// levels returns a chart of levels over frequencies from low to high, in Hz.
func levels(unit string, low, high float64, curves []curve, under ...plot.Plotter) *chart {
	c := newChart("frequency, Hz", unit, under...)
	for _, l := range curves {
		c.line(l.name, l.points(), l.style)
	}
	c.frequencies(low, high)
	c.Y.Min, c.Y.Max = levelRange(curves)
	c.steps(0, 10)
	return c
}

// levelRange returns the ends of the dB axis: the named curves and some air.
func levelRange(curves []curve) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, l := range curves {
		for i, v := range audible(l.level) {
			if f := l.frequency[i]; f < lowest || f > highest || v < silence+1 { // smoothed, it is off by rounding
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

// levelAxis names an axis of levels.
func levelAxis(absolute bool) string { return "level, " + words.Unit(absolute) }

// Response draws the level at the spot over frequency: all drivers in step,
// with the delays, and as built, smoothed to third octaves; behind them, thin
// and faint, the last two as they are. A plan without a response is an error.
func Response(w io.Writer, f Format, p *timing.Plan) error {
	r := p.Response
	if len(r.Frequency) < 2 {
		return nothing("response")
	}
	delayed, built := stroke(0, 2.4), stroke(1, 2)
	c := levels(levelAxis(p.IsAbsolute()), lowest, highest, []curve{
		{"", r.Frequency, r.Unaligned, thin(built)},
		{"", r.Frequency, r.Aligned, thin(delayed)},
		{"in step, the most there can be", r.Frequency, smooth(r.Frequency, r.InStep), dotted(1.4)},
		{"as built, without delays", r.Frequency, smooth(r.Frequency, r.Unaligned), built},
		{"with the delays", r.Frequency, smooth(r.Frequency, r.Aligned), delayed},
	}, joins(p)...)
	c.nameJoins(p)
	if p.Silent() {
		c.Add(saying(words.NoSound))
	}
	return c.write(w, f, words.OfResponse(p))
}

// joins shade where the ball takes over from the field of a body as it is, in those of some plans
// that have one.
func joins(plans ...*timing.Plan) []plot.Plotter {
	var out shadows
	for _, p := range plans {
		if s := p.Solved(); s != nil {
			out = append(out, timing.Null{Low: s.From, High: s.To})
		}
	}
	if out == nil {
		return nil
	}
	return []plot.Plotter{out}
}

// nameJoins puts what is shaded so into the legend.
func (c *chart) nameJoins(plans ...*timing.Plan) {
	if joins(plans...) != nil {
		c.legend = append(c.legend, ofLine(words.Join, draw.LineStyle{Color: pale, Width: 9}))
	}
}

// thin returns the style of the unsmoothed line behind a smoothed one.
func thin(s draw.LineStyle) draw.LineStyle {
	s.Color = faint(s.Color.(color.NRGBA))
	s.Width, s.Dashes = vg.Length(0.7), nil
	return s
}

// Compare draws the levels of several plans, each at its own spot with its own
// delays, smoothed to third octaves. No plans, or none with a response, are an error.
func Compare(w io.Writer, f Format, plans []*timing.Plan) error {
	var curves []curve
	for i, p := range plans {
		if r := p.Response; len(r.Frequency) >= 2 {
			curves = append(curves, curve{words.Compared(p, plans), r.Frequency, smooth(r.Frequency, r.Aligned), stroke(i, 2)})
		}
	}
	if len(curves) == 0 {
		return nothing("comparison")
	}
	relative := slices.ContainsFunc(plans, func(p *timing.Plan) bool { return !p.IsAbsolute() })
	c := levels(levelAxis(!relative), lowest, highest, curves, joins(plans...)...)
	c.nameJoins(plans...)
	return c.write(w, f, words.OfComparison(plans))
}

// lowestTone in Hz is where the picture of a woofer begins.
const lowestTone = 20

// Woofer draws the level at the spot over frequency of the array behind its high-pass,
// of the woofer behind its low-pass, of both together, and, thin, of both together
// with the woofer's other polarity; a line marks the crossover. Levels of no
// frequency are an error.
func Woofer(w io.Writer, f Format, p *timing.Plan, x timing.Woofer) error {
	if len(x.Frequency) < 2 {
		return nothing("woofer")
	}
	curves := []curve{
		{"the sum, other polarity", x.Frequency, x.SumOtherPolarity, stroke(3, 1)},
		{"array", x.Frequency, x.ArrayLevel, stroke(1, 1.8)},
		{"woofer", x.Frequency, x.WooferLevel, stroke(2, 1.8)},
		{"the sum", x.Frequency, x.Sum, stroke(0, 2.6)},
	}
	low, high := levelRange(curves)
	corner := x.LowPass.Corner()
	mark := curve{"crossover", []float64{corner, corner}, []float64{low, high}, dotted(1)}
	c := levels(levelAxis(p.IsAbsolute()), lowestTone, highest, slices.Insert(curves, 0, mark))
	c.Y.Min, c.Y.Max = low, high
	c.steps(0, 10)
	slices.Reverse(c.legend)
	return c.write(w, f, words.OfWoofer(p, x))
}

// pale lies under the frequencies that are left alone.
var pale = color.NRGBA{239, 239, 239, 255}

// Levelling draws the level round the spot over frequency before and after it is
// levelled, what it is to be, and the stretches that are left alone. A levelling
// without frequencies is an error.
func Levelling(w io.Writer, f Format, p *timing.Plan, l timing.Levelling) error {
	if len(l.Frequency) < 2 {
		return nothing("levelling")
	}
	curves := append([]curve{
		{"aimed at", l.Frequency, filled(len(l.Frequency), l.Target), dotted(1.2)},
		{"before", l.Frequency, l.Before, stroke(1, 1.8)},
		{"after", l.Frequency, l.After, stroke(0, 2.4)},
	}, errorBand(l)...)
	c := levels(levelAxis(p.IsAbsolute()), l.Frequency[0], l.Frequency[len(l.Frequency)-1], curves, shadows(l.Nulls))
	c.Add(losses(l.Nulls))
	if len(l.Nulls) > 0 {
		c.legend = append(c.legend, ofLine("left alone, with what is lost out of step", draw.LineStyle{Color: pale, Width: 9}))
	}
	return c.write(w, f, words.OfLevelling(p, l))
}

// filled returns n times a value.
func filled(n int, v float64) []float64 { return slices.Repeat([]float64{v}, n) }

// leastError is the model's error in dB that is wide enough to be drawn.
const leastError = 0.1

// errorBand returns the edges of the band about the mean in which the level is left
// alone, since the model does not know it better; none where that is no band.
func errorBand(l timing.Levelling) []curve {
	if len(l.Error) != len(l.Frequency) || slices.Max(l.Error) < leastError {
		return nil
	}
	high, low := about(filled(len(l.Error), l.Target), func(f int) float64 { return l.Error[f] })
	return []curve{{"the model's own error", l.Frequency, high, edge}, {"", l.Frequency, low, edge}}
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
	style := aligned(font(9, quiet), draw.XCenter, draw.YTop)
	for _, n := range s {
		left, right := stretch(c, p, n)
		text := fmt.Sprintf("\u2212%.0f dB", n.Loss)
		if style.Width(text) < right-left-2 {
			c.FillText(style, vg.Point{X: (left + right) / 2, Y: c.Max.Y - 5}, text)
		}
	}
}
