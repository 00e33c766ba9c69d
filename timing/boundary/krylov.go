package boundary

import (
	"pappus/timing/cores"

	"gonum.org/v1/gonum/blas/cblas128"
	"gonum.org/v1/gonum/cmplxs"
)

// turned tells of which vector another is a turned one, by which turn.
type turned struct{ of, turn int }

// krylov solves A x = b for several right sides at once, where A does not change by some turns of
// the unknowns. All right sides, and all that are one of them turned, share one space: it grows by
// the residuals of all of them, and each solution is the one of least residual in it (the method
// of generalised conjugate residuals, Eisenstat, Elman and Schultz, SIAM J. Numer. Anal. 20,
// 1983, 345; with one right side the iterates are those of GMRES, Saad and Schultz, SIAM J. Sci.
// Stat. Comput. 7, 1986, 856). A turned residual's product is the product turned and costs
// nothing. Some forty pistons so take a quarter of the rounds that one by itself does.
type krylov struct {
	multiply func(dst, src [][]complex128) // sets each dst to A times src
	order    [][]int32                     // [turn][unknown]: where each goes
	from     []turned                      // of which right side, by which turn, each vector of a round is

	p, q     [][]complex128 // the residuals of all rounds; A times them made orthonormal
	column   [][]complex128 // A p[j] = sum of column[j][i] q[i]
	residual [][]complex128 // of each right side
	share    [][]complex128 // of each solution: A x = sum of share[i] q[i]
	least    []float64      // the residual at which each is done
	rounds   int
}

func newKrylov(right [][]complex128, from []turned, order [][]int32, tolerance float64) *krylov {
	k := &krylov{order: order, from: from, residual: make([][]complex128, len(right)), share: make([][]complex128, len(right)), least: make([]float64, len(right))}
	for i, b := range right {
		k.residual[i] = append([]complex128(nil), b...)
		k.least[i] = tolerance * cmplxs.Norm(b, 2)
	}
	return k
}

// solve takes at most limit rounds and tells whether all residuals are as small as asked for.
func (k *krylov) solve(limit int) bool {
	for ; k.rounds < limit; k.rounds++ {
		var open []int
		for i, r := range k.residual {
			if cmplxs.Norm(r, 2) > k.least[i] {
				open = append(open, i)
			}
		}
		if len(open) == 0 {
			return true
		}
		before := len(k.q)
		k.widen(open)
		if len(k.q) == before {
			return false
		}
		cores.Each(len(k.residual), func(_, i int) {
			for _, q := range k.q[before:] {
				y := cblas128.Dotc(vector(q), vector(k.residual[i]))
				cmplxs.AddScaled(k.residual[i], -y, q)
				k.share[i] = append(k.share[i], y)
			}
		})
	}
	return false
}

// widen adds the residuals of some right sides to the space, and what they are turned.
func (k *krylov) widen(open []int) {
	src, dst := make([][]complex128, len(open)), make([][]complex128, len(open))
	place := map[int]int{}
	for i, r := range open {
		src[i], dst[i] = append([]complex128(nil), k.residual[r]...), make([]complex128, len(k.residual[r]))
		place[r] = i
	}
	k.multiply(dst, src)
	var some []turned
	for _, f := range k.from {
		if i, ok := place[f.of]; ok {
			some = append(some, turned{i, f.turn})
		}
	}
	p, q, column := make([][]complex128, len(some)), make([][]complex128, len(some)), make([][]complex128, len(some))
	size := make([]float64, len(some))
	cores.Each(len(some), func(_, j int) {
		p[j], q[j] = placed(src[some[j].of], k.order[some[j].turn]), placed(dst[some[j].of], k.order[some[j].turn])
		size[j] = cmplxs.Norm(q[j], 2)
		column[j] = make([]complex128, len(k.q), len(k.q)+len(some))
		for i, v := range k.q {
			column[j][i] = project(q[j], v)
		}
	})
	k.admit(p, q, column, size)
}

// dependent is the part of a vector that is left when it is made orthogonal to the others below
// which it is left out: it brings nothing that they do not have. Of sixteen digits ten are left,
// far more than a tolerance asks for.
const dependent = 1e-6

// admit makes a round's vectors orthogonal to each other and adds them.
func (k *krylov) admit(p, q, column [][]complex128, size []float64) {
	for j := range q {
		left := cmplxs.Norm(q[j], 2)
		if left <= dependent*size[j] {
			continue
		}
		cmplxs.Scale(complex(1/left, 0), q[j])
		k.p, k.q, k.column = append(k.p, p[j]), append(k.q, q[j]), append(k.column, append(column[j], complex(left, 0)))
		later := q[j+1:]
		cores.Each(len(later), func(_, i int) {
			column[j+1+i] = append(column[j+1+i], project(later[i], q[j]))
		})
	}
}

// project takes from v its part along a vector of length one, and returns how much that was.
func project(v, along []complex128) complex128 {
	h := cblas128.Dotc(vector(along), vector(v))
	cmplxs.AddScaled(v, -h, along)
	return h
}

// solution returns the best of the space for a right side: A is upper triangular from p to q.
func (k *krylov) solution(right int) []complex128 {
	x, y := make([]complex128, len(k.residual[right])), append([]complex128(nil), k.share[right]...)
	for j := len(y) - 1; j >= 0; j-- {
		y[j] /= k.column[j][j]
		for i := range j {
			y[i] -= k.column[j][i] * y[j]
		}
		cmplxs.AddScaled(x, y[j], k.p[j])
	}
	return x
}

// placed returns a vector's values where a turn takes them.
func placed(v []complex128, order []int32) []complex128 {
	out := make([]complex128, len(v))
	for i, to := range order {
		out[to] = v[i]
	}
	return out
}

func vector(v []complex128) cblas128.Vector { return cblas128.Vector{N: len(v), Inc: 1, Data: v} }
