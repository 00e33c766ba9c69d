package harmonic

import (
	"math"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/spatial/r3"
)

// gaussLegendre returns the nodes and weights of a rule on -1 to 1 of so many nodes, or one
// more: with 26, gonum 0.17.0 gives a rule with two weights of 0.
func gaussLegendre(nodes int) (x, weight []float64) {
	if nodes == 26 {
		nodes++
	}
	x, weight = make([]float64, nodes), make([]float64, nodes)
	quad.Legendre{}.FixedLocations(x, weight, -1, 1)
	return x, weight
}

// Transform finds the Legendre series of functions of an angle from their values at its
// nodes, the angles whose cosines are those of a Gauss-Legendre rule. It is made once, and
// serves several goroutines.
type Transform struct {
	degree   int
	cos      []float64
	analysis []float64 // [n][node]: (2n+1)/2 times the weight times P_n
}

// NewTransform serves series up to a degree with so many nodes, more than the degree.
func NewTransform(degree, nodes int) *Transform {
	x, weight := gaussLegendre(nodes)
	t := &Transform{degree: degree, cos: x, analysis: make([]float64, (degree+1)*len(x))}
	roots, polynomial := newRoots(degree+1), make([]float64, degree+1)
	for j, x := range x {
		roots.legendre(polynomial, 0, x, 1)
		for n, v := range polynomial {
			t.analysis[n*len(weight)+j] = (float64(n) + 0.5) * weight[j] * v
		}
	}
	return t
}

// Nodes returns the cosines of the angles, which must not be changed.
func (t *Transform) Nodes() []float64 { return t.cos }

// Series sets dst[column][n] to the coefficients of the functions that have
// values[column][node]. It is exact for functions whose degree and the transform's
// together are below twice the number of nodes.
func (t *Transform) Series(dst, values []float64) {
	nodes := len(t.cos)
	columns := len(values) / nodes
	blas64.Gemm(blas.NoTrans, blas.Trans, 1,
		blas64.General{Rows: columns, Cols: nodes, Stride: nodes, Data: values},
		blas64.General{Rows: t.degree + 1, Cols: nodes, Stride: nodes, Data: t.analysis},
		0, blas64.General{Rows: columns, Cols: t.degree + 1, Stride: t.degree + 1, Data: dst})
}

// Sphere returns a quadrature over all directions that is exact for the squared size of
// sums of harmonics up to a degree: Gauss-Legendre along the z axis and even steps round it
// (Abramowitz and Stegun, Handbook of Mathematical Functions, 25.4.29; Rafaely, Fundamentals
// of Spherical Array Processing, chapter 3). The weights add to one.
func Sphere(degree int) (direction []r3.Vec, weight []float64) {
	ring := 2*degree + 1
	z, w := gaussLegendre(degree + 1)
	for i := range z {
		flat := math.Sqrt((1 - z[i]) * (1 + z[i]))
		for j := range ring {
			sin, cos := math.Sincos(2 * math.Pi * float64(j) / float64(ring))
			direction = append(direction, r3.Vec{X: flat * cos, Y: flat * sin, Z: z[i]})
			weight = append(weight, w[i]/2/float64(ring))
		}
	}
	return direction, weight
}
