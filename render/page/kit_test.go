package page

import (
	"archive/zip"
	"bytes"
	"compress/gzip"
	"context"
	"encoding/binary"
	"encoding/json"
	"errors"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"pappus/layout/design"
	"pappus/layout/poly"
	example "pappus/testdata/planned"

	"github.com/coder/websocket/wsjson"
	"gonum.org/v1/gonum/spatial/r3"
)

// dome is a design of few parts, which are made in about a second.
const dome = example.SmallDome

// making opens a socket on which parts are waited for.
func making(t *testing.T, p *Page) (ask func(solveAsked), news func() solving) {
	t.Helper()
	server := httptest.NewServer(p)
	t.Cleanup(server.Close)
	conn := dialTo(t, server, "solve")
	ctx, stop := context.WithTimeout(t.Context(), 2*time.Minute)
	t.Cleanup(stop)
	return func(in solveAsked) {
			t.Helper()
			if err := wsjson.Write(ctx, conn, in); err != nil {
				t.Fatal(err)
			}
		}, func() (out solving) {
			t.Helper()
			if err := wsjson.Read(ctx, conn, &out); err != nil {
				t.Fatal(err)
			}
			return out
		}
}

// of asks for a design's parts or their files.
func of(p *Page, path, text string) *httptest.ResponseRecorder {
	body := `{"text":` + quoted(text) + `}`
	if path == "/api/files" {
		body = `{"what":"kit","text":` + quoted(text) + `}`
	}
	return do(p, request(path, body))
}

// TestKit: parts are made while somebody waits, are there then with their meshes and files, also for
// the same parts by another name and chair, and not for others.
func TestKit(t *testing.T) {
	p, _ := newPage(t, dome)
	for _, path := range []string{"/api/parts", "/api/files"} {
		if w := of(p, path, dome); w.Code != http.StatusConflict || !strings.Contains(w.Body.String(), "not made yet") {
			t.Errorf("%s before: %d %s", path, w.Code, w.Body)
		}
	}
	plan := ask[planAnswer](t, p, "/api/plan", asked{dome})
	wish, news := making(t, p)
	wish(solveAsked{ID: "none", Kit: true})
	if got := news(); !got.Unknown {
		t.Errorf("of no plan: %+v", got)
	}
	wish(solveAsked{ID: plan.ID, Kit: true})
	last := -1.0
	for {
		got := news()
		if got.ID != plan.ID || got.Error != "" || float64(got.Done) < last {
			t.Fatalf("%+v after %g", got, last)
		}
		if last = float64(got.Done); got.Solved {
			break
		}
		if got.Words != "" && !strings.HasPrefix(got.Words, "making the parts: ") {
			t.Errorf("it says %+v", got)
		}
	}
	head := checkParts(t, of(p, "/api/parts", dome))
	if head.Kit != plan.Kit {
		t.Errorf("parts %q of the design's %q", head.Kit, plan.Kit)
	}
	elsewhere := strings.Replace(strings.Replace(dome, "Small dome", "Other", 1), "x_m = 2", "x_m = 1.5", 1)
	if got := ask[planAnswer](t, p, "/api/plan", asked{elsewhere}); got.Kit != plan.Kit {
		t.Errorf("of another chair the parts are others: %q", got.Kit)
	}
	w := of(p, "/api/files", elsewhere)
	z, err := zip.NewReader(bytes.NewReader(w.Body.Bytes()), int64(w.Body.Len()))
	if err != nil {
		t.Fatalf("%d %v", w.Code, err)
	}
	names := map[string]bool{}
	for _, f := range z.File {
		names[f.Name] = true
	}
	for _, want := range []string{"kit.csv", "assembly.svg", "wiring.pdf", "kit-plate-1.3mf", "kit-floor.stl"} {
		if !names[want] {
			t.Errorf("no %s among %v", want, names)
		}
	}
	assembly, err := z.Open("assembly.svg")
	if err != nil {
		t.Fatal(err)
	}
	if svg, err := io.ReadAll(assembly); err != nil || !strings.Contains(string(svg), "Other, taken apart") {
		t.Errorf("the picture is of another design: %v", err)
	}
	larger := strings.Replace(dome, "radius_mm = 60", "radius_mm = 61", 1)
	if w := of(p, "/api/parts", larger); w.Code != http.StatusConflict {
		t.Errorf("of a larger one: %d", w.Code)
	}
}

// checkParts reads an answer of parts to its end.
func checkParts(t *testing.T, w *httptest.ResponseRecorder) (head partsHead) {
	t.Helper()
	body := w.Body.Bytes()
	if w.Code != http.StatusOK || len(body) < 4 {
		t.Fatalf("%d %s", w.Code, body)
	}
	long := binary.LittleEndian.Uint32(body)
	if err := json.Unmarshal(body[4:4+long], &head); err != nil {
		t.Fatal(err)
	}
	at := 4 + int(long)
	for _, part := range head.Parts {
		if part.Name == "" || (part.Count < 1 || !(part.Mass > 0) || !(part.Hours > 0)) != part.Fitted || part.Corners < 4 || part.Triangles < 4 {
			t.Errorf("%+v", part)
		}
		at += (6*part.Corners + 3) / 4 * 4
		for range 3 * part.Triangles {
			if i := binary.LittleEndian.Uint32(body[at:]); int(i) >= part.Corners {
				t.Fatalf("%s has a corner %d of %d", part.Name, i, part.Corners)
			}
			at += 4
		}
	}
	if at != len(body) || len(head.Say) < 2 || !(head.Apart > 0) {
		t.Errorf("%d bytes of %d are read; %v", at, len(body), head)
	}
	return head
}

