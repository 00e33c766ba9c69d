package figure

import (
	"fmt"
	"image"
	"image/color"
	"io"
	"math"
	"slices"

	"pappus/layout"
	"pappus/render/words"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Coverage draws a quantity over a slice of the room in colours, with the
// outline of the body, the listening spot, the seats, a length to measure by and the
// scale of the colours. From above all seats are drawn, whatever their height, from the side
// those that the slice goes through. The axes count metres from the centre of the body.
// Values that are not Columns*Rows long are an error, as is an empty slice.
func Coverage(w io.Writer, f Format, p *timing.Plan, c *timing.Coverage, q Quantity) error {
	if c.Columns < 1 || c.Rows < 1 {
		return nothing("coverage")
	}
	if len(q.Values) != c.Columns*c.Rows {
		return fmt.Errorf("%s: values do not match the slice: %d values, %d cells", q.Name, len(q.Values), c.Columns*c.Rows)
	}
	if q.Unit == decibel && p.IsAbsolute() {
		q.Unit = words.Unit(true)
	}
	v := view{plan: p, slice: c.Slice, quantity: q, scale: q.scale()}
	v.middle = r3.Sub(c.Origin, r3.Add(
		r3.Scale(r3.Dot(c.Origin, c.Right), c.Right),
		r3.Scale(r3.Dot(c.Origin, c.Up), c.Up)))
	v.edges = v.edgesOf(c)
	return write(w, f, v.paint)
}

// view is a slice being drawn.
type view struct {
	plan     *timing.Plan
	slice    timing.Slice
	quantity Quantity
	scale    scale
	middle   r3.Vec // the point of the slice that its axes count from
	edges    []edges
}

// flat returns a point of the room on the axes of the slice.
func (v view) flat(at r3.Vec) plotter.XY {
	d := r3.Sub(at, v.middle)
	return plotter.XY{X: r3.Dot(d, v.slice.Right), Y: r3.Dot(d, v.slice.Up)}
}

// outline returns where the slice cuts a body; where it passes above or below,
// the section a little above the body's centre, or above its cut, and false. Corners count
// from the slice's middle.
func (v view) outline(p layout.Placing) (corners [][2]float64, through bool) {
	b, s := v.plan.Array.Body, v.slice
	right, up := p.In(s.Right), p.In(s.Up)
	if cut := b.Section(p.Into(v.middle), right, up); cut != nil {
		return cut, true
	}
	middle := r3.Vec{Z: max(0, b.Lowest()) + 1e-3*b.Radius}
	if corners = b.Section(middle, right, up); p.At != (r3.Vec{}) {
		at := r3.Sub(p.Place(middle), v.middle)
		for i := range corners {
			corners[i][0] += r3.Dot(at, s.Right)
			corners[i][1] += r3.Dot(at, s.Up)
		}
	}
	return corners, false
}

func (v view) upright() bool { return v.slice.Up.Z > 0.5 }

func (v view) paint(c draw.Canvas) {
	light := "good"
	if v.quantity.Level {
		light = "loud"
	}
	c = heading(c, words.OfSlice(v.plan, v.quantity.Name, v.slice.Name, light))
	legend := edgesLegend(v.edges)
	if _, through := v.outline(v.plan.Array.Bodies()[0]); !through {
		legend = append(legend, besideLegend)
	}
	c = legendAbove(c, legend)
	p := v.plot()
	c, bar := v.shareOut(p, c)
	p.Draw(c)
	drawBar(bar, v.quantity, v.scale, v.plan.SpeedOfSound)
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
	p.Add(plotter.NewImage(v.heat(), x0, y0, x1, y1), v)
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = x0, x1, y0, y1
	v.widen(p)
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

// heat returns the quantity as a picture, a cell to a pixel. A cell just inside
// of the body takes a value from outside, or else the grey of the inside would
// glow through the outline, which is drawn over it, when the picture is
// enlarged.
func (v view) heat() *image.RGBA {
	s := v.slice
	img := image.NewRGBA(image.Rect(0, 0, s.Columns, s.Rows))
	grey := color.RGBAModel.Convert(solid).(color.RGBA)
	for i, value := range v.quantity.Values {
		if math.IsNaN(value) {
			value = v.beside(i)
		}
		c := grey
		if !math.IsNaN(value) {
			c = shade(v.scale.light(value))
		}
		img.SetRGBA(i%s.Columns, s.Rows-1-i/s.Columns, c)
	}
	return img
}

// beside returns the value of a neighbour that has one, NaN if none does.
func (v view) beside(cell int) float64 {
	s := v.slice
	column, row := cell%s.Columns, cell/s.Columns
	for y := max(row-1, 0); y <= min(row+1, s.Rows-1); y++ {
		for x := max(column-1, 0); x <= min(column+1, s.Columns-1); x++ {
			if value := v.quantity.Values[y*s.Columns+x]; !math.IsNaN(value) {
				return value
			}
		}
	}
	return math.NaN()
}

// Plot draws what lies over the colours: lines of one value, walls, the outline of the body,
// as far as one may lean, the spot and the scale bar.
func (v view) Plot(c draw.Canvas, p *plot.Plot) {
	taken := v.taken(c, p)
	v.contours(c, p, taken)
	v.drawWalls(c, p)
	for _, e := range v.edges {
		v.lines(c, p, e.lines, halo, e.style)
	}
	for _, held := range v.plan.Array.Bodies() {
		v.body(c, p, held)
	}
	v.seats(c, p)
	if !slices.ContainsFunc(v.plan.Array.Seats, func(s layout.Seat) bool { return s.At == v.plan.Array.Spot }) || v.plan.Seating == nil {
		v.spot(c, p, taken)
	}
	v.length(c, p)
	if note := v.quantity.note(); note != "" {
		label(&c, aligned(font(10.5, ink), draw.XCenter, draw.YTop), vg.Point{X: c.Center().X, Y: c.Max.Y - 12}, note)
	}
}

// besideLine is the outline of a body that the slice passes by.
var besideLine = draw.LineStyle{Color: paper, Width: 1.2, Dashes: []vg.Length{3, 2}}

// besideLegend explains it, on a ground on which it shows.
var besideLegend = entry{words.OutOfPlane, 30, 22, func(c *draw.Canvas, x, y vg.Length) {
	c.StrokeLine2(draw.LineStyle{Color: shade(0.4), Width: 9}, x, y, x+24, y)
	c.StrokeLine2(besideLine, x+1, y, x+23, y)
}}

// body draws the outline of the body, dashed where the slice passes it by, so
// that the picture can still be set against the array.
func (v view) body(c draw.Canvas, p *plot.Plot, held layout.Placing) {
	style := draw.LineStyle{Color: ink, Width: 1.2}
	outline, through := v.outline(held)
	if !through {
		style = besideLine
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
