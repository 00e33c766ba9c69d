package verdict

import (
	"math"
	"math/cmplx"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/recording"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// Expanded is how many standard errors an expanded one has: about 95 percent of results lie
// within it (JCGM 100:2008, GUM, 6.3.3).
const Expanded = 2.0

// Of the errors.
const (
	perOctave    = 2      // blocks of the band, of which each is left out in turn,
	leastBlocks  = 3      // and how many at least
	leastOthers  = 4      // channels whose scatter tells something: of three one that is off is a third of all
	normalMAD    = 1.4826 // standard deviations in a median absolute deviation of normal values
	normalMedian = 1.2533 // of the mean's error a median's has: the root of half of pi
)

// errors fills in how sure each channel's level and time are, beside what all have alike:
//
//   - by the bands: how far level and time move where half an octave of the band is left out, by
//     the jackknife over blocks (H. R. Kuensch, Ann. Statist. 17 (1989) 1217). Noise, a room's
//     echoes and a plan whose shape is not that of the loudspeaker all show in that. A window
//     of T seconds makes values within 1/T of each other one, so no block is narrower; and
//     what a model of a body does wrong is smooth over frequency, so blocks are half an octave
//     wide where the window would tell more apart. On the built-in design, with the shadow of
//     TestNoFault, channel 7 is off by 1.0 dB: blocks of an octave, of which there are four,
//     give it an error of 4.6 dB, of half an octave 1.3, of a quarter 0.7;
//   - by the window's end: what the last quarter of it changes;
//   - by where the microphone stood, and how warm the room was (placed);
//   - by the scatter of repeated recordings, where there are any;
//   - by what the model does wrong in all blocks alike (modelErrors).
//
// The clock has no part of its own: player and microphone are recorded by one, and what is
// left of its drift moves 6 ms by nanoseconds.
func (f *fit) errors(p *timing.Plan, set Setting) {
	placedLevel, placedLate := f.placed(p, set)
	modelLevel, lean, modelLate := f.modelErrors(p, set)
	n := float64(len(f.channels))
	others := math.Sqrt(n / (n - 1)) // a part of what does not fit is taken for what all have alike
	for i, o := range f.channels {
		level, late := f.leftOut(o)
		cutLevel, cutLate := f.cut(o)
		againLevel, againLate := f.repeat(o)
		o.lean = lean[i]
		o.levelError = root(others*level, cutLevel, againLevel, placedLevel[o.index], modelLevel[i])
		o.lateError = root(others*late, cutLate, againLate, placedLate[o.index], modelLate)
	}
}

// withBias returns one standard error with something that a value is off by and that is not taken off it: the
// expanded error is more by all of that (GUM, F.2.4.5).
func withBias(err, bias float64) float64 { return err + math.Abs(bias)/Expanded }

// root returns the root of the sum of squares.
func root(x ...float64) float64 { return floats.Norm(x, 2) }

// leftOut returns the standard errors of level in dB and time in s by the jackknife.
func (f *fit) leftOut(o *channel) (level, late float64) {
	var levels, times []float64
	edges := blocks(f.low, f.high, 1/o.window.length())
	for b, low := range edges[:len(edges)-1] {
		c := o.copy()
		from, to := band.Range(f.frequency, low, edges[b+1])
		for i := from; i < to; i++ {
			c.heard[i] = cmplx.NaN()
		}
		if c.count() == o.count() {
			continue
		}
		f.estimate(c)
		levels, times = append(levels, c.level()), append(times, c.late)
	}
	return jackknife(levels), jackknife(times)
}

// blocks returns the edges in Hz of blocks of a band that are of one width over log
// frequency, near half an octave; of fewer where the lowest would be narrower than some Hz.
func blocks(low, high, narrowest float64) []float64 {
	n := max(leastBlocks, int(math.Round(perOctave*math.Log2(high/low))))
	for n > leastBlocks && low*(math.Pow(high/low, 1/float64(n))-1) < narrowest {
		n--
	}
	edges := make([]float64, n+1)
	for i := range edges {
		edges[i] = low * math.Pow(high/low, float64(i)/float64(n))
	}
	return edges
}

// jackknife returns the standard error of something, of which the values are each without
// one of its parts; half of what 95 percent of results lie within.
func jackknife(x []float64) float64 {
	if len(x) < 2 {
		return math.Inf(1)
	}
	return math.Sqrt(deleted(x)) * student(float64(len(x)-1)) / Expanded
}

// deleted returns the variance of something by values that are each without one part.
func deleted(x []float64) float64 {
	n := float64(len(x))
	return (n - 1) * (n - 1) / n * stat.Variance(x, nil)
}

// student returns within how many standard errors 95 percent of results lie, by so many
// degrees of freedom (JCGM 100:2008, G.3).
func student(freedom float64) float64 {
	return distuv.StudentsT{Sigma: 1, Nu: freedom}.Quantile(0.975)
}

// cut returns by how much level in dB and time in s change where the last part of the window
// is left out.
func (f *fit) cut(o *channel) (level, late float64) {
	c := o.copy()
	c.window, c.strings = o.brief, o.briefly
	c.leave(o.dead)
	c.look(o.measured, f.frequency)
	f.estimate(c)
	return c.level() - o.level(), c.late - o.late
}

// repeat brings a channel that was recorded several times to the mean of its recordings, and
// returns the standard errors of that mean, in dB and s, by their scatter (JCGM 100:2008,
// 4.2), as Student's t has them for so few; 0 for one recording. What one recording cannot
// know is in that: where the microphone stood, and how warm the room was.
func (f *fit) repeat(o *channel) (level, late float64) {
	levels, times := []float64{o.level()}, []float64{o.late}
	for _, m := range o.repeats {
		c := o.copy()
		if !f.timed {
			c.late += m.At - o.measured.At
		}
		c.look(m, f.frequency)
		if f.estimate(c); c.residual <= foreign {
			levels, times = append(levels, c.level()), append(times, c.late)
		}
	}
	if len(levels) < 2 {
		return 0, 0
	}
	middle, level := meanError(levels)
	at, late := meanError(times)
	o.gain *= math.Pow(10, (middle-levels[0])/20)
	if f.timed {
		o.late = at
	}
	return level, late
}

// meanError returns the mean of some values and its standard error; half of what 95 percent
// of means lie within.
func meanError(x []float64) (mean, err float64) {
	n := float64(len(x))
	mean, deviation := stat.MeanStdDev(x, nil)
	return mean, deviation / math.Sqrt(n) * student(n-1) / Expanded
}

// usable returns the recordings of some that can be held beside another: of the same sweep, and
// with a reference if that has one.
func usable(repeats []*recording.Measured, first *recording.Measured) []*recording.Measured {
	return slices.DeleteFunc(slices.Clone(repeats), func(m *recording.Measured) bool {
		return m == nil || !slices.Equal(m.Frequency, first.Frequency) || m.Absolute != first.Absolute
	})
}

// commonErrors are the errors that each channel's level in dB and time in s have beside its own:
// those of the siblings' middle. The error of a median is by the middle one of its values'
// errors, since it goes by those that are in the middle.
func (f *fit) commonErrors() (level, late float64) {
	var levels, times []float64
	for _, o := range f.channels {
		if o.residual <= foreign {
			levels, times = append(levels, o.levelError), append(times, o.lateError)
		}
	}
	by := normalMedian / math.Sqrt(float64(max(1, len(levels))))
	return by * median(levels), by * median(times)
}
