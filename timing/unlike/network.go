package unlike

import (
	"errors"
	"fmt"
	"math"
	"math/cmplx"

	"pappus/layout/prose"
)

// String is drivers in series, by their places, on a channel and in a box.
type String struct {
	Places       []int
	Channel, Box int
}

// Network is strings on channels and in boxes. Places are numbered from 0, each in one string.
type Network struct {
	Nominal Driver
	Strings []String
	Volt    []float64 // RMS, of each channel's amplifier
	FeedOhm float64   // wire from each amplifier to its strings, out and back
	// Stiffness is that of a box, all its drivers together, over that of the nominal cone:
	// (fc/fs)2 - 1.
	Stiffness float64
}

// Solver solves a network for one lot of drivers. It may not be used by two goroutines at
// once.
type Solver struct {
	net    *Network
	cones  []cone
	moves  []motion  // of each place, at the frequency that was solved last
	inBox  []float64 // drivers in each box
	spring float64   // of a box, over the moving mass of the nominal driver

	// Of each string at the frequency that was solved last: impedance in ohm, voltage for one
	// of pressure, which is its drivers' velocity for an ampere as well, one over mechanical
	// impedances.
	ohm, turn, free []complex128
	yield           []complex128   // siemens, of each channel's strings
	pull            [][]complex128 // [channel][box]: what pressure takes of its current
	matrix          [][]complex128 // of the boxes' pressures, the right side last
	Flow
}

// Flow is what a network does at one frequency, complex amplitudes, RMS.
type Flow struct {
	Ampere   []complex128 // from each channel's amplifier
	String   []complex128 // A
	Volt     []complex128 // of each place
	Velocity []complex128 // of each place, in a unit of the nominal driver's
}

var errNetwork = errors.New("impossible network")

// NewSolver returns a solver with all places filled with nominal drivers. Errors say what
// cannot be.
func (n *Network) NewSolver() (*Solver, error) {
	count, boxes := 0, 0
	for _, s := range n.Strings {
		count, boxes = count+len(s.Places), max(boxes, s.Box+1)
	}
	switch {
	case count == 0:
		return nil, fmt.Errorf("%w: no drivers", errNetwork)
	case !(n.FeedOhm >= 0) || !(n.Stiffness >= 0) || math.IsInf(n.FeedOhm+n.Stiffness, 0):
		return nil, prose.Errorf("%w: wire of %g ohm, stiffness %g, must be 0 or above", errNetwork, n.FeedOhm, n.Stiffness)
	}
	s := &Solver{net: n, inBox: make([]float64, boxes)}
	taken := make([]bool, count)
	for i, str := range n.Strings {
		if str.Channel < 0 || str.Channel >= len(n.Volt) || str.Box < 0 {
			return nil, fmt.Errorf("%w: string %d is on channel %d of %d", errNetwork, i+1, str.Channel, len(n.Volt))
		}
		s.inBox[str.Box] += float64(len(str.Places))
		for _, p := range str.Places {
			if p < 0 || p >= count || taken[p] {
				return nil, fmt.Errorf("%w: place %d is none of %d, or in two strings", errNetwork, p, count)
			}
			taken[p] = true
		}
	}
	w := 2 * math.Pi * n.Nominal.Resonance
	s.spring, s.cones, s.moves = n.Stiffness*w*w, make([]cone, count), make([]motion, count)
	s.room(boxes, count)
	all := make([]Driver, count)
	for i := range all {
		all[i] = n.Nominal
	}
	return s, s.Fill(all)
}

// room makes room for what is solved.
func (s *Solver) room(boxes, places int) {
	strings, channels := len(s.net.Strings), len(s.net.Volt)
	for _, to := range []*[]complex128{&s.ohm, &s.turn, &s.free, &s.String} {
		*to = make([]complex128, strings)
	}
	s.yield, s.Ampere = make([]complex128, channels), make([]complex128, channels)
	s.Volt, s.Velocity = make([]complex128, places), make([]complex128, places)
	for range channels {
		s.pull = append(s.pull, make([]complex128, boxes))
	}
	for range boxes {
		s.matrix = append(s.matrix, make([]complex128, boxes+1))
	}
}

