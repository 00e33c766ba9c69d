package figure

import (
	"fmt"
	"image/color"
	"io"
	"math"
	"slices"
	"strconv"

	"pappus/layout"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/seats"

	"gonum.org/v1/gonum/spatial/r3"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Seats draws what each seat loses against all drivers in step: without delays, and a bar
// from there to what it loses with the plan's, grey where that is more; with delays for the
// middle seat alone; and what no processing of its channels can be below at it. At the
// right it draws where the seats are, from above, by their numbers. A plan for fewer than two
// seats is an error.
func Seats(w io.Writer, f Format, p *timing.Plan) error {
	if p.Seating == nil {
		return nothing("seats")
	}
	c := newChart("lost, dB: further left is better", "")
	rows := seatRows{p}
	c.Add(rows)
	c.axes(p)
	return write(w, f, func(page draw.Canvas) {
		room := legendAbove(heading(page, words.OfSeats(p)), rows.legend())
		const gap, part = 14, 0.62
		cut := (room.Max.X - room.Min.X) * part
		c.Draw(draw.Crop(room, 0, cut-(room.Max.X-room.Min.X)-gap, 0, 0))
		seatMap{p.Array, p.Seating.Planned}.paint(draw.Crop(room, cut+gap, 0, 0, 0))
	})
}

// axes sets the axes for what the seats of a plan lose.
func (c *chart) axes(p *timing.Plan) {
	most := 0.0
	for _, f := range words.Losses(&p.Spot) {
		for _, lost := range f.Seat {
			if lost > most { // not for NaN
				most = lost
			}
		}
	}
	c.seatAxes(named(p.Array.Seats), most)
}

// seatAxes sets the axes for what seats lose, in dB up to the most, the first seat at the top.
func (c *chart) seatAxes(names []string, most float64) {
	n := len(names)
	c.Y.Min, c.Y.Max = 0.4, float64(n)+0.6
	c.Y.Tick.Length = 0
	var ticks plot.ConstantTicks
	for i, name := range names {
		if i%everyName(n) == 0 {
			ticks = append(ticks, plot.Tick{Value: float64(n - i), Label: shortened(name, 26)})
		}
	}
	c.Y.Tick.Marker = ticks
	if n > mostNamed {
		c.Y.Tick.Label.Font.Size = 7
	}
	c.X.Min, c.X.Max = 0, max(1, 1.04*most)
	c.steps(8, 0)
}

// mostNamed is how many rows have names of the usual size; from twice as many on, not every
// row has one.
const mostNamed = 22

// everyName is of how many rows one is named.
func everyName(rows int) int { return 1 + (rows-1)/(2*mostNamed) }

// shortened is a name of so many letters at most.
func shortened(name string, most int) string {
	if r := []rune(name); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return name
}

// The marks of what a seat loses: colour and shape both tell them apart.
var (
	boundMark   = draw.LineStyle{Color: colours[2], Width: 2.2}
	withoutMark = draw.GlyphStyle{Color: quiet, Radius: 4.2, Shape: draw.RingGlyph{}}
	middleMark  = draw.GlyphStyle{Color: colours[1], Radius: 4.4, Shape: draw.PyramidGlyph{}}
)

// seatRows draws a row for each seat.
type seatRows struct{ plan *timing.Plan }

func (s seatRows) legend() []entry {
	var out []entry
	for i, f := range words.Losses(&s.plan.Spot) {
		e := []entry{
			ofMark("as planned", draw.GlyphStyle{Color: colours[0], Radius: 5.4, Shape: draw.CircleGlyph{}}),
			ofMark("for the middle seat", middleMark),
			ofMark("without delays", withoutMark),
			{"the least with these channels", 14, 20, func(c *draw.Canvas, x, y vg.Length) { c.StrokeLine2(boundMark, x+5, y-6, x+5, y+6) }},
		}[i]
		e.name = fmt.Sprintf("%s: worst %s dB", e.name, decimal(f.Worst, 0.1))
		if !math.IsNaN(f.Worst) {
			out = append(out, e)
		}
	}
	return out
}

// Plot draws the rows.
func (s seatRows) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	n := len(s.plan.Array.Seats)
	half := min((c.Max.Y-c.Min.Y)/vg.Length(n)*0.36, 9)
	small := func(g draw.GlyphStyle) draw.GlyphStyle {
		g.Radius = min(g.Radius, half)
		return g
	}
	all := words.Losses(&s.plan.Spot)
	planned, middle, without, bound := all[0], all[1], all[2], all[3]
	for i := range n {
		at := y(float64(n - i))
		place := func(f seats.Figures) vg.Point { return vg.Point{X: x(f.Seat[i]), Y: at} }
		towards := draw.LineStyle{Color: faint(colours[0]), Width: 4}
		if planned.Seat[i] > without.Seat[i] {
			towards.Color = solid
		}
		c.StrokeLine2(towards, place(without).X, at, place(planned).X, at)
		if !math.IsNaN(bound.Seat[i]) {
			c.StrokeLine2(boundMark, place(bound).X, at-half, place(bound).X, at+half)
		}
		c.DrawGlyph(small(withoutMark), place(without))
		c.DrawGlyph(small(middleMark), place(middle))
		numberDisc(&c, place(planned), i+1, min(discRadius, half))
	}
}

