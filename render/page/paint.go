package page

import (
	"context"
	"slices"
	"time"

	"pappus/layout/prose"
	"pappus/render/document"
	"pappus/timing"

	lru "github.com/hashicorp/golang-lru/v2"
)

const (
	mostMaps   = 4  // that a painter keeps
	dragOctave = 5  // frequencies in each octave while dragging
	restOctave = 12 // and at rest
)

// drawn is what follows the figures of a move: a strip of its map, or, at rest, the circle
// round it, or how far one may lean.
type drawn struct {
	Seq   int64           `json:"seq"`
	Polar *document.Polar `json:"polar,omitempty"`
	Strip *strip          `json:"strip,omitempty"`
	Lean  []edge          `json:"lean,omitempty" ts:"[number, number][][]"` // edges of where no more than 1 dB more is lost than at the spot, or a seat
}

// job is what a painter is asked for: what is drawn of a move whose figures are there.
type job struct {
	move
	made *planned
	spot *timing.Spot
}

// alike tells whether a rough map of one job is one of the other too.
func (j job) alike(k job) bool {
	return j.ID == k.ID && j.Spot == k.Spot && slices.Equal(j.Seats, k.Seats) && j.View == k.View && j.Quantity == k.Quantity && j.Band == k.Band && j.Delays == k.Delays && slices.Equal(j.Turned, k.Turned)
}

// painter draws maps for one client, coarse to fine, while the figures of other moves are
// worked out. It is for one goroutine.
type painter struct {
	send   func(any) error
	made   *planned
	maps   *lru.Cache[mapOf, *timing.Live] // that can be filled again while their slices stay
	paces  map[kind]pace
	rough  job             // of which there is a whole rough map
	owned  mapOf           // that is filled, each place with its own delays
	alone  *timing.Planner // of the array without its seats; nil: not asked for
	values []float64
}

func newPainter(send func(any) error) *painter {
	return &painter{send: send, paces: map[kind]pace{}}
}

// paint draws one job after another until ctx ends or nothing more can be sent.
func (b *painter) paint(ctx context.Context, jobs *newest[job]) {
	for {
		j, work, err := jobs.take(ctx)
		if err != nil {
			return
		}
		if err := b.draw(ctx, work, j); err != nil && work.Err() == nil {
			if b.send(moved{Seq: j.Seq, Error: prose.Error(err)}) != nil {
				return
			}
		}
	}
}

// draw draws one job, until work ends: a newer one has come. A rough map that is there soon is
// finished all the same, lest there be none while a chair is dragged for long.
func (b *painter) draw(all, work context.Context, j job) error {
	if b.made != j.made {
		b.made, b.rough, b.owned, b.alone, b.maps = j.made, job{}, mapOf{}, nil, lastUsed[mapOf, *timing.Live](mostMaps)
	}
	hasMap := j.Quantity != "" && j.Cells > 0
	if hasMap && j.Delays == "chair" && len(j.spot.Array.Seats) > 1 {
		if err := b.toChair(&j); err != nil {
			return err
		}
	}
	if hasMap && (!j.rests() || !b.rough.alike(j)) {
		if err := b.drag(all, work, j); err != nil {
			return err
		}
	}
	if !j.rests() {
		return nil
	}
	circle, err := j.spot.ListeningPolar()
	if err != nil {
		return err
	}
	polar := document.OfPolar(circle)
	if err := b.send(drawn{Seq: j.Seq, Polar: &polar}); err != nil || !hasMap {
		return err
	}
	if err := b.fine(work, j); err != nil || j.Delays == "own" {
		return err
	}
	return b.lean(work, j)
}

// drag draws a rough map, as large as the machine is quick. A map that takes long waits until
// the chair stands still; any other takes no more than half of the time, for the figures'
// sake.
func (b *painter) drag(all, work context.Context, j job) error {
	began := time.Now()
	s, q := j.slice(firstCells)
	k := kind{j.View, q.is, dragOctave, j.Delays == "own"}
	if k.own && b.hasOwn(j, q) {
		return nil // the chair moves, and the map does not
	}
	ctx := all
	p, known := b.paces[k]
	if cells := min(firstCells, j.Cells); !known {
		s, _ = j.slice(cells)
	} else {
		cells := p.next(s.Columns, s.Rows, j.Cells)
		if p.waits(cells, s.Columns, s.Rows) {
			ctx = work
			if err := sleep(work, stillTime); err != nil {
				return err
			}
		}
		s, _ = j.slice(cells)
		began = time.Now()
	}
	f, err := b.begin(ctx, j, s, q, k)
	if err != nil {
		return err
	}
	if err := b.strip(ctx, j, f, timing.Strip{To: s.Columns + s.Rows}, true); err != nil {
		return err
	}
	if b.rough = j; !j.rests() {
		return sleep(all, breath(time.Since(began)))
	}
	return nil
}

