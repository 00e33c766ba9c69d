package impedancefit

import (
	"math"

	"pappus/layout/box"
	"pappus/layout/prose"
)

// Mechanical are the values that an impedance alone does not tell.
type Mechanical struct {
	Vas  Estimate // m3
	Mass Estimate // kg, Mms, the air that moves along included
	BL   Estimate // T m
	Cms  Estimate // m/N
}

// Second says what was different in a second measurement of a driver: a mass in kg stuck to
// its cone in free air, or an airtight, unstuffed box of a volume in m3, the driver's own
// taken off. Area in m2 is the cone's; all are taken for exact.
type Second struct {
	Mass, Volume float64
	Area         float64
	Air          box.Air
}

// shiftSigmas is how many standard errors a second measurement must differ by.
const shiftSigmas = 3

// Mechanical returns what a second measurement of the same driver tells. With a mass m
//
//	Mms = m/((fs/fs')2 - 1),  Cms = 1/((2 pi fs)2 Mms),  Vas = rho c2 Sd2 Cms,
//	BL = sqrt(2 pi fs Mms Re/Qes)
//
// (Small 1972; the mass is best such that the resonance falls by a fifth to a half,
// common practice), in a box of volume V
//
//	Vas = V (fc Qec/(fs Qes) - 1)
//
// (Small, Closed-Box Loudspeaker Systems, J. Audio Eng. Soc. 20 (1972) 798), where
// the product of resonance and Q makes good for the air that loads the cone
// differently in the box; the rest follows from Cms = Vas/(rho c2 Sd2). The error tells of a value that
// cannot be, or of a second measurement that does not differ.
func (f Fit) Mechanical(other Fit, s Second) (Mechanical, error) {
	differs := named{"added mass in kg", s.Mass}
	if s.Volume != 0 {
		differs = named{"volume of the box in m3", s.Volume}
	}
	if err := positive([]named{differs, {"cone area in m2", s.Area},
		{"density of air in kg/m3", s.Air.Density}, {"speed of sound in m/s", s.Air.SoundSpeed}}); err != nil {
		return Mechanical{}, err
	}
	if s.Volume != 0 {
		return f.inBox(other, s)
	}
	one, two := f.Resonance, other.Resonance
	down := math.Log(one.Value / two.Value)
	if !(down > shiftSigmas*math.Hypot(one.Error/one.Value, two.Error/two.Value)) {
		return Mechanical{}, prose.Errorf("%w: with the mass it resonates at %.4g Hz, without at %.4g Hz; it must be clearly lower",
			errShift, two.Value, one.Value)
	}
	square := math.Exp(2 * down)
	// d ln Mms/d ln fs
	steep := 2 * square / (square - 1)
	return f.mechanical(s.Mass/(square-1), weights{logFs: -steep}, steep*two.Error/two.Value, s), nil
}

// inBox is Mechanical for a box.
func (f Fit) inBox(other Fit, s Second) (Mechanical, error) {
	ratio := other.Resonance.Value * other.Qes.Value / (f.Resonance.Value * f.Qes.Value)
	product := weights{logFs: 1, logQms: 1, logRe: 1, logRes: -1}
	one, two := f.deviation(product), other.deviation(product)
	if !(math.Log(ratio) > shiftSigmas*math.Hypot(one, two)) {
		return Mechanical{}, prose.Errorf("%w: resonance times Qes is %.4g times as high in the box; it must be clearly higher", errShift, ratio)
	}
	vas := s.Volume * (ratio - 1)
	w := 2 * math.Pi * f.Resonance.Value
	mass := s.Air.Stiffness() * s.Area * s.Area / (vas * w * w)
	// d ln Vas/d ln(fs Qes) is -steep.
	steep := ratio / (ratio - 1)
	return f.mechanical(mass, weights{logFs: steep - 2, logQms: steep, logRe: steep, logRes: -steep}, steep*two, s), nil
}

// mechanical returns what follows from a moving mass in kg. weight are the
// derivatives of its logarithm by the values of the free driver, other its relative
// error from elsewhere.
func (f Fit) mechanical(mass float64, weight weights, other float64, s Second) Mechanical {
	w := 2 * math.Pi * f.Resonance.Value
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
		Vas:  of(s.Air.Stiffness()*s.Area*s.Area*cms, soft),
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
			return prose.Errorf("%w: %s must be above 0 and finite, not %g", errValue, v.name, v.value)
		}
	}
	return nil
}
