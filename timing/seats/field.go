package seats

import (
	"cmp"
	"fmt"
	"math"
	"math/cmplx"
	"slices"

	"pappus/timing/band"
	"pappus/timing/cores"
)

// The band that seats are judged over.
const (
	LowHz  = 500.0
	HighHz = 8000.0
	octave = 12 // frequencies to an octave
)

// Frequencies returns the frequencies in Hz that seats are judged at, twelve to the octave
// from 500 Hz to 8 kHz, the exact centres of the third octaves they belong to, and for each
// third the index after its last frequency. The outermost thirds are half full.
func Frequencies() (frequency, thirds []float64, ends []int) {
	frequency = make([]float64, octave*4+1)
	band.Log(frequency, LowHz, HighHz)
	thirds = band.ThirdsWithin(440, 9000)
	for _, centre := range thirds {
		_, high := band.Edges(centre, 3)
		_, end := band.Range(frequency, 0, high)
		ends = append(ends, end)
	}
	return frequency, thirds, ends
}

// Field is what some places hear of each driver, all fed alike and without delays. A seat
// may have several places, where the head moves.
type Field struct {
	Frequency []float64      // Hz, rising
	Ends      []int          // of each band: the index after its last frequency
	Drivers   int            // how many
	Place     [][]complex128 // [place][driver*len(Frequency)+f]
	Seat      []int          // [place] which seat it belongs to; nil: each place is one
	Weight    []float64      // of each seat, above 0; nil: all alike

	// Full is, for each frequency, the pressure that losses are taken against; nil: that of
	// all drivers in step. Loud is the weight of Round.
	Full []float64
	Loud float64
}

// Figures are losses in dB against all drivers in step, 0 being the best there is. With
//
//	r(p,f) = |sum over channels c of gain(c) exp(-i 2 pi f delay(c)) sum over its drivers of P(p,d,f)|^2
//	         / (sum over drivers of |gain P(p,d,f)|)^2
//
// at place p and frequency f, a place's loss is -10 log10 of the mean of r over all
// frequencies, and its loss in a band that over the band's frequencies. Worst is the largest
// loss at any place; Mean the weighted mean over places, and the mean over bands, of the
// losses in bands in dB, where deep holes count for more, so that it may be above Worst;
// Between the RMS over bands of the weighted standard deviation between places. The places of
// a seat share its weight.
type Figures struct {
	Worst, Mean, Between float64
	Seat                 []float64   // of each seat, the largest loss at its places
	Band                 [][]float64 // [seat][band] of the mean of r over its places, too
}

// least is the least share of the energy in step that is told from silence: 120 dB down.
const least = 1e-12

// decibels is the loss in dB of a share of the energy in step.
func decibels(share float64) float64 { return -10 * math.Log10(max(share, least)) }

// check tells of what cannot be judged.
func (f *Field) check() error {
	n := len(f.Frequency)
	switch {
	case n == 0 || len(f.Ends) == 0 || f.Ends[len(f.Ends)-1] != n || !slices.IsSorted(f.Ends) || f.Ends[0] < 1:
		return fmt.Errorf("seats: bands must hold all of 1 or more frequencies")
	case f.Drivers < 1 || len(f.Place) == 0:
		return fmt.Errorf("seats: there must be a driver and a place")
	case f.Full != nil && len(f.Full) != n:
		return fmt.Errorf("seats: each frequency must have a full pressure")
	case f.Seat != nil && len(f.Seat) != len(f.Place), f.Weight != nil && len(f.Weight) != f.seats():
		return fmt.Errorf("seats: each place must have a seat, each seat a weight")
	}
	places := make([]int, f.seats())
	for p := range f.Place {
		if len(f.Place[p]) != f.Drivers*n {
			return fmt.Errorf("seats: place %d must have %d pressures, it has %d", p, f.Drivers*n, len(f.Place[p]))
		}
		places[f.seat(p)]++
	}
	if slices.Contains(places, 0) {
		return fmt.Errorf("seats: a seat has no place")
	}
	return nil
}

// seat returns which seat a place belongs to.
func (f *Field) seat(p int) int {
	if f.Seat == nil {
		return p
	}
	return f.Seat[p]
}

// seats is how many there are.
func (f *Field) seats() int {
	if f.Seat == nil {
		return len(f.Place)
	}
	return slices.Max(f.Seat) + 1
}

// weights returns those of the seats, with a sum of 1.
func (f *Field) weights() []float64 {
	out := make([]float64, f.seats())
	total := 0.0
	for s := range out {
		out[s] = 1
		if f.Weight != nil {
			out[s] = f.Weight[s]
		}
		total += out[s]
	}
	for s := range out {
		out[s] /= total
	}
	return out
}

// turn returns exp(-i 2 pi frequency delay).
func turn(frequency, delay float64) complex128 {
	sin, cos := math.Sincos(2 * math.Pi * frequency * delay)
	return complex(cos, -sin)
}

func energy(v complex128) float64 { return real(v)*real(v) + imag(v)*imag(v) }

// Judge returns the losses with groups of drivers, each with its gain (negative: turned
// round; nil: all as loud) and its delay in s (nil: none). Drivers of no group are silent.
// It panics where the lengths differ.
func (f *Field) Judge(groups [][]int, gain, delay []float64) Figures {
	if gain != nil && len(gain) != len(groups) || delay != nil && len(delay) != len(groups) {
		panic("seats: lengths differ")
	}
	return f.figures(groups, f.turns(len(groups), delay), gain)
}

