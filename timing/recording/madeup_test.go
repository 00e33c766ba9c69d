package recording_test

import (
	"math"
	"math/cmplx"
	"math/rand/v2"
	"slices"

	"pappus/timing/recording"
	"pappus/timing/sweep"

	"gonum.org/v1/gonum/dsp/fourier"
)

// fault is what is wrong with a made-up recording.
type fault string

// The kinds of faults. How large they are is drawn, from what begins to matter on.
const (
	none        fault = "none"
	clipped     fault = "clipped"          // by 0.5 to 6 dB of its peak
	gainChanged fault = "gain changed"     // by 1 to 10 dB, at once or bit by bit
	stopped     fault = "stopped"          // for 5 to 100 ms: a lost buffer of 256 to 4096 samples
	otherBand   fault = "another band"     // by 2 to 25 percent at either end
	otherLength fault = "another length"   // by 2 to 25 percent
	otherRate   fault = "another rate"     // is written into the file
	cutShort    fault = "cut short"        // one marker is missing
	swapped     fault = "channels swapped" // the microphone's and the wire's
	nothing     fault = "nothing heard"    // but a room, beside a wire that has the sweep or without one
	overdriven  fault = "overdriven"       // cut off at 0.2 to 0.7 of the amplitude before the loudspeaker
)

var faults = []fault{clipped, gainChanged, stopped, otherBand, otherLength, otherRate, cutShort, swapped, nothing, overdriven}

// arrival is one way from the loudspeaker to the microphone.
type arrival struct{ at, gain float64 } // s, over the first

// madeUp is a recording whose truth is known, of a driver and a room that are known in closed form.
type madeUp struct {
	fault  fault
	random *rand.Rand
	sweep  sweep.Sweep
	rate   float64 // Hz, as the file has it
	fast   float64 // parts per million of the recorder's clock
	wired  bool
	gain   float64 // of what is heard over what the wire has, or over full scale
	warm   float64 // dB by which the loudspeaker is louder at the end of the sweep

	resonance, q           float64 // Hz; of a closed box
	bump, bumpQ, bumpLevel float64 // Hz, its Q and dB of a peak or a dip
	second, third          float64 // over the tone, of weak harmonics
	ways                   []arrival

	samples, wire []int16
}

// What recordings are made with: a small array heard in a room.
const (
	madeUpRate = 16000.0
	fastest    = 4 // times that rate, at which what is not linear is made, so that little folds back
	tailWays   = 60
)

// newMadeUp draws a recording, and records it: a third of them without any fault.
func newMadeUp(seed uint64) *madeUp {
	r := rand.New(rand.NewPCG(seed, 41))
	m := &madeUp{fault: none, random: r, rate: madeUpRate, fast: 40 * r.NormFloat64(), wired: r.IntN(2) == 0,
		sweep: sweep.Sweep{Start: 150, Stop: 6000, Length: 0.8, Rise: 0.02, Fall: 0.005, Lead: 0.3, Gap: 0.2, Tail: 0.5}}
	if seed%3 != 0 {
		m.fault = faults[int(2*(seed/3)+seed%3-1)%len(faults)]
		m.wired = m.wired && m.fault != otherBand || m.fault == swapped // what the wire has is what is taken out
	}
	m.drawDriver()
	m.drawRoom()
	m.record()
	return m
}

// drawDriver draws a small one: its harmonics are those of one that is not overdriven (common practice).
func (m *madeUp) drawDriver() {
	r := m.random
	m.resonance, m.q = logBetween(r, 80, 250), between(r, 0.5, 1.2)
	m.bump, m.bumpQ, m.bumpLevel = logBetween(r, 800, 6000), between(r, 1, 5), between(r, -5, 5)
	m.second, m.third = decibels(between(r, -55, -35)), decibels(between(r, -60, -40))
}

