package radiate

import (
	"context"
	"math"
	"math/cmplx"
	"slices"
	"sync"

	"pappus/layout"
	"pappus/timing/boundary"
	"pappus/timing/cores"
	"pappus/timing/harmonic"

	"gonum.org/v1/gonum/spatial/r3"
)

// bodyField is the true field of pistons on the body, as far up as it is solved for; from there on
// that of the cap on the ball, the mount moved out. In the last quarter of an octave one goes over
// into the other, linearly with the logarithm of the frequency: pressures are added, so level and phase go over
// without a step.
type bodyField struct {
	medium  *Medium
	table   *boundary.Table
	piston  map[int]int // by the mount's number
	centre  r3.Vec
	share   []float64          // of the ball's field, for each frequency
	between []boundary.Between // of each frequency with a share below 1
	ball    *sphere            // at the frequencies above
	full    *sphere            // at all
	above   []int              // the frequencies that the ball has a share in
	below   []int              // those that the true field has a share in
	scratch sync.Pool          // of *bodyScratch
}

// joins is how far below the end of the true field the ball begins to take over, as a factor: a
// quarter of an octave, which lies above what the design asks for, so that up to there nothing is
// the ball's.
var joins = math.Pow(2, 0.25)

// bodyScratch is one call's room to work.
type bodyScratch struct {
	ball   []complex128 // [mount][frequency above]
	grid   []complex128 // [wavenumber]
	wave   []complex128 // e_m N_nm cos m phi, then sin, times the radial function
	radial []complex128
	angle  []float64
}

// newBody returns the field of an array's body, solved for if it is not at hand.
func newBody(a *layout.Array, m *Medium, tolerance float64) (*bodyField, error) {
	x, index := newSolving(a)
	table, err := x.table(context.Background(), nil)
	if err != nil {
		return nil, err
	}
	b := &bodyField{medium: m, table: table, piston: index, centre: a.Body.BallCentre, share: make([]float64, len(m.Frequency)), between: make([]boundary.Between, len(m.Frequency))}
	for f, k := range m.Wavenumber {
		b.share[f] = ballShare(k, table.Top())
		if b.share[f] < 1 {
			b.below, b.between[f] = append(b.below, f), table.Between(k)
		}
		if b.share[f] > 0 {
			b.above = append(b.above, f)
		}
	}
	field, err := Sphere(m.some(b.above), ConeCap(a), a.Body.BallCentre, tolerance)
	if err != nil {
		return nil, err
	}
	b.ball = field.(*sphere)
	if field, err = Sphere(m, ConeCap(a), a.Body.BallCentre, tolerance); err != nil {
		return nil, err
	}
	b.full = field.(*sphere)
	b.scratch.New = func() any { return &bodyScratch{} }
	return b, nil
}

// ballShare is the ball's part of the field at a wavenumber, where the true field ends at top.
func ballShare(k, top float64) float64 {
	return min(max(1+math.Log(k/top)/math.Log(joins), 0), 1)
}

// nearestReach is the least distance, in reaches of the body, at which the waves are taken.
const nearestReach = 1.02

func (b *bodyField) At(dst []complex128, mounts []layout.Mount, place r3.Vec) {
	b.medium.check(dst, len(mounts))
	n := len(b.share)
	s := b.scratch.Get().(*bodyScratch)
	defer b.scratch.Put(s)
	if len(b.above) > 0 {
		if len(s.ball) < len(mounts)*len(b.above) {
			s.ball = make([]complex128, len(mounts)*len(b.above))
		}
		b.ball.At(s.ball[:len(mounts)*len(b.above)], mounts, place)
	}
	at := r3.Sub(place, b.centre)
	r := r3.Norm(at)
	if least := nearestReach * b.table.Reach; r < least {
		if r == 0 {
			at, r = r3.Vec{Z: 1}, 1
		}
		at, r = r3.Scale(least/r, at), least
	}
	clear(dst)
	if len(b.below) > 0 {
		b.solved(dst, mounts, at, r, s)
	}
	for i, f := range b.above {
		for m := range mounts {
			v := &dst[m*n+f]
			*v += complex(b.share[f], 0) * (s.ball[m*len(b.above)+i] - *v)
		}
	}
}

