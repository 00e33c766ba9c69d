package figure

import (
	"io"
	"math"

	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/verdict"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Phase draws how the direct sound at the spot turns over frequency: above the phase with the
// first arrival taken out, below the group delay after that, with the delays, without, and as one
// driver does alone. Where nothing is heard it says so.
func Phase(w io.Writer, f Format, p *timing.Plan) error {
	x := p.Phase
	if len(x.Frequency) < 3 {
		return nothing("phase")
	}
	pair := newTurns(x.Frequency, p.SpeedOfSound)
	pair.add("one driver alone: all in step", x.InStep, dotted(1.4), true)
	pair.add("as built, without delays", x.Unaligned, stroke(1, 1.4), false) // turns as often as it likes
	pair.add("with the delays", x.Aligned, stroke(0, 2.2), true)
	if p.Silent() {
		pair.above.Add(saying(words.NoSound))
	}
	return pair.write(w, f, words.OfPhase(p))
}

// turns are phases over frequency, above, and their group delays, below.
type turns struct {
	frequency    []float64 // Hz
	above, below *chart
	held         [2][]plotter.XYs // of what the axes must hold
}

// newTurns returns a picture without any, with a second axis for group delays as ways, at a
// speed in m/s.
func newTurns(frequency []float64, speed float64) *turns {
	t := &turns{frequency: frequency, above: newChart("", "phase, degrees"), below: newChart("frequency, Hz", "group delay, ms")}
	t.below.beside = besideAxis{"mm of way", speed}
	return t
}

// add draws one, to which the axis of phases is fitted if that is so.
func (t *turns) add(name string, of timing.Turn, style draw.LineStyle, fitted bool) {
	angle, group := known(t.frequency, of.Angle, 180/math.Pi), known(t.frequency, of.Group, 1000)
	for _, line := range angle {
		t.above.line(name, line, style)
		name = ""
	}
	for _, line := range group {
		t.below.line("", line, style)
	}
	if fitted {
		t.held[0] = append(t.held[0], angle...)
	}
	t.held[1] = append(t.held[1], group...)
}

// write fits the axes and writes the picture.
func (t *turns) write(w io.Writer, f Format, head words.Picture) error {
	above, below := t.above, t.below
	above.Y.Min, above.Y.Max = ends(t.held[0], 0, 180)
	below.Y.Min, below.Y.Max = ends(t.held[1], 0.02, 0.5)
	for _, c := range []*chart{above, below} {
		c.frequencies(lowest, highest)
	}
	above.Y.Tick.Marker = evenTicks{turnStep(above.Y.Max - above.Y.Min)}
	below.steps(0, 6)
	return writePair(w, f, head, above, below)
}

// MeasuredPhase draws how what was measured of a whole array turns over frequency, and what was
// planned, each with its first arrival taken out. No frequencies are an error.
func MeasuredPhase(w io.Writer, f Format, p *timing.Plan, x verdict.Turns) error {
	if len(x.Frequency) < 3 {
		return nothing("measured phase")
	}
	pair := newTurns(x.Frequency, p.SpeedOfSound)
	pair.add("measured", x.Measured, stroke(0, 2.2), true)
	pair.add("planned", x.Planned, stroke(1, 1.6), true)
	return pair.write(w, f, words.OfMeasuredPhase(p, x))
}

// turnStep returns between how many degrees a phase is marked: parts of a turn, for so many.
func turnStep(span float64) float64 {
	for _, step := range []float64{45, 90, 180} {
		if span/step <= 8 {
			return step
		}
	}
	return 360 * math.Ceil(span/360/8)
}

// known pairs values, scaled, with what they are over, in runs without those that are not finite.
func known(x, y []float64, scale float64) (runs []plotter.XYs) {
	var run plotter.XYs
	for i, v := range y {
		if !math.IsNaN(v) && !math.IsInf(v, 0) {
			run = append(run, plotter.XY{X: x[i], Y: scale * v})
			continue
		}
		if len(run) > 1 {
			runs = append(runs, run)
		}
		run = nil
	}
	if len(run) > 1 {
		runs = append(runs, run)
	}
	return runs
}

// ends returns the ends of an axis for lines from lowest to highest, but for a share of the least
// and the greatest values each, which are spikes beside a null; 0 is held, and least at least.
func ends(lines []plotter.XYs, share, least float64) (low, high float64) {
	var all []float64
	for _, line := range lines {
		for _, at := range line {
			if at.X >= lowest && at.X <= highest {
				all = append(all, at.Y)
			}
		}
	}
	if len(all) > 0 {
		low, high = between(all, share)
	}
	low, high = min(low, 0), max(high, 0)
	if high-low < least {
		middle := (low + high) / 2
		low, high = middle-least/2, middle+least/2
	}
	air := 0.06 * (high - low)
	return low - air, high + air
}

// saying writes words in the middle of a panel that has nothing to draw.
type saying string

// Plot writes the words.
func (s saying) Plot(c draw.Canvas, _ *plot.Plot) {
	label(&c, aligned(font(10.5, quiet), draw.XCenter, draw.YCenter), c.Center(), string(s))
}

// besideAxis is a second axis at the right of a chart: what is so many times the first.
type besideAxis struct {
	name  string
	times float64
}

// drawBeside draws a second axis at the right edge of a chart's data.
func (c *chart) drawBeside(data draw.Canvas) {
	line := draw.LineStyle{Color: quiet, Width: 0.6}
	high := data.Max.Y - data.Min.Y
	c2 := data
	c2.StrokeLine2(line, data.Max.X, data.Min.Y, data.Max.X, data.Max.Y)
	low, top := c.Y.Min*c.beside.times, c.Y.Max*c.beside.times
	most := max(2, min(8, int(high/22)))
	for _, t := range (evenTicks{niceStep(top-low, most)}).Ticks(low, top) {
		y := data.Min.Y + high*vg.Length((t.Value-low)/(top-low))
		c2.StrokeLine2(line, data.Max.X, y, data.Max.X+4, y)
		c2.FillText(aligned(font(9.5, ink), draw.XLeft, draw.YCenter), vg.Point{X: data.Max.X + 7, Y: y + lift}, t.Label)
	}
	name := aligned(font(10.5, ink), draw.XCenter, draw.YTop)
	name.Rotation = -math.Pi / 2
	c2.FillText(name, vg.Point{X: data.Max.X + besideWide - 10, Y: data.Center().Y}, c.beside.name)
}
