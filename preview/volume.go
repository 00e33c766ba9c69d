package preview

import (
	"math"
	"sync/atomic"

	"github.com/gopxl/beep/v2"
)

// Volume streams a source louder or softer, as it is turned while it plays.
type Volume struct {
	beep.Streamer
	wanted atomic.Uint64 // bits of a factor
	gain   float64
	step   float64 // how much of the way each sample goes
}

// NewVolume returns a Volume on src, at 0 dB, that follows a turn within about
// samples.
func NewVolume(src beep.Streamer, samples int) *Volume {
	v := &Volume{Streamer: src, gain: 1, step: 1 - math.Exp(-3/float64(max(samples, 1)))}
	v.Turn(0)
	return v
}

// Turn sets the level in dB, over the source's own. It may be called from any
// goroutine.
func (v *Volume) Turn(level float64) { v.wanted.Store(math.Float64bits(math.Pow(10, level/20))) }

// Stream fills samples. It allocates nothing.
func (v *Volume) Stream(samples [][2]float64) (n int, ok bool) {
	n, ok = v.Streamer.Stream(samples)
	wanted := math.Float64frombits(v.wanted.Load())
	for i := range samples[:n] {
		v.gain += v.step * (wanted - v.gain)
		samples[i][0] *= v.gain
		samples[i][1] *= v.gain
	}
	return n, ok
}
