package impedance

import (
	"errors"
	"fmt"
	"math"
	"math/cmplx"

	"pappus/layout/prose"
	"pappus/layout/solve"
)

// State tells whether a driver is alive.
type State int8

// The states of a driver.
const (
	Alive   State = iota
	Open          // its coil is broken: no current
	Shorted       // its terminals touch: no voltage
)

// String names the state.
func (s State) String() string { return [...]string{"alive", "open", "shorted"}[s] }

// Bank is strings of drivers in parallel, of any lengths. Drivers are numbered
// through, string after string.
type Bank struct {
	Strings []String
	FeedOhm float64 // wire from the amplifier to the strings, out and back
}

// String is drivers in series.
type String struct {
	Drivers []State
	WireOhm float64 // of the string itself, out and back
}

// NewBank returns a bank whose strings have lengths drivers each, all alive. No strings, a
// length below 1 and wire that is not 0 or above are errors.
func NewBank(lengths []int, feedOhm, wireOhm float64) (Bank, error) {
	if len(lengths) == 0 {
		return Bank{}, errors.New("impossible bank: no strings")
	}
	for _, ohm := range []float64{feedOhm, wireOhm} {
		if !(ohm >= 0) || math.IsInf(ohm, 0) {
			return Bank{}, prose.Errorf("impossible bank: wire of %g ohm, must be 0 or above", ohm)
		}
	}
	b := Bank{Strings: make([]String, len(lengths)), FeedOhm: feedOhm}
	for i, n := range lengths {
		if n < 1 {
			return Bank{}, fmt.Errorf("impossible bank: string %d has %d drivers, must be 1 or more", i+1, n)
		}
		b.Strings[i] = String{make([]State, n), wireOhm}
	}
	return b, nil
}

// Count returns the number of drivers.
func (b Bank) Count() int {
	n := 0
	for _, s := range b.Strings {
		n += len(s.Drivers)
	}
	return n
}

// Load fills dst with Of each of z. It panics where the lengths differ and allocates nothing.
func (b Bank) Load(dst, z []complex128) {
	if len(dst) != len(z) {
		panic("impedance: lengths differ")
	}
	for f, one := range z {
		dst[f] = b.Of(one)
	}
}

// Of returns the load in ohm that drivers of one impedance make together, feed included. It
// is cmplx.Inf where no current can flow.
func (b Bank) Of(z complex128) complex128 {
	var sum complex128
	for _, s := range b.Strings {
		one := s.impedance(func(int) complex128 { return z })
		if one == 0 {
			return complex(b.FeedOhm, 0)
		}
		sum += admittance(one)
	}
	return b.fed(sum)
}

// fed returns the load of strings with an admittance in siemens together, feed included.
func (b Bank) fed(siemens complex128) complex128 {
	if siemens == 0 {
		return cmplx.Inf()
	}
	return complex(b.FeedOhm, 0) + 1/siemens
}

// admittance returns that of an impedance in ohm, which may be without end.
func admittance(z complex128) complex128 {
	if cmplx.IsInf(z) {
		return 0
	}
	return 1 / z
}

// impedance returns a string's impedance in ohm, by that of each of its drivers; cmplx.Inf
// where no current can flow.
func (s String) impedance(z func(driver int) complex128) complex128 {
	sum := complex(s.WireOhm, 0)
	for i, state := range s.Drivers {
		switch state {
		case Open:
			return cmplx.Inf()
		case Alive:
			sum += z(i)
		}
	}
	return sum
}

// perOctave is how closely Lowest looks before it closes in: a dip of any
// driver is much wider.
const perOctave = 48

// Lowest returns the lowest magnitude of the load, in ohm, that a bank of equal
// drivers makes from low to high Hz, and where. It looks at 48 frequencies in
// each octave, and at those of a measured table, and closes in on the lowest, to a
// millionth of its frequency. low must be above 0 and below high.
func (b Bank) Lowest(c Curve, low, high float64) (hz, ohm float64) {
	size := func(log float64) float64 { return cmplx.Abs(b.Of(c.At(math.Exp(log)))) }
	from, to := math.Log(low), math.Log(high)
	steps := int(math.Ceil((to-from)/math.Ln2*perOctave)) + 1
	step := (to - from) / float64(steps)
	at, least := from, size(from)
	look := func(x float64) {
		if z := size(x); z < least {
			at, least = x, z
		}
	}
	for i := 1; i <= steps; i++ {
		look(from + step*float64(i))
	}
	for _, log := range c.log { // a table may have a kink between two looks
		if log > from && log < to {
			look(log)
		}
	}
	look(solve.Least(size, max(from, at-step), min(to, at+step), 1e-6))
	return math.Exp(at), least
}

