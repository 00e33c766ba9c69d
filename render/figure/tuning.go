package figure

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"slices"

	"pappus/layout/prose"
	"pappus/render/words"
	"pappus/timing/damping"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Tuning draws the Q of trials against their stuffing above, with the target and the
// next trial, and the height of the peak over Re below. Trials with the same openings
// have one colour and mark. Bars are one standard error, with the scatter of trials in
// it. next is nil where there is none. Without a trial that has a resonance it is
// an error.
func Tuning(w io.Writer, f Format, name string, trials []damping.Trial, g damping.Goal, next *damping.Next) error {
	groups := grouped(trials)
	if len(groups) == 0 {
		return nothing("tuning")
	}
	q, peak := newChart("", "Q"), newChart("stuffing, g", "peak over Re")
	reach := extent(trials, next)
	most, least := []float64{g.Q, 1}, g.Q
	q.line("", plotter.XYs{{X: -0.02 * reach, Y: g.Q}, {X: reach, Y: g.Q}}, dotted(1.2))
	for i, s := range groups {
		for k := range s.q {
			least = min(least, s.q[k].value*0.95)
			most[0], most[1] = max(most[0], s.q[k].value*1.05), max(most[1], s.peak[k].value*1.05)
		}
		style := groupStyle(i)
		q.Add(joined(s.q, style), trialMarks{s.q, style, i%2 == 1, g.Q})
		peak.Add(joined(s.peak, style), trialMarks{s.peak, style, i%2 == 1, math.NaN()})
		q.legend = append(q.legend, ofMark(s.name, style))
	}
	if next != nil && !next.Reached {
		style := groupStyle(0)
		style.Shape, style.Radius, style.Color = draw.RingGlyph{}, 5, ink
		q.Add(nextMark{*next, g.Q})
		q.legend = append(q.legend, ofMark("next", style))
		if !math.IsNaN(next.Q.Value) {
			most[0], least = max(most[0], next.Q.Value+next.Q.Error), min(least, next.Q.Value-next.Q.Error)
		}
	}
	q.Y.Min, q.Y.Max = max(0, least-0.2*(most[0]-least)), most[0]+0.1*(most[0]-least)
	peak.Y.Min, peak.Y.Max = 1, 1+1.15*(most[1]-1)
	for _, c := range []*chart{q, peak} {
		c.X.Min, c.X.Max = -0.02*reach, reach
		c.steps(0, 6)
		c.X.Tick.Marker = evenTicks{niceStep(reach, 12)}
	}
	return writePair(w, f, words.OfTuning(name, g, next), q, peak)
}

// dot is what a trial has with so much stuffing, in g, and its standard error.
type dot struct {
	stuffing, value, sigma float64
	number                 int // of the trial, from 1
}

// group is trials with the same openings.
type group struct {
	name    string
	q, peak []dot
}

// joined is a thin line through the trials of a group, by rising stuffing, so that the
// eye follows what more of it does.
func joined(dots []dot, style draw.GlyphStyle) *plotter.Line {
	sorted := slices.SortedStableFunc(slices.Values(dots), func(a, b dot) int { return cmp.Compare(a.stuffing, b.stuffing) })
	points := make(plotter.XYs, len(sorted))
	for i, d := range sorted {
		points[i] = plotter.XY{X: d.stuffing, Y: d.value}
	}
	return &plotter.Line{XYs: points, LineStyle: draw.LineStyle{Color: style.Color, Width: 0.7}}
}

// grouped sorts trials with a resonance by their openings, in the order of the log.
func grouped(trials []damping.Trial) []group {
	var out []group
	for i, t := range trials {
		if t.Flat || math.IsNaN(t.Q.Value) {
			continue
		}
		name := "closed"
		if t.Vents > 0 {
			name = prose.Sprintf("%s of %.3g mm", prose.Count(t.Vents, "opening", "openings"), t.VentMM)
			if t.FillG > 0 {
				name += prose.Sprintf(" with %.3g g each", t.FillG)
			}
		}
		k := slices.IndexFunc(out, func(g group) bool { return g.name == name })
		if k < 0 {
			k, out = len(out), append(out, group{name: name})
		}
		q, peak := t.Q.Value, t.PeakOver.Value
		out[k].q = append(out[k].q, dot{t.StuffingG, q, math.Hypot(t.Q.Error, damping.Scatter*q), i + 1})
		out[k].peak = append(out[k].peak, dot{t.StuffingG, peak, math.Hypot(t.PeakOver.Error, damping.Scatter*(peak-1)), i + 1})
	}
	return out
}

