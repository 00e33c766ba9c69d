package impedancefit

import (
	"math"
	"math/cmplx"
)

// Coil is how the inductance of the voice coil is taken.
type Coil int8

// The coils there are, in the order of their number of values.
const (
	Ideal   Coil = iota // an inductance
	Semi                // an inductance and a semi-inductance in series
	Shunted             // an inductance, in series with one that has a resistance across it
	Power               // a power of the frequency, in place of an inductance
)

// coils are those that a fit is tried with.
var coils = []Coil{Ideal, Semi, Shunted, Power}

// String names the coil.
func (c Coil) String() string {
	return [...]string{"ideal inductance", "semi-inductance", "shunted inductance", "power-law inductance"}[c]
}

// Places of values in a vector. The first four are logarithms, and so are those of
// the shunt and of the power law's magnitude; Le and K are over a scale, and may fall
// below 0 by noise.
const (
	logRe = iota
	logRes
	logFs
	logQms
	overLe
	overK
	most = 7 // free: room for those of any coil

	logL2, logR2       = 5, 6
	logPower, exponent = 4, 5
)

// count returns how many values a circuit with this coil has.
func (c Coil) count() int { return [...]int{Ideal: 5, Semi: 6, Shunted: 7, Power: 6}[c] }

// circuit is a driver's circuit with its values.
type circuit struct {
	coil         Coil
	x            []float64
	henry, scale float64 // what Le and K are counted in
	omega        float64 // rad/s, where the power law has its magnitude
}

// at fills slope with the derivatives of the impedance by the circuit's values, at a
// frequency in Hz, and returns the impedance in ohm.
func (c circuit) at(slope *[most]complex128, hz float64) complex128 {
	re, qms := complex(math.Exp(c.x[logRe]), 0), math.Exp(c.x[logQms])
	ratio := hz / math.Exp(c.x[logFs])
	detuned := qms * (ratio - 1/ratio)
	tuned := 1 / complex(1, detuned)
	moving := complex(math.Exp(c.x[logRes]), 0) * tuned
	slope[logRe], slope[logRes] = re, moving
	slope[logQms] = -moving * complex(0, detuned) * tuned
	slope[logFs] = moving * complex(0, qms*(ratio+1/ratio)) * tuned
	return re + moving + c.inductive(slope, 2*math.Pi*hz)
}

// inductive is at for the coil's impedance but for Re, and the values that make it, at a
// frequency in rad/s.
func (c circuit) inductive(slope *[most]complex128, w float64) complex128 {
	if c.coil == Power {
		log := complex(math.Log(w/c.omega), math.Pi/2)
		power := cmplx.Exp(complex(c.x[logPower], 0) + complex(c.x[exponent], 0)*log)
		slope[logPower], slope[exponent] = power, power*log
		return power
	}
	slope[overLe] = complex(0, w*c.henry)
	z := complex(c.x[overLe], 0) * slope[overLe]
	switch c.coil {
	case Semi:
		k := math.Sqrt(w/2) * c.scale
		slope[overK] = complex(k, k)
		z += complex(c.x[overK], 0) * slope[overK]
	case Shunted:
		l, r := complex(0, w*math.Exp(c.x[logL2])), complex(math.Exp(c.x[logR2]), 0)
		share := l / (r + l)
		slope[logL2], slope[logR2] = r*share*(1-share), r*share*share
		z += r * share
	}
	return z
}
