package figure

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"slices"

	"pappus/timing"
	"pappus/timing/path"

	"gonum.org/v1/gonum/spatial/r3"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg/draw"
)

// Ways draws how much later than along the straight line each driver is heard,
// over the angle between the driver and the spot: by the path round the body, by
// the field, and by the peak of the impulse response. Drivers that are not
// heard at the spot at all are left out. A plan without arrivals is ErrNothing.
func Ways(w io.Writer, f Format, p *timing.Plan) error {
	if len(p.Arrivals) == 0 {
		return fmt.Errorf("ways of taking delays: %w", ErrNothing)
	}
	ways := waysOf(p)
	return write(w, f, func(c draw.Canvas) {
		c = heading(c, nameOf(p)+": when each driver is heard, by three ways of taking it",
			spotText(p)+"; 0: along the straight line, through the body")
		var entries []entry
		for _, way := range ways {
			entries = append(entries, entry{way.name, way.style})
		}
		c = legendAbove(c, entries)
		waysPlot(ways).Draw(draw.Crop(c, 0, -8, 0, 0))
	})
}

// way is one way of taking arrivals: microseconds over degrees.
type way struct {
	name   string
	style  draw.LineStyle
	points plotter.XYs
}

func waysOf(p *timing.Plan) []way {
	ways := []way{
		{name: "path round the body", style: stroke(0, 2)},
		{name: "field, fitted to the model's phase", style: stroke(1, 2)},
		{name: "peak of the impulse response", style: stroke(2, 2)},
	}
	for i, a := range p.Arrivals {
		if math.IsNaN(a.Field) || math.IsNaN(p.Peaks[i]) {
			continue
		}
		centre := p.Array.Body.BallCentre
		angle := path.Angle(r3.Sub(p.Array.Mounts[i].Point, centre), r3.Sub(p.Array.Spot, centre)) * 180 / math.Pi
		straight := a.Straight / p.SpeedOfSound
		for k, t := range []float64{a.Time, a.Field, p.Peaks[i]} {
			ways[k].points = append(ways[k].points, plotter.XY{X: angle, Y: 1e6 * (t - straight)})
		}
	}
	for _, way := range ways {
		slices.SortFunc(way.points, func(a, b plotter.XY) int { return cmp.Compare(a.X, b.X) })
	}
	return ways
}

func waysPlot(ways []way) *plot.Plot {
	p := newPlot("angle between driver and listening spot, degrees", "later than the straight line, µs")
	p.Add(newGrid())
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, 180, -5, 5
	for _, way := range ways {
		mark := draw.GlyphStyle{Color: way.style.Color, Radius: 2.6, Shape: draw.CircleGlyph{}}
		p.Add(&plotter.Line{XYs: way.points, LineStyle: way.style}, &plotter.Scatter{XYs: way.points, GlyphStyle: mark})
		for _, at := range way.points {
			p.Y.Min, p.Y.Max = min(p.Y.Min, at.Y-5), max(p.Y.Max, at.Y+5)
		}
	}
	p.X.Tick.Marker = evenTicks{30}
	p.Y.Tick.Marker = evenTicks{niceStep(p.Y.Max-p.Y.Min, 8)}
	return p
}
