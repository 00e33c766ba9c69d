package band

import "math"

// SmoothGaps is [Smooth] for levels that are not known everywhere: each run of at
// least three finite levels is smoothed by itself, and all else is NaN, so that nothing
// is made up where nothing was measured.
func SmoothGaps(dst, frequency, level []float64, b int) []float64 {
	if dst == nil {
		dst = make([]float64, len(level))
	}
	if len(dst) != len(level) || len(frequency) != len(level) {
		panic("band: lengths differ")
	}
	for from := 0; from < len(level); {
		to := from
		for to < len(level) && !math.IsNaN(level[to]) && !math.IsInf(level[to], 0) {
			to++
		}
		if to-from >= leastRun {
			Smooth(dst[from:to], frequency[from:to], level[from:to], b)
			from = to
			continue
		}
		for to = max(to, from+1); from < to; from++ {
			dst[from] = math.NaN()
		}
	}
	return dst
}

// leastRun is how many levels make a curve.
const leastRun = 3
