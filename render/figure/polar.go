package figure

import (
	"fmt"
	"io"
	"math"

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
// right; where the circle runs below the surface nothing is drawn but that. An empty polar is ErrNothing, bands of another length than its angles
// are ErrSize.
func Polar(w io.Writer, f Format, p *timing.Plan, polar timing.Polar, vertical bool) error {
	if len(polar.Angle) < 3 || len(polar.Band) == 0 {
		return fmt.Errorf("polar: %w", ErrNothing)
	}
	if len(polar.Aligned) != len(polar.Band) {
		return fmt.Errorf("polar: %w: %d rows, %d bands", ErrSize, len(polar.Aligned), len(polar.Band))
	}
	for b, level := range polar.Aligned {
		if len(level) != len(polar.Angle) {
			return fmt.Errorf("polar: %w: %d levels in band %d, %d angles", ErrSize, len(level), b, len(polar.Angle))
		}
	}
	r := newRose(p, polar, vertical)
	return write(w, f, func(c draw.Canvas) {
		title, below := "level round the array, from above", "horizontal circle through the "
		if vertical {
			title, below = "level over the array, from the side", "upright circle through the "
		}
		r.paint(heading(c, nameOf(p)+": "+title, below+spotText(p)))
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
	ground   float64     // rad, from where on down there is the surface; NaN: none is met
	vertical bool
}

func newRose(p *timing.Plan, polar timing.Polar, vertical bool) rose {
	s := p.Array.Spot
	r := rose{polar: polar, vertical: vertical, zero: math.Pi / 2, spot: math.Atan2(s.Y, s.X), ground: math.NaN()}
	if vertical {
		r.zero, r.spot = 0, math.Atan2(s.Z, math.Hypot(s.X, s.Y))
		if below := p.Array.Surface; below.Present {
			r.ground = math.Asin(below.Height / r3.Norm(s)) // NaN where the circle stays above
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
	d.below(&c, r.ground)
	d.grid(&c, r.vertical)
	d.towards(&c, r.spot)
	var entries []entry
	for b, level := range r.level {
		style := stroke(b, 1.7)
		c.StrokeLines(style, d.lines(r.polar.Angle, level)...)
		entries = append(entries, entry{band.Hertz(r.polar.Band[b]), style})
	}
	d.numbers(&c)
	d.nameBelow(&c, r.ground)
	r.key(c, d.centre.X+d.radius+75, entries)
}

// key names the bands at the right of the diagram.
func (r rose) key(c draw.Canvas, x vg.Length, entries []entry) {
	style := aligned(words(10, ink), draw.XLeft, draw.YCenter)
	y := c.Center().Y + vg.Length(len(entries))*9 + 18
	c.FillText(style, vg.Point{X: x, Y: y + 8}, "octave bands")
	for _, e := range entries {
		y -= 18
		c.StrokeLine2(e.style, x, y, x+32, y)
		c.FillText(style, vg.Point{X: x + 40, Y: y + lift}, e.name)
	}
	note := aligned(words(9, quiet), draw.XLeft, draw.YCenter)
	c.FillText(note, vg.Point{X: x, Y: y - 30}, "0 dB: each band's own")
	c.FillText(note, vg.Point{X: x, Y: y - 42}, "level towards the spot")
	c.FillText(note, vg.Point{X: x, Y: y - 58}, "wedge: where the spot is")
}
