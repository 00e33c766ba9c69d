package limit

import (
	"math"
	"sync/atomic"

	"github.com/gopxl/beep/v2"
)

// Fader streams a source that rises from silence as half a raised cosine and,
// once stopped, falls to silence in the same way and ends.
type Fader struct {
	src      beep.Streamer
	in, out  float64 // 1 over the samples that each fade takes
	position float64 // 0 silence, 1 full
	stop     atomic.Bool
	done     bool
}

// Fade returns a Fader on src that takes in samples to rise and out samples to
// fall, each at least 1.
func Fade(src beep.Streamer, in, out int) *Fader {
	return &Fader{src: src, in: 1 / float64(max(in, 1)), out: 1 / float64(max(out, 1))}
}

// Stop begins the fall, from whatever level has been reached. It may be called
// from any goroutine and more than once.
func (f *Fader) Stop() { f.stop.Store(true) }

// Stream fills samples. It allocates nothing.
func (f *Fader) Stream(samples [][2]float64) (n int, ok bool) {
	if f.done {
		return 0, false
	}
	n, ok = f.src.Stream(samples)
	step := f.in
	if f.stop.Load() {
		step = -f.out
	}
	for i := range samples[:n] {
		gain := (1 - math.Cos(math.Pi*f.position)) / 2
		samples[i][0] *= gain
		samples[i][1] *= gain
		if f.position = min(f.position+step, 1); f.position <= 0 {
			f.position, f.done = 0, true
			return i + 1, true
		}
	}
	return n, ok
}

// Err is the source's.
func (f *Fader) Err() error { return f.src.Err() }
