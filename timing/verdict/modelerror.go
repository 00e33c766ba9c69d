package verdict

import (
	"math"
	"math/cmplx"
	"pappus/timing"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/spatial/r3"
)

// Of what a ball does wrong for a body with faces, once that is taken off which all drivers have
// alike at a frequency, as the fit does. On the five regular solids with a driver on each face, solved for
// at 500 Hz to 4 kHz (TestBodyErrors), the level of a driver is off by 0.22 to 0.37 of what the plan says at most
// (Plan.LevelError), RMS. Most of that goes by the angle between driver and listener, is of one sign all over the band
// and much the same on all of them: a flat face sends more to its front and less aside (bodyLeans). The rest, 0.16 on the
// dodecahedron to 0.28 on the octahedron, is not alike of two drivers, and at two frequencies by 0.79 where they are a
// quarter of an octave apart (0.71 to 0.85), 0.45 at half (0.27 to 0.59), 0.18 at three quarters (-0.04 to 0.41), and by
// nothing on the mean at one; beyond less. On 80 faces, of which the plan says a third as much, it is otherwise: 0.39 of
// that, hardly by the angle (0.06 in front), alike by 0.74 at half an octave and 0.55 at one; channels there are off by
// 0.57 of what is said of them all the same, RMS, and by 0.45 on 32 faces, where drivers lean less than half as much. What
// the plan says of a cut ball or of a field that was solved for is taken as if it were so, too.
const (
	bodyLevel  = 0.2  // of what the plan says, RMS, of that rest
	bodyOctave = 0.36 // octaves within which it is alike, as a standard deviation
	bodyAll    = 0.3  // of what the plan says, RMS, with what goes by the angle, in level and, in rad, in phase
	bodyLate   = 0.27 // of the time that sound takes over the deviation of the faces
)

// bodyLeans is by how much a driver on a face is louder than on the ball, of what the plan says, over the angle in
// degrees between its axis and the way to the listener.
var bodyLeans = []struct{ degrees, of float64 }{{30, 0.28}, {58, 0}, {80, -0.21}, {100, -0.28}, {122, -0.21}, {152, -0.09}}

// modelErrors returns one standard error of the model in each channel's level, in dB, of what all
// blocks of the band have alike, and of the model in time, in s: as was said, or by what the plan says. Of the former
// case lean is nothing; of the latter by how many dB each channel is off over the one in the middle (reference) by
// its drivers' angles.
func (f *fit) modelErrors(p *timing.Plan, set Setting) (level, lean []float64, late float64) {
	n := len(f.channels)
	if set.LevelError != 0 || set.TimeError != 0 {
		return slices.Repeat([]float64{set.LevelError}, n), make([]float64, n), set.TimeError
	}
	said := make([]float64, len(f.frequency))
	for i, hz := range f.frequency {
		if by := p.LevelError(hz); by > 0 { // not where there is no body
			said[i] = by
		}
	}
	drivers := p.DriverTransfers(set.Case, f.frequency)
	for _, o := range f.channels {
		var playing [][]complex128
		var leans []float64
		for i, m := range p.Channels[o.index].Mounts {
			if o.dead < 0 || !slices.Contains(p.Banks[o.index].Strings[o.dead], m) {
				playing, leans = append(playing, drivers[o.index][i]), append(leans, bodyLean(offAxis(p, m)))
			}
		}
		level = append(level, bodyLevel*bodyLevelError(f.frequency, said, playing, blocks(f.low, f.high, 1/o.window.length())))
		lean = append(lean, leaning(said, playing, leans))
	}
	if of := f.reference(); of >= 0 {
		floats.AddConst(-lean[of], lean)
	}
	return level, lean, f.bodyLateError(p, said)
}

// offAxis returns the angle in degrees between a mount's axis and the way from its body's middle to the spot.
func offAxis(p *timing.Plan, mount int) float64 {
	m := p.Array.Mounts[mount]
	to := r3.Unit(p.Array.PlacingOf(m).Into(p.Array.Spot))
	return math.Acos(max(-1, min(1, r3.Dot(to, m.Normal)))) * 180 / math.Pi
}

