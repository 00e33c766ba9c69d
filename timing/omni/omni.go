// Package omni judges how evenly a source radiates: over all directions by the spatial
// standard deviation (Spatial), and in one plane by the tolerance that ISO 3382-1:2009 (clause
// 4.2.1, table 1, annex A) sets for omnidirectional sources in room acoustics: in octave bands
// of pink noise in free field, the energy mean over any arc of 30 degrees, gliding round the
// source, against that over the full circle:
//
//	125, 250, 500 Hz  +-1 dB
//	1 kHz             +-3 dB
//	2 kHz             +-5 dB
//	4 kHz             +-6 dB
//
// Clause, table and limits are quoted from memory.
package omni

import (
	"math"
	"sort"
)

// arc is the width of the gliding mean, rad.
const arc = math.Pi / 6

// limit is the tolerance in dB at octaves from 1 kHz, -3 for 125 Hz to 2 for
// 4 kHz.
var limit = map[int]float64{-3: 1, -2: 1, -1: 1, 0: 3, 1: 5, 2: 6}

// Result is the judgement of one octave band.
type Result struct {
	Band      float64 // centre as it was given, Hz
	Deviation float64 // dB, of the arc that is furthest from the circle's mean
	Limit     float64 // dB, either way
	Pass      bool
}

// Limit returns the tolerance in dB, either way, of an octave band by its nominal
// or exact centre in Hz, and whether the standard has one.
func Limit(centre float64) (float64, bool) {
	octave := math.Log10(centre/1000) / 0.3
	nearest := math.Round(octave)
	if !(math.Abs(octave-nearest) < 0.05) {
		return 0, false
	}
	l, ok := limit[int(nearest)]
	return l, ok
}

// Check judges octave bands with centres band, in Hz. angle holds the places of
// one circle in rad, rising by less than a full turn from the first to the last;
// level[b][i] is the level in dB of band b at angle i. Bands without a limit in
// the standard are left out. The levels must be of free field, the room and any
// surface taken away, and the circle large against the source (the standard
// measures at 1.5 m or more, quoted from memory).
//
// Energy is taken to run straight between neighbouring angles, across the end of
// the circle too; for that line, means and extremes are exact. Angles 5 degrees
// apart or less do for the limits of the standard (common practice). A band with
// a level that is NaN has a deviation of NaN and does not pass; nor does silence.
//
// Check panics where the lengths differ, where there are fewer than three angles
// and where they do not rise or go round more than once.
func Check(band, angle []float64, level [][]float64) []Result {
	if len(band) != len(level) {
		panic("omni: lengths differ")
	}
	c := newCircle(angle)
	var results []Result
	for b, centre := range band {
		l, ok := Limit(centre)
		if len(level[b]) != len(angle) {
			panic("omni: lengths differ")
		}
		if !ok {
			continue
		}
		d := c.deviation(level[b])
		results = append(results, Result{Band: centre, Deviation: d, Limit: l, Pass: math.Abs(d) <= l})
	}
	return results
}

// Deviation returns by how many dB the energy of the arc that is furthest from the mean of a
// circle is off it, of levels in dB at angles as for Check, which panics alike.
func Deviation(angle, level []float64) float64 {
	if len(angle) != len(level) {
		panic("omni: lengths differ")
	}
	return newCircle(angle).deviation(level)
}

// circle is a closed line of energy over angle.
type circle struct {
	angle  []float64 // rad, the last a turn after the first
	energy []float64
	sum    []float64 // integral of energy from the first angle on
	stops  []float64 // where an arc begins when either of its ends meets an angle
}

func newCircle(angle []float64) *circle {
	n := len(angle)
	if n < 3 {
		panic("omni: fewer than three angles")
	}
	c := &circle{angle: append(append([]float64(nil), angle...), angle[0]+2*math.Pi)}
	for i, a := range angle {
		if !(c.angle[i+1] > a) {
			panic("omni: angles do not rise round one circle")
		}
		c.stops = append(c.stops, a, c.wrap(a-arc))
	}
	sort.Float64s(c.stops)
	c.stops = append(c.stops, c.stops[0]+2*math.Pi)
	c.energy, c.sum = make([]float64, n+1), make([]float64, n+1)
	return c
}

// wrap brings an angle of up to a turn out into the circle.
func (c *circle) wrap(a float64) float64 {
	switch {
	case a < c.angle[0]:
		return a + 2*math.Pi
	case a >= c.angle[0]+2*math.Pi:
		return a - 2*math.Pi
	}
	return a
}

// deviation returns the level in dB, against the whole circle's, of the arc
// that is furthest from it.
func (c *circle) deviation(level []float64) float64 {
	top := math.Inf(-1)
	for _, l := range level {
		if math.IsNaN(l) {
			return math.NaN()
		}
		top = max(top, l)
	}
	for i := range c.energy {
		c.energy[i] = math.Pow(10, (level[i%len(level)]-top)/10)
		if i > 0 {
			c.sum[i] = c.sum[i-1] + (c.angle[i]-c.angle[i-1])*(c.energy[i]+c.energy[i-1])/2
		}
	}
	low, high := c.extremes()
	whole := c.sum[len(level)] / (2 * math.Pi)
	under, over := 10*math.Log10(low/arc/whole), 10*math.Log10(high/arc/whole)
	if -under > over {
		return under
	}
	return over
}

// extremes returns the least and the greatest energy of any arc. Between two
// stops both ends of the arc run along straight lines, so that its energy is a
// parabola, whose slope is the energy at its end less that at its beginning.
func (c *circle) extremes() (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for i, from := range c.stops[:len(c.stops)-1] {
		begin, first := c.at(from)
		end, last := c.at(from + arc)
		energy := end - begin
		if energy < 0 {
			energy += c.sum[len(c.sum)-1]
		}
		low, high = min(low, energy), max(high, energy)

		// The slope at the next stop, by straight lines through the middle: an
		// angle at the stop itself may belong to either side.
		step := c.stops[i+1] - from
		_, midFirst := c.at(from + step/2)
		_, midLast := c.at(from + step/2 + arc)
		slope, mid := last-first, midLast-midFirst
		if next := 2*mid - slope; slope*next < 0 {
			vertex := energy + step*slope*slope/(slope-next)/2
			low, high = min(low, vertex), max(high, vertex)
		}
	}
	return max(low, 0), high
}

// at returns the energy from the first angle to a, and the energy at a.
func (c *circle) at(a float64) (sum, energy float64) {
	a = c.wrap(a)
	i := sort.SearchFloat64s(c.angle, a)
	if i == 0 {
		return 0, c.energy[0]
	}
	i = min(i, len(c.angle)-1)
	share := (a - c.angle[i-1]) / (c.angle[i] - c.angle[i-1])
	energy = c.energy[i-1] + share*(c.energy[i]-c.energy[i-1])
	return c.sum[i-1] + (a-c.angle[i-1])*(c.energy[i-1]+energy)/2, energy
}
