package ball

import (
	"math"

	gonum "gonum.org/v1/gonum/blas/gonum"
)

// Len is the number of wavenumbers.
func (t *Table) Len() int { return t.n }

// Range returns the distances that the table serves, m.
func (t *Table) Range() (rMin, rMax float64) { return t.rMin, t.rMax }

// Bytes is the size of the table in memory.
func (t *Table) Bytes() int {
	n := 0
	for i := range t.slabs {
		n += 4*len(t.slabs[i].rows) + 8*len(t.slabs[i].arcs)
	}
	return n
}

// Distance is a point's distance made ready for a table of the same radius; it
// is the same for all caps on the ball.
type Distance struct {
	r, horizon float64 // m; acos(a/r)
}

// At makes the distance r, m, ready. It reports whether r is in the table's
// range.
func (t *Table) At(r float64) (Distance, bool) {
	if !(r >= t.rMin && r <= t.rMax) {
		return Distance{}, false
	}
	return Distance{r, math.Acos(t.cap.Radius / r)}, true
}

// Add adds the cap's field at a point, for every wavenumber f of the table:
//
//	dst[f] += weight[f] * R(r, gamma, f) * exp(-ik path)/path
//
// in 1/m, with gamma in 0..pi the angle between the cap's axis and the point,
// and path, m, the caller's own way from the cap to the point, above 0: with
// [Cap.Path] the sum is of H itself; with the path from a mount that is not
// exactly on the ball, of its approximation by the ball's remainder. at must
// come from the table's At. Lengths of dst and weight must be Len, else Add
// panics. It allocates nothing.
func (t *Table) Add(dst, weight []complex128, at Distance, gamma, path float64) {
	if len(dst) != t.n || len(weight) != t.n {
		panic("ball: length of dst or weight is not the number of wavenumbers")
	}
	var row [2 * slabMost]float32
	for i := range t.slabs {
		s := &t.slabs[i]
		s.blend(&row, at, gamma, 1/path)
		addRow(dst[s.from:s.to], weight[s.from:s.to], s.arcs, &row, path)
	}
}

// AddAbs is Add that also adds the sizes of what it adds to abs, for the summing
// loss.
func (t *Table) AddAbs(dst []complex128, abs []float64, weight []complex128, at Distance, gamma, path float64) {
	if len(dst) != t.n || len(weight) != t.n || len(abs) != t.n {
		panic("ball: length of dst, abs or weight is not the number of wavenumbers")
	}
	var row [2 * slabMost]float32
	for i := range t.slabs {
		s := &t.slabs[i]
		s.blend(&row, at, gamma, 1/path)
		addRow(dst[s.from:s.to], weight[s.from:s.to], s.arcs, &row, path)
		addAbsRow(abs[s.from:s.to], weight[s.from:s.to], &row)
	}
}

// blend sets row to the remainder times scale for all wavenumbers of the slab:
// the sixteen nodes around, each times its weight.
func (s *slab) blend(row *[2 * slabMost]float32, at Distance, gamma, scale float64) {
	width := 2 * (s.to - s.from)
	x := dense * (s.perV*at.horizon + s.perR*at.r - s.first)
	j := min(max(int(x), 0), s.along-2)
	f := x - float64(j)
	along := [2]float64{(1 - f), f}
	y := s.acrossIndex(gamma)
	i := min(max(int(y), 0), s.across-4)
	across := cubic(y - float64(i))
	var kernel gonum.Implementation
	dst := row[:width]
	clear(dst)
	for jj, w := range along {
		w *= scale
		nodes := s.rows[((j+jj)*s.across+i)*width:][:4*width]
		kernel.Saxpy(width, float32(w*across[0]), nodes[:width], 1, dst, 1)
		kernel.Saxpy(width, float32(w*across[1]), nodes[width:2*width], 1, dst, 1)
		kernel.Saxpy(width, float32(w*across[2]), nodes[2*width:3*width], 1, dst, 1)
		kernel.Saxpy(width, float32(w*across[3]), nodes[3*width:], 1, dst, 1)
	}
}

// addRow adds weight times the row turned back by the path.
func addRow(dst, weight []complex128, arcs []float64, row *[2 * slabMost]float32, path float64) {
	if len(dst) > slabMost {
		panic("ball: slab too wide")
	}
	weight, arcs = weight[:len(dst)], arcs[:len(dst)]
	for f := range dst {
		c, s := turn(arcs[f] * path)
		re, im := float64(row[2*f]), float64(row[2*f+1])
		re, im = re*c-im*s, re*s+im*c
		wr, wi := real(weight[f]), imag(weight[f])
		dst[f] += complex(re*wr-im*wi, re*wi+im*wr)
	}
}

func addAbsRow(abs []float64, weight []complex128, row *[2 * slabMost]float32) {
	if len(abs) > slabMost {
		panic("ball: slab too wide")
	}
	weight = weight[:len(abs)]
	for f := range abs {
		re, im := float64(row[2*f]), float64(row[2*f+1])
		wr, wi := real(weight[f]), imag(weight[f])
		abs[f] += math.Sqrt((re*re + im*im) * (wr*wr + wi*wi))
	}
}
