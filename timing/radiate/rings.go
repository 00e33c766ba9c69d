package radiate

import (
	"cmp"
	"math"
	"slices"

	"pappus/timing/ball"
	"pappus/timing/cores"
	"pappus/timing/harmonic"

	"gonum.org/v1/gonum/spatial/r3"
)

// closeBy is the distance from the ball's centre, in radii, below which drivers are heard
// one by one: the harmonics of the whole array converge slowly there.
const closeBy = 1.25

// seriesTolerance is where the series of a driver's field ends that are summed over
// harmonics: the rest is below this share of the sizes of its terms, which no level
// shows (1e-5 dB).
const seriesTolerance = 1e-5

// Rings are places as one way hears them: those on rings round a polar axis, which are
// summed over harmonics, and those that are heard driver by driver.
type Rings struct {
	way    Way
	frame  harmonic.Frame // the body's
	places []r3.Vec
	Seen   []r3.Vec // the places as the way's body has them, from its ball's centre
	Ring   []Ring   // the nearest first
	Near   []int    // places close by the ball; all of them in models without a ball
}

// Ring is places at one distance from the ball's centre and one angle from the polar axis.
type Ring struct {
	R, cos, sin float64
	Place       []int
	azimuth     []float64
}

// Rings sorts places in m. They are on the fewest rings where the frame's Z is the normal
// of the plane that they are in.
func (s *Scene) Rings(way Way, frame harmonic.Frame, places []r3.Vec) *Rings {
	frame = s.turned(frame, way.Body)
	x := &Rings{way: way, frame: frame, places: places, Seen: s.seen(way, places)}
	type key struct{ r, cos int64 } // in parts of 1e-9 of what is near enough to be one
	index, radius := map[key]int{}, s.Array.Body.BallRadius
	for i, at := range x.Seen {
		r := r3.Norm(at)
		if !s.onRing(r) {
			x.Near = append(x.Near, i)
			continue
		}
		cos, sin, azimuth := frame.Angles(at)
		k := key{int64(math.Round(r / radius * 1e9)), int64(math.Round(cos * 1e9))}
		n, known := index[k]
		if !known {
			n = len(x.Ring)
			index[k] = n
			x.Ring = append(x.Ring, Ring{R: r, cos: cos, sin: sin})
		}
		x.Ring[n].Place, x.Ring[n].azimuth = append(x.Ring[n].Place, i), append(x.Ring[n].azimuth, azimuth)
	}
	slices.SortStableFunc(x.Ring, func(a, b Ring) int { return cmp.Compare(a.R, b.R) })
	return x
}

// turned returns a frame of the room's as a body has it.
func (s *Scene) turned(frame harmonic.Frame, body int) harmonic.Frame {
	p := s.Array.Bodies()[body]
	return harmonic.Frame{X: p.In(frame.X), Y: p.In(frame.Y), Z: p.In(frame.Z)}
}

// seen returns places as a way hears them, from the ball's centre.
func (s *Scene) seen(way Way, places []r3.Vec) []r3.Vec {
	out := make([]r3.Vec, len(places))
	for i, at := range places {
		out[i] = r3.Sub(way.Moved(at), s.Array.Body.BallCentre)
	}
	return out
}

// onRing tells whether a place so far from the ball's centre is summed over harmonics.
func (s *Scene) onRing(r float64) bool {
	switch field := s.Field.(type) {
	case *sphere:
		return r >= closeBy*field.cap.Radius
	case *bodyField:
		return r >= closeBy*max(field.ball.cap.Radius, field.table.Reach)
	}
	return false
}

// EachNear visits the places that are not on rings, as Each does, by the quick field: close
// by a ball an exact series has thousands of terms.
func (s *Scene) EachNear(x *Rings, visit func(worker, place int, pressure []complex128)) {
	near := make([]r3.Vec, len(x.Near))
	for i, place := range x.Near {
		near[i] = x.places[place]
	}
	quickly := *s
	quickly.Field = s.Quick
	quickly.Each([]Way{x.way}, near, func(worker, i int, pressure []complex128) { visit(worker, x.Near[i], pressure) })
}

// AddTo adds to dst, one for each frequency, the sum over mounts of weight and pressure.
func (f Feed) AddTo(dst, pressure []complex128) {
	for m := range f.Group {
		weight := f.Of(m)
		for i, v := range row(pressure, m, len(dst)) {
			dst[i] += weight[i] * v
		}
	}
}

// row returns a row of a table with n columns.
func row[T any](table []T, i, n int) []T { return table[i*n : (i+1)*n] }

