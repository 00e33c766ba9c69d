package verdict

import (
	"math"

	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/measure"

	"gonum.org/v1/gonum/spatial/r3"
)

// How far a recording is from where and in what it is said to be made.
const (
	asPlaced = 0.01 // m, one standard error along each axis: a tape measure held by hand (common practice)
	asWarm   = 5.0  // K either way, all within as likely: a room before and after it fills
)

// misplaced returns a plan as it is heard with a microphone that stands asPlaced off, once along each axis,
// and in air that is warmer by one standard error (JCGM 100:2008, 4.3.7); fewer where sound
// cannot reach a place.
func misplaced(p *timing.Plan, at r3.Vec) (out []*timing.Plan) {
	for _, axis := range []r3.Vec{{X: asPlaced}, {Y: asPlaced}, {Z: asPlaced}} {
		if there, err := p.At(r3.Add(at, axis)); err == nil {
			out = append(out, there)
		}
	}
	warm, a := *p, *p.Array
	a.Air.Temperature += asWarm / math.Sqrt(3)
	warm.Array = &a
	if there, err := warm.At(at); err == nil {
		out = append(out, there)
	}
	return out
}

// placed returns by how much each of the plan's channels is off in level, in dB, and in time, in s,
// as one standard error by where the microphone stood and how warm the room was, against the middle channel.
func (f *fit) placed(p *timing.Plan, set Setting) (level, late []float64) {
	n := len(p.Channels)
	level, late = make([]float64, n), make([]float64, n)
	planned := sums(p.StringTransfers(set.Case, f.frequency), len(f.frequency))
	for _, there := range misplaced(p, p.Array.Spot) {
		var levels, times []float64
		for c, h := range sums(there.StringTransfers(set.Case, f.frequency), len(f.frequency)) {
			by, at := measure.Over(f.frequency, h, planned[c])
			levels, times = append(levels, by), append(times, at)
		}
		middle, common := centre(levels), centre(times)
		for c := range n {
			level[c] = math.Hypot(level[c], levels[c]-middle)
			late[c] = math.Hypot(late[c], times[c]-common)
		}
	}
	return level, late
}

// sums returns what the strings of each channel give together at so many frequencies.
func sums(channels [][][]complex128, n int) [][]complex128 {
	out := make([][]complex128, len(channels))
	for c, strings := range channels {
		out[c] = make([]complex128, n)
		for _, one := range strings {
			for f, v := range one {
				out[c][f] += v
			}
		}
	}
	return out
}

// placed returns the variance of each band's difference in dB by where the microphones stood
// and how warm the room was: the bands of the sum that is planned at each position, brought to
// one level as the measurement is, as if it were elsewhere.
func (v *Level) placed(p *timing.Plan, positions []Position, set LevelSetting) []float64 {
	out, n := make([]float64, len(v.Bands)), float64(len(positions))
	for _, position := range positions {
		planned, err := at(p, position.At, set, v.Frequency)
		if err != nil {
			continue
		}
		for _, there := range misplaced(p, position.At) {
			moved, err := at(there, there.Array.Spot, set, v.Frequency)
			if err != nil {
				continue
			}
			for i, off := range v.apart(moved, planned) {
				out[i] += off * off / (n * n)
			}
		}
	}
	return out
}

// apart returns by how much in dB each band of one sum is over that of another, but for what
// those within the band of matching are on the mean.
func (v *Level) apart(sum, other []complex128) []float64 {
	var out, matched []float64
	for _, b := range v.Bands {
		low, high := band.Edges(b.Centre, 3)
		from, to := band.Range(v.Frequency, low, high)
		by, _ := measure.Over(v.Frequency[from:to], sum[from:to], other[from:to])
		out = append(out, by)
		if b.Centre >= v.Low && b.Centre <= v.High {
			matched = append(matched, by)
		}
	}
	mean := 0.0
	for _, by := range matched {
		mean += by / float64(len(matched))
	}
	for i := range out {
		out[i] -= mean
	}
	return out
}
