package page

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/radiate"
	"pappus/timing/store"

	lru "github.com/hashicorp/golang-lru/v2"
)

// mostPlans is how many plans are kept for who comes back to one: undo and redo,
// two designs side by side.
const mostPlans = 8

// mostWays is the most ways of sound, drivers times reflections, that a page plans
// for: one that takes many seconds is for the command line.
const mostWays = 70000

// planned is a design with its plan. It does not change.
type planned struct {
	id     string
	text   string
	design *design.Design
	array  *layout.Array
	plan   *timing.Plan
	given  []string      // keys that the text has
	rough  bool          // its channels for seats were found at once: better ones are to be sought
	body   *layout.Array // as designed, where the ball stands for the body in array because its field is not solved for; else nil
	// The spot is a place of its own; else it is the middle one of the seats, or the only one.
	ownSpot bool
	kit     store.Key // of its printed parts
}

// built tells why nothing is to be built from a plan: the ball still stands for the body.
func (m *planned) built() error {
	if m.body != nil {
		return &failure{http.StatusConflict, words.NotYetSolved}
	}
	return nil
}

// plans makes plans and keeps the last few. Those who ask for the same text share
// the work; it ends when none of them waits any more.
type plans struct {
	name string                 // of the design, for messages and for files beside it
	own  func(name string) bool // whether the design's own file names that file; nil: none
	mu   sync.Mutex
	kept *lru.Cache[string, *planned]
	now  map[string]*flight
}

// flight is a plan that is being made.
type flight struct {
	waiting int
	stop    context.CancelFunc
	done    chan struct{}
	plan    *planned
	err     error
}

func newPlans(path string) *plans {
	if path == "" {
		path = "lantern.toml"
	}
	return &plans{name: path, kept: lastUsed[string, *planned](mostPlans), now: map[string]*flight{}}
}

// lastUsed is a cache of so many.
func lastUsed[K comparable, V any](most int) *lru.Cache[K, V] {
	c, err := lru.New[K, V](most)
	if err != nil {
		panic(err) // a cache of nothing
	}
	return c
}

// of returns the plan of a text. The error is faulty where the design is to blame.
func (p *plans) of(ctx context.Context, text string, turn func(context.Context) (func(), error)) (*planned, error) {
	return p.either(ctx, text, false, turn)
}

// either is of, for a rough plan where one will do and there is none that is whole. Without seats
// a plan is never rough.
func (p *plans) either(ctx context.Context, text string, rough bool, turn func(context.Context) (func(), error)) (*planned, error) {
	id := hashOf([]byte(text))
	p.mu.Lock()
	found := p.held(id)
	if found == nil && rough {
		id = roughly(id)
		found = p.held(id)
	}
	if found != nil {
		p.mu.Unlock()
		return found, nil
	}
	f := p.now[id]
	if f == nil {
		f = &flight{done: make(chan struct{})}
		var alone context.Context
		alone, f.stop = context.WithCancel(context.WithoutCancel(ctx))
		p.now[id] = f
		go p.fly(alone, f, id, text, turn)
	}
	f.waiting++
	p.mu.Unlock()
	select {
	case <-f.done:
		return f.plan, f.err
	case <-ctx.Done():
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	if f.waiting--; f.waiting == 0 {
		f.stop()
		if p.now[id] == f {
			delete(p.now, id) // who comes now begins anew
		}
	}
	return nil, ctx.Err()
}

// held returns a plan that is kept and by the best field that is at hand, or nil. The caller has
// locked p.
func (p *plans) held(id string) *planned {
	if found, ok := p.kept.Get(id); ok && radiate.IsSolved(found.array) {
		return found
	}
	if found, ok := p.kept.Get(byBall(id)); ok && !radiate.IsSolved(found.body) {
		return found
	}
	return nil
}

// byBall is the name of a plan with that name in which the ball stands for the body.
func byBall(id string) string { return "ball " + id }

// roughly is the name of the rough plan of a text with that name.
func roughly(id string) string { return "rough " + id }

// fly makes a plan for those who wait.
func (p *plans) fly(ctx context.Context, f *flight, id, text string, turn func(context.Context) (func(), error)) {
	defer f.stop()
	defer close(f.done)
	done, err := turn(ctx)
	if err != nil {
		f.err = err
	} else {
		f.plan, f.err = p.make(ctx, id, text)
		done()
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.now[id] == f {
		delete(p.now, id)
	}
	if f.err == nil {
		p.kept.Add(f.plan.id, f.plan)
	}
}

// make plans a text, looking between stages whether anyone still waits.
func (p *plans) make(ctx context.Context, id, text string) (*planned, error) {
	d, faults := design.Examine(p.name, []byte(text))
	outside := p.outside(d)
	if faults = append(faults, outside...); len(faults) > 0 {
		out := faultyFor()
		for _, f := range faults {
			out.Faults = append(out.Faults, faultOf(f))
		}
		return nil, judged{faulty: out, outside: len(outside) > 0}
	}
	out := &planned{id: id, text: text, design: d, given: design.Given([]byte(strings.TrimPrefix(text, "\ufeff")))}
	out.ownSpot = len(d.AllSeats()) == 0 || slices.Contains(out.given, "spot.x_m")
	var err error
	if out.array, err = layout.Build(out.design); err != nil {
		return nil, faultyFor(faultOf(p.atKey(err, out.design)))
	}
	if n := len(out.array.Mounts) * reflections(out.array); n > mostWays {
		return nil, judged{ways: true, faulty: faultyFor(fault{Reason: fmt.Sprintf("%d ways of sound from %d drivers are too many to plan on a page, at most %d; use pappus plan, or a lower room.order",
			n, len(out.array.Mounts), mostWays)})}
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	if !radiate.IsSolved(out.array) {
		ball := *out.array
		ball.Timing.Model = radiate.SphereModel
		out.array, out.body = &ball, out.array
	}
	prepare := timing.Make
	if whole, isRough := strings.CutPrefix(id, roughly("")); isRough && len(out.array.Seats) > 1 {
		prepare, out.rough = timing.MakeQuickly, true
	} else {
		out.id = whole
	}
	if out.body != nil {
		out.id = byBall(out.id)
	}
	if out.plan, err = prepare(ctx, out.array); err != nil && ctx.Err() == nil {
		return nil, faultyFor(faultOf(err))
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	out.kit = kitKey(out.design, out.plan)
	return out, nil
}

// namers are the keys that name a file.
var namers = []string{"body.file", "mounts.list", "driver.response", "driver.impedance"}

// atKey says what is wrong with a file that a design names, beside the key that names it,
// without the folder.
func (p *plans) atKey(err error, d *design.Design) error {
	var e, of *design.Error
	if !errors.As(err, &e) || !slices.Contains(namers, e.Key) || !errors.As(e.Err, &of) {
		return err
	}
	named, file, reason := *e, filepath.Base(of.File), of.Reason
	if name, ok := d.Values()[e.Key].(string); ok {
		named.Value = name
	}
	if of.Line > 0 {
		file = fmt.Sprintf("%s, line %d", file, of.Line)
	}
	if of.Key != "" {
		reason = of.Key + ": " + reason
	}
	named.Reason = file + ": " + reason
	return &named
}

// reflections returns how many ways there are from one driver to one place: those
// of a box room, over at most as many walls as its order says (the whole numbers
// whose sizes sum up to no more), or one and its mirror.
func reflections(a *layout.Array) int {
	switch n := a.Room.Order; {
	case a.Room.Present:
		return (2*n + 1) * (2*n*n + 2*n + 3) / 3
	case a.Surface.Present:
		return 2
	}
	return 1
}
