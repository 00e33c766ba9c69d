package page

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"net/http"
	"path/filepath"
	"slices"

	"pappus/layout/design"
	"pappus/layout/prose"
	"pappus/render/document"
)

// SearchFile is the file of a folder that a search wrote in which what it found stands.
const SearchFile = "search.json"

// mostFound is the most that such a file may hold, in bytes.
const mostFound = 64 << 20

// ErrNoSearch is that a folder is none that a search wrote.
var ErrNoSearch = errors.New("no search wrote this folder")

// Found is the folder of a search, and what it found.
type Found struct {
	Path   string
	Search document.Search
}

// ReadFound reads the folder of a search. The error wraps ErrNoSearch where there is none.
func ReadFound(folder string) (*Found, error) {
	path := filepath.Join(folder, SearchFile)
	data, err := design.ReadFile(path, mostFound)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, fmt.Errorf("%s has no %s: %w; see pappus search --help", prose.Path(folder), SearchFile, ErrNoSearch)
	case err != nil:
		return nil, err
	}
	f := &Found{Path: folder}
	if err := json.Unmarshal(data, &f.Search); err != nil || len(f.Search.Found) == 0 {
		return nil, fmt.Errorf("%s is not what a search writes: %w", prose.Path(path), ErrNoSearch)
	}
	for i := range f.Search.Tried { // nobody asks on the page
		f.Search.Tried[i].Set = nil
	}
	return f, nil
}

// First returns the path of the first design that is offered.
func (f *Found) First() string { return filepath.Join(f.Path, filepath.Base(f.Search.Found[0].File)) }

// foundAnswer is what a search found, without settings.
type foundAnswer struct {
	Search document.Search `json:"search"`
}

// found answers with what a search found.
func (p *Page) found(w http.ResponseWriter, _ *http.Request) {
	if p.options.Found == nil {
		fail(w, &failure{http.StatusNotFound, "no search is shown"})
		return
	}
	reply(w, foundAnswer{p.options.Found.Search})
}

// offeredAsked is which of the designs that a search offers is to be opened.
type offeredAsked struct {
	File string `json:"file"`
}

// offeredText is that design.
type offeredText struct {
	File string `json:"file"`
	Text string `json:"text"`
}

// offered opens one of the designs that a search offers.
func (p *Page) offered(_ http.ResponseWriter, _ *http.Request, in offeredAsked) (any, error) {
	f := p.options.Found
	if f == nil || !slices.ContainsFunc(f.Search.Found, func(o document.SearchFound) bool { return o.File == in.File }) {
		return nil, &failure{http.StatusNotFound, "no such design is offered"}
	}
	text, err := design.ReadFile(filepath.Join(f.Path, filepath.Base(in.File)), mostText)
	if err != nil {
		return nil, err
	}
	return offeredText{in.File, string(text)}, nil
}
