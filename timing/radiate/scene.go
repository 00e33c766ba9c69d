package radiate

import (
	"pappus/layout"
	"pappus/timing/cores"

	"gonum.org/v1/gonum/spatial/r3"
)

// Scene is an array in its surroundings, heard at the frequencies of a medium.
type Scene struct {
	Array  *layout.Array
	Medium *Medium
	Field  Field // of the body alone
	Ways   []Way // the body itself first
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
		if way.Factor == nil {
			s.Field.At(one, mounts, way.Moved(place))
			for i, v := range one {
				dst[i] += v
			}
			continue
		}
		s.Quick.At(one, mounts, way.Moved(place))
		for m := range mounts {
			to := row(dst, m, n)
			for f, v := range row(one, m, n) {
				to[f] += complex(way.Factor[f]*real(v), way.Factor[f]*imag(v))
			}
		}
	}
}

// Feed is what the mounts of an array are fed: those of one group alike.
type Feed struct {
	Group  []int          // of each mount
	Weight [][]complex128 // [group][frequency]
}

// Of returns what a mount is fed at each frequency.
func (f Feed) Of(mount int) []complex128 { return f.Weight[f.Group[mount]] }