// Fill puts a driver into each place. It panics unless there is one for each.
func (s *Solver) Fill(drivers []Driver) error {
	if len(drivers) != len(s.cones) {
		panic("unlike: one driver for each place")
	}
	for i, d := range drivers {
		if err := d.check(); err != nil {
			return fmt.Errorf("place %d: %w", i+1, err)
		}
		if d.Moves() != s.net.Nominal.Moves() {
			return fmt.Errorf("place %d: %w: how cones move must be known of all drivers and the nominal one, or of none", i+1, errNetwork)
		}
		s.cones[i] = coneOf(d, s.net.Nominal)
	}
	return nil
}

// At solves the network at a frequency in Hz, above 0; what it finds is in Flow until the next
// call. It allocates nothing.
func (s *Solver) At(hz float64) {
	w := 2 * math.Pi * hz
	s.gather(w)
	s.press(w)
	for i, str := range s.net.Strings {
		p := s.matrix[str.Box][len(s.matrix)]
		s.String[i] = (s.behindWire(str.Channel) + s.turn[i]*p) / s.ohm[i]
		for _, place := range str.Places {
			m := &s.moves[place]
			s.Velocity[place] = m.driven*s.String[i] - m.free*p
			s.Volt[place] = m.ohm*s.String[i] - m.driven*p
		}
	}
	clear(s.Ampere)
	for i, str := range s.net.Strings {
		s.Ampere[str.Channel] += s.String[i]
	}
}

// gather sums up each string and channel.
func (s *Solver) gather(w float64) {
	clear(s.yield)
	for _, row := range s.pull {
		clear(row)
	}
	for i, str := range s.net.Strings {
		var ohm, turn, free complex128
		for _, place := range str.Places {
			m := s.cones[place].at(w)
			s.moves[place] = m
			ohm, turn, free = ohm+m.ohm, turn+m.driven, free+m.free
		}
		s.ohm[i], s.turn[i], s.free[i] = ohm, turn, free
		s.yield[str.Channel] += 1 / ohm
		s.pull[str.Channel][str.Box] += turn / ohm
	}
}

// behindWire returns the voltage over a channel's strings.
func (s *Solver) behindWire(channel int) complex128 {
	v := complex(s.net.Volt[channel], 0)
	for box, pull := range s.pull[channel] {
		v -= complex(s.net.FeedOhm, 0) * pull * s.matrix[box][len(s.matrix)]
	}
	return v / (1 + complex(s.net.FeedOhm, 0)*s.yield[channel])
}

// press finds the pressure in each box, and leaves it in the last column of matrix: with
// spring z, p = z (sum of v) = z sum (turn (U + turn p)/ohm - free p).
func (s *Solver) press(w float64) {
	boxes := len(s.matrix)
	for b, row := range s.matrix {
		clear(row)
		row[b] = 1
	}
	feed := complex(s.net.FeedOhm, 0)
	for i, str := range s.net.Strings {
		row, z := s.matrix[str.Box], complex(0, -s.spring/(s.inBox[str.Box]*w))
		give, fed := z*s.turn[i]/s.ohm[i], 1+feed*s.yield[str.Channel]
		row[str.Box] += z*s.free[i] - give*s.turn[i]
		row[boxes] += give * complex(s.net.Volt[str.Channel], 0) / fed
		for b, pull := range s.pull[str.Channel] {
			row[b] += give * feed * pull / fed
		}
	}
	eliminate(s.matrix)
}

// eliminate solves linear equations whose right side is the last column, and leaves the
// solution there (Gauss, with the greatest pivot of a column).
func eliminate(m [][]complex128) {
	n := len(m)
	for c := range n {
		best := c
		for r := c + 1; r < n; r++ {
			if cmplx.Abs(m[r][c]) > cmplx.Abs(m[best][c]) {
				best = r
			}
		}
		m[c], m[best] = m[best], m[c]
		for r := range n {
			if r == c || m[r][c] == 0 {
				continue
			}
			factor := m[r][c] / m[c][c]
			for k := c; k <= n; k++ {
				m[r][k] -= factor * m[c][k]
			}
		}
	}
	for r := range n {
		m[r][n] /= m[r][r]
	}
}
