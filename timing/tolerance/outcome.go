package tolerance

import (
	"slices"

	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/cores"

	"gonum.org/v1/gonum/stat/distuv"
)

// Quantile is a percentile of what all such drivers would come to, with bounds that hold it
// with 90 percent certainty, each side with 95.
type Quantile struct{ Value, From, To float64 }

// Range is the 5th, 50th and 95th percentile of a figure.
type Range struct{ Low, Middle, High Quantile }

// The percentiles of a Range, and how sure each side of a bound is.
const (
	low, middle, high = 0.05, 0.5, 0.95
	sure              = 0.95
)

// RangeOf returns the percentiles of values of LeastRuns lots or more.
func RangeOf(values []float64) Range {
	sorted := slices.Sorted(slices.Values(values))
	return Range{quantile(sorted, low), quantile(sorted, middle), quantile(sorted, high)}
}

// quantile returns a percentile of sorted values: between the two order statistics about it,
// and bounded by those of which so many certainly lie below.
func quantile(sorted []float64, p float64) Quantile {
	n := len(sorted)
	from, to := ranks(n, p)
	at := p * float64(n-1)
	i := min(int(at), n-2)
	return Quantile{sorted[i] + (at-float64(i))*(sorted[i+1]-sorted[i]), sorted[from], sorted[to]}
}

// ranks returns which of n sorted values bound a percentile, each side as sure: of those
// below it there are Binomial(n, p).
func ranks(n int, p float64) (from, to int) {
	below := distuv.Binomial{N: float64(n), P: p}
	for from+1 < n && below.CDF(float64(from)) <= 1-sure {
		from++
	}
	for to+1 < n && below.CDF(float64(to)) < sure {
		to++
	}
	return max(0, from-1), to
}

// outcome sums up the lots of a cause.
func outcome(c Cause, lots []timing.UnlikeHeard, twins timing.UnlikeHeard, p *timing.Plan) Outcome {
	of := func(value func(h timing.UnlikeHeard) float64) Range {
		values := make([]float64, len(lots))
		for i, h := range lots {
			values[i] = value(h)
		}
		return RangeOf(values)
	}
	out := Outcome{Cause: c,
		Level:    of(func(h timing.UnlikeHeard) float64 { return h.Mean - twins.Mean }),
		Loss:     of(func(h timing.UnlikeHeard) float64 { return h.Loss }),
		Smear:    of(func(h timing.UnlikeHeard) float64 { return h.Smear }),
		LeastOhm: of(func(h timing.UnlikeHeard) float64 { return h.LeastOhm }),
		Watt:     of(func(h timing.UnlikeHeard) float64 { return h.Watt }),
		Travel:   of(func(h timing.UnlikeHeard) float64 { return h.Travel }),
	}
	for _, h := range lots {
		b := h.Beyond(p)
		out.Under += count(b.Under)
		out.Hot += count(b.Hot)
		out.Far += count(b.Far)
	}
	return out
}

func count(is bool) int {
	if is {
		return 1
	}
	return 0
}

// curves fills in the percentiles of the level over frequency.
func (s *Study) curves(lots []timing.UnlikeHeard) {
	n := len(s.Frequency)
	smooth := make([][]float64, len(lots))
	cores.Each(len(lots), func(_, i int) {
		smooth[i] = band.Smooth(nil, s.Frequency, lots[i].Response.Aligned, smoothing)
	})
	s.Low, s.Middle, s.High = make([]float64, n), make([]float64, n), make([]float64, n)
	one := make([]float64, len(lots))
	for f := range n {
		for i := range lots {
			one[i] = smooth[i][f]
		}
		r := RangeOf(one)
		s.Low[f], s.Middle[f], s.High[f] = r.Low.Value, r.Middle.Value, r.High.Value
	}
}
