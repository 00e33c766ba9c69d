package seats

import (
	"fmt"
	"math"
)

// Aim is what a plan makes small.
type Aim string

const (
	// Worst is the largest loss at any seat.
	Worst Aim = "worst"
	// Mean is the mean loss in dB.
	Mean Aim = "mean"
	// Even is half of Mean, half of a soft largest loss at any seat, and Between:
	//
	//	(10/8) log10 of the mean over seats of 10^(8 loss/10)
	//
	// which between five seats is at most 0.9 dB below the largest.
	Even Aim = "even"
	// Round is, with Field.Loud from 0 to 1 as l,
	//
	//	l Mean + (1 - l) Between
	//
	// for level all round, where Mean is what is lost and Between how uneven it is: half way a
	// decibel of level is worth one of the standard deviation.
	Round Aim = "round"
)

// softness is the power of the soft largest loss, a power of two: with 8 the seats within 1 dB
// of the worst share it, with 2 it would be a mean, with 32 the worst alone.
const softness = 8

// Value returns what figures of the field are worth by an aim, in dB, less being better.
func (f *Field) Value(a Aim, g Figures) float64 {
	if a == Round {
		return round(f.Loud, g.Mean, g.Between)
	}
	return a.Of(g)
}

func round(loud, mean, between float64) float64 { return loud*mean + (1-loud)*between }

// Of is Field.Value for all aims but Round.
func (a Aim) Of(f Figures) float64 {
	switch a {
	case Worst:
		return f.Worst
	case Mean:
		return f.Mean
	}
	sum := 0.0
	for _, loss := range f.Seat {
		sum += math.Pow(10, softness*(loss-f.Worst)/10) / float64(len(f.Seat))
	}
	return f.Mean/2 + (f.Worst+10*math.Log10(sum)/softness)/2 + f.Between
}

func (a Aim) check() error {
	if a != Worst && a != Mean && a != Even && a != Round {
		return fmt.Errorf("seats: no aim is called %q", a)
	}
	return nil
}

// scorer finds what an aim is worth from sums of shares of the energy in step.
type scorer struct {
	aim     Aim
	loud    float64   // of Round
	soft    bool      // of Worst the soft largest loss, which is smooth
	seat    []int     // [place], rising
	share   []float64 // [place] part of the weight of all seats
	perBand []float64 // 1 over how many frequencies a band has
	perAll  float64   // 1 over how many there are
	loss    []float64 // [place] scratch
}

func newScorer(aim Aim, loud float64, p *problem) *scorer {
	s := &scorer{aim: aim, loud: loud, seat: p.seat, share: p.share, perAll: 1 / float64(p.nf), loss: make([]float64, p.np)}
	from := 0
	for _, end := range p.ends {
		s.perBand = append(s.perBand, 1/float64(end-from))
		from = end
	}
	return s
}

// toDecibels times log2 is 10 log10.
const toDecibels = 10 * math.Ln2 / math.Ln10

// value is what sums [place][band] over frequencies are worth; Aim.Of without its slices.
// Where that is no less than limit it may be anything that is no less.
func (s *scorer) value(sum []float64, limit float64) float64 {
	// A mean in dB is no less than that of the mean energy, by Jensen's inequality: most
	// changes are worse even so, and need no logarithm for each band.
	low, at, inverse, floor := math.Inf(1), math.Inf(1), 0.0, 0.0
	bands, last := len(s.perBand), len(s.seat)-1
	for i, seat := range s.seat {
		whole, even := 0.0, 0.0
		for b, v := range sum[i*bands : (i+1)*bands] {
			whole += v
			even += v * s.perBand[b]
		}
		if s.aim != Worst {
			floor -= s.share[i] * toDecibels * fastLog2(max(even/float64(bands), least))
		}
		at = min(at, max(whole*s.perAll, least))
		if i < last && s.seat[i+1] == seat {
			continue
		}
		power := 1 / at
		for p := 1; p < softness; p *= 2 {
			power *= power
		}
		low, inverse, at = min(low, at), inverse+power, math.Inf(1)
	}
	if s.aim == Worst && !s.soft {
		return -toDecibels * fastLog2(low)
	}
	soft := toDecibels / softness * fastLog2(inverse/float64(s.seat[last]+1))
	switch s.aim {
	case Worst:
		return soft
	case Mean:
		if floor >= limit {
			return floor
		}
		mean, _ := s.spread(sum, math.Inf(1))
		return mean
	case Round:
		room := (limit - s.loud*floor) / max(1-s.loud, least)
		if room <= 0 {
			return limit
		}
		mean, between := s.spread(sum, room)
		if between >= room {
			return limit
		}
		return round(s.loud, mean, between)
	}
	// Between is no less than what some of the bands leave.
	room := limit - (floor+soft)/2
	if room <= 0 {
		return limit
	}
	mean, between := s.spread(sum, room)
	if between >= room {
		return limit
	}
	return (mean+soft)/2 + between
}

// spread returns the mean of the losses in bands, and Between; where that is no less than
// most, neither is anything but that Between is no less.
func (s *scorer) spread(sum []float64, most float64) (mean, between float64) {
	bands := len(s.perBand)
	square, limit := 0.0, most*most*float64(bands)
	loss := s.loss[:len(s.share)]
	for b, per := range s.perBand {
		middle := 0.0
		for i, w := range s.share {
			l := -toDecibels * fastLog2(max(sum[i*bands+b]*per, least))
			loss[i] = l
			middle += w * l
		}
		mean += middle
		if s.aim == Mean {
			continue
		}
		for i, w := range s.share {
			d := loss[i] - middle
			square += w * d * d
		}
		if square >= limit {
			return mean, most
		}
	}
	return mean / float64(bands), math.Sqrt(square / float64(bands))
}
