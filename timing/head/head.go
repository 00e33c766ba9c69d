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

// lead keeps ways that are shorter than that to the head's centre above 0, in m.
const lead = 2 * Radius

// Head is a head for a slice of wavenumbers. It may be used from several
// goroutines.
type Head struct {
	k       []float64
	table   *ball.Table // nil: computed anew each time
	turn    []complex128
	scratch sync.Pool
}

// Source is where a sound comes from, as the head has it.
type Source struct {
	Distance    float64 // m, from the head's centre
	Left, Right float64 // rad, 0 to pi, between the ray to each ear and that to the source
}

// New returns a head for wavenumbers in rad/m, with the whole series for each
// sound. The errors are those of package ball.
func New(k []float64) (*Head, error) {
	if _, err := ball.NewSeries(ear, k, 1); err != nil {
		return nil, err
	}
	return newHead(k), nil
}

// NewTable returns a head that looks up its ears' pressures, for wavenumbers in
// rad/m that do not fall and for distances from near to far in m: within 0.05 dB
// and 1 degree of the series up to ka 60, which is 37 kHz. A source outside the
// range is taken from its end. The errors are those of package ball.
func NewTable(k []float64, near, far float64) (*Head, error) {
	near = max(near, Nearest)
	table, err := ball.NewTable(ear, k, near, max(near, far), nil)
	if err != nil {
		return nil, err
	}
	h := newHead(k)
	h.table = table
	h.turn = make([]complex128, len(k))
	for f, k := range k {
		sin, cos := math.Sincos(k * lead)
		h.turn[f] = complex(cos, sin)
	}
	return h, nil
}

func newHead(k []float64) *Head {
	h := &Head{k: append([]float64(nil), k...)}
	h.scratch.New = func() any {
		row := make([]complex128, 2*len(k))
		return &row
	}
	return h
}

// Add adds to left and right what both ears hear of a sound that would have the
// given pressure, for each wavenumber, at the head's centre with the head away.
// It panics where the lengths differ. A head with a table allocates nothing.
func (h *Head) Add(left, right, pressure []complex128, from Source) {
	if len(left) != len(h.k) || len(right) != len(h.k) || len(pressure) != len(h.k) {
		panic("head: lengths differ")
	}
	held := h.scratch.Get().(*[]complex128)
	defer h.scratch.Put(held)
	work, value := (*held)[:len(h.k)], (*held)[len(h.k):]
	if h.table != nil {
		for f, p := range pressure {
			work[f] = p * h.turn[f]
		}
		h.look(left, work, value, from.Distance, from.Left)
		h.look(right, work, value, from.Distance, from.Right)
		return
	}
	h.sum(left, right, pressure, work, value, from)
}

// sum is Add by the series.
func (h *Head) sum(left, right, pressure, work, value []complex128, from Source) {
	r := max(from.Distance, Nearest)
	series, err := ball.NewSeries(ear, h.k, r)
	if err != nil {
		panic(err) // New has tried these wavenumbers, and this is no nearer than Nearest
	}
	for f, p := range pressure {
		sin, cos := math.Sincos(h.k[f] * r)
		work[f] = p * complex(r*cos, r*sin)
	}
	series.At(value, from.Left)
	for f, w := range work {
		left[f] += w * value[f]
	}
	series.At(value, from.Right)
	for f, w := range work {
		right[f] += w * value[f]
	}
}

// look is Add for one ear by the table. The way that the table turns back by is
// that to the ear less that to the centre, and lead, which is in turned already.
func (h *Head) look(dst, turned, scaled []complex128, r, angle float64) {
	near, far := h.table.Range()
	r = min(max(r, near), far)
	at, _ := h.table.At(r)
	way := ear.Path(r, angle)
	extra := way - r + lead
	scale := complex(extra*r/way, 0)
	for f, v := range turned {
		scaled[f] = v * scale
	}
	h.table.Add(dst, scaled, at, angle, extra)
}
