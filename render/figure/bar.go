package figure

import (
	"image"
	"math"
	"slices"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// drawBar draws the scale of the colours with its unit.
func drawBar(c draw.Canvas, q Quantity, s scale) {
	const thick, head, tick = 14, 20, 4
	bar := vg.Rectangle{Min: c.Min, Max: vg.Point{X: c.Min.X + thick, Y: c.Max.Y - head}}
	c.DrawImage(bar, ramp(float64(thick/bar.Size().Y)))
	line := draw.LineStyle{Color: quiet, Width: 0.6}
	number := aligned(words(9.5, ink), draw.XLeft, draw.YCenter)
	for _, t := range s.ticks() {
		y := bar.Min.Y + vg.Length(s.share(t.Value))*bar.Size().Y
		long := vg.Length(tick)
		if t.Label == "" {
			long /= 2
		}
		c.StrokeLine2(line, bar.Max.X, y, bar.Max.X+long, y)
		c.FillText(number, vg.Point{X: bar.Max.X + tick + 3, Y: y + lift}, t.Label)
	}
	title := aligned(words(10.5, ink), draw.XLeft, draw.YTop)
	c.FillText(title, vg.Point{X: c.Min.X, Y: c.Max.Y}, q.Unit)
	if slices.ContainsFunc(q.Values, func(v float64) bool { return math.IsInf(v, 1) }) {
		c.FillText(aligned(words(9.5, quiet), draw.XLeft, draw.YTop),
			vg.Point{X: bar.Max.X + tick + 3, Y: c.Max.Y}, "none below")
	}
}

// ticks returns the marks of the scale with their labels.
func (s scale) ticks() []plot.Tick {
	if !s.log {
		return evenTicks{niceStep(s.high-s.low, 8)}.Ticks(s.low, s.high)
	}
	all, named := frequencyTicks{}.Ticks(s.low, s.high), 0
	for _, t := range all {
		if t.Label != "" {
			named++
		}
	}
	if named >= 2 {
		return all
	}
	step := niceStep(s.high-s.low, 5)
	return evenTicks{step}.Ticks(s.low, s.high)
}

// ramp returns the colours as a picture, low at the bottom, so many times as wide
// as high: pictures in an SVG keep their proportions.
func ramp(wide float64) *image.RGBA {
	all := shades()
	width := max(1, int(math.Round(wide*float64(len(all)))))
	img := image.NewRGBA(image.Rect(0, 0, width, len(all)))
	for i, c := range all {
		for x := range width {
			img.SetRGBA(x, len(all)-1-i, c)
		}
	}
	return img
}
