package timing

import (
	"fmt"
	"math"
	"math/cmplx"
	"slices"

	"pappus/layout"
	"pappus/timing/band"
	"pappus/timing/unlike"
)

// Unlike hears a plan at its spot with a driver of its own values in each place, in the plan's
// strings and the box that they share. Against twins it changes what each driver gives there,
// by one factor for each driver and frequency; all else is the plan's. As for the plan's high-pass,
// all channels are taken to move alike, whatever their delays, and a vent is left out.
// It is never changed after it is made, and serves several goroutines, each by its UnlikeEar.
type Unlike struct {
	Nominal  unlike.Driver
	spot     *Spot
	pressure pressures // of twins
	network  unlike.Network
	gain     []float64      // of each channel: see feed.gain
	twin     [][]complex128 // [frequency][mount] velocity of twins
	loads    []float64      // Hz, at which loads are solved
	twinLoad [][]complex128 // [frequency][mount], there
	travel   [][]float64    // [frequency][mount] m, peak excursion of twins there; nil: not known
}

// NominalDriver returns a design's driver in free air as a network takes it; how its cone
// moves is not known unless fs, Qms and Qes are.
func NominalDriver(d layout.Driver) unlike.Driver {
	out := unlike.Driver{DCOhm: d.DCOhm, Inductance: d.Small.Inductance}
	if s := d.Small; s.Fs > 0 && s.Qms > 0 && s.Qes > 0 {
		out.Resonance, out.Qms, out.Qes = s.Fs, s.Qms, s.Qes
	}
	return out
}

// NewUnlike returns what hears a plan whose twins are such nominal drivers.
func NewUnlike(p *Plan, nominal unlike.Driver) (*Unlike, error) {
	planner, err := NewPlanner(p.Array)
	if err != nil {
		return nil, err
	}
	u := &Unlike{Nominal: nominal, spot: &p.Spot, pressure: planner.pressure, gain: gains(p.Array, p.Channels), loads: loadFrequencies()}
	u.pressure.hear(planner.scene, p.Array.Spot)
	u.network = unlike.Network{Nominal: nominal, FeedOhm: p.wireOhm(), Stiffness: stiffness(p.Array.Driver.Resonance, nominal.Resonance)}
	for i, c := range p.Channels {
		u.network.Volt = append(u.network.Volt, p.Array.Wiring.Voltage*math.Abs(c.factor()))
		for _, mounts := range p.Banks[i].Strings {
			u.network.Strings = append(u.network.Strings, unlike.String{Places: mounts, Channel: i, Box: p.Array.Mounts[mounts[0]].Body})
		}
	}
	s, err := u.network.NewSolver()
	if err != nil {
		return nil, err
	}
	u.twin, u.twinLoad = velocities(s, u.pressure.frequency), velocities(s, u.loads)
	u.move()
	return u, nil
}

// stiffness returns that of a box over the cones' that raises a resonance of free air to one in
// the body; 0 where either is not known.
func stiffness(inBody, free float64) float64 {
	if !(free > 0) {
		return 0
	}
	return max(0, inBody*inBody/(free*free)-1)
}

// velocities returns those of all places at frequencies in Hz.
func velocities(s *unlike.Solver, frequency []float64) [][]complex128 {
	out := make([][]complex128, len(frequency))
	for f, hz := range frequency {
		s.At(hz)
		out[f] = slices.Clone(s.Velocity)
	}
	return out
}

// move fills in how far twins move behind the high-pass.
func (u *Unlike) move() {
	cone, high := coneOf(u.spot.Array.Driver), u.spot.Protection.HighPass()
	if !cone.IsKnown() {
		return
	}
	for _, hz := range u.loads {
		row, one := make([]float64, len(u.spot.Arrivals)), cone.Excursion(hz)*cmplx.Abs(high.Response(hz))
		for m, r := range u.spot.Arrivals {
			c := u.spot.Channels[r.Channel]
			row[m] = one * u.spot.Array.Wiring.Voltage * math.Abs(c.factor()) / c.series()
		}
		u.travel = append(u.travel, row)
	}
}

