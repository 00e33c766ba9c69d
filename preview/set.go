package preview

import (
	"sync"

	"pappus/preview/through"
	"pappus/timing"

	"github.com/gopxl/beep/v2"
	"github.com/gopxl/beep/v2/effects"
)

// Set is one programme in every case, matched in level. It may be used from
// several goroutines.
type Set struct {
	programme func() beep.Streamer
	impulses  [][]float64
	gains     []float64
}

// NewSet makes a set of Cases. programme must give the same stream, of finite
// length and at rate samples a second, each time it is called, and from several
// goroutines at once: it is heard once through each case to match the levels.
// The error is the stream's.
func NewSet(p *timing.Plan, programme func() beep.Streamer, rate int) (*Set, error) {
	s := &Set{programme: programme}
	for _, c := range Cases {
		s.impulses = append(s.impulses, Impulse(p, c.Case, rate))
	}
	return s, s.match()
}

// match sets the gains.
func (s *Set) match() error {
	levels := make([]Level, len(s.impulses))
	errs := make([]error, len(s.impulses))
	var wait sync.WaitGroup
	for i := range s.impulses {
		wait.Go(func() {
			heard := s.heard(i, s.programme())
			levels[i] = Measure(heard)
			errs[i] = heard.Err()
		})
	}
	wait.Wait()
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	s.gains = Gains(levels)
	return nil
}

func (s *Set) heard(i int, src beep.Streamer) beep.Streamer {
	return through.New(src, s.impulses[i])
}

// Streamer streams the programme as it is heard in Cases[i], from the beginning
// to the end of its last echo.
func (s *Set) Streamer(i int) beep.Streamer { return s.matched(i, s.programme()) }

// Through streams another source as it is heard in Cases[i], with the gain that
// suits the programme: the programme without an end, say.
func (s *Set) Through(i int, src beep.Streamer) beep.Streamer { return s.matched(i, src) }

func (s *Set) matched(i int, src beep.Streamer) beep.Streamer {
	return &effects.Gain{Streamer: s.heard(i, src), Gain: s.gains[i] - 1}
}
