package verdict

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"path/filepath"
	"strings"

	"pappus/timing/band"
	"pappus/timing/recording"
	"pappus/timing/sweep"

	"gonum.org/v1/gonum/stat"
)

// place is what was recorded at one place with the same on.
type place struct {
	mean   *recording.Measured
	each   []recording.Measured // of which it is the mean
	faults []Fact               // further takes that do not count
}

// repeated analyses a recording, the first of some paths that is there, and further takes of it,
// whose names are followed by _2, _3 and so on: all as their mean (recording.Mean). A further
// take that cannot be used is named, and the others are judged.
func (t Takes) repeated(paths ...string) (place, error) {
	path, take, err := t.take(paths...)
	if err != nil {
		return place{}, err
	}
	var out place
	takes, numbers, names := []recording.Take{take}, []int{1}, []string{path}
	for number := 2; ; number++ {
		end := filepath.Ext(path)
		name, take, err := t.take(sweep.TakeName(strings.TrimSuffix(path, end), number) + end)
		switch {
		case err == nil:
			takes, numbers, names = append(takes, take), append(numbers, number), append(names, name)
			continue
		case isCut(err):
			return place{}, err
		case !errors.Is(err, fs.ErrNotExist):
			out.faults = append(out.faults, Fact{Code: TakeUnusable, Take: number, Err: err})
			continue
		}
		break
	}
	whole, each, errs := mean(takes, t.Sweep, t.Options)
	if errs[0] != nil {
		return place{}, fmt.Errorf("%s: %w", path, errs[0])
	}
	for i, err := range errs {
		if err != nil {
			out.faults = append(out.faults, Fact{Code: TakeUnusable, Take: numbers[i], Err: fmt.Errorf("%s: %w", names[i], err)})
			continue
		}
		out.each = append(out.each, each[i])
	}
	out.mean = &whole
	return out, nil
}

// hear takes up the recordings of a position.
func (h *heard) hear(at Position, gated bool) {
	h.wired = at.Measured.Absolute
	for _, m := range at.Repeats {
		r := m.Whole
		if gated {
			r = m.Gated
		}
		one := make([]float64, len(r.Transfer))
		for f, v := range r.Transfer {
			one[f] = energy(v)
		}
		h.repeats = append(h.repeats, one)
	}
}

// again returns, for each band, the variance in dB of the mean over repeats of one place by
// their scatter (JCGM 100:2008, 4.2), pooled with the bands on both sides and as Student's t has
// it for so few, less what noise alone makes of that, which is known by itself; 0 for no repeats.
// Where the microphone stood a little elsewhere, somebody moved or the air did, shows in that.
func (v *Level) again(all []heard) []float64 {
	out := make([]float64, len(v.Bands))
	for _, h := range all {
		n := float64(len(h.repeats))
		if n <= 1 {
			continue
		}
		levels, noise := v.repeats(h)
		for i := range out {
			sum, count := 0.0, 0.0
			for _, x := range levels[max(0, i-1):min(len(levels), i+2)] {
				if by := stat.Variance(x, nil) / n; !math.IsNaN(by) { // where no repeat tells anything
					sum, count = sum+by, count+1
				}
			}
			if count == 0 {
				continue
			}
			wide := student((n-1)*count) / Expanded
			out[i] += max(0, sum/count*wide*wide-noise[i]) / float64(len(all)*len(all))
		}
	}
	return out
}

// repeats returns the levels in dB of each band's repeats at one position, without a wire less
// the mean of each over the band of matching, and the variance of the mean by noise alone.
func (v *Level) repeats(h heard) (levels [][]float64, noise []float64) {
	own, matched := make([]float64, len(h.repeats)), 0.0
	for _, b := range v.Bands {
		low, high := band.Edges(b.Centre, 3)
		from, to := band.Range(v.Frequency, low, high)
		var of []float64
		for _, one := range h.repeats {
			of = append(of, 10*math.Log10(total(one[from:to], h.repeats, from)))
		}
		if !h.wired && b.Centre >= v.Low && b.Centre <= v.High {
			for i, level := range of {
				own[i] += level
			}
			matched++
		}
		levels, noise = append(levels, of), append(noise, v.byNoise(h, low, high))
	}
	if matched > 0 {
		for _, of := range levels {
			for i := range of {
				of[i] -= own[i] / matched
			}
		}
	}
	return levels, noise
}

// total returns the sum of energies from an index on, of frequencies that all of some know.
func total(energy []float64, of [][]float64, from int) (sum float64) {
	for i, e := range energy {
		known := true
		for _, other := range of {
			known = known && !math.IsNaN(other[from+i])
		}
		if known {
			sum += e
		}
	}
	return sum
}

// byNoise returns the variance of a level in dB from low to high in Hz by noise alone: that of
// an energy e with a noise of n is 2 e n where n is small.
func (v *Level) byNoise(h heard, low, high float64) float64 {
	from, to := band.Range(v.Frequency, low, high)
	measured, variance, count := 0.0, 0.0, 0.0
	for f := from; f < to; f++ {
		if e := h.measured[f]; !math.IsNaN(e) {
			measured, variance, count = measured+e, variance+2*e*h.noise[f], count+1
		}
	}
	alike := max(1, count/max(1, (high-low)*h.length))
	return variance / (measured * measured) * alike * 100 / (math.Ln10 * math.Ln10)
}