// Places returns the mounts of each string, and its channel, in the plan's order.
func (u *Unlike) Places() []unlike.String { return u.network.Strings }

// Weights returns what part of the sum of magnitudes at the spot, in energy mean from 500 Hz
// to 4 kHz, is each mount's with twins; they sum to 1.
func (u *Unlike) Weights() []float64 {
	out, sum := make([]float64, len(u.spot.Arrivals)), 0.0
	for m, r := range u.spot.Arrivals {
		out[m] = math.Abs(u.gain[r.Channel]) * math.Sqrt(u.pressure.energy(m))
		sum += out[m]
	}
	for m := range out {
		if out[m] /= sum; !(sum > 0) {
			out[m] = 1 / float64(len(out))
		}
	}
	return out
}

// Curves returns what a driver's impedance and its velocity for an ampere are over the nominal
// driver's at Frequencies, as logarithms, in a box as if all were of its kind.
func (u *Unlike) Curves(d unlike.Driver) (ohm, velocity []complex128, err error) {
	one := u.network
	one.Strings, one.Volt, one.FeedOhm = []unlike.String{{Places: []int{0}}}, []float64{1}, 0
	s, err := one.NewSolver()
	if err != nil {
		return nil, nil, err
	}
	for _, fill := range []unlike.Driver{u.Nominal, d} {
		if err := s.Fill([]unlike.Driver{fill}); err != nil {
			return nil, nil, err
		}
		for f, hz := range u.Frequencies() {
			s.At(hz)
			if ohm == nil || len(ohm) <= f {
				ohm, velocity = append(ohm, s.Ampere[0]), append(velocity, s.Velocity[0]/s.Ampere[0])
				continue
			}
			ohm[f] = cmplx.Log(ohm[f] / s.Ampere[0])
			velocity[f] = cmplx.Log(s.Velocity[0] / s.Ampere[0] / velocity[f])
		}
	}
	return ohm, velocity, nil
}

// UnlikeEar hears one lot of drivers after the other. It is for one goroutine.
type UnlikeEar struct {
	*Unlike
	solver   *unlike.Solver
	pressure pressures
	arrivals []Arrival
	mean     []float64 // of each mount: energy of its factors from 500 Hz to 4 kHz
}

// Ear returns an ear.
func (u *Unlike) Ear() (*UnlikeEar, error) {
	s, err := u.network.NewSolver()
	e := &UnlikeEar{Unlike: u, solver: s, pressure: u.pressure, mean: make([]float64, len(u.spot.Arrivals))}
	e.pressure.direct, e.pressure.whole = slices.Clone(u.pressure.direct), slices.Clone(u.pressure.whole)
	return e, err
}

// UnlikeHeard is what is heard of drivers that are not twins, and what they bear.
type UnlikeHeard struct {
	Response Response
	Mean     float64 // dB, energy mean of Response.Aligned from 500 Hz to 4 kHz
	Measures         // with the delays
	// LeastOhm is the least magnitude of any channel's load from 20 Hz to 20 kHz.
	LeastOhm     float64
	LeastChannel int     // index into Spot.Channels
	Watt         float64 // most of any tone in any driver
	WattMount    int
	Travel       float64 // m, peak, the most of any tone and cone, behind the high-pass; NaN: not known
	TravelMount  int
	// Rise is by how much in dB a cone moves further than its twin would, at most, from 20 Hz to
	// 20 kHz.
	Rise float64
}