// drawRoom draws up to three echoes of things that stand near, as loud as package rehearsal has them and within half of
// the usual gate or behind it; and a tail of a living room or a small library, that dies away by 60 dB in 0.15 to
// 0.45 s, has no more energy than the direct sound (both common practice), and no echo that is half as loud.
func (m *madeUp) drawRoom() {
	r := m.random
	late := between(r, 0.012, 0.03)
	m.ways = []arrival{{late, 1}}
	for range r.IntN(4) {
		after := between(r, 0.1, 0.5)
		if r.IntN(2) == 0 {
			after = between(r, 1, 2)
		}
		m.ways = append(m.ways, arrival{late + after*recording.UsualGate, decibels(between(r, -14, -4)) * math.Copysign(1, r.NormFloat64())})
	}
	lasts, energy, sum := between(r, 0.15, 0.45), math.Pow(10, between(r, -15, 0)/10), 0.0
	tail := make([]arrival, tailWays)
	for i := range tail {
		after := between(r, 0.015, 0.7*lasts)
		tail[i] = arrival{late + after, math.Pow(10, -3*after/lasts) * r.NormFloat64()}
		sum += tail[i].gain * tail[i].gain
	}
	for _, t := range tail {
		gain := t.gain * math.Sqrt(energy/sum)
		m.ways = append(m.ways, arrival{t.at, max(-0.5, min(0.5, gain))})
	}
}

// driver returns the driver's response at a frequency in Hz: a high-pass of the second order, as a closed box is, and
// a peak.
func (m *madeUp) driver(hz float64) complex128 {
	s := complex(0, hz/m.resonance)
	h := s * s / (s*s + s*complex(1/m.q, 0) + 1)
	a := math.Pow(10, m.bumpLevel/40)
	p := complex(0, hz/m.bump)
	return h * (p*p + p*complex(a/m.bumpQ, 0) + 1) / (p*p + p*complex(1/(a*m.bumpQ), 0) + 1)
}

// truth returns what comes within a time in s after the first sound at frequencies in Hz, in dB: each when the sweep
// is there, and with what a cube gives to the tone, 3/4 of it.
func (m *madeUp) truth(frequency []float64, within float64) []float64 {
	out := make([]float64, len(frequency))
	for f, hz := range frequency {
		var sum complex128
		for _, w := range m.ways {
			if w.at <= m.ways[0].at+within {
				sum += cmplx.Rect(w.gain, -2*math.Pi*hz*w.at)
			}
		}
		out[f] = 20*math.Log10(m.gain*(1+3*m.third)*cmplx.Abs(sum*m.driver(hz))) +
			m.warm*math.Log(hz/m.sweep.Start)/math.Log(m.sweep.Stop/m.sweep.Start)
	}
	return out
}

// record makes the recording.
func (m *madeUp) record() {
	played := m.sweep
	switch by := math.Exp(logBetween(m.random, 0.02, 0.22) * math.Copysign(1, m.random.NormFloat64())); {
	case m.fault == otherBand && m.random.IntN(2) == 0:
		played.Start *= by
	case m.fault == otherBand:
		played.Stop *= by
	case m.fault == otherLength:
		played.Length *= by
	}
	heard, wire := m.hear(played)
	m.disturb(heard)
	m.spoil(heard)
	loudest := decibels(between(m.random, -40, -1)) // the recorder is set with room to spare
	scale := loudest / most(heard)
	if m.fault == clipped {
		scale, loudest = scale*decibels(between(m.random, 0.5, 6)), min(loudest, 1)
	}
	const wireScale = 0.3
	m.gain = scale
	if m.wired {
		m.gain = scale / wireScale
	}
	limit(scaleTo(heard, scale), loudest)
	m.samples = sixteen(heard)
	if m.wired {
		m.wire = sixteen(scaleTo(wire, wireScale))
	}
	m.finish()
}

// hear returns what comes of a sweep at the microphone and what the wire has, at the recorder's rate.
func (m *madeUp) hear(played sweep.Sweep) (heard, wire []float64) {
	rate := m.rate * (1 + m.fast/1e6)
	x := played.Samples(fastest * rate)
	n := recording.Length(len(x)/fastest + int(0.5*rate))
	wire = played.Samples(rate)
	bent := make([]float64, fastest*n)
	most := between(m.random, 0.2, 0.7)
	for i, v := range x { // the harmonics of a cosine's powers
		bent[i] = v + 2*m.second*v*v + 4*m.third*v*v*v
		if m.fault == overdriven {
			bent[i] = max(-most, min(most, bent[i]))
		}
	}
	spectrum := fourier.NewFFT(len(bent)).Coefficients(nil, bent)[:n/2+1]
	through := make([]complex128, len(spectrum))
	for _, w := range m.ways {
		turn, now := cmplx.Rect(1, -2*math.Pi*w.at*rate/float64(n)), complex(w.gain/float64(fastest*n), 0)
		for k := range through {
			through[k] += now
			now *= turn
		}
	}
	for k := range spectrum {
		spectrum[k] *= through[k] * m.driver(float64(k)*rate/float64(n))
	}
	return fourier.NewFFT(n).Sequence(nil, spectrum)[:len(wire)], wire
}

