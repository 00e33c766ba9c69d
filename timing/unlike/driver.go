package unlike

import (
	"math"

	"pappus/layout/prose"
)

// Driver is a driver's values in free air.
type Driver struct {
	Resonance, Qms, Qes float64 // Hz; all 0 where it is not known how the cone moves
	DCOhm               float64
	Inductance          float64 // H
	// Level is the pressure at one voltage far above the resonance over the nominal driver's,
	// below 0 where it is reversed; 0: what its other values make of the nominal moving mass.
	Level float64
	Late  float64 // s, by how much later it is heard than the nominal one
}

// Moves tells whether it is known how the cone moves.
func (d Driver) Moves() bool { return d.Resonance > 0 }

// check returns which value cannot be.
func (d Driver) check() error {
	needed := []struct {
		name  string
		value float64
	}{{"resistance in ohm", d.DCOhm}}
	if d.Moves() || d.Qms != 0 || d.Qes != 0 {
		needed = append(needed, []struct {
			name  string
			value float64
		}{{"resonance in Hz", d.Resonance}, {"Qms", d.Qms}, {"Qes", d.Qes}}...)
	}
	for _, v := range needed {
		if !(v.value > 0) || math.IsInf(v.value, 0) {
			return prose.Errorf("impossible driver: %s %g, must be above 0", v.name, v.value)
		}
	}
	for _, v := range []float64{d.Inductance, d.Level, d.Late} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return prose.Errorf("impossible driver: a value of %g, must be finite", v)
		}
	}
	if d.Inductance < 0 {
		return prose.Errorf("impossible driver: inductance %g H, must be 0 or above", d.Inductance)
	}
	return nil
}

// LevelOf returns the level, as a factor over the nominal driver's, of one that has its moving
// mass: Bl/Re over that of the nominal one.
func (d Driver) LevelOf(nominal Driver) float64 {
	if !d.Moves() || !nominal.Moves() {
		return 1
	}
	return math.Sqrt(d.strength()/nominal.strength()) * nominal.DCOhm / d.DCOhm
}

// strength returns Bl2/M = ws Re/Qes.
func (d Driver) strength() float64 { return 2 * math.Pi * d.Resonance * d.DCOhm / d.Qes }

// cone is what the network needs of a driver.
type cone struct {
	ohm, henry float64
	bl         float64 // over the root of the nominal moving mass, below 0 where reversed
	mass       float64 // over the nominal one
	drag       float64 // ws/Qms times mass
	spring     float64 // ws2 times mass
	plain      float64 // of a driver that is not known to move: velocity for an ampere
}

// coneOf returns a driver as the network needs it, beside the nominal one.
func coneOf(d, nominal Driver) cone {
	level := d.Level
	if level == 0 {
		level = d.LevelOf(nominal)
	}
	c := cone{ohm: d.DCOhm, henry: d.Inductance, plain: level * d.DCOhm}
	if !d.Moves() {
		return c
	}
	w := 2 * math.Pi * d.Resonance
	// M = (Bl2/M)/(Bl/M)2, Bl/M being level Re times that of the nominal driver over its Re.
	once := level * d.DCOhm * math.Sqrt(nominal.strength()) / nominal.DCOhm
	c.mass, c.plain = d.strength()/(once*once), 0
	c.bl, c.drag, c.spring = once*c.mass, c.mass*w/d.Qms, c.mass*w*w
	return c
}

// motion is what a driver does without a box at one frequency: its impedance in ohm, one over
// its mechanical impedance, and its velocity for an ampere.
type motion struct{ ohm, free, driven complex128 }

// at returns a driver's motion at w in rad/s.
func (c *cone) at(w float64) motion {
	if c.mass == 0 {
		return motion{complex(c.ohm, w*c.henry), 0, complex(c.plain, 0)}
	}
	x := w*c.mass - c.spring/w
	square := c.drag*c.drag + x*x
	re, im := c.drag/square, -x/square
	return motion{complex(c.ohm+c.bl*c.bl*re, w*c.henry+c.bl*c.bl*im), complex(re, im), complex(c.bl*re, c.bl*im)}
}
