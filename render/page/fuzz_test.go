package page

import (
	"bytes"
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	inputs "pappus/testdata/drawn"
)

// FuzzAPI: the first line is a verb, or live for a message of a page that follows the chair; the
// rest is what is sent. Every answer is JSON, and none says that the program is at fault.
func FuzzAPI(f *testing.F) {
	p, err := New(Options{})
	if err != nil {
		f.Fatal(err)
	}
	p.disk.path = f.TempDir() + "/mine.toml" // not there: nothing can be saved
	id := ask[planAnswer](f, p, "/api/plan", asked{small}).ID
	inputs.Bytes(f, []string{
		"plan\n" + `{"text":"[body]\nradius_mm = 1\n"}`,
		"edit\n" + `{"text":"","set":[{"key":"channel[1].drivers","value":[1,2]},{"key":"surface","value":null}]}`,
		"save\n" + `{"text":"","read":"x"}`,
		"walk\n" + `{"text":"","spot_m":[1,2,3],"programme":"clicks","case":"aligned"}`,
		"live\n" + `{"seq":1,"id":"` + id + `","spot_m":[1,1e-9,-1],"view":"side","quantity":"summing_loss","band_hz":8000,"cells":5}`,
		"live\n" + `{"seq":1,"id":"` + id + `","spot_m":[0,0,5],"view":"side","quantity":"comb_onset","cells":4}`,
		"live\n" + `{"seq":1,"id":"` + id + `","spot_m":[0,2,5],"turned":[{"channel":1,"delay_us":100,"gain_db":-3,"invert":true}]}`,
		"plan\n" + `{"text":` + quoted(strings.Replace(small, "count = 6", "count = 2", 1)) + `}`,
		"merge\n" + `{"base":"[body]\n","mine":"[body]\nradius_mm = 1\n","theirs":"[body]\nradius_mm = 2\n"}`,
		"where\n" + `{"text":"","what":"chair"}`,
		"tick\n" + `{"drivers":[1,2],"step":"driver","driver":2,"done":true}`,
	}, func(t testing.TB, data []byte) {
		verb, body, _ := bytes.Cut(data, []byte("\n"))
		if bytes.Contains(body, []byte("count")) && len(body) > 400 {
			return // planned for long
		}
		if string(verb) == "live" {
			follow(t, &session{plans: p.plans}, body)
			return
		}
		for _, known := range []string{"plan", "edit", "save", "walk", "where", "merge", "tick"} {
			if string(verb) != known {
				continue
			}
			w := httptest.NewRecorder()
			p.ServeHTTP(w, p.posted("/api/"+known, body))
			if !json.Valid(w.Body.Bytes()) || w.Code == http.StatusInternalServerError || strings.Contains(w.Body.String(), p.lock.words) {
				t.Fatalf("%d %s", w.Code, w.Body)
			}
		}
	})
}

// posted is a request of one who was let in, without the parsing of a request's text that costs more
// than answering most.
func (p *Page) posted(path string, body []byte) *http.Request {
	r, err := http.NewRequest(http.MethodPost, "http://127.0.0.1:7000"+path, bytes.NewReader(body))
	if err != nil {
		panic(err) // of a path that is none
	}
	r.Header.Set("Content-Type", "application/json")
	r.Header.Set("Origin", "http://127.0.0.1:7000")
	r.AddCookie(p.lock.kept(r.Host))
	return r
}

// follow answers one message of a live page, and draws what follows it.
func follow(t testing.TB, s *session, message []byte) {
	m := read(message)
	if m.err != nil || m.move.Cells > dragCells {
		return
	}
	send := func(v any) error {
		var b bytes.Buffer
		if err := encode(&b, v); err != nil || !json.Valid(b.Bytes()) {
			t.Fatalf("%v %s", err, b.Bytes())
		}
		return nil
	}
	out, at := s.answer(m.move)
	if err := send(out); err != nil || at == nil {
		return
	}
	if err := newPainter(send).draw(t.Context(), t.Context(), job{m.move, s.made, at}); err != nil {
		t.Fatal(err)
	}
}