// Hear returns what a driver in each mount, in the order of Array.Mounts, comes to. Errors tell
// of impossible drivers.
func (e *UnlikeEar) Hear(drivers []unlike.Driver) (UnlikeHeard, error) {
	if len(drivers) != len(e.spot.Arrivals) {
		return UnlikeHeard{}, fmt.Errorf("%d drivers for %d mounts", len(drivers), len(e.spot.Arrivals))
	}
	if err := e.solver.Fill(drivers); err != nil {
		return UnlikeHeard{}, err
	}
	e.fill(drivers)
	e.arrivals = append(e.arrivals[:0], e.spot.Arrivals...)
	for m := range e.arrivals {
		a := &e.arrivals[m]
		a.Time, a.Field = a.Time+drivers[m].Late, a.Field+drivers[m].Late
		a.Level += 10 * math.Log10(e.mean[m])
	}
	var h UnlikeHeard
	h.Response, h.Measures, _, _ = e.pressure.sumUp(e.arrivals, e.spot.Channels, e.gain, e.spot.Protection.HighPass())
	energy := 0.0
	for _, db := range h.Response.Aligned[e.pressure.low:e.pressure.high] {
		energy += math.Pow(10, db/10) / float64(e.pressure.high-e.pressure.low)
	}
	h.Mean = 10 * math.Log10(energy)
	e.load(&h)
	return h, nil
}

// fill sets what each driver gives at the spot.
func (e *UnlikeEar) fill(drivers []unlike.Driver) {
	n, low, high := len(e.pressure.frequency), e.pressure.low, e.pressure.high
	clear(e.mean)
	for f, hz := range e.pressure.frequency {
		e.solver.At(hz)
		for m, v := range e.solver.Velocity {
			factor := v / e.twin[f][m]
			if f >= low && f < high {
				e.mean[m] += energyOf(factor) / float64(high-low)
			}
			if late := drivers[m].Late; late != 0 {
				factor *= turn(hz, late)
			}
			i := m*n + f
			e.pressure.direct[i] = e.Unlike.pressure.direct[i] * factor
			if e.pressure.echoed {
				e.pressure.whole[i] = e.Unlike.pressure.whole[i] * factor
			}
		}
	}
}

// load fills in what amplifiers and drivers bear.
func (e *UnlikeEar) load(h *UnlikeHeard) {
	h.LeastOhm, h.Travel = math.Inf(1), math.NaN()
	most := 0.0
	for f, hz := range e.loads {
		e.solver.At(hz)
		for c, ampere := range e.solver.Ampere {
			if ohm := e.network.Volt[c] / cmplx.Abs(ampere); ohm < h.LeastOhm {
				h.LeastOhm, h.LeastChannel = ohm, c
			}
		}
		for i, s := range e.network.Strings {
			for _, m := range s.Places {
				if watt := real(e.solver.Volt[m] * cmplx.Conj(e.solver.String[i])); watt > h.Watt {
					h.Watt, h.WattMount = watt, m
				}
				factor := energyOf(e.solver.Velocity[m]) / energyOf(e.twinLoad[f][m])
				most = max(most, factor)
				if e.travel == nil {
					continue
				}
				if x := e.travel[f][m] * math.Sqrt(factor); !(x <= h.Travel) {
					h.Travel, h.TravelMount = x, m
				}
			}
		}
	}
	h.Rise = 10 * math.Log10(most)
}

// Frequencies returns those in Hz at which drivers are held against each other: three to the
// octave from two octaves below the nominal resonance in the box, or from 125 Hz, up to where
// drivers are weighed.
func (u *Unlike) Frequencies() []float64 {
	low := layout.WeightLowHz / 4.0
	if hz := u.Nominal.Resonance * math.Sqrt(1+u.network.Stiffness); hz > 0 {
		low = min(low, hz/4)
	}
	const perOctave = 3
	out := make([]float64, 1+int(math.Ceil(math.Log2(layout.WeightHighHz/low)*perOctave)))
	band.Log(out, low, layout.WeightHighHz)
	return out
}

// Beyond is what is asked too much of, by more than the plan itself allows.
type Beyond struct{ Under, Hot, Far bool }

// Beyond tells whether a load is below the amplifier's minimum, a driver gets more power
// than it stands for long, or a cone moves beyond Xmax; where a limit is not known, nothing is.
func (h UnlikeHeard) Beyond(p *Plan) Beyond {
	d := p.Array.Driver
	return Beyond{under(p.Array.Wiring.MinimumLoad, h.LeastOhm), d.PowerHandling > 0 && h.Watt > d.PowerHandling,
		d.Small.Reach > 0 && h.Travel > d.Small.Reach}
}
