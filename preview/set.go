package preview

import (
	"cmp"
	"context"

	"pappus/timing"
	"pappus/timing/cores"

	"github.com/gopxl/beep/v2"
	"github.com/gopxl/beep/v2/effects"
)

// Set is one programme in several cases, matched in loudness. It may be used from
// several goroutines.
type Set struct {
	programme func() beep.Streamer
	through   []func(beep.Streamer) beep.Streamer
	gains     []float64
	measure   Measure
}

// NewSet makes a set of cases for a listener. programme must give the same stream,
// of finite length and at rate samples a second, each time it is called, and from
// several goroutines at once: it is heard once through each case to match the
// levels. It works until ctx ends. The error is then that of ctx, else the stream's,
// or wraps ErrWay.
func NewSet(ctx context.Context, p *timing.Spot, who Listener, cases []Case, programme func() beep.Streamer, rate int) (*Set, error) {
	responses, err := who.Responses(p, plain(cases), rate)
	if err != nil {
		return nil, err
	}
	s := &Set{programme: programme}
	for _, r := range responses {
		s.through = append(s.through, r.Through)
	}
	return s, s.match(ctx, rate)
}

// match sets the gains, at rate samples a second.
func (s *Set) match(ctx context.Context, rate int) error {
	levels, errs := make([]Level, len(s.through)), make([]error, len(s.through))
	cores.Each(len(levels), func(_, i int) {
		heard := s.through[i](Until(ctx, s.programme()))
		levels[i], errs[i] = LevelOf(heard, rate), heard.Err()
	})
	s.gains, s.measure = Gains(levels), common(levels)
	return cmp.Or(errs...)
}

// Streamer streams the programme as it is heard in case i, from the beginning to
// the end of its last echo.
func (s *Set) Streamer(i int) beep.Streamer { return s.Through(i, s.programme()) }

// Through streams another source as it is heard in case i, with the gain that
// suits the programme: the programme without an end, say.
func (s *Set) Through(i int, src beep.Streamer) beep.Streamer {
	return &effects.Gain{Streamer: s.through[i](src), Gain: s.gains[i] - 1}
}
