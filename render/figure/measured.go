package figure

import (
	"fmt"
	"io"
	"math"

	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/recording"
	"pappus/timing/verdict"

	"gonum.org/v1/plot/vg/draw"
)

// Measured draws what was measured of a whole array over what was planned, with its error,
// matched in level, smoothed to sixths of octaves, each where it honestly tells something.
// Nothing measured is ErrNothing.
func Measured(w io.Writer, f Format, p *timing.Plan, v verdict.Level) error {
	var curves []curve
	curves = append(curves, runs("planned", v.Frequency, v.Planned, stroke(1, 1.8))...)
	curves = append(curves, runs("measured", v.Frequency, v.Measured, stroke(0, 2.4))...)
	if len(curves) == 0 {
		return fmt.Errorf("measurement: %w", ErrNothing)
	}
	curves = append(curves, errorEdges(v)...)
	return write(w, f, func(c draw.Canvas) {
		drawCurves(heading(c, nameOf(p)+": measured and planned",
			fmt.Sprintf("matched from %.0f Hz to %.1f kHz; there the thirds of octaves differ by %.1f dB; sixth-octave smoothed",
				v.Low, v.High/1000, v.Uneven)), curves, p.IsAbsolute())
	})
}

// errorEdges returns the edges of what 95 of 100 measurements lie within, about the measured
// level: its bands' expanded errors, straight over log frequency between their centres.
func errorEdges(v verdict.Level) []curve {
	if len(v.Bands) == 0 {
		return nil
	}
	style := stroke(2, 1)
	style.Dashes = dashes[1]
	high, low := make([]float64, len(v.Frequency)), make([]float64, len(v.Frequency))
	for f, hz := range v.Frequency {
		i := 0
		for i < len(v.Bands)-1 && v.Bands[i+1].Centre < hz {
			i++
		}
		e := v.Bands[i].Error
		if hz > v.Bands[i].Centre && i < len(v.Bands)-1 {
			next := v.Bands[i+1]
			e += (next.Error - e) * math.Log(hz/v.Bands[i].Centre) / math.Log(next.Centre/v.Bands[i].Centre)
		}
		high[f], low[f] = v.Measured[f]+verdict.Expanded*e, v.Measured[f]-verdict.Expanded*e
	}
	return append(runs("its error, 95 percent", v.Frequency, high, style), runs("", v.Frequency, low, style)...)
}

// Harmonics draws what the array adds to a tone, over the tone's frequency; where
// nothing stands out of the noise nothing is drawn. No harmonics are ErrNothing.
func Harmonics(w io.Writer, f Format, p *timing.Plan, m recording.Measured) error {
	var curves []curve
	for i, h := range m.Harmonics {
		curves = append(curves, runs(fmt.Sprintf("%d times the frequency", h.Order), m.Frequency, h.Clear(), stroke(i, 1.8))...)
	}
	if len(curves) == 0 {
		return fmt.Errorf("harmonics: %w", ErrNothing)
	}
	return write(w, f, func(c draw.Canvas) {
		c = heading(c, nameOf(p)+": harmonics", "level over that of the tone, dB; sixth-octave smoothed; what noise would give is left out")
		drawLevels(c, curves, "level over the tone, dB")
	})
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
