package verdict

import (
	"math"
	"slices"

	"pappus/timing"
)

// tellFaults finds what is wrong with the channels that are not odd.
func (v *Channels) tellFaults(p *timing.Plan, odd []int) {
	up, down := v.polarities()
	half := len(up)+len(down) > 1 && len(up) == len(down)
	var late []int
	var times []float64
	for i, c := range v.Channels {
		strings := p.Banks[i].Strings
		switch {
		case c.Missing || slices.Contains(odd, i):
			continue
		case c.Silent:
			v.fault(Fact{Code: Silent}, i)
			continue
		case c.DeadString >= 0:
			v.fault(Fact{Code: DeadString, String: c.DeadString + 1, Strings: len(strings), Drivers: slices.Sorted(slices.Values(p.Array.IDs(strings[c.DeadString])))}, i)
		case c.Residual > foreign:
			v.fault(Fact{Code: Unlike, Value: c.Residual}, i)
			continue
		case c.Quiet:
			f := v.off(c)
			if f.Code = Quiet; likeString(f.Value, len(strings)) {
				f.Strings = len(strings)
			}
			v.fault(f, i)
		case c.Loud:
			f := v.off(c)
			f.Code = Loud
			v.fault(f, i)
		}
		if c.Reversed && !half {
			v.fault(Fact{Code: Reversed}, i)
		}
		if c.Residual > alike {
			v.fault(Fact{Code: Vague, Value: c.Residual}, i)
		}
		if !v.OtherCase && math.Abs(c.Late) > v.ordinaryTime(c) {
			late, times = append(late, i), append(times, c.Late)
		}
	}
	if half {
		v.fault(Fact{Code: Halves, Others: v.ids(up)}, down...)
	}
	if len(late) > 0 {
		v.fault(Fact{Code: Late, Times: times}, late...)
	}
}

// polarities returns the channels of either polarity.
func (v *Channels) polarities() (up, down []int) {
	for i, c := range v.Channels {
		switch {
		case c.Missing || c.Silent || c.Residual > foreign:
		case c.Reversed:
			down = append(down, i)
		default:
			up = append(up, i)
		}
	}
	return up, down
}

// likeString tells whether a level in dB is what one string less of several would leave.
func likeString(level float64, strings int) bool {
	return strings > 1 && math.Abs(level-20*math.Log10(1-1/float64(strings))) <= likeRest
}
