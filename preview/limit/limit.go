package limit

import (
	"math"

	"pappus/preview/loudness/truepeak"

	"github.com/gopxl/beep/v2"
)

// Times of the limiter in s.
const (
	LookAhead = 0.0015
	Release   = 0.08 // to win back 63 % of the gain
)

// New streams src with no sample above ceiling (linear, over 0) in magnitude, and
// the sound between the samples, up to 20 kHz at a rate of 48 kHz, nowhere above
// it by more than 0.1 dB. Left and right share one gain. What stays below the
// ceiling, between the samples too, passes unchanged but for rounding, and nothing
// is late. A sample that is not finite becomes silence. rate is in samples a
// second. Stream allocates nothing.
func New(src beep.Streamer, ceiling float64, rate beep.SampleRate) beep.Streamer {
	n := max(1, int(LookAhead*float64(rate)))
	// A peak is known truepeak.Delay samples late, and lies between the sample that
	// it is known of and the next: both need its gain.
	late := n + truepeak.Delay - 1
	l := &limiter{
		src:     src,
		ceiling: ceiling,
		back:    1 - math.Exp(-1/(Release*float64(rate))),
		peaks:   truepeak.NewFinder(int(rate)),
		delay:   make([][2]float64, late),
		gains:   make([]float64, n),
		least:   newSliding(n + 1),
		held:    1,
		ahead:   late,
		in:      make([][2]float64, 512),
	}
	for i := range l.gains {
		l.gains[i] = 1
	}
	l.sum = float64(n)
	return l
}

type limiter struct {
	src      beep.Streamer
	ceiling  float64
	back     float64
	peaks    *truepeak.Finder
	delay    [][2]float64 // the samples still to come, a ring
	next     int          // in delay
	gains    []float64    // the last held gains, a ring
	at       int          // in gains
	sum      float64      // of gains
	least    *sliding
	held     float64
	ahead    int // samples still to be read before the first goes out
	in       [][2]float64
	from, to int // of in, not yet used
	owed     int // samples of silence to follow the source
	drained  bool
}

// Stream fills samples.
func (l *limiter) Stream(samples [][2]float64) (n int, ok bool) {
	for n < len(samples) {
		v, more := l.read()
		if !more {
			break
		}
		out := l.push(v)
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

// read returns the source's next sample, then silence for as long as samples are
// owed.
func (l *limiter) read() ([2]float64, bool) {
	if l.from == l.to && !l.drained {
		n, ok := l.src.Stream(l.in)
		l.from, l.to, l.drained = 0, n, !ok
		if !ok {
			l.from, l.to = 0, 0
			l.owed = len(l.delay)
		}
	}
	if l.from < l.to {
		l.from++
		return finite(l.in[l.from-1]), true
	}
	if l.src.Err() != nil || l.owed == 0 {
		return [2]float64{}, false
	}
	l.owed--
	return [2]float64{}, true
}

// push takes a sample in and gives back, limited, the one that came len(delay)
// samples before.
func (l *limiter) push(v [2]float64) [2]float64 {
	need := 1.0
	if peak := l.peaks.Push(v, l.ceiling); peak > l.ceiling {
		need = l.ceiling / peak
	}
	l.held = min(l.least.push(need), l.held+l.back*(1-l.held))
	l.sum += l.held - l.gains[l.at]
	l.gains[l.at] = l.held
	out := l.delay[l.next]
	l.delay[l.next] = v
	if l.next++; l.next == len(l.delay) {
		l.next = 0
	}
	if l.at++; l.at == len(l.gains) {
		l.at = 0
		l.resum()
	}
	gain := l.sum / float64(len(l.gains))
	for c := range out {
		// What is left above the ceiling here is rounding.
		out[c] = min(max(out[c]*gain, -l.ceiling), l.ceiling)
	}
	return out
}

// resum adds the gains up anew, so that rounding does not gather.
func (l *limiter) resum() {
	l.sum = 0
	for _, g := range l.gains {
		l.sum += g
	}
}

// finite turns what is not a number, or infinite, into silence.
func finite(v [2]float64) [2]float64 {
	for c := range v {
		if math.IsNaN(v[c]) || math.IsInf(v[c], 0) {
			v[c] = 0
		}
	}
	return v
}
