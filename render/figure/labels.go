package figure

import (
	"math"
	"slices"

	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// occupied is where words on a picture have no place any more.
type occupied []vg.Rectangle

// take marks a rectangle round a point as taken.
func (t *occupied) take(at vg.Point, half vg.Length) {
	*t = append(*t, vg.Rectangle{Min: vg.Point{X: at.X - half, Y: at.Y - half}, Max: vg.Point{X: at.X + half, Y: at.Y + half}})
}

// free tells whether a rectangle is inside of a canvas and clear of what is taken.
func (t *occupied) free(c *draw.Canvas, r vg.Rectangle) bool {
	if r.Min.X < c.Min.X || r.Max.X > c.Max.X || r.Min.Y < c.Min.Y || r.Max.Y > c.Max.Y {
		return false
	}
	for _, o := range *t {
		if r.Min.X < o.Max.X && o.Min.X < r.Max.X && r.Min.Y < o.Max.Y && o.Min.Y < r.Max.Y {
			return false
		}
	}
	return true
}

// box is the ground of words.
func box(s text.Style, at vg.Point, words string) vg.Rectangle {
	r := s.Rectangle(words).Add(at)
	r.Min.X, r.Min.Y, r.Max.X, r.Max.Y = r.Min.X-3, r.Min.Y-2, r.Max.X+3, r.Max.Y+2
	return r
}

// label writes words on a line, near the top of the canvas; nowhere where nothing is free.
func (t *occupied) label(c *draw.Canvas, line []vg.Point, words string) {
	style := aligned(font(8.5, ink), draw.XCenter, draw.YCenter)
	aim := vg.Point{X: c.Min.X + 0.62*(c.Max.X-c.Min.X), Y: c.Max.Y - 0.16*(c.Max.Y-c.Min.Y)}
	best, least := vg.Point{}, math.Inf(1)
	for _, at := range line {
		far := math.Hypot(float64(at.X-aim.X), float64(at.Y-aim.Y))
		if far < least && t.free(c, box(style, at, words)) {
			best, least = at, far
		}
	}
	if math.IsInf(least, 1) {
		return
	}
	label(c, style, best, words)
	*t = append(*t, box(style, best, words))
}

// beside writes words beside a point, first to its right, clear of what is taken, and if that
// can be of some lines; nowhere where nothing is free.
func (t *occupied) beside(c *draw.Canvas, at vg.Point, far vg.Length, words string, lines []vg.Point) {
	with := slices.Clone(*t)
	for _, p := range lines {
		with.take(p, 1)
	}
	if !with.write(c, at, far, words) {
		t.write(c, at, far, words)
	}
}

// write writes words beside a point where that is free, and tells whether it is.
func (t *occupied) write(c *draw.Canvas, at vg.Point, far vg.Length, words string) bool {
	style := font(9.5, ink)
	for _, side := range []struct {
		x  text.XAlignment
		y  text.YAlignment
		at vg.Point
	}{
		{draw.XLeft, draw.YCenter, vg.Point{X: at.X + far, Y: at.Y}},
		{draw.XRight, draw.YCenter, vg.Point{X: at.X - far, Y: at.Y}},
		{draw.XCenter, draw.YBottom, vg.Point{X: at.X, Y: at.Y + far}},
		{draw.XCenter, draw.YTop, vg.Point{X: at.X, Y: at.Y - far}},
	} {
		s := aligned(style, side.x, side.y)
		if ground := box(s, side.at, words); t.free(c, ground) {
			label(c, s, side.at, words)
			*t = append(*t, ground)
			return true
		}
	}
	return false
}
