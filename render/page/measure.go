package page

import (
	"errors"
	"fmt"
	"io"
	"mime"
	"mime/multipart"
	"net/http"
	"path"
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
	Data []byte
}

// measure answers a form of several parts; see the package comment. One at a time: they
// are held in memory.
func (p *Page) measure(w http.ResponseWriter, r *http.Request) {
	select {
	case p.measuring <- struct{}{}:
		defer func() { <-p.measuring }()
	default:
		w.Header().Set("Retry-After", "1")
		fail(w, &failure{http.StatusTooManyRequests, "another measurement is being looked at; try again"})
		return
	}
	out, err := p.measured(w, r)
	if err != nil {
		fail(w, err)
		return
	}
	reply(w, out)
}

func (p *Page) measured(w http.ResponseWriter, r *http.Request) (*measuredAnswer, error) {
	if p.options.Measure == nil {
		return nil, fmt.Errorf("%w: this program measures nothing", ErrNotThere)
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
		return nil, &failure{http.StatusBadRequest, oneLine(prose.Error(err))}
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
	parts, err := r.MultipartReader()
	if err != nil {
		return "", out, &failure{http.StatusBadRequest, oneLine(prose.Error(err))}
	}
	for {
		part, err := parts.NextPart()
		if errors.Is(err, io.EOF) {
			break
		}
		if err == nil {
			err = out.take(part, &text)
		}
		if err != nil {
			return "", out, unread(err)
		}
	}
	switch {
	case text == "":
		return "", out, &failure{http.StatusBadRequest, "text: missing"}
	case len(out.Files) == 0:
		return "", out, &failure{http.StatusBadRequest, "recording: missing; drop WAV files"}
	}
	return text, out, nil
}

// take takes one part of a form.
func (r *Recorded) take(part *multipart.Part, text *string) error {
	name := part.FormName()
	most := int64(mostBody)
	if name == "recording" {
		if len(r.Files) == mostRecordings {
			return &failure{http.StatusBadRequest, fmt.Sprintf("more than %d recordings", mostRecordings)}
		}
		most = mostRecorded
	}
	data, err := io.ReadAll(io.LimitReader(part, most+1))
	switch {
	case err != nil:
		return err
	case int64(len(data)) > most:
		return &failure{http.StatusRequestEntityTooLarge, name + ": too large"}
	}
	switch name {
	case "text":
		*text = string(data)
	case "as_built":
		r.AsBuilt = string(data) == "true"
	case "recording":
		// Whatever folder it is in is of no interest, nor is which system wrote it.
		r.Files = append(r.Files, Recording{path.Base(strings.ReplaceAll(part.FileName(), `\`, "/")), data})
	default:
		return &failure{http.StatusBadRequest, fmt.Sprintf("%q: not known", name)}
	}
	return nil
}

// unread says why a form could not be read.
func unread(err error) error {
	var known *failure
	var large *http.MaxBytesError
	switch {
	case errors.As(err, &known):
		return err
	case errors.As(err, &large):
		return &failure{http.StatusRequestEntityTooLarge, fmt.Sprintf("too large; at most %d MB of recordings", mostRecorded>>20)}
	}
	return &failure{http.StatusBadRequest, oneLine(prose.Error(err))}
}
