package seats

import (
	"context"
	"math"
	"math/cmplx"
	"slices"

	"gonum.org/v1/gonum/optimize"
)

// Filtered is what a short filter for each channel makes of a plan.
type Filtered struct {
	Taps [][]float64 // [channel][sample], on top of its delay; no filter is louder than 1 at any frequency
	Lead float64     // s, by how much all filters delay the sound alike
	Figures
}

// The search for taps: the limit of a filter's gain is the tapNorm-mean over frequencies,
// which is at most 0.6 dB below the greatest where a thirtieth of them are there; outside
// the band that seats are judged over, filters are held to a plain delay with tapHold dB for
// a mean square of 1.
const (
	tapNorm   = 32
	tapHold   = 3.0
	tapRounds = 150
	tapOuter  = 96 // frequencies outside of the band, evenly spaced, three to a tap of 64
)

// Taps returns so many taps for each channel at a sampling rate in Hz that make Even small,
// from plain delays on, by a quasi-Newton descent (L-BFGS; Nocedal and Wright, Numerical
// Optimization, 2nd ed., 7.2), where the pressures are those of groups with gains (nil: all
// as loud) and delays in s. What is lost is against all drivers in step without filters.
func (f *Field) Taps(ctx context.Context, groups [][]int, gain, delay []float64, count int, rate float64) (Filtered, error) {
	t := newTapping(f, groups, gain, delay, count, rate)
	start := make([]float64, len(groups)*count)
	for g := range groups {
		start[g*count+count/2] = 1
	}
	problem := optimize.Problem{
		Func:   func(x []float64) float64 { return t.cost(nil, x) },
		Grad:   func(dst, x []float64) { t.cost(dst, x) },
		Status: func() (optimize.Status, error) { return optimize.NotTerminated, ctx.Err() },
	}
	found, err := optimize.Minimize(problem, start, &optimize.Settings{MajorIterations: tapRounds}, &optimize.LBFGS{})
	if ctx.Err() != nil {
		return Filtered{}, ctx.Err()
	}
	if found == nil {
		return Filtered{}, err
	}
	out := Filtered{Lead: float64(count/2) / rate}
	top := t.loudest(found.X)
	for g := range groups {
		taps := slices.Clone(found.X[g*count : (g+1)*count])
		for i := range taps {
			taps[i] /= top
		}
		out.Taps = append(out.Taps, taps)
	}
	out.Figures = f.Filter(groups, gain, delay, out.Taps, rate)
	return out, nil
}

// Filter is Judge with taps at a rate in Hz for each group, against all drivers in step without
// them.
func (f *Field) Filter(groups [][]int, gain, delay []float64, taps [][]float64, rate float64) Figures {
	n := len(f.Frequency)
	feed := f.turns(len(groups), delay)
	for g := range groups {
		for i, hz := range f.Frequency {
			var h complex128
			for k, v := range taps[g] {
				h += complex(v, 0) * turn(hz, float64(k)/rate)
			}
			feed[g*n+i] *= h
		}
	}
	return f.figures(groups, feed, gain)
}

// tapping is the search for taps. Its frequencies are the field's and tapOuter others.
type tapping struct {
	field         *Field
	groups, count int
	part          []float64      // [place] of the weight
	heard         [][]complex128 // [place][group*n+f] over all drivers in step
	wave          [][]complex128 // [f][tap] exp(-i omega t)
	response      []complex128   // [group*frequencies+f]
	slope         []complex128   // of the cost over response
	sum           [][]complex128 // [place][f]
	loss          [][]float64    // [place][band]
	whole         []float64      // [place] mean share
}

func newTapping(f *Field, groups [][]int, gain, delay []float64, count int, rate float64) *tapping {
	n := len(f.Frequency)
	t := &tapping{field: f, groups: len(groups), count: count, part: f.parts(), whole: make([]float64, len(f.Place))}
	feed, channel := f.turns(len(groups), delay), make([]complex128, len(groups))
	for place := range f.Place {
		row := make([]complex128, len(groups)*n)
		for i := range n {
			f.channels(channel, place, i, groups, gain)
			for g, v := range channel {
				row[g*n+i] = v * feed[g*n+i]
			}
		}
		t.heard, t.sum, t.loss = append(t.heard, row), append(t.sum, make([]complex128, n)), append(t.loss, make([]float64, len(f.Ends)))
	}
	for _, hz := range slices.Concat(f.Frequency, outer(f.Frequency, rate)) {
		row := make([]complex128, count)
		for k := range row {
			row[k] = turn(hz, float64(k)/rate)
		}
		t.wave = append(t.wave, row)
	}
	t.response, t.slope = make([]complex128, len(groups)*len(t.wave)), make([]complex128, len(groups)*len(t.wave))
	return t
}