// solved sets dst to the true field, where it has a share.
func (b *bodyField) solved(dst []complex128, mounts []layout.Mount, at r3.Vec, r float64, s *bodyScratch) {
	steps := len(b.table.Waves)
	if s.grid == nil {
		most := b.table.Degree[steps-1]
		s.angle = make([]float64, boundary.Wide(most))
		s.wave, s.radial = make([]complex128, boundary.Wide(most)), make([]complex128, most+1)
	}
	if len(s.grid) < steps*len(mounts) {
		s.grid = make([]complex128, steps*len(mounts))
	}
	last := -1
	for i, degree := range b.table.Degree {
		if degree != last {
			harmonic.Angles(s.angle[:boundary.Wide(degree)], degree, at)
			last = degree
		}
		b.table.Radial(s.radial[:degree+1], b.table.K(i), r)
		wide := boundary.Wide(degree)
		wave := s.wave[:wide]
		harmonic.TimesRadial(wave, s.angle[:wide], s.radial[:degree+1], degree)
		for m, mount := range mounts {
			s.grid[m*steps+i] = dot(b.table.Waves[i][b.piston[mount.ID]], wave)
		}
	}
	n := len(b.share)
	for f, share := range b.share {
		if share == 1 {
			continue
		}
		// Waves times Radial are r/reach exp(ik(r-reach)) times the pressure.
		out := b.medium.spread(f, r) * cmplx.Rect(b.table.Reach, b.medium.Wavenumber[f]*b.table.Reach)
		for m := range mounts {
			dst[m*n+f] = out * b.between[f].Of(s.grid[m*steps:(m+1)*steps])
		}
	}
}

// dot is the sum of products.
func dot(a []complex64, b []complex128) complex128 {
	var re, im float64
	for i, v := range a {
		x, y := float64(real(v)), float64(imag(v))
		re += x*real(b[i]) - y*imag(b[i])
		im += x*imag(b[i]) + y*real(b[i])
	}
	return complex(re, im)
}

// wholeBody returns the harmonics of the true field of a body's drivers for one feed, where it
// has a share.
func (s *Scene) wholeBody(b *bodyField, body int, feed Feed, frame harmonic.Frame) *whole {
	degree, waves := b.sum(s.Array.Mounts, body, feed)
	turn := harmonic.NewTurn(frame, b.table.Degree[len(b.table.Degree)-1])
	cores.Each(len(waves), func(_, f int) {
		turned := make([]complex128, len(waves[f]))
		turn.Of(turned, waves[f], degree[f])
		waves[f] = turned
	})
	return newWhole(len(s.Medium.Frequency), s.Medium.some(b.below), b.below, harmonic.NewSumOf(degree, waves), func() radialSeries { return newBodyRadial(b, degree) })
}

// sum returns the waves of a body's drivers for one feed at each frequency below, in the body's
// own frame, and their degrees.
func (b *bodyField) sum(mounts []layout.Mount, body int, feed Feed) ([]int, [][]complex128) {
	degree, waves := make([]int, len(b.below)), make([][]complex128, len(b.below))
	from, to := Of(mounts, body)
	cores.Each(len(waves), func(_, below int) {
		f := b.below[below]
		between, most := &b.between[f], 0
		for i := range between.Factor {
			most = max(most, b.table.Degree[between.First+i])
		}
		sum := make([]complex128, boundary.Wide(most))
		degree[below], waves[below] = most, sum
		own := make([]complex128, len(sum)) // of one wavenumber
		for i, factor := range between.Factor {
			at := between.First + i
			d := b.table.Degree[at]
			own = own[:boundary.Wide(d)]
			clear(own)
			for m, mount := range mounts[from:to] {
				w := feed.Weight[feed.Group[from+m]][f] * factor * complex(1-b.share[f], 0)
				if w == 0 {
					continue
				}
				for j, v := range b.table.Waves[at][b.piston[mount.ID]] {
					own[j] += w * complex128(v)
				}
			}
			harmonic.AddWaves(sum, most, own, d)
		}
	})
	return degree, waves
}

// bodyRadial is the waves' functions of the distance, at the frequencies below.
type bodyRadial struct {
	field  *bodyField
	one    []complex128
	re, im [][]float64 // [frequency][n]
}

func newBodyRadial(b *bodyField, degree []int) *bodyRadial {
	x := &bodyRadial{field: b, one: make([]complex128, slices.Max(degree)+1)}
	for _, d := range degree {
		x.re, x.im = append(x.re, make([]float64, d+1)), append(x.im, make([]float64, d+1))
	}
	return x
}

// Move takes them at a distance in m; +Inf is far away.
func (x *bodyRadial) Move(r float64) {
	b := x.field
	for f := range x.re {
		one := x.one[:len(x.re[f])]
		k := b.medium.Wavenumber[b.below[f]]
		b.table.Radial(one, k, r)
		turn := cmplx.Rect(b.table.Reach, k*b.table.Reach)
		for n, v := range one {
			v *= turn
			x.re[f][n], x.im[f][n] = real(v), imag(v)
		}
	}
}

// Terms returns those of a frequency.
func (x *bodyRadial) Terms(f int) (re, im []float64) { return x.re[f], x.im[f] }
