package figure

import (
	"fmt"
	"io"

	"pappus/timing"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Response draws the level at the spot over frequency: all drivers in step,
// with the delays, and as built, smoothed to third octaves; behind them, thin
// and faint, the last two as they are. A plan without a response is ErrNothing.
func Response(w io.Writer, f Format, p *timing.Plan) error {
	r := p.Response
	if len(r.Frequency) < 2 {
		return fmt.Errorf("response: %w", ErrNothing)
	}
	inStep, delayed, built := stroke(6, 1.4), stroke(0, 2.4), stroke(1, 2)
	inStep.Color, inStep.Dashes = quiet, dashes[2]
	curves := []curve{
		{"", r.Frequency, r.Unaligned, thin(built)},
		{"", r.Frequency, r.Aligned, thin(delayed)},
		{"in step, the most there can be", r.Frequency, smooth(r.Frequency, r.InStep), inStep},
		{"as built, without delays", r.Frequency, smooth(r.Frequency, r.Unaligned), built},
		{"with the delays", r.Frequency, smooth(r.Frequency, r.Aligned), delayed},
	}
	return write(w, f, func(c draw.Canvas) {
		drawCurves(heading(c, nameOf(p)+": level at the listening spot",
			spotText(p)+"; third-octave smoothed, unsmoothed behind"), curves, p.IsAbsolute())
	})
}

// thin returns the style of the unsmoothed line behind a smoothed one.
func thin(s draw.LineStyle) draw.LineStyle {
	for i, c := range colours {
		if s.Color == colours[i] {
			s.Color = faint(c)
		}
	}
	s.Width, s.Dashes = vg.Length(0.7), nil
	return s
}
