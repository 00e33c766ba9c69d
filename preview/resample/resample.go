package resample

import (
	"fmt"

	"gonum.org/v1/gonum/floats"
)

// room is how many samples the line holds beyond those that one value needs.
const room = 4096

// Resampler changes the rate of one signal. Not for several goroutines at once.
type Resampler struct {
	up, down int // the rates, in lowest terms
	bank     bank
	line     []float64 // the newest samples, oldest first
	held     int       // in line
	at       int       // first sample in line that the next value needs
	part     int       // where the next value lies between two samples, in 1/up
	owed     int       // silent samples that Finish has yet to put after the end
}

// New makes a resampler from one rate to another, in samples a second. It panics
// where a rate is below 1 or where they are more than 1000 apart in ratio.
func New(from, to int) *Resampler {
	if from < 1 || to < 1 || from/to > 1000 || to/from > 1000 {
		panic(fmt.Sprintf("resample: from %d to %d samples a second", from, to))
	}
	common := divisor(from, to)
	r := &Resampler{up: to / common, down: from / common}
	r.bank = bankOf(r.up, r.down)
	r.line = make([]float64, r.bank.taps+room)
	r.Reset()
	return r
}

// divisor returns the greatest common divisor (Euclid).
func divisor(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// Reset makes the resampler ready for another signal.
func (r *Resampler) Reset() {
	r.held, r.at, r.part = r.bank.taps/2-1, 0, 0
	r.owed = r.bank.taps / 2
	clear(r.line)
}

// Len returns how many samples become of n: those whose time lies before that of
// sample n.
func (r *Resampler) Len(n int) int {
	whole, rest := n/r.down, n%r.down
	return whole*r.up + (rest*r.up+r.down-1)/r.down
}

// Process resamples src into dst as far as both reach, and returns how many
// samples of dst it wrote and how many of src it took. Where it does not fill dst
// it takes all of src. It allocates nothing.
func (r *Resampler) Process(dst, src []float64) (wrote, took int) {
	for {
		wrote += r.compute(dst[wrote:])
		if wrote == len(dst) || took == len(src) {
			return wrote, took
		}
		took += r.put(src[took:])
	}
}

// Finish writes what is still to come after the end of the signal, as far as dst
// reaches, and returns how many samples it wrote: 0 once nothing is left.
func (r *Resampler) Finish(dst []float64) (wrote int) {
	for {
		wrote += r.compute(dst[wrote:])
		if wrote == len(dst) || r.owed == 0 {
			return wrote
		}
		r.owed -= r.put(silence[:min(r.owed, len(silence))])
	}
}

var silence [256]float64

// put takes samples into the line and returns how many.
func (r *Resampler) put(src []float64) int {
	if r.held == len(r.line) {
		r.held = copy(r.line, r.line[r.at:r.held])
		r.at = 0
	}
	n := copy(r.line[r.held:], src)
	r.held += n
	return n
}

// compute writes the values for which the line holds enough, and returns how many.
func (r *Resampler) compute(dst []float64) int {
	for i := range dst {
		if r.at+r.bank.taps > r.held {
			return i
		}
		dst[i] = r.value(r.line[r.at : r.at+r.bank.taps])
		r.part += r.down
		r.at += r.part / r.up
		r.part %= r.up
	}
	return len(dst)
}

// value is the one that lies part/up after the middle of the samples.
func (r *Resampler) value(samples []float64) float64 {
	p := r.part * r.bank.phases
	phase, rest := p/r.up, p%r.up
	v := floats.Dot(r.bank.row(phase), samples)
	if rest == 0 {
		return v
	}
	share := float64(rest) / float64(r.up)
	return v + share*(floats.Dot(r.bank.row(phase+1), samples)-v)
}
