package page

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"io"
	"mime/multipart"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"pappus/timing"
	"pappus/timing/verdict"
)

// form returns a request with parts of name, file name (empty: a plain field) and text.
func form(t testing.TB, parts ...[3]string) *http.Request {
	t.Helper()
	var b bytes.Buffer
	m := multipart.NewWriter(&b)
	for _, part := range parts {
		create := func() (io.Writer, error) { return m.CreateFormField(part[0]) }
		if part[1] != "" {
			create = func() (io.Writer, error) { return m.CreateFormFile(part[0], part[1]) }
		}
		w, err := create()
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.Write([]byte(part[2])); err != nil {
			t.Fatal(err)
		}
	}
	if err := m.Close(); err != nil {
		t.Fatal(err)
	}
	r := httptest.NewRequest(http.MethodPost, "http://127.0.0.1:7000/api/measure", &b)
	r.Header.Set("Content-Type", m.FormDataContentType())
	r.Header.Set("Origin", "http://127.0.0.1:7000")
	return r
}

func TestMeasure(t *testing.T) {
	p, _ := newPage(t, small)
	var asked []verdict.Recording
	var played timing.Case
	p.options.Measure = func(_ context.Context, _ *timing.Plan, r []verdict.Recording, c timing.Case) (verdict.Found, error) {
		if asked, played = r, c; held(t, r[0]) == "bad" {
			return verdict.Found{}, errors.New("all.wav:\nclipped")
		}
		return verdict.Found{Faults: []verdict.Fact{{Code: verdict.Silent, Channels: []int{2}}}, Notes: []verdict.Fact{{Code: verdict.LevelUnjudged}}}, nil
	}
	w := do(p, form(t, [3]string{"text", "", small}, [3]string{"as_built", "", "true"},
		[3]string{"recording", `C:\takes\all.wav`, "one"}, [3]string{"recording", "channel_1.wav", "two"}))
	var out struct {
		Faults, Sentences []string
		Level             any
	}
	if err := json.Unmarshal(w.Body.Bytes(), &out); err != nil || w.Code != http.StatusOK {
		t.Fatalf("%d %s %v", w.Code, w.Body, err)
	}
	if len(out.Faults) != 1 || !strings.HasPrefix(out.Faults[0], "channel 2 is silent") || len(out.Sentences) != 1 || !strings.HasPrefix(out.Sentences[0], "Mind: the level") || out.Level != nil {
		t.Errorf("%s", w.Body)
	}
	if played != timing.AsBuilt || len(asked) != 2 || asked[0].Name != "all.wav" || held(t, asked[1]) != "two" {
		t.Errorf("asked %+v", asked)
	}

	many := [][3]string{{"text", "", small}}
	for range mostRecordings + 1 {
		many = append(many, [3]string{"recording", "x.wav", "x"})
	}
	for _, test := range []struct {
		name   string
		parts  [][3]string
		status int
		words  string
	}{
		{"clipped", [][3]string{{"text", "", small}, {"recording", "all.wav", "bad"}}, 400, "all.wav: clipped"},
		{"no design", [][3]string{{"recording", "all.wav", "x"}}, 400, "text: missing"},
		{"no recording", [][3]string{{"text", "", small}}, 400, "recording: missing"},
		{"another field", [][3]string{{"text", "", small}, {"path", "", "/"}}, 400, "not known"},
		{"a long design", [][3]string{{"text", "", strings.Repeat("#", mostBody+1)}}, 413, "text: too large"},
		{"a faulty design", [][3]string{{"text", "", "name = 3"}, {"recording", "all.wav", "x"}}, 422, "faults"},
		{"many", many, 400, "more than 65"},
	} {
		t.Run(test.name, func(t *testing.T) {
			w := do(p, form(t, test.parts...))
			if w.Code != test.status || !strings.Contains(w.Body.String(), test.words) {
				t.Errorf("%d %s", w.Code, w.Body)
			}
		})
	}
	if w := do(p, request("/api/measure", "{}")); w.Code != http.StatusUnsupportedMediaType {
		t.Errorf("JSON: %d", w.Code)
	}
	foreign := form(t, [3]string{"text", "", small}, [3]string{"recording", "all.wav", "x"})
	foreign.Header.Set("Origin", "http://elsewhere.example")
	if w := do(p, foreign); w.Code != http.StatusForbidden {
		t.Errorf("from elsewhere: %d", w.Code)
	}
	p.options.Measure = func(context.Context, *timing.Plan, []verdict.Recording, timing.Case) (verdict.Found, error) {
		if w := do(p, form(t, [3]string{"text", "", small}, [3]string{"recording", "all.wav", "x"})); w.Code != http.StatusTooManyRequests {
			t.Errorf("two at once: %d", w.Code)
		}
		return verdict.Found{}, nil
	}
	if w := do(p, form(t, [3]string{"text", "", small}, [3]string{"recording", "all.wav", "x"})); w.Code != http.StatusOK {
		t.Errorf("one after another: %d", w.Code)
	}
}

// held is what a recording holds.
func held(t *testing.T, r verdict.Recording) string {
	t.Helper()
	f, err := r.Open()
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	data, err := io.ReadAll(f)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}
