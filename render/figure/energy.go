package figure

import (
	"fmt"
	"io"
	"math"
	"pappus/render/words"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Energy draws up to five impulse responses, rate samples a second, one above
// another: their energy over time in dB, smoothed over 0.05 ms, and thin the
// energy still to come, its backward integral (M. R. Schroeder, JASA 37 (1965)
// 409). All are brought to the same energy; 0 dB is the greatest of any, and for
// the integral all of the energy. Time counts from the first arrival of each,
// until 99 % of the energy has arrived in every case, for 5 to 50 ms: that is where
// a smear is to be seen. One that is silent says so. No response, one whose energy is no number, more
// than five, or a rate outside of 1000 to 1000000, is an error.
func Energy(w io.Writer, f Format, title string, responses []Sound, rate int) error {
	if err := drawable(responses, rate); err != nil {
		return fmt.Errorf("energy: %w", err)
	}
	e := energies{title: title}
	for _, r := range responses {
		one, ok := newEnergy(r, rate)
		if !ok {
			return fmt.Errorf("energy: nothing to draw in %q", r.Words)
		}
		e.all = append(e.all, one)
	}
	e.settle()
	return write(w, f, e.paint)
}

// energies are impulse responses being drawn.
type energies struct {
	title    string
	all      []energy
	greatest float64 // of all, smoothed
	time     scale   // s
}

// settle finds the ends of the axes.
func (e *energies) settle() {
	const least, most = 0.005, 0.05
	until := least
	for _, one := range e.all {
		until = max(until, one.within(0.99))
		for _, v := range one.smooth {
			e.greatest = max(e.greatest, v)
		}
	}
	step := niceStep(until, 10)
	until = min(step*math.Ceil(until/step-1e-9), most)
	e.time = scale{low: -until / 20, high: until}
}

var (
	energyLine = draw.LineStyle{Color: colours[0], Width: 1}
	toComeLine = draw.LineStyle{Color: ink, Width: 0.9}
	underLine  = faint(colours[0])
)

// levelScale is that of every response.
var levelScale = scale{low: -deep, high: 0}

func (e energies) paint(c draw.Canvas) {
	c = heading(c, words.Picture{Title: e.title, Below: "time from the first arrival; all brought to the same energy, 0 dB: the greatest of any"})
	c = legendAbove(c, []entry{
		ofLine("energy, smoothed over 0.05 ms", draw.LineStyle{Color: colours[0], Width: 2}),
		ofLine("energy still to come (backward integral), 0 dB: all of it", toComeLine),
	})
	in := axisTitles(c, "time, ms", "level, dB")
	high := in.Size().Y / vg.Length(len(e.all))
	for i, one := range e.all {
		const strip, foot = 20, 6
		top := in.Max.Y - vg.Length(i)*high
		p := panel{vg.Rectangle{
			Min: vg.Point{X: in.Min.X, Y: top - high + foot}, Max: vg.Point{X: in.Max.X, Y: top - strip},
		}}
		e.axes(&c, p, i == len(e.all)-1)
		e.curves(&c, p, one)
		one.caption(&c, p)
	}
}

// axes draws the grid and the axes of a panel, the times with their numbers or
// without.
func (e energies) axes(c *draw.Canvas, p panel, numbers bool) {
	time := scale{low: 1000 * e.time.low, high: 1000 * e.time.high} // ms
	times := evenTicks{niceStep(time.high, 10)}.Ticks(time.low, time.high)
	levels := evenTicks{levelStep(len(e.all))}.Ticks(levelScale.low, levelScale.high)
	line := draw.LineStyle{Color: rule, Width: 0.5}
	for _, t := range levels {
		y := p.upward(levelScale, t.Value)
		c.StrokeLine2(line, p.Min.X, y, p.Max.X, y)
	}
	for _, t := range times {
		x := p.rightward(time, t.Value)
		c.StrokeLine2(line, x, p.Min.Y, x, p.Max.Y)
	}
	p.up(c, levels, levelScale, true)
	p.across(c, times, time, numbers)
	p.frame(c)
}

// levelStep keeps the numbers apart where panels are low.
func levelStep(panels int) float64 {
	if panels < 3 {
		return 10
	}
	return 20
}

// caption names a response above its panel and says how soon its energy arrives.
func (e energy) caption(c *draw.Canvas, p panel) {
	if e.silent {
		p.name(c, wrap(e.words, p.Size().X, 1))
		return
	}
	note := fmt.Sprintf("half of the energy within %.2f ms, 99 %% within %.2f ms", 1000*e.within(0.5), 1000*e.within(0.99))
	style := aligned(font(9.5, quiet), draw.XRight, draw.YBottom)
	c.FillText(style, vg.Point{X: p.Max.X, Y: p.Max.Y + 8}, note)
	p.name(c, wrap(e.words, p.Size().X-style.Width(note)-12, 1))
}