// fine draws the map of a chair at rest.
func (b *painter) fine(work context.Context, j job) error {
	s, q := j.slice(j.Cells)
	k := kind{j.View, q.is, restOctave, j.Delays == "own"}
	if _, known := b.paces[k]; !known {
		b.paces[k] = pace{cell: b.paces[kind{j.View, q.is, dragOctave, k.own}].cell * restOctave / dragOctave}
	}
	if k.own {
		s, _ = j.slice(b.ownCells(k, s))
	}
	f, err := b.begin(work, j, s, q, k)
	if err != nil {
		return err
	}
	f.fine = true
	strips := s.Strips(b.paces[k].strip())
	for i, part := range strips {
		if err := b.strip(work, j, f, part, i == len(strips)-1); err != nil {
			return err
		}
	}
	if k.own {
		b.owned = f.of
	}
	return nil
}

// of returns what tells a map of a job from others.
func (b *painter) of(j job, s timing.Slice, q quantity, k kind) mapOf {
	of := mapOf{slice: s, quantity: q.is, perOctave: k.perOctave, own: k.own}
	if q.is.InOctave() {
		of.centre = nearestOctave(j.Band)
	}
	return of
}

// filling is a map that is being drawn.
type filling struct {
	*timing.Filling
	slice    timing.Slice
	quantity quantity
	kind     kind
	of       mapOf
	values   []float64
	fine     bool
}

// begin begins a map, and notes how long that took.
func (b *painter) begin(ctx context.Context, j job, s timing.Slice, q quantity, k kind) (*filling, error) {
	began := time.Now()
	of := b.of(j, s, q, k)
	live, err := b.live(ctx, j.spot, of)
	if err != nil {
		return nil, err
	}
	n := s.Columns * s.Rows
	b.values = slices.Grow(b.values[:0], n)[:n]
	f := &filling{live.Begin(b.values, j.spot), s, q, k, of, b.values, false}
	p := b.paces[k]
	p.cells, p.begin = s.Columns, time.Since(began)
	b.paces[k] = p
	return f, nil
}

// strip draws and sends a strip, and notes how long a cell took.
func (b *painter) strip(ctx context.Context, j job, f *filling, part timing.Strip, last bool) error {
	began := time.Now()
	if err := f.Strip(ctx, part); err != nil {
		return err
	}
	p := b.paces[f.kind]
	cell := time.Since(began) / time.Duration(max(part.Cells(f.slice), 1))
	if p.cell = max(cell, p.cell); !f.kind.own {
		p.cell = cell // what each place has with its own delays may be known, and took no time
	}
	b.paces[f.kind] = p
	out := stripOf(f.slice, f.quantity, part, f.values)
	out.Fine, out.Last = f.fine, last
	return b.send(drawn{Seq: j.Seq, Strip: out})
}

// live returns a map, one that is kept if there is one.
func (b *painter) live(ctx context.Context, p *timing.Spot, of mapOf) (*timing.Live, error) {
	for _, kept := range b.maps.Keys() {
		if kept.alike(of) {
			live, _ := b.maps.Get(kept)
			return live, nil
		}
	}
	prepare := timing.NewLive
	if of.own {
		prepare = timing.NewOwnLive
	}
	made, err := prepare(ctx, p, of.slice, of.quantity, of.centre, of.perOctave)
	if err == nil {
		b.maps.Add(of, made)
	}
	return made, err
}

// slice returns the slice that a job asks for, with so many cells along a side, and the
// quantity.
func (j job) slice(cells int) (timing.Slice, quantity) {
	q := quantities[slices.IndexFunc(quantities, func(q quantity) bool { return q.name == j.Quantity })]
	if j.View == "side" {
		return timing.VerticalSlice(j.spot.WithCells(cells)), q
	}
	return timing.HorizontalSlice(j.spot.WithCells(cells)), q
}

// sleep waits, or returns the error of ctx once it ends.
func sleep(ctx context.Context, long time.Duration) error {
	select {
	case <-time.After(long):
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}
