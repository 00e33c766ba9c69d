package equaliser

import "math"

// Limits bound what a fit may use.
type Limits struct {
	Sections      int     // the most, 1 to 32
	Low, High     float64 // Hz: where a section's frequency may be
	LeastQ, MostQ float64 // of peaking sections; shelves have ShelfQ
	Boost, Cut    float64 // dB, 0 or above: of one section; Boost is also the most of all together
	// One low shelf, and one high shelf, may be used.
	LowShelf, HighShelf bool

	// AnyLevel judges the shape alone: what is left, and what a section is worth, is the
	// RMS about the mean distance. The fit goes for the target as it is, and then once more
	// for one that is moved by that mean; it is not moved further, since any shape could be
	// had by cuts that waste what a loudspeaker can do.
	AnyLevel bool

	// Worth is the least in dB, 0 or above, by which each section must lower the RMS
	// distance from the target over the whole: what is less is noise.
	Worth float64
	// Apart is how far in octaves, 0 or above, a boost and a cut must be from each other:
	// closer, most of one undoes the other.
	Apart float64
}

// allow tells whether boosts and cuts keep apart. Those too slight to be kept do not
// count.
func (l Limits) allow(sections []Section) bool {
	for i, a := range sections {
		for _, b := range sections[:i] {
			if a.Gain*b.Gain < 0 && min(math.Abs(a.Gain), math.Abs(b.Gain)) >= slight && math.Abs(math.Log2(a.Frequency/b.Frequency)) < l.Apart {
				return false
			}
		}
	}
	return true
}

// span is the range of one value.
type span struct{ low, high float64 }

// value returns the value of a free number.
func (s span) value(free float64) float64 {
	return max(s.low, min(s.high, (s.low+s.high)/2+(s.high-s.low)/2*math.Sin(free)))
}

// free returns the free number of a value. At the very edge the sine is flat and
// nothing would move, so it begins a little inside.
func (s span) free(value float64) float64 {
	if s.high <= s.low {
		return 0
	}
	x := (2*value - s.low - s.high) / (s.high - s.low)
	return math.Asin(max(-0.95, min(0.95, x)))
}

// perSection is the count of free numbers of a section: ln Hz, ln Q, dB.
const perSection = 3

// spans returns the ranges of a section's values.
func (l Limits) spans(shape Shape) [perSection]span {
	q := span{math.Log(l.LeastQ), math.Log(l.MostQ)}
	if shape != Peaking {
		q = span{math.Log(ShelfQ), math.Log(ShelfQ)}
	}
	return [perSection]span{{math.Log(l.Low), math.Log(l.High)}, q, {-l.Cut, l.Boost}}
}

// section returns the section that free numbers stand for.
func (l Limits) section(shape Shape, free []float64) Section {
	s := l.spans(shape)
	return Section{shape, math.Exp(s[0].value(free[0])), math.Exp(s[1].value(free[1])), s[2].value(free[2])}
}

// free fills dst with the free numbers of a section.
func (l Limits) free(dst []float64, s Section) {
	r := l.spans(s.Shape)
	dst[0], dst[1], dst[2] = r[0].free(math.Log(s.Frequency)), r[1].free(math.Log(s.Q)), r[2].free(s.Gain)
}
