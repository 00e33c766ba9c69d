package figure

import (
	"image"
	"image/color"
	stddraw "image/draw"
	"math"

	"gonum.org/v1/gonum/dsp/fourier"
	"gonum.org/v1/gonum/dsp/window"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
)

// pictures returns the spectra of all sounds as pictures that fill a panel of the
// given size, on one scale of colours.
func (s spectrograms) pictures(size vg.Point) []image.Image {
	columns, rows := int(size.X), s.dots*int(size.Y)
	spectra := newSpectra(s.rate, rows, lowest, s.top)
	power := make([][]float64, len(s.sounds))
	greatest := 0.0
	for i, sound := range s.sounds {
		power[i] = spectra.of(sound.Samples, columns, s.seconds*float64(s.rate)/float64(columns))
		for _, v := range power[i] {
			if v > greatest && !math.IsInf(v, 1) {
				greatest = v
			}
		}
	}
	out := make([]image.Image, len(power))
	for i := range power {
		steps := indices(power[i], greatest)
		if s.dots == 1 {
			out[i] = paletted(steps, columns, rows)
		} else {
			out[i] = coloured(steps, columns, rows)
		}
	}
	return out
}

// indices turns powers into steps of the colour scale, in place of a picture:
// column by column, upward.
func indices(power []float64, greatest float64) []uint8 {
	out := make([]uint8, len(power))
	for i, v := range power {
		// Silence and what is no number stay at the lowest step.
		if v > 0 && greatest > 0 {
			share := 1 + 10*math.Log10(v/greatest)/deep
			out[i] = uint8(255*min(max(share, 0), 1) + 0.5)
		}
	}
	return out
}

// paletted returns a small picture for an SVG: a byte to a dot.
func paletted(steps []uint8, columns, rows int) image.Image {
	var palette color.Palette
	for _, c := range shades() {
		palette = append(palette, c)
	}
	img := image.NewPaletted(image.Rect(0, 0, columns, rows), palette)
	for i, step := range steps {
		img.Pix[(rows-1-i%rows)*img.Stride+i/rows] = step
	}
	return img
}

// coloured returns a picture for a PNG, each column widened to two dots.
func coloured(steps []uint8, columns, rows int) image.Image {
	img, colours := image.NewRGBA(image.Rect(0, 0, 2*columns, rows)), shades()
	for i := range columns {
		for j := range rows {
			own := int(steps[i*rows+j])
			left, right := int(steps[max(i-1, 0)*rows+j]), int(steps[min(i+1, columns-1)*rows+j])
			img.SetRGBA(2*i, rows-1-j, colours[(3*own+left+2)/4])
			img.SetRGBA(2*i+1, rows-1-j, colours[(3*own+right+2)/4])
		}
	}
	return img
}

// lay draws a picture. On a PNG, where it has a dot for each of the page's, the dots
// are copied: to resample them would take time and change nothing.
func lay(c *draw.Canvas, at vg.Rectangle, img image.Image) {
	under := c.Canvas
	for { // each crop wraps the canvas once more
		cropped, ok := under.(draw.Canvas)
		if !ok {
			break
		}
		under = cropped.Canvas
	}
	page, ok := under.(*vgimg.Canvas)
	if !ok {
		c.DrawImage(at, img)
		return
	}
	corner := image.Pt(int(math.Round(at.Min.X.Dots(dpi))), page.Image().Bounds().Dy()-int(math.Round(at.Max.Y.Dots(dpi))))
	bounds := img.Bounds()
	stddraw.Draw(page.Image(), bounds.Add(corner), img, bounds.Min, stddraw.Src)
}

// windowLength returns the least power of two of samples that last 80 ms: four
// periods of the lowest frequency drawn, so that its bin stands clear of 0 Hz.
func windowLength(rate int) int {
	n := 2
	for n < rate*2/25 {
		n *= 2
	}
	return n
}

// spectra takes short-time spectra in bands evenly spaced in log-frequency.
type spectra struct {
	fft       *fourier.FFT
	window    []float64
	edge      []float64 // of the bands, in bins of the transform
	bandwidth float64   // of the window for noise, in bins
	frame     []float64
	bins      []complex128
	power     []float64 // of a bin; a sine of amplitude 1 has 1
	below     []float64 // integral of power over bins up to a bin
}

func newSpectra(rate, rows int, low, high float64) *spectra {
	n := windowLength(rate)
	s := &spectra{
		fft: fourier.NewFFT(n), frame: make([]float64, n), bins: make([]complex128, n/2+1),
		power: make([]float64, n/2+1), below: make([]float64, n/2+1),
	}
	s.window = make([]float64, n)
	for i := range s.window {
		s.window[i] = 1
	}
	window.Hann(s.window)
	sum, squares := 0.0, 0.0
	for _, v := range s.window {
		sum, squares = sum+v, squares+v*v
	}
	s.bandwidth = float64(n) * squares / (sum * sum)
	for i := range s.window {
		s.window[i] *= 2 / sum
	}
	for i := range rows + 1 {
		f := low * math.Pow(high/low, float64(i)/float64(rows))
		s.edge = append(s.edge, min(f*float64(n)/float64(rate), float64(n)/2))
	}
	return s
}

// of returns the power in every band, column by column: column i takes what lies
// from i to i+1 times step, in samples, in one window, or in several that overlap
// by half at least.
func (s *spectra) of(samples []float64, columns int, step float64) []float64 {
	rows := len(s.edge) - 1
	out := make([]float64, columns*rows)
	windows := int(math.Ceil(step / float64(len(s.window)/2)))
	for i := range columns {
		clear(s.power)
		for k := range windows {
			middle := (float64(i) + (float64(k)+0.5)/float64(windows)) * step
			s.add(samples, int(math.Round(middle)), 1/float64(windows))
		}
		s.fill(out[i*rows : (i+1)*rows])
	}
	return out
}

// add adds a share of the power in the window round a sample.
func (s *spectra) add(samples []float64, middle int, share float64) {
	first := middle - len(s.window)/2
	begin, end := max(first, 0), min(first+len(s.window), len(samples))
	if begin >= end {
		return
	}
	clear(s.frame)
	for i, v := range samples[begin:end] {
		s.frame[begin-first+i] = v * s.window[begin-first+i]
	}
	s.fft.Coefficients(s.bins, s.frame)
	for k, v := range s.bins {
		s.power[k] += share * (real(v)*real(v) + imag(v)*imag(v))
	}
}

// fill takes the power in every band. Between bins it is a straight line, so that
// bands narrower than a bin have their share too.
func (s *spectra) fill(dst []float64) {
	for k := 1; k < len(s.power); k++ {
		s.below[k] = s.below[k-1] + (s.power[k-1]+s.power[k])/2
	}
	last := s.upTo(s.edge[0])
	for i := range dst {
		next := s.upTo(s.edge[i+1])
		dst[i] = (next - last) / min(s.bandwidth, s.edge[i+1]-s.edge[i])
		last = next
	}
}

// upTo returns the integral of the power from 0 to a place between bins.
func (s *spectra) upTo(at float64) float64 {
	k := min(int(at), len(s.power)-2)
	t := at - float64(k)
	return s.below[k] + t*(s.power[k]+t/2*(s.power[k+1]-s.power[k]))
}
