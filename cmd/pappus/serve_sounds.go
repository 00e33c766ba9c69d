package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"sync"

	"pappus/layout"
	"pappus/layout/prose"
	"pappus/preview"
	"pappus/preview/programme"
	"pappus/preview/wave"
	"pappus/render/page"
	"pappus/timing"

	"github.com/gopxl/beep/v2"
	"gonum.org/v1/gonum/spatial/r3"
)

// pageProgrammes lists what can be played on the page.
func pageProgrammes() []page.Named {
	var out []page.Named
	for _, k := range programme.All {
		out = append(out, page.Named{Name: k.Name, Words: k.Words})
	}
	return out
}

// pageWords are the cases as the page speaks of them everywhere else.
var pageWords = map[string]string{"as_built": "without delays", "aligned": "with delays", "point": "from one ideal point"}

// pageCases lists the cases that can be heard on the page.
func pageCases() []page.Named {
	var out []page.Named
	for _, c := range preview.Cases {
		words, ok := pageWords[c.Name]
		if !ok {
			words = c.Words
		}
		out = append(out, page.Named{Name: c.Name, Words: words})
	}
	return out
}

// mostHearings is how many sets of cases are kept: one switches between the cases
// of one set.
const mostHearings = 3

// hearings makes sounds for the page.
type hearings struct {
	mu   sync.Mutex
	kept []keptHearing // the last used at the end
}

// keptHearing is one programme in all cases, matched in level.
type keptHearing struct {
	heardAs
	loop programme.Loop
	set  *preview.Set
}

// heardAs is what is heard, but for the case.
type heardAs struct {
	plan     *timing.Plan
	hearing  page.Hearing
	walks    bool
	from, to r3.Vec // m, where it walks
}

func newHearings() *hearings { return new(hearings) }

// sound writes one period of a programme as it is heard for ever: its end, with
// the echoes, joins on to its beginning.
func (h *hearings) sound(ctx context.Context, w io.Writer, p *timing.Plan, of page.Hearing) error {
	i, err := caseNamed(of.Case)
	if err != nil {
		return err
	}
	k, err := h.hearing(ctx, heardAs{plan: p, hearing: of})
	if err != nil {
		return err
	}
	heard := k.set.Through(i, k.loop.Streamer())
	if err := skip(ctx, heard, len(k.loop)); err != nil {
		return err
	}
	return wave.Write(w, beep.Take(len(k.loop), heard), pageFormat(p, of, i))
}

// caseNamed returns the index of a case.
func caseNamed(name string) (int, error) {
	i := slices.IndexFunc(preview.Cases, func(c preview.Case) bool { return c.Name == name })
	if i < 0 {
		return 0, fmt.Errorf("%w: no case is called %s", page.ErrAsked, name)
	}
	return i, nil
}

// pageFormat is how a sound is written for the page.
func pageFormat(p *timing.Plan, of page.Hearing, at int) wave.Format {
	f := wave.Format{Rate: rate, Channels: 1, Depth: wave.PCM16, Title: p.Array.Name + ", " + of.Programme + ", " + preview.Cases[at].Words}
	if of.TwoEars {
		f.Channels = 2
	}
	return f
}

// skip leaves out the first period, which lacks the echoes of one before it.
func skip(ctx context.Context, s beep.Streamer, n int) error {
	buffer := make([][2]float64, 4096)
	for n > 0 && ctx.Err() == nil {
		got, ok := s.Stream(buffer[:min(n, len(buffer))])
		if !ok {
			return s.Err()
		}
		n -= got
	}
	return ctx.Err()
}

// hearing returns a programme in all cases.
func (h *hearings) hearing(ctx context.Context, as heardAs) (keptHearing, error) {
	as.hearing.Case = ""
	h.mu.Lock()
	defer h.mu.Unlock()
	for i, k := range h.kept {
		if k.heardAs == as {
			h.kept = append(slices.Delete(h.kept, i, i+1), k)
			return k, nil
		}
	}
	if err := ctx.Err(); err != nil {
		return keptHearing{}, err
	}
	k, err := newHearing(ctx, as)
	if unreachable(err) || errors.Is(err, preview.ErrWay) {
		return k, fmt.Errorf("%w: %w", page.ErrAsked, err)
	}
	if err != nil {
		return k, err
	}
	if as.walks { // it takes tens of MB: one is enough
		h.kept = slices.DeleteFunc(h.kept, func(k keptHearing) bool { return k.walks })
	}
	if h.kept = append(h.kept, k); len(h.kept) > mostHearings {
		h.kept = slices.Delete(h.kept, 0, 1)
	}
	return k, nil
}

// unreachable tells of a place that no sound can reach.
func unreachable(err error) bool {
	return errors.Is(err, layout.ErrUnreachable)
}

func newHearing(ctx context.Context, as heardAs) (keptHearing, error) {
	kind, err := chosen(as.hearing.Programme)
	if err != nil {
		return keptHearing{}, err
	}
	k := keptHearing{heardAs: as, loop: kind.Make(rate)}
	who := preview.Listener{TwoEars: as.hearing.TwoEars, Dry: as.hearing.Dry}
	if !as.walks {
		k.set, err = preview.NewSet(ctx, as.plan, who, preview.Cases, k.pass(len(k.loop)), rate)
		return k, err
	}
	way := preview.Way{Places: []r3.Vec{as.from, as.to}}
	k.set, err = preview.NewWalk(ctx, as.plan, who, way, preview.Cases, k.pass(as.samples()), rate)
	return k, err
}

// pass gives the programme from its beginning, for so many samples.
func (k keptHearing) pass(samples int) func() beep.Streamer {
	return func() beep.Streamer { return beep.Take(samples, k.loop.Streamer()) }
}

// A walk on the page takes a while longer than the way, to hear where it ends, and
// is not so long that it takes much memory.
const (
	longestWay = 8.0 // m
	standing   = 1.0 // s
)

// samples is how long a walk is heard.
func (as heardAs) samples() int {
	return int((r3.Norm(r3.Sub(as.to, as.from))/preview.Pace + standing) * rate)
}

// walk writes what is heard on a straight way, at an easy pace.
func (h *hearings) walk(ctx context.Context, w io.Writer, p *timing.Plan, from, to r3.Vec, of page.Hearing) error {
	i, err := caseNamed(of.Case)
	if err != nil {
		return err
	}
	if long := r3.Norm(r3.Sub(to, from)); !(long <= longestWay) {
		return prose.Errorf("%w: a way of %.1f m; must be at most %g m", page.ErrAsked, long, longestWay)
	}
	k, err := h.hearing(ctx, heardAs{plan: p, hearing: of, walks: true, from: from, to: to})
	if err != nil {
		return err
	}
	if err := ctx.Err(); err != nil {
		return err
	}
	return wave.Write(w, k.set.Through(i, k.pass(k.samples())()), pageFormat(p, of, i))
}
