package timing

import (
	"math"
	"math/cmplx"

	"pappus/timing/band"
)

// lossOctaves is how many octaves the losses are of: 500 Hz to 8 kHz, where delays
// matter on a body of the size of a hand to that of a head and a half.
const lossOctaves = 5

// octaveLosses are by how many dB the energy of each octave at the spot falls short of
// all drivers in step.
type octaveLosses [lossOctaves]float64

// lossMeter finds what delays of groups of drivers lose at the spot.
type lossMeter struct {
	spot      *spotSums
	index     []int // of the frequencies looked at, octave by octave
	frequency []float64
	begin     [lossOctaves + 1]int // where each octave begins in index
	inStep    octaveLosses         // energy
	one, sum  []complex128
}

// lossStep thins the response's frequencies out: every third is 10 to the octave, more
// than the mean energy of an octave needs.
const lossStep = 3

// newLossMeter looks at every lossStep-th of a spot's frequencies in Hz.
func newLossMeter(spot *spotSums, frequency []float64) lossMeter {
	m := lossMeter{spot: spot}
	octaves := band.Octaves()
	for b, centre := range octaves[len(octaves)-lossOctaves:] {
		low, high := band.Edges(centre, 1)
		from, to := indexRange(frequency, low, high)
		for f := from; f < to; f += lossStep {
			m.index, m.frequency = append(m.index, f), append(m.frequency, frequency[f])
		}
		m.begin[b+1] = len(m.index)
	}
	m.one, m.sum = make([]complex128, len(m.index)), make([]complex128, len(m.index))
	parts := make([]float64, len(m.index))
	for mount := range len(spot.direct) / spot.frequencies {
		row := spot.row(mount)
		for i, f := range m.index {
			parts[i] += cmplx.Abs(row[f])
		}
	}
	for i, v := range parts {
		parts[i] = v * v
	}
	for b := range m.inStep {
		m.inStep[b] = mean(parts[m.begin[b]:m.begin[b+1]])
	}
	return m
}

// of returns the losses with groups of drivers, all as loud, each with its delay in s.
func (m *lossMeter) of(groups [][]int, delay []float64) octaveLosses {
	clear(m.sum)
	for g, mounts := range groups {
		clear(m.one)
		for _, mount := range mounts {
			row := m.spot.row(mount)
			for i, f := range m.index {
				m.one[i] += row[f]
			}
		}
		for i, v := range m.one {
			m.sum[i] += v * turn(m.frequency[i], delay[g])
		}
	}
	var out octaveLosses
	for b := range out {
		out[b] = 10 * math.Log10(m.inStep[b]/meanEnergy(m.sum[m.begin[b]:m.begin[b+1]]))
	}
	return out
}

func mean(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x
	}
	return sum / float64(len(v))
}
