package figure

import (
	"fmt"
	"io"
	"math"
	"slices"

	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/recording"
	"pappus/timing/verdict"

	"gonum.org/v1/plot/vg/draw"
)

// Measured draws what was measured of a whole array over what was planned, with its error,
// matched in level, smoothed to sixths of octaves, each where it honestly tells something.
// Nothing measured is an error.
func Measured(w io.Writer, f Format, p *timing.Plan, v verdict.Level) error {
	curves := append(runs("planned", v.Frequency, v.Planned, stroke(1, 1.8)), runs("measured", v.Frequency, v.Measured, stroke(0, 2.4))...)
	if len(curves) == 0 {
		return nothing("measurement")
	}
	return levels(levelAxis(p.IsAbsolute()), lowest, highest, append(curves, errorEdges(v)...)).write(w, f, words.OfMeasured(p, v))
}

// errorEdges returns the edges of what 95 of 100 measurements lie within, about the measured
// level.
func errorEdges(v verdict.Level) []curve {
	if len(v.Bands) == 0 {
		return nil
	}
	high, low := about(v.Measured, func(f int) float64 { return verdict.Expanded * v.ErrorAt(v.Frequency[f]) })
	return append(runs("its error, 95 percent", v.Frequency, high, edge), runs("", v.Frequency, low, edge)...)
}

// about returns levels with an error added, and taken away.
func about(level []float64, by func(f int) float64) (high, low []float64) {
	high, low = slices.Clone(level), slices.Clone(level)
	for f := range level {
		e := by(f)
		high[f], low[f] = high[f]+e, low[f]-e
	}
	return high, low
}

// Harmonics draws what the array adds to a tone, over the tone's frequency; where
// nothing stands out of the noise nothing is drawn. No harmonics are an error.
func Harmonics(w io.Writer, f Format, p *timing.Plan, m recording.Measured) error {
	var curves []curve
	for i, h := range m.Harmonics {
		curves = append(curves, runs(fmt.Sprintf("%d times the frequency", h.Order), m.Frequency, h.Clear(), stroke(i, 1.8))...)
	}
	if len(curves) == 0 {
		return nothing("harmonics")
	}
	return levels("level over the tone, dB", lowest, highest, curves).write(w, f, words.OfHarmonics(p))
}

// runs smooths a level to sixths of octaves and splits it, at what is not known, into
// curves; the first carries the name.
func runs(name string, frequency, level []float64, style draw.LineStyle) []curve {
	level = band.SmoothGaps(nil, frequency, level, 6)
	var out []curve
	for from := 0; from < len(level); from++ {
		to := from
		for to < len(level) && !math.IsNaN(level[to]) {
			to++
		}
		if to > from {
			out = append(out, curve{name, frequency[from:to], level[from:to], style})
			name = ""
		}
		from = max(from, to)
	}
	return out
}
