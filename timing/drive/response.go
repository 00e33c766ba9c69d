package drive

import (
	"errors"
	"fmt"
	"math"
	"sort"

	"pappus/layout/prose"
)

// Errors that the constructors wrap.
var (
	ErrResonance = errors.New("impossible resonance")
	ErrTable     = errors.New("impossible response table")
)

// The band in Hz whose energy mean is a measured response's 0 dB.
const lowReference, highReference = 500, 4000

// fall is the slope in dB per octave below a measured response: that of a closed
// box below its resonance.
const fall = 12

// Point is one line of a measured response.
type Point struct {
	Frequency float64 // Hz, above 0
	Level     float64 // dB
	Phase     float64 // rad, time factor exp(+i omega t): a delay makes it fall
}

// Response is a driver's response over frequency, relative to its passband. The
// zero Response leaves everything as it is. It is never changed after it is made,
// and serves several goroutines at once.
type Response struct {
	resonance, q float64
	node         []node
}

// node is a point of a measured response, ready to be interpolated.
type node struct {
	log, level, phase float64 // ln Hz, dB over the reference, rad unwrapped
}

// HighPass returns a second-order high-pass with a resonance in Hz and a quality
// factor q, both above 0: at the resonance the level is 20 log10 q dB. A q of
// 1/sqrt(2) is flattest; 0.5 to 1.2 is common practice for small closed boxes.
// Errors wrap ErrResonance.
func HighPass(resonance, q float64) (Response, error) {
	for _, v := range []struct {
		name  string
		value float64
	}{{"frequency", resonance}, {"q", q}} {
		if !(v.value > 0) || math.IsInf(v.value, 0) {
			return Response{}, prose.Errorf("%w: %s %g, must be above 0", ErrResonance, v.name, v.value)
		}
	}
	return Response{resonance: resonance, q: q}, nil
}

// Measured returns the response that a table of two or more points gives, their
// frequencies rising. Between points, level in dB and phase run straight over
// log frequency. Phase is unwrapped: each point's is taken within half a turn of
// the one before, so points must stand close enough together for that, and a
// long delay is best taken out of the table beforehand. A delay that is left in
// is common to all drivers and shifts the whole sound.
//
// The table gives the shape alone: 0 dB is the energy mean over log frequency
// from 500 Hz to 4 kHz, or over the part of that band which the table covers; it
// must cover some. Below the table the level falls by 12 dB per octave from the
// first point's, as a closed box does; above, it stays the last point's; phase
// stays that of the point at the end. Errors wrap ErrTable.
func Measured(points []Point) (Response, error) {
	if len(points) < 2 {
		return Response{}, fmt.Errorf("%w: %s, must be 2 or more", ErrTable, prose.Count(len(points), "point", "points"))
	}
	r := Response{node: make([]node, len(points))}
	for i, p := range points {
		if err := p.check(); err != nil {
			return Response{}, fmt.Errorf("%w: point %d: %w", ErrTable, i+1, err)
		}
		if i > 0 && p.Frequency <= points[i-1].Frequency {
			return Response{}, prose.Errorf("%w: point %d: %g Hz does not rise above %g Hz",
				ErrTable, i+1, p.Frequency, points[i-1].Frequency)
		}
		r.node[i] = node{math.Log(p.Frequency), p.Level, p.Phase}
		if i > 0 {
			last := r.node[i-1].phase
			r.node[i].phase = last + math.Remainder(p.Phase-last, 2*math.Pi)
		}
	}
	reference, err := r.reference()
	if err != nil {
		return Response{}, err
	}
	for i := range r.node {
		r.node[i].level -= reference
	}
	return r, nil
}

// check returns an error that names the value at fault.
func (p Point) check() error {
	switch {
	case !(p.Frequency > 0) || math.IsInf(p.Frequency, 0):
		return prose.Errorf("%g Hz, must be above 0", p.Frequency)
	case !(math.Abs(p.Level) <= 1000):
		return prose.Errorf("%g dB, must be from -1000 to 1000", p.Level)
	case !(math.Abs(p.Phase) <= 1e9):
		return prose.Errorf("phase of %g rad, must be from -1e9 to 1e9", p.Phase)
	}
	return nil
}

// reference returns the energy mean in dB over log frequency, of the part of
// the table that is in the reference band.
func (r Response) reference() (float64, error) {
	low := max(math.Log(lowReference), r.node[0].log)
	high := min(math.Log(highReference), r.node[len(r.node)-1].log)
	if low >= high {
		return 0, fmt.Errorf("%w: covers nothing between %d and %d Hz", ErrTable, lowReference, highReference)
	}
	top := r.top(low, high) // keeps the powers in range
	sum := 0.0
	for i := 1; i < len(r.node); i++ {
		from, to := max(low, r.node[i-1].log), min(high, r.node[i].log)
		if from < to {
			first, _ := r.at(from)
			last, _ := r.at(to)
			sum += (to - from) * meanEnergy(first-top, last-top)
		}
	}
	return top + 10*math.Log10(sum/(high-low)), nil
}

// top returns the highest level in dB from ln Hz low to high.
func (r Response) top(low, high float64) float64 {
	first, _ := r.at(low)
	last, _ := r.at(high)
	top := max(first, last)
	for _, n := range r.node {
		if low <= n.log && n.log <= high {
			top = max(top, n.level)
		}
	}
	return top
}

// meanEnergy returns the mean energy along a line whose level runs straight from
// one dB value to another.
func meanEnergy(first, last float64) float64 {
	e := math.Pow(10, first/10)
	rise := (last - first) * math.Ln10 / 10
	if rise == 0 {
		return e
	}
	return e * math.Expm1(rise) / rise
}

// at returns level in dB and phase in rad of a measured response at ln Hz.
func (r Response) at(log float64) (level, phase float64) {
	i := sort.Search(len(r.node), func(i int) bool { return r.node[i].log >= log })
	switch {
	case i == 0:
		n := r.node[0]
		return n.level - fall*(n.log-log)/math.Ln2, n.phase
	case i == len(r.node):
		n := r.node[i-1]
		return n.level, n.phase
	}
	a, b := r.node[i-1], r.node[i]
	share := (log - a.log) / (b.log - a.log)
	return a.level + share*(b.level-a.level), a.phase + share*(b.phase-a.phase)
}

// Fill fills dst with the complex response at the frequencies, in Hz and 0 or
// above, in any order. It panics where the lengths differ and allocates nothing.
func (r Response) Fill(dst []complex128, frequency []float64) {
	if len(dst) != len(frequency) {
		panic("drive: lengths differ")
	}
	for f, hz := range frequency {
		dst[f] = r.value(hz)
	}
}

func (r Response) value(hz float64) complex128 {
	switch {
	case r.node != nil:
		level, phase := r.at(math.Log(hz))
		sin, cos := math.Sincos(phase)
		size := math.Pow(10, level/20)
		return complex(size*cos, size*sin)
	case r.resonance > 0:
		x := hz / r.resonance
		return complex(-x*x, 0) / complex(1-x*x, x/r.q)
	}
	return 1
}
