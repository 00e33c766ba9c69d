package impedance

import (
	"math"
	"math/cmplx"
)

// Failure is one way for a bank to fail, and what comes of it.
type Failure struct {
	String int   // which string, from 0
	Driver int   // which driver of the bank, from 0; -1 where the whole string fails
	State  State // Open or Shorted

	LowestOhm float64 // the lowest magnitude of the load at the frequencies, +Inf where no current flows
	LowestHz  float64 // where; 0 where no current flows
	Quiet     []int   // drivers of the bank that get nothing any more, dead ones included
	// Power is, for each driver, the most that its power grows by at any of the
	// frequencies, as a factor: 1 where nothing changes, 0 where it is quiet.
	Power []float64
}

// Most returns the greatest factor of Power, and the first driver that gets it;
// 0 and -1 without drivers.
func (f Failure) Most() (factor float64, driver int) {
	driver = -1
	for i, p := range f.Power {
		if driver < 0 || p > factor {
			factor, driver = p, i
		}
	}
	return factor, driver
}

// Failures returns what comes of each driver alone failing open or shorted, then
// of each whole string doing so, in a bank of equal drivers on an amplifier that
// holds its voltage. frequency is in Hz, above 0. The bank's own dead drivers
// stay dead, and are not killed again.
//
// A string that is shorted where there is no wire at all leaves a load of 0: its
// amplifier cuts out or dies, and everything is quiet.
func Failures(b Bank, c Curve, frequency []float64) []Failure {
	z := make([]complex128, len(frequency))
	c.Fill(z, frequency)
	s := newStudy(b, frequency, z)
	var out []Failure
	first := 0
	for i, str := range b.Strings {
		for d, now := range str.Drivers {
			for _, state := range []State{Open, Shorted} {
				if now == Alive {
					out = append(out, s.fail(i, first, d, d+1, state))
				}
			}
		}
		first += len(str.Drivers)
	}
	first = 0
	for i, str := range b.Strings {
		for _, state := range []State{Open, Shorted} {
			f := s.fail(i, first, 0, len(str.Drivers), state)
			f.Driver = -1
			out = append(out, f)
		}
		first += len(str.Drivers)
	}
	return out
}

// study holds what all failures of a bank are compared with.
type study struct {
	bank      Bank // a copy, whose states are changed and set back
	frequency []float64
	z         []complex128
	before    [][]float64 // W for each frequency and driver
	after     []float64
	each      []complex128
	flow      Flow
}

func newStudy(b Bank, frequency []float64, z []complex128) *study {
	n := b.Count()
	s := &study{bank: b, frequency: frequency, z: z, after: make([]float64, n), each: make([]complex128, n)}
	s.bank.Strings = append([]String(nil), b.Strings...)
	for i := range s.bank.Strings {
		s.bank.Strings[i].Drivers = append([]State(nil), b.Strings[i].Drivers...)
	}
	s.before = make([][]float64, len(frequency))
	for f := range frequency {
		s.before[f] = make([]float64, n)
		s.solve(f, s.before[f])
	}
	return s
}

// solve fills watts with each driver's power at one frequency, for 1 V.
func (s *study) solve(f int, watts []float64) {
	for i := range s.each {
		s.each[i] = s.z[f]
	}
	s.bank.Flow(&s.flow, s.each, 1)
	s.bank.Watts(watts, &s.flow)
}

// fail kills the drivers of one string from from up to, but not with, to, and
// sets them back.
func (s *study) fail(str, first, from, to int, state State) Failure {
	drivers := s.bank.Strings[str].Drivers
	was := append([]State(nil), drivers...)
	for i := from; i < to; i++ {
		drivers[i] = state
	}
	out := Failure{String: str, Driver: first + from, State: state, LowestOhm: math.Inf(1), Power: make([]float64, len(s.after))}
	for f, hz := range s.frequency {
		s.solve(f, s.after)
		if ohm := cmplx.Abs(s.flow.Load); ohm < out.LowestOhm {
			out.LowestOhm, out.LowestHz = ohm, hz
		}
		for i, w := range s.after {
			if w > 0 && s.before[f][i] > 0 { // not so for NaN, where nothing plays
				out.Power[i] = max(out.Power[i], w/s.before[f][i])
			}
		}
	}
	for i, p := range out.Power {
		if p == 0 {
			out.Quiet = append(out.Quiet, i)
		}
	}
	copy(drivers, was)
	return out
}