// TestKitIsGivenUp: what nobody waits for is not made, and what cannot be is told.
func TestKitIsGivenUp(t *testing.T) {
	p, _ := newPage(t, dome)
	plan := ask[planAnswer](t, p, "/api/plan", asked{dome})
	p.maker.turn <- struct{}{} // others are at it
	wish, news := making(t, p)
	wish(solveAsked{ID: plan.ID, Kit: true})
	news()
	p.maker.mu.Lock()
	x := p.maker.now[p.held(t, dome).kit]
	p.maker.mu.Unlock()
	if x == nil {
		t.Fatal("nothing is made")
	}
	wish(solveAsked{})
	news()
	<-x.ended
	p.maker.mu.Lock()
	made := len(p.maker.now)
	p.maker.mu.Unlock()
	if !errors.Is(x.err, context.Canceled) || made != 0 {
		t.Errorf("%v, and %d are made", x.err, made)
	}
	<-p.maker.turn
	solid := strings.Replace(dome, "[timing]", "[print]\nbed_mm = [10, 10, 10]\n[timing]", 1)
	wish(solveAsked{ID: ask[planAnswer](t, p, "/api/plan", asked{solid}).ID, Kit: true})
	for {
		got := news()
		if got.Solved {
			t.Fatal("it is made for a bed of 10 mm")
		}
		if got.Error != "" {
			if !strings.HasPrefix(got.Error, "The parts cannot be made: ") {
				t.Errorf("it says %q", got.Error)
			}
			break
		}
	}
}

// held is a plan that was made.
func (p *Page) held(t *testing.T, text string) *planned {
	t.Helper()
	made, err := p.plans.of(t.Context(), text, p.work)
	if err != nil {
		t.Fatal(err)
	}
	return made
}

// TestKitKey: parts are others where they may be, and no others for what they do not hang on.
func TestKitKey(t *testing.T) {
	key := func(text string) any {
		t.Helper()
		d, err := design.Parse("a.toml", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		return kitKey(d, example.Of(t, d))
	}
	first := key(dome)
	for _, c := range []struct {
		key   string
		value any
		same  bool
	}{
		{"name", "Other", true}, {"spot.y_m", 0.5, true}, {"coverage.cells", 9, true}, {"air.temperature_c", 10, false}, {"wiring.channels", 2, false},
		{"processor.rate_hz", 96000, true}, {"timing.model", "sphere", true}, {"protection.order", 2, true},
		{"body.radius_mm", 60.5, false}, {"body.wall_mm", 3.5, false}, {"driver.diameter_mm", 21, false}, {"driver.depth_mm", 13, false}, {"kit.gap_mm", 0.3, false},
		{"mounts.skip", []any{1}, false}, {"print.bed_mm", []any{120, 120, 120}, false}, {"driver.fs_hz", 120, false},
	} {
		text, err := design.Set([]byte(dome), c.key, c.value)
		if err != nil {
			t.Errorf("%s: %v", c.key, err)
			continue
		}
		if same := key(string(text)) == first; same != c.same {
			t.Errorf("%s: the same %v, want %v", c.key, same, c.same)
		}
	}
}

// TestCoarse: corners that fall together are one, and what is large keeps its shape.
func TestCoarse(t *testing.T) {
	m := poly.Mesh{
		Vertices:  []r3.Vec{{}, {X: 0.1}, {Y: 0.1}, {Z: 0.1}, {X: 0.1 + finest/5}},
		Triangles: [][3]int{{0, 2, 1}, {0, 1, 3}, {0, 3, 2}, {1, 2, 3}, {1, 4, 2}},
	}
	g := coarse(m)
	if len(g.corners) != 4 || len(g.triangles) != 4 || g.low != (triple{}) {
		t.Errorf("%+v", g)
	}
	if got := float64(g.step) * float64(g.corners[1][0]); got < 0.1-finest || got > 0.1+finest {
		t.Errorf("0.1 m are %g", got)
	}
	m.Vertices[1].X = 10
	if g := coarse(m); float64(g.step)*float64(g.corners[1][0]) < 9.99 {
		t.Errorf("10 m are %g", float64(g.step)*float64(g.corners[1][0]))
	}
	if n := len(g.append(nil)); n != 4*6+4*12 {
		t.Errorf("%d bytes", n)
	}
}

// TestSentPacked: who takes gzip is sent it, and all others the bytes.
func TestSentPacked(t *testing.T) {
	body := bytes.Repeat([]byte("parts "), 100)
	for _, takes := range []string{"", "gzip, deflate, br"} {
		r, w := httptest.NewRequest(http.MethodPost, "/", nil), httptest.NewRecorder()
		r.Header.Set("Accept-Encoding", takes)
		sendPacked(w, r, body)
		got := io.Reader(w.Body)
		if takes != "" {
			if w.Body.Len() > len(body)/4 || w.Header().Get("Content-Encoding") != "gzip" {
				t.Errorf("%d bytes, %v", w.Body.Len(), w.Header())
			}
			var err error
			if got, err = gzip.NewReader(w.Body); err != nil {
				t.Fatal(err)
			}
		}
		if all, err := io.ReadAll(got); err != nil || !bytes.Equal(all, body) {
			t.Errorf("%q: %v", takes, err)
		}
	}
}