// disturb adds noise that is white or falls by 6 dB an octave, hum and a thump, as package rehearsal draws them.
func (m *madeUp) disturb(heard []float64) {
	r, size := m.random, rms(heard)
	noise, last, red := decibels(between(r, -65, -20)), 0.0, r.IntN(2) == 0
	room := make([]float64, len(heard))
	for i := range room {
		last = 0.99*last + r.NormFloat64()
		if room[i] = last; !red {
			room[i] = r.NormFloat64()
		}
	}
	noise *= size / rms(room)
	hum, at := 0.0, -1
	if r.IntN(2) == 0 {
		hum = size * decibels(between(r, -80, -45))
	}
	if r.Float64() < 0.15 && m.fault != clipped { // of which a thump would be all that is
		at = r.IntN(len(heard))
	}
	thump, lasts := most(heard)*decibels(between(r, -30, -6)), logBetween(r, 1e-4, 1e-2)*m.rate
	for i := range heard {
		if m.fault == nothing {
			heard[i] = 0
		}
		heard[i] += noise*room[i] + hum*math.Sin(2*math.Pi*50*float64(i)/m.rate)
		if at >= 0 && i >= at {
			heard[i] += thump * math.Exp(-float64(i-at)/lasts)
		}
	}
}

// spoil does to what the microphone hears what its fault does; what has no fault warms up, by 0.3 dB at most.
func (m *madeUp) spoil(heard []float64) {
	r, by := m.random, between(m.random, -0.3, 0)
	m.warm = by
	begin, length := m.sweep.Begin()*m.rate, m.sweep.Length*m.rate
	from, over := begin, length
	if m.fault == gainChanged {
		by = logBetween(r, 1, 10) * math.Copysign(1, r.NormFloat64())
		if r.IntN(2) == 0 {
			from, over = begin+between(r, 0, length), 1
		}
	}
	for i := range heard {
		heard[i] *= decibels(by * max(0, min(1, (float64(i)-from)/over)))
	}
	if m.fault == stopped {
		lasts, still := logBetween(r, 0.005, 0.1)*m.rate, r.IntN(2) == 0
		from := int(begin + between(r, 0.05, 0.95)*(length-lasts))
		value := heard[from]
		if !still {
			value = 0
		}
		for i := range int(lasts) {
			heard[from+i] = value
		}
	}
}

// finish does what is done to a file as a whole.
func (m *madeUp) finish() {
	switch m.fault {
	case otherRate:
		m.rate *= []float64{44.1 / 48, 48 / 44.1, 0.5, 2}[m.random.IntN(4)]
	case swapped:
		m.samples, m.wire = m.wire, m.samples
	case cutShort:
		from, to := int(between(m.random, 0.5, 1)*m.sweep.Begin()*m.rate), len(m.samples)
		if m.random.IntN(2) == 0 {
			from, to = 0, int((m.sweep.First()+m.sweep.Apart()*between(m.random, 0.3, 1))*m.rate)
		}
		m.samples = m.samples[from:to]
		if m.wired {
			m.wire = m.wire[from:to]
		}
	}
}

// take returns the recording.
func (m *madeUp) take() recording.Take {
	t := recording.Take{Rate: m.rate, Samples: floats(m.samples)}
	if m.wired {
		t.Reference = floats(m.wire)
	}
	return t
}

// sixteen returns samples of 16 bits.
func sixteen(x []float64) []int16 {
	out := make([]int16, len(x))
	for i, v := range x {
		out[i] = int16(max(-32768, min(32767, math.Round(32768*v))))
	}
	return out
}

func floats(x []int16) []float64 {
	out := make([]float64, len(x))
	for i, v := range x {
		out[i] = float64(v) / 32768
	}
	return out
}

// scaleTo multiplies samples where they are.
func scaleTo(x []float64, by float64) []float64 {
	for i := range x {
		x[i] *= by
	}
	return x
}

func rms(x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += v * v
	}
	return math.Sqrt(sum / float64(len(x)))
}

// most returns the largest size.
func most(x []float64) float64 { return max(slices.Max(x), -slices.Min(x)) }

// decibels returns a factor.
func decibels(db float64) float64 { return math.Pow(10, db/20) }

func between(r *rand.Rand, low, high float64) float64 { return low + (high-low)*r.Float64() }

func logBetween(r *rand.Rand, low, high float64) float64 {
	return low * math.Pow(high/low, r.Float64())
}
