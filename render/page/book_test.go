package page

import (
	"encoding/xml"
	"net/http"
	"net/http/httptest"
	"slices"
	"strings"
	"testing"
)

// wired is a design with strings.
var wired = strings.Replace(small, "[timing]", "[wiring]\nchannels = 2\n[timing]", 1)

// TestBook: the wiring book has every string once in a drawing, and with its pieces and readings.
func TestBook(t *testing.T) {
	p, _ := newPage(t, wired)
	got := ask[bookAnswer](t, p, "/api/book", asked{wired})
	if got.Name != "Ball of six" || len(got.Steps) < 5 || len(got.Terminals) != 4 || got.Terminals[0].Leads == "" || got.Terminals[2].Sleeves != "red" || got.Row == "" || got.Cell == "" || got.Copper == "" || got.Readings == "" {
		t.Errorf("%+v", got)
	}
	var drawn []string
	for _, d := range got.Drawings {
		drawn = append(drawn, d.Strings...)
		if err := xml.Unmarshal([]byte(d.SVG), new(struct{ XMLName xml.Name })); err != nil || !strings.Contains(d.SVG, ">front<") || d.Title == "" {
			t.Errorf("%q: %v", d.Title, err)
		}
	}
	pieces, cut := 0, 0
	for i, s := range got.Strings {
		pieces += len(s.Pieces)
		if n := len(s.Pieces); n < 2 || s.Pieces[0].Colour != "red" || s.Pieces[n-1].Colour != "black" || !strings.HasPrefix(s.Pieces[0].From, "terminal ") || s.Takes == "" {
			t.Errorf("%+v", s)
		}
		if n := slices.Index(drawn, s.Name); n < 0 || slices.Contains(drawn[n+1:], s.Name) {
			t.Errorf("string %s is not drawn once: %v", s.Name, drawn)
		}
		if got.Alone[i].What != "string "+s.Name || !strings.Contains(got.Alone[i].Ohm, " to ") || got.Alone[i].Else == "" {
			t.Errorf("%+v", got.Alone[i])
		}
	}
	for _, c := range got.Cut {
		cut += c.Pieces
	}
	if pieces != cut || pieces != 6+len(got.Strings) || len(got.Whole) != 2 {
		t.Errorf("%d pieces, %d to cut, %d channels", pieces, cut, len(got.Whole))
	}
}

// TestBookWaits: nothing is given to solder from while the ball stands for the body.
func TestBookWaits(t *testing.T) {
	text := cube(500)
	p, _ := newPage(t, text)
	if w := do(p, request("/api/book", `{"text":`+quoted(text)+`}`)); w.Code != http.StatusConflict || !strings.Contains(w.Body.String(), "not solved for yet") {
		t.Errorf("%d %s", w.Code, w.Body)
	}
	if w := do(p, httptest.NewRequest(http.MethodGet, "http://127.0.0.1:7000/book", nil)); w.Code != http.StatusOK || !strings.Contains(w.Body.String(), "book.js") {
		t.Errorf("the view: %d", w.Code)
	}
}