// seatMap is where seats are, from above, forward to the right as on the maps of the room,
// each by its number in the shade of what it loses.
type seatMap struct {
	array *layout.Array
	lost  seats.Figures
}

func (m seatMap) paint(c draw.Canvas) {
	const foot = 34
	c.FillText(aligned(font(9, quiet), draw.XCenter, draw.YBottom), vg.Point{X: c.Center().X, Y: c.Min.Y}, "from above; forward is to the right")
	c = draw.Crop(c, 0, 0, foot, 0)
	low, high := r3.Vec{X: math.Inf(1), Y: math.Inf(1)}, r3.Vec{X: math.Inf(-1), Y: math.Inf(-1)}
	holds := func(at r3.Vec, radius float64) {
		low = r3.Vec{X: min(low.X, at.X-radius), Y: min(low.Y, at.Y-radius)}
		high = r3.Vec{X: max(high.X, at.X+radius), Y: max(high.Y, at.Y+radius)}
	}
	for _, body := range m.array.Bodies() {
		holds(body.At, m.array.Body.Radius)
	}
	for _, s := range m.array.Seats {
		holds(s.At, 0)
	}
	const disc = discRadius
	room := vg.Point{X: c.Max.X - c.Min.X - 2*disc - 4, Y: c.Max.Y - c.Min.Y - 2*disc - 4}
	metre := vg.Length(min(float64(room.X)/(high.X-low.X), float64(room.Y)/(high.Y-low.Y)))
	middle := r3.Scale(0.5, r3.Add(low, high))
	at := func(v r3.Vec) vg.Point {
		return vg.Point{X: c.Center().X + metre*vg.Length(v.X-middle.X), Y: c.Center().Y + metre*vg.Length(v.Y-middle.Y)}
	}
	radius := max(4, metre*vg.Length(m.array.Body.Radius))
	for _, body := range m.array.Bodies() {
		drawBody(&c, at(body.At), radius, body.Out(r3.Vec{X: 1}))
	}
	for i, s := range m.array.Seats {
		numberDisc(&c, at(s.At), i+1, min(disc, metre*vg.Length(apart(m.array.Seats))/2))
	}
}

// drawBody draws a body from above, with a wedge before its front.
func drawBody(c *draw.Canvas, at vg.Point, radius vg.Length, front r3.Vec) {
	c.DrawGlyph(draw.GlyphStyle{Color: solid, Radius: radius, Shape: draw.CircleGlyph{}}, at)
	c.DrawGlyph(draw.GlyphStyle{Color: ink, Radius: radius, Shape: draw.RingGlyph{}}, at)
	level := math.Hypot(front.X, front.Y)
	if level < 0.1 { // it looks up or down
		return
	}
	x, y := vg.Length(front.X/level), vg.Length(front.Y/level)
	corner := func(out, aside vg.Length) vg.Point {
		return vg.Point{X: at.X + (radius+out)*x - aside*y, Y: at.Y + (radius+out)*y + aside*x}
	}
	c.FillPolygon(quiet, []vg.Point{corner(9, 0), corner(2, 4), corner(2, -4)})
}

// apart is the least distance in m between seats from above, those that are one above the
// other left out; +Inf where there is none.
func apart(seats []layout.Seat) float64 {
	least := math.Inf(1)
	for i, s := range seats {
		for _, o := range seats[:i] {
			if d := math.Hypot(s.At.X-o.At.X, s.At.Y-o.At.Y); d > 0 {
				least = min(least, d)
			}
		}
	}
	return least
}

// discRadius is how large a seat's disc is drawn where there is room, in points.
const discRadius = 8.5

