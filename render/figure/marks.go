package figure

import (
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// marks draws what lies over the colours of a slice.
type marks struct{ view }

// Plot draws the outline of the body, the spot and the scale bar.
func (m marks) Plot(c draw.Canvas, p *plot.Plot) {
	m.body(c, p)
	m.spot(c, p)
	m.length(c, p)
}

// body draws the outline of the body, dashed where the slice passes it by, so
// that the picture can still be set against the array.
func (m marks) body(c draw.Canvas, p *plot.Plot) {
	style := draw.LineStyle{Color: ink, Width: 1.2}
	outline, through := m.outline()
	if !through {
		style = draw.LineStyle{Color: paper, Width: 1.2, Dashes: []vg.Length{3, 2}}
	}
	if outline == nil {
		return
	}
	x, y := p.Transforms(&c)
	points := make([]vg.Point, 0, len(outline)+1)
	for _, at := range outline {
		points = append(points, vg.Point{X: x(at[0]), Y: y(at[1])})
	}
	points = append(points, points[0])
	if through {
		c.FillPolygon(solid, c.ClipPolygonXY(points))
	}
	c.StrokeLines(style, c.ClipLinesXY(points)...)
}

func (m marks) spot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	flat := m.flat(m.plan.Array.Spot)
	at := vg.Point{X: x(flat.X), Y: y(flat.Y)}
	if !c.Contains(at) {
		return
	}
	for _, disc := range []draw.GlyphStyle{
		{Color: paper, Radius: 6}, {Color: ink, Radius: 4.8}, {Color: paper, Radius: 2.2},
	} {
		disc.Shape = draw.CircleGlyph{}
		c.DrawGlyph(disc, at)
	}
	style, side := words(9.5, ink), vg.Length(11)
	style = aligned(style, draw.XLeft, draw.YCenter)
	if at.X > c.Center().X {
		style, side = aligned(style, draw.XRight, draw.YCenter), -side
	}
	label(&c, style, vg.Point{X: at.X + side, Y: at.Y}, "listening spot")
}

// length draws a bar of half a metre, or of a metre in a large room.
func (m marks) length(c draw.Canvas, p *plot.Plot) {
	metres, name := 0.5, "0.5 m"
	if p.X.Max-p.X.Min > 5 {
		metres, name = 1, "1 m"
	}
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
	c.FillText(aligned(words(9.5, ink), draw.XCenter, draw.YBottom), vg.Point{X: at.X + long/2, Y: at.Y + 4}, name)
}
