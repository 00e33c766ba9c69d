// Package trial counts what became of made-up cases whose truth is known: how often a
// fault was missed, how often one was seen that was not there, how often an error bar
// held the truth. A table of such counts stands beside the package whose verdicts it is
// about, and screens quote it.
package trial

import "math"

// Count is in how many of made-up cases something happened.
type Count struct{ Cases, Times int }

// Share is in what part of the cases it happened, from 0 to 1; NaN where there were none.
func (c Count) Share() float64 { return float64(c.Times) / float64(c.Cases) }

// ninetyFive is the 97.5th percentile of the normal distribution, between whose negative and itself
// 95 percent lie.
const ninetyFive = 1.959964

// Interval returns Wilson's 95 percent interval of the share, between 0 and 1,
//
//	(p + z2/2n -+ z sqrt(p (1-p)/n + z2/4n2)) / (1 + z2/n)
//
// (E. B. Wilson, J. Am. Stat. Assoc. 22 (1927) 209), which unlike p -+ z sqrt(p (1-p)/n) covers
// what it should near 0 and 1, too (L. D. Brown, T. T. Cai and A. DasGupta, Statistical Science 16
// (2001) 101). Of no cases it is 0 to 1.
func (c Count) Interval() (low, high float64) {
	if c.Cases == 0 {
		return 0, 1
	}
	n, p := float64(c.Cases), c.Share()
	const z2 = ninetyFive * ninetyFive
	middle, half := p+z2/(2*n), ninetyFive*math.Sqrt(p*(1-p)/n+z2/(4*n*n))
	return max(0, (middle-half)/(1+z2/n)), min(1, (middle+half)/(1+z2/n))
}
