package recording

import (
	"fmt"
	"math"
	"math/cmplx"
	"pappus/timing/sweep"
	"slices"

	"gonum.org/v1/gonum/dsp/fourier"
)

// How markers are found.
const (
	clocks     = 250e-6 // the most that two clocks may differ: crystals of 100 ppm each, and a quarter to spare (data sheets)
	faint      = 0.2    // of the strongest: what may be a marker: 14 dB
	sure       = 6.0    // standard deviations of the noise that both markers must reach: by chance in one of 5 10^8 samples
	leastQuiet = 0.05   // s before the first marker that tell of the background: ten periods of 200 Hz
	single     = 12.0   // that one alone must reach: twice that, as nothing else confirms it
	leastApart = 0.5    // s between two that are markers of another sweep: the shortest that package sweep has
	halfAs     = 0.5    // as loud as the first the second of those must be: 6 dB, twice levelMost
)

// found is where a recording has its markers, in samples.
type found struct {
	first int     // the first marker's beginning
	rate  float64 // Hz, of the recorder by the player's clock
}

// above returns the RMS between the markers over that before the first; 0 where there is
// too little before it.
func (w found) above(x []float64, s sweep.Sweep) float64 {
	quiet := min(w.first, int(s.Lead*w.rate)) * 9 / 10
	if float64(quiet) < leastQuiet*w.rate {
		return 0
	}
	begin := w.first + int((s.Begin()-s.First())*w.rate)
	return rms(x[begin:min(begin+int(s.Length*w.rate), len(x))]) / rms(x[w.first-quiet-quiet/9:w.first-quiet/9])
}

// rms returns the root of the mean square.
func rms(x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += v * v
	}
	return math.Sqrt(sum / float64(max(len(x), 1)))
}

// find looks for the markers of a sweep.
func find(x []float64, rate float64, s sweep.Sweep) (found, error) {
	apart := s.Apart() * rate
	marker := make([]float64, s.MarkerSamples(rate))
	s.FillMarker(marker, rate, 0)
	if need := s.Apart() + s.MarkerSeconds(); float64(len(x)) < need*rate {
		return found{}, fmt.Errorf("%w: it lasts %.1f s, the sweep with its markers %.1f s", errTruncated, float64(len(x))/rate, need)
	}
	like := correlate(x, marker)
	first, score := pair(like, apart, clocks*apart)
	noise := deviation(like)
	if score < sure*noise || score == 0 {
		return found{}, missing(like, apart, clocks*apart, noise, rate)
	}
	where := found{first, clock(x, first, apart, len(marker), rate, s)}
	if off := where.rate/rate - 1; math.Abs(off) > clocks { // a pair is looked for in whole samples, which leave room for more
		return found{}, fmt.Errorf("%w: the markers stand %.0f parts per million %s than those of this sweep, and two clocks differ by %.0f at most: was another sweep played?",
			errNoSweep, 1e6*math.Abs(off), nearer(off), 1e6*clocks)
	}
	return where, nil
}

// nearer says which way markers stand that are off by a share of how far apart they should be.
func nearer(off float64) string {
	if off < 0 {
		return "nearer to each other"
	}
	return "further apart"
}

// correlate returns the size of the correlation of x with a short signal that begins at
// each sample: by blocks, each the length of a few of them.
func correlate(x, short []float64) []float64 {
	n := Length(4 * len(short)) // free: how long blocks are
	step := n - len(short) + 1
	fft := fourier.NewFFT(n)
	block := make([]float64, n)
	copy(block, short)
	filter := fft.Coefficients(nil, block)
	for k, v := range filter {
		filter[k] = complex(real(v), -imag(v)) / complex(float64(n), 0)
	}
	out := make([]float64, len(x))
	spectrum := make([]complex128, len(filter))
	for at := 0; at < len(x); at += step {
		clear(block[copy(block, x[at:]):])
		fft.Coefficients(spectrum, block)
		for k := range spectrum {
			spectrum[k] *= filter[k]
		}
		fft.Sequence(block, spectrum)
		for i, v := range block[:min(step, len(x)-at)] {
			out[at+i] = math.Abs(v)
		}
	}
	return out
}

// pair returns where two peaks stand apart as markers do, give or take, and how high
// the lower one is.
func pair(like []float64, apart, slack float64) (first int, score float64) {
	low, high := int(math.Floor(apart-slack)), int(math.Ceil(apart+slack))
	least := faint * slices.Max(like)
	for i := 0; i+high < len(like); i++ {
		if like[i] < least || like[i] <= score || (i > 0 && like[i-1] > like[i]) || like[i+1] > like[i] {
			continue
		}
		if both := min(like[i], slices.Max(like[i+low:i+high+1])); both > score {
			first, score = i, both
		}
	}
	return first, score
}

