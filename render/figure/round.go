package figure

import (
	"io"

	"pappus/layout/prose"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/band"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Round draws a plan for nobody in particular: at the left, for each circle round the body's
// axis, how much louder it is than with all drivers in parallel, and below how uneven, which
// all drivers in parallel are too; at the right what is between even and loud, with the
// plan's own. A plan with another aim is an error.
func Round(w io.Writer, f Format, p *timing.Plan) error {
	if p.Seating == nil || p.Seating.Round == nil {
		return nothing("all round")
	}
	r := p.Seating.Round
	above, below := newChart("", "louder, dB"), newChart("frequency, Hz", "uneven, dB")
	legend := []entry{}
	for i, height := range r.Height {
		style, plain := stroke(i, 2), stroke(i, 1)
		plain.Color, plain.Dashes = faint(colours[i%len(colours)]), dashes[2]
		above.line("", over(r.Octaves, r.Planned.Gain[i], 1), style)
		below.line("", over(r.Octaves, r.Without.Deviation[i], 1), plain)
		below.line("", over(r.Octaves, r.Planned.Deviation[i], 1), style)
		legend = append(legend, ofLine(words.Circle(&p.Spot, height), style))
	}
	legend = append(legend, ofLine("all drivers in parallel", draw.LineStyle{Color: quiet, Width: 1, Dashes: dashes[2]}))
	above.line("", plotter.XYs{{X: r.Octaves[0], Y: 0}, {X: r.Octaves[len(r.Octaves)-1], Y: 0}}, draw.LineStyle{Color: quiet, Width: 1, Dashes: dashes[2]})
	for _, c := range []*chart{above, below} {
		c.frequencies(r.Octaves[0], r.Octaves[len(r.Octaves)-1])
		c.X.Tick.Marker = octaveTicks(r.Octaves)
		room := 0.06 * (c.Y.Max - c.Y.Min)
		c.Y.Min, c.Y.Max = c.Y.Min-room, c.Y.Max+room
	}
	below.Y.Min = 0
	above.steps(0, 6)
	below.steps(0, 6)
	front := roundFront(r)
	return write(w, f, func(page draw.Canvas) {
		room := legendAbove(heading(page, words.OfRound(p)), legend)
		cut := 0.6 * (room.Max.X - room.Min.X)
		panels := [][]*plot.Plot{{above.Plot}, {below.Plot}}
		left := draw.Crop(room, 0, cut-(room.Max.X-room.Min.X)-10, 0, 0)
		for i, c := range plot.Align(panels, draw.Tiles{Rows: 2, Cols: 1, PadY: vg.Points(8)}, left) {
			panels[i][0].Draw(c[0])
		}
		front.Draw(draw.Crop(room, cut+10, -8, 0, 0))
	})
}

// roundFront draws what is between even and loud: how much louder over how uneven.
func roundFront(r *timing.Round) *chart {
	c := newChart("most uneven, dB", "louder on the mean, dB")
	c.Add(roundPoints{r})
	c.X.Min, c.X.Max, c.Y.Min, c.Y.Max = 0, 1, 0, 0.5
	for _, x := range append([]timing.RoundPoint{r.Planned.Point(r.Loud), r.Without.Point(0)}, r.Front...) {
		c.X.Max = max(c.X.Max, 1.12*x.Deviation)
		c.Y.Min, c.Y.Max = min(c.Y.Min, x.Gain-0.1), max(c.Y.Max, x.Gain+0.35)
	}
	c.steps(6, 8)
	return c
}

// roundPoints are the plans between even and loud, the plan's own, and all in parallel.
type roundPoints struct{ *timing.Round }

// Plot draws the points.
func (r roundPoints) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	at := func(v timing.RoundPoint) vg.Point { return vg.Point{X: x(v.Deviation), Y: y(v.Gain)} }
	own, plain := at(r.Planned.Point(r.Loud)), at(r.Without.Point(0))
	style := font(9, ink)
	for _, v := range r.Front {
		label(&c, aligned(style, draw.XCenter, draw.YBottom), vg.Point{X: at(v).X, Y: at(v).Y + 8}, prose.Sprintf("%g", v.Loud))
	}
	c.FillText(aligned(font(9, quiet), draw.XLeft, draw.YTop), vg.Point{X: c.Min.X + 6, Y: c.Max.Y - 4}, "numbers: loud, from 0, even, to 1")
	beside := aligned(style, draw.XRight, draw.YCenter)
	label(&c, beside, vg.Point{X: own.X - 12, Y: own.Y}, "as planned")
	label(&c, beside, vg.Point{X: plain.X - 9, Y: plain.Y}, "in parallel")
	for _, v := range r.Front {
		c.DrawGlyph(draw.GlyphStyle{Color: colours[0], Radius: 4, Shape: draw.CircleGlyph{}}, at(v))
	}
	c.DrawGlyph(draw.GlyphStyle{Color: ink, Radius: 7, Shape: draw.RingGlyph{}}, own)
	c.DrawGlyph(draw.GlyphStyle{Color: quiet, Radius: 4.2, Shape: draw.RingGlyph{}}, plain)
}

// octaveTicks mark octaves by their names.
func octaveTicks(octaves []float64) (ticks plot.ConstantTicks) {
	for _, centre := range octaves {
		ticks = append(ticks, plot.Tick{Value: centre, Label: band.Name(centre)})
	}
	return ticks
}
