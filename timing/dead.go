package timing

import (
	"math"
	"math/cmplx"

	"pappus/layout/impedance"
)

// Death is what becomes of a channel when a driver fails: the one whose loss on
// the listening circle is the worst. An open driver silences its whole string, so
// that is what an open string comes to as well.
type Death struct {
	Channel int             // index into Plan.Channels
	String  int             // index into Channel.Strings
	Mount   int             // index into Array.Mounts; where open, the first of the string
	State   impedance.State // Open or Shorted

	DCOhm     float64 // the load that is left, without the wire; +Inf where no current flows
	LowestOhm float64 // lowest magnitude from 20 Hz to 20 kHz, wire included; NaN: not known
	LowestHz  float64 // where; NaN: not known
	Quiet     []int   // mounts that get nothing any more, the dead one included
	// Power is the most that a driver's power grows by at any frequency, as a
	// factor, and Hotter are the mounts where it grows; 1 and none where nothing
	// gets more.
	Power  float64
	Hotter []int

	// Loss in dB is how much less is heard on the listening circle, mean of the
	// octaves from 1 to 4 kHz, at the worst angle in rad. LossNeighbours is that of
	// the worst string where each string is of neighbours; NaN where shorted.
	Loss, Angle    float64
	LossNeighbours float64
}

// Gain returns by how many dB the strings as spread are better than strings of
// neighbours; NaN where the driver is shorted.
func (d Death) Gain() float64 { return d.LossNeighbours - d.Loss }

// Dead returns, for each channel, the worst that one open driver and one shorted
// driver do, in this order. The plan must be one of Make. Losses are the
// loudspeaker's own, on its surface, without the room.
func Dead(p *Plan) ([]Death, error) {
	r, err := newRing(p)
	if err != nil {
		return nil, err
	}
	curve, known := p.curve()
	wire := p.wireOhm()
	var out []Death
	for c := range p.Channels {
		for _, state := range []impedance.State{impedance.Open, impedance.Shorted} {
			f := p.fail(c, state, wire, curve, known, r.frequency)
			d := f.death
			d.LossNeighbours = math.NaN()
			strings := p.Channels[c].Strings
			d.Loss, d.Angle, d.String, d.Mount = r.worst(p.Channels[c].Mounts, strings, f)
			if state == impedance.Open {
				near := neighbourStrings(p.Array, p.Channels[c].Mounts, len(strings))
				d.LossNeighbours, _, _, _ = r.worst(p.Channels[c].Mounts, near, f)
			}
			d.Quiet, d.Hotter = f.touched(strings, d.String, d.Mount)
			out = append(out, d)
		}
	}
	return out, nil
}

// failed is what one dead driver does to a channel's electrics. Strings are equal,
// so it is the same whichever driver it is.
type failed struct {
	death       Death
	same, other []complex128 // by which the voltage changes at each frequency: in its string, in the others
	grows       [2]bool      // whether power grows in its string, in the others
	quiet       [2]bool      // and whether they fall silent
}

// fail solves a channel's network with its first driver dead.
func (p *Plan) fail(channel int, state impedance.State, wire float64, curve impedance.Curve, known bool, frequency []float64) failed {
	c := p.Channels[channel]
	whole, broken := c.bank(wire), c.bank(wire)
	broken.Strings[0].Drivers[0] = state
	f := failed{death: Death{Channel: channel, State: state, Power: 1, LowestOhm: math.NaN(), LowestHz: math.NaN()}}
	f.death.DCOhm = dcLoad(c.lengths(), state, p.Array.Driver.DCOhm)
	if known {
		f.death.LowestHz, f.death.LowestOhm = broken.Lowest(curve, loadLow, loadHigh)
		if math.IsInf(f.death.LowestOhm, 1) {
			f.death.LowestHz = math.NaN()
		}
	}
	f.quiet = [2]bool{true, true}
	change := changes{whole: whole, broken: broken, each: make([]complex128, whole.Count())}
	for _, hz := range loadFrequencies() {
		same, other := change.at(curve.At(hz))
		for i, factor := range []complex128{same, other} {
			power := energyOf(factor)
			f.death.Power = max(f.death.Power, power)
			f.grows[i] = f.grows[i] || power > 1+1e-9
			f.quiet[i] = f.quiet[i] && power == 0
		}
	}
	for _, hz := range frequency {
		same, other := change.at(curve.At(hz))
		f.same, f.other = append(f.same, same), append(f.other, other)
	}
	return f
}

// changes compares a whole bank with a broken one.
type changes struct {
	whole, broken impedance.Bank
	each          []complex128
	before, after impedance.Flow
}

// at returns the factors by which the voltage over the living drivers of the
// broken string, and over those of the other strings, changes where each driver
// has an impedance of z ohm; 0 where there are none or where the amplifier is
// shorted.
func (c *changes) at(z complex128) (same, other complex128) {
	for i := range c.each {
		c.each[i] = z
	}
	c.whole.Flow(&c.before, c.each, 1)
	c.broken.Flow(&c.after, c.each, 1)
	first := len(c.whole.Strings[0].Drivers)
	factor := func(driver, str int) complex128 {
		v := c.after.Volt[driver] / c.before.Volt[driver]
		if c.after.String[str] == 0 || cmplx.IsNaN(v) || cmplx.IsInf(v) {
			return 0 // no current, or an amplifier that has cut out
		}
		return v
	}
	if first > 1 {
		same = factor(1, 0)
	}
	if len(c.each) > first {
		other = factor(first, 1)
	}
	return same, other
}

// dcLoad returns the direct current load in ohm of equal strings of which one has
// a dead driver.
func dcLoad(lengths []int, state impedance.State, ohm float64) float64 {
	siemens := 0.0
	for i, n := range lengths {
		switch {
		case i > 0:
			siemens += 1 / (float64(n) * ohm)
		case state == impedance.Shorted:
			siemens += 1 / (float64(n-1) * ohm)
		}
	}
	return 1 / siemens
}

// touched returns the mounts that fall silent and those that get more power.
func (f failed) touched(strings [][]int, str, dead int) (quiet, hotter []int) {
	for s, mounts := range strings {
		which := 1
		if s == str {
			which = 0
		}
		for _, m := range mounts {
			switch {
			case f.quiet[which] || which == 0 && (m == dead || f.death.State == impedance.Open):
				quiet = append(quiet, m)
			case f.grows[which]:
				hotter = append(hotter, m)
			}
		}
	}
	return quiet, hotter
}

// Under tells whether the load that is left is below the amplifier's minimum.
func (d Death) Under(minimumOhm float64) bool {
	return under(minimumOhm, d.DCOhm, d.LowestOhm)
}
