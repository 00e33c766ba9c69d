package limit

import (
	"math"
	"sync/atomic"

	"github.com/gopxl/beep/v2"
)

// Fader streams a source that rises from silence as half a raised cosine and
// falls to silence in the same way: before the source ends, or once stopped.
type Fader struct {
	src      beep.Streamer
	in, out  float64 // 1 over the samples that each fade takes
	position float64 // 0 silence, 1 full
	stop     atomic.Bool
	done     bool

	// held is what has been read ahead, so that the end is seen in time to fall.
	held    [][2]float64
	late, n int // samples to read ahead; those held
	drained bool
}

// Fade returns a Fader on src that takes in samples to rise and out samples to
// fall, each at least 1. It reads out samples ahead and is as long as src.
func Fade(src beep.Streamer, in, out int) *Fader {
	in, out = max(in, 1), max(out, 1)
	return &Fader{
		src: src, in: 1 / float64(in), out: 1 / float64(out),
		held: make([][2]float64, out+512), late: out,
	}
}

// Stop begins the fall, from whatever level has been reached. It may be called
// from any goroutine and more than once.
func (f *Fader) Stop() { f.stop.Store(true) }

// Stream fills samples. It allocates nothing.
func (f *Fader) Stream(samples [][2]float64) (n int, ok bool) {
	for n < len(samples) && !f.done {
		got := f.pass(samples[n:])
		if got == 0 {
			break
		}
		n += got
	}
	return n, n > 0 || len(samples) == 0
}

// pass hands on what need not be held any longer and returns how many samples
// those were.
func (f *Fader) pass(samples [][2]float64) int {
	f.fill()
	ready := f.n
	if !f.drained {
		ready -= f.late
	}
	ready = min(ready, len(samples))
	step := f.in
	if f.stop.Load() {
		step = -f.out
	}
	for i := range ready {
		gain := Rise(f.position)
		if left := float64(f.n-i) * f.out; f.drained && left < 1 {
			gain *= Rise(left)
		}
		samples[i] = [2]float64{gain * f.held[i][0], gain * f.held[i][1]}
		if f.position = min(f.position+step, 1); f.position <= 0 {
			f.position, f.done = 0, true
			return i + 1
		}
	}
	copy(f.held, f.held[ready:f.n])
	f.n -= ready
	return max(ready, 0)
}

// fill reads ahead.
func (f *Fader) fill() {
	for f.n < len(f.held) && !f.drained {
		got, ok := f.src.Stream(f.held[f.n:])
		f.n += got
		f.drained = !ok
	}
}

// Rise is a raised cosine from 0 at 0, and before, to 1 at 1, and after.
func Rise(t float64) float64 { return (1 - math.Cos(math.Pi*min(max(t, 0), 1))) / 2 }

// Err is the source's.
func (f *Fader) Err() error { return f.src.Err() }
