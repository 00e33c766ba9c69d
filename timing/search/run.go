package search

import (
	"context"
	"errors"
	"io"
	"slices"

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
	if job.Shares > 1 {
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
	space   *space
	journal *journal
	tell    func(Progress)
	limits  limits
	fit     []screened // that can be built and keep the limits, by variant
	full    []Point
	shown   shown
}

func newRun(ctx context.Context, job Job, progress func(Progress)) (*run, error) {
	if job.Shares > 1 && (job.Share < 1 || job.Share > job.Shares) {
		return nil, errors.New("search: a share must be from 1 to the number of shares")
	}
	s, err := spaceOf(job)
	if err != nil {
		return nil, err
	}
	if progress == nil {
		progress = func(Progress) {}
	}
	r := &run{ctx: ctx, space: s, tell: progress, limits: limitsOf(job)}
	r.Job, r.Space, r.Shared, r.Aims = job, s.Len(), job.Shares > 1, r.limits.aims
	return r, nil
}

// lot is how many candidates are looked at between two looks at the clock and the journal.
const lot = 64

// each calls find for each index of a list on all cores, lot by lot, and then keep in order,
// until ctx ends.
func each[T any](r *run, stage Stage, list []int, find func(i int) T, keep func(i int, found T) error) error {
	for from := 0; from < len(list); from += lot {
		if r.ctx.Err() != nil {
			r.Stopped = true
			return nil
		}
		part := list[from:min(from+lot, len(list))]
		found := make([]T, len(part))
		cores.Each(len(part), func(_, i int) {
			if r.ctx.Err() == nil {
				found[i] = find(part[i])
			}
		})
		if r.ctx.Err() != nil { // what was under way is not whole
			r.Stopped = true
			return nil
		}
		for i, f := range found {
			if err := keep(part[i], f); err != nil {
				return err
			}
		}
		if err := r.journal.flush(); err != nil {
			return err
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
		} else if r.Job.Shares <= 1 || i%r.Job.Shares == r.Job.Share-1 {
			left = append(left, i)
		}
	}
	err := each(r, Screening, left, r.screen, func(_ int, s screened) error {
		r.keep(s)
		r.journal.note("screened", s)
		return nil
	})
	slices.SortFunc(r.fit, func(a, b screened) int { return a.variant - b.variant })
	return err
}

// keep counts a screened candidate, and keeps one that is fit.
func (r *run) keep(s screened) {
	r.Screened++
	if s.Broken == "" {
		r.fit = append(r.fit, s)
		r.shown.take(r.aimed(s.Figures), s.Figures)
	} else {
		r.broke(s)
	}
}

// finish gives the best of the screened their full figures, polishes, and picks.
func (r *run) finish() (*Result, error) {
	r.floors()
	r.Fit = len(r.fit)
	if err := r.fullAll(); err != nil {
		return nil, err
	}
	if err := r.polish(); err != nil {
		return nil, err
	}
	if err := r.offer(); err != nil {
		return nil, err
	}
	return &r.Result, nil
}

// broke counts what a candidate breaks.
func (r *run) broke(screened) {}

// polish changes the best a little.
func (r *run) polish() error { return nil }
