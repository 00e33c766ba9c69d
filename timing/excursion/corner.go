package excursion

import (
	"math"
	"math/cmplx"

	"pappus/layout/prose"
	"pappus/timing/crossover"
)

// The band in Hz in which LeastCorner looks for a corner.
const LowestCorner, HighestCorner = 1, 20000

// perOctave is how closely Peak looks before it closes in.
const perOctave = 24

// Peak returns the greatest peak excursion in m for sines of volt RMS at the
// high-pass's input, and at what frequency in Hz. Without a high-pass, give the
// zero Filter; the frequency is 0 where the excursion only grows downwards.
func (d Driver) Peak(volt float64, highPass crossover.Filter) (hz, metre float64) {
	low, high := d.Resonance, d.Resonance
	if c := highPass.Corner(); c > 0 {
		low, high = min(low, c), max(high, c)
	} else {
		metre = volt * d.Excursion(0)
	}
	size := func(log float64) float64 {
		hz := math.Exp(log)
		return volt * d.Excursion(hz) * cmplx.Abs(highPass.Response(hz))
	}
	const step = math.Ln2 / perOctave
	from, to := math.Log(low)-10*math.Ln2, math.Log(high)+4*math.Ln2
	last, now := size(from), size(from+step)
	for x := from + step; x < to; x += step {
		next := size(x + step)
		if now >= last && now >= next {
			top := x
			for h := step; h > step/100; h /= 8 {
				top += vertex(size(top-h), size(top), size(top+h)) * h
			}
			if m := size(top); m > metre {
				hz, metre = math.Exp(top), m
			}
		}
		last, now = now, next
	}
	return hz, metre
}

// vertex returns where a parabola through three values, one step apart, has its
// top, in steps from the middle and no more than one away; 0 where it has none.
func vertex(last, now, next float64) float64 {
	bend := last - 2*now + next
	if bend >= 0 {
		return 0
	}
	return max(-1, min(1, (last-next)/(2*bend)))
}

// LeastCorner returns the least corner in Hz of a high-pass of a family and
// order that keeps the peak excursion of sines of volt RMS, at any frequency, at
// or under most metres. It is found to a millionth, on the safe side. It is 0
// where no high-pass is needed.
//
// Where even a corner of 20 kHz is not enough the error wraps ErrCorner; volt or
// most that is not above 0 is ErrLimit; and so on for the driver and the filter.
func (d Driver) LeastCorner(family crossover.Family, order int, volt, most float64) (hz float64, err error) {
	if err := d.Check(); err != nil {
		return 0, err
	}
	if err := check(ErrLimit, []named{{"voltage", volt}, {"greatest excursion in m", most}}); err != nil {
		return 0, err
	}
	f, err := crossover.New(crossover.HighPass, family, order, HighestCorner)
	if err != nil {
		return 0, err
	}
	keeps := func(f crossover.Filter) bool { _, m := d.Peak(volt, f); return m <= most }
	switch {
	case keeps(crossover.Filter{}):
		return 0, nil
	case !keeps(f):
		return 0, prose.Errorf("%w: %.3g V move the cone by more than %.3g mm even above %v; lower the voltage", ErrCorner, volt, most*1e3, f)
	case keeps(f.Moved(LowestCorner)):
		return LowestCorner, nil
	}
	low, high := float64(LowestCorner), float64(HighestCorner)
	for high/low > 1+1e-6 {
		if mid := math.Sqrt(low * high); keeps(f.Moved(mid)) {
			high = mid
		} else {
			low = mid
		}
	}
	return high, nil
}
