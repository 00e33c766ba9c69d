package recording

import (
	"math"
	"math/cmplx"
	"pappus/timing/band"
	"slices"

	"gonum.org/v1/gonum/dsp/fourier"
)

// Measured is what a recording tells. Levels are in dB over the sweep's amplitude, at
// full scale for both, or over the reference's.
type Measured struct {
	// Rate in Hz of Impulse and of the recorder, by the player's clock; Drift is by how
	// much that is above what the recorder has it, in parts per million.
	Rate, Drift float64

	// Impulse is the impulse response within the band; value i is at Begin + i/Rate, in s.
	Impulse []float64
	Begin   float64
	// Absolute tells that times count from when the sound was sent; else they count from
	// an unknown instant, and only differences within one recording have a meaning.
	Absolute bool
	At       float64 // s, the strongest sound
	AtError  float64 // s, one standard deviation
	Inverted bool    // the strongest sound is below 0
	// Wire is the reference's level in dB over the sweep's amplitude at full scale, and
	// WireInverted tells that it is upside down; both are 0 where there is none.
	Wire         float64
	WireInverted bool

	// Low and High are the band in Hz that the sweep can tell of.
	Low, High float64
	Frequency []float64 // Hz, from Low to High, evenly spaced on a logarithmic axis
	Gated     Response  // of what comes within the gate
	Whole     Response  // of all that comes before the recording's end

	Harmonics []Harmonic // the second to the fifth
	Bands     []Band     // thirds of octaves within the band, of the gated response
	Cautions  []Caution
}

// Code says what a Caution is of.
type Code string

// What is not to be trusted.
const (
	Noisy       Code = "noisy"        // the third of an octave at Hz, which is only DB over the noise
	BeyondTable Code = "beyond table" // outside of Hz to HighHz, which the microphone's correction has
	BelowGate   Code = "below gate"   // below Hz: the gate is too short for it
	Overloaded  Code = "overloaded"   // from Hz to HighHz, by the third and fifth harmonics
	GainChanged Code = "gain changed" // by DB, while recording
)

// Caution is what to mind of a measurement.
type Caution struct {
	Code       Code
	Hz, HighHz float64
	DB         float64
}

// Response is what comes within a window of the impulse response, at
// Measured.Frequency.
type Response struct {
	From, To float64 // s, as the impulse response; the last fifth is faded out
	// Lowest is the lowest frequency in Hz that it honestly tells of: one over its length
	// after the strongest sound, or Measured.Low. Values below it are NaN, and so are those
	// that are not 6 dB above the noise.
	Lowest   float64
	Transfer []complex128 // phase about time 0
	Level    []float64    // dB
	Error    []float64    // dB, one standard deviation, by the noise and what the window's end cuts off
	Floor    []float64    // dB, what noise alone would give, known everywhere; -Inf: there is none
}

// Harmonic is what a nonlinearity makes of a tone of each frequency.
type Harmonic struct {
	Order int
	Level []float64 // dB over the tone at Measured.Frequency; NaN where the harmonic is outside the band
	Floor []float64 // dB, what noise alone would give
}

// A harmonic stands out where it is overFloor dB above what noise would give over wide
// frequencies in a row, a third of an octave: the energy of noise at one frequency is, by
// chance, ten times its mean in one of 20,000 cases.
const (
	overFloor = 10.0
	wide      = perOctave / 3
)

// Clear returns the harmonic's level where it stands out of the noise, NaN elsewhere.
func (h Harmonic) Clear() []float64 {
	out := make([]float64, len(h.Level))
	row := 0
	for i, v := range h.Level {
		out[i] = math.NaN()
		if !(v > h.Floor[i]+overFloor) {
			row = 0
			continue
		}
		switch row++; {
		case row == wide:
			copy(out[i+1-wide:], h.Level[i+1-wide:i+1])
		case row > wide:
			out[i] = v
		}
	}
	return out
}

// HasHarmonics tells whether any harmonic stands out of the noise.
func (m Measured) HasHarmonics() bool {
	isKnown := func(v float64) bool { return !math.IsNaN(v) }
	return slices.ContainsFunc(m.Harmonics, func(h Harmonic) bool { return slices.ContainsFunc(h.Clear(), isKnown) })
}

// peakParts of an octave are what a harmonic is smoothed to before its peak is looked for: half of the least that
// stands out, so that a peak is of several frequencies and no more than it is.
const peakParts = 6

// Peak returns how high in dB over the tone a harmonic rises where it stands out of the
// noise, and of which tone in Hz; NaN where it does not.
func (m Measured) Peak(h Harmonic) (level, hz float64) {
	level, hz = math.NaN(), math.NaN()
	for i, v := range band.SmoothGaps(nil, m.Frequency, h.Clear(), peakParts) {
		if !math.IsNaN(v) && !(v <= level) {
			level, hz = v, m.Frequency[i]
		}
	}
	return level, hz
}

// SNR returns the signal over the noise in dB in the band round a centre in Hz; NaN where
// that is not known.
func (m Measured) SNR(centre float64) float64 {
	for _, b := range m.Bands {
		if math.Abs(b.Centre/centre-1) < 0.01 { // nominal ones are 0.95 percent off at most: 1600 Hz (IEC 61260-1)
			return b.SNR()
		}
	}
	return math.NaN()
}

// Band is a third of an octave.
type Band struct {
	Centre float64 // Hz, exact
	Level  float64 // dB, energy mean
	Noise  float64 // dB, what noise alone would give
}

// SNR returns the signal over the noise in dB.
func (b Band) SNR() float64 { return b.Level - b.Noise }

// Energy returns the envelope of the impulse response over time, in dB over its strongest
// sound, as the most within each step in s; time in s is the middle of each step. The
// envelope is the size of the analytic signal at the samples; between two of them it may be half a decibel
// higher.
func (m Measured) Energy(step float64) (time, level []float64) {
	n := Length(len(m.Impulse))
	x := make([]complex128, n)
	for i, v := range m.Impulse {
		x[i] = complex(v, 0)
	}
	fft := fourier.NewCmplxFFT(n)
	fft.Coefficients(x, x)
	clear(x[n/2+1:])
	fft.Sequence(x, x)
	top := 0.0
	for _, v := range x[:len(m.Impulse)] {
		top = max(top, cmplx.Abs(v))
	}
	each := max(1, int(math.Round(step*m.Rate)))
	for from := 0; from < len(m.Impulse); from += each {
		most := 0.0
		to := min(from+each, len(m.Impulse))
		for _, v := range x[from:to] {
			most = max(most, cmplx.Abs(v))
		}
		time = append(time, m.Begin+float64(from+to-1)/2/m.Rate)
		const least = 1e-15 // free: -300 dB, for silence
		level = append(level, 20*math.Log10(max(most/top, least)))
	}
	return time, level
}