// bodyLean returns bodyLeans at an angle, straight between those that are there.
func bodyLean(degrees float64) float64 {
	last := bodyLeans[0]
	for _, to := range bodyLeans {
		if degrees < to.degrees {
			if degrees <= last.degrees {
				return last.of
			}
			return last.of + (to.of-last.of)*(degrees-last.degrees)/(to.degrees-last.degrees)
		}
		last = to
	}
	return last.of
}

// leaning returns by how many dB drivers together are off over a band, each of which is by a share of what is said.
func leaning(said []float64, drivers [][]complex128, leans []float64) float64 {
	sum := sums([][][]complex128{drivers}, len(said))[0]
	off, all := 0.0, 0.0
	for i, v := range sum {
		all += energy(v)
		for m, h := range drivers {
			off += leans[m] * said[i] * real(h[i]*cmplx.Conj(v))
		}
	}
	return off / all
}

// bodyLevelError returns one standard error in dB of the level of drivers together, each of which is off by
// so many dB, as one standard error, at frequencies in Hz; with the part of it alone that what is
// off in different blocks has alike, since the jackknife over these blocks (leftOut) tells the rest.
//
// A level over a band is off by the real part of sum a e / sum |P|^2 over drivers and frequencies,
// where P is the drivers' sum, p one of them, a = p conj(P), and e what p is off by. What is off in level by a share
// is off in phase by as many radians: e is a complex number. So the variance is
//
//	sum off off' alike(f, f') Re(a conj(a')) / (sum |P|^2)^2
//
// over drivers, which are off each by itself, and pairs of frequencies (JCGM 100:2008, 5.2.2). Of n
// blocks as strong as each other, off with the variance v and alike by r, the mean has v/n + r v (n-1)/n,
// of which the pairs of different blocks are the latter, and the jackknife tells v/n - r v/n: r v is left,
// which is that of the pairs times n/(n-1).
func bodyLevelError(frequency, off []float64, drivers [][]complex128, edges []float64) float64 {
	sum := sums([][][]complex128{drivers}, len(frequency))[0]
	block, all := make([]int, len(frequency)), 0.0
	for i, v := range sum {
		block[i], _ = slices.BinarySearch(edges[1:len(edges)-1], frequency[i])
		all += energy(v)
	}
	square := 0.0
	for i := range frequency {
		for j := range i {
			if block[i] == block[j] || off[i]*off[j] == 0 {
				continue
			}
			both := 0.0
			for _, h := range drivers {
				both += real(h[i] * cmplx.Conj(sum[i]) * cmplx.Conj(h[j]) * sum[j])
			}
			square += 2 * off[i] * off[j] * bodiesAlike(math.Log2(frequency[i]/frequency[j])) * both
		}
	}
	n := float64(len(edges) - 1)
	return math.Sqrt(max(0, square)*n/(n-1)) / all
}

// bodiesAlike returns how alike what is off at two frequencies is, so many octaves apart.
func bodiesAlike(octaves float64) float64 {
	return math.Exp(-octaves * octaves / (2 * bodyOctave * bodyOctave))
}

// bodyLateError returns one standard error of a channel's time in s: what its level is off by as a phase, or
// more, where a ball stands for faces, since sound starts from beside where the ball has it:
// bodyLate of the time over the faces' deviation. Unlike the level it is no smaller with more drivers.
func (f *fit) bodyLateError(p *timing.Plan, said []float64) (late float64) {
	for i, by := range said {
		late += bodyAll * by * math.Ln10 / 20 / (2 * math.Pi * f.frequency[i]) / float64(len(said))
	}
	if b := p.Array.Body; late > 0 && p.Solved() == nil {
		late = max(late, bodyLate*math.Abs(b.Deviation())*b.BallRadius/p.SpeedOfSound)
	}
	return late
}
