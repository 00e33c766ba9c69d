package figure

import (
	"io"
	"math"
	"slices"

	"pappus/render/words"
	"pappus/timing/intake"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Lot draws resonance and Q of each driver whose impedance was measured, those used, spare and
// rejected with marks of their own, the rejected named. Without such a driver it is an error.
func Lot(w io.Writer, f Format, folder string, l *intake.Lot, d *intake.Deal) error {
	kinds, names := lotPoints(l, d)
	all := slices.Concat(kinds[:]...)
	if len(all) == 0 {
		return nothing("lot")
	}
	c := newChart("resonance, Hz", "Qts")
	for k, kind := range kinds {
		if len(kind) > 0 {
			c.scatter(kind, lotMarks[k].style)
			c.legend = append(c.legend, ofPoints(lotMarks[k].name(d), lotMarks[k].style))
		}
	}
	c.X.Min, c.X.Max = endsOf(all, func(at plotter.XY) float64 { return at.X })
	c.Y.Min, c.Y.Max = endsOf(all, func(at plotter.XY) float64 { return at.Y })
	c.steps(10, 8)
	c.Add(names)
	return c.write(w, f, words.OfLot(folder, l))
}

// lotMark is how drivers of a kind are drawn.
type lotMark struct {
	verdict string
	style   draw.GlyphStyle
}

// lotMarks are those of good, spare and rejected drivers.
var lotMarks = [3]lotMark{
	{"good", draw.GlyphStyle{Color: colours[0], Radius: 3.4, Shape: draw.CircleGlyph{}}},
	{"spare", draw.GlyphStyle{Color: colours[4], Radius: 3.4, Shape: draw.SquareGlyph{}}},
	{"rejected", draw.GlyphStyle{Color: colours[1], Radius: 3.4, Shape: draw.CrossGlyph{}}},
}

// name names a kind: good drivers are used once they have places.
func (m lotMark) name(d *intake.Deal) string {
	if m.verdict == "good" && d != nil && d.Places != nil {
		return "used"
	}
	return m.verdict
}

// lotPoints returns where drivers of each kind are, copies left out, and the names of the rejected.
func lotPoints(l *intake.Lot, d *intake.Deal) (kinds [3]plotter.XYs, names lotNames) {
	isCopy := func(r intake.Reason) bool { return r.Code == intake.Copy }
	for i, one := range l.Drivers {
		if one.Fit == nil || slices.ContainsFunc(one.Reasons, isCopy) {
			continue
		}
		at, kind := plotter.XY{X: one.Fit.Resonance.Value, Y: one.Fit.Qts.Value}, 0
		switch {
		case !one.Good():
			kind, names = 2, append(names, lotName{at, one.Name})
		case d != nil && slices.Contains(d.Spares, i):
			kind = 1
		}
		kinds[kind] = append(kinds[kind], at)
	}
	return kinds, names
}

// endsOf returns the ends of an axis with some air about all points.
func endsOf(all plotter.XYs, of func(at plotter.XY) float64) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, at := range all {
		low, high = min(low, of(at)), max(high, of(at))
	}
	air := max(0.08*(high-low), 0.02*high)
	return low - air, high + air
}

// lotName is the name of a driver beside its mark.
type lotName struct {
	at   plotter.XY
	name string
}

type lotNames []lotName

// mostLabels is how many names a picture can bear.
const mostLabels = 20

// Plot writes the names.
func (n lotNames) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	for _, one := range n[:min(len(n), mostLabels)] {
		style, away := aligned(font(9, quiet), draw.XLeft, draw.YCenter), vg.Length(6)
		if x(one.at.X) > (c.Min.X+c.Max.X)/2 {
			style, away = aligned(font(9, quiet), draw.XRight, draw.YCenter), -6
		}
		c.FillText(style, vg.Point{X: x(one.at.X) + away, Y: y(one.at.Y)}, one.name)
	}
}

// Sorted draws the level at the spot with drivers as they come and sorted, over that of twins.
// A deal without places is an error.
func Sorted(w io.Writer, f Format, d *intake.Deal) error {
	if d.Places == nil {
		return nothing("deal")
	}
	frequency, twins := d.Twins.Response.Frequency, smooth(d.Twins.Response.Frequency, d.Twins.Response.Aligned)
	over := func(level []float64) []float64 {
		out := smooth(frequency, level)
		for i := range out {
			out[i] -= twins[i]
		}
		return out
	}
	come, sorted, middle := over(d.AsCome.Response.Aligned), over(d.Sorted.Response.Aligned), over(d.Middle.Response.Aligned)
	c := newChart("frequency, Hz", "over twins, dB")
	c.line("", curve{"", frequency, filled(len(frequency), 0), dotted(1)}.points(), dotted(1))
	for _, l := range []curve{{"twins of the middle of the lot", frequency, middle, stroke(2, 1.2)}, {"as they come", frequency, come, stroke(1, 1.6)}, {"sorted", frequency, sorted, stroke(0, 2.2)}} {
		c.line(l.name, l.points(), l.style)
	}
	c.frequencies(lowest, highest)
	low, high := overRange(come, sorted)
	alsoLow, alsoHigh := overRange(sorted, come)
	lowMiddle, highMiddle := overRange(middle, middle)
	c.Y.Min, c.Y.Max = min(low, alsoLow, lowMiddle), max(high, alsoHigh, highMiddle)
	c.steps(0, 8)
	return c.write(w, f, words.OfDeal(d))
}
