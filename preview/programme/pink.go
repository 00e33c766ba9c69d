package programme

import (
	"math"
	"math/cmplx"
	"math/rand/v2"

	"gonum.org/v1/gonum/dsp/fourier"
)

// Pink makes pink noise from 20 Hz to 20 kHz, or to 0.45 of a low rate. The
// period is the least power of two that lasts 4 s.
func Pink(rate int) Loop {
	n := powerOfTwo(4 * rate)
	step := float64(rate) / float64(n)
	random := rand.New(rand.NewPCG(20, 20000))
	spectrum := make([]complex128, n/2+1)
	first, last := int(math.Ceil(20/step)), int(top(rate)/step)
	for k := first; k <= last; k++ {
		spectrum[k] = cmplx.Rect(1/math.Sqrt(float64(k)), 2*math.Pi*random.Float64())
	}
	return finish(fourier.NewFFT(n).Sequence(nil, spectrum))
}
