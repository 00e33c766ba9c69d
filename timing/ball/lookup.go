package ball

import "math"

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
		addSizes(abs[s.from:s.to], weight[s.from:s.to], &row)
	}
}

// blend sets row to the remainder times scale for all wavenumbers of the slab,
// from the eight nodes around.
func (s *slab) blend(row *[2 * slabMost]float32, at Distance, gamma, scale float64) {
	width := 2 * (s.to - s.from)
	x := dense * (s.perV*at.horizon + s.perR*at.r - s.first)
	j := min(max(int(x), 0), s.along-2)
	x -= float64(j)
	y := s.acrossIndex(gamma)
	i := min(max(int(y), 0), s.across-4)
	var near, far [4]float32
	for m, w := range cubic(y - float64(i)) {
		w *= scale
		near[m], far[m] = float32(w*(1-x)), float32(w*x)
	}
	first := (j*s.across + i) * width
	second := first + s.across*width
	mix(row[:width], s.rows[first:][:4*width], s.rows[second:][:4*width], &near, &far)
}

// mix sets dst to the sum of four rows of a and four of b by their weights.
func mix(dst, a, b []float32, u, v *[4]float32) {
	n := len(dst)
	a0, a1, a2, a3 := a[:n], a[n:][:n], a[2*n:][:n], a[3*n:][:n]
	b0, b1, b2, b3 := b[:n], b[n:][:n], b[2*n:][:n], b[3*n:][:n]
	u0, u1, u2, u3 := u[0], u[1], u[2], u[3]
	v0, v1, v2, v3 := v[0], v[1], v[2], v[3]
	for i := range dst {
		dst[i] = (a0[i]*u0 + a1[i]*u1) + (a2[i]*u2 + a3[i]*u3) + ((b0[i]*v0 + b1[i]*v1) + (b2[i]*v2 + b3[i]*v3))
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
		// The remainders by slabMost spare the check of bounds.
		re, im := float64(row[(2*f)%(2*slabMost)]), float64(row[(2*f+1)%(2*slabMost)])
		re, im = re*c-im*s, re*s+im*c
		wr, wi := real(weight[f]), imag(weight[f])
		d := &dst[f]
		*d = complex(real(*d)+(re*wr-im*wi), imag(*d)+(re*wi+im*wr))
	}
}

// addSizes adds the sizes of weight times the row.
func addSizes(dst []float64, weight []complex128, row *[2 * slabMost]float32) {
	weight = weight[:len(dst)]
	for f := range dst {
		re, im := float64(row[(2*f)%(2*slabMost)]), float64(row[(2*f+1)%(2*slabMost)])
		wr, wi := real(weight[f]), imag(weight[f])
		dst[f] += math.Sqrt((re*re + im*im) * (wr*wr + wi*wi))
	}
}
