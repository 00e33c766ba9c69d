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

// softness is the power of the soft largest loss; a power of two.
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
	weight  []float64 // [seat], sum 1
	perBand []float64 // 1 over how many frequencies a band has
	perAll  float64   // 1 over how many there are
	loss    []float64 // [seat] scratch
}

func newScorer(aim Aim, loud float64, weight []float64, ends []int) *scorer {
	s := &scorer{aim: aim, loud: loud, weight: weight, perAll: 1 / float64(ends[len(ends)-1]), loss: make([]float64, len(weight))}
	from := 0
	for _, end := range ends {
		s.perBand = append(s.perBand, 1/float64(end-from))
		from = end
	}
	return s
}

// toDecibels times log2 is 10 log10.
const toDecibels = 10 * math.Ln2 / math.Ln10

// value is what sums [seat][band] over frequencies are worth; Aim.Of without its slices.
func (s *scorer) value(sum []float64) float64 {
	switch s.aim {
	case Mean:
		mean, _ := s.spread(sum, false)
		return mean
	case Round:
		mean, between := s.spread(sum, true)
		return round(s.loud, mean, between)
	}
	low, inverse := math.Inf(1), 0.0
	bands := len(s.perBand)
	for i := range s.weight {
		whole := 0.0
		for _, v := range sum[i*bands : (i+1)*bands] {
			whole += v
		}
		whole = max(whole*s.perAll, least)
		low = min(low, whole)
		power := 1 / whole
		for p := 1; p < softness; p *= 2 {
			power *= power
		}
		inverse += power
	}
	if s.aim == Worst && !s.soft {
		return -toDecibels * fastLog2(low)
	}
	soft := toDecibels / softness * fastLog2(inverse/float64(len(s.weight)))
	if s.aim == Worst {
		return soft
	}
	mean, between := s.spread(sum, true)
	return (mean+soft)/2 + between
}

// spread returns the mean of the losses in bands, and Between where asked for.
func (s *scorer) spread(sum []float64, between bool) (mean, rms float64) {
	bands := len(s.perBand)
	square := 0.0
	for b, per := range s.perBand {
		middle := 0.0
		for i, w := range s.weight {
			l := -toDecibels * fastLog2(max(sum[i*bands+b]*per, least))
			s.loss[i] = l
			middle += w * l
		}
		mean += middle
		if between {
			for i, w := range s.weight {
				d := s.loss[i] - middle
				square += w * d * d
			}
		}
	}
	return mean / float64(bands), math.Sqrt(square / float64(bands))
}
