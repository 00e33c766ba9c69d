package page

import (
	"archive/zip"
	"bytes"
	"cmp"
	"fmt"
	"net/http"
	"slices"
	"sync"
	"time"

	"pappus/render/outdir"
	"pappus/timing"

	lru "github.com/hashicorp/golang-lru/v2"
	"gonum.org/v1/gonum/spatial/r3"
)

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

func vector(t triple) r3.Vec { return r3.Vec{X: t[0], Y: t[1], Z: t[2]} }

// mostMoved is how many plans for other spots are kept.
const mostMoved = 4

// elsewhere keeps the last plans for spots that are not the design's: who switches
// from case to case gets the same plan each time.
type elsewhere struct {
	mu      sync.Mutex // held while planning: who asks for the same waits for it
	kept    *lru.Cache[movedTo, *timing.Spot]
	id      string          // of the last design
	planner *timing.Planner // for it
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
	if e.id != made.id {
		planner, err := timing.NewPlanner(made.array)
		if err != nil {
			return nil, err
		}
		planner.Know(&made.plan.Spot)
		e.id, e.planner = made.id, planner
	}
	plan, err := e.planner.Spot(vector(spot))
	if err != nil {
		return nil, faultyFor(fault{Key: "spot.x_m", Reason: noSpot(err)})
	}
	e.kept.Add(movedTo{made.id, spot}, plan)
	return plan, nil
}

// filesOf lists the files of one name. Those of printed parts are there once the parts are made.
func (p *Page) filesOf(what string, made *planned) ([]outdir.File, error) {
	if what != kitFiles {
		return p.options.Write(what, made.plan)
	}
	k, err := p.kits.of(made)
	return k.Files, err
}

// files sends a folder of files, whole or not at all.
func (p *Page) files(w http.ResponseWriter, r *http.Request, in filesAsked) (any, error) {
	if in.What != kitFiles {
		if err := known(p.options.Files, in.What, "what"); err != nil {
			return nil, err
		}
	}
	made, done, err := p.workOn(r.Context(), in.Text)
	if err != nil {
		return nil, err
	}
	defer done()
	if err := made.built(); err != nil {
		return nil, err
	}
	var b bytes.Buffer
	z, now := zip.NewWriter(&b), time.Now()
	files, err := p.filesOf(in.What, made)
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
