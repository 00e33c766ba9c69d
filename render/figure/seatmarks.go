package figure

import (
	"io"
	"math"
	"slices"

	"pappus/layout"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/verdict"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// seatMarks is what seats lose by one way of looking at it.
type seatMarks struct {
	name       string
	style      draw.GlyphStyle
	loss, give []float64 // dB, of each row; give to either side, nil: no bars
}

// CompareSeats draws what each seat loses with each of several designs that are judged at
// the seats of the first that has some; those with other seats of their own are left out.
// Without any with seats it is an error.
func CompareSeats(w io.Writer, f Format, designs []timing.Candidate) error {
	first := slices.IndexFunc(designs, func(d timing.Candidate) bool { return d.Plan.Seating != nil })
	if first < 0 {
		return nothing("compared seats")
	}
	list, left := designs[first].Plan.Array.Seats, 0
	var all []seatMarks
	for i, d := range designs {
		if d.Seats == nil || !slices.EqualFunc(d.Seats.Seats, list, func(a, b layout.Seat) bool { return a.At == b.At }) {
			left++
			continue
		}
		all = append(all, seatMarks{name: words.Name(d.Plan), style: bigger(groupStyle(i)), loss: d.Seats.Seat})
	}
	return seatsMarked(w, f, words.OfComparedSeats(designs[first].Plan, left), named(list), all)
}

// MeasuredSeats draws what was measured to be lost at each seat, with its expanded error, and
// what was planned.
func MeasuredSeats(w io.Writer, f Format, p *timing.Plan, v verdict.Seats) error {
	var list []layout.Seat
	var give []float64
	for _, h := range v.Heard {
		list, give = append(list, p.Array.Seats[h.Index]), append(give, verdict.Expanded*h.Error)
	}
	return seatsMarked(w, f, words.OfMeasuredSeats(p), named(list), []seatMarks{
		{"planned", draw.GlyphStyle{Color: ink, Radius: 5.6, Shape: draw.RingGlyph{}}, v.Planned.Seat, nil},
		{"measured", draw.GlyphStyle{Color: colours[0], Radius: 3.8, Shape: draw.CircleGlyph{}}, v.Measured.Seat, give},
	})
}

// bigger is a mark that stands alone in its row.
func bigger(s draw.GlyphStyle) draw.GlyphStyle {
	s.Radius = 4.6
	return s
}

func named(list []layout.Seat) (names []string) {
	for _, s := range list {
		names = append(names, s.Name)
	}
	return names
}

// seatsMarked draws a row for each seat with all marks in it.
func seatsMarked(w io.Writer, f Format, head words.Picture, names []string, all []seatMarks) error {
	c := newChart("lost, dB: further left is better", "")
	most := 0.0
	for _, m := range all {
		c.Add(m)
		c.legend = append(c.legend, ofMark(m.name, m.style))
		for i, v := range m.loss {
			if m.give != nil && !math.IsInf(m.give[i], 0) {
				v += m.give[i]
			}
			most = max(most, v)
		}
	}
	c.seatAxes(names, most)
	return c.write(w, f, head)
}

// Plot draws the marks, the first seat at the top.
func (m seatMarks) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	n := len(m.loss)
	for i, v := range m.loss {
		at := vg.Point{X: x(v), Y: y(float64(n - i))}
		if m.give != nil {
			low, high := max(c.Min.X, x(v-m.give[i])), min(c.Max.X, x(v+m.give[i]))
			c.StrokeLine2(draw.LineStyle{Color: m.style.Color, Width: 1}, low, at.Y, high, at.Y)
		}
		c.DrawGlyph(m.style, at)
	}
}
