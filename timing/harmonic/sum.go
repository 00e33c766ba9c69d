package harmonic

import (
	"math"
	"slices"

	"pappus/timing/cores"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/spatial/r3"
)

// Frame is where angles are counted from: three unit vectors square to each other.
// Z is the polar axis, X has azimuth 0.
type Frame struct{ X, Y, Z r3.Vec }

// Round returns a frame whose polar axis is a direction, which must not be zero.
func Round(axis r3.Vec) Frame {
	z := r3.Unit(axis)
	x := r3.Vec{X: 1}
	if math.Abs(z.X) > 0.9 {
		x = r3.Vec{Y: 1}
	}
	x = r3.Unit(r3.Sub(x, r3.Scale(r3.Dot(x, z), z)))
	return Frame{X: x, Y: r3.Cross(z, x), Z: z}
}

// Angles returns the cosine and sine of a direction's angle from the polar axis and
// its azimuth in rad. The direction need not be of unit length; it must not be zero.
func (f Frame) Angles(d r3.Vec) (cos, sin, azimuth float64) {
	x, y, z := r3.Dot(f.X, d), r3.Dot(f.Y, d), r3.Dot(f.Z, d)
	flat := math.Hypot(x, y)
	r := math.Hypot(flat, z)
	return z / r, flat / r, math.Atan2(y, x)
}

// Sum is the sum over directions of weights and N_nm: C_nm and S_nm of the package comment,
// for several sets of weights.
type Sum struct {
	roots *roots
	terms []int // of each set: n from 0 to one less
	most  int   // of all
	plain bool  // all weights are real
	order []order
}

// order is C_nm and S_nm for one m: [set][n-m], rows of one length, the imaginary ones empty
// where all weights are real.
type order struct{ cosRe, cosIm, sinRe, sinIm []float64 }

// setsTogether is how many sets are summed in one product of matrices: as far as the longest
// of them has terms.
const setsTogether = 16

// NewSum returns the sums over directions in a frame: direction d is in group[d], and set s
// gives it weight[s][group[d]], up to terms[s] terms n. All cores are used; the result is the
// same to the bit for any number of them. The cost is the most terms squared times directions
// and times sets times groups. It panics where the lengths differ.
func NewSum(f Frame, direction []r3.Vec, group []int, weight [][]complex128, terms []int) *Sum {
	if len(group) != len(direction) || len(weight) != len(terms) || len(weight) == 0 {
		panic("harmonic: lengths differ")
	}
	s := &Sum{terms: terms, most: slices.Max(terms), plain: true}
	s.roots, s.order = newRoots(s.most), make([]order, s.most)
	groups := len(weight[0])
	re, im := matrix(len(weight), groups), matrix(len(weight), groups)
	for i, row := range weight {
		if len(row) != groups {
			panic("harmonic: lengths differ")
		}
		for g, w := range row {
			re.Data[i*groups+g], im.Data[i*groups+g] = real(w), imag(w)
			s.plain = s.plain && imag(w) == 0
		}
	}
	places := make([]place, len(direction))
	for i, d := range direction {
		places[i].cos, places[i].sin, places[i].azimuth = f.Angles(d)
	}
	scratch := make([]sumScratch, cores.Count())
	cores.Each(s.most, func(worker, m int) {
		k := &scratch[worker]
		k.gather(s.roots, m, s.most, places, group, groups)
		o := &s.order[m]
		o.cosRe, o.sinRe = s.weigh(m, re, k.cos), s.weigh(m, re, k.sin)
		if !s.plain {
			o.cosIm, o.sinIm = s.weigh(m, im, k.cos), s.weigh(m, im, k.sin)
		}
	})
	return s
}

// place is where a direction points.
type place struct{ cos, sin, azimuth float64 }

// sumScratch is one goroutine's room to work.
type sumScratch struct {
	cos, sin blas64.General // [group][n-m]: the sums over each group, of weight 1
	row      []float64
}

// gather sums over the directions of each group for one m.
func (k *sumScratch) gather(r *roots, m, most int, places []place, group []int, groups int) {
	if k.row == nil {
		k.cos, k.sin, k.row = matrix(groups, most), matrix(groups, most), make([]float64, most)
	}
	n := most - m
	k.cos.Cols, k.sin.Cols = n, n
	clear(k.cos.Data)
	clear(k.sin.Data)
	first := sectoral(m)
	for i, p := range places {
		r.legendre(k.row[:n], m, p.cos, first*math.Pow(p.sin, float64(m)))
		sin, cos := math.Sincos(float64(m) * p.azimuth)
		row, at := blas64.Vector{N: n, Inc: 1, Data: k.row}, group[i]*most
		blas64.Axpy(cos, row, blas64.Vector{N: n, Inc: 1, Data: k.cos.Data[at:]})
		blas64.Axpy(sin, row, blas64.Vector{N: n, Inc: 1, Data: k.sin.Data[at:]})
	}
}

// weigh returns the products of weights and the groups' sums, set after set.
func (s *Sum) weigh(m int, weight, sums blas64.General) []float64 {
	dst := matrix(len(s.terms), s.most-m)
	if weight.Cols == 0 {
		return dst.Data
	}
	for from := 0; from < len(s.terms); from += setsTogether {
		to := min(from+setsTogether, len(s.terms))
		some, out := rows(weight, from, to), rows(dst, from, to)
		if out.Cols = slices.Max(s.terms[from:to]) - m; out.Cols > 0 {
			sums.Cols = out.Cols
			blas64.Gemm(blas.NoTrans, blas.NoTrans, 1, some, sums, 0, out)
		}
	}
	return dst.Data
}

// matrix returns a matrix of zeros.
func matrix(rows, columns int) blas64.General {
	return blas64.General{Rows: rows, Cols: columns, Stride: max(columns, 1), Data: make([]float64, rows*columns)}
}

// rows returns some rows of a matrix.
func rows(m blas64.General, from, to int) blas64.General {
	m.Rows, m.Data = to-from, m.Data[from*m.Stride:to*m.Stride]
	return m
}

// Power returns the mean over all directions of the squared size of the sum of a set whose
// coefficients z_n are given by their parts: by orthogonality (DLMF 14.30.8) the sum over
// n of |z_n|^2/(2n+1) times that over m of e_m (C_nm^2 + S_nm^2). Terms of z beyond the
// set's are left out.
func (s *Sum) Power(set int, re, im []float64) float64 {
	total := 0.0
	for m := range min(s.terms[set], len(re)) {
		double := 2.0
		if m == 0 {
			double = 1
		}
		o, n := &s.order[m], s.most-m
		for _, part := range [][]float64{o.cosRe, o.cosIm, o.sinRe, o.sinIm} {
			if part == nil {
				continue
			}
			for i, v := range part[set*n:][:min(s.terms[set], len(re))-m] {
				z := re[m+i]*re[m+i] + im[m+i]*im[m+i]
				total += double * v * v * z / float64(2*(m+i)+1)
			}
		}
	}
	return total
}
