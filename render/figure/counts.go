package figure

import (
	"fmt"
	"io"
	"math"

	"pappus/timing"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Counts draws what each number of channels leaves at the spot: the smear above,
// the comb onset below. A plan without counts is ErrNothing.
func Counts(w io.Writer, f Format, p *timing.Plan) error {
	if len(p.Counts) == 0 {
		return fmt.Errorf("counts: %w", ErrNothing)
	}
	var smear, onset plotter.XYs
	for _, c := range p.Counts {
		n := float64(c.Channels)
		smear = append(smear, plotter.XY{X: n, Y: 1e6 * c.Smear})
		if !math.IsInf(c.CombOnset, 0) {
			onset = append(onset, plotter.XY{X: n, Y: c.CombOnset / 1000})
		}
	}
	return write(w, f, func(c draw.Canvas) {
		c = heading(c, nameOf(p)+": what more channels bring", spotText(p)+fmt.Sprintf("; the plan has %d", len(p.Channels)))
		middle := (c.Max.Y - c.Min.Y) / 2
		countPlot(smear, "", "smear, µs", 0).Draw(draw.Crop(c, 0, 0, middle, 0))
		countPlot(onset, "channels", "comb onset, kHz", 1).Draw(draw.Crop(c, 0, 0, 0, -middle-vg.Points(10)))
	})
}

func countPlot(points plotter.XYs, across, up string, colour int) *plot.Plot {
	p := newPlot(across, up)
	style := stroke(0, 2)
	style.Color = colours[colour]
	p.Add(newGrid(), &plotter.Line{XYs: points, LineStyle: style},
		&plotter.Scatter{XYs: points, GlyphStyle: draw.GlyphStyle{Color: style.Color, Radius: 3, Shape: draw.CircleGlyph{}}})
	p.X.Min, p.X.Max = 0.5, 2.5
	p.Y.Min, p.Y.Max = 0, 1
	for _, at := range points {
		p.X.Max, p.Y.Max = max(p.X.Max, at.X+0.5), max(p.Y.Max, 1.05*at.Y)
	}
	p.X.Tick.Marker = evenTicks{max(1, niceStep(p.X.Max-p.X.Min, 16))}
	p.Y.Tick.Marker = evenTicks{niceStep(p.Y.Max-p.Y.Min, 6)}
	return p
}

// Excursion draws how far the cone of the driver that gets most moves, with the
// high-pass and without, and how far it may. A plan whose driver's values are
// not known is ErrNothing.
func Excursion(w io.Writer, f Format, p *timing.Plan) error {
	x := p.Protection
	if len(x.Excursion) == 0 {
		return fmt.Errorf("excursion: %w", ErrNothing)
	}
	mm := func(v []float64) plotter.XYs {
		out := make(plotter.XYs, len(v))
		for i := range v {
			out[i] = plotter.XY{X: x.Frequency[i], Y: 1000 * v[i]}
		}
		return out
	}
	last := x.Frequency[len(x.Frequency)-1]
	reach := plotter.XYs{{X: lowest, Y: 1000 * x.Reach}, {X: last, Y: 1000 * x.Reach}}
	lines := []struct {
		name   string
		points plotter.XYs
		style  draw.LineStyle
	}{
		{"with the high-pass", mm(x.Excursion), stroke(0, 2.4)},
		{"without", mm(x.Unprotected), stroke(1, 1.8)},
		{"as far as it may", reach, stroke(6, 1.2)},
	}
	return write(w, f, func(c draw.Canvas) {
		c = heading(c, nameOf(p)+": how far a cone moves", fmt.Sprintf("peak, one way, at %.3g V over the driver", x.Volt))
		out := newPlot("frequency, Hz", "excursion, mm")
		out.X.Scale, out.X.Tick.Marker = plot.LogScale{}, frequencyTicks{}
		out.Add(newGrid())
		var entries []entry
		out.Y.Max = 1100 * x.Reach
		for _, l := range lines {
			out.Add(&plotter.Line{XYs: l.points, LineStyle: l.style})
			entries = append(entries, entry{l.name, l.style})
			for _, at := range l.points {
				if at.X >= lowest {
					out.Y.Max = max(out.Y.Max, 1.1*at.Y)
				}
			}
		}
		out.X.Min, out.X.Max, out.Y.Min = lowest, last, 0
		out.Y.Tick.Marker = evenTicks{niceStep(out.Y.Max, 8)}
		out.Draw(draw.Crop(legendAbove(c, entries), 0, -8, 0, 0))
	})
}
