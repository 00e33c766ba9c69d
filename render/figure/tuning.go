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
		for _, t := range s.trials {
			least = min(least, t.Q.Value*0.95)
			most[0], most[1] = max(most[0], t.Q.Value*1.05), max(most[1], t.PeakOver.Value*1.05)
		}
		style := groupStyle(i)
		q.Add(s.joined(style, func(t damping.Trial) float64 { return t.Q.Value }))
		peak.Add(s.joined(style, func(t damping.Trial) float64 { return t.PeakOver.Value }))
		q.Add(trialMarks{s.trials, style, i%2 == 1, g.Q, func(t damping.Trial) (float64, float64) {
			return t.Q.Value, math.Hypot(t.Q.Error, damping.Scatter*t.Q.Value)
		}})
		peak.Add(trialMarks{s.trials, style, i%2 == 1, math.NaN(), func(t damping.Trial) (float64, float64) {
			return t.PeakOver.Value, math.Hypot(t.PeakOver.Error, damping.Scatter*(t.PeakOver.Value-1))
		}})
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

// numbered is a trial with its number, from 1.
type numbered struct {
	damping.Trial
	number int
}

// group is trials with the same openings.
type group struct {
	name   string
	trials []numbered
}

// joined is a thin line through the trials of a group, by rising stuffing, so that the
// eye follows what more of it does.
func (g group) joined(style draw.GlyphStyle, value func(damping.Trial) float64) *plotter.Line {
	sorted := slices.SortedStableFunc(slices.Values(g.trials), func(a, b numbered) int { return cmp.Compare(a.StuffingG, b.StuffingG) })
	xys := make(plotter.XYs, len(sorted))
	for i, t := range sorted {
		xys[i] = plotter.XY{X: t.StuffingG, Y: value(t.Trial)}
	}
	return &plotter.Line{XYs: xys, LineStyle: draw.LineStyle{Color: style.Color, Width: 0.7}}
}

// grouped sorts trials with a resonance by their openings, in the order of the log.
func grouped(trials []damping.Trial) []group {
	var out []group
	at := map[string]int{}
	for i, t := range trials {
		if t.Flat || math.IsNaN(t.Q.Value) {
			continue
		}
		name := "closed"
		if t.Vents > 0 {
			name = prose.Sprintf("%s of %.3g mm", prose.Count(t.Vents, "opening", "openings"), t.VentMM)
		}
		k, ok := at[name]
		if !ok {
			k = len(out)
			at[name], out = k, append(out, group{name: name})
		}
		out[k].trials = append(out[k].trials, numbered{t, i + 1})
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
	trials []numbered
	style  draw.GlyphStyle
	below  bool    // the numbers, so that those of trials alike do not meet
	clear  float64 // of this value, where a line runs; NaN: none does
	value  func(damping.Trial) (value, sigma float64)
}

// Plot draws the marks.
func (m trialMarks) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	text := aligned(font(9, quiet), draw.XLeft, draw.YBottom)
	for _, t := range m.trials {
		v, sigma := m.value(t.Trial)
		at := vg.Point{X: x(t.StuffingG), Y: y(v)}
		bar(c, draw.LineStyle{Color: m.style.Color, Width: 1}, at.X, y(v-sigma), y(v+sigma))
		c.DrawGlyph(m.style, at)
		up := vg.Length(2)
		if m.below {
			up = -12
		}
		if low := at.Y + up - y(m.clear); low > -13 && low < 3 {
			up = -10 - up // to the other side of the line
		}
		c.FillText(text, vg.Point{X: at.X + 6, Y: at.Y + up}, fmt.Sprint(t.number))
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
