package timing

import (
	"math"
	"math/cmplx"
	"slices"

	"pappus/layout"
	"pappus/timing/band"
	"pappus/timing/crossover"
	"pappus/timing/measure"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/spatial/r3"
)

// pressures are those of each driver of an array at a spot, all fed alike and without
// delays, in rows of frequencies for each mount.
type pressures struct {
	frequency []float64    // Hz
	driver    []complex128 // the driver's own response
	direct    []complex128 // [mount][frequency], by the body alone
	whole     []complex128 // with the echoes, where there are any
	echoed    bool
	low, high int    // the frequencies from 500 Hz to 4 kHz
	at        r3.Vec // the spot, once heard
	heard     bool
}

// newPressures makes room for the pressures of an array at frequencies in Hz.
func newPressures(a *layout.Array, frequency []float64) pressures {
	n := len(frequency)
	h := pressures{frequency: frequency, driver: make([]complex128, n),
		direct: make([]complex128, len(a.Mounts)*n), whole: make([]complex128, len(a.Mounts)*n)}
	driverResponse(a.Driver).Fill(h.driver, frequency)
	h.low, h.high = band.Range(frequency, layout.WeightLowHz, layout.WeightHighHz)
	return h
}

// hear fills in the pressure of every mount at a spot: by the body alone, and with the
// echoes, of which there may be none.
func (h *pressures) hear(scene *radiate.Scene, spot r3.Vec) {
	h.at, h.heard = spot, true
	scene.Hear(h.direct, scene.Direct(), spot)
	if h.echoed = len(scene.Echoes()) > 0; h.echoed {
		scene.Hear(h.whole, scene.Echoes(), spot)
	}
	for i := range h.direct {
		driver := h.driver[i%len(h.driver)]
		h.direct[i] *= driver
		if h.echoed {
			h.whole[i] = h.direct[i] + h.whole[i]*driver
		}
	}
}

// hearAt is hear, but for a spot that was heard last.
func (h *pressures) hearAt(scene *radiate.Scene, spot r3.Vec) {
	if !h.heard || h.at != spot {
		h.hear(scene, spot)
	}
}

// row returns what a mount gives of pressures, direct or whole.
func (h *pressures) row(pressure []complex128, m int) []complex128 {
	n := len(h.frequency)
	return pressure[m*n : (m+1)*n]
}

// energy returns the mean squared pressure of a driver's direct sound from 500 Hz to 4 kHz.
func (h *pressures) energy(m int) float64 { return meanEnergy(h.row(h.direct, m)[h.low:h.high]) }

// energies returns each driver's squared pressure, all being as loud; to the bit what
// timesOf makes of the levels, so that ties are settled alike.
func (h *pressures) energies() []float64 {
	w := make([]float64, len(h.direct)/len(h.frequency))
	for m := range w {
		w[m] = math.Pow(10, 10*math.Log10(h.energy(m))/10)
	}
	return w
}

func energyOf(p complex128) float64 { return real(p)*real(p) + imag(p)*imag(p) }

// turn returns exp(-i 2 pi frequency delay).
func turn(frequency, delay float64) complex128 {
	sin, cos := math.Sincos(2 * math.Pi * frequency * delay)
	return complex(cos, -sin)
}

// sum returns the magnitudes at each frequency of what sums returns.
func (h *pressures) sum(pressure []complex128, groups [][]int, gain, delay []float64) (built, aligned []float64) {
	before, after := h.sums(pressure, groups, gain, delay)
	built, aligned = make([]float64, len(before)), make([]float64, len(after))
	for f := range before {
		built[f], aligned[f] = cmplx.Abs(before[f]), cmplx.Abs(after[f])
	}
	return built, aligned
}

// sums returns the sum at each frequency over groups of drivers, each group with its gain, as
// built and with its delay in s; gain nil: all as loud.
func (h *pressures) sums(pressure []complex128, groups [][]int, gain, delay []float64) (before, after []complex128) {
	n := len(h.frequency)
	one := make([]complex128, n)
	before, after = make([]complex128, n), make([]complex128, n)
	for g, mounts := range groups {
		clear(one)
		for _, m := range mounts {
			for f, v := range h.row(pressure, m) {
				one[f] += v
			}
		}
		for f, v := range one {
			if gain != nil {
				v *= complex(gain[g], 0)
			}
			before[f] += v
			after[f] += v * turn(h.frequency[f], delay[g])
		}
	}
	return before, after
}

