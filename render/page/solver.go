package page

import (
	"context"
	"net/http"
	"sync"
	"time"

	"pappus/layout"
	"pappus/layout/prose"
	"pappus/render/document"
	"pappus/render/words"
	"pappus/timing/radiate"
	"pappus/timing/store"

	"github.com/coder/websocket"
)

// solveAsked is the plan in which the ball stands for a body until its field is solved for, or of which
// the printed parts are wanted.
type solveAsked struct {
	ID  string `json:"id"`            // empty: it is not wanted any more
	Kit bool   `json:"kit,omitempty"` // the parts are wanted
}

// solving is how far that is.
type solving struct {
	ID      string `json:"id"`
	Unknown bool   `json:"unknown,omitempty"` // plan the text again
	Solved  bool   `json:"solved,omitempty"`  // plan the text again: it is by the field of the body then; or: the parts are there
	Error   string `json:"error,omitempty"`   // why it cannot be
	Done    number `json:"done"`              // part of the work
	Words   string `json:"words"`             // how far it is and what is left; empty: it has not begun
}

// solver does what takes long, one task at a time, while somebody waits for it.
type solver struct {
	turn chan struct{}
	mu   sync.Mutex
	now  map[store.Key]*solution
}

func newSolver() *solver {
	return &solver{turn: make(chan struct{}, 1), now: map[store.Key]*solution{}}
}

// task is work that takes long: the field of a body, or the parts of a kit.
type task struct {
	key    store.Key // the same for the same work
	do     func(ctx context.Context, progress func(done, seconds float64)) error
	words  func(done, left float64) string // how far it is, and the seconds that are left
	failed func(why string) string
}

// solvedFor is the task of an array's field.
func solvedFor(a *layout.Array) (task, error) {
	key, err := radiate.FieldKey(a)
	return task{key, func(ctx context.Context, progress func(done, seconds float64)) error {
		return radiate.Solve(ctx, a, progress)
	}, words.Solving, words.NotSolved}, err
}

// solution is a task that is being done.
type solution struct {
	task
	by    *solver
	stop  context.CancelFunc
	ended chan struct{} // closed once err is known
	err   error

	waiting int // guarded by the solver's mu, as are the rest
	began   time.Time
	done    float64 // part of the work
	whole   float64 // s, by forecast; 0: not known yet
}

// join has a task done, beside others who wait for the same.
func (s *solver) join(t task) *solution {
	s.mu.Lock()
	defer s.mu.Unlock()
	x := s.now[t.key]
	if x == nil {
		x = &solution{task: t, by: s, ended: make(chan struct{})}
		var ctx context.Context
		ctx, x.stop = context.WithCancel(context.Background())
		s.now[t.key] = x
		go s.solve(ctx, x)
	}
	x.waiting++
	return x
}

// leave ends one's wait; what nobody waits for is given up.
func (x *solution) leave() {
	s := x.by
	s.mu.Lock()
	defer s.mu.Unlock()
	if x.waiting--; x.waiting == 0 {
		x.stop()
		s.forget(x)
	}
}

// forget lets who comes now begin anew. The caller has locked s.
func (s *solver) forget(x *solution) {
	if s.now[x.key] == x {
		delete(s.now, x.key)
	}
}

func (s *solver) solve(ctx context.Context, x *solution) {
	defer x.stop()
	defer close(x.ended)
	select {
	case s.turn <- struct{}{}:
		defer func() { <-s.turn }()
	case <-ctx.Done():
		x.err = ctx.Err()
		return
	}
	s.mu.Lock()
	x.began = time.Now()
	s.mu.Unlock()
	x.err = x.do(ctx, func(done, seconds float64) {
		s.mu.Lock()
		defer s.mu.Unlock()
		x.done, x.whole = max(x.done, done), seconds // several may tell at once
	})
	s.mu.Lock()
	defer s.mu.Unlock()
	s.forget(x)
}

// tell returns how far a solution is.
func (x *solution) tell() solving {
	select {
	case <-x.ended:
		if x.err != nil {
			return solving{Error: x.failed(prose.Error(x.err))}
		}
		return solving{Solved: true, Done: 1}
	default:
	}
	x.by.mu.Lock()
	defer x.by.mu.Unlock()
	if x.whole == 0 {
		return solving{} // it begins
	}
	left := radiate.Left(x.done, x.whole, time.Since(x.began).Seconds())
	return solving{Done: document.To(3, x.done), Words: x.words(x.done, left)}
}

// solve tells one client how far the field of its design's body is, or its parts, until it goes: of the
// plan that it named last, or of none. Who is gone without having named none, as in a reload, may come
// back within patience, and the work goes on.
func (p *Page) solve(w http.ResponseWriter, r *http.Request) {
	conn, err := p.sockets.solve.accept(w, r)
	if err != nil {
		return // it has been answered
	}
	defer conn.leave()
	ctx, stop := context.WithCancel(r.Context())
	defer stop()
	asks := make(chan solveAsked)
	go func() {
		defer stop()
		hearAsks(ctx, conn, asks)
	}()
	wait := waits{page: p}
	defer func() {
		if x := wait.on; x != nil {
			time.AfterFunc(patience, func() { x.leave() })
		}
	}()
	tick := time.NewTicker(lookEvery)
	defer tick.Stop()
	for {
		select {
		case <-ctx.Done():
			return
		case in := <-asks:
			wait.turn(in)
		case <-wait.ended():
		case <-tick.C:
			if wait.on == nil {
				continue
			}
		}
		if tell(ctx, conn, wait.news()) != nil {
			return
		}
	}
}

// hearAsks takes questions in until the client goes.
func hearAsks(ctx context.Context, conn *socket, asks chan<- solveAsked) {
	for {
		_, body, err := conn.Reader(ctx)
		if err != nil {
			return
		}
		var in solveAsked
		if err := decode(body, &in); err != nil {
			_ = conn.Close(websocket.StatusUnsupportedData, "not understood")
			return
		}
		conn.used()
		select {
		case asks <- in:
		case <-ctx.Done():
			return
		}
	}
}

// waits is one client's wait for the field of a body, or for parts.
type waits struct {
	page *Page
	id   string
	on   *solution // nil: for none
	last solving   // where it is for none
}

// turn waits for what is asked: for the same as before where the body, or the parts, are the same.
func (w *waits) turn(in solveAsked) {
	before := w.on
	w.id, w.on, w.last = in.ID, nil, solving{}
	if made, ok := w.page.plans.kept.Get(in.ID); !ok {
		w.last.Unknown = true
	} else if in.Kit {
		w.last.Solved = w.page.kits.held(made) != nil
		if !w.last.Solved {
			w.on = w.page.maker.join(w.page.kits.task(made))
		}
	} else if made.body == nil || radiate.IsSolved(made.body) {
		w.last.Solved = true
	} else if t, err := solvedFor(made.body); err != nil {
		w.last.Error = words.NotSolved(prose.Error(err))
	} else {
		w.on = w.page.solver.join(t)
	}
	if before != nil {
		before.leave()
	}
}

// ended is closed once what is waited for is known.
func (w *waits) ended() <-chan struct{} {
	if w.on == nil {
		return nil
	}
	return w.on.ended
}

// news returns how far it is; who is told of the end waits no longer.
func (w *waits) news() solving {
	out := w.last
	if x := w.on; x != nil {
		if out = x.tell(); out.Solved || out.Error != "" {
			x.leave()
			w.on, w.last = nil, out
		}
	}
	out.ID = w.id
	return out
}
