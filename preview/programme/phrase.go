package programme

import (
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"
)

// note is one plucked string: when, in beats, and which, in semitones with 69
// for 440 Hz.
type note struct{ beat, pitch float64 }

// The phrase, in five tones, with a chord at the end. A made-up tune.
var tune = []note{
	{0, 55}, {1, 62}, {1.5, 64}, {2, 67}, {3, 71}, {3.5, 69},
	{4, 67}, {5, 64}, {5.5, 62}, {6, 59}, {7, 43}, {7.05, 55}, {7.1, 62}, {7.15, 67},
}

const (
	beat  = 0.42 // s
	beats = 10   // in the loop
	ring  = 1.2  // s, how long a string is let sound
	decay = 1.6  // s, in which it would fall by 60 dB
)

// Phrase makes a short tune of plucked strings, 4.2 s long.
func Phrase(rate int) Loop {
	random := rand.New(rand.NewPCG(7, 1983))
	mono := make([]float64, int(beat*beats*float64(rate)))
	one := make([]float64, int(ring*float64(rate)))
	for _, n := range tune {
		pluck(one, rate, hertz(n.pitch), random)
		start := int(n.beat * beat * float64(rate))
		for i, v := range one {
			left := float64(len(one)-i) / (0.1 * float64(rate))
			mono[(start+i)%len(mono)] += v * rise(left, 0, 1)
		}
	}
	return finish(mono)
}

// hertz is the frequency of a pitch in equal temperament.
func hertz(pitch float64) float64 { return 440 * math.Pow(2, (pitch-69)/12) }

// pluck fills dst with a string of the given frequency: a delay line full of
// noise that is fed back through a two-point mean (half a sample), a loss and a
// first-order all-pass that makes up the rest of the period.
func pluck(dst []float64, rate int, frequency float64, random *rand.Rand) {
	period := float64(rate) / frequency
	whole := int(period - 0.5 - 0.1) // leaves 0.1 to 1.1 samples to the all-pass
	omega := 2 * math.Pi / period
	rest := omega * (period - 0.5 - float64(whole))
	tuning := math.Sin((omega-rest)/2) / math.Sin((omega+rest)/2)
	loss := min(1, math.Pow(10, -3/(frequency*decay))/math.Cos(omega/2))

	line := burst(whole, random)
	var last, in, out float64
	for i := range dst {
		now := line[i%whole]
		dst[i] = now
		mean := loss * (now + last) / 2
		last = now
		out = tuning*(mean-out) + in
		in = mean
		line[i%whole] = out
	}
}

// burst is noise without a mean.
func burst(n int, random *rand.Rand) []float64 {
	line := make([]float64, n)
	for i := range line {
		line[i] = 2*random.Float64() - 1
	}
	floats.AddConst(-stat.Mean(line, nil), line)
	return line
}
