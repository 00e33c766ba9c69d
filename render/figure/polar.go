package figure

import (
	"fmt"
	"image/color"
	"io"
	"math"
	"slices"

	"pappus/layout"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/band"

	"gonum.org/v1/gonum/spatial/r3"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Polar draws the levels with the delays round a circle through the spot, one
// line for each octave band, each counted from its own level towards the spot.
// Horizontal: seen from above with the front at the top, so that azimuth runs
// counter-clockwise. Vertical: seen from the side with the spot's side at the
// right. Where the circle runs beyond a surface nothing is drawn but that. An empty polar is an
// error, as are bands of another length than its angles.
func Polar(w io.Writer, f Format, p *timing.Plan, polar timing.Polar, vertical bool) error {
	return polarOf(w, f, p, polar, vertical, words.OfPolar(p, vertical))
}

// PolarAsBuilt is Polar without the delays.
func PolarAsBuilt(w io.Writer, f Format, p *timing.Plan, polar timing.Polar, vertical bool) error {
	polar.Aligned = polar.Unaligned
	return polarOf(w, f, p, polar, vertical, words.OfPolarAsBuilt(p, vertical))
}

func polarOf(w io.Writer, f Format, p *timing.Plan, polar timing.Polar, vertical bool, head words.Picture) error {
	if len(polar.Angle) < 3 || len(polar.Band) == 0 {
		return nothing("polar")
	}
	if len(polar.Aligned) != len(polar.Band) {
		return fmt.Errorf("polar: %d rows, %d bands", len(polar.Aligned), len(polar.Band))
	}
	for b, level := range polar.Aligned {
		if len(level) != len(polar.Angle) {
			return fmt.Errorf("polar: %d levels in band %d, %d angles", len(level), b, len(polar.Angle))
		}
	}
	r := newRose(p, polar, vertical)
	return write(w, f, func(c draw.Canvas) {
		r.paint(heading(c, head))
	})
}

// bottom is the level in dB at the centre of the diagram, ring the distance
// between two circles.
const (
	bottom = -30
	ring   = 6
)

// rose is a polar diagram.
type rose struct {
	polar    timing.Polar
	level    [][]float64 // [band][angle] dB over the level towards the spot
	top      float64     // dB at the rim
	zero     float64     // rad on the page of angle 0
	spot     float64     // rad, the polar's angle towards the spot
	hidden   hidden
	seats    []float64 // rad, towards the seats; of a level circle
	vertical bool
}

func newRose(p *timing.Plan, polar timing.Polar, vertical bool) rose {
	s := p.Array.Spot
	r := rose{polar: polar, vertical: vertical, zero: math.Pi / 2, spot: math.Atan2(s.Y, s.X), hidden: hiddenOn(p.Array, vertical)}
	if vertical {
		r.zero, r.spot = 0, math.Atan2(s.Z, math.Hypot(s.X, s.Y))
	} else if p.Seating != nil {
		for _, seat := range p.Array.Seats {
			r.seats = append(r.seats, math.Atan2(seat.At.Y, seat.At.X))
		}
	}
	for _, level := range polar.Aligned {
		own := level[nearest(polar.Angle, r.spot)]
		row := make([]float64, len(level))
		for i, v := range level {
			row[i] = v - own
			if row[i] > r.top && !math.IsInf(row[i], 1) {
				r.top = row[i]
			}
		}
		r.level = append(r.level, row)
	}
	r.top = ring * math.Ceil(r.top/ring-1e-6)
	return r
}

// hidden is the part of a circle that is beyond a surface: round an angle of the polar, in rad,
// to both sides; nothing for NaN.
type hidden struct {
	towards, half float64
	why           string
}

// hiddenOn returns what a surface takes of an array's polar.
func hiddenOn(a *layout.Array, vertical bool) hidden {
	spot := a.Spot
	away, reach := math.Hypot(spot.X, spot.Y), r3.Norm(spot)
	from := func(towards, height, radius float64, why string) hidden {
		return hidden{towards, math.Pi/2 - math.Asin(height/radius), why} // NaN where the circle stays clear
	}
	switch s := a.Surface; {
	case !s.Present:
	case s.On == layout.OnWall && !vertical:
		return from(math.Pi, -s.Height, away, "behind the wall: no sound")
	case s.On == layout.OnWall && spot.X < 0:
		return from(0, -s.Height, reach*-spot.X/away, "behind the wall: no sound")
	case s.On == layout.OnWall && spot.X > 0:
		return from(math.Pi, -s.Height, reach*spot.X/away, "behind the wall: no sound")
	case s.On == layout.OnWall || !vertical:
	case s.On == layout.OnCeiling:
		return from(math.Pi/2, s.Height, reach, "above the ceiling: no sound")
	default:
		return from(-math.Pi/2, -s.Height, reach, "below the surface: no sound")
	}
	return hidden{half: math.NaN()}
}

// nearest returns the index of the angle that is nearest, round the circle.
func nearest(angles []float64, to float64) int {
	best := 0
	for i, a := range angles {
		if math.Cos(a-to) > math.Cos(angles[best]-to) {
			best = i
		}
	}
	return best
}

func (r rose) paint(c draw.Canvas) {
	const key, rim = 150, 20
	c = draw.Crop(c, 0, 0, -4, 0)
	size := min(c.Size().X-key, c.Size().Y)
	d := dial{
		centre: vg.Point{X: c.Center().X - key/2 + 20, Y: c.Center().Y},
		radius: size/2 - rim, top: r.top, zero: r.zero,
	}
	d.hide(&c, r.hidden)
	d.grid(&c, r.vertical)
	for _, seat := range r.seats {
		d.towards(&c, seat, colours[0])
	}
	if !slices.Contains(r.seats, r.spot) {
		d.towards(&c, r.spot, ink)
	}
	styles := make([]draw.LineStyle, len(r.level))
	for b, level := range r.level {
		styles[b] = stroke(b, 1.7)
		c.StrokeLines(styles[b], d.lines(r.polar.Angle, level)...)
	}
	d.numbers(&c)
	d.nameHidden(&c, r.hidden)
	r.key(c, d.centre.X+d.radius+75, styles)
}

// key names the bands at the right of the diagram.
func (r rose) key(c draw.Canvas, x vg.Length, styles []draw.LineStyle) {
	style := aligned(font(10, ink), draw.XLeft, draw.YCenter)
	y := c.Center().Y + vg.Length(len(styles))*9 + 18
	c.FillText(style, vg.Point{X: x, Y: y + 8}, "octave bands")
	for b, line := range styles {
		y -= 18
		c.StrokeLine2(line, x, y, x+32, y)
		c.FillText(style, vg.Point{X: x + 40, Y: y + lift}, band.Hertz(r.polar.Band[b]))
	}
	note := aligned(font(9, quiet), draw.XLeft, draw.YCenter)
	c.FillText(note, vg.Point{X: x, Y: y - 30}, "0 dB: each band's own")
	c.FillText(note, vg.Point{X: x, Y: y - 42}, "level towards the spot")
	if len(r.seats) > 0 {
		c.FillText(note, vg.Point{X: x, Y: y - 58}, "blue wedges: the seats")
	}
	if !slices.Contains(r.seats, r.spot) {
		c.FillText(note, vg.Point{X: x, Y: y - 58 - 12*vg.Length(min(len(r.seats), 1))}, "wedge: where the spot is")
	}
}

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
	upright := map[int]string{0: "spot's side", 90: "up", 180: "far side", 270: "down"}
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
