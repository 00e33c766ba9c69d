package impedance

import (
	"fmt"
	"math"
	"math/cmplx"

	"pappus/layout/prose"
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
func (s State) String() string {
	switch s {
	case Alive:
		return "alive"
	case Open:
		return "open"
	case Shorted:
		return "shorted"
	}
	return fmt.Sprintf("State(%d)", int8(s))
}

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

// NewBank returns a bank whose strings have lengths drivers each, all alive. A
// length below 1, no strings, or wire that is not 0 or above is an error that
// wraps ErrBank.
func NewBank(lengths []int, feedOhm, wireOhm float64) (Bank, error) {
	if len(lengths) == 0 {
		return Bank{}, fmt.Errorf("%w: no strings", ErrBank)
	}
	for _, ohm := range []float64{feedOhm, wireOhm} {
		if !(ohm >= 0) || math.IsInf(ohm, 0) {
			return Bank{}, prose.Errorf("%w: wire of %g ohm, must be 0 or above", ErrBank, ohm)
		}
	}
	b := Bank{Strings: make([]String, len(lengths)), FeedOhm: feedOhm}
	for i, n := range lengths {
		if n < 1 {
			return Bank{}, fmt.Errorf("%w: string %d has %d drivers, must be 1 or more", ErrBank, i+1, n)
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

// Load fills dst with the load in ohm that drivers of impedance z, one value per
// frequency, make together, feed included. It is cmplx.Inf where no current can
// flow. Load panics where the lengths differ and allocates nothing.
func (b Bank) Load(dst, z []complex128) {
	if len(dst) != len(z) {
		panic("impedance: lengths differ")
	}
	for f, each := range z {
		dst[f] = b.Of(each)
	}
}

// Of returns the load in ohm that drivers of one impedance make together, as Load does.
func (b Bank) Of(z complex128) complex128 { return b.load(func(int) complex128 { return z }) }

// load returns the load with each driver's own impedance.
func (b Bank) load(z func(driver int) complex128) complex128 {
	sum, first := complex(0, 0), 0
	for _, s := range b.Strings {
		if one, closed := s.impedance(first, z); closed {
			if one == 0 {
				return complex(b.FeedOhm, 0)
			}
			sum += 1 / one
		}
		first += len(s.Drivers)
	}
	if sum == 0 {
		return cmplx.Inf()
	}
	return complex(b.FeedOhm, 0) + 1/sum
}

// impedance returns a string's impedance, and whether current can flow.
func (s String) impedance(first int, z func(driver int) complex128) (sum complex128, closed bool) {
	sum = complex(s.WireOhm, 0)
	for i, state := range s.Drivers {
		switch state {
		case Open:
			return 0, false
		case Alive:
			sum += z(first + i)
		}
	}
	return sum, true
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
	each := func(driver int) complex128 { return z[driver] }
	*dst = Flow{String: dst.String[:0], Volt: dst.Volt[:0], Load: b.load(each), Known: true}
	if cmplx.IsInf(dst.Load) {
		dst.BankVolt = complex(volt, 0)
	} else {
		dst.Ampere = complex(volt, 0) / dst.Load
		dst.BankVolt = complex(volt, 0) - dst.Ampere*complex(b.FeedOhm, 0)
	}
	if dst.Load == 0 {
		dst.Known, dst.Ampere, dst.BankVolt = false, cmplx.NaN(), cmplx.NaN()
	}
	b.strings(dst, each)
	first := 0
	for i, s := range b.Strings {
		s.volts(dst, dst.String[i], z[first:first+len(s.Drivers)])
		first += len(s.Drivers)
	}
}

// strings appends the current of each string. Strings that are shorted
// throughout and have no wire take all of it, in equal parts.
func (b Bank) strings(dst *Flow, z func(driver int) complex128) {
	shorts, first := 0, 0
	for _, s := range b.Strings {
		if one, closed := s.impedance(first, z); closed && one == 0 {
			shorts++
		}
		first += len(s.Drivers)
	}
	first = 0
	for _, s := range b.Strings {
		one, closed := s.impedance(first, z)
		first += len(s.Drivers)
		switch {
		case !dst.Known:
			dst.String = append(dst.String, cmplx.NaN())
		case !closed || (shorts > 0 && one != 0):
			dst.String = append(dst.String, 0)
		case shorts > 0:
			dst.String = append(dst.String, dst.Ampere/complex(float64(shorts), 0))
		default:
			dst.String = append(dst.String, dst.BankVolt/one)
		}
	}
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
