package page

import (
	"errors"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestFound: what a search found is told, its designs are opened by their names alone, and a folder that is
// none is refused in words.
func TestFound(t *testing.T) {
	folder := t.TempDir()
	write := func(name, text string) {
		t.Helper()
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := ReadFound(folder); !errors.Is(err, ErrNoSearch) {
		t.Errorf("an empty folder: %v", err)
	}
	for _, text := range []string{"x", "{}", `{"found":[]}`, `{"found":7}`} {
		write(SearchFile, text)
		if _, err := ReadFound(folder); !errors.Is(err, ErrNoSearch) {
			t.Errorf("%s: %v", text, err)
		}
	}
	write(SearchFile, `{"title":"all","found":[{"number":1,"file":"1_loudest.toml","name":"one","lost_db":1.5,"price":null}],"tried":[{"settings":[{"key":"x","value":1}],"lost_db":2}]}`)
	write("1_loudest.toml", small)
	write("secret.toml", "not offered")
	f, err := ReadFound(folder)
	if err != nil {
		t.Fatal(err)
	}
	o := options(f.First())
	o.Found = f
	p, err := New(o)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name string
		r    *http.Request
		code int
		want string
	}{
		{"found", get("/api/found"), 200, `"lost_db":1.5`},
		{"price that is not known", get("/api/found"), 200, `"price":null`},
		{"start", get("/api/start"), 200, `"found":true`},
		{"offered", request("/api/offered", `{"file":"1_loudest.toml"}`), 200, `"text":"`},
		{"not offered", request("/api/offered", `{"file":"secret.toml"}`), 404, "no such design"},
		{"elsewhere", request("/api/offered", `{"file":"../1_loudest.toml"}`), 404, "no such design"},
	} {
		if w := do(p, c.r); w.Code != c.code || !strings.Contains(w.Body.String(), c.want) {
			t.Errorf("%s: %d %s", c.name, w.Code, w.Body)
		}
	}
	if w := do(p, get("/api/found")); strings.Contains(w.Body.String(), `"key":"x"`) {
		t.Error("settings of what was tried are sent")
	}
	none, _ := newPage(t, small)
	if w := do(none, get("/api/found")); w.Code != 404 {
		t.Errorf("without a search: %d", w.Code)
	}
}

// get is a request without a body.
func get(path string) *http.Request {
	r := request(path, "")
	r.Method, r.Body = http.MethodGet, http.NoBody
	return r
}
