package head

import (
	"math"
	"sync"

	"pappus/timing/ball"
)

// Nearest is the least distance of a source from the head's centre, in m; a
// nearer one is taken from there.
const Nearest = 1.05 * Radius

// ear is small enough to be a point: the mean over it differs from the middle by
// about (n half angle)^2/8 of the term n, 1e-9 at n = 100.
var ear = ball.Cap{Radius: Radius, HalfAngle: 1e-6}

// exact ends series where only rounding is left.
const exact = 1e-16

// Head is a head for a slice of wavenumbers. It may be used from several
// goroutines.
type Head struct {
	k       []float64
	moving  bool
	mutex   sync.Mutex
	kept    map[int]*ball.Series // by distance, of a head that moves
	scratch sync.Pool
}

// Source is where a sound comes from, as the head has it.
type Source struct {
	Distance    float64 // m, from the head's centre
	Left, Right float64 // rad, 0 to pi, between the ray to each ear and that to the source
}

// A head that moves hears sources of distances that are no more than step apart in one over
// the distance, in 1/m, as one. What that leaves is largest at high frequencies: the tests
// hold it to 0.05 dB and 1 degree.
const (
	step     = 0.0015
	mostKept = 128 // distances
)

// New returns a head for wavenumbers in rad/m, which are not changed after. One that moves
// keeps what it has computed for a distance. The errors are those of package ball.
func New(k []float64, moving bool) (*Head, error) {
	if _, err := ball.NewSeries(ear, k, exact); err != nil {
		return nil, err
	}
	h := &Head{k: k, moving: moving, kept: map[int]*ball.Series{}}
	h.scratch.New = func() any {
		row := make([]complex128, len(k))
		return &row
	}
	return h, nil
}

// Add adds to left and right what both ears hear of a sound that would have the
// given pressure, for each wavenumber, at the head's centre with the head away.
// It panics where the lengths differ.
func (h *Head) Add(left, right, pressure []complex128, from Source) {
	if len(left) != len(h.k) || len(right) != len(h.k) || len(pressure) != len(h.k) {
		panic("head: lengths differ")
	}
	held := h.scratch.Get().(*[]complex128)
	defer h.scratch.Put(held)
	series := h.at(max(from.Distance, Nearest))
	for _, side := range []struct {
		dst   []complex128
		angle float64
	}{{left, from.Left}, {right, from.Right}} {
		series.At(*held, side.angle)
		for f, v := range *held {
			side.dst[f] += pressure[f] * v
		}
	}
}

// at returns the ears' series for a distance in m.
func (h *Head) at(r float64) *ball.Series {
	if !h.moving {
		return h.series(r)
	}
	h.mutex.Lock()
	defer h.mutex.Unlock()
	key := int(math.Round(1 / r / step))
	series, known := h.kept[key]
	if !known {
		if len(h.kept) == mostKept {
			clear(h.kept)
		}
		series = h.series(1 / (float64(key) * step))
		h.kept[key] = series
	}
	return series
}

// series returns the ears' series at a distance in m.
func (h *Head) series(r float64) *ball.Series {
	series, err := ball.NewSeries(ear, h.k, exact)
	if err != nil {
		panic(err) // New has tried these wavenumbers
	}
	series.Move(r)
	return series
}
