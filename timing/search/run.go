package search

import (
	"context"
	"errors"
	"io"
	"slices"

	"pappus/layout/space"
	"pappus/timing/cores"
)

// Journal is where a run writes down what it has found, to go on from there after it was
// ended: a file that is open for reading and writing, or nil.
type Journal interface {
	io.ReadWriteSeeker
	Truncate(size int64) error
}

// Run searches, and tells of its progress. The journal of the same job is gone on from, of
// another is ErrJournal. Once ctx ends the result is what was found by then, Stopped.
// Of a share it screens its part alone: Join does the rest.
func Run(ctx context.Context, job Job, j Journal, progress func(Progress)) (*Result, error) {
	r, err := newRun(ctx, job, progress)
	if err != nil {
		return nil, err
	}
	if r.journal, err = openJournal(j, r.header()); err != nil {
		return nil, err
	}
	if err := r.screenAll(r.journal.screened); err != nil {
		return nil, err
	}
	if r.Shared {
		r.Fit = len(r.fit)
		return &r.Result, nil
	}
	return r.finish()
}

// Join goes on from the journals of all shares of a job as Run would have, and gives the same
// to the bit. The error tells of journals of another job, or of candidates that none has.
func Join(ctx context.Context, job Job, parts []io.Reader, j Journal, progress func(Progress)) (*Result, error) {
	job.Share, job.Shares = 0, 0
	r, err := newRun(ctx, job, progress)
	if err != nil {
		return nil, err
	}
	known := map[int]screened{}
	for _, p := range parts {
		held, err := readJournal(p, r.header())
		if err != nil {
			return nil, err
		}
		for i, s := range held.screened {
			known[i] = s
		}
	}
	if len(known) < r.Space {
		return nil, missing(known, r.Space)
	}
	if r.journal, err = openJournal(j, r.header()); err != nil {
		return nil, err
	}
	if err := r.screenAll(known); err != nil {
		return nil, err
	}
	return r.finish()
}

// run is a search under way.
type run struct {
	Result
	ctx     context.Context
	space   *space.Space
	journal *journal
	tell    func(Progress)
	least   float64    // dB, what is quieter is not sought
	fit     []screened // that can be built and keep the limits, by variant
	full    []Point
	held    []held
	known   map[string]*offered // by settings
	shown   shown
	short   shortfalls
}

// ErrShare is a share that is none.
var ErrShare = errors.New("a share must be from 1 to the number of shares")

func newRun(ctx context.Context, job Job, progress func(Progress)) (*run, error) {
	if job.Shares > 1 && (job.Share < 1 || job.Share > job.Shares) {
		return nil, ErrShare
	}
	s, err := space.Of(job.Design)
	if err != nil {
		return nil, err
	}
	if progress == nil {
		progress = func(Progress) {}
	}
	r := &run{ctx: ctx, space: s, tell: progress, known: map[string]*offered{}}
	r.Job, r.Space, r.Shared, r.Lowest = job, s.Len(), job.Shares > 1, lowestOf(job.Design)
	for _, a := range job.Design.Search.Aims {
		r.Aims = append(r.Aims, Aim(a))
	}
	return r, nil
}

// lot is how many candidates are looked at between two looks at the clock and the journal.
const lot = 64

// each calls find for each of a list on all cores, lot by lot, and then keep in order, until
// ctx ends; what is under way then is lost.
func each[T any](r *run, stage Stage, list []int, find func(i int) T, keep func(i int, found T)) error {
	for from := 0; from < len(list); from += lot {
		part := list[from:min(from+lot, len(list))]
		found := make([]T, len(part))
		cores.Each(len(part), func(_, i int) {
			if r.ctx.Err() == nil {
				found[i] = find(part[i])
			}
		})
		if r.ctx.Err() != nil {
			r.Stopped = true
			return nil
		}
		for i, f := range found {
			keep(part[i], f)
		}
		if err := r.journal.flush(); err != nil {
			return err
		}
		if stage == Full {
			r.foresee()
		}
		r.tell(r.shown.progress(stage, from+len(part), len(list)))
	}
	return nil
}

// screenAll screens the run's share of the candidates but for those known.
func (r *run) screenAll(known map[int]screened) error {
	var left []int
	for i := range r.Space {
		if s, ok := known[i]; ok {
			r.keep(s)
		} else if !r.Shared || i%r.Job.Shares == r.Job.Share-1 {
			left = append(left, i)
		}
	}
	err := each(r, Screening, left, r.screen, func(_ int, s screened) {
		r.keep(s)
		r.journal.note("screened", s)
	})
	slices.SortFunc(r.fit, func(a, b screened) int { return a.variant - b.variant })
	return err
}

// keep counts a screened candidate, and keeps one that is fit.
func (r *run) keep(s screened) {
	r.Screened++
	if s.Broken != "" {
		r.short.take(s)
		return
	}
	r.fit = append(r.fit, s)
	r.shown.take(r.aimed(s.Figures), s.Figures)
}

// finish gives the best of the screened their full figures, polishes, and picks. Of a run that
// was stopped it picks from what there is.
func (r *run) finish() (*Result, error) {
	r.Fit = len(r.fit)
	r.floor()
	chosen, random := r.choose()
	if r.Stopped {
		r.ctx = context.WithoutCancel(r.ctx)
	}
	if err := r.fullAll(chosen, random); err != nil {
		return nil, err
	}
	if r.ctx.Err() != nil { // what is known is offered in any case
		r.Stopped = true
		r.ctx = context.WithoutCancel(r.ctx)
	}
	if err := r.begin(); err != nil {
		return nil, err
	}
	if !r.Stopped {
		if err := r.polish(); err != nil {
			return nil, err
		}
	}
	r.ctx = context.WithoutCancel(r.ctx)
	r.offer()
	r.stands()
	r.Short = r.short.list(r)
	return &r.Result, nil
}