// inStep returns the sum of the drivers' magnitudes, each group with its gain; nil: all as
// loud.
func (h *pressures) inStep(pressure []complex128, groups [][]int, gain []float64) []float64 {
	out := make([]float64, len(h.frequency))
	for g, mounts := range groups {
		factor := 1.0
		if gain != nil {
			factor = math.Abs(gain[g])
		}
		for _, m := range mounts {
			for f, v := range h.row(pressure, m) {
				out[f] += factor * cmplx.Abs(v)
			}
		}
	}
	return out
}

// parts returns the sum of all drivers' magnitudes of the direct sound, all as loud.
func (h *pressures) parts() []float64 {
	return h.inStep(h.direct, [][]int{all(len(h.direct) / len(h.frequency))}, nil)
}

// sumUp sums the drivers at the spot: what is heard there, behind a high-pass, gives the
// levels, the direct sound the measures.
func (h *pressures) sumUp(arrivals []Arrival, channels []Channel, gain []float64, high crossover.Filter) (r Response, aligned, unaligned Measures, ripple float64) {
	groups, delay := mountsOf(channels), delaysOf(channels)
	builtDirect, alignedDirect := h.sum(h.direct, groups, gain, delay)
	stepDirect := h.inStep(h.direct, groups, gain)
	step, with, without := stepDirect, alignedDirect, builtDirect
	if h.echoed {
		without, with = h.sum(h.whole, groups, gain, delay)
		step = h.inStep(h.whole, groups, gain)
	}
	level := func(magnitude []float64) []float64 {
		out := make([]float64, len(magnitude))
		for f, v := range magnitude {
			out[f] = measure.Decibels(v*v) + measure.Decibels(energyOf(high.Response(h.frequency[f])))
		}
		return out
	}
	r = Response{append([]float64(nil), h.frequency...), level(step), level(with), level(without)}
	late, weight := make([]float64, len(arrivals)), make([]float64, len(arrivals))
	measured := func(sum []float64, delayed float64) Measures {
		for m, a := range arrivals {
			late[m], weight[m] = a.Heard()+delayed*a.Delay, math.Pow(10, a.Level/10)
		}
		lost := bandLoss(h.frequency, func(f int) float64 { return sum[f] * sum[f] }, stepDirect)
		return Measures{measure.Smear(late, weight), measure.Spread(late), measure.CombOnset(h.frequency, sum, stepDirect), lost}
	}
	if h.echoed {
		ripple = rippleOf(h.frequency, with, alignedDirect)
	}
	return r, measured(alignedDirect, 1), measured(builtDirect, 0), ripple
}

// Echoes make a level uneven from rippleLow to rippleHigh in Hz: below, a body and its room are
// hardly told apart, above, thirds of an octave hold so many dips that they even out.
const rippleLow, rippleHigh = 200, 5000

// rippleOf returns by how much echoes make a level uneven: the standard deviation over thirds of
// an octave, in dB, of the energy of what is heard with them over that without.
func rippleOf(frequency, with, direct []float64) float64 {
	var more []float64
	for _, centre := range band.ThirdsWithin(rippleLow, rippleHigh) {
		low, high := band.Edges(centre, 3)
		from, to := band.Range(frequency, low, high)
		more = append(more, measure.Decibels(floats.Dot(with[from:to], with[from:to])/floats.Dot(direct[from:to], direct[from:to])))
	}
	return measure.Deviation(more)
}

// choices returns what each way of taking delays, one for each driver, would leave of the
// direct sound at the spot: how far the energy of each octave falls short of all drivers in
// step. peaks are those of the impulse responses in s.
func choices(at atSpot, peaks []float64) []Choice {
	h, gain := at.pressure, gains(at.Array, at.Channels)
	each, fed := make([][]int, len(at.Arrivals)), make([]float64, len(at.Arrivals))
	for m, r := range at.Arrivals {
		each[m], fed[m] = []int{m}, gain[r.Channel]
	}
	var out []Choice
	inStep := h.inStep(h.direct, each, fed)
	for _, by := range []string{byStraight, byPath, byField, byPeak} {
		time := arrivalsBy(by, at.Arrivals, at.SpeedOfSound)
		if by == byPeak {
			time = slices.Clone(peaks)
		}
		for m, t := range time {
			if math.IsNaN(t) {
				t = at.Arrivals[m].Time
			}
			time[m] = -t // delays up to a common constant, which no level shows
		}
		_, sum := h.sum(h.direct, each, fed, time)
		c := Choice{By: by, Band: band.Octaves()}
		for _, centre := range c.Band {
			low, high := band.Edges(centre, 1)
			from, to := band.Range(h.frequency, low, high)
			c.Short = append(c.Short, 10*math.Log10(floats.Dot(inStep[from:to], inStep[from:to])/floats.Dot(sum[from:to], sum[from:to])))
		}
		out = append(out, c)
	}
	return out
}
