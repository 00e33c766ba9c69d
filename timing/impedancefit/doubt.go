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
	// mostCreep is by how much a suspension is softer a decade lower at most: about a tenth in rubber,
	// hardly in cloth (M. H. Knudsen and J. G. Jensen, Low-Frequency Loudspeaker Models That Include
	// Suspension Creep, J. Audio Eng. Soc. 41 (1993) 3).
	mostCreep = 0.15
	// leaks is one over the Q that a box's leaks have at the resonance of the driver in free air, at
	// most: one that is sealed for measuring has 10 and more, those of loudspeakers 5 to 20 (R. H.
	// Small, Vented-Box Loudspeaker Systems, J. Audio Eng. Soc. 21 (1973) 363).
	leaks = 0.1
	// evenly is half of what 95 percent lie within of what is anything from none to a most.
	evenly = 0.95 / 2
	// creeps is that of creep.
	creeps = evenly * mostCreep
	// bothWays is by how much two such vary together, being above 0 both: twice the square of their
	// mean over their root mean square, 1/2 over 1/sqrt(3).
	bothWays = 2 * 3.0 / 4
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

// leaking returns what a leak of a box changes ln Z by whose air is all of the spring: it is a resistance in
// series with that, whose share of the losses falls as the square of the frequency, so that the
// moving part is Res over 1 + i Qms (f/fs - fs/f) + Qms leaks ((fs/f)^2 - 1) where its values are those
// at the resonance.
func (c circuit) leaking(hz float64, z complex128) complex128 {
	qms, ratio := math.Exp(c.x[logQms]), hz/math.Exp(c.x[logFs])
	tuned := 1 / complex(1, qms*(ratio-1/ratio))
	return -complex(math.Exp(c.x[logRes])*qms*evenly*leaks*(1/(ratio*ratio)-1), 0) * tuned * tuned / z
}

// lessCreep returns the residuals without what creep explains of them, which has an error of its own:
// by least squares with r - J (J'J)^-1 J'r, what is left of creep's r once the values have moved, from
// none to mostCreep.
func (s *search) lessCreep(by weights) []complex128 {
	shown, left := make([]complex128, len(s.points)), make([]complex128, len(s.points))
	var both, one float64
	var slope [most]complex128
	for i, p := range s.points {
		z := s.circuit.at(&slope, p.Frequency)
		shown[i] = s.circuit.creeping(p.Frequency, z)
		for a := range s.circuit.x {
			shown[i] -= slope[a] / z * complex(by[a], 0)
		}
		both -= real(s.off[i] * cmplx.Conj(shown[i])) // off is the circuit's over the measured
		one += real(shown[i] * cmplx.Conj(shown[i]))
	}
	amount := 0.0
	if one > 0 {
		amount = max(0, min(mostCreep/creeps, both/one))
	}
	for i, v := range s.off {
		left[i] = v + complex(amount, 0)*shown[i]
	}
	return left
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
