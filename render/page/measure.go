package page

import (
	"errors"
	"fmt"
	"io"
	"maps"
	"mime"

	"net/http"
	"path"
	"slices"
	"strings"

	"pappus/layout/prose"
	"pappus/render/document"
	"pappus/render/words"
)

// How much may be dropped on the page at once: recordings of some tens of channels.
const (
	mostRecorded   = 256 << 20 // bytes in all
	mostRecordings = 65
)

// Recorded is what a microphone heard of the array.
type Recorded struct {
	Files   []Recording
	AsBuilt bool // no delays were set
}

// Recording is one WAV file.
type Recording struct {
	Name string
	Open func() (io.ReadSeekCloser, error)
}

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
	if p.options.Measure == nil {
		return nil, fmt.Errorf("%w: this program measures nothing", errNotThere)
	}
	text, recorded, err := readForm(w, r)
	if err != nil {
		return nil, err
	}
	made, done, err := p.workOn(r.Context(), text)
	if err != nil {
		return nil, err
	}
	defer done()
	v, err := p.options.Measure(r.Context(), made.plan, recorded)
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

// readForm reads a form of text, as_built and recordings.
func readForm(w http.ResponseWriter, r *http.Request) (text string, out Recorded, err error) {
	kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type"))
	if err != nil || kind != "multipart/form-data" {
		return "", out, &failure{http.StatusUnsupportedMediaType, "must be multipart/form-data"}
	}
	r.Body = http.MaxBytesReader(w, r.Body, mostRecorded)
	if err := r.ParseMultipartForm(mostRecorded); err != nil {
		if large := new(http.MaxBytesError); errors.As(err, &large) {
			return "", out, &failure{http.StatusRequestEntityTooLarge, fmt.Sprintf("too large; at most %d MB of recordings", mostRecorded>>20)}
		}
		return "", out, &failure{http.StatusBadRequest, prose.Error(err)}
	}
	text, out.AsBuilt = r.PostFormValue("text"), r.PostFormValue("as_built") == "true"
	recordings := r.MultipartForm.File["recording"]
	for _, name := range slices.Concat(slices.Collect(maps.Keys(r.MultipartForm.Value)), slices.Collect(maps.Keys(r.MultipartForm.File))) {
		if !slices.Contains([]string{"text", "as_built", "recording"}, name) {
			return "", out, &failure{http.StatusBadRequest, fmt.Sprintf("%q: not known", name)}
		}
	}
	switch {
	case text == "":
		return "", out, &failure{http.StatusBadRequest, "text: missing"}
	case len(text) > mostBody:
		return "", out, &failure{http.StatusRequestEntityTooLarge, "text: too large"}
	case len(recordings) == 0:
		return "", out, &failure{http.StatusBadRequest, "recording: missing; drop WAV files"}
	case len(recordings) > mostRecordings:
		return "", out, &failure{http.StatusBadRequest, fmt.Sprintf("more than %d recordings", mostRecordings)}
	}
	for _, part := range recordings {
		// Whatever folder it is in is of no interest, nor is which system wrote it.
		out.Files = append(out.Files, Recording{path.Base(strings.ReplaceAll(part.Filename, `\`, "/")), func() (io.ReadSeekCloser, error) { return part.Open() }})
	}
	return text, out, nil
}
