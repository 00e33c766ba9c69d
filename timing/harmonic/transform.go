package harmonic

import (
	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/integrate/quad"
)

// Transform finds the Legendre series of functions of an angle from their values at its
// nodes, the angles whose cosines are those of a Gauss-Legendre rule. It is made once, and
// serves several goroutines.
type Transform struct {
	degree   int
	cos      []float64
	analysis []float64 // [n][node]: (2n+1)/2 times the weight times P_n
}

// unsound is a number of nodes for which gonum 0.17.0 gives a rule with two weights of 0.
const unsound = 26

// NewTransform serves series up to a degree with so many nodes, more than the degree.
func NewTransform(degree, nodes int) *Transform {
	if nodes == unsound {
		nodes++
	}
	t := &Transform{degree: degree, cos: make([]float64, nodes)}
	weight := make([]float64, nodes)
	quad.Legendre{}.FixedLocations(t.cos, weight, -1, 1)
	t.analysis = make([]float64, (degree+1)*nodes)
	roots, polynomial := newRoots(degree+1), make([]float64, degree+1)
	for j, x := range t.cos {
		roots.legendre(polynomial, 0, x, 1)
		for n, v := range polynomial {
			t.analysis[n*nodes+j] = (float64(n) + 0.5) * weight[j] * v
		}
	}
	return t
}

// Nodes returns the cosines of the angles, which must not be changed.
func (t *Transform) Nodes() []float64 { return t.cos }

// Series sets dst[n][column] to the coefficients of the functions that have values[node][column].
// It is exact for functions whose degree and the transform's together are below twice
// the number of nodes.
func (t *Transform) Series(dst, values []float64, columns int) {
	nodes := len(t.cos)
	blas64.Gemm(blas.NoTrans, blas.NoTrans, 1,
		blas64.General{Rows: t.degree + 1, Cols: nodes, Stride: nodes, Data: t.analysis},
		blas64.General{Rows: nodes, Cols: columns, Stride: columns, Data: values},
		0, blas64.General{Rows: t.degree + 1, Cols: columns, Stride: columns, Data: dst})
}
