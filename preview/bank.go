package preview

import (
	"context"
	"math"

	"pappus/layout/prose"
	"pappus/timing"
	"pappus/timing/cores"

	"gonum.org/v1/gonum/dsp/fourier"
	"gonum.org/v1/gonum/spatial/r3"
)

// settle is how long the sound of a body and a head rings on after the last
// arrival, in s: it creeps round both.
const settle = 0.004

// bank is what a walking listener hears of a click, step by step, but for what is
// the same everywhere: the drivers' own response, and the time from the body's
// centre.
type bank struct {
	hop    int
	back   bool          // walked to and fro
	wait   int           // steps before the first
	length int           // samples of a response
	steps  [][]complex64 // spectra of left + i right, with the transform's norm taken out
	first  float64       // s after bulk, what stands at preRoll
	driver []float64     // the drivers' own response
	early  int           // samples of driver before its time 0
}

// newBanks computes what a listener hears along a way that has been checked, a bank
// for each case.
func newBanks(ctx context.Context, p *timing.Spot, who Listener, way Way, cases []timing.Case, rate int) ([]*bank, error) {
	room := p.Array
	p, dry := floored(p), who.Dry
	hop := way.hop(p, dry, rate)
	step := float64(hop) / float64(rate)
	if way.Seconds() > mostSteps*step {
		return nil, prose.Errorf("%w: %.3g s, at most %.1f s are possible", ErrWay, way.Seconds(), mostSteps*step)
	}
	places := make([]r3.Vec, int(math.Ceil(way.Seconds()/step))+1)
	for j := range places {
		places[j] = way.at(float64(j) * step)
	}
	if err := reach(room, places...); err != nil {
		return nil, err
	}
	banks := make([]*bank, len(cases))
	length := 0
	heard := sounding{p, timing.HeardWoofer(p)}
	driver, early := drive(p, rate)
	if heard.woofer != nil {
		driver, early = []float64{1}, 0 // nothing is common to the drivers and the woofer
	}
	for i, c := range cases {
		b := &bank{hop: hop, back: way.ToAndFro, wait: int(math.Ceil(way.Wait / step)), driver: driver, early: early, steps: make([][]complex64, len(places))}
		first, last := heard.spanOver(c, dry, places)
		b.first = first - who.lead(p)
		lasts := last - b.first + 2*preRoll + settle
		if heard.woofer != nil {
			lasts = max(lasts, heard.lasting(last-b.first+preRoll))
		}
		length = max(length, grid(lasts, rate))
		banks[i] = b
	}
	h, err := newHearer(p, who, timing.Listening{Cases: cases, Dry: dry, Flat: heard.woofer == nil, Woofer: heard.woofer}, places, frequencies(length, rate))
	if err != nil {
		return nil, err
	}
	fill(ctx, banks, h, p, places, length, rate)
	return banks, ctx.Err()
}

// floored returns a plan with the room's floor in place of the room, or the ceiling or the wall
// that the body is fixed to, for a room has too many echoes to be moved. A plan without a room
// stays as it is.
func floored(p *timing.Spot) *timing.Spot {
	if !p.Array.Room.Present {
		return p
	}
	a, out := *p.Array, *p
	a.Surface, a.Room.Present = a.FixedTo(), false
	out.Array = &a
	return &out
}

// spanOver returns the first and the last arrival of a case anywhere, in s after the
// straight way from the body's centre.
func (p sounding) spanOver(c timing.Case, dry bool, places []r3.Vec) (first, last float64) {
	first, last = math.Inf(1), math.Inf(-1)
	for _, at := range places {
		from, to := p.span(c, dry, at)
		first, last = min(first, from-bulk(p.Spot, at)), max(last, to-bulk(p.Spot, at))
	}
	return first, last
}

// bulk returns the time that sound takes from the body's centre to a place, in s.
func bulk(p *timing.Spot, place r3.Vec) float64 { return r3.Norm(place) / p.SpeedOfSound }

// drive returns the drivers' response, and its samples before time 0.
func drive(p *timing.Spot, rate int) (response []float64, early int) {
	n := grid(shortest, rate)
	frequency := frequencies(n, rate)
	early = int(math.Round(preRoll * float64(rate)))
	first := preRoll - float64(early)/float64(rate)
	return sequence(p.DriverResponse(nil, frequency), frequency, first, n, rate), early
}

// fill computes all steps of all banks, on all cores, until ctx ends.
func fill(ctx context.Context, banks []*bank, h *hearer, p *timing.Spot, places []r3.Vec, length, rate int) {
	size := transformFor(length + 2*banks[0].hop)
	type worker struct {
		*stepper
		*hearer
	}
	workers := make([]worker, cores.Count())
	cores.Each(len(places), func(w, j int) {
		if ctx.Err() != nil {
			return
		}
		if workers[w].stepper == nil {
			workers[w] = worker{newStepper(length, size, rate), h.fork()}
		}
		s := workers[w]
		s.hear(places[j])
		for i, b := range banks {
			b.steps[j] = s.step(s.left[i], s.right[i], bulk(p, places[j])+b.first)
		}
	})
	for _, b := range banks {
		b.length = length
	}
}

// transformFor returns the length of the least quick transform for n values: a power
// of two, or three quarters of one.
func transformFor(n int) int {
	size := 4
	for size < n {
		size *= 2
	}
	if three := size / 4 * 3; three >= n {
		return three
	}
	return size
}

// stepper turns what is heard at one place into a step of a bank.
type stepper struct {
	*inverse
	both   *fourier.CmplxFFT
	padded []complex128
}

func newStepper(length, size, rate int) *stepper {
	s := &stepper{newInverse(frequencies(length, rate), length, rate), fourier.NewCmplxFFT(size), make([]complex128, size)}
	for k := range s.close {
		s.close[k] /= float64(size)
	}
	return s
}

// step returns the spectrum of left + i right, with the sound that arrives at
// first, in s, moved to preRoll.
func (s *stepper) step(left, right []complex128, first float64) []complex64 {
	clear(s.padded)
	for i, v := range s.of(left, first) {
		s.padded[i] = complex(v, 0)
	}
	for i, v := range s.of(right, first) {
		s.padded[i] += complex(0, v)
	}
	s.both.Coefficients(s.padded, s.padded)
	out := make([]complex64, len(s.padded))
	for k, v := range s.padded {
		out[k] = complex64(v)
	}
	return out
}
