package figure

import (
	"cmp"
	"image/color"
	"io"
	"math"
	"slices"

	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/path"

	"gonum.org/v1/gonum/spatial/r3"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Arrivals draws, for each driver by its number or, where they are many, in the order in which
// they are heard, its delay as a stick and how
// much later than the first it is heard at the spot: by the model's own field, and
// along the straight line. Where delay and field add up to the same for all, all are
// heard at once. A plan without arrivals is an error.
func Arrivals(w io.Writer, f Format, p *timing.Plan) error {
	if len(p.Arrivals) == 0 || len(p.Arrivals) != len(p.Array.Mounts) || p.SpeedOfSound <= 0 {
		return nothing("arrivals")
	}
	s := newSticks(p)
	across := "driver number"
	if s.many = len(s.number) > mostSticks; s.many {
		s.sortByHeard()
		across = "drivers, in the order in which they are heard"
	}
	c := newChart(across, "time, µs")
	c.Add(s)
	if p.Silent() {
		c.Add(saying(words.NoSound))
	}
	c.beside = besideAxis{"mm of way", way(1, p.SpeedOfSound)}
	c.X.Min, c.X.Max = s.number[0]-0.7, s.number[0]+0.7
	for i, n := range s.number {
		c.X.Min, c.X.Max = min(c.X.Min, n-0.7), max(c.X.Max, n+0.7)
		c.Y.Max = max(c.Y.Max, s.delay[i], s.heard[i], s.straight[i], 1)
		c.Y.Min = min(c.Y.Min, s.straight[i], 0)
	}
	span := c.Y.Max - c.Y.Min
	c.Y.Tick.Marker = evenTicks{niceStep(span, 8)}
	c.X.Tick.Marker = evenTicks{max(1, niceStep(c.X.Max-c.X.Min, 24))}
	c.Y.Max += 0.06 * span
	if c.Y.Min < 0 {
		c.Y.Min -= 0.06 * span
	}
	c.legend = sticksLegend
	return c.write(w, f, words.OfArrivals(p))
}

// sticks are the marks of all drivers, times in microseconds.
type sticks struct {
	number, delay, heard, straight []float64
	many                           bool // dots alone, so that they do not hide each other
}

// mostSticks is up to how many drivers have sticks: on the width of the picture they are 5 points
// apart then, and a mark is 7 wide.
const mostSticks = 120

// sortByHeard numbers drivers in the order in which they are heard.
func (s *sticks) sortByHeard() {
	order := make([]int, len(s.number))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(s.heard[a], s.heard[b]) })
	for rank, i := range order {
		s.number[i] = float64(rank + 1)
	}
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

// sticksLegend explains the marks.
var sticksLegend = []entry{
	{"delay given to the driver", 16, 20, func(c *draw.Canvas, x, y vg.Length) {
		c.StrokeLine2(delayLine, x+6, y-8, x+6, y)
		c.DrawGlyph(delayMark, vg.Point{X: x + 6, Y: y})
	}},
	{"later than the first, as it is heard", 16, 20, func(c *draw.Canvas, x, y vg.Length) { c.DrawGlyph(heardMark, vg.Point{X: x + 6, Y: y}) }},
	{"along the straight line", 16, 20, func(c *draw.Canvas, x, y vg.Length) { c.DrawGlyph(straightMark, vg.Point{X: x + 6, Y: y}) }},
}

// Plot draws the sticks and the marks.
func (s sticks) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	for i, n := range s.number {
		at := func(v float64) vg.Point { return vg.Point{X: x(n), Y: y(v)} }
		if s.many {
			for k, v := range []float64{s.straight[i], s.delay[i], s.heard[i]} {
				dot := draw.GlyphStyle{Color: []color.Color{faint(ink), colours[0], colours[1]}[k], Radius: 1.3, Shape: draw.CircleGlyph{}}
				c.DrawGlyph(dot, at(v))
			}
			continue
		}
		c.StrokeLine2(delayLine, x(n), y(0), x(n), y(s.delay[i]))
		c.DrawGlyph(delayMark, at(s.delay[i]))
		c.DrawGlyph(heardMark, at(s.heard[i]))
		c.DrawGlyph(straightMark, at(s.straight[i]))
	}
}

// Ways draws how much later than along the straight line each driver is heard,
// over the angle between the driver and the spot: by the path round the body, by
// the field, and by the peak of the impulse response. Drivers that are not
// heard at the spot at all are left out. A plan without arrivals is an error.
func Ways(w io.Writer, f Format, p *timing.Plan) error {
	if len(p.Arrivals) == 0 {
		return nothing("ways of taking delays")
	}
	c := newChart("angle between driver and listening spot, degrees", "later than the straight line, µs")
	c.X.Min, c.X.Max, c.Y.Min, c.Y.Max = 0, 180, -5, 5
	for i, points := range later(p) {
		style := stroke(i, 2)
		c.line([]string{"path round the body", "field, fitted to the model's phase", "peak of the impulse response"}[i], points, style)
		c.scatter(points, draw.GlyphStyle{Color: style.Color, Radius: 2.6, Shape: draw.CircleGlyph{}})
		for _, at := range points {
			c.Y.Min, c.Y.Max = min(c.Y.Min, at.Y-5), max(c.Y.Max, at.Y+5)
		}
	}
	c.steps(0, 8)
	c.X.Tick.Marker = evenTicks{30}
	c.beside = besideAxis{"mm of way", way(1, p.SpeedOfSound)}
	if p.Silent() {
		c.Add(saying(words.NoSound))
	}
	return c.write(w, f, words.OfWays(p))
}

// later returns by how many microseconds each driver is later than straight, over degrees:
// by the path, the field and the peak.
func later(p *timing.Plan) [3]plotter.XYs {
	var out [3]plotter.XYs
	for i, a := range p.Arrivals {
		if math.IsNaN(a.Field) || math.IsNaN(p.Peaks[i]) {
			continue
		}
		mount, centre := p.Array.Mounts[i], p.Array.Body.BallCentre
		angle := path.Angle(r3.Sub(mount.Point, centre), r3.Sub(p.Array.PlacingOf(mount).Into(p.Array.Spot), centre)) * 180 / math.Pi
		straight := a.Straight / p.SpeedOfSound
		for k, t := range []float64{a.Time, a.Field, p.Peaks[i]} {
			out[k] = append(out[k], plotter.XY{X: angle, Y: 1e6 * (t - straight)})
		}
	}
	for _, points := range out {
		slices.SortFunc(points, func(a, b plotter.XY) int { return cmp.Compare(a.X, b.X) })
	}
	return out
}
