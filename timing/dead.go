package timing

import (
	"math"
	"math/cmplx"

	"pappus/layout/impedance"
)

// Death is what becomes of a channel when a driver fails, or a whole string. An open
// driver silences its string, so that is what an open string comes to as well.
type Death struct {
	Channel int             // index into Plan.Channels
	String  int             // index into Bank.Strings
	Mount   int             // index into Array.Mounts; of a whole string, the first
	State   impedance.State // Open or Shorted
	Whole   bool            // the whole string is shorted, as by its wire

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
	// octaves from 1 to 4 kHz, at the worst angle in rad.
	Loss, Angle float64
	// What the channel's worst open string loses where its strings are spread, and
	// where each is of neighbours; NaN where shorted.
	LossSpread, LossNeighbours float64
}

// Gain returns by how many dB the channel's strings as they are lose less than
// strung the other way; NaN where the driver is shorted.
func (d Death) Gain() float64 {
	return max(d.LossSpread, d.LossNeighbours) - min(d.LossSpread, d.LossNeighbours)
}

// Fault names what fails.
func (d Death) Fault() string {
	if d.Whole {
		return "string " + d.State.String()
	}
	return d.State.String()
}

// Dead returns, for each channel, the worst that one open driver, one shorted
// driver and one shorted string do, in this order: the one whose loss on the
// listening circle is the greatest, of equal ones the first. Losses are the loudspeaker's own, on its surface, without the room.
func Dead(p *Plan) ([]Death, error) {
	deaths, err := EveryDeath(p)
	if err != nil {
		return nil, err
	}
	var worst []Death
	for _, d := range deaths {
		last := len(worst) - 1
		switch {
		case last < 0 || worst[last].Channel != d.Channel || worst[last].Fault() != d.Fault():
			worst = append(worst, d)
		case d.Loss > worst[last].Loss+sameLoss:
			worst[last] = d
		}
	}
	return worst, nil
}

// EveryDeath returns what each driver does that fails open, that fails shorted, and
// each shorted string, in the order of channels, of these faults, and of strings
// and their joints.
func EveryDeath(p *Plan) ([]Death, error) {
	r, err := newRing(&p.Spot)
	if err != nil {
		return nil, err
	}
	var out []Death
	for c, channel := range p.Channels {
		mounts, strings := channel.Mounts, p.Banks[c].Strings
		open := p.fail(c, impedance.Open, false, r.frequency)
		loss := [2]float64{r.worst(mounts, SpreadStrings(p.Array, mounts, channel.Parallel), open),
			r.worst(mounts, neighbourStrings(p.Array, mounts, max(channel.Parallel, 1)), open)}
		for _, f := range []failed{open, p.fail(c, impedance.Shorted, false, r.frequency), p.fail(c, impedance.Shorted, true, r.frequency)} {
			for _, l := range r.losses(mounts, strings, f) {
				d := f.death
				d.Loss, d.Angle, d.String, d.Mount = l.loss, l.angle, l.str, l.mount
				d.LossSpread, d.LossNeighbours = math.NaN(), math.NaN()
				if d.State == impedance.Open {
					d.LossSpread, d.LossNeighbours = loss[0], loss[1]
				}
				d.Quiet, d.Hotter = f.touched(strings, d.String, d.Mount)
				out = append(out, d)
			}
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

// fail solves a channel's network with the first driver of its first string dead,
// or all of that string.
func (s *Spot) fail(channel int, state impedance.State, all bool, frequency []float64) failed {
	c := s.Channels[channel]
	wire := s.wireOhm()
	curve, known := s.curve()
	whole, broken := c.bank(wire), c.bank(wire)
	dead := broken.Strings[0].Drivers
	if !all {
		dead = dead[:1]
	}
	for i := range dead {
		dead[i] = state
	}
	f := failed{death: Death{Channel: channel, State: state, Whole: all, Power: 1, LowestOhm: math.NaN(), LowestHz: math.NaN()}}
	f.death.DCOhm = dcLoad(c.lengths(), len(dead), state, s.Array.Driver.DCOhm)
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

// silences tells whether all of the dead driver's string falls silent.
func (f failed) silences() bool { return f.death.Whole || f.death.State == impedance.Open }

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

// dcLoad returns the direct current load in ohm of equal strings whose first has
// some dead drivers; 0 where it is shorted throughout.
func dcLoad(lengths []int, dead int, state impedance.State, ohm float64) float64 {
	siemens := 0.0
	for i, n := range lengths {
		switch {
		case i > 0:
			siemens += 1 / (float64(n) * ohm)
		case state == impedance.Shorted:
			siemens += 1 / (float64(n-dead) * ohm)
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
