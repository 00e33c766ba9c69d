package figure

import (
	"fmt"
	"io"

	"pappus/timing"

	"gonum.org/v1/plot/vg/draw"
)

// Compare draws the levels of several plans, each at its own spot with its own
// delays, smoothed to third octaves. No plans, or none with a response, are
// ErrNothing.
func Compare(w io.Writer, f Format, plans []*timing.Plan) error {
	var curves []curve
	for i, p := range plans {
		r := p.Response
		if len(r.Frequency) < 2 {
			continue
		}
		curves = append(curves, curve{nameOf(p), r.Frequency, smooth(r.Frequency, r.Aligned), stroke(i, 2)})
	}
	if len(curves) == 0 {
		return fmt.Errorf("comparison: %w", ErrNothing)
	}
	return write(w, f, func(c draw.Canvas) {
		drawCurves(heading(c, "Designs compared: level at the listening spot, with the delays",
			spotsText(plans)+"; third-octave smoothed"), curves, allAbsolute(plans))
	})
}

// spotsText says where the spot is if all plans share it.
func spotsText(plans []*timing.Plan) string {
	for _, p := range plans {
		if p.Array.Spot != plans[0].Array.Spot {
			return "each design at its own listening spot"
		}
	}
	return spotText(plans[0])
}

// allAbsolute tells whether the levels of all plans are absolute.
func allAbsolute(plans []*timing.Plan) bool {
	for _, p := range plans {
		if !p.IsAbsolute() {
			return false
		}
	}
	return true
}
