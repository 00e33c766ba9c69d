package recording

import (
	"math"
	"math/cmplx"
	"pappus/timing/band"
	"pappus/timing/sweep"
)

// The harmonics that are told apart, and how much of the way to their neighbours they get: together
// less than all of it, so that none counts for two, and twice as much after it, where it dies away.
const (
	firstHarmonic, lastHarmonic = 2, 5
	towardsNext                 = 0.6
	towardsLast                 = 0.3
	harmonicLasts               = 0.1 // s, at most: a box and a room of half a second are 12 dB down
)

// harmonics returns what stands where the harmonics do.
func harmonics(h hearing, m Measured, s sweep.Sweep, o Options) []Harmonic {
	var out []Harmonic
	most := h.rate * min(harmonicLasts, m.Whole.To-m.At)
	for k := firstHarmonic; k <= lastHarmonic; k++ {
		out = append(out, harmonic(h, m, s, o, k, most))
	}
	return out
}

// harmonic returns the k-th; its window lasts most samples at most.
func harmonic(h hearing, m Measured, s sweep.Sweep, o Options, k int, most float64) Harmonic {
	at := h.at - s.Ahead(k)*h.rate
	after := min(most, towardsNext*(s.Ahead(k)-s.Ahead(k-1))*h.rate)
	before := min(float64(h.lead), towardsLast*(s.Ahead(k+1)-s.Ahead(k))*h.rate)
	w := window{int(at - before), int(at + after)}
	x, square := h.weighted(w, int(math.Round(at)))
	out := Harmonic{Order: k, Level: make([]float64, len(m.Frequency)), Floor: make([]float64, len(m.Frequency))}
	for f, hz := range m.Frequency {
		tone := m.Whole.Transfer[f]
		if float64(k)*hz > m.High || cmplx.IsNaN(tone) {
			out.Level[f], out.Floor[f] = math.NaN(), math.NaN()
			continue
		}
		v := Transform(x, w.from, float64(k)*hz, h.rate)
		apart := o.reads(float64(k)*hz) - o.reads(hz)
		over := 20*math.Log10(cmplx.Abs(tone)) + apart
		out.Level[f] = 20*math.Log10(cmplx.Abs(v)) - over
		out.Floor[f] = 10*math.Log10(h.noise.density(float64(k)*hz)*square) - over
	}
	return out
}

// A sine whose top 3 to 12 dB are cut off has a third harmonic 18 to 10 dB under it and a fifth 14 to 6 dB
// lower, by its Fourier series; both together have a hundredth of its energy from 2.2 dB on. Small drivers that are
// not overdriven stay well below that, but for the lowest octave (common practice). It must be so over an octave, of
// energies over a third of one: echoes put dips into the tone and, elsewhere, into its harmonics.
const (
	overload = 0.01 // energy of the third and the fifth over the tone's: -20 dB
	over     = perOctave
	evened   = 3 // parts of an octave
)

// overloaded tells over which frequencies a tone gets so much of its third and fifth
// harmonic that something was cut off; nothing where nowhere.
func (m *Measured) overloaded() []Caution {
	energy := make([]float64, len(m.Frequency))
	tone := band.SmoothGaps(nil, m.Frequency, m.Whole.Level, evened)
	for _, h := range m.Harmonics {
		if h.Order != 3 && h.Order != 5 {
			continue
		}
		level := h.Clear()
		for i, v := range m.Whole.Level {
			level[i] += v
		}
		for i, v := range band.SmoothGaps(nil, m.Frequency, level, evened) {
			if !math.IsNaN(v) {
				energy[i] += math.Pow(10, (v-tone[i])/10)
			}
		}
	}
	from, to := 0, 0 // the longest run
	for i, begin := 0, 0; i < len(energy); i++ {
		if energy[i] < overload {
			begin = i + 1
		} else if i+1-begin > to-from {
			from, to = begin, i+1
		}
	}
	if to-from < over {
		return nil
	}
	return []Caution{{Code: Overloaded, Hz: m.Frequency[from], HighHz: m.Frequency[to-1]}}
}
