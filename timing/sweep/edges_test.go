package sweep_test

import (
	"errors"
	"math"
	"testing"

	"pappus/timing/sweep"
)

// TestMarkers: from 400 Hz to 8 kHz for a tenth of a second, within the sweep, over an octave of a high one and two of
// a low one at least, and of 30 periods of its bandwidth.
func TestMarkers(t *testing.T) {
	for _, c := range []struct{ start, stop, low, high, seconds float64 }{
		{100, 20000, 400, 8000, 0.1}, {500, 20000, 500, 8000, 0.1}, {100, 6000, 400, 6000, 0.1},
		{100, 1000, 250, 1000, 0.1}, {5000, 20000, 5000, 10000, 0.1}, {100, 250, 100, 250, 0.2},
	} {
		s := made(t, c.start, c.stop, 2)
		if low, high := s.MarkerBand(); low != c.low || high != c.high || math.Abs(s.MarkerSeconds()-c.seconds) > 1e-12 {
			t.Errorf("%g to %g Hz: a marker from %g to %g Hz for %g s", c.start, c.stop, low, high, s.MarkerSeconds())
		}
	}
}

// TestUsualFades: four periods of the lowest tone, and a tenth of the sweep at most; 10 ms at the end.
func TestUsualFades(t *testing.T) {
	for _, c := range []struct{ start, length, rise float64 }{{100, 2, 0.04}, {100, 0.3, 0.03}} {
		if s := made(t, c.start, 20000, c.length); math.Abs(s.Rise-c.rise) > 1e-12 || s.Fall != 0.01 {
			t.Errorf("%g s from %g Hz: %g and %g s", c.length, c.start, s.Rise, s.Fall)
		}
	}
}

// TestEdges: what a sweep may just be, and what it may not.
func TestEdges(t *testing.T) {
	usual := made(t, 100, 20000, 2)
	of := func(change func(*sweep.Sweep)) error {
		s := usual
		change(&s)
		return s.Check()
	}
	start := func(hz float64) error { return of(func(s *sweep.Sweep) { s.Start = hz }) }
	stop := func(hz float64) error { return of(func(s *sweep.Sweep) { s.Stop = hz }) }
	length := func(v float64) error { return of(func(s *sweep.Sweep) { s.Length, s.Rise = v, 0.01 }) }
	rise := func(share float64) error { return of(func(s *sweep.Sweep) { s.Rise = share*s.Length - s.Fall }) }
	tail := func(v float64) error { return of(func(s *sweep.Sweep) { s.Tail = v }) }
	for name, c := range map[string]struct {
		err  error
		good bool
	}{
		"from 1 Hz": {start(1), true}, "from 0.95 Hz": {start(0.95), false}, "to 100 kHz": {stop(1e5), true}, "to 105 kHz": {stop(1.05e5), false},
		"0.2 s": {length(0.2), true}, "0.19 s": {length(0.19), false}, "60 s": {length(60), true}, "60.5 s": {length(60.5), false},
		"fades of 49 percent": {rise(0.49), true}, "of 51 percent": {rise(0.51), false},
		"a silence of 0.1 s": {tail(0.1), true}, "of 0.095 s": {tail(0.095), false}, "of 10 s": {tail(10), true}, "of 10.1 s": {tail(10.1), false},
	} {
		if (c.err == nil) != c.good || c.err != nil && !errors.Is(c.err, sweep.ErrSweep) {
			t.Errorf("%s: %v", name, c.err)
		}
	}
}
