package timing

// DriverVolt returns the RMS voltage over a driver in the longest string of a
// channel with a gain of 0 dB, in V: what all levels of the plan are computed
// for.
func (p *Plan) DriverVolt() float64 {
	return p.Array.Wiring.Voltage / float64(longestString(p.Channels))
}
