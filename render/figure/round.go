package figure

import (
	"io"
	"strconv"

	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/band"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Round draws level and evenness for people all round: on the left, for each octave and
// height, the gain over all drivers in parallel with a bar as far up and down as any 30
// degrees are off their circle's mean; on the right what other choices between even and
// loud would bring. A plan that is not for all round, or of which no circle is clear, is an
// error.
func Round(w io.Writer, f Format, p *timing.Plan) error {
	if p.Seating == nil || p.Seating.Round == nil || len(p.Seating.Round.Height) == 0 {
		return nothing("round")
	}
	r := p.Seating.Round
	left, right := roundGains(r), roundFront(r)
	return write(w, f, func(page draw.Canvas) {
		room := legendAbove(heading(page, words.OfRound(p)), left.legend)
		const gap, part = 22, 0.56
		wide := room.Max.X - room.Min.X
		left.Draw(draw.Crop(room, 0, -wide*(1-part)-gap/2, 0, 0))
		right.Draw(draw.Crop(room, wide*part+gap/2, -8, 0, 0))
	})
}

// roundGains draws gains with their deviations.
func roundGains(r *timing.Round) *chart {
	c := newChart("octave", "over all drivers in parallel, dB")
	var ticks plot.ConstantTicks
	low, high := 0.0, 1.0
	for b, centre := range r.Octaves {
		ticks = append(ticks, plot.Tick{Value: float64(b), Label: band.Name(centre)})
	}
	for h, z := range r.Height {
		points := make(plotter.XYs, len(r.Octaves))
		bars := make(plotter.YErrors, len(points))
		for b := range points {
			points[b] = plotter.XY{X: float64(b) + 0.18*(float64(h)-float64(len(r.Height)-1)/2), Y: r.Planned.Gain[h][b]}
			bars[b].Low, bars[b].High = r.Planned.Deviation[h][b], r.Planned.Deviation[h][b]
			low, high = min(low, points[b].Y-bars[b].Low), max(high, points[b].Y+bars[b].High)
		}
		mark := draw.GlyphStyle{Color: colours[h%len(colours)], Radius: 4, Shape: roundShapes[h%len(roundShapes)]}
		c.Add(&plotter.YErrorBars{XYs: points, YErrors: bars, LineStyle: draw.LineStyle{Color: mark.Color, Width: 1.4}, CapWidth: 6})
		c.scatter(points, mark)
		c.legend = append(c.legend, ofMark(decimal(z, 0.01)+" m above the body's centre", mark))
	}
	c.X.Tick.Marker, c.X.Min, c.X.Max = ticks, -0.5, float64(len(r.Octaves))-0.5
	c.Y.Min, c.Y.Max = low-0.4, high+0.4
	c.steps(0, 8)
	return c
}

// roundShapes tell heights apart where colours do not.
var roundShapes = []draw.GlyphDrawer{draw.CircleGlyph{}, draw.BoxGlyph{}, draw.PyramidGlyph{}}

// roundFront draws the plans between even and loud.
func roundFront(r *timing.Round) *chart {
	c := newChart("furthest off even, mean, dB", "louder all round, mean, dB")
	own := r.Own()
	c.Add(roundPoints(r.Front), roundOwn{own.Deviation, own.Gain})
	c.X.Min, c.X.Max, c.Y.Min, c.Y.Max = 0, 1.12*own.Deviation, min(0, own.Gain), own.Gain
	for _, p := range r.Front {
		c.X.Max, c.Y.Min, c.Y.Max = max(c.X.Max, 1.12*p.Deviation), min(c.Y.Min, p.Gain), max(c.Y.Max, p.Gain)
	}
	room := 0.12 * max(c.Y.Max-c.Y.Min, 0.5)
	c.Y.Min, c.Y.Max = c.Y.Min-room, c.Y.Max+room
	c.steps(5, 8)
	return c
}

// roundPoints are plans by how loud they were to be.
type roundPoints []timing.RoundPoint

// Plot draws the points with their weights beside them.
func (r roundPoints) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	for _, one := range r {
		at := vg.Point{X: x(one.Deviation), Y: y(one.Gain)}
		c.DrawGlyph(draw.GlyphStyle{Color: quiet, Radius: 3.4, Shape: draw.CircleGlyph{}}, at)
		c.FillText(aligned(font(9, quiet), draw.XRight, draw.YCenter), vg.Point{X: at.X - 7, Y: at.Y}, "loud "+strconv.FormatFloat(one.Loud, 'f', -1, 64))
	}
}

// roundOwn is the plan's own place among them.
type roundOwn plotter.XY

// Plot draws it with its name.
func (o roundOwn) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	at := vg.Point{X: x(o.X), Y: y(o.Y)}
	c.DrawGlyph(draw.GlyphStyle{Color: colours[0], Radius: 6, Shape: draw.CircleGlyph{}}, at)
	c.FillText(aligned(font(10, ink), draw.XRight, draw.YCenter), vg.Point{X: at.X - 10, Y: at.Y + 12}, "as planned")
}
