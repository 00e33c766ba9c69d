package figure

import (
	"io"
	"math"
	"math/cmplx"

	"pappus/layout/impedance"
	"pappus/render/words"

	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// ImpedanceLines is what a picture of an impedance shows: the points that were
// measured and up to two lines, each a function of the frequency in Hz; nil: none.
type ImpedanceLines struct {
	words.Picture
	Measured        []impedance.Point
	Fitted, Planned func(hz float64) complex128
}

const (
	lineSteps = 500 // along the axis of frequency
	// Beyond this many times the measured range a planned load is not drawn.
	farOff  = 5
	crowded = 150 // points, from which on they lie under the lines
)

// Impedance draws the magnitude of an impedance in ohm above, its phase below.
// Without points it is an error.
func Impedance(w io.Writer, f Format, l ImpedanceLines) error {
	if len(l.Measured) < 2 {
		return nothing("impedance")
	}
	low, high := l.Measured[0].Frequency, l.Measured[len(l.Measured)-1].Frequency
	size, phase := newChart("", "magnitude, Ω"), newChart("frequency, Hz", "phase, degrees")
	sizes, phases := l.points()
	marks, thinner := draw.GlyphStyle{Color: ink, Radius: 1.6, Shape: draw.CircleGlyph{}}, vg.Length(1)
	many := len(l.Measured) > crowded
	mark := func() {
		size.scatter(sizes, marks)
		phase.scatter(phases, marks)
	}
	if many { // they would hide the lines
		marks.Color, marks.Radius, thinner = quiet, 1.3, 0.8
		mark()
	}
	size.legend = []entry{ofPoints("measured", marks)}
	l.line("fitted", l.Fitted, stroke(0, 2.2*thinner), size, phase)
	l.line("planned", l.Planned, stroke(1, 1.8*thinner), size, phase) // dashed, so that what is under it shows
	if !many {
		mark()
	}
	for _, c := range []*chart{size, phase} {
		c.frequencies(low, high)
	}
	size.Y.Min, size.Y.Max = l.ohms(sizes)
	size.steps(0, 8)
	phase.Y.Min, phase.Y.Max, phase.Y.Tick.Marker = -95, 95, evenTicks{45}
	return writePair(w, f, l.Picture, size, phase)
}

// line adds a line to the charts of magnitude and phase, sampled over the measured
// frequencies; nothing where there is none.
func (l ImpedanceLines) line(name string, at func(float64) complex128, style draw.LineStyle, size, phase *chart) {
	if at == nil {
		return
	}
	var sizes, phases plotter.XYs
	for _, hz := range l.steps() {
		if z := at(hz); !cmplx.IsInf(z) && !cmplx.IsNaN(z) {
			sizes = append(sizes, plotter.XY{X: hz, Y: cmplx.Abs(z)})
			phases = append(phases, plotter.XY{X: hz, Y: cmplx.Phase(z) * 180 / math.Pi})
		}
	}
	if len(sizes) > 1 {
		size.line(name, sizes, style)
		phase.line("", phases, style)
	}
}

// steps returns the frequencies in Hz at which lines are sampled.
func (l ImpedanceLines) steps() []float64 {
	out, low, high := make([]float64, lineSteps+1), l.Measured[0].Frequency, l.Measured[len(l.Measured)-1].Frequency
	for i := range out {
		out[i] = low * math.Pow(high/low, float64(i)/lineSteps)
	}
	return out
}

// points returns what was measured, magnitude and phase.
func (l ImpedanceLines) points() (sizes, phases plotter.XYs) {
	for _, p := range l.Measured {
		sizes = append(sizes, plotter.XY{X: p.Frequency, Y: p.Ohm})
		phases = append(phases, plotter.XY{X: p.Frequency, Y: max(-95, min(95, p.Degrees))})
	}
	return sizes, phases
}

// ohms returns the ends of the axis of magnitude: from 0 to over all that was
// measured, and planned where that is not far off.
func (l ImpedanceLines) ohms(sizes plotter.XYs) (low, high float64) {
	for _, p := range sizes {
		high = max(high, p.Y)
	}
	most := farOff * high
	if l.Planned != nil {
		for _, hz := range l.steps() {
			if v := cmplx.Abs(l.Planned(hz)); v < most {
				high = max(high, v)
			}
		}
	}
	return 0, 1.08 * high
}
