package figure

import (
	"fmt"
	"io"
	"math"
	"slices"

	"pappus/layout"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Polar draws the levels with the delays round a circle through the spot, low octaves at the
// left and high ones at the right, one line for each octave band, each counted from its own level towards the spot.
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
	note     string    // that there is little to show
	below    string    // what is what
	vertical bool
	solved   *radiate.Solution // where the ball takes over; nil: nowhere
}

func newRose(p *timing.Plan, polar timing.Polar, vertical bool) rose {
	s := p.Array.Spot
	r := rose{polar: polar, vertical: vertical, solved: p.Solved(), below: words.PolarNote(p, vertical), zero: math.Pi / 2, spot: math.Atan2(s.Y, s.X), hidden: hiddenOn(p.Array, vertical)}
	if vertical {
		r.zero, r.spot = 0, math.Atan2(s.Z, math.Hypot(s.X, s.Y))
	} else if p.Seating != nil {
		for _, seat := range p.Array.Seats {
			r.seats = append(r.seats, math.Atan2(seat.At.Y, seat.At.X))
		}
	}
	for _, level := range polar.Aligned {
		own := level[nearest(polar.Angle, r.spot)]
		if !(own > math.Inf(-1)) { // nothing is heard there
			own = loudest(level)
			r.note = words.SilentSpot
			if math.IsInf(own, -1) {
				r.note = words.NoSound
			}
		}
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

// loudest returns the highest level; -Inf where no sound comes.
func loudest(level []float64) float64 {
	most := math.Inf(-1)
	for _, v := range level {
		if v > most {
			most = v
		}
	}
	return most
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

// paint draws the low octaves at the left and the high ones at the right: seven lines on one
// dial are a tangle.
func (r rose) paint(c draw.Canvas) {
	const gap, note = 4, 16
	c.FillText(aligned(font(9.5, quiet), draw.XCenter, draw.YBottom), vg.Point{X: c.Center().X, Y: c.Min.Y}, r.below)
	c = draw.Crop(c, 0, 0, note, 0)
	half := (len(r.level) + 1) / 2
	middle := c.Center().X
	r.panel(draw.Crop(c, 0, middle-gap-c.Max.X, 0, 0), 0, half)
	if half < len(r.level) {
		r.panel(draw.Crop(c, middle+gap-c.Min.X, 0, 0, 0), half, len(r.level))
	}
}

// panel draws the bands from one up to another, with their key below.
func (r rose) panel(c draw.Canvas, from, to int) {
	const key, rim, names = 24, 20, 14
	size := min(c.Size().X-2*names, c.Size().Y-key)
	d := dial{
		centre: vg.Point{X: c.Center().X, Y: (c.Max.Y + c.Min.Y + key) / 2},
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
	var legend []entry
	for b := from; b < to; b++ {
		style := stroke(b-from, 1.8)
		c.StrokeLines(style, d.lines(r.polar.Angle, r.level[b])...)
		e := ofLine(words.Octave(r.solved, r.polar.Band[b]), style)
		e.gap = 12
		legend = append(legend, e)
	}
	d.numbers(&c)
	d.nameHidden(&c, r.hidden)
	if r.note != "" {
		label(&c, aligned(font(10, ink), draw.XCenter, draw.YCenter), vg.Point{X: d.centre.X, Y: d.centre.Y + 0.3*d.radius}, r.note)
	}
	below := draw.Crop(c, max(0, (c.Size().X-wideOf(legend))/2), 0, 0, 0)
	below.Max.Y = c.Min.Y + 20
	legendAbove(below, legend)
}