// extent returns the end of the axis of stuffing.
func extent(trials []damping.Trial, next *damping.Next) float64 {
	most := 10.0
	for _, t := range trials {
		most = max(most, t.StuffingG)
	}
	if next != nil {
		most = max(most, next.Trial.StuffingG)
	}
	return 1.1 * most
}

// groupStyle returns the mark of a group.
func groupStyle(n int) draw.GlyphStyle {
	shapes := [...]draw.GlyphDrawer{draw.CircleGlyph{}, draw.SquareGlyph{}, draw.TriangleGlyph{}, draw.CrossGlyph{}, draw.PlusGlyph{}, draw.PyramidGlyph{}, draw.BoxGlyph{}}
	return draw.GlyphStyle{Color: colours[n%len(colours)], Radius: 3.4, Shape: shapes[(n+n/len(colours))%len(shapes)]}
}

// trialMarks draws trials with bars and numbers.
type trialMarks struct {
	dots  []dot
	style draw.GlyphStyle
	below bool    // the numbers, so that those of trials alike do not meet
	clear float64 // of this value, where a line runs; NaN: none does
}

// Plot draws the marks.
func (m trialMarks) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	text := aligned(font(9, quiet), draw.XLeft, draw.YBottom)
	for _, d := range m.dots {
		at := vg.Point{X: x(d.stuffing), Y: y(d.value)}
		bar(c, draw.LineStyle{Color: m.style.Color, Width: 1}, at.X, y(d.value-d.sigma), y(d.value+d.sigma))
		c.DrawGlyph(m.style, at)
		up := vg.Length(2)
		if m.below {
			up = -12
		}
		if low := at.Y + up - y(m.clear); low > -13 && low < 3 {
			up = -10 - up // to the other side of the line
		}
		c.FillText(text, vg.Point{X: at.X + 6, Y: at.Y + up}, fmt.Sprint(d.number))
	}
}

// bar draws an upright error bar.
func bar(c draw.Canvas, style draw.LineStyle, x, low, high vg.Length) {
	low, high = max(low, c.Min.Y), min(high, c.Max.Y)
	c.StrokeLine2(style, x, low, x, high)
	for _, y := range []vg.Length{low, high} {
		c.StrokeLine2(style, x-3, y, x+3, y)
	}
}

// nextMark draws the next trial, at the target where nothing tells what to expect.
type nextMark struct {
	damping.Next
	target float64
}

// Plot draws the mark.
func (m nextMark) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	v, text := m.Q.Value, "next"
	if math.IsNaN(v) {
		v, text = m.target, "next; what it does is not known yet"
	} else {
		bar(c, draw.LineStyle{Color: ink, Width: 1, Dashes: dashes[2]}, x(m.Trial.StuffingG), y(v-m.Q.Error), y(v+m.Q.Error))
	}
	if m.Thing == damping.Openings {
		text += ", with " + prose.Count(m.Trial.Vents, "opening", "openings")
	}
	at := vg.Point{X: x(m.Trial.StuffingG), Y: y(v)}
	c.DrawGlyph(draw.GlyphStyle{Color: ink, Radius: 5, Shape: draw.RingGlyph{}}, at)
	style, side := aligned(font(9, ink), draw.XLeft, draw.YTop), vg.Length(8)
	if at.X > c.Center().X {
		style, side = aligned(style, draw.XRight, draw.YTop), -side
	}
	label(&c, style, vg.Point{X: at.X + side, Y: at.Y - 4}, text)
}
