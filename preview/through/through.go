package through

import (
	"github.com/gopxl/beep/v2"
	"gonum.org/v1/gonum/dsp/fourier"
)

// largest is the largest partition in samples: large enough to be quick, small
// enough that the spectra stay in the processor's cache.
const largest = 1024

// New streams src convolved with an impulse response, left and right alike:
//
//	out[n] = sum over k of impulse[k] in[n-k]
//
// The output is len(impulse)-1 samples longer than src, or empty where src is;
// none of it is late. It keeps no reference to impulse. Stream allocates
// nothing. It panics where impulse is empty.
func New(src beep.Streamer, impulse []float64) beep.Streamer {
	return newConvolver(src, impulse, nil, false)
}

// Ears streams src as two ears hear it: the mean of its left and right, which is
// the source itself where both are one, convolved with an impulse response for
// each ear. The rest is as for New; it panics where the lengths differ.
func Ears(src beep.Streamer, left, right []float64) beep.Streamer {
	if len(left) != len(right) {
		panic("through: lengths differ")
	}
	return newConvolver(src, left, right, true)
}

func newConvolver(src beep.Streamer, re, im []float64, mono bool) *convolver {
	if len(re) == 0 {
		panic("through: empty impulse response")
	}
	size := 64
	for size < len(re) && size < largest {
		size *= 2
	}
	c := &convolver{
		src:  src,
		mono: mono,
		tail: len(re) - 1,
		size: size,
		fft:  fourier.NewCmplxFFT(2 * size),
		in:   make([][2]float64, size),
		past: make([]complex128, size),
		work: make([]complex128, 2*size),
		out:  make([]complex128, 2*size),
	}
	c.partition(re, im)
	return c
}

type convolver struct {
	src      beep.Streamer
	mono     bool // the source's mean, not its left and right
	fft      *fourier.CmplxFFT
	size     int            // of a partition
	parts    [][]complex128 // spectra of the impulse response's partitions
	line     [][]complex128 // spectra of the past blocks, a ring
	head     int            // of the newest in line
	in       [][2]float64
	past     []complex128 // the block before
	work     []complex128
	out      []complex128 // second half valid
	from, to int          // of out, not yet handed on
	tail     int          // samples owed after src
	drained  bool
	started  bool
}

// partition fills parts with the impulse response re + i im, with the transform's
// norm taken out, and makes room for the line. im may be nil.
func (c *convolver) partition(re, im []float64) {
	norm := 1 / float64(2*c.size)
	for start := 0; start < len(re); start += c.size {
		part := make([]complex128, 2*c.size)
		for i := start; i < min(start+c.size, len(re)); i++ {
			v := complex(re[i]*norm, 0)
			if im != nil {
				v = complex(re[i]*norm, im[i]*norm)
			}
			part[i-start] = v
		}
		c.parts = append(c.parts, c.fft.Coefficients(part, part))
		c.line = append(c.line, make([]complex128, 2*c.size))
	}
}

// Stream fills samples.
func (c *convolver) Stream(samples [][2]float64) (n int, ok bool) {
	for n < len(samples) {
		if c.from == c.to && !c.next() {
			break
		}
		for n < len(samples) && c.from < c.to {
			v := c.out[c.from]
			samples[n] = [2]float64{real(v), imag(v)}
			n++
			c.from++
		}
	}
	return n, n > 0 || len(samples) == 0
}

// Err is the source's.
func (c *convolver) Err() error { return c.src.Err() }

// next computes one more block and reports whether there was one.
func (c *convolver) next() bool {
	got := c.read()
	if c.src.Err() != nil || got == 0 && (!c.started || c.tail == 0) {
		return false
	}
	c.started = true
	c.transform(got)
	c.sum()
	if c.drained {
		owed := min(c.size-got, c.tail)
		c.tail -= owed
		got += owed
	}
	c.from, c.to = c.size, c.size+got
	return true
}

// read fills in from the source and returns how many samples came.
func (c *convolver) read() int {
	got := 0
	for got < c.size && !c.drained {
		n, ok := c.src.Stream(c.in[got:])
		got += n
		c.drained = !ok
	}
	return got
}

// transform puts the spectrum of the last two blocks at the head of the line.
func (c *convolver) transform(got int) {
	c.head = (c.head + 1) % len(c.line)
	newest := c.line[c.head]
	copy(newest, c.past)
	for i, v := range c.in[:got] {
		if c.mono {
			v = [2]float64{(v[0] + v[1]) / 2, 0}
		}
		c.past[i] = complex(v[0], v[1])
	}
	clear(c.past[got:])
	copy(newest[c.size:], c.past)
	c.fft.Coefficients(newest, newest)
}

// sum multiplies the line by the partitions and transforms back.
func (c *convolver) sum() {
	clear(c.work)
	for p, part := range c.parts {
		block := c.line[(c.head-p+len(c.line))%len(c.line)]
		block = block[:len(part)]
		work := c.work[:len(part)]
		for i, h := range part {
			work[i] += h * block[i]
		}
	}
	c.fft.Sequence(c.out, c.work)
}
