package impedancefit

import (
	"math"
	"math/cmplx"

	"gonum.org/v1/gonum/mat"
)

// What leaves values open but noise: one sigma of each, as a factor less 1.
const (
	// offScale is of all ohms: a resistor of 1 percent, even over its tolerance, is off by
	// 1/sqrt 3 of that; meters for parts promise half a percent or so.
	offScale = 0.006
	// offGain is of one input's gain against the other's, where no recording evens them out:
	// resistors of 1 percent that set both.
	offGain = 0.005
	// warms is by how much more a coil has at the end of a measurement: copper has 0.39 percent more
	// for each kelvin.
	warms = 0.005
	// creeps is by how much a suspension is softer a decade lower: about a tenth in rubber, hardly
	// in cloth (M. H. Knudsen and J. G. Jensen, Low-Frequency Loudspeaker Models That Include
	// Suspension Creep, J. Audio Eng. Soc. 41 (1993) 3).
	creeps = 0.05
)

// What these move, by their places.
const (
	byScale = iota
	byWarmth
	byCreep
	byGain
	doubts
)

// doubted returns by how much each of these moves the values of a circuit: (J'J)^-1 J'r, with r
// what it changes ln Z by. series is the resistor in ohm of a recording whose inputs nothing
// evens out, 0 for others.
func (s *search) doubted(chol *mat.Cholesky, series float64) (out [doubts]weights) {
	first, last := s.points[0].Frequency, s.points[len(s.points)-1].Frequency
	warm := complex(warms*math.Exp(s.circuit.x[logRe])/math.Log(last/first), 0)
	out[byScale] = s.moved(chol, func(float64, complex128) complex128 { return offScale })
	out[byWarmth] = s.moved(chol, func(hz float64, z complex128) complex128 { return warm * complex(math.Log(hz/first), 0) / z })
	out[byCreep] = s.moved(chol, s.circuit.creeping)
	if series > 0 {
		// Z = R H/(1-H), so that d ln Z/d ln H = 1/(1-H) = 1 + Z/R.
		out[byGain] = s.moved(chol, func(_ float64, z complex128) complex128 { return offGain * (1 + z/complex(series, 0)) })
	}
	return out
}

// creeping returns what creep changes ln Z by. With the compliance C (1 - creep log10(i f/fs)) the
// moving part is Res over
//
//	1 + i Qms (f/fs - fs/f) - i Qms fs/f creep log10(f/fs) + Qms creep pi/(2 ln 10) (fs/f - 1)
//
// where its values are those at the resonance.
func (c circuit) creeping(hz float64, z complex128) complex128 {
	qms, ratio := math.Exp(c.x[logQms]), hz/math.Exp(c.x[logFs])
	tuned := 1 / complex(1, qms*(ratio-1/ratio))
	by := complex(math.Pi/2/math.Ln10*(1/ratio-1), -math.Log10(ratio)/ratio)
	return -complex(math.Exp(c.x[logRes])*qms*creeps, 0) * tuned * tuned * by / z
}

// moved returns by how much the values move where ln Z is off by so much at each frequency in Hz,
// with its impedance in ohm.
func (s *search) moved(chol *mat.Cholesky, off func(hz float64, z complex128) complex128) weights {
	k := len(s.circuit.x)
	sum := mat.NewVecDense(k, nil)
	var slope [most]complex128
	for _, p := range s.points {
		z := s.circuit.at(&slope, p.Frequency)
		r := off(p.Frequency, z)
		for a := range k {
			sum.SetVec(a, sum.AtVec(a)+real(slope[a]/z*cmplx.Conj(r)))
		}
	}
	var out weights
	if err := chol.SolveVecTo(sum, sum); err != nil {
		panic(err) // it has been inverted
	}
	copy(out[:], sum.RawVector().Data)
	return out
}
