package preview

import (
	"context"

	"pappus/preview/limit"
	"pappus/preview/through"
	"pappus/timing"

	"github.com/gopxl/beep/v2"
	"gonum.org/v1/gonum/dsp/fourier"
)

// NewWalk makes a set of cases for a listener who walks along a way, facing the
// body or turned from it by the same angle all along, whatever who.At says. Every
// stream of the set begins where the way does and stays where it ends, or walks to and
// fro; the levels are matched over the programme, which should last as long as the way.
//
// The response follows in steps of a few mm, each blended into the next by raised
// cosines. What is common to all sounds, the time from the body to the listener, is
// left out, and with it the Doppler shift (0.35 percent at 1.2 m/s); how arrivals
// move against each other stays. The mirror image in the surface below is heard, or
// that in a room's floor; the other echoes of a room are not, for they are too many to
// be moved. It works until ctx ends. Errors wrap ErrWay, or are as for NewSet.
func NewWalk(ctx context.Context, p *timing.Spot, who Listener, way Way, cases []Case, programme func() beep.Streamer, rate int) (*Set, error) {
	if err := way.check(); err != nil {
		return nil, err
	}
	banks, err := newBanks(ctx, p, who, way, plain(cases), rate)
	if err != nil {
		return nil, err
	}
	s := &Set{programme: programme}
	for _, b := range banks {
		s.through = append(s.through, b.through)
	}
	return s, s.match(ctx, rate)
}

// through streams a source as it is heard on the way.
func (b *bank) through(src beep.Streamer) beep.Streamer {
	size := len(b.steps[0])
	w := &walker{
		bank:   b,
		src:    through.New(src, b.driver),
		skip:   b.hop + b.early,
		fade:   make([]float64, 2*b.hop),
		in:     make([][2]float64, b.hop),
		line:   make([]float64, 2*b.hop),
		padded: make([]float64, size),
		half:   make([]complex128, size/2+1),
		work:   make([]complex128, size),
		sum:    make([]complex128, size),
		real:   fourier.NewFFT(size),
		both:   fourier.NewCmplxFFT(size),
	}
	for i := range w.fade {
		at := (float64(i) + 0.5) / float64(b.hop)
		w.fade[i] = limit.Rise(min(at, 2-at))
	}
	return w
}

// walker streams a source through a bank: pieces of two steps that rise and fall as
// raised cosines, which add to 1, each heard through the response in its middle,
// and added up (overlap-add; Oppenheim and Schafer, Discrete-Time Signal Processing,
// chapter 8).
type walker struct {
	*bank
	src beep.Streamer

	at   int // the step that is next
	fade []float64
	in   [][2]float64
	line []float64 // the last two steps of the source

	padded     []float64
	half, work []complex128
	real       *fourier.FFT
	both       *fourier.CmplxFFT

	sum      []complex128 // what is due next, the first step of it ready between from and to
	from, to int
	skip     int // samples before the beginning
	given    int // samples that came from the source
	drained  bool
}

// Stream fills samples. It allocates nothing.
func (w *walker) Stream(samples [][2]float64) (n int, ok bool) {
	for n < len(samples) {
		if w.from == w.to && !w.next() {
			break
		}
		early := min(w.skip, w.to-w.from)
		w.skip -= early
		w.from += early
		for n < len(samples) && w.from < w.to {
			v := w.sum[w.from]
			samples[n] = [2]float64{real(v), imag(v)}
			n++
			w.from++
		}
	}
	return n, n > 0 || len(samples) == 0
}

// Err is the source's.
func (w *walker) Err() error { return w.src.Err() }

// next computes one more step and reports whether there was one. Step j of the source
// runs to the sample (j+1) hop and makes those from (j-1) hop ready.
func (w *walker) next() bool {
	w.given += w.read()
	ready := max(0, w.at-1) * w.hop
	end := w.given + w.length - 1
	if w.src.Err() != nil || w.given == 0 || w.drained && ready >= end {
		return false
	}
	if w.at > 0 {
		copy(w.sum, w.sum[w.hop:])
		clear(w.sum[len(w.sum)-w.hop:])
	}
	w.hear()
	w.from, w.to = 0, w.hop
	if w.drained && w.at > 0 {
		w.to = min(w.hop, end-ready)
	}
	w.at++
	return true
}

// read fills in from the source, and with silence after it, and returns how many
// samples came.
func (w *walker) read() int {
	got := 0
	for got < w.hop && !w.drained {
		n, ok := w.src.Stream(w.in[got:])
		got += n
		w.drained = !ok
	}
	clear(w.in[got:])
	copy(w.line, w.line[w.hop:])
	for i, v := range w.in {
		w.line[w.hop+i] = (v[0] + v[1]) / 2
	}
	return got
}

// place returns the step of the bank that is heard at a step from the beginning.
func (b *bank) place(at int) int {
	at, last := max(0, at-b.wait), len(b.steps)-1
	if !b.back || last == 0 {
		return min(at, last)
	}
	at %= 2 * last
	return min(at, 2*last-at)
}

// hear adds the last two steps of the source, as they are heard at this step, to
// what is due.
func (w *walker) hear() {
	for i, v := range w.line {
		w.padded[i] = v * w.fade[i]
	}
	w.real.Coefficients(w.half, w.padded)
	response := w.steps[w.place(w.at)]
	last := len(w.half) - 1
	for k, v := range w.half {
		w.work[k] = v * complex128(response[k])
		if k > 0 && k < last {
			mirror := len(w.work) - k
			w.work[mirror] = complex(real(v), -imag(v)) * complex128(response[mirror])
		}
	}
	w.both.Sequence(w.work, w.work)
	for i, v := range w.work {
		w.sum[i] += v
	}
}
