package page

import (
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestFileIsAnother: where another thing came in the file's place it is neither read nor written, and
// there are words at once; once it is back all goes on.
func TestFileIsAnother(t *testing.T) {
	for _, c := range []struct {
		name, says string
		put        func(path, elsewhere string) error
	}{
		{"a pipe", "it is a pipe, not a file", func(path, _ string) error { return pipe(path) }},
		{"a folder", "it is a folder, not a file", func(path, _ string) error { return os.Mkdir(path, 0o700) }},
		{"a link to the same text elsewhere", "leads elsewhere since the program began", func(path, elsewhere string) error { return os.Symlink(elsewhere, path) }},
		{"a link to a device", "leads elsewhere since the program began", func(path, _ string) error { return os.Symlink(os.DevNull, path) }},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, path := newPage(t, small)
			elsewhere := filepath.Join(t.TempDir(), "elsewhere.toml")
			if err := os.WriteFile(elsewhere, []byte(small), 0o600); err != nil {
				t.Fatal(err)
			}
			aside := path + ".aside"
			if err := os.Rename(path, aside); err != nil {
				t.Fatal(err)
			}
			if err := c.put(path, elsewhere); err != nil {
				t.Skip(err)
			}
			save := `{"text":"# mine\n","read":"` + hashOf([]byte(small)) + `"}`
			for what, r := range map[string]*http.Request{"save": request("/api/save", save), "start": httptest.NewRequest("GET", "http://localhost/api/start", nil)} {
				if w := do(p, r); w.Code != http.StatusConflict || !strings.Contains(w.Body.String(), c.says) {
					t.Errorf("%s: %d %s", what, w.Code, w.Body)
				}
			}
			s := stand{}
			p.disk.look(&s)
			if news, ok := p.disk.look(&s); !ok || !strings.Contains(news.Wrong, c.says) || news.Text != "" {
				t.Errorf("told %t %+v", ok, news)
			}
			if text, err := os.ReadFile(elsewhere); err != nil || string(text) != small {
				t.Errorf("elsewhere: %q %v", text, err)
			}
			if err := os.Remove(path); err != nil {
				t.Fatal(err)
			}
			if err := os.Rename(aside, path); err != nil {
				t.Fatal(err)
			}
			if w := do(p, request("/api/save", save)); w.Code != http.StatusOK {
				t.Errorf("back again: %d %s", w.Code, w.Body)
			}
		})
	}
}
