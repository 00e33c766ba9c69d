package figure

import (
	"fmt"
	"io"
	"math"

	"pappus/timing"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Arrivals draws, for each driver by its number, its delay as a stick and how
// much later than the first it is heard at the spot: by the model's own field, and
// along the straight line. Where delay and field add up to the same for all, all are
// heard at once. A plan without arrivals is ErrNothing.
func Arrivals(w io.Writer, f Format, p *timing.Plan) error {
	if len(p.Arrivals) == 0 || len(p.Arrivals) != len(p.Array.Mounts) || p.SpeedOfSound <= 0 {
		return fmt.Errorf("arrivals: %w", ErrNothing)
	}
	return write(w, f, func(c draw.Canvas) {
		c = heading(c, nameOf(p)+": delay and arrival of each driver",
			spotText(p)+"; arrivals counted from the first driver heard")
		c = arrivalKey(c)
		arrivalPlot(p).Draw(draw.Crop(c, 0, -8, 0, 0))
	})
}

func arrivalPlot(p *timing.Plan) *plot.Plot {
	s := newSticks(p)
	out := newPlot("driver number", "time, µs")
	out.Add(newGrid(), s)
	out.X.Min, out.X.Max = s.number[0]-0.7, s.number[0]+0.7
	for i, n := range s.number {
		out.X.Min, out.X.Max = min(out.X.Min, n-0.7), max(out.X.Max, n+0.7)
		out.Y.Max = max(out.Y.Max, s.delay[i], s.heard[i], s.straight[i], 1)
		out.Y.Min = min(out.Y.Min, s.straight[i], 0)
	}
	span := out.Y.Max - out.Y.Min
	out.Y.Max += 0.06 * span
	if out.Y.Min < 0 {
		out.Y.Min -= 0.06 * span
	}
	out.Y.Tick.Marker = evenTicks{niceStep(span, 8)}
	out.X.Tick.Marker = evenTicks{max(1, niceStep(out.X.Max-out.X.Min, 24))}
	return out
}

// sticks are the marks of all drivers, times in microseconds.
type sticks struct {
	number, delay, heard, straight []float64
}

func newSticks(p *timing.Plan) sticks {
	first := math.Inf(1)
	for _, a := range p.Arrivals {
		first = min(first, a.Heard())
	}
	var s sticks
	for i, a := range p.Arrivals {
		s.number = append(s.number, float64(p.Array.Mounts[i].ID))
		s.delay = append(s.delay, 1e6*a.Delay)
		s.heard = append(s.heard, 1e6*(a.Heard()-first))
		s.straight = append(s.straight, 1e6*(a.Straight/p.SpeedOfSound-first))
	}
	return s
}

// The marks of a driver: colour and shape both tell them apart.
var (
	delayLine    = draw.LineStyle{Color: colours[0], Width: 1.6}
	delayMark    = draw.GlyphStyle{Color: colours[0], Radius: 3.6, Shape: draw.CircleGlyph{}}
	heardMark    = draw.GlyphStyle{Color: colours[1], Radius: 3.4, Shape: draw.PyramidGlyph{}}
	straightMark = draw.GlyphStyle{Color: ink, Radius: 3.2, Shape: draw.RingGlyph{}}
)

// Plot draws the sticks and the marks.
func (s sticks) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	for i, n := range s.number {
		at := func(v float64) vg.Point { return vg.Point{X: x(n), Y: y(v)} }
		c.StrokeLine2(delayLine, x(n), y(0), x(n), y(s.delay[i]))
		c.DrawGlyph(delayMark, at(s.delay[i]))
		c.DrawGlyph(heardMark, at(s.heard[i]))
		c.DrawGlyph(straightMark, at(s.straight[i]))
	}
}

// arrivalKey explains the marks above the plot and returns the room left.
func arrivalKey(c draw.Canvas) draw.Canvas {
	style := aligned(words(10, ink), draw.XLeft, draw.YCenter)
	x, y := c.Min.X+6, c.Max.Y-8
	for _, e := range []struct {
		mark draw.GlyphStyle
		name string
	}{
		{delayMark, "delay given to the driver"},
		{heardMark, "later than the first, as it is heard"},
		{straightMark, "along the straight line"},
	} {
		if e.mark == delayMark {
			c.StrokeLine2(delayLine, x, y-8, x, y)
		}
		c.DrawGlyph(e.mark, vg.Point{X: x, Y: y})
		c.FillText(style, vg.Point{X: x + 10, Y: y + lift}, e.name)
		x += 10 + style.Width(e.name) + 26
	}
	c.Max.Y -= 24
	return c
}