// Flow is what flows in a bank at one frequency: complex amplitudes, RMS.
type Flow struct {
	Load     complex128   // ohm, feed included
	Ampere   complex128   // from the amplifier
	BankVolt complex128   // over the strings
	String   []complex128 // A, one for each string
	Volt     []complex128 // one for each driver
	Known    bool         // false where the bank is a dead short without any wire
}

// Flow fills dst with what flows where the amplifier gives volt (RMS) and the
// drivers have impedances z in ohm, one each. It reuses the slices of dst.
//
// The voltage of an open driver is that over its gap; where one string has more
// than one gap, nothing settles how they share it, and they get equal parts. The
// currents of a bank that is shorted without any wire are not to be known: all
// are NaN, the load is 0, Known is false. Flow panics unless there is one z
// for each driver.
func (b Bank) Flow(dst *Flow, z []complex128, volt float64) {
	if len(z) != b.Count() {
		panic("impedance: one impedance for each driver")
	}
	*dst = Flow{String: dst.String[:0], Volt: dst.Volt[:0], BankVolt: complex(volt, 0), Known: true}
	var siemens complex128
	shorts, first := 0, 0
	for _, s := range b.Strings {
		one := s.impedance(func(i int) complex128 { return z[first+i] })
		if one == 0 {
			shorts++
		} else {
			siemens += admittance(one)
		}
		dst.String = append(dst.String, one) // its impedance, for now
		first += len(s.Drivers)
	}
	if dst.Load = b.fed(siemens); shorts > 0 {
		dst.Load = complex(b.FeedOhm, 0)
	}
	switch {
	case dst.Load == 0:
		dst.Known, dst.Ampere, dst.BankVolt = false, cmplx.NaN(), cmplx.NaN()
	case !cmplx.IsInf(dst.Load):
		dst.Ampere = complex(volt, 0) / dst.Load
		dst.BankVolt -= dst.Ampere * complex(b.FeedOhm, 0)
	}
	first = 0
	for i, s := range b.Strings {
		dst.String[i] = dst.current(dst.String[i], shorts)
		s.volts(dst, dst.String[i], z[first:first+len(s.Drivers)])
		first += len(s.Drivers)
	}
}

// current returns that of a string of an impedance in ohm, in A. Strings that are shorted
// throughout and have no wire take all of it, in equal parts.
func (f *Flow) current(ohm complex128, shorts int) complex128 {
	switch {
	case !f.Known:
		return cmplx.NaN()
	case shorts > 0 && ohm == 0:
		return f.Ampere / complex(float64(shorts), 0)
	case shorts > 0 || cmplx.IsInf(ohm):
		return 0
	}
	return f.BankVolt / ohm
}

// volts appends the voltage over each driver of a string.
func (s String) volts(dst *Flow, ampere complex128, z []complex128) {
	gaps := 0
	for _, state := range s.Drivers {
		if state == Open {
			gaps++
		}
	}
	for i, state := range s.Drivers {
		switch state {
		case Open:
			dst.Volt = append(dst.Volt, dst.BankVolt/complex(float64(gaps), 0))
		case Shorted:
			dst.Volt = append(dst.Volt, 0)
		default:
			dst.Volt = append(dst.Volt, ampere*z[i])
		}
	}
}

// Watts fills dst with the power that each driver turns into heat and sound, and
// panics unless there is one place for each driver. Dead drivers get 0.
func (b Bank) Watts(dst []float64, flow *Flow) {
	if len(dst) != len(flow.Volt) {
		panic("impedance: one place for each driver")
	}
	driver := 0
	for i, s := range b.Strings {
		for _, state := range s.Drivers {
			dst[driver] = 0
			if state == Alive {
				dst[driver] = real(flow.Volt[driver] * cmplx.Conj(flow.String[i]))
			}
			driver++
		}
	}
}
