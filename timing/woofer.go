package timing

import (
	"errors"
	"fmt"
	"math"
	"math/cmplx"
	"slices"

	"pappus/layout"
	"pappus/layout/advice"
	"pappus/timing/band"
	"pappus/timing/crossover"
	"pappus/timing/drive"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// ErrWoofer tells that there is no woofer, or no sum where it is asked for.
var ErrWoofer = errors.New("no sum with a woofer")

// The levels with a woofer are computed at wooferCount frequencies, evenly spaced
// on a logarithmic axis, 30 to the octave.
const (
	wooferCount = 300
	wooferLow   = 20.0    // Hz
	wooferHigh  = 20000.0 // Hz
)

// atWoofer is the distance in m from the woofer below which a point source says
// nothing.
const atWoofer = 0.01

// Woofer is a woofer beside an array: what brings both into step at the spot, and
// their sum there. The array has its delays and its high-pass for protection, as in
// Response.
type Woofer struct {
	// LowPass is on the woofer, HighPass on every channel of the array: Linkwitz-Riley
	// (S. H. Linkwitz, J. Audio Eng. Soc. 24 (1976) 2).
	LowPass, HighPass crossover.Filter

	Arrival      float64 // s, of the woofer, along the straight line, without delay
	ArrayArrival float64 // s, of the array with its exact delays but what all wait for, weighted by squared pressures
	// Whichever arrives first waits for the other.
	Delay      float64 // s, of the woofer, what can be set
	Exact      float64 // s, the same before rounding
	ArrayDelay float64 // s, of all channels, in theirs already: Plan.Wait
	Invert     bool    // the polarity to set for the woofer: that of the louder sum where both meet

	Frequency             []float64 // Hz, rising
	ArrayLevel            []float64 // dB at the spot, behind the high-pass
	WooferLevel           []float64 // behind the low-pass
	Sum, SumOtherPolarity []float64

	// Meets is the frequency in Hz, of those nearest to the crossover, where both are
	// as loud behind their filters; the crossover itself where there is none.
	Meets float64
	// Over the third-octave band round it.
	Loss      float64 // dB by which the sum falls short of both in step
	OtherLoss float64 // the same with the other polarity
	Finer     Finer   // what would be louder than arrivals alone make it

	// Matched tells that the woofer is taken for as loud as the array at the
	// crossover, the design's gain on top, for want of a sensitivity.
	Matched bool
	// Louder is by how many dB the woofer is louder than the array in the third-octave
	// band round the crossover, each without its filter.
	Louder float64

	Warnings []Finding

	factor float64 // of a point source of strength 1, its wires in it
}

// Finer is the delay and polarity of the woofer that give the loudest sum in the band
// where both meet, for delays within half a period: made from the phase, in which
// filters and resonances have their part, not from arrivals.
type Finer struct {
	Delay  float64 // s, more for the woofer; below 0: for the array
	Invert bool
	Loss   float64 // dB
}

// finerSteps is how many delays are tried over a period.
const finerSteps = 240

// WithWoofer computes the woofer of a plan's array. It is taken for a point source
// at its place, with the surface's or the room's images; the body's shadow on it is
// left out, as is its own phase. Its amplifier is taken to give the voltage of the
// wiring. Errors wrap ErrWoofer where there is no woofer or the spot is at it.
func WithWoofer(s *Spot) (Woofer, error) {
	a := s.Array
	distance := r3.Norm(r3.Sub(a.Spot, a.Woofer.At))
	switch {
	case !a.Woofer.Present:
		return Woofer{}, fmt.Errorf("%w: the design has none", ErrWoofer)
	case distance < atWoofer:
		return Woofer{}, fmt.Errorf("%w: the spot is at the woofer", ErrWoofer)
	}
	w := Woofer{Arrival: distance / s.SpeedOfSound, ArrayArrival: arrayArrival(s.Channels, s.times(), func(c Channel) float64 { return c.Exact - s.Wait - s.Rounding.Common }), Frequency: make([]float64, wooferCount)}
	w.LowPass = crossover.New(crossover.LowPass, crossover.LinkwitzRiley, a.Woofer.Order, a.Woofer.Crossover)
	w.HighPass = crossover.New(crossover.HighPass, crossover.LinkwitzRiley, a.Woofer.Order, a.Woofer.Crossover)
	w.ArrayDelay = s.Wait
	w.Exact = s.Rounding.Common
	if !math.IsNaN(w.ArrayArrival) { // of a silent array: there is nothing to wait for
		w.Exact += max(0, s.Wait+w.ArrayArrival-w.Arrival)
	}
	w.Delay = s.Settable(w.Exact)
	band.Log(w.Frequency, wooferLow, wooferHigh)
	array := s.Transfer(nil, Aligned, w.Frequency)
	woofer, err := s.wooferField(w.Frequency)
	if err != nil {
		return Woofer{}, err
	}
	w.setLevel(s, array, woofer)
	w.filter(array, woofer)
	w.meet(array, woofer)
	w.setPolarity(array, woofer)
	w.levels(array, woofer)
	w.caution(s)
	return w, nil
}

// waitForWoofer returns by how many s the channels of an array, with their exact delays,
// have to wait for the woofer; 0 where there is none, or the array is silent. Channels by hand wait for what can be
// set.
func waitForWoofer(a *layout.Array, channels []Channel, t times, speed float64) float64 {
	if !a.Woofer.Present {
		return 0
	}
	distance := r3.Norm(r3.Sub(a.Spot, a.Woofer.At))
	arrival := arrayArrival(channels, t, func(c Channel) float64 { return c.Delay })
	if math.IsNaN(arrival) {
		return 0
	}
	wait := max(0, distance/speed-arrival)
	if slices.ContainsFunc(channels, Channel.isByHand) {
		return settable(wait, a.Processor.Step)
	}
	return wait
}

// arrayArrival returns when the array is heard at the spot, in s: the mean of its
// drivers, as the design takes arrivals, with delays of their channels.
func arrayArrival(channels []Channel, t times, delay func(Channel) float64) float64 {
	late := times{slices.Clone(t.time), t.weight}
	for _, c := range channels {
		for _, m := range c.Mounts {
			late.time[m] += delay(c)
		}
	}
	return late.mean(all(len(late.time)))
}

// wooferField returns the pressure of a point source of strength 1 in the woofer's
// place at the spot.
func (p *Spot) wooferField(frequency []float64) ([]complex128, error) {
	open := *p.Array
	open.Timing.Model, open.Mounts, open.Placings = radiate.PointModel, []layout.Mount{{Point: p.Array.Woofer.At, Face: -1}}, nil
	s, err := newScene(&open, frequency)
	if err != nil {
		return nil, err
	}
	dst := make([]complex128, len(frequency))
	s.Hear(dst, s.Ways, p.Array.Spot)
	return dst, nil
}

// setLevel gives the woofer its level: by sensitivities where both are known, else
// that of the array at the crossover.
func (w *Woofer) setLevel(p *Spot, array, woofer []complex128) {
	x := p.Array.Woofer
	w.Matched = !(p.IsAbsolute() && x.Sensitivity > 0)
	from, to := w.third(x.Crossover)
	level := x.Gain
	if w.Matched {
		level += 10 * math.Log10(meanEnergy(array[from:to])/meanEnergy(woofer[from:to]))
	} else {
		level += drive.Offset(x.Sensitivity, p.Array.Wiring.Voltage)
	}
	factor := math.Pow(10, level/20)
	if x.Invert {
		factor = -factor
	}
	w.factor = factor
	for f := range woofer {
		woofer[f] *= complex(factor, 0)
	}
	w.Louder = 10 * math.Log10(meanEnergy(woofer[from:to])/meanEnergy(array[from:to]))
}

// third returns the indices of the third-octave band round a frequency in Hz.
func (w *Woofer) third(hz float64) (from, to int) {
	low, high := band.Edges(hz, 3)
	return band.Range(w.Frequency, low, high)
}

// meet finds where both are as loud behind their filters.
func (w *Woofer) meet(array, woofer []complex128) {
	corner, nearest := w.LowPass.Corner(), math.Inf(1)
	w.Meets = corner
	before := 0.0
	for f, hz := range w.Frequency {
		apart := decibels(woofer[f]) - decibels(array[f])
		if f > 0 && before*apart <= 0 && before != apart {
			last := w.Frequency[f-1]
			at := last * math.Pow(hz/last, before/(before-apart))
			if far := math.Abs(math.Log(at / corner)); far < nearest && at > wooferLow*band.Ratio && at < wooferHigh/band.Ratio {
				w.Meets, nearest = at, far
			}
		}
		before = apart
	}
}

// filter takes both through the crossover, and the woofer through its delay.
func (w *Woofer) filter(array, woofer []complex128) {
	for f, hz := range w.Frequency {
		array[f] *= w.HighPass.Response(hz)
		woofer[f] *= w.LowPass.Response(hz) * turn(hz, w.Delay)
	}
}

// setPolarity finds the louder polarity, and whether a little more or less delay
// would be louder still. Where both are as loud the woofer is not inverted.
func (w *Woofer) setPolarity(array, woofer []complex128) {
	from, to := w.third(w.Meets)
	frequency, array, woofer := w.Frequency[from:to], array[from:to], woofer[from:to]
	as, other := loss(frequency, array, woofer, 0, 1), loss(frequency, array, woofer, 0, -1)
	w.Invert = other < as-sameLoss
	w.Loss, w.OtherLoss = min(as, other), max(as, other)
	w.Finer = Finer{0, w.Invert, w.Loss}
	period := 1 / w.Meets
	for step := -finerSteps / 2; step <= finerSteps/2; step++ {
		late := period * float64(step) / finerSteps
		for _, sign := range []float64{1, -1} {
			if l := loss(frequency, array, woofer, late, sign); l < w.Finer.Loss-sameLoss {
				w.Finer = Finer{late, sign < 0, l}
			}
		}
	}
}

// loss returns by how many dB the energy of a sum is below that of both in step, the
// second of the two later by so many s and taken times sign; no more than
// SilenceLoss.
func loss(frequency []float64, a, b []complex128, late, sign float64) float64 {
	sum, step := 0.0, 0.0
	for f, hz := range frequency {
		sum += energyOf(a[f] + complex(sign, 0)*b[f]*turn(hz, late))
		both := cmplx.Abs(a[f]) + cmplx.Abs(b[f])
		step += both * both
	}
	return min(SilenceLoss, 10*math.Log10(step/sum))
}

// levels fills in the levels at the spot.
func (w *Woofer) levels(array, woofer []complex128) {
	sign := complex(1, 0)
	if w.Invert {
		sign = -1
	}
	for _, to := range []*[]float64{&w.ArrayLevel, &w.WooferLevel, &w.Sum, &w.SumOtherPolarity} {
		*to = make([]float64, len(w.Frequency))
	}
	for f := range w.Frequency {
		a, b := array[f], sign*woofer[f]
		w.ArrayLevel[f], w.WooferLevel[f] = decibels(a), decibels(b)
		w.Sum[f], w.SumOtherPolarity[f] = decibels(a+b), decibels(a-b)
	}
}

func decibels(v complex128) float64 { return 20 * math.Log10(cmplx.Abs(v)) }

// badLoss is the loss in dB where both meet that is worth a word.
const badLoss = 1.0

// caution says what is wrong with a crossover, beyond what layout knows of.
func (w *Woofer) caution(p *Spot) {
	a, g := p.Array, p.Protection
	if a.Protection.Corner == 0 { // else layout knows it
		if f, found := layout.CrossoverWarning(a.Woofer, g.Corner, "the high-pass that protects the drivers"); found {
			w.Warnings = append(w.Warnings, said(f)...)
		}
	}
	if w.Loss >= badLoss {
		w.Warnings = append(w.Warnings, w.lost())
	}
}

// lost is what is lost where both meet.
func (w *Woofer) lost() Finding {
	fact := CrossoverLoss{Loss: w.Loss, Meets: w.Meets}
	if w.Loss-w.Finer.Loss >= badLoss/2 {
		fact.Finer, fact.Other = &w.Finer, w.Finer.Invert != w.Invert
	}
	return Finding{"crossover_loss", advice.Cost, fact}
}