// outer returns frequencies in Hz below and above those of a band, from 0 to half the rate.
func outer(within []float64, rate float64) (out []float64) {
	for i := range tapOuter {
		hz := rate / 2 * float64(i) / (tapOuter - 1)
		if hz < 0.95*within[0] || hz > 1.05*within[len(within)-1] {
			out = append(out, hz)
		}
	}
	return out
}

// respond sets the filters' responses to those of taps.
func (t *tapping) respond(x []float64) {
	for g := range t.groups {
		for f, wave := range t.wave {
			var sum complex128
			for k, v := range x[g*t.count : (g+1)*t.count] {
				sum += complex(v*real(wave[k]), v*imag(wave[k]))
			}
			t.response[g*len(t.wave)+f] = sum
		}
	}
}

// loudest returns the greatest gain of any filter.
func (t *tapping) loudest(x []float64) float64 {
	t.respond(x)
	top := 0.0
	for _, v := range t.response {
		top = max(top, cmplx.Abs(v))
	}
	return top
}

// cost returns what taps are worth, the filters' norm taken out, and its gradient where dst is
// not nil.
func (t *tapping) cost(dst, x []float64) float64 {
	t.respond(x)
	norm := 0.0
	for _, v := range t.response {
		norm += math.Pow(energy(v), tapNorm/2) / float64(len(t.response))
	}
	norm = math.Pow(norm, 1.0/tapNorm)
	value, shares := t.shares(norm)
	hold, slopeNorm := 0.0, 0.0
	all, n := len(t.wave), len(t.field.Frequency)
	clear(t.slope)
	for g := range t.groups {
		for f := n; f < all; f++ {
			off := t.response[g*all+f]/complex(norm, 0) - t.wave[f][t.count/2]
			scale := tapHold / float64((all-n)*t.groups)
			hold += scale * energy(off)
			t.slope[g*all+f] += complex(2*scale/norm, 0) * off
			slopeNorm -= 2 * scale / norm * real(cmplx.Conj(off)*t.response[g*all+f]/complex(norm, 0))
		}
	}
	if dst == nil {
		return value + hold
	}
	for p, row := range t.heard {
		for f := range n {
			d := shares[p][f] / (norm * norm)
			for g := range t.groups {
				t.slope[g*all+f] += complex(2*d, 0) * t.sum[p][f] * cmplx.Conj(row[g*n+f])
			}
			slopeNorm -= 2 * shares[p][f] * energy(t.sum[p][f]) / (norm * norm * norm)
		}
	}
	for i, v := range t.response {
		size := cmplx.Abs(v)
		t.slope[i] += complex(slopeNorm*math.Pow(size/norm, tapNorm-2)/norm/float64(len(t.response)), 0) * v
	}
	for g := range t.groups {
		for k := range t.count {
			sum := 0.0
			for f, wave := range t.wave {
				s := t.slope[g*all+f]
				sum += real(s)*real(wave[k]) + imag(s)*imag(wave[k])
			}
			dst[g*t.count+k] = sum
		}
	}
	return value + hold
}

// shares returns Even of the responses over a norm, smooth over all places, and its slope over
// each share r(p,f).
func (t *tapping) shares(norm float64) (value float64, slope [][]float64) {
	n, bands := len(t.field.Frequency), len(t.field.Ends)
	share := make([][]float64, len(t.heard)) // [place][band]
	for p, row := range t.heard {
		clear(t.sum[p])
		for g := range t.groups {
			for f := range n {
				t.sum[p][f] += t.response[g*len(t.wave)+f] * row[g*n+f]
			}
		}
		share[p] = make([]float64, bands)
		from := 0
		t.whole[p] = 0
		for b, end := range t.field.Ends {
			for _, v := range t.sum[p][from:end] {
				share[p][b] += energy(v) / (norm * norm)
			}
			t.whole[p] += share[p][b] / float64(n)
			share[p][b] = max(share[p][b]/float64(end-from), least)
			t.loss[p][b], from = decibels(share[p][b]), end
		}
		t.whole[p] = max(t.whole[p], least)
	}
	mean, between := overBands(t.loss, t.part)
	soft := 0.0
	for _, w := range t.whole {
		soft += math.Pow(w, -softness)
	}
	value = mean/2 + 10*math.Log10(soft/float64(len(t.whole)))/softness/2 + between
	middle := make([]float64, bands)
	for p, part := range t.part {
		for b, l := range t.loss[p] {
			middle[b] += part * l
		}
	}
	for p, part := range t.part {
		row := make([]float64, n)
		from := 0
		for b, end := range t.field.Ends {
			byLoss := part / float64(bands) * (0.5 + (t.loss[p][b]-middle[b])/max(between, 1e-9))
			one := -10 / math.Ln10 * byLoss / share[p][b] / float64(end-from)
			for f := from; f < end; f++ {
				row[f] = one - 10/math.Ln10/2*math.Pow(t.whole[p], -softness-1)/soft/float64(n)
			}
			from = end
		}
		slope = append(slope, row)
	}
	return value, slope
}
