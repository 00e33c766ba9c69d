package programme

import (
	"math"
	"math/rand/v2"
)

// vowel holds the first three formants in Hz.
type vowel [3]float64

// Peterson and Barney (1952), Table II, means of men, quoted from memory.
var (
	heed  = vowel{270, 2290, 3010}
	head  = vowel{530, 1840, 2480}
	had   = vowel{660, 1720, 2410}
	hod   = vowel{730, 1090, 2440}
	hawed = vowel{570, 840, 2410}
	whod  = vowel{300, 870, 2240}
)

// Bandwidths of the five formants, and the upper two that every vowel shares,
// in Hz (Klatt 1980, typical values).
var (
	bandwidth = [5]float64{60, 90, 150, 250, 300}
	upper     = [2]float64{3300, 3750}
)

// sound is a stretch of the phrase: how long, the shape of the mouth, and how
// much voice and hiss there are.
type sound struct {
	seconds     float64
	mouth       vowel
	voice, hiss float64
}

// The phrase: syllables of no language, with hissed and stopped consonants
// between the vowels.
var utterance = []sound{
	{0.10, hod, 0, 0},
	{0.11, hod, 0, 0.5}, {0.19, hod, 1, 0}, // s a
	{0.06, heed, 0, 0}, {0.015, heed, 0, 1}, {0.16, heed, 0.9, 0}, // t i
	{0.05, whod, 0.15, 0}, {0.17, hawed, 1, 0}, {0.12, whod, 0.8, 0}, // m o u
	{0.14, heed, 0, 0},
	{0.10, head, 0, 0.45}, {0.13, head, 0.9, 0}, // s e
	{0.05, had, 0, 0}, {0.012, had, 0, 0.9}, {0.22, had, 1, 0}, // k a
	{0.05, whod, 0.15, 0}, {0.28, whod, 0.75, 0}, // n u
	{0.55, whod, 0, 0},
}

// Speech makes a short spoken-like phrase, about 2.5 s long.
func Speech(rate int) Loop {
	random := rand.New(rand.NewPCG(24, 1952))
	t := newTract(rate)
	var mono []float64
	total := 0.0
	for _, s := range utterance {
		total += s.seconds
	}
	pitch := glottis{rate: float64(rate), end: total}
	for _, s := range utterance {
		for range int(s.seconds * float64(rate)) {
			t.approach(s)
			mono = append(mono, t.step(pitch.step(), random.NormFloat64()))
		}
	}
	return finish(mono)
}

// glottis is the voice's source: a pulse for each period of a pitch that falls
// through the phrase from 128 to 96 Hz.
type glottis struct {
	rate, end   float64
	time, phase float64
}

func (g *glottis) step() float64 {
	g.time += 1 / g.rate
	g.phase += (128 - 32*g.time/g.end) / g.rate
	if g.phase < 1 {
		return 0
	}
	g.phase--
	return 1
}

// tract is the mouth: five resonators in cascade for the voice, one for the
// hiss, and radiation from the lips as a first difference.
type tract struct {
	rate        float64
	mouth       vowel
	voice, hiss float64
	slow, fast  float64 // shares of the way to the target made in one sample
	count       int
	source      resonator
	formant     [5]resonator
	hisser      resonator
	last        float64
}

func newTract(rate int) *tract {
	t := &tract{rate: float64(rate), mouth: utterance[0].mouth}
	t.slow = 1 - math.Exp(-1/(0.018*t.rate))
	t.fast = 1 - math.Exp(-1/(0.004*t.rate))
	t.source.tune(0, 100, t.rate)
	t.hisser.tune(min(5200, 0.35*t.rate), 1800, t.rate)
	t.shape()
	return t
}

// approach moves the mouth towards a sound by one sample's worth, and sets the
// resonators anew each millisecond.
func (t *tract) approach(s sound) {
	for i := range t.mouth {
		t.mouth[i] += t.slow * (s.mouth[i] - t.mouth[i])
	}
	t.voice += t.fast * (s.voice - t.voice)
	t.hiss += t.fast * (s.hiss - t.hiss)
	if t.count++; t.count >= int(t.rate/1000) {
		t.count = 0
		t.shape()
	}
}

// shape sets the resonators to the mouth.
func (t *tract) shape() {
	for i := range t.formant {
		f := 0.0
		if i < len(t.mouth) {
			f = t.mouth[i]
		} else {
			f = upper[i-len(t.mouth)]
		}
		t.formant[i].tune(f, bandwidth[i], t.rate)
	}
}

// step makes one sample from a sample of the glottis and one of noise.
func (t *tract) step(pulse, noise float64) float64 {
	v := t.source.step(pulse * t.voice * t.rate / 48)
	for i := range t.formant {
		v = t.formant[i].step(v)
	}
	v += t.hisser.step(0.6 * noise * t.hiss)
	out := v - t.last
	t.last = v
	return out
}

// resonator has two poles and unit gain at 0 Hz.
type resonator struct{ a, b, c, one, two float64 }

// tune sets a resonator to a frequency and bandwidth in Hz.
func (r *resonator) tune(frequency, bandwidth, rate float64) {
	radius := math.Exp(-math.Pi * bandwidth / rate)
	r.c = -radius * radius
	r.b = 2 * radius * math.Cos(2*math.Pi*frequency/rate)
	r.a = 1 - r.b - r.c
}

func (r *resonator) step(in float64) float64 {
	out := r.a*in + r.b*r.one + r.c*r.two
	r.two, r.one = r.one, out
	return out
}
