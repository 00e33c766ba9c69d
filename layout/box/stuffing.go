package box

import (
	"math"

	"pappus/layout/prose"
)

// Caution is what to say beside any figure about stuffing.
const Caution = "Stuffing is a starting point: measure the impedance, then add or take away. " +
	"Keep it off coils, magnets and amplifiers, which get warm, and off cones and vents; " +
	"choose one that does not feed a flame."

// MostGain is the most by which stuffing makes a box seem larger. Air that keeps
// its temperature would give 1.4, the ratio of its specific heats; 1.2 to 1.25
// is what is reached (common practice; Small 1972 has it from measurements).
const MostGain = 1.25

// MostDensity is the most stuffing in kg/m3 that is taken. Common practice: 8 to
// 16 for loose polyester or wool; far more fills the box.
const MostDensity = 50

// Stuffing is loose fibre in a box.
type Stuffing struct {
	Density float64 // kg of it in a m3 of the box
	Mass    float64 // kg
	Gain    float64 // by which the box seems larger
	Volume  float64 // m3, as large as it seems
}

// ByDensity stuffs a volume in m3 with kg/m3, for a gain that is hoped for, 1 to
// [MostGain]. Errors wrap [ErrValue] and [ErrStuffing].
func ByDensity(volume, density, gain float64) (Stuffing, error) {
	if err := positive("volume in m3", volume); err != nil {
		return Stuffing{}, err
	}
	if !(density >= 0 && density <= MostDensity) {
		return Stuffing{}, prose.Errorf("%w: density must be from 0 to %d kg/m3, not %g", ErrStuffing, MostDensity, density)
	}
	if !(gain >= 1 && gain <= MostGain) {
		return Stuffing{}, prose.Errorf("%w: gain must be from 1 to %g, not %g", ErrStuffing, MostGain, gain)
	}
	return Stuffing{density, density * volume, gain, gain * volume}, nil
}

// ByMass is ByDensity for a mass in kg.
func ByMass(volume, mass, gain float64) (Stuffing, error) {
	if err := positive("volume in m3", volume); err != nil {
		return Stuffing{}, err
	}
	if math.IsNaN(mass) || mass < 0 {
		return Stuffing{}, prose.Errorf("%w: mass must be at least 0 kg, not %g", ErrStuffing, mass)
	}
	return ByDensity(volume, mass/volume, gain)
}
