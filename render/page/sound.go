package page

import (
	"archive/zip"
	"bytes"
	"cmp"
	"fmt"
	"io"
	"net/http"
	"slices"
	"sync"
	"time"

	"pappus/timing"

	lru "github.com/hashicorp/golang-lru/v2"
	"gonum.org/v1/gonum/spatial/r3"
)

// soundAsked is what is to be heard at a spot; without one at the design's. Where the design
// has several seats, it is what is heard there of the plan for all of them.
type soundAsked struct {
	Text string  `json:"text"`
	Spot *triple `json:"spot_m"`
	Hearing
}

// walkAsked is what is to be heard on a walk.
type walkAsked struct {
	Text string  `json:"text"`
	From triple  `json:"from_m"`
	Way  string  `json:"way"`  // one of the walks that are offered; empty: to a place
	To   *triple `json:"to_m"` // that place
	Hearing
}

// filesAsked is which files are to be had.
type filesAsked struct {
	Text string `json:"text"`
	What string `json:"what"`
}

// known tells whether a name is one of those that are offered.
func known(offered []Named, name, field string) error {
	if slices.ContainsFunc(offered, func(n Named) bool { return n.Name == name }) {
		return nil
	}
	return &failure{http.StatusBadRequest, fmt.Sprintf("%s %q: not known", field, name)}
}

// offers tells whether the programme and the case are offered.
func (p *Page) offers(h Hearing) error {
	if err := known(p.options.Programmes, h.Programme, "programme"); err != nil {
		return err
	}
	return known(p.options.Cases, h.Case, "case")
}

func (p *Page) sound(w http.ResponseWriter, r *http.Request, in soundAsked) (any, error) {
	if err := p.offers(in.Hearing); err != nil {
		return nil, err
	}
	return p.audio(w, r, in.Text, in.Spot, func(to io.Writer, plan *timing.Spot) error {
		at := plan.Array.Spot
		if in.Spot != nil {
			at = vector(*in.Spot)
		}
		return p.options.Sound(r.Context(), to, plan, at, in.Hearing)
	})
}

func (p *Page) walk(w http.ResponseWriter, r *http.Request, in walkAsked) (any, error) {
	if err := p.offers(in.Hearing); err != nil {
		return nil, err
	}
	from, end := vector(in.From), r3.Vec{}
	switch at := slices.IndexFunc(walks, func(w walk) bool { return w.Name == in.Way }); {
	case in.Way == "" && in.To != nil:
		end = vector(*in.To)
	case at < 0:
		return nil, known(walkNames(), in.Way, "way")
	default:
		end = walks[at].to(from)
	}
	return p.audio(w, r, in.Text, nil, func(to io.Writer, plan *timing.Spot) error {
		return p.options.Walk(r.Context(), to, plan, from, end, in.Hearing)
	})
}

func vector(t triple) r3.Vec { return r3.Vec{X: t[0], Y: t[1], Z: t[2]} }

// audio sends a WAV file, whole or not at all.
func (p *Page) audio(w http.ResponseWriter, r *http.Request, text string, spot *triple, write func(io.Writer, *timing.Spot) error) (any, error) {
	made, done, err := p.workOn(r.Context(), text)
	if err != nil {
		return nil, err
	}
	defer done()
	plan := &made.plan.Spot
	if spot != nil {
		if err := (move{Spot: *spot}).check(); err != nil {
			return nil, &failure{http.StatusBadRequest, err.Error()}
		}
	}
	if spot != nil && vector(*spot) != made.array.Spot && len(made.array.Seats) < 2 {
		if plan, err = p.moved.of(made, *spot); err != nil {
			return nil, err
		}
	}
	var b bytes.Buffer
	if err := write(&b, plan); err != nil {
		return nil, err
	}
	if err := r.Context().Err(); err != nil {
		return nil, err
	}
	w.Header().Set("Content-Type", "audio/wav")
	_, _ = w.Write(b.Bytes()) // who is gone does not miss it
	return nil, nil
}

// mostMoved is how many plans for other spots are kept.
const mostMoved = 4

// elsewhere keeps the last plans for spots that are not the design's: who switches
// from case to case gets the same plan each time.
type elsewhere struct {
	mu   sync.Mutex // held while planning: who asks for the same waits for it
	kept *lru.Cache[movedTo, *timing.Spot]
}

// movedTo is a spot of a design.
type movedTo struct {
	id   string
	spot triple
}

// of returns the plan of a design for another spot.
func (e *elsewhere) of(made *planned, spot triple) (*timing.Spot, error) {
	e.mu.Lock()
	defer e.mu.Unlock()
	if plan, ok := e.kept.Get(movedTo{made.id, spot}); ok {
		return plan, nil
	}
	planner, err := timing.NewPlanner(made.array)
	if err != nil {
		return nil, err
	}
	plan, err := planner.Spot(vector(spot))
	if err != nil {
		return nil, faultyFor(fault{Key: "spot.x_m", Reason: noSpot(err)})
	}
	e.kept.Add(movedTo{made.id, spot}, plan)
	return plan, nil
}

// files sends a folder of files, whole or not at all.
func (p *Page) files(w http.ResponseWriter, r *http.Request, in filesAsked) (any, error) {
	if err := known(p.options.Files, in.What, "what"); err != nil {
		return nil, err
	}
	made, done, err := p.workOn(r.Context(), in.Text)
	if err != nil {
		return nil, err
	}
	defer done()
	var b bytes.Buffer
	z, now := zip.NewWriter(&b), time.Now()
	files, err := p.options.Write(in.What, made.plan)
	if err != nil {
		return nil, err
	}
	for _, file := range files {
		f, err := z.CreateHeader(&zip.FileHeader{Name: file.Name, Method: zip.Deflate, Modified: now})
		if err := cmp.Or(r.Context().Err(), err); err != nil {
			return nil, err
		}
		if err := file.Write(f); err != nil {
			return nil, err
		}
	}
	if err := z.Close(); err != nil {
		return nil, err
	}
	w.Header().Set("Content-Type", "application/zip")
	w.Header().Set("Content-Disposition", fmt.Sprintf("attachment; filename=%q", "pappus-"+in.What+".zip"))
	_, _ = w.Write(b.Bytes()) // who is gone does not miss it
	return nil, nil
}
