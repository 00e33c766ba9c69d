package limit

import (
	"math"

	"github.com/gopxl/beep/v2"
)

// Times of the limiter in s.
const (
	lookAhead = 0.0015
	release   = 0.08 // to win back 63 % of the gain
)

// New streams src with no sample above ceiling (linear, over 0) in magnitude.
// Left and right share one gain. What stays below the ceiling passes unchanged
// but for rounding, and nothing is late. A sample that is not finite becomes
// silence. rate is in samples a second. Stream allocates nothing.
func New(src beep.Streamer, ceiling float64, rate beep.SampleRate) beep.Streamer {
	n := max(1, int(lookAhead*float64(rate)))
	l := &limiter{
		src:     src,
		ceiling: ceiling,
		back:    1 - math.Exp(-1/(release*float64(rate))),
		delay:   make([][2]float64, n),
		gains:   make([]float64, n),
		least:   newSliding(n + 1),
		held:    1,
		ahead:   n,
		in:      make([][2]float64, 512),
	}
	for i := range l.gains {
		l.gains[i] = 1
	}
	return l
}

type limiter struct {
	src      beep.Streamer
	ceiling  float64
	back     float64
	delay    [][2]float64 // the samples still to come, a ring
	gains    []float64    // the last held gains, a ring in step with delay
	at       int          // in both rings
	least    *sliding
	held     float64
	ahead    int // samples still to be read before the first goes out
	in       [][2]float64
	from, to int // of in, not yet used
	owed     int // samples in delay once the source has ended
	pushed   int // samples in delay so far, up to its length
	drained  bool
}

// Stream fills samples.
func (l *limiter) Stream(samples [][2]float64) (n int, ok bool) {
	for n < len(samples) {
		next, more := l.next()
		if !more {
			break
		}
		out := l.push(next)
		if l.ahead > 0 {
			l.ahead--
			continue
		}
		samples[n] = out
		n++
	}
	return n, n > 0 || len(samples) == 0
}

// Err is the source's.
func (l *limiter) Err() error { return l.src.Err() }

// next returns the source's next sample, then silence for as long as samples
// are owed.
func (l *limiter) next() ([2]float64, bool) {
	if l.from == l.to && !l.drained {
		n, ok := l.src.Stream(l.in)
		l.from, l.to, l.drained = 0, n, !ok
		if !ok {
			l.from, l.to = 0, 0
			l.owed = l.pushed
		}
	}
	if l.from < l.to {
		l.from++
		l.pushed = min(l.pushed+1, len(l.delay))
		return finite(l.in[l.from-1]), true
	}
	if l.src.Err() != nil || l.owed == 0 {
		return [2]float64{}, false
	}
	l.owed--
	return [2]float64{}, true
}
