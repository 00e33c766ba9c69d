package radiate

import (
	"sort"

	"pappus/layout"
	"pappus/timing/cores"

	"gonum.org/v1/gonum/spatial/r3"
)

// Scene is an array in its surroundings, heard at the frequencies of a medium.
type Scene struct {
	Array  *layout.Array
	Medium *Medium
	Field  Field // of the body alone
	Ways   []Way // those of Ways
	Quick  Field // the same, 140 dB below its largest parts: what walls send back, and a listener who walks
}

// NewScene returns an array as its design has it: by its model, with the surface below it
// or the room round it. The error tells of a model that is none, or of a frequency or body
// that package ball refuses.
func NewScene(a *layout.Array, m *Medium) (*Scene, error) {
	field, err := newField(a, m, exact)
	if err != nil {
		return nil, err
	}
	quickly, err := newField(a, m, quick)
	return &Scene{a, m, field, Ways(a, m), quickly}, err
}

// Direct returns the ways of the bodies themselves.
func (s *Scene) Direct() []Way { return s.Mirrored(0) }

// Echoes returns all others.
func (s *Scene) Echoes() []Way { return s.Ways[len(s.Array.Bodies()):] }

// Mirrored returns the ways of all bodies by one mirror, in the order of Ways; 0 is none.
func (s *Scene) Mirrored(mirror int) []Way { return row(s.Ways, mirror, len(s.Array.Bodies())) }

// Hear sets dst[mount][frequency] to what a place in m hears of each mount by some ways,
// on all cores. The result is the same to the bit for any number of them.
func (s *Scene) Hear(dst []complex128, ways []Way, place r3.Vec) {
	mounts, n, lots := s.Array.Mounts, len(s.Medium.Frequency), cores.Count()
	cores.Each(lots, func(_, lot int) {
		from, to := lot*len(mounts)/lots, (lot+1)*len(mounts)/lots
		s.hear(dst[from*n:to*n], make([]complex128, (to-from)*n), mounts[from:to], ways, place)
	})
}

// Each calls visit with what each place in m hears of each mount by some ways: pressure
// [mount][frequency], which it may change and not keep. Places are visited on all cores,
// by a worker below cores.Count.
func (s *Scene) Each(ways []Way, places []r3.Vec, visit func(worker, place int, pressure []complex128)) {
	n := len(s.Array.Mounts) * len(s.Medium.Frequency)
	sum, one := make([][]complex128, cores.Count()), make([][]complex128, cores.Count())
	cores.Each(len(places), func(worker, i int) {
		if sum[worker] == nil {
			sum[worker], one[worker] = make([]complex128, n), make([]complex128, n)
		}
		s.hear(sum[worker], one[worker], s.Array.Mounts, ways, places[i])
		visit(worker, i, sum[worker])
	})
}

// hear sets dst to what a place hears of mounts by some ways; one is room for as much.
func (s *Scene) hear(dst, one []complex128, mounts []layout.Mount, ways []Way, place r3.Vec) {
	clear(dst)
	n := len(s.Medium.Frequency)
	for _, way := range ways {
		from, to := Of(mounts, way.Body)
		own, heard := mounts[from:to], one[from*n:to*n]
		if way.Factor == nil {
			s.Field.At(heard, own, way.Moved(place))
			for i, v := range heard {
				dst[from*n+i] += v
			}
			continue
		}
		s.Quick.At(heard, own, way.Moved(place))
		for m := range own {
			to := row(dst, from+m, n)
			for f, v := range row(heard, m, n) {
				to[f] += complex(way.Factor[f]*real(v), way.Factor[f]*imag(v))
			}
		}
	}
}

// Of returns which of some mounts, in the order of Array.Mounts, are of a body.
func Of(mounts []layout.Mount, body int) (from, to int) {
	from = sort.Search(len(mounts), func(i int) bool { return mounts[i].Body >= body })
	return from, from + sort.Search(len(mounts)-from, func(i int) bool { return mounts[from+i].Body > body })
}

// Feed is what the mounts of an array are fed: those of one group alike.
type Feed struct {
	Group  []int          // of each mount
	Weight [][]complex128 // [group][frequency]
}

// Of returns what a mount is fed at each frequency.
func (f Feed) Of(mount int) []complex128 { return f.Weight[f.Group[mount]] }
