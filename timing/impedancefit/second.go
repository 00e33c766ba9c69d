package impedancefit

import (
	"math"

	"pappus/layout/prose"
)

// Mechanical are the values that an impedance alone does not tell.
type Mechanical struct {
	Vas  Estimate // m3
	Mass Estimate // kg, Mms, the air that moves along included
	BL   Estimate // T m
	Cms  Estimate // m/N
}

// Air is the state of the air that the driver stands in.
type Air struct {
	Density    float64 // kg/m3
	SoundSpeed float64 // m/s
}

// shiftSigmas is how many standard errors a second measurement must differ by.
const shiftSigmas = 3

// AddedMass returns what a second measurement of the same driver in free air tells,
// with a mass in kg stuck to the cone, whose area in m2 is Sd:
//
//	Mms = m/((fs/fs')2 - 1),  Cms = 1/((2 pi fs)2 Mms),  Vas = rho c2 Sd2 Cms,
//	BL = sqrt(2 pi fs Mms Re/Qes)
//
// (Small 1972; the mass is best such that the resonance falls by a fifth to a half,
// common practice). Mass, area and air are taken for exact. Errors wrap [ErrValue]
// and [ErrShift].
func AddedMass(free, loaded Fit, mass, area float64, air Air) (Mechanical, error) {
	if err := positive([]named{{"added mass in kg", mass}, {"cone area in m2", area},
		{"density of air in kg/m3", air.Density}, {"speed of sound in m/s", air.SoundSpeed}}); err != nil {
		return Mechanical{}, err
	}
	one, two := free.Resonance, loaded.Resonance
	down := math.Log(one.Value / two.Value)
	if !(down > shiftSigmas*math.Hypot(one.Error/one.Value, two.Error/two.Value)) {
		return Mechanical{}, prose.Errorf("%w: with the mass it resonates at %.4g Hz, without at %.4g Hz; it must be clearly lower",
			ErrShift, two.Value, one.Value)
	}
	square := math.Exp(2 * down)
	// d ln Mms/d ln fs
	steep := 2 * square / (square - 1)
	return free.mechanical(mass/(square-1), weights{logFs: -steep}, steep*two.Error/two.Value, area, air), nil
}

// KnownBox returns what a second measurement of the same driver tells, on an
// airtight, unstuffed box of a volume in m3, the driver's own taken off; area in m2
// is the cone's:
//
//	Vas = V (fc Qec/(fs Qes) - 1)
//
// (Small, Closed-Box Loudspeaker Systems, J. Audio Eng. Soc. 20 (1972) 798), where
// the product of resonance and Q makes good for the air that loads the cone
// differently in the box; the rest follows from Cms = Vas/(rho c2 Sd2). Volume, area
// and air are taken for exact. Errors wrap [ErrValue] and [ErrShift].
func KnownBox(free, boxed Fit, volume, area float64, air Air) (Mechanical, error) {
	if err := positive([]named{{"volume of the box in m3", volume}, {"cone area in m2", area},
		{"density of air in kg/m3", air.Density}, {"speed of sound in m/s", air.SoundSpeed}}); err != nil {
		return Mechanical{}, err
	}
	ratio := boxed.Resonance.Value * boxed.Qes.Value / (free.Resonance.Value * free.Qes.Value)
	product := weights{logFs: 1, logQms: 1, logRe: 1, logRes: -1}
	one, two := free.deviation(product), boxed.deviation(product)
	if !(math.Log(ratio) > shiftSigmas*math.Hypot(one, two)) {
		return Mechanical{}, prose.Errorf("%w: resonance times Qes is %.4g times as high in the box; it must be clearly higher", ErrShift, ratio)
	}
	vas := volume * (ratio - 1)
	stiffness := air.Density * air.SoundSpeed * air.SoundSpeed
	w := 2 * math.Pi * free.Resonance.Value
	mass := stiffness * area * area / (vas * w * w)
	// d ln Vas/d ln(fs Qes) is -steep.
	steep := ratio / (ratio - 1)
	return free.mechanical(mass, weights{logFs: steep - 2, logQms: steep, logRe: steep, logRes: -steep}, steep*two, area, air), nil
}

// mechanical returns what follows from a moving mass in kg. weight are the
// derivatives of its logarithm by the values of the free driver, other its relative
// error from elsewhere.
func (f Fit) mechanical(mass float64, weight weights, other, area float64, air Air) Mechanical {
	w := 2 * math.Pi * f.Resonance.Value
	stiffness := air.Density * air.SoundSpeed * air.SoundSpeed
	cms := 1 / (w * w * mass)
	// relative returns the relative error of mass^power times what more has of the
	// driver's values.
	relative := func(power float64, more weights) float64 {
		var sum weights
		for i := range sum {
			sum[i] = power*weight[i] + more[i]
		}
		return math.Hypot(f.deviation(sum), power*other)
	}
	of := func(v, relative float64) Estimate { return Estimate{v, v * relative} }
	soft := relative(-1, weights{logFs: -2})
	return Mechanical{
		Mass: of(mass, relative(1, weights{})),
		Cms:  of(cms, soft),
		Vas:  of(stiffness*area*area*cms, soft),
		// Re/Qes is Res/Qms.
		BL: of(math.Sqrt(w*mass*f.DCOhm.Value/f.Qes.Value), relative(0.5, weights{logFs: 0.5, logRes: 0.5, logQms: -0.5})),
	}
}

type named struct {
	name  string
	value float64
}

func positive(values []named) error {
	for _, v := range values {
		if !(v.value > 0) || math.IsInf(v.value, 1) {
			return prose.Errorf("%w: %s must be above 0 and finite, not %g", ErrValue, v.name, v.value)
		}
	}
	return nil
}