// numberDisc draws a number in a disc.
func numberDisc(c *draw.Canvas, at vg.Point, number int, radius vg.Length) {
	for _, g := range []draw.GlyphStyle{{Color: paper, Radius: radius + 1}, {Color: colours[0], Radius: radius}} {
		g.Shape = draw.CircleGlyph{}
		c.DrawGlyph(g, at)
	}
	if size := radius * 1.1; size >= leastSize-1.5 {
		c.FillText(aligned(font(size, paper), draw.XCenter, draw.YCenter), vg.Point{X: at.X, Y: at.Y + lift*0.4}, strconv.Itoa(number))
	}
}

// SeatThirds draws what each seat loses in each third of an octave, a line for each seat:
// beside each other as planned, with delays for the middle seat alone, and without. A plan for fewer than two seats is an error.
func SeatThirds(w io.Writer, f Format, p *timing.Plan) error {
	if p.Seating == nil {
		return nothing("thirds of seats")
	}
	x := p.Seating
	panels := []struct {
		name   string
		of     seats.Figures
		colour color.NRGBA
	}{{"as planned", x.Planned, colours[0]}, {"for the middle seat", x.Middle, colours[1]}, {"without delays", x.Without, quiet}}
	most := 1.0
	for _, panel := range panels {
		for _, lost := range panel.of.Band {
			most = max(most, 1.05*slices.Max(lost))
		}
	}
	charts := make([][]*plot.Plot, 1)
	for i, panel := range panels {
		up := ""
		if i == 0 {
			up = "lost, dB"
		}
		c := newChart("frequency, Hz", up)
		style := draw.LineStyle{Color: panel.colour, Width: 1.3}
		for _, lost := range panel.of.Band {
			c.line("", over(x.Thirds, lost, 1), style)
		}
		c.frequencies(x.Thirds[0], x.Thirds[len(x.Thirds)-1])
		c.Y.Min, c.Y.Max = 0, most
		c.steps(0, 8)
		charts[0] = append(charts[0], c.Plot)
	}
	return write(w, f, func(page draw.Canvas) {
		room := draw.Crop(heading(page, words.OfSeatThirds(p)), 0, 0, 0, -18)
		for i, c := range plot.Align(charts, draw.Tiles{Rows: 1, Cols: len(panels), PadX: vg.Points(14), PadRight: vg.Points(6)}, room)[0] {
			charts[0][i].Draw(c)
			name := fmt.Sprintf("%s: %s dB between seats", panels[i].name, decimal(panels[i].of.Between, 0.1))
			data := charts[0][i].DataCanvas(c)
			c.FillText(aligned(font(10.5, ink), draw.XCenter, draw.YBottom), vg.Point{X: data.Center().X, Y: room.Max.Y + 4}, name)
		}
	})
}

// SeatCounts draws what numbers of channels would leave at the seats: the loss at the worst
// seat, the mean, and what is between seats. A plan for fewer than two seats, or without
// counts, is an error.
func SeatCounts(w io.Writer, f Format, p *timing.Plan) error {
	if p.Seating == nil || len(p.Seating.Counts) == 0 {
		return nothing("counts of seats")
	}
	c := newChart("channels", "lost, dB")
	counts := p.Seating.Counts
	c.X.Min, c.X.Max, c.Y.Min, c.Y.Max = 0.5, float64(max(counts[len(counts)-1].Channels, len(p.Channels)))+0.5, 0, 1
	for i, of := range []struct {
		name  string
		value func(f seats.Figures) float64
	}{
		{"the worst seat", func(f seats.Figures) float64 { return f.Worst }},
		{"mean over seats and thirds", func(f seats.Figures) float64 { return f.Mean }},
		{"between seats", func(f seats.Figures) float64 { return f.Between }},
	} {
		var points plotter.XYs
		for _, count := range counts {
			points = append(points, plotter.XY{X: float64(count.Channels), Y: of.value(count.Figures)})
			c.Y.Max = max(c.Y.Max, 1.12*of.value(count.Figures))
		}
		style := stroke(i, 2)
		c.line(of.name, points, style)
		c.scatter(points, draw.GlyphStyle{Color: style.Color, Radius: 3, Shape: draw.CircleGlyph{}})
		own := plotter.XYs{{X: float64(len(p.Channels)), Y: of.value(p.Seating.Planned)}}
		c.scatter(own, draw.GlyphStyle{Color: ink, Radius: 6, Shape: draw.RingGlyph{}})
	}
	c.legend = append(c.legend, ofMark(fmt.Sprintf("as planned, %d", len(p.Channels)), draw.GlyphStyle{Color: ink, Radius: 6, Shape: draw.RingGlyph{}}))
	c.steps(0, 8)
	c.X.Tick.Marker = evenTicks{max(1, niceStep(c.X.Max-c.X.Min, 16))}
	return c.write(w, f, words.OfSeatCounts(p))
}
