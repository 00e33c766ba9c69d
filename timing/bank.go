package timing

import (
	"context"
	"math"
	"math/cmplx"
	"slices"

	"pappus/layout"
	"pappus/layout/advice"
	"pappus/layout/impedance"
	"pappus/layout/wiring"
	"pappus/timing/band"
)

// Bank is a channel's drivers in strings, and what they make of its amplifier's voltage. Currents and
// powers are the most of any tone in the band at the design's voltage, found by
// solving the network with its wire at each frequency; where the driver's
// impedance is not known they are those of its direct current resistance, which
// hardly ever is exceeded.
type Bank struct {
	Strings [][]int // the drivers of each, as indices into Array.Mounts, in the order of their joints
	Near    bool    // they are of neighbours, and lose less so than spread over the body

	LowestOhm    float64 // the lowest magnitude of the load from 20 Hz to 20 kHz, wire included; NaN: not known
	LowestHz     float64 // where; NaN: not known
	WireOhm      float64 // of the wire to the body, out and back, at 20 C
	WireLoss     float64 // dB, what the wire takes off the voltage over a load of DCOhm
	Damping      float64 // nominal load over the wire's resistance; +Inf without wire
	Volt         float64 // RMS, at the amplifier's output, the channel's gain included
	Ampere, Watt float64 // from the amplifier's output, RMS and mean
	// What the driver that gets most gets.
	DriverVolt, DriverAmpere, DriverWatt float64
}

// The band in Hz in which loads are judged, and how closely.
const (
	loadLow, loadHigh = 20.0, 20000.0
	loadPerOctave     = 24
)

// banks returns the banks of a spot's channels. It works until ctx ends, whose error it
// gives then.
func banks(ctx context.Context, s *Spot) ([]Bank, error) {
	out, err := wire(ctx, s)
	if err != nil {
		return nil, err
	}
	curve, known := s.curve()
	for i, c := range s.Channels {
		bank, b := c.bank(s.wireOhm()), &out[i]
		b.draw(c, bank, curve, s.Array.Wiring.Voltage)
		b.LowestHz, b.LowestOhm = math.NaN(), math.NaN()
		if known {
			b.LowestHz, b.LowestOhm = bank.Lowest(curve, loadLow, loadHigh)
		}
	}
	return out, nil
}

// muchMore is by what factor a channel may draw more than the watts that an amplifier is
// sold with before it is spoken of: half a dB.
const muchMore = 1.12

// overloads tells of drivers that can get more power than they stand for long, and of a
// channel that draws more than the watts that the amplifier is sold with because its load is
// lower than the one that they are for.
func overloads(s *Spot, banks []Bank) (found findings) {
	a := s.Array
	rating, w := a.Driver.PowerHandling, a.Wiring
	hottest, hungriest := mostBank(banks, Bank.driverWatt), mostBank(banks, Bank.watt)
	if b := banks[hottest]; rating > 0 && b.DriverWatt > rating {
		found.warn("driver_power", advice.Danger, DriverHeat{s.Channels[hottest].ID, b.Volt, b.DriverWatt, rating})
	}
	if b := banks[hungriest]; w.Watt > 0 && b.Watt > muchMore*w.Watt {
		c := s.Channels[hungriest]
		found.warn("amplifier_power", advice.Cost, ChannelDraw{c.ID, b.Watt, b.Volt, c.DCOhm, w.Watt, w.IntoOhm})
	}
	return found
}

// mostBank returns the index of the bank with the most of something, the first of several.
func mostBank(banks []Bank, of func(Bank) float64) int {
	best := 0
	for i, b := range banks {
		if of(b) > of(banks[best]) {
			best = i
		}
	}
	return best
}

func (b Bank) watt() float64       { return b.Watt }
func (b Bank) driverWatt() float64 { return b.DriverWatt }

// wireOhm returns the resistance of the wire from the amplifier to the body.
func (s *Spot) wireOhm() float64 {
	w := s.Array.Wiring
	if w.WireLength == 0 {
		return 0
	}
	return wiring.WireOhm(w.WireLength, w.WireSection)
}

// curve returns the driver's impedance in the body, as measured or from its
// small-signal values, and whether it is known; if not, that of its direct
// current resistance.
func (s *Spot) curve() (curve impedance.Curve, known bool) { return curveOf(s.Array.Driver) }

