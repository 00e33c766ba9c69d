package timing

import (
	"math"
	"slices"

	"pappus/layout/impedance"
	"pappus/layout/prose"
	"pappus/layout/wiring"
)

// WireBearable is how much voltage in dB a wire may take off: hardly to be heard
// (common practice).
const WireBearable = 0.3

// Option is one way of stringing some drivers, fed with the amplifier's whole
// voltage through the design's wire.
type Option struct {
	wiring.Arrangement
	NominalOhm, DCOhm float64 // of the drivers alone
	// LowestOhm is the lowest magnitude of the load from 20 Hz to 20 kHz, wire
	// included, by solving the network, and LowestHz where; NaN: not known.
	LowestOhm, LowestHz float64
	// Watt is the most that the amplifier gives for a tone, LeastWatt and MostWatt
	// what it leaves to the driver that gets least and most then.
	Watt, LeastWatt, MostWatt float64
	Chosen                    bool  // as the design's channel of so many drivers is strung
	Refused                   error // why the amplifier may not drive it; nil: it may
}

// Stringing is every way of stringing so many drivers.
type Stringing struct {
	Drivers  int
	Channels []int // the numbers of the channels that have so many
	Options  []Option
}

// Stringings returns the ways of stringing each channel's drivers, one entry for
// each count of drivers, from the least. A plan without channels has none.
func Stringings(p *Plan) []Stringing {
	var out []Stringing
	for _, c := range p.Channels {
		n := len(c.Mounts)
		i, found := slices.BinarySearchFunc(out, n, func(s Stringing, n int) int { return s.Drivers - n })
		if !found {
			out = slices.Insert(out, i, Stringing{Drivers: n, Options: p.options(n, c)})
		}
		out[i].Channels = append(out[i].Channels, c.ID)
	}
	return out
}

// options returns the ways of stringing n drivers, as channel c has them.
func (s *Spot) options(n int, c Channel) []Option {
	curve, known := s.curve()
	d, wire := s.Array.Driver, s.wireOhm()
	var out []Option
	for _, a := range wiring.Arrangements(n) {
		bank, err := impedance.NewBank(a.Lengths(), wire, 0)
		if err != nil {
			panic(err) // an arrangement has strings, and the wire was checked
		}
		o := Option{Arrangement: a, NominalOhm: a.Load(d.NominalOhm), DCOhm: a.Load(d.DCOhm), LowestOhm: math.NaN(), LowestHz: math.NaN(),
			Chosen: a.IsEqual() && a[0].Series == max(c.Series, 1)}
		if known {
			o.LowestHz, o.LowestOhm = bank.Lowest(curve, loadLow, loadHigh)
		}
		o.power(bank, curve, s.Array.Wiring.Voltage)
		o.Refused = o.refuse(d.LeastOhm(), s.Array.Wiring.MinimumLoad)
		out = append(out, o)
	}
	return out
}

// power fills in what the drivers get at the frequency that draws most.
func (o *Option) power(bank impedance.Bank, curve impedance.Curve, volt float64) {
	eachLoad(bank, curve, volt, func(flow *impedance.Flow, watt []float64) {
		if drawn := volt * real(flow.Ampere); drawn > o.Watt {
			o.Watt, o.LeastWatt, o.MostWatt = drawn, slices.Min(watt), slices.Max(watt)
		}
	})
}

// refuse tells why an amplifier may not drive the drivers so strung: as the
// planner does, by the least that one driver makes of itself, without the wire.
func (o *Option) refuse(leastOhm, minimum float64) error {
	err := o.Check(leastOhm, minimum)
	if err != nil && o.DCOhm >= minimum {
		return prose.Errorf("%w: %s come down to %.3g ohm at %.0f Hz, the minimum is %.3g ohm; it can overheat and fail",
			wiring.ErrLoad, o.Arrangement, o.LowestOhm, o.LowestHz, minimum)
	}
	return err
}

// Wire is the wire to the body, and how thick it should be.
type Wire struct {
	Length, Section float64 // m, m2
	Ohm             float64 // out and back
	Loss            float64 // dB, the most that it takes off a channel's voltage
	Least           float64 // m2, the least section that takes off no more than WireBearable; 0: none to be had
	Gauge           int     // the thinnest that does so
}

// Wire returns the wire of a design that has one.
func (p *Plan) Wire() (out Wire, present bool) {
	w := p.Array.Wiring
	if w.WireLength == 0 || len(p.Channels) == 0 {
		return out, false
	}
	out = Wire{Length: w.WireLength, Section: w.WireSection, Ohm: p.wireOhm()}
	lowest := math.Inf(1)
	for i, c := range p.Channels {
		lowest, out.Loss = min(lowest, c.DCOhm), max(out.Loss, p.Banks[i].WireLoss)
	}
	if section, gauge, ok := wiring.LeastSection(w.WireLength, lowest, WireBearable); ok {
		out.Least, out.Gauge = section, gauge
	}
	return out, true
}