// whole is the harmonics of a whole array for one feed (package harmonic).
type whole struct {
	medium *Medium
	n      int   // frequencies of the scene
	at     []int // which of them the medium has
	worker []wholeWorker
}

// wholeWorker is one goroutine's room to work.
type wholeWorker struct {
	series radialSeries
	ring   *harmonic.Ring
	spread []complex128
	one    []complex128
}

// radialSeries is the functions of the distance that harmonics are times, for each frequency:
// those of a distance in m, Move says which.
type radialSeries interface {
	Move(r float64)
	Terms(f int) (re, im []float64)
}

// newWhole returns the harmonics of a body, in a frame of its own, that places from so far from the ball's centre on need.
func (s *Scene) newWhole(body int, feed Feed, frame harmonic.Frame, nearest float64) []*whole {
	if math.IsInf(nearest, 1) {
		return nil // no place needs them
	}
	switch field := s.Field.(type) {
	case *sphere:
		return []*whole{s.wholeBall(field, every(len(s.Medium.Frequency)), body, feed, frame, nearest)}
	case *bodyField:
		var out []*whole
		if len(field.below) > 0 {
			out = append(out, s.wholeBody(field, body, feed, frame))
		}
		if len(field.above) > 0 {
			out = append(out, s.wholeBall(field.ball, field.above, body, feed.shared(field.above, field.share), frame, nearest))
		}
		return out
	}
	return nil
}

// every returns the whole numbers below one.
func every(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}

// wholeBall returns the harmonics of caps on a ball, whose medium has some of the frequencies.
func (s *Scene) wholeBall(ball *sphere, at []int, body int, feed Feed, frame harmonic.Frame, nearest float64) *whole {
	longest := ball.series(seriesTolerance)
	longest.Move(nearest)
	return newWhole(len(s.Medium.Frequency), ball.medium, at, s.harmonics(body, feed, frame, longest), func() radialSeries { return ball.series(seriesTolerance) })
}

// newWhole returns one of a sum, with a series for each goroutine.
func newWhole(n int, m *Medium, at []int, sum *harmonic.Sum, series func() radialSeries) *whole {
	w := &whole{medium: m, n: n, at: at}
	for range cores.Count() {
		w.worker = append(w.worker, wholeWorker{series(), harmonic.NewRing(sum, len(at)), make([]complex128, len(at)), make([]complex128, len(at))})
	}
	return w
}

// shared returns a feed at some of its frequencies, times a share of each.
func (f Feed) shared(at []int, share []float64) Feed {
	out := Feed{f.Group, make([][]complex128, len(f.Weight))}
	for g, row := range f.Weight {
		out.Weight[g] = make([]complex128, len(at))
		for i, f := range at {
			out.Weight[g][i] = row[f] * complex(share[f], 0)
		}
	}
	return out
}

// harmonics returns the sum over a body's mounts of a feed, as far as a series has terms.
func (s *Scene) harmonics(body int, feed Feed, frame harmonic.Frame, series *ball.Series) *harmonic.Sum {
	terms, weight := make([]int, series.Len()), make([][]complex128, series.Len())
	for f := range terms {
		re, _ := series.Terms(f)
		terms[f] = len(re)
		for _, w := range feed.Weight {
			weight[f] = append(weight[f], w[f])
		}
	}
	at, group := s.fromBall(body, feed.Group)
	return harmonic.NewSum(frame, at, group, weight, terms)
}

// add adds what places on rings hear to dst[place][frequency].
func (w *whole) add(dst []complex128, x *Rings) {
	cores.Each(len(x.Ring), func(worker, i int) {
		k, ring := &w.worker[worker], &x.Ring[i]
		k.series.Move(ring.R)
		k.ring.Set(ring.cos, ring.sin, k.series.Terms)
		for f := range k.spread {
			k.spread[f] = w.medium.spread(f, ring.R)
			if x.way.Factor != nil {
				k.spread[f] *= complex(x.way.Factor[w.at[f]], 0)
			}
		}
		for p, place := range ring.Place {
			k.ring.At(k.one, ring.azimuth[p])
			to := row(dst, place, w.n)
			for f, v := range k.one {
				to[w.at[f]] += v * k.spread[f]
			}
		}
	})
}

// fromBall returns where each mount of a body is, seen from its ball's centre, in m, and those
// of some groups that are the mounts' own.
func (s *Scene) fromBall(body int, group []int) ([]r3.Vec, []int) {
	from, to := Of(s.Array.Mounts, body)
	at := make([]r3.Vec, to-from)
	for i, mount := range s.Array.Mounts[from:to] {
		at[i] = r3.Sub(mount.Point, s.Array.Body.BallCentre)
	}
	return at, group[from:to]
}
