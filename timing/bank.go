package timing

import (
	"cmp"
	"math"
	"math/cmplx"
	"slices"

	"pappus/layout/advice"
	"pappus/layout/impedance"
	"pappus/layout/wiring"
)

// Bank is what a channel's drivers make of its amplifier's voltage. Currents and
// powers are the most of any tone in the band at the design's voltage, found by
// solving the network with its wire at each frequency; where the driver's
// impedance is not known they are those of its direct current resistance, which
// hardly ever is exceeded.
type Bank struct {
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

// load fills in what each channel's amplifier sees, and warns of what it or the
// drivers do not bear.
func (plan *Plan) load() {
	wire := plan.wireOhm()
	curve, known := plan.curve()
	for i := range plan.Channels {
		c := &plan.Channels[i]
		bank := c.bank(wire)
		c.Bank = plan.drawn(c, bank, curve)
		c.Bank.LowestHz, c.Bank.LowestOhm = math.NaN(), math.NaN()
		if known {
			c.Bank.LowestHz, c.Bank.LowestOhm = bank.Lowest(curve, loadLow, loadHigh)
		}
	}
	plan.hot()
	plan.weak()
}

// muchMore is by what factor a channel may draw more than the watts that an amplifier is
// sold with before it is spoken of: half a dB.
const muchMore = 1.12

// weak warns of a channel that draws more than the watts that the amplifier is sold with
// because its load is lower than the one that they are for.
func (plan *Plan) weak() {
	w := plan.Array.Wiring
	if !(w.Watt > 0) || len(plan.Channels) == 0 {
		return
	}
	c := slices.MaxFunc(plan.Channels, func(a, b Channel) int { return cmp.Compare(a.Bank.Watt, b.Bank.Watt) })
	if c.Bank.Watt > muchMore*w.Watt {
		plan.warn("amplifier_power", advice.Cost, ChannelDraw{c.ID, c.Bank.Watt, c.Bank.Volt, c.DCOhm, w.Watt, w.IntoOhm})
	}
}

// wireOhm returns the resistance of the wire from the amplifier to the body.
func (plan *Plan) wireOhm() float64 {
	w := plan.Array.Wiring
	if w.WireLength == 0 {
		return 0
	}
	return wiring.WireOhm(w.WireLength, w.WireSection)
}

// curve returns the driver's impedance in the body, as measured or from its
// small-signal values, and whether it is known; if not, that of its direct
// current resistance.
func (plan *Plan) curve() (curve impedance.Curve, known bool) {
	d := plan.Array.Driver
	if len(d.Impedance) > 0 {
		points := make([]impedance.Point, len(d.Impedance))
		for i, p := range d.Impedance {
			points[i] = impedance.Point(p)
		}
		if c, err := impedance.Measured(points); err == nil {
			return c, true
		}
	}
	s := d.Small
	stiffer := 1.0 // the box raises the resonance, and both Q with it
	if resonance, _ := plan.inBody(); resonance > 0 && s.Fs > 0 {
		stiffer = resonance / s.Fs
	}
	c, err := impedance.New(impedance.Driver{Resonance: s.Fs * stiffer, QMS: s.Qms * stiffer, QES: s.Qes * stiffer,
		DCOhm: d.DCOhm, Inductance: s.Inductance})
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
	out := make([]int, max(c.Parallel, 1))
	for i := range out {
		out[i] = max(c.Series, 1)
	}
	return out
}

// bank returns a channel's drivers as a network, all alive.
func (c Channel) bank(wireOhm float64) impedance.Bank {
	b, err := impedance.NewBank(c.lengths(), wireOhm, 0)
	if err != nil {
		panic(err) // neither lengths nor wire can be wrong here
	}
	return b
}

// drawn returns what a channel draws at most.
func (plan *Plan) drawn(c *Channel, bank impedance.Bank, curve impedance.Curve) Bank {
	out := Bank{
		WireOhm: bank.FeedOhm, WireLoss: wiring.WireLoss(bank.FeedOhm, c.DCOhm), Damping: math.Inf(1),
		Volt: plan.Array.Wiring.Voltage * math.Abs(c.factor()),
	}
	if out.WireOhm > 0 {
		out.Damping = c.NominalOhm / out.WireOhm
	}
	n := bank.Count()
	z, watt := make([]complex128, n), make([]float64, n)
	var flow impedance.Flow
	for _, hz := range loadFrequencies() {
		one := curve.At(hz)
		for i := range z {
			z[i] = one
		}
		bank.Flow(&flow, z, out.Volt)
		bank.Watts(watt, &flow)
		out.Ampere = max(out.Ampere, cmplx.Abs(flow.Ampere))
		out.Watt = max(out.Watt, out.Volt*real(flow.Ampere))
		for i, s := range bank.Strings {
			first := i * len(s.Drivers) // strings are equal
			out.DriverVolt = max(out.DriverVolt, cmplx.Abs(flow.Volt[first]))
			out.DriverAmpere = max(out.DriverAmpere, cmplx.Abs(flow.String[i]))
			out.DriverWatt = max(out.DriverWatt, watt[first])
		}
	}
	return out
}

// loadFrequencies returns the frequencies in Hz at which loads are solved.
func loadFrequencies() []float64 {
	n := int(math.Round(math.Log2(loadHigh/loadLow)*loadPerOctave)) + 1
	out := make([]float64, n)
	for i := range out {
		out[i] = loadLow * math.Pow(loadHigh/loadLow, float64(i)/float64(n-1))
	}
	return out
}

// Under tells whether a channel loads the amplifier below its minimum in ohm, at
// direct current or at any frequency from 20 Hz to 20 kHz.
func (c Channel) Under(minimumOhm float64) bool { return under(minimumOhm, c.DCOhm, c.Bank.LowestOhm) }

// under tells whether one of some loads in ohm is below a minimum by more than
// rounding; one that is not known, NaN, is not.
func under(minimumOhm float64, load ...float64) bool {
	for _, ohm := range load {
		if ohm < minimumOhm*(1-1e-9) {
			return true
		}
	}
	return false
}

// bears returns the most voltage (RMS) over a driver that gives it no more power, at
// any frequency, than it stands for long; +Inf where that is not known.
func (plan *Plan) bears() float64 {
	rating := plan.Array.Driver.PowerHandling
	if !(rating > 0) || !(plan.Array.Driver.DCOhm > 0) {
		return math.Inf(1)
	}
	curve, _ := plan.curve()
	most := 0.0
	for _, hz := range loadFrequencies() {
		most = max(most, real(1/curve.At(hz)))
	}
	return math.Sqrt(rating / most)
}

// hot warns of drivers that can get more power than they stand for long.
func (plan *Plan) hot() {
	rating := plan.Array.Driver.PowerHandling
	if !(rating > 0) || len(plan.Channels) == 0 {
		return
	}
	worst := 0
	for i, c := range plan.Channels {
		if c.Bank.DriverWatt > plan.Channels[worst].Bank.DriverWatt {
			worst = i
		}
	}
	if c := plan.Channels[worst]; c.Bank.DriverWatt > rating {
		plan.warn("driver_power", advice.Danger, DriverHeat{c.ID, c.Bank.Volt, c.Bank.DriverWatt, rating})
	}
}
