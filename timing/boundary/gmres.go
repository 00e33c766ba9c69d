package boundary

import (
	"math"
	"math/cmplx"

	"gonum.org/v1/gonum/blas/cblas128"
	"gonum.org/v1/gonum/cmplxs"
)

// solve solves A x = b for several right sides at once by GMRES (Saad and Schultz, SIAM J.
// Sci. Stat. Comput. 7, 1986, 856), each to a residual of tolerance times its right side. It
// returns the solutions and how many times A was applied; multiply sets each dst to A times src.
func solve(multiply func(dst, src [][]complex128), b [][]complex128, tolerance float64, limit int) ([][]complex128, int) {
	run := make([]*krylov, len(b))
	for i := range b {
		run[i] = newKrylov(b[i], tolerance)
	}
	times := 0
	for ; times < limit; times++ {
		var dst, src [][]complex128
		var who []*krylov
		for _, r := range run {
			if !r.done {
				who = append(who, r)
				src = append(src, r.basis[len(r.basis)-1])
				dst = append(dst, make([]complex128, len(r.b)))
			}
		}
		if len(who) == 0 {
			break
		}
		multiply(dst, src)
		for i, r := range who {
			r.step(dst[i])
		}
	}
	out := make([][]complex128, len(b))
	for i, r := range run {
		out[i] = r.solution()
	}
	return out, times
}

// krylov is one right side's space, its Hessenberg matrix turned upper triangular by rotations.
type krylov struct {
	b         []complex128
	basis     [][]complex128
	column    [][]complex128
	cos       []float64
	sin       []complex128
	rest      []complex128
	tolerance float64
	done      bool
}

func newKrylov(b []complex128, tolerance float64) *krylov {
	size := cmplxs.Norm(b, 2)
	k := &krylov{b: b, tolerance: tolerance * size, rest: []complex128{complex(size, 0)}}
	if size == 0 {
		k.done = true
		return k
	}
	first := append([]complex128(nil), b...)
	cmplxs.Scale(complex(1/size, 0), first)
	k.basis = append(k.basis, first)
	return k
}

// step takes in A times the last vector of the basis.
func (k *krylov) step(next []complex128) {
	n := len(k.basis)
	column := make([]complex128, n+1)
	for range 2 { // twice is enough (Kahan, in Parlett, The Symmetric Eigenvalue Problem, 6-9)
		for i, v := range k.basis {
			h := cblas128.Dotc(vector(v), vector(next))
			column[i] += h
			cmplxs.AddScaled(next, -h, v)
		}
	}
	size := cmplxs.Norm(next, 2)
	column[n] = complex(size, 0)
	for i := range k.cos {
		a, b := column[i], column[i+1]
		column[i] = complex(k.cos[i], 0)*a + k.sin[i]*b
		column[i+1] = -cmplx.Conj(k.sin[i])*a + complex(k.cos[i], 0)*b
	}
	a := column[n-1]
	r := math.Hypot(cmplx.Abs(a), size)
	c, s := 1.0, complex128(0)
	if cmplx.Abs(a) == 0 {
		c, s = 0, 1
	} else {
		c = cmplx.Abs(a) / r
		s = a / complex(cmplx.Abs(a)*r, 0) * complex(size, 0)
	}
	column[n-1] = complex(c, 0)*a + s*complex(size, 0)
	k.cos, k.sin = append(k.cos, c), append(k.sin, s)
	k.rest = append(k.rest, -cmplx.Conj(s)*k.rest[n-1])
	k.rest[n-1] *= complex(c, 0)
	k.column = append(k.column, column[:n])
	if cmplx.Abs(k.rest[n]) <= k.tolerance || size == 0 {
		k.done = true
		return
	}
	cmplxs.Scale(complex(1/size, 0), next)
	k.basis = append(k.basis, next)
}

// solution returns the best of the space.
func (k *krylov) solution() []complex128 {
	x := make([]complex128, len(k.b))
	n := len(k.column)
	y := make([]complex128, n)
	for i := n - 1; i >= 0; i-- {
		y[i] = k.rest[i]
		for j := i + 1; j < n; j++ {
			y[i] -= k.column[j][i] * y[j]
		}
		y[i] /= k.column[i][i]
	}
	for i, v := range y {
		cmplxs.AddScaled(x, v, k.basis[i])
	}
	return x
}

func vector(v []complex128) cblas128.Vector { return cblas128.Vector{N: len(v), Inc: 1, Data: v} }
