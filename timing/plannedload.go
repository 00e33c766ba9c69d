package timing

import "pappus/layout/impedance"

// PlannedLoad returns a channel's drivers as a network, all alive, with its wire to the
// body, and the impedance that the plan takes each driver to have in the body. known is
// false where the design does not tell more than the direct current resistance. It
// panics where there is no such channel.
func (p *Plan) PlannedLoad(channel int) (bank impedance.Bank, driver impedance.Curve, known bool) {
	driver, known = p.curve()
	return p.Channels[channel].bank(p.wireOhm()), driver, known
}
