package figure

import (
	"io"
	"slices"

	"pappus/render/words"
	"pappus/timing/tolerance"

	"gonum.org/v1/plot/vg/draw"
)

// Tolerance draws the level at the spot of drivers that are not alike: what nine lots in ten lie
// within, with twins; below, the same over twins. A study without a response is an error.
func Tolerance(w io.Writer, f Format, s *tolerance.Study) error {
	if len(s.Frequency) < 2 {
		return nothing("tolerance")
	}
	twins, middle := stroke(0, 2), stroke(1, 1.4)
	upper := levels(levelAxis(s.Plan.IsAbsolute()), lowest, highest, []curve{
		{"", s.Frequency, s.Low, draw.LineStyle{}}, {"", s.Frequency, s.High, draw.LineStyle{}},
	}, shaded(s.Frequency, s.Low, s.High))
	upper.legend = append(upper.legend, ofLine("nine lots in ten", draw.LineStyle{Color: tint, Width: 9}))
	upper.line("twins", curve{"", s.Frequency, s.Alike, twins}.points(), twins)
	upper.line("the middle of all lots", curve{"", s.Frequency, s.Middle, middle}.points(), middle)
	upper.X.Label.Text = ""
	upper.Y.Min, upper.Y.Max = levelRange([]curve{{"twins", s.Frequency, s.Alike, twins}, {"high", s.Frequency, s.High, twins}})
	upper.steps(0, 8)

	over := func(level []float64) []float64 {
		out := make([]float64, len(level))
		for i := range level {
			out[i] = level[i] - s.Alike[i]
		}
		return out
	}
	low, high := over(s.Low), over(s.High)
	lower := newChart("frequency, Hz", "over twins, dB", shaded(s.Frequency, low, high))
	lower.line("", curve{"", s.Frequency, filled(len(low), 0), twins}.points(), twins)
	lower.line("", curve{"", s.Frequency, over(s.Middle), middle}.points(), middle)
	lower.frequencies(lowest, highest)
	lower.Y.Min, lower.Y.Max = overRange(low, high)
	lower.steps(0, 6)
	return writePair(w, f, words.OfTolerance(s), upper, lower)
}

// shaded is the strip between two levels.
func shaded(frequency, low, high []float64) strip {
	above := curve{"", frequency, high, draw.LineStyle{}}.points()
	slices.Reverse(above)
	return strip{append(curve{"", frequency, low, draw.LineStyle{}}.points(), above...)}
}

// overRange returns the ends of an axis of differences in dB: all of them with some air, and
// one dB each way at least.
func overRange(low, high []float64) (least, most float64) {
	least, most = -1, 1
	for i := range low {
		least, most = min(least, 1.1*max(low[i], -deepest)), max(most, 1.1*min(high[i], deepest))
	}
	return least, most
}
