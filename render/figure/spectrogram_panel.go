package figure

import (
	"math"
	"strings"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Sizes of words at panels, in points.
const (
	tickSize = 9.5
	nameSize = 10.5
	nameLine = 13
)

// panel is where one of several sounds is drawn, with the axes outside of it.
type panel struct{ vg.Rectangle }

// axisTitles writes what panels share, and returns the room for them, its
// corners in whole points.
func axisTitles(c draw.Canvas, across, up string) draw.Canvas {
	const left, bottom = 52, 34
	in := draw.Crop(c, left, 0, bottom, 0)
	in.Min.X, in.Min.Y = vg.Length(math.Ceil(float64(in.Min.X))), vg.Length(math.Ceil(float64(in.Min.Y)))
	in.Max.X, in.Max.Y = vg.Length(math.Floor(float64(in.Max.X))), vg.Length(math.Floor(float64(in.Max.Y)))
	c.FillText(aligned(font(10.5, ink), draw.XCenter, draw.YBottom), vg.Point{X: in.Center().X, Y: c.Min.Y}, across)
	upright := aligned(font(10.5, ink), draw.XCenter, draw.YTop)
	upright.Rotation = math.Pi / 2
	c.FillText(upright, vg.Point{X: c.Min.X, Y: in.Center().Y}, up)
	return in
}

// name writes above a panel, in line with the unit above a colour bar.
func (p panel) name(c *draw.Canvas, lines []string) {
	for i, line := range lines {
		at := vg.Point{X: p.Min.X, Y: p.Max.Y + 8 + vg.Length(len(lines)-1-i)*nameLine}
		c.FillText(font(nameSize, ink), at, line)
	}
}

// wrap breaks a name into at most so many lines; what does not fit is cut off.
func wrap(name string, wide vg.Length, most int) []string {
	s := font(nameSize, ink)
	var lines []string
	for _, word := range strings.Fields(name) {
		last := len(lines) - 1
		if last >= 0 && (s.Width(lines[last]+" "+word) <= wide || len(lines) == most) {
			lines[last] += " " + word
		} else {
			lines = append(lines, word)
		}
	}
	for i, line := range lines {
		lines[i] = cut(s, line, wide)
	}
	return lines
}

// cut shortens a line to a width.
func cut(s text.Style, line string, wide vg.Length) string {
	short := []rune(line)
	for len(short) > 0 && s.Width(line) > wide {
		short = short[:len(short)-1]
		line = string(short) + "…"
	}
	return line
}

var axisLine = draw.LineStyle{Color: quiet, Width: 0.6}

// across draws ticks below a panel, with their numbers or without.
func (p panel) across(c *draw.Canvas, ticks []plot.Tick, s scale, numbers bool) {
	style := aligned(font(tickSize, ink), draw.XCenter, draw.YTop)
	for _, t := range ticks {
		x, long := p.rightward(s, t.Value), tickLength(t)
		c.StrokeLine2(axisLine, x, p.Min.Y-long, x, p.Min.Y)
		if numbers {
			c.FillText(style, vg.Point{X: x, Y: p.Min.Y - 6}, t.Label)
		}
	}
}

// up draws ticks at the left of a panel, with their numbers or without.
func (p panel) up(c *draw.Canvas, ticks []plot.Tick, s scale, numbers bool) {
	style := aligned(font(tickSize, ink), draw.XRight, draw.YCenter)
	for _, t := range ticks {
		y, long := p.upward(s, t.Value), tickLength(t)
		c.StrokeLine2(axisLine, p.Min.X-long, y, p.Min.X, y)
		if numbers {
			c.FillText(style, vg.Point{X: p.Min.X - 7, Y: y + lift}, t.Label)
		}
	}
}

// rightward returns where a value of the scale across stands.
func (p panel) rightward(s scale, v float64) vg.Length {
	return p.Min.X + vg.Length(s.share(v))*p.Size().X
}

// upward returns where a value of the upright scale stands.
func (p panel) upward(s scale, v float64) vg.Length {
	return p.Min.Y + vg.Length(s.share(v))*p.Size().Y
}

func tickLength(t plot.Tick) vg.Length {
	if t.Label == "" {
		return 2
	}
	return 4
}

func (p panel) frame(c *draw.Canvas) {
	c.SetLineStyle(axisLine)
	path := p.Path()
	path.Close()
	c.Stroke(path)
}