// JudgeAll is Judge with delays and without, and Bound, for about what one of them takes.
func (f *Field) JudgeAll(groups [][]int, gain, delay []float64) (planned, without, bound Figures) {
	if gain != nil && len(gain) != len(groups) || len(delay) != len(groups) {
		panic("seats: lengths differ")
	}
	all := f.shares(groups, gain, f.fed(f.turns(len(groups), delay)), f.fed(f.turns(len(groups), nil)), inPhase)
	return all[0], all[1], all[2]
}

// turns returns exp(-i 2 pi f delay) of so many groups, [group][frequency]; delay nil: 1.
func (f *Field) turns(groups int, delay []float64) []complex128 {
	n := len(f.Frequency)
	feed := make([]complex128, groups*n)
	for g := range groups {
		for i, hz := range f.Frequency {
			if feed[g*n+i] = 1; delay != nil {
				feed[g*n+i] = turn(hz, delay[g])
			}
		}
	}
	return feed
}

// channels sets dst to what each group gives at a place and frequency, with its gain (nil: all
// as loud), over all drivers in step, or over Full.
func (f *Field) channels(dst []complex128, place, i int, groups [][]int, gain []float64) {
	n, inStep, pressure := len(f.Frequency), 0.0, f.Place[place]
	for g, drivers := range groups {
		dst[g] = 0
		for _, d := range drivers {
			v := pressure[d*n+i]
			if gain != nil {
				v *= complex(gain[g], 0)
			}
			dst[g] += v
			inStep += cmplx.Abs(v)
		}
	}
	if f.Full != nil {
		inStep = f.Full[i]
	}
	for g := range dst {
		dst[g] /= complex(max(inStep, math.SmallestNonzeroFloat64), 0)
	}
}

// share is what is made of the channels' pressures at a place and frequency: a part of the energy
// in step.
type share func(i int, channel []complex128) float64

// shares returns the figures of each share, with groups that have gains (nil: all as loud). It
// uses all cores.
func (f *Field) shares(groups [][]int, gain []float64, of ...share) []Figures {
	all, room := make([][][]float64, len(of)), make([][]complex128, cores.Count())
	for k := range all {
		all[k] = make([][]float64, len(f.Place))
	}
	for w := range room {
		room[w] = make([]complex128, len(groups))
	}
	cores.Each(len(f.Place), func(worker, place int) {
		for k := range of {
			all[k][place] = make([]float64, len(f.Frequency))
		}
		channel := room[worker]
		for i := range f.Frequency {
			f.channels(channel, place, i, groups, gain)
			for k, share := range of {
				all[k][place][i] = share(i, channel)
			}
		}
	})
	out := make([]Figures, len(of))
	for k, rows := range all {
		out[k] = f.summed(rows)
	}
	return out
}

// fed is the share of channels that are fed [group][frequency].
func (f *Field) fed(feed []complex128) share {
	n := len(f.Frequency)
	return func(i int, channel []complex128) float64 {
		var sum complex128
		for g, v := range channel {
			sum += feed[g*n+i] * v
		}
		return energy(sum)
	}
}

// figures returns the losses with groups that have gains (nil: all as loud) and are fed
// [group][frequency].
func (f *Field) figures(groups [][]int, feed []complex128, gain []float64) Figures {
	return f.shares(groups, gain, f.fed(feed))[0]
}

// parts returns each place's part of the weight of all seats, whose places share theirs.
func (f *Field) parts() []float64 {
	weight, count := f.weights(), make([]float64, f.seats())
	for place := range f.Place {
		count[f.seat(place)]++
	}
	out := make([]float64, len(f.Place))
	for place := range out {
		out[place] = weight[f.seat(place)] / count[f.seat(place)]
	}
	return out
}

// summed makes figures of the shares of the energy in step, [place][frequency].
func (f *Field) summed(share [][]float64) Figures {
	seats := f.seats()
	out := Figures{Worst: math.Inf(-1), Seat: make([]float64, seats), Band: make([][]float64, seats)}
	loss, count := make([][]float64, len(share)), make([]float64, seats)
	for s := range seats {
		out.Seat[s], out.Band[s] = math.Inf(-1), make([]float64, len(f.Ends))
	}
	for p, row := range share {
		s, whole, from := f.seat(p), 0.0, 0
		count[s]++
		loss[p] = make([]float64, len(f.Ends))
		for b, end := range f.Ends {
			sum := 0.0
			for _, v := range row[from:end] {
				sum += v
			}
			out.Band[s][b] += sum / float64(end-from)
			loss[p][b] = decibels(sum / float64(end-from))
			whole, from = whole+sum, end
		}
		out.Seat[s] = max(out.Seat[s], decibels(whole/float64(len(row))))
		out.Worst = max(out.Worst, out.Seat[s])
	}
	for s, row := range out.Band {
		for b := range row {
			row[b] = decibels(row[b] / count[s])
		}
	}
	out.Mean, out.Between = overBands(loss, f.parts())
	return out
}

// overBands returns the mean of losses [place][band], and the RMS over bands of their
// standard deviation between places.
func overBands(loss [][]float64, weight []float64) (mean, between float64) {
	bands := len(loss[0])
	for b := range bands {
		// Sums in order of size come out alike for any order of the seats.
		type part struct{ loss, weight float64 }
		parts := make([]part, len(loss))
		for s := range loss {
			parts[s] = part{loss[s][b], weight[s]}
		}
		slices.SortFunc(parts, func(x, y part) int {
			return cmp.Or(cmp.Compare(x.loss, y.loss), cmp.Compare(x.weight, y.weight))
		})
		middle, square := 0.0, 0.0
		for _, p := range parts {
			middle += p.weight * p.loss
		}
		for _, p := range parts {
			square += p.weight * (p.loss - middle) * (p.loss - middle)
		}
		mean += middle / float64(bands)
		between += square / float64(bands)
	}
	return mean, math.Sqrt(between)
}
