package recording

import "math"

// taps is how far on each side samples count for a value between two of them.
const taps = 32

// impulse is an impulse response on a circle: lags below 0 stand at its end.
type impulse struct {
	h    []float64
	rate float64 // Hz
	at   float64 // lag of the strongest sound, in samples
	lead int     // samples before it that belong to it: the band's edge rings both ways
}

// lag returns the value at a lag.
func (h *impulse) lag(i int) float64 {
	if i %= len(h.h); i < 0 {
		i += len(h.h)
	}
	return h.h[i]
}

// part returns the values of lags from one to before another.
func (h *impulse) part(from, to int) []float64 {
	out := make([]float64, max(0, to-from))
	for i := range out {
		out[i] = h.lag(from + i)
	}
	return out
}

// peak returns the lag next to the strongest sound.
func (h *impulse) peak() int { return int(math.Round(h.at)) }

// findPeak finds the strongest sound from so many samples before lag 0 to so many after.
func (h *impulse) findPeak(before, after int) {
	best := 0
	for i := -before; i <= after; i++ {
		if math.Abs(h.lag(i)) > math.Abs(h.lag(best)) {
			best = i
		}
	}
	h.at = float64(best)
	sign := math.Copysign(1, h.lag(best))
	for reach := 0.5; reach > 1e-5; reach /= 4 {
		last, now, next := sign*h.value(h.at-reach), sign*h.value(h.at), sign*h.value(h.at+reach)
		if bend := last - 2*now + next; bend < 0 {
			h.at += reach * max(-1, min(1, (last-next)/(2*bend)))
		}
	}
}

// value returns the value at a lag between samples, by a sinc in a Hann window.
func (h *impulse) value(at float64) float64 {
	whole := int(math.Floor(at))
	sum := 0.0
	for i := whole - taps + 1; i <= whole+taps; i++ {
		x := at - float64(i)
		w := math.Cos(math.Pi / 2 * x / (taps + 1))
		sum += h.lag(i) * w * w * sinc(x)
	}
	return sum
}

func sinc(x float64) float64 {
	if math.Abs(x) < 1e-9 {
		return 1
	}
	return math.Sin(math.Pi*x) / (math.Pi * x)
}

// share returns how much of the energy is near the strongest sound.
func (h *impulse) share() float64 {
	all, close := 0.0, 0.0
	for _, v := range h.h {
		all += v * v
	}
	for _, v := range h.part(h.peak()-h.lead, h.peak()+int(near*h.rate)) {
		close += v * v
	}
	return close / all
}
