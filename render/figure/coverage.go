package figure

import (
	"fmt"
	"io"

	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Coverage draws a quantity over a slice of the room in colours, with the
// outline of the body, the listening spot, a length to measure by and the
// scale of the colours. The axes count metres from the centre of the body.
// Values that are not Columns*Rows long are ErrSize, an empty slice is
// ErrNothing.
func Coverage(w io.Writer, f Format, p *timing.Plan, c *timing.Coverage, q Quantity) error {
	if c.Columns < 1 || c.Rows < 1 {
		return fmt.Errorf("coverage: %w", ErrNothing)
	}
	if len(q.Values) != c.Columns*c.Rows {
		return fmt.Errorf("%s: %w: %d values, %d cells", q.Name, ErrSize, len(q.Values), c.Columns*c.Rows)
	}
	if q.Unit == decibel && p.IsAbsolute() {
		q.Unit = levelUnit(true)
	}
	v := view{plan: p, slice: c.Slice, quantity: q, scale: q.scale()}
	v.middle = r3.Sub(c.Origin, r3.Add(
		r3.Scale(r3.Dot(c.Origin, c.Right), c.Right),
		r3.Scale(r3.Dot(c.Origin, c.Up), c.Up)))
	return write(w, f, v.paint)
}

// view is a slice being drawn.
type view struct {
	plan     *timing.Plan
	slice    timing.Slice
	quantity Quantity
	scale    scale
	middle   r3.Vec // the point of the slice that its axes count from
}

// flat returns a point of the room on the axes of the slice.
func (v view) flat(at r3.Vec) plotter.XY {
	d := r3.Sub(at, v.middle)
	return plotter.XY{X: r3.Dot(d, v.slice.Right), Y: r3.Dot(d, v.slice.Up)}
}

// outline returns where the slice cuts the body; where it passes above or below,
// the section a little above the body's centre, or above its cut, and false.
func (v view) outline() (corners [][2]float64, through bool) {
	b, s := v.plan.Array.Body, v.slice
	if cut := b.Section(v.middle, s.Right, s.Up); cut != nil {
		return cut, true
	}
	middle := r3.Vec{Z: max(0, b.Lowest()) + 1e-3*b.Radius}
	return b.Section(middle, s.Right, s.Up), false
}

func (v view) upright() bool { return v.slice.Up.Z > 0.5 }

func (v view) paint(c draw.Canvas) {
	below := "with the delays for the " + spotText(v.plan)
	if _, through := v.outline(); !through {
		below += "; dashed: the body, outside of this plane"
	}
	c = heading(c, fmt.Sprintf("%s: %s, %s", nameOf(v.plan), v.quantity.Name, v.slice.Name), below)
	p := v.plot()
	c, bar := v.shareOut(p, c)
	p.Draw(c)
	drawBar(bar, v.quantity, v.scale)
}

func (v view) plot() *plot.Plot {
	across, up := "forward, m", "left, m"
	if v.upright() {
		across, up = "towards the listening spot, m", "height above the body's centre, m"
	}
	p := newPlot(across, up)
	low := v.flat(v.slice.Origin)
	half := v.slice.Step / 2
	x0, y0 := low.X-half, low.Y-half
	x1, y1 := x0+float64(v.slice.Columns)*v.slice.Step, y0+float64(v.slice.Rows)*v.slice.Step
	p.Add(plotter.NewImage(v.heat(), x0, y0, x1, y1), marks{v})
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = x0, x1, y0, y1
	step := niceStep(max(x1-x0, y1-y0), 8)
	p.X.Tick.Marker, p.Y.Tick.Marker = evenTicks{step}, evenTicks{step}
	return p
}

// shareOut gives the plot as much of the canvas as keeps a metre as long across
// as it is up, and the colour bar a strip at the right of it.
func (v view) shareOut(p *plot.Plot, c draw.Canvas) (picture, bar draw.Canvas) {
	const gap, strip, air = 22, 95, 6
	room := draw.Crop(c, 0, -gap-strip, 0, -air)
	data := p.DataCanvas(room)
	size := data.Size()
	metre := min(float64(size.X)/(p.X.Max-p.X.Min), float64(size.Y)/(p.Y.Max-p.Y.Min))
	spareX := size.X - vg.Length(metre*(p.X.Max-p.X.Min))
	spareY := size.Y - vg.Length(metre*(p.Y.Max-p.Y.Min))
	picture = draw.Crop(room, spareX/2, -spareX/2, spareY/2, -spareY/2)
	data = p.DataCanvas(picture)
	bar = c
	bar.Min = vg.Point{X: data.Max.X + gap, Y: data.Min.Y}
	bar.Max = vg.Point{X: data.Max.X + gap + strip, Y: data.Max.Y}
	return picture, bar
}
