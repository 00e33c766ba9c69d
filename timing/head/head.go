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

// Head is a head for a slice of wavenumbers. It may be used from several
// goroutines.
type Head struct {
	k       []float64
	moving  bool
	mutex   sync.Mutex
	kept    map[int]*ball.Series // by one over the distance in steps, of a head that moves
	scratch sync.Pool
}

// Source is where a sound comes from, as the head has it.
type Source struct {
	Distance    float64 // m, from the head's centre
	Left, Right float64 // rad, 0 to pi, between the ray to each ear and that to the source
}

// A head that moves has its series at distances that are a step apart in one over the
// distance, in 1/m, and goes straight from one to the next: within 0.01 dB and 0.1 degrees.
const (
	step     = 0.02
	mostKept = 256 // distances

	// Where series end, see ball.NewSeries: exact where only rounding is left.
	exact = 1e-16
	moved = 1e-7
)

// New returns a head for wavenumbers in rad/m, which are not changed after. One that moves
// keeps what it has computed for a distance. The errors are those of package ball.
func New(k []float64, moving bool) (*Head, error) {
	if _, err := ball.NewSeries(ear, k, exact); err != nil {
		return nil, err
	}
	h := &Head{k: k, moving: moving, kept: map[int]*ball.Series{}}
	h.scratch.New = func() any {
		row := make([]complex128, 2*len(k))
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
	value, next := (*held)[:len(h.k)], (*held)[len(h.k):]
	series, further, part := h.at(max(from.Distance, Nearest))
	for _, side := range []struct {
		dst   []complex128
		angle float64
	}{{left, from.Left}, {right, from.Right}} {
		series.At(value, side.angle)
		if further != nil {
			further.At(next, side.angle)
			for f, v := range next {
				value[f] += complex(part, 0) * (v - value[f])
			}
		}
		for f, v := range value {
			side.dst[f] += pressure[f] * v
		}
	}
}

// at returns the ears' series for a distance in m; of a head that moves the two round it, and
// how far on it is from the first to the second.
func (h *Head) at(r float64) (series, next *ball.Series, part float64) {
	if !h.moving {
		return h.series(r, exact), nil, 0
	}
	h.mutex.Lock()
	defer h.mutex.Unlock()
	steps := 1 / r / step
	first := math.Floor(steps)
	return h.keep(int(first)), h.keep(int(first) + 1), steps - first
}

// keep returns the series so many steps from an endless distance.
func (h *Head) keep(steps int) *ball.Series {
	series, known := h.kept[steps]
	if !known {
		if len(h.kept) == mostKept {
			clear(h.kept)
		}
		series = h.series(1/(float64(steps)*step), moved)
		h.kept[steps] = series
	}
	return series
}

// series returns the ears' series at a distance in m to a tolerance.
func (h *Head) series(r, tolerance float64) *ball.Series {
	series, err := ball.NewSeries(ear, h.k, tolerance)
	if err != nil {
		panic(err) // New has tried these wavenumbers
	}
	series.Move(r)
	return series
}