func curveOf(d layout.Driver) (curve impedance.Curve, known bool) {
	if len(d.Impedance) > 0 {
		points := make([]impedance.Point, len(d.Impedance))
		for i, p := range d.Impedance {
			points[i] = impedance.Point(p)
		}
		if c, err := impedance.Measured(points); err == nil {
			return c, true
		}
	}
	v := d.Small
	stiffer := 1.0 // the box raises the resonance, and both Q with it
	if d.Resonance > 0 && v.Fs > 0 {
		stiffer = d.Resonance / v.Fs
	}
	c, err := impedance.New(impedance.Driver{Resonance: v.Fs * stiffer, QMS: v.Qms * stiffer, QES: v.Qes * stiffer,
		DCOhm: d.DCOhm, Inductance: v.Inductance})
	if err == nil {
		return c, true
	}
	flat, err := impedance.Measured([]impedance.Point{{Frequency: 1, Ohm: d.DCOhm}, {Frequency: 2, Ohm: d.DCOhm}})
	if err != nil {
		return impedance.Curve{}, false // no resistance either
	}
	return flat, false
}

// lengths returns the number of drivers in each of a channel's strings.
func (c Channel) lengths() []int {
	return slices.Repeat([]int{max(c.Series, 1)}, max(c.Parallel, 1))
}

// bank returns a channel's drivers as a network, all alive.
func (c Channel) bank(wireOhm float64) impedance.Bank {
	b, err := impedance.NewBank(c.lengths(), wireOhm, 0)
	if err != nil {
		panic(err) // neither lengths nor wire can be wrong here
	}
	return b
}

// PlannedLoad returns a channel's drivers as a network, all alive, with its wire to the
// body, and the impedance that the plan takes each driver to have in the body. known is
// false where the design does not tell more than the direct current resistance. It
// panics where there is no such channel.
func (s *Spot) PlannedLoad(channel int) (bank impedance.Bank, driver impedance.Curve, known bool) {
	driver, known = s.curve()
	return s.Channels[channel].bank(s.wireOhm()), driver, known
}

// draw fills in what a channel draws at most of an amplifier's volts.
func (b *Bank) draw(c Channel, bank impedance.Bank, curve impedance.Curve, volt float64) {
	b.WireOhm, b.WireLoss, b.Damping = bank.FeedOhm, wiring.WireLoss(bank.FeedOhm, c.DCOhm), math.Inf(1)
	b.Volt = volt * math.Abs(c.factor())
	if b.WireOhm > 0 {
		b.Damping = c.NominalOhm / b.WireOhm
	}
	eachLoad(bank, curve, b.Volt, func(flow *impedance.Flow, watt []float64) {
		b.Ampere = max(b.Ampere, cmplx.Abs(flow.Ampere))
		b.Watt = max(b.Watt, b.Volt*real(flow.Ampere))
		for i, s := range bank.Strings {
			first := i * len(s.Drivers) // strings are equal
			b.DriverVolt = max(b.DriverVolt, cmplx.Abs(flow.Volt[first]))
			b.DriverAmpere = max(b.DriverAmpere, cmplx.Abs(flow.String[i]))
			b.DriverWatt = max(b.DriverWatt, watt[first])
		}
	})
}

// eachLoad solves a bank of drivers with an impedance at each frequency at which loads are
// judged, fed with volts RMS, and calls do with the currents and each driver's power in W.
func eachLoad(bank impedance.Bank, curve impedance.Curve, volt float64, do func(flow *impedance.Flow, watt []float64)) {
	var flow impedance.Flow
	watt := make([]float64, bank.Count())
	for _, hz := range loadFrequencies() {
		bank.Flow(&flow, slices.Repeat([]complex128{curve.At(hz)}, bank.Count()), volt)
		bank.Watts(watt, &flow)
		do(&flow, watt)
	}
}

// loadFrequencies returns the frequencies in Hz at which loads are solved.
func loadFrequencies() []float64 {
	out := make([]float64, int(math.Round(math.Log2(loadHigh/loadLow)*loadPerOctave))+1)
	band.Log(out, loadLow, loadHigh)
	return out
}

// Under tells whether a channel loads the amplifier below its minimum, at
// direct current or at any frequency from 20 Hz to 20 kHz.
func (p *Plan) Under(channel int) bool {
	return under(p.Array.Wiring.MinimumLoad, p.Channels[channel].DCOhm, p.Banks[channel].LowestOhm)
}

// under tells whether one of some loads in ohm is below a minimum by more than
// rounding; one that is not known, NaN, is not.
func under(minimumOhm float64, load ...float64) bool {
	return slices.ContainsFunc(load, func(ohm float64) bool { return ohm < minimumOhm*(1-1e-9) })
}

// ratedVolt returns the most voltage (RMS) over a driver that gives it no more power, at
// any frequency, than it stands for long; +Inf where that is not known.
func ratedVolt(d layout.Driver) float64 {
	if !(d.PowerHandling > 0) || !(d.DCOhm > 0) {
		return math.Inf(1)
	}
	curve, _ := curveOf(d)
	most := 0.0
	for _, hz := range loadFrequencies() {
		most = max(most, real(1/curve.At(hz)))
	}
	return math.Sqrt(d.PowerHandling / most)
}
