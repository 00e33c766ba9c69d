package figure

import (
	"image/color"
	"math"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// dial is the face of a polar diagram on the page.
type dial struct {
	centre vg.Point
	radius vg.Length
	top    float64 // dB at the rim
	zero   float64 // rad on the page of angle 0
}

// at returns the place on the page of a level at an angle.
func (d dial) at(angle, level float64) vg.Point {
	out := min(max((level-bottom)/(d.top-bottom), 0), 1)
	return d.along(angle, d.radius*vg.Length(out))
}

// along returns the place on the page at a distance from the centre.
func (d dial) along(angle float64, far vg.Length) vg.Point {
	sin, cos := math.Sincos(angle + d.zero)
	return vg.Point{X: d.centre.X + far*vg.Length(cos), Y: d.centre.Y + far*vg.Length(sin)}
}

// grid draws a circle for every 6 dB and a ray for every 30 degrees.
func (d dial) grid(c *draw.Canvas, vertical bool) {
	line := draw.LineStyle{Color: rule, Width: 0.6}
	for a := range 12 {
		angle := float64(a) * math.Pi / 6
		c.StrokeLines(line, []vg.Point{d.centre, d.along(angle, d.radius)})
		d.name(c, angle, bearing(a*30, vertical))
	}
	for v := d.top; v > bottom; v -= ring {
		style := line
		if v == 0 || v == d.top {
			style.Color = quiet
		}
		c.SetLineStyle(style)
		c.Stroke(d.circle(v))
	}
}

// numbers names the circles, between two rays at the lower left of the page.
func (d dial) numbers(c *draw.Canvas) {
	style := aligned(font(8.5, quiet), draw.XCenter, draw.YCenter)
	for v := d.top; v > bottom; v -= ring {
		label(c, style, d.at(225*math.Pi/180-d.zero, v), decibels(v))
	}
}

func decibels(v float64) string {
	switch s := decimal(v, 1); {
	case v > 0:
		return "+" + s
	case v == 0:
		return s + " dB"
	default:
		return s
	}
}

func (d dial) circle(level float64) vg.Path {
	far := d.at(-d.zero, level).X - d.centre.X
	var p vg.Path
	p.Move(vg.Point{X: d.centre.X + far, Y: d.centre.Y})
	p.Arc(d.centre, far, 0, 2*math.Pi)
	p.Close()
	return p
}

// bearing returns what a ray is called, its angle in degrees.
func bearing(degrees int, vertical bool) string {
	horizontally := map[int]string{0: "front", 90: "left", 180: "back", 270: "right"}
	upright := map[int]string{0: "spot", 90: "up", 180: "behind", 270: "down"}
	names := horizontally
	if vertical {
		names = upright
	}
	if name, ok := names[degrees]; ok {
		return name
	}
	if degrees > 180 {
		degrees -= 360
	}
	return decimal(float64(degrees), 1) + "°"
}

// name writes the name of a ray outside of the rim.
func (d dial) name(c *draw.Canvas, angle float64, name string) {
	sin, cos := math.Sincos(angle + d.zero)
	style := font(9.5, ink)
	style.XAlign = draw.XCenter
	style.YAlign = draw.YCenter
	wide := style.Width(name) / 2
	at := d.along(angle, d.radius+9)
	at.X += wide * vg.Length(cos)
	at.Y += 2 * vg.Length(sin)
	c.FillText(style, at, name)
}

// towards marks an angle with a wedge on the rim.
func (d dial) towards(c *draw.Canvas, angle float64, colour color.Color) {
	c.FillPolygon(colour, []vg.Point{
		d.along(angle, d.radius-9),
		d.along(angle-0.035, d.radius),
		d.along(angle+0.035, d.radius),
	})
}

// hide marks the part of a circle that is beyond a surface.
func (d dial) hide(c *draw.Canvas, h hidden) {
	if math.IsNaN(h.half) {
		return
	}
	from, to := h.towards+h.half, h.towards-h.half
	var part vg.Path
	part.Move(d.centre)
	part.Line(d.along(from, d.radius))
	part.Arc(d.centre, d.radius, from+d.zero, -2*h.half)
	part.Close()
	c.SetColor(color.Gray{240})
	c.Fill(part)
	edge := draw.LineStyle{Color: ink, Width: 1.2}
	c.StrokeLines(edge, []vg.Point{d.along(from, d.radius), d.centre, d.along(to, d.radius)})
}

// nameHidden says what the part is that hide marks.
func (d dial) nameHidden(c *draw.Canvas, h hidden) {
	if !math.IsNaN(h.half) {
		label(c, aligned(font(9.5, quiet), draw.XCenter, draw.YCenter), d.along(h.towards, 0.55*d.radius), h.why)
	}
}

// lines returns the levels as a closed line, open where a level is no number.
func (d dial) lines(angles, levels []float64) [][]vg.Point {
	var out [][]vg.Point
	var run []vg.Point
	for i := range len(levels) + 1 {
		j := i % len(levels)
		if math.IsNaN(levels[j]) {
			out, run = append(out, run), nil
			continue
		}
		run = append(run, d.at(angles[j], levels[j]))
	}
	return append(out, run)
}
