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
	most = 7

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

// parts are the values of a circuit, in SI.
type parts struct {
	coil                      Coil
	re, res, fs, qms          float64
	henry, le, scale, k, l, r float64
	omega, ohm, exponent      float64
}

func (c circuit) parts() parts {
	p := parts{coil: c.coil, re: math.Exp(c.x[logRe]), res: math.Exp(c.x[logRes]), fs: math.Exp(c.x[logFs]), qms: math.Exp(c.x[logQms]),
		henry: c.henry, scale: c.scale, omega: c.omega}
	if c.coil == Power {
		p.ohm, p.exponent = math.Exp(c.x[logPower]), c.x[exponent]
		return p
	}
	p.le = c.x[overLe]
	switch c.coil {
	case Semi:
		p.k = c.x[overK]
	case Shunted:
		p.l, p.r = math.Exp(c.x[logL2]), math.Exp(c.x[logR2])
	}
	return p
}

// at fills slope with the derivatives of the impedance by the circuit's values, at a
// frequency in Hz, and returns the impedance in ohm.
func (p parts) at(slope *[most]complex128, hz float64) complex128 {
	w := 2 * math.Pi * hz
	ratio := hz / p.fs
	detuned := p.qms * (ratio - 1/ratio)
	tuned := 1 / complex(1, detuned)
	moving := complex(p.res, 0) * tuned
	slope[logRe] = complex(p.re, 0)
	slope[logRes] = moving
	slope[logQms] = -moving * complex(0, detuned) * tuned
	slope[logFs] = moving * complex(0, p.qms*(ratio+1/ratio)) * tuned
	return complex(p.re, 0) + moving + p.inductive(slope, w)
}

// inductive is at for the coil's impedance but for Re, and the values that make it, at a
// frequency in rad/s.
func (p parts) inductive(slope *[most]complex128, w float64) complex128 {
	if p.coil == Power {
		log := complex(math.Log(w/p.omega), math.Pi/2)
		power := complex(p.ohm, 0) * cmplx.Exp(complex(p.exponent, 0)*log)
		slope[logPower], slope[exponent] = power, power*log
		return power
	}
	slope[overLe] = complex(0, w*p.henry)
	z := complex(0, w*p.henry*p.le)
	switch p.coil {
	case Semi:
		k := math.Sqrt(w/2) * p.scale
		slope[overK] = complex(k, k)
		z += complex(p.k*k, p.k*k)
	case Shunted:
		l := complex(0, w*p.l)
		share := l / (complex(p.r, 0) + l)
		both := complex(p.r, 0) * share
		slope[logL2], slope[logR2] = both*(1-share), both*share
		z += both
	}
	return z
}