// deviation returns the standard deviation of what is mostly noise, by the median of
// its size.
func deviation(size []float64) float64 {
	some := make([]float64, 0, len(size)/8+1) // free: room for them
	for i := 0; i < len(size); i += 8 {       // free: one in eight is enough of them
		some = append(some, size[i])
	}
	slices.Sort(some)
	return some[len(some)/2] / 0.6745
}

// missing says what is wrong where there are no two markers.
func missing(like []float64, apart, slack, noise, rate float64) error {
	top := 0
	for i, v := range like {
		if v > like[top] {
			top = i
		}
	}
	after := float64(top)+apart+slack >= float64(len(like))
	before := float64(top)-apart-slack < 0
	if like[top] > single*noise && after && before {
		return fmt.Errorf("%w: one marker is there, at %.1f s, the other is not: record from before the first to after the last",
			errTruncated, float64(top)/rate)
	}
	words := "is it the right file, and loud enough?"
	if heard := spacing(like, top, noise, rate); heard > 0 {
		words = fmt.Sprintf("what is most like them stands %.3f s apart, %.4f times that: was another sweep played, or is the file's sample rate wrong?", heard, heard*rate/apart)
	}
	return fmt.Errorf("%w: no two markers %.2f s apart are heard above the rest: %s", errNoSweep, apart/rate, words)
}

// spacing returns how far apart in s the two sounds stand that are most like a marker; 0 where
// there is no second one.
func spacing(like []float64, top int, noise, rate float64) float64 {
	second := -1
	for i, v := range like {
		if math.Abs(float64(i-top)) > leastApart*rate && (second < 0 || v > like[second]) {
			second = i
		}
	}
	if second < 0 || like[second] < max(single*noise, halfAs*like[top]) {
		return 0
	}
	return math.Abs(float64(second-top)) / rate
}

// clock returns the recorder's rate by the player's clock: from the time between the
// markers, of which the first begins at a sample. Whatever the sound went through,
// echoes too, is the same in both.
func clock(x []float64, first int, apart float64, width int, rate float64, s sweep.Sweep) float64 {
	slack := int(math.Ceil(clocks*apart)) + 1
	lead, n := width/4, Length(2*width+4*slack) // free: 3/2 width and 2 slack would do
	second := first + int(math.Round(apart))
	a := Spectrum(excerpt(x, first-lead, width+2*lead), n)
	b := Spectrum(excerpt(x, second-lead, width+2*lead), n)
	low, high := s.MarkerBand()
	from, to := int(low/rate*float64(n)), min(int(high/rate*float64(n))+1, len(a)-1)
	for k := range a {
		if k < from || k > to {
			b[k] = 0
		}
		b[k] *= cmplx.Conj(a[k])
	}
	best, top := 0, math.Inf(-1)
	for lag, v := range fourier.NewFFT(n).Sequence(nil, b) {
		if lag > n/2 { // free: those that count are within slack of 0
			lag -= n
		}
		if v > top && lag >= -slack && lag <= slack {
			best, top = lag, v
		}
	}
	delay := refine(b[from:to+1], from, n, float64(best))
	return rate * (float64(second-first) + delay) / apart
}

// excerpt returns width samples of x from one on, faded at both ends; zeros beyond x.
func excerpt(x []float64, from, width int) []float64 {
	out := make([]float64, width)
	edge := width / 8 // free: both markers are faded alike
	for i := range width {
		at := from + i
		if at < 0 || at >= len(x) {
			continue
		}
		out[i] = x[at]
		if near := min(i, width-1-i); near < edge {
			out[i] *= (1 - math.Cos(math.Pi*float64(near)/float64(edge))) / 2
		}
	}
	return out
}

// refine returns the lag in samples, near a start, at which a cross spectrum, given from
// bin from of a transform of n on, correlates most: by Newton's steps.
func refine(cross []complex128, from, n int, lag float64) float64 {
	for range 20 { // free: each step doubles the digits, and four or five do
		var slope, bend float64
		for i, c := range cross {
			w := 2 * math.Pi * float64(from+i) / float64(n)
			turned := c * cmplx.Rect(1, w*lag)
			slope -= w * imag(turned)
			bend -= w * w * real(turned)
		}
		if !(bend < 0) {
			break
		}
		step := slope / bend
		lag -= max(-0.5, min(0.5, step)) // free: half of a sample, where it began
		if math.Abs(step) < 1e-9 {       // free: a billionth of a sample
			break
		}
	}
	return lag
}
