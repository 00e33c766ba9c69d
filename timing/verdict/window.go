package verdict

import (
	"math"
	"math/cmplx"

	"pappus/timing"
	"pappus/timing/recording"

	"gonum.org/v1/gonum/dsp/fourier"
)

// What is looked at of a channel: from a little before its first driver is heard to some
// periods of the band's lowest frequency after its last, so that a room that the plan does
// not know of counts for little.
const (
	lead     = 0.001 // s before the first, half of it faded in: 340 mm of way, and a period of 1 kHz
	least    = 0.006 // s after the last, half of it faded out: 2 m of way
	leastLow = 3.0   // periods of the lowest frequency, if that is longer
	settling = 0.05  // free: s that a planned impulse response lasts after its last echo: a driver of 200 Hz is 300 dB down by 40 ms
	shorter  = 0.75  // of the window: what the last quarter changes is what a window may cut off
)

// window is a stretch of a channel's time, in s, by the plan's clock.
type window struct{ from, rise, fall, to float64 }

// windowOf returns what is looked at of a channel, each driver as it is heard.
func windowOf(p *timing.Plan, channel int, set Setting, low float64) window {
	first, last := math.Inf(1), math.Inf(-1)
	for _, m := range p.Channels[channel].Mounts {
		at := p.Arrivals[m].Heard() + set.delay(p, channel)
		first, last = min(first, at), max(last, at)
	}
	after := max(least, leastLow/low)
	return window{first - lead, first - lead/2, last + after/2, last + after}
}

// brief returns the window that ends sooner.
func (w window) brief() window {
	end := w.rise + shorter*(w.to-w.rise)
	return window{w.from, w.rise, end - (w.to - w.fall), end}
}

// length returns for how long in s a window listens.
func (w window) length() float64 { return w.to - w.from }

// weight returns what counts of a time in s.
func (w window) weight(t float64) float64 {
	switch {
	case t <= w.from || t >= w.to:
		return 0
	case t < w.rise:
		return (1 - math.Cos(math.Pi*(t-w.from)/(w.rise-w.from))) / 2
	case t > w.fall:
		return (1 + math.Cos(math.Pi*(t-w.fall)/(w.to-w.fall))) / 2
	}
	return 1
}

// through fills dst with the transform, at frequencies in Hz, of what a window that is
// late by some s leaves of samples of which the first is at begin, in s.
func (w window) through(dst []complex128, frequency, samples []float64, begin, rate, late float64) {
	from := max(0, int(math.Ceil((w.from+late-begin)*rate)))
	to := min(len(samples), int((w.to+late-begin)*rate)+1)
	seen := make([]float64, max(0, to-from))
	for i := range seen {
		seen[i] = samples[from+i] * w.weight(begin+float64(from+i)/rate-late)
	}
	for f, hz := range frequency {
		dst[f] = recording.Transform(seen, from, hz, rate) * cmplx.Rect(1, -2*math.Pi*hz*begin)
	}
}

// grid is how planned impulse responses are sampled.
type grid struct {
	rate      float64 // Hz
	n         int
	frequency []float64
	taper     []float64 // closes the band, over n
	fft       *fourier.FFT
}

// newGrid returns one for a plan and a band up to high.
func newGrid(p *timing.Plan, c timing.Case, high float64) *grid {
	_, last := p.Span(c, false, p.Array.Spot)
	g := &grid{rate: 2.5*high + 4000, n: 2} // free: room above the band to close it in
	for float64(g.n) < (last+settling)*g.rate {
		g.n *= 2
	}
	g.frequency, g.taper = make([]float64, g.n/2+1), make([]float64, g.n/2+1)
	begin := high + 1000 // free: what is above the band tells nothing
	for k := range g.frequency {
		hz := float64(k) * g.rate / float64(g.n)
		g.frequency[k] = hz
		t := max(0, min(1, (hz-begin)/(g.rate/2-begin)))
		g.taper[k] = (1 + math.Cos(math.Pi*t)) / 2 / float64(g.n)
	}
	g.fft = fourier.NewFFT(g.n)
	return g
}

// seen returns, at frequencies in Hz, what a window leaves of something planned on the grid.
func (g *grid) seen(planned []complex128, w window, frequency []float64) []complex128 {
	closed := make([]complex128, len(planned))
	for k, v := range planned {
		closed[k] = v * complex(g.taper[k], 0)
	}
	out := make([]complex128, len(frequency))
	w.through(out, frequency, g.fft.Sequence(nil, closed), 0, g.rate, 0)
	return out
}

// look takes anew what was heard of a channel, through its window as late as it was found;
// what is too weak stays unknown.
func (o *channel) look(m *recording.Measured, frequency []float64) {
	seen := make([]complex128, len(frequency))
	o.window.through(seen, frequency, m.Impulse, m.Begin, m.Rate, o.late)
	for i, v := range o.heard {
		if !cmplx.IsNaN(v) {
			o.heard[i] = seen[i]
		}
	}
}
