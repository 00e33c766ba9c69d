package boundary

import (
	"math/cmplx"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/cmplxs"
	"gonum.org/v1/gonum/mat"
)

// direct solves A x = b as twice as many real equations.
func direct(t *testing.T, a [][]complex128, b []complex128) []complex128 {
	t.Helper()
	n := len(b)
	real2, right := mat.NewDense(2*n, 2*n, nil), mat.NewVecDense(2*n, nil)
	for i := range n {
		for j, v := range a[i] {
			real2.Set(i, j, real(v))
			real2.Set(i, n+j, -imag(v))
			real2.Set(n+i, j, imag(v))
			real2.Set(n+i, n+j, real(v))
		}
		right.SetVec(i, real(b[i]))
		right.SetVec(n+i, imag(b[i]))
	}
	var x mat.VecDense
	if err := x.SolveVec(real2, right); err != nil {
		t.Fatal(err)
	}
	out := make([]complex128, n)
	for i := range out {
		out[i] = complex(x.AtVec(i), x.AtVec(n+i))
	}
	return out
}

// circulant is a matrix that a shift of the unknowns leaves as it is, and what it does to vectors.
func circulant(n int, shifts bool) (a [][]complex128, multiply func(dst, src [][]complex128)) {
	r := rand.New(rand.NewPCG(3, 5))
	first := make([]complex128, n)
	for i := range first {
		first[i] = complex(r.NormFloat64(), r.NormFloat64()) / complex(float64(n), 0)
	}
	first[0] += 0.5
	for i := range n {
		row := make([]complex128, n)
		for j := range row {
			row[j] = first[(j-i+n)%n]
			if !shifts && i != j {
				row[j] = complex(r.NormFloat64(), r.NormFloat64()) / complex(float64(n), 0)
			}
		}
		a = append(a, row)
	}
	return a, func(dst, src [][]complex128) {
		for r := range src {
			for i := range a {
				dst[r][i] = 0
				for j, v := range a[i] {
					dst[r][i] += v * src[r][j]
				}
			}
		}
	}
}

// TestKrylov holds solutions to those of a direct solver: one right side and several, two that
// are the same, one of nothing, and some that are others turned.
func TestKrylov(t *testing.T) {
	const n = 60
	order := make([][]int32, n)
	for g := range order {
		for i := range n {
			order[g] = append(order[g], int32((i+g)%n))
		}
	}
	r := rand.New(rand.NewPCG(1, 2))
	right := make([][]complex128, 4)
	for i := range right {
		right[i] = make([]complex128, n)
		for j := range right[i] {
			right[i][j] = complex(r.NormFloat64(), r.NormFloat64())
		}
	}
	right = append(right, right[0], make([]complex128, n))
	for _, c := range []struct {
		name   string
		shifts bool
		right  [][]complex128
		from   []turned
	}{
		{"one", false, right[:1], []turned{{0, 0}}},
		{"several", false, right[:4], []turned{{0, 0}, {1, 0}, {2, 0}, {3, 0}}},
		{"two the same", false, right[2:5], []turned{{0, 0}, {1, 0}, {2, 0}}},
		{"nothing", false, right[5:], []turned{{0, 0}}},
		{"turned", true, right[:2], []turned{{0, 0}, {0, 7}, {1, 0}, {0, 31}, {1, 59}}},
	} {
		a, multiply := circulant(n, c.shifts)
		k := newKrylov(c.right, c.from, order, 1e-10)
		k.multiply = multiply
		if !k.solve(100) {
			t.Errorf("%s: not solved in %d rounds", c.name, k.rounds)
		}
		for i, b := range c.right {
			want := direct(t, a, b)
			if d := cmplxs.Distance(k.solution(i), want, 2); d > 1e-8*(1+cmplxs.Norm(want, 2)) {
				t.Errorf("%s: right side %d is %g off", c.name, i, d)
			}
		}
	}
}

// TestKrylovGivesUp: where no solution is, it says so.
func TestKrylovGivesUp(t *testing.T) {
	b := [][]complex128{{1, 1}}
	k := newKrylov(b, []turned{{0, 0}}, [][]int32{{0, 1}}, 1e-6)
	k.multiply = func(dst, src [][]complex128) { dst[0][0], dst[0][1] = src[0][0], 0 }
	if k.solve(20) {
		t.Errorf("solved: %v", k.solution(0))
	}
	if r := cmplx.Abs(k.residual[0][1]); r < 0.9 {
		t.Errorf("a residual of %g", r)
	}
}
