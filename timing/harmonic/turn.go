package harmonic

import (
	"slices"
	"sync"

	"pappus/timing/cores"

	lru "github.com/hashicorp/golang-lru/v2"
	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/spatial/r3"
)

// NewSumOf returns a sum whose C_nm and S_nm are given: of each set those up to a degree of its
// own, by Index, first all C, then all S. It panics where the lengths differ.
func NewSumOf(degree []int, given [][]complex128) *Sum {
	if len(degree) != len(given) || len(degree) == 0 {
		panic("harmonic: lengths differ")
	}
	s := &Sum{terms: make([]int, len(degree)), most: slices.Max(degree) + 1}
	s.roots, s.order = newRoots(s.most), make([]order, s.most)
	for set, d := range degree {
		s.terms[set] = d + 1
		if len(given[set]) != 2*Count(d) {
			panic("harmonic: lengths differ")
		}
	}
	for m := range s.order {
		n := s.most - m
		o := &s.order[m]
		o.cosRe, o.cosIm = make([]float64, n*len(degree)), make([]float64, n*len(degree))
		o.sinRe, o.sinIm = make([]float64, n*len(degree)), make([]float64, n*len(degree))
		for set, d := range degree {
			if m > d {
				continue
			}
			from := Index(d, m, m)
			for i := range d + 1 - m {
				c, v := given[set][from+i], given[set][Count(d)+from+i]
				o.cosRe[set*n+i], o.cosIm[set*n+i] = real(c), imag(c)
				o.sinRe[set*n+i], o.sinIm[set*n+i] = real(v), imag(v)
			}
		}
	}
	return s
}

// Turn gives C_nm and S_nm in a frame from those in that of the coordinates: of each degree a
// square matrix, since turning mixes only those of one n.
type Turn struct {
	degree int
	block  [][]float64 // [n][to][from], 2n+1 to a row: C of m = 0 to n, S of m = 1 to n
}

type turnKey struct {
	frame  Frame
	degree int
}

var (
	turnsHeld, _ = lru.New[turnKey, *Turn](32) // maps, polars and pages ask for few frames, again and again
	turnsMade    sync.Mutex
)

// NewTurn returns that for a degree. Its entries are 2n+1 times the means over all directions of
// the products of the functions in the one frame and the other (DLMF 14.30.8), by the rule of
// Sphere, which is exact for them.
func NewTurn(f Frame, degree int) *Turn {
	turnsMade.Lock()
	defer turnsMade.Unlock()
	key := turnKey{f, degree}
	if t, ok := turnsHeld.Get(key); ok {
		return t
	}
	direction, weight := Sphere(degree)
	wide := 2 * Count(degree)
	from, to := make([]float64, wide*len(direction)), make([]float64, wide*len(direction))
	cores.Each(len(direction), func(_, i int) {
		d := direction[i]
		Angles(from[i*wide:(i+1)*wide], degree, d)
		Angles(to[i*wide:(i+1)*wide], degree, r3.Vec{X: r3.Dot(f.X, d), Y: r3.Dot(f.Y, d), Z: r3.Dot(f.Z, d)})
	})
	t := &Turn{degree: degree, block: make([][]float64, degree+1)}
	cores.Each(degree+1, func(_, n int) {
		side, at := 2*n+1, t.places(n, degree)
		a, b := matrix(len(weight), side), matrix(len(weight), side)
		for i, w := range weight {
			for j, p := range at {
				v := w * float64(side) * to[i*wide+p]
				if j > 0 {
					v /= 2 // e_m is in both
				}
				a.Data[i*side+j], b.Data[i*side+j] = from[i*wide+p], v
			}
		}
		block := matrix(side, side)
		blas64.Gemm(blas.Trans, blas.NoTrans, 1, b, a, 0, block)
		t.block[n] = block.Data
	})
	turnsHeld.Add(key, t)
	return t
}

// places returns where C_n0 to C_nn and S_n1 to S_nn are, of a degree.
func (t *Turn) places(n, degree int) []int {
	var out []int
	for m := range n + 1 {
		out = append(out, Index(degree, n, m))
	}
	for m := 1; m <= n; m++ {
		out = append(out, Count(degree)+Index(degree, n, m))
	}
	return out
}

// Of sets dst to what src, of a degree that is not above the turn's, is in the frame.
func (t *Turn) Of(dst, src []complex128, degree int) {
	clear(dst)
	for n := range degree + 1 {
		at, side := t.places(n, degree), 2*n+1
		for row, p := range at {
			var re, im float64
			for column, q := range at {
				f := t.block[n][row*side+column]
				re += f * real(src[q])
				im += f * imag(src[q])
			}
			dst[p] = complex(re, im)
		}
	}
}
