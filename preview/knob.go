package preview

import (
	"math"
	"sync/atomic"

	"github.com/gopxl/beep/v2"
)

// Knob streams a source louder or softer, as it is turned while it plays.
type Knob struct {
	beep.Streamer
	wanted atomic.Uint64 // bits of a factor
	gain   float64
	step   float64 // how much of the way each sample goes
}

// NewKnob returns a Knob on src, at 0 dB, that follows a turn within about
// samples.
func NewKnob(src beep.Streamer, samples int) *Knob {
	k := &Knob{Streamer: src, gain: 1, step: 1 - math.Exp(-3/float64(max(samples, 1)))}
	k.Turn(0)
	return k
}

// Turn sets the level in dB, over the source's own. It may be called from any
// goroutine.
func (k *Knob) Turn(level float64) { k.wanted.Store(math.Float64bits(math.Pow(10, level/20))) }

// Stream fills samples. It allocates nothing.
func (k *Knob) Stream(samples [][2]float64) (n int, ok bool) {
	n, ok = k.Streamer.Stream(samples)
	wanted := math.Float64frombits(k.wanted.Load())
	for i := range samples[:n] {
		k.gain += k.step * (wanted - k.gain)
		samples[i][0] *= k.gain
		samples[i][1] *= k.gain
	}
	return n, ok
}
