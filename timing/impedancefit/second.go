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
// taken off. Area in m2 is the cone's.
type Second struct {
	Mass, Volume float64
	Area         float64
	Air          box.Air
}

// How unsure is what differs, one sigma, as a factor less 1.
const (
	// offMass is of an added mass: a hundredth of a gram of one, and a little aside of the middle.
	offMass   = 0.015
	offVolume = 0.02 // of a box: its corners, the driver's back
	// offArea is of the cone's area: how much of the surround moves along is known to 0.75 percent of
	// the diameter.
	offArea = 0.015
	offAir  = 0.02 // of its stiffness, 1.4 times the pressure: weather, and 200 m of height
)

// shiftSigmas is how many standard errors a second measurement must differ by: by chance 1 in 700 does.
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
	return f.mechanical(other, s, from{mass: s.Mass / (square - 1), differs: 1,
		// At the lower resonance a suspension that creeps is softer by creeps log10(fs/fs').
		one: weights{logFs: -steep}, two: weights{logFs: steep}, creep: -steep / 2 * creeps * down / math.Ln10, share: 1}), nil
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
	down := f.Resonance.Value / other.Resonance.Value // whose square is the suspension's share of the spring
	// d ln Vas/d ln(fs Qes) is -steep.
	steep := ratio / (ratio - 1)
	return f.mechanical(other, s, from{mass: s.Air.Stiffness() * s.Area * s.Area / (vas * w * w), differs: -1, air: 1,
		one: product.times(steep).plus(weights{logFs: -2}), two: product.times(-steep),
		creep: -creeps * math.Log10(other.Resonance.Value/f.Resonance.Value) / (ratio - 1), share: down * down, leak: (1 - down*down) * down}), nil
}

// from is what a moving mass in kg follows from: the derivatives of its logarithm by the values of
// the free driver and of the second measurement, by the logarithm of what differs then, and by that
// of the stiffness of air, rho c2 Sd2; what creep between the two resonances adds; which share of the
// spring creeps in the second measurement; and which share of Fit.leak that has: of the spring, and of the
// leak's Q, which is that at the free resonance.
type from struct {
	mass               float64
	one, two           weights
	differs, air       float64
	creep, share, leak float64
}

func (w weights) times(by float64) weights {
	for i := range w {
		w[i] *= by
	}
	return w
}

func (w weights) plus(more weights) weights {
	for i := range w {
		w[i] += more[i]
	}
	return w
}

// mechanical returns what follows from a moving mass.
func (f Fit) mechanical(other Fit, s Second, of from) Mechanical {
	w := 2 * math.Pi * f.Resonance.Value
	cms := 1 / (w * w * of.mass)
	offDiffers := offMass
	if s.Volume != 0 {
		offDiffers = offVolume
	}
	// with returns a value that is mass^power, times what more has of the driver's values, times so
	// many powers of the stiffness of air.
	with := func(v, power float64, more weights, air float64) Estimate {
		one, two := of.one.times(power).plus(more), of.two.times(power)
		air += power * of.air
		off := math.Hypot(math.Hypot(f.noise(one), other.noise(two)), power*of.differs*offDiffers)
		off = math.Hypot(off, math.Hypot(air*offAir, 2*air*offArea))
		both := [doubts]float64{byCreep: power * of.creep}
		for k := range both { // each is the same both times
			again := other.doubts[k].dot(two)
			if k == byCreep {
				again *= of.share
			}
			both[k] += f.doubts[k].dot(one) + again
			off = math.Hypot(off, both[k])
		}
		leak := of.leak * other.leak.dot(two)
		return Estimate{v, v * math.Sqrt(off*off+leak*leak+bothWays*both[byCreep]*leak)}
	}
	return Mechanical{
		Mass: with(of.mass, 1, weights{}, 0),
		Cms:  with(cms, -1, weights{logFs: -2}, 0),
		Vas:  with(s.Air.Stiffness()*s.Area*s.Area*cms, -1, weights{logFs: -2}, 1),
		// Re/Qes is Res/Qms.
		BL: with(math.Sqrt(w*of.mass*f.DCOhm.Value/f.Qes.Value), 0.5, weights{logFs: 0.5, logRes: 0.5, logQms: -0.5}, 0),
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
