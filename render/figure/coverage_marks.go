package figure

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// spot draws the listening spot, with its name beside it.
func (v view) spot(c draw.Canvas, p *plot.Plot, taken *occupied) {
	x, y := p.Transforms(&c)
	flat := v.flat(v.plan.Array.Spot)
	at := vg.Point{X: x(flat.X), Y: y(flat.Y)}
	if !c.Contains(at) {
		return
	}
	for _, disc := range []draw.GlyphStyle{
		{Color: paper, Radius: spotRadius + 1}, {Color: ink, Radius: spotRadius}, {Color: paper, Radius: 2.2},
	} {
		disc.Shape = draw.CircleGlyph{}
		c.DrawGlyph(disc, at)
	}
	var lines []vg.Point
	for _, e := range v.edges {
		for _, line := range e.lines {
			for _, p := range line {
				lines = append(lines, vg.Point{X: x(p.X), Y: y(p.Y)})
			}
		}
	}
	taken.beside(&c, at, discRadius+5, "listening spot", lines)
}

// spotRadius is how large the spot's disc is drawn, in points.
const spotRadius = 5

// taken returns where no words may be: on bodies, the spot, seats and the scale of length.
func (v view) taken(c draw.Canvas, p *plot.Plot) *occupied {
	x, y := p.Transforms(&c)
	place := func(at plotter.XY) vg.Point { return vg.Point{X: x(at.X), Y: y(at.Y)} }
	long, _ := v.bar(p)
	out := &occupied{{Min: c.Min, Max: vg.Point{X: c.Min.X + 26 + x(p.X.Min+long) - x(p.X.Min), Y: c.Min.Y + 38}}}
	radius := x(v.plan.Array.Body.Radius) - x(0) + 3
	for _, held := range v.plan.Array.Bodies() {
		out.take(place(v.flat(held.At)), radius)
	}
	for _, at := range v.plan.Listeners() {
		out.take(place(v.flat(at)), discRadius)
	}
	for _, w := range v.walls() {
		at := place(plotter.XY{X: w.at, Y: w.at})
		strip := vg.Rectangle{Min: vg.Point{X: c.Min.X, Y: at.Y - 8}, Max: vg.Point{X: c.Max.X, Y: at.Y + 8}}
		if w.upright {
			strip = vg.Rectangle{Min: vg.Point{X: at.X - 8, Y: c.Min.Y}, Max: vg.Point{X: at.X + 8, Y: c.Max.Y}}
		}
		*out = append(*out, strip)
	}
	return out
}

// seats draws seats by their numbers.
func (v view) seats(c draw.Canvas, p *plot.Plot) {
	if v.plan.Seating == nil {
		return
	}
	x, y := p.Transforms(&c)
	a := v.plan.Array
	radius := min(discRadius, (x(1)-x(0))*vg.Length(apart(a.Seats))*0.36) // so that the map shows between
	for i, s := range a.Seats {
		flat := v.flat(s.At)
		off := math.Abs(r3.Dot(r3.Sub(s.At, v.middle), r3.Cross(v.slice.Right, v.slice.Up)))
		if at := (vg.Point{X: x(flat.X), Y: y(flat.Y)}); c.Contains(at) && (!v.upright() || off <= max(v.slice.Step, a.Seating.Head)) {
			numberDisc(&c, at, i+1, radius)
		}
	}
}

// bar returns how long the scale of length is, in m and in words.
func (v view) bar(p *plot.Plot) (metres float64, name string) {
	if p.X.Max-p.X.Min > 5 {
		return 1, "1 m"
	}
	return 0.5, "0.5 m"
}

// length draws a bar of half a metre, or of a metre in a large room.
func (v view) length(c draw.Canvas, p *plot.Plot) {
	metres, name := v.bar(p)
	x, _ := p.Transforms(&c)
	long := x(p.X.Min+metres) - x(p.X.Min)
	at := vg.Point{X: c.Min.X + 14, Y: c.Min.Y + 14}
	back := vg.Rectangle{
		Min: vg.Point{X: at.X - 6, Y: at.Y - 6},
		Max: vg.Point{X: at.X + long + 6, Y: at.Y + 18},
	}
	c.SetColor(mist)
	c.Fill(back.Path())
	line := draw.LineStyle{Color: ink, Width: 1.2}
	c.StrokeLine2(line, at.X, at.Y, at.X+long, at.Y)
	for _, end := range []vg.Length{at.X, at.X + long} {
		c.StrokeLine2(line, end, at.Y-3, end, at.Y+3)
	}
	c.FillText(aligned(font(9.5, ink), draw.XCenter, draw.YBottom), vg.Point{X: at.X + long/2, Y: at.Y + 4}, name)
}
