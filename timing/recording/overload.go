package recording

import (
	"fmt"
	"math"
)

// A sine that is cut off has a third harmonic 10 to 20 dB under it and a fifth some 6 dB
// lower, by its Fourier series; small drivers that are not overdriven stay well below that,
// but for the lowest octave (common practice). It must be so over an octave.
const (
	overload = 0.01 // energy of the third and the fifth over the tone's: -20 dB
	over     = perOctave
)

// overloaded says over which frequencies a tone gets so much of its third and fifth
// harmonic that something was cut off; empty where nowhere.
func (m *Measured) overloaded() string {
	energy := make([]float64, len(m.Frequency))
	for _, h := range m.Harmonics {
		if h.Order != 3 && h.Order != 5 {
			continue
		}
		for i, level := range h.Clear() {
			if !math.IsNaN(level) {
				energy[i] += math.Pow(10, level/10)
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
		return ""
	}
	return fmt.Sprintf("from %.0f to %.0f Hz the third and fifth harmonics are less than 20 dB under the tone: this looks overloaded, in the recorder, the amplifier or the drivers, and the curve is not to be trusted; turn down and record again", m.Frequency[from], m.Frequency[to-1])
}
