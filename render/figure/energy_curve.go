package figure

import (
	"math"

	"pappus/render/words"

	"gonum.org/v1/gonum/dsp/window"
	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// smoothing in s is the width of the smoothing at half its height.
const smoothing = 0.05e-3

// energy is one impulse response as energy; its sum over the samples is 1.
type energy struct {
	words  string
	rate   float64
	first  int       // sample of the first arrival
	smooth []float64 // energy in each sample, smoothed
	toCome []float64 // from each sample on: 1 at the first
	silent bool      // there is none
}

// newEnergy returns false if the energy is no number. Silence has none at any time.
func newEnergy(s Sound, rate int) (energy, bool) {
	e := energy{words: s.Words, rate: float64(rate)}
	square := make([]float64, len(s.Samples))
	for i, v := range s.Samples {
		square[i] = v * v
	}
	e.toCome = make([]float64, len(square))
	sum := 0.0
	for i := len(square) - 1; i >= 0; i-- {
		sum += square[i]
		e.toCome[i] = sum
	}
	if sum == 0 {
		return energy{words: s.Words, rate: e.rate, silent: true}, true
	}
	if math.IsNaN(sum) || math.IsInf(sum, 1) {
		return energy{}, false
	}
	for i := range square {
		square[i] /= sum
		e.toCome[i] /= sum
	}
	e.first = firstArrival(square)
	e.smooth = smoothed(square, rate)
	return e, true
}

// firstArrival returns the first sample that is less than 20 dB below the
// greatest, which is how ISO 3382-1:2009, A.3.4, finds the beginning of an
// impulse response (from memory).
func firstArrival(square []float64) int {
	least := floats.Max(square) / 100
	for i, v := range square {
		if v >= least {
			return i
		}
	}
	return 0
}

// smoothed is a weighted mean over a raised cosine, the energy kept.
func smoothed(square []float64, rate int) []float64 {
	end := max(1, int(math.Round(smoothing*float64(rate)))) // where the weight is 0
	kernel := make([]float64, 2*end+1)
	for i := range kernel {
		kernel[i] = 1
	}
	window.Hann(kernel)
	floats.Scale(1/floats.Sum(kernel), kernel)
	out := make([]float64, len(square))
	for i := range out {
		for at := max(0, i-end); at <= min(i+end, len(square)-1); at++ {
			out[i] += kernel[at-i+end] * square[at]
		}
	}
	return out
}

// within returns how long after the first arrival, in s, a share of the energy
// has arrived.
func (e energy) within(share float64) float64 {
	if e.silent {
		return 0
	}
	for i := e.first; i < len(e.toCome)-1; i++ {
		if e.toCome[i+1] <= 1-share {
			return e.after(i)
		}
	}
	return e.after(len(e.toCome) - 1)
}

// after returns the time of a sample in s, counted from the first arrival.
func (e energy) after(sample int) float64 { return float64(sample-e.first) / e.rate }

// curves draws a response into its panel.
func (e energies) curves(c *draw.Canvas, p panel, one energy) {
	in := *c
	in.Rectangle = p.Rectangle
	if one.silent {
		label(c, aligned(font(10.5, quiet), draw.XCenter, draw.YCenter), vg.Point{X: (p.Min.X + p.Max.X) / 2, Y: (p.Min.Y + p.Max.Y) / 2}, words.NoSound)
		return
	}
	line, integral := e.points(p, one)
	if len(line) == 0 {
		return
	}
	under := append([]vg.Point{{X: line[0].X, Y: p.Min.Y}}, line...)
	under = append(under, vg.Point{X: line[len(line)-1].X, Y: p.Min.Y})
	in.FillPolygon(underLine, in.ClipPolygonXY(under))
	in.StrokeLines(energyLine, in.ClipLinesXY(line)...)
	in.StrokeLines(toComeLine, in.ClipLinesXY(integral)...)
}

// points returns the curves of a response on the page. Where samples are denser
// than half points, a point of the energy is the greatest of its samples, and one
// of the integral its first.
func (e energies) points(p panel, one energy) (line, integral []vg.Point) {
	from := max(0, one.first+int(math.Floor(e.time.low*one.rate)))
	to := min(len(one.smooth), one.first+int(math.Ceil(e.time.high*one.rate))+1)
	stride := max(1, int(float64(to-from)/(2*float64(p.Size().X))))
	for i := from; i < to; i += stride {
		x := p.rightward(e.time, one.after(i))
		greatest := floats.Max(one.smooth[i:min(i+stride, to)])
		line = append(line, vg.Point{X: x, Y: p.upward(levelScale, ratioLevel(greatest/e.greatest))})
		integral = append(integral, vg.Point{X: x, Y: p.upward(levelScale, ratioLevel(one.toCome[i]))})
	}
	return line, integral
}

// ratioLevel returns a ratio of energies in dB, silence if there is none.
func ratioLevel(ratio float64) float64 {
	return max(silence, 10*math.Log10(ratio))
}
