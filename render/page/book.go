package page

import (
	"bytes"
	"net/http"

	"pappus/render/document"
	"pappus/render/sheets"
)

// bookAnswer is the wiring book.
type bookAnswer struct {
	Name string `json:"name"`
	document.Book
	Drawings []bookDrawing `json:"drawings"`
}

// bookDrawing is the inside of a body with some strings.
type bookDrawing struct {
	Title   string   `json:"title"`
	Strings []string `json:"strings"` // the names of those that are drawn
	SVG     string   `json:"svg"`
}

// book answers with the wiring book.
func (p *Page) book(_ http.ResponseWriter, r *http.Request, in asked) (any, error) {
	made, err := p.plans.of(r.Context(), in.Text, p.work)
	if err == nil {
		err = made.built()
	}
	if err != nil {
		return nil, err
	}
	return bookOf(made)
}

// book is that of the design as it is saved. It takes no text: a phone has nothing planned.
func (h *Phone) book(_ http.ResponseWriter, r *http.Request, _ phoneAsked) (any, error) {
	made, err := h.saved(r)
	if err != nil {
		return nil, err
	}
	return bookOf(made)
}

func bookOf(made *planned) (bookAnswer, error) {
	out := bookAnswer{made.array.Name, document.OfBook(made.plan), []bookDrawing{}}
	for _, d := range sheets.WiringDrawings(made.plan) {
		var b bytes.Buffer
		if err := d.WriteSVG(&b); err != nil {
			return out, err
		}
		out.Drawings = append(out.Drawings, bookDrawing{d.Title, d.Strings, b.String()})
	}
	return out, nil
}
