package boundary

import (
	"math"

	"pappus/timing/cores"
	"pappus/timing/harmonic"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/spatial/r3"
)

// Waves returns what the pistons radiate as outgoing waves about the problem's centre: outside
// the sphere of radius reach round it that holds the body,
//
//	p = sum over n, m of h_n(kr)/h_n(k reach) e_m N_nm (C_nm cos m phi + S_nm sin m phi)
//
// (package harmonic has N_nm and e_m). It gives C, by harmonic.Index, then S, of each piston,
// from the pressure on the surface: by Green's theorem with the expansion of exp(-ikR)/(4 pi R)
// (Morse and Ingard, Theoretical Acoustics, 7.2; DLMF 10.60.3)
//
//	C_nm = -ik (2n+1)/(4 pi) h_n(k reach) (integral of p d/dn + sources of) j_n(kr) N_nm cos m phi
func (x *Pressure) Waves(degree int, reach float64) [][]complex128 {
	m, pistons, wide := x.mesh, len(x.piston), 2*harmonic.Count(degree)
	n := m.Len()
	table := make([]float64, n*wide)
	worker := make([]*harmonic.Regular, cores.Count())
	cores.Each(n, func(w, j int) {
		if worker[w] == nil {
			worker[w] = harmonic.NewRegular(degree, x.k)
		}
		worker[w].At(r3.Sub(m.at[j], x.centre))
		worker[w].Slope(table[j*wide:(j+1)*wide], r3.Scale(m.weight[j], m.normal[j]))
	})
	left := make([]float64, 2*pistons*n)
	for i, p := range x.value {
		for j, v := range p {
			left[2*i*n+j], left[(2*i+1)*n+j] = real(v), imag(v)
		}
	}
	sums := make([]float64, 2*pistons*wide)
	blas64.Gemm(blas.NoTrans, blas.NoTrans, 1, blas64.General{Rows: 2 * pistons, Cols: n, Stride: n, Data: left},
		blas64.General{Rows: n, Cols: wide, Stride: wide, Data: table}, 0, blas64.General{Rows: 2 * pistons, Cols: wide, Stride: wide, Data: sums})
	scale := make([]complex128, degree+1)
	harmonic.Outgoing(scale, x.k*reach)
	for i := range scale {
		scale[i] *= complex(0, -x.k*float64(2*i+1)/(4*math.Pi))
	}
	out := make([][]complex128, pistons)
	cores.Each(pistons, func(_, i int) {
		re, im := sums[2*i*wide:(2*i+1)*wide], sums[(2*i+1)*wide:(2*i+2)*wide]
		source := harmonic.NewRegular(degree, x.k)
		x.piston[i].each(func(at r3.Vec, share float64) {
			source.At(r3.Sub(at, x.centre))
			source.Value(re, 4*math.Pi*share)
		})
		row := make([]complex128, wide)
		for order := range degree + 1 {
			for d := order; d <= degree; d++ {
				a := harmonic.Index(degree, d, order)
				b := a + wide/2
				row[a], row[b] = scale[d]*complex(re[a], im[a]), scale[d]*complex(re[b], im[b])
			}
		}
		out[i] = row
	})
	return out
}

// each visits places of a piston's disc and their shares of it: rings at Gauss's radii, even steps.
func (p Piston) each(visit func(at r3.Vec, share float64)) {
	g, f := rule(4), harmonic.Round(p.Axis)
	for i, x := range g.at {
		r := p.Radius * math.Sqrt(x)
		for _, v := range circle(4 * len(g.at)) {
			at := r3.Add(r3.Scale(r*v[1], f.X), r3.Scale(r*v[0], f.Y))
			visit(r3.Add(p.At, at), g.weight[i]/float64(4*len(g.at)))
		}
	}
}
