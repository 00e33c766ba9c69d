package preview

import (
	"context"
	"fmt"
	"io"
	"sync"

	"pappus/layout/prose"
	"pappus/preview/programme"
	"pappus/preview/wave"
	"pappus/timing"

	"github.com/gopxl/beep/v2"
	"github.com/hashicorp/golang-lru/v2/simplelru"
	"gonum.org/v1/gonum/spatial/r3"
)

const (
	mostKept   = 3
	longestWay = 8.0 // m, of a walk, which takes memory
)

// Heard is a programme as it is heard in every case of CasesOf its plan.
type Heard struct {
	Plan      *timing.Spot
	Programme string
	Listener  Listener // whose place is not counted
	Walk      bool
	From, To  r3.Vec // m, where the listener walks, straight and at Pace
	Away      bool   // without a walk: the listener is at From, and not at the spot
}

// Kept makes sounds one by one, and keeps the last few sets of cases: one switches
// between the cases of one set. It may be used from several goroutines.
type Kept struct {
	mu   sync.Mutex
	sets *simplelru.LRU[Heard, loopSet]
}

// loopSet is one programme in all cases, matched in level.
type loopSet struct {
	loop programme.Loop
	set  *Set
}

// NewKept returns a Kept that has made nothing.
func NewKept() *Kept {
	sets, err := simplelru.NewLRU[Heard, loopSet](mostKept, nil)
	if err != nil {
		panic(err) // of a size below 1
	}
	return &Kept{sets: sets}
}

// Write writes a WAV file of one case: one period of the programme as it is heard for
// ever, its end joining on to its beginning, or a walk with a second at its end. Errors
// wrap ErrWay where it is not possible, or are those of ctx or w.
func (k *Kept) Write(ctx context.Context, w io.Writer, h Heard, kind string) error {
	cases := CasesOf(h.Plan)
	i := caseNamed(cases, kind)
	if i < 0 {
		return prose.Saying("no case is called "+kind, ErrWay)
	}
	if long := r3.Norm(r3.Sub(h.To, h.From)); h.Walk && !(long <= longestWay) {
		return prose.Saying(prose.Sprintf("a way of %.1f m; must be at most %g m", long, longestWay), ErrWay)
	}
	s, err := k.of(ctx, h)
	if err != nil {
		return err
	}
	f := wave.Format{Rate: Rate, Channels: 1, Depth: wave.PCM16, Title: h.Plan.Array.Name + ", " + h.Programme + ", " + cases[i].Words}
	if h.Listener.TwoEars {
		f.Channels = 2
	}
	if h.Walk {
		return wave.Write(w, s.set.Streamer(i), f)
	}
	heard := Until(ctx, s.set.Through(i, s.loop.Streamer()))
	each(beep.Take(len(s.loop), heard), func([][2]float64) {}) // the first period lacks the echoes of one before it
	return wave.Write(w, beep.Take(len(s.loop), heard), f)
}

// of returns the set of what is heard, made where it is not kept.
func (k *Kept) of(ctx context.Context, h Heard) (loopSet, error) {
	k.mu.Lock()
	defer k.mu.Unlock()
	if s, ok := k.sets.Get(h); ok {
		return s, nil
	}
	if err := ctx.Err(); err != nil {
		return loopSet{}, err
	}
	s, err := newLoopSet(ctx, h)
	if err != nil {
		return s, err
	}
	if h.Walk { // it takes tens of MB: one is enough
		for _, other := range k.sets.Keys() {
			if other.Walk {
				k.sets.Remove(other)
			}
		}
	}
	k.sets.Add(h, s)
	return s, nil
}

func newLoopSet(ctx context.Context, h Heard) (loopSet, error) {
	kind, ok := programme.Named(h.Programme)
	if !ok {
		return loopSet{}, fmt.Errorf("no programme is called %s", h.Programme)
	}
	s := loopSet{loop: kind.Make(Rate)}
	var err error
	if !h.Walk {
		if h.Listener.At = nil; h.Away {
			h.Listener.At = &h.From
		}
		s.set, err = NewSet(ctx, h.Plan, h.Listener, CasesOf(h.Plan), s.pass(len(s.loop)), Rate)
		return s, err
	}
	way := Way{Places: []r3.Vec{h.From, h.To}}
	s.set, err = NewWalk(ctx, h.Plan, h.Listener, way, CasesOf(h.Plan), s.pass(int(way.lasting()*Rate)), Rate)
	return s, err
}

// pass gives the programme from its beginning, for so many samples.
func (s loopSet) pass(samples int) func() beep.Streamer {
	return func() beep.Streamer { return beep.Take(samples, s.loop.Streamer()) }
}
