package figure

import (
	"fmt"
	"image"
	"math"
	"slices"

	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/band"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Quantity is one field of values over a slice, to be drawn in colours.
type Quantity struct {
	Name, Unit string
	Values     []float64 // row-major, first row lowest; NaN inside the body
	Log        bool      // a logarithmic scale
	LowIsGood  bool      // low values are light: light is always the good end
	Level      bool      // a level, of which 3 dB below the spot's is an edge
	// Low and High are the ends of the scale; NaN: the 2nd and the 98th
	// percentile of the finite values, rounded outward.
	Low, High float64
}

// decibel is the unit of a level.
const decibel = "dB"

// Level returns the level in dB in a band, an index into c.Band.
func Level(c *timing.Coverage, b int) Quantity {
	return Quantity{
		Name: fmt.Sprintf("level in the %s octave", band.Hertz(c.Band[b])), Unit: decibel,
		Values: c.Level[b], Low: math.NaN(), High: math.NaN(), Level: true,
	}
}

// Smear returns the spread of the arrivals in microseconds.
func Smear(c *timing.Coverage) Quantity {
	us := make([]float64, len(c.Smear))
	for i, v := range c.Smear {
		us[i] = 1e6 * v
	}
	return Quantity{Name: "smear", Unit: microseconds, Values: us, Low: 0, High: math.NaN(), LowIsGood: true}
}

// Loss returns what is lost against all drivers in step, in dB.
func Loss(c *timing.Coverage) Quantity {
	return Quantity{Name: "lost against all drivers in step", Unit: lostUnit, Values: c.Loss, Low: 0, High: math.NaN(), LowIsGood: true}
}

// lostUnit is the unit of a loss, which is no level.
const lostUnit = "dB lost"

// CombOnset returns the lowest frequency in Hz at which summing loses 3 dB.
func CombOnset(c *timing.Coverage) Quantity {
	return Quantity{
		Name: "comb onset", Unit: "Hz", Values: c.CombOnset, Log: true,
		Low: math.NaN(), High: math.NaN(),
	}
}

// scale is the colour scale of a quantity with its ends settled.
type scale struct {
	low, high float64
	log       bool
	lowIsGood bool
}

// leastSpan is what a scale shows at least, in dB or µs: nobody hears less (the least change
// of level that is heard is about 0.5 dB: Zwicker and Fastl, Psychoacoustics, 7.1).
const leastSpan = 1.0

func (q Quantity) scale() scale {
	s := scale{q.Low, q.High, q.Log, q.LowIsGood}
	low, high := robust(q.Values, q.Log)
	if math.IsNaN(s.low) || q.Log && s.low <= 0 {
		s.low = low
	}
	if math.IsNaN(s.high) {
		s.high = high
	}
	if !q.Log {
		s.high = max(s.high, s.low+leastSpan)
		step := niceStep(s.high-s.low, 8)
		if math.IsNaN(q.Low) {
			s.low = step * math.Floor(s.low/step)
		}
		if math.IsNaN(q.High) {
			s.high = step * math.Ceil(s.high/step)
		}
	}
	if s.high <= s.low {
		s.high = s.low + 1
	}
	return s
}

// robust returns the 2nd and the 98th percentile of the finite values, of the
// positive ones only on a logarithmic scale.
func robust(values []float64, log bool) (low, high float64) {
	var known []float64
	for _, v := range values {
		if !math.IsNaN(v) && !math.IsInf(v, 0) && (!log || v > 0) {
			known = append(known, v)
		}
	}
	if len(known) == 0 {
		return 1000, 10000
	}
	return between(known, 0.02)
}

// between returns a share and one less it of some values in their order; the values are sorted.
func between(values []float64, share float64) (low, high float64) {
	slices.Sort(values)
	at := func(share float64) float64 {
		return values[int(math.Round(share*float64(len(values)-1)))]
	}
	return at(share), at(1 - share)
}

// share returns where a value lies on the scale, 0 at its low end; a value
// that has no logarithm lies at or below it.
func (s scale) share(v float64) float64 {
	if s.log {
		if v <= 0 {
			return 0
		}
		return math.Log(v/s.low) / math.Log(s.high/s.low)
	}
	return (v - s.low) / (s.high - s.low)
}

// light returns how light a value is drawn, 0 for the dark end.
func (s scale) light(v float64) float64 {
	if s.lowIsGood {
		return 1 - s.share(v)
	}
	return s.share(v)
}

// microseconds is the unit of times in pictures.
const microseconds = "µs"

// way returns how far sound travels, in mm, in so many microseconds, at a speed in m/s.
func way(us, speed float64) float64 { return us * speed / 1000 }

// note says that a quantity has nothing to show; nothing where it has.
func (q Quantity) note() string {
	most, sound := math.Inf(-1), false
	for _, v := range q.Values {
		if sound = sound || !math.IsNaN(v) && !math.IsInf(v, -1); v > most {
			most = v
		}
	}
	switch {
	case !sound:
		return words.NoSound
	case q.Log && !slices.ContainsFunc(q.Values, func(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 1) }):
		return words.NoCombs
	case q.Unit == microseconds && most < leastSpan/2:
		return words.NoSmear
	case q.Unit == lostUnit && most < leastSpan/20:
		return words.NoLoss
	}
	return ""
}

// drawBar draws the scale of the colours with its unit, and beside times how far sound travels
// in them.
func drawBar(c draw.Canvas, q Quantity, s scale, speed float64) {
	const thick, head, tick = 14, 20, 4
	bar := vg.Rectangle{Min: c.Min, Max: vg.Point{X: c.Min.X + thick, Y: c.Max.Y - head}}
	c.DrawImage(bar, ramp(float64(thick/bar.Size().Y), s.lowIsGood))
	line := draw.LineStyle{Color: quiet, Width: 0.6}
	number := aligned(font(9.5, ink), draw.XLeft, draw.YCenter)
	for _, t := range s.ticks() {
		y := bar.Min.Y + vg.Length(s.share(t.Value))*bar.Size().Y
		long := vg.Length(tick)
		if t.Label == "" {
			long /= 2
		}
		c.StrokeLine2(line, bar.Max.X, y, bar.Max.X+long, y)
		if q.Unit == microseconds && way(s.high, speed) >= 3 {
			t.Label += " (" + decimal(way(t.Value, speed), 1) + ")"
		}
		c.FillText(number, vg.Point{X: bar.Max.X + tick + 3, Y: y + lift}, t.Label)
	}
	title := aligned(font(10.5, ink), draw.XLeft, draw.YTop)
	unit := q.Unit
	if unit == microseconds && way(s.high, speed) >= 3 {
		unit += " (mm of way)"
	}
	c.FillText(title, vg.Point{X: c.Min.X, Y: c.Max.Y}, unit)
	if slices.ContainsFunc(q.Values, func(v float64) bool { return math.IsInf(v, 1) }) {
		c.FillText(aligned(font(9.5, quiet), draw.XLeft, draw.YTop),
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

// ramp returns the colours as a picture, so many times as wide as high: pictures in an SVG
// keep their proportions. The light end is at the top, or at the bottom.
func ramp(wide float64, lightBelow bool) *image.RGBA {
	all := shades()
	width := max(1, int(math.Round(wide*float64(len(all)))))
	img := image.NewRGBA(image.Rect(0, 0, width, len(all)))
	for i, c := range all {
		row := len(all) - 1 - i
		if lightBelow {
			row = i
		}
		for x := range width {
			img.SetRGBA(x, row, c)
		}
	}
	return img
}
