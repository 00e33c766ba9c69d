package page

import (
	"errors"
	"fmt"
	"maps"
	"mime"
	"net/http"
	"path"
	"slices"
	"strings"

	"pappus/layout/prose"
	"pappus/render/document"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/verdict"
)

// How much may be dropped on the page at once: recordings of some tens of channels.
const (
	mostRecorded   = 256 << 20 // bytes in all
	mostRecordings = 65
)

// measure answers a form of several parts; see the package comment.
func (p *Page) measure(w http.ResponseWriter, r *http.Request) {
	out, err := p.measured(w, r)
	if err != nil {
		fail(w, err)
		return
	}
	reply(w, out)
}

func (p *Page) measured(w http.ResponseWriter, r *http.Request) (*measuredAnswer, error) {
	text, recorded, played, err := readForm(w, r)
	if err != nil {
		return nil, err
	}
	made, done, err := p.workOn(r.Context(), text)
	if err != nil {
		return nil, err
	}
	defer done()
	if err := made.built(); err != nil {
		return nil, err
	}
	v, err := p.options.Measure(r.Context(), made.plan, recorded, played)
	if ctx := r.Context().Err(); ctx != nil {
		return nil, ctx
	}
	if err != nil {
		return nil, &failure{http.StatusBadRequest, prose.Error(err)}
	}
	out := &measuredAnswer{document.OfMeasured(made.plan, v), []string{}}
	for _, s := range words.MeasuredSentences(v) {
		out.Sentences = append(out.Sentences, oneLine(s))
	}
	return out, nil
}

// measuredAnswer is what recordings came to.
type measuredAnswer struct {
	document.Measured
	Sentences []string `json:"sentences"` // how the whole array measured, in words
}

// readForm reads a form of text, recordings and as_built: what the array did meanwhile.
func readForm(w http.ResponseWriter, r *http.Request) (text string, recorded []verdict.Recording, played timing.Case, err error) {
	text, recorded, err = recordings(w, r)
	if played = timing.Aligned; err == nil && r.PostFormValue("as_built") == "true" {
		played = timing.AsBuilt
	}
	return text, recorded, played, err
}

func recordings(w http.ResponseWriter, r *http.Request) (text string, out []verdict.Recording, err error) {
	kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type"))
	if err != nil || kind != "multipart/form-data" {
		return "", nil, &failure{http.StatusUnsupportedMediaType, "must be multipart/form-data"}
	}
	r.Body = http.MaxBytesReader(w, r.Body, mostRecorded)
	if err := r.ParseMultipartForm(mostRecorded); err != nil {
		if large := new(http.MaxBytesError); errors.As(err, &large) {
			return "", nil, &failure{http.StatusRequestEntityTooLarge, fmt.Sprintf("too large; at most %d MB of recordings", mostRecorded>>20)}
		}
		return "", nil, &failure{http.StatusBadRequest, prose.Error(err)}
	}
	text = r.PostFormValue("text")
	parts := r.MultipartForm.File["recording"]
	for _, name := range slices.Concat(slices.Collect(maps.Keys(r.MultipartForm.Value)), slices.Collect(maps.Keys(r.MultipartForm.File))) {
		if !slices.Contains([]string{"text", "as_built", "recording"}, name) {
			return "", nil, &failure{http.StatusBadRequest, fmt.Sprintf("%q: not known", name)}
		}
	}
	switch {
	case text == "":
		return "", nil, &failure{http.StatusBadRequest, "text: missing"}
	case len(text) > mostBody:
		return "", nil, &failure{http.StatusRequestEntityTooLarge, "text: too large"}
	case len(parts) == 0:
		return "", nil, &failure{http.StatusBadRequest, "recording: missing; drop WAV files"}
	case len(parts) > mostRecordings:
		return "", nil, &failure{http.StatusBadRequest, fmt.Sprintf("more than %d recordings", mostRecordings)}
	}
	for _, part := range parts {
		// Whatever folder it is in is of no interest, nor is which system wrote it.
		out = append(out, verdict.Recording{Name: path.Base(strings.ReplaceAll(part.Filename, `\`, "/")), Open: part.Open})
	}
	return text, out, nil
}
