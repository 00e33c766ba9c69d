package box

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"pappus/layout/prose"
)

// Air is the state of the air in the box.
type Air struct {
	Density    float64 // kg/m3
	SoundSpeed float64 // m/s
}

// Stiffness returns rho c2, in Pa.
func (a Air) Stiffness() float64 { return a.Density * a.SoundSpeed * a.SoundSpeed }

// Driver is a driver's small-signal values, as data sheets have them; 0: not
// given. Moving mass includes the air that moves along.
type Driver struct {
	Fs            float64 // Hz, resonance in open air
	Qts, Qms, Qes float64
	Vas           float64 // m3
	Re            float64 // ohm
	BL            float64 // T m
	Mms           float64 // kg
	Cms           float64 // m/N
	Sd            float64 // m2
}

// Complete returns the driver with what follows from what is given:
//
//	1/Qts = 1/Qms + 1/Qes
//	Qes = 2 pi fs Mms Re/BL2
//	(2 pi fs)2 Mms Cms = 1
//	Vas = rho c2 Sd2 Cms
//
// solved for whichever one value is missing. What is given stays as it is,
// even where it contradicts itself. The error tells of a Q that cannot be.
func (d Driver) Complete(a Air) (Driver, error) {
	// Each round finds one value at least, or ends.
	for range len(d.values()) {
		before := d
		d.fill(a.Stiffness())
		if d == before {
			break
		}
	}
	for _, v := range d.values() {
		if *v.at < 0 || math.IsInf(*v.at, 0) {
			return Driver{}, prose.Errorf("%s would be %g: Qts must be less than Qms and Qes", v.name, *v.at)
		}
	}
	return d, nil
}

type value struct {
	name string
	at   *float64
}

func (d *Driver) values() []value {
	return []value{{"Fs", &d.Fs}, {"Qts", &d.Qts}, {"Qms", &d.Qms}, {"Qes", &d.Qes}, {"Vas", &d.Vas},
		{"Re", &d.Re}, {"BL", &d.BL}, {"Mms", &d.Mms}, {"Cms", &d.Cms}, {"Sd", &d.Sd}}
}

// fill applies each formula once, to each value that it can find.
func (d *Driver) fill(stiffness float64) {
	set := func(at *float64, v float64, from ...float64) {
		if *at == 0 && !slices.Contains(from, 0) {
			*at = v
		}
	}
	w := 2 * math.Pi * d.Fs
	set(&d.Qts, d.Qms*d.Qes/(d.Qms+d.Qes), d.Qms, d.Qes)
	set(&d.Qms, d.Qts*d.Qes/(d.Qes-d.Qts), d.Qts, d.Qes)
	set(&d.Qes, d.Qts*d.Qms/(d.Qms-d.Qts), d.Qts, d.Qms)
	set(&d.Qes, w*d.Mms*d.Re/(d.BL*d.BL), d.Fs, d.Mms, d.Re, d.BL)
	set(&d.BL, math.Sqrt(w*d.Mms*d.Re/d.Qes), d.Fs, d.Mms, d.Re, d.Qes)
	set(&d.Re, d.Qes*d.BL*d.BL/(w*d.Mms), d.Fs, d.Mms, d.BL, d.Qes)
	set(&d.Fs, 1/(2*math.Pi*math.Sqrt(d.Mms*d.Cms)), d.Mms, d.Cms)
	set(&d.Mms, 1/(w*w*d.Cms), d.Fs, d.Cms)
	set(&d.Cms, 1/(w*w*d.Mms), d.Fs, d.Mms)
	set(&d.Vas, stiffness*d.Sd*d.Sd*d.Cms, d.Sd, d.Cms)
	set(&d.Cms, d.Vas/(stiffness*d.Sd*d.Sd), d.Vas, d.Sd)
	set(&d.Sd, math.Sqrt(d.Vas/(stiffness*d.Cms)), d.Vas, d.Cms)
}

// ErrMissing is a value of the driver that is not known.
var ErrMissing = errors.New("the driver's values do not tell")

// need gives an error for the first value that is not known.
func (d Driver) need(names ...string) error {
	for _, v := range d.values() {
		if *v.at == 0 && slices.Contains(names, v.name) {
			return fmt.Errorf("%w %s", ErrMissing, v.name)
		}
	}
	return nil
}
