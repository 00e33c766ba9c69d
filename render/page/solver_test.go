package page

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"pappus/render/words"
	"pappus/timing/radiate"

	"github.com/coder/websocket"
	"github.com/coder/websocket/wsjson"
)

// cubes are those that there were: what is solved for is kept, so that each is another.
var cubes atomic.Int64

// cube is a design whose body's field is solved for in about a second up to 500 Hz.
func cube(upTo int) string {
	return fmt.Sprintf(`name = "Cube"
[body]
shape = "cube"
radius_mm = %g
[driver]
diameter_mm = 40
[timing]
model = "body"
solve_to_hz = %d
[spot]
x_m = 2
y_m = 0
z_m = 0.3
[coverage]
cells = 8
`, 100+float64(cubes.Add(1))/100, upTo)
}

// running are the bodies that are being solved for.
func running(p *Page) (out []*solution) {
	p.solver.mu.Lock()
	defer p.solver.mu.Unlock()
	for _, x := range p.solver.now {
		out = append(out, x)
	}
	return out
}

// waiting opens a socket on which the field of a body is waited for.
func waiting(t *testing.T, p *Page) (ask func(id string), news func() solving) {
	t.Helper()
	ask, news, _ = reloadable(t, p)
	return ask, news
}

// reloadable is waiting, and the socket can be lost.
func reloadable(t *testing.T, p *Page) (ask func(id string), news func() solving, lose func()) {
	t.Helper()
	server := httptest.NewServer(p)
	t.Cleanup(server.Close)
	conn := dialTo(t, server, "solve")
	ask = func(id string) {
		t.Helper()
		if err := wsjson.Write(t.Context(), conn, solveAsked{ID: id}); err != nil {
			t.Fatal(err)
		}
	}
	return ask, func() (out solving) {
		t.Helper()
		ctx, stop := context.WithTimeout(t.Context(), time.Minute)
		defer stop()
		if err := wsjson.Read(ctx, conn, &out); err != nil {
			t.Fatal(err)
		}
		return out
	}, func() { conn.CloseNow() }
}

// TestReloadGoesOn: who loads the page anew finds the work as far as it has come, and once somebody
// wants none any more it is given up.
func TestReloadGoesOn(t *testing.T) {
	text := cube(12000)
	p, _ := newPage(t, text)
	id := ask[planAnswer](t, p, "/api/plan", asked{text}).ID
	ask, news, lose := reloadable(t, p)
	ask(id)
	news()
	before := running(p)
	lose()
	ask, news = waiting(t, p)
	ask(id)
	news()
	if now := running(p); len(now) != 1 || len(before) != 1 || now[0] != before[0] {
		t.Errorf("after a reload %d are solved for, before %d", len(now), len(before))
	}
	for _, x := range before { // who has lost the socket may come back for a while
		x.stop()
		<-x.ended
	}
}

// TestBodyIsSwappedIn: the ball stands for a body until its field is solved for, nothing is built from
// that, and then the plan is by the field, with the design as it was.
func TestBodyIsSwappedIn(t *testing.T) {
	text := cube(500)
	p, _ := newPage(t, text)
	plan := func() planAnswer { t.Helper(); return ask[planAnswer](t, p, "/api/plan", asked{text}) }
	files := func() *httptest.ResponseRecorder {
		return do(p, request("/api/files", `{"what":"plan","text":`+quoted(text)+`}`))
	}
	first := plan()
	if !first.Model.Waits || first.Plan.Model != radiate.SphereModel || first.Text != text || first.Values["timing.model"] != "body" || first.Model.Other != "sphere" {
		t.Fatalf("at first: %+v, planned by %q, values %v", first.Model, first.Plan.Model, first.Values["timing.model"])
	}
	for _, path := range []string{"/api/files", "/api/bench"} {
		body := `{"text":` + quoted(text) + `}`
		if path == "/api/files" {
			body = `{"what":"plan","text":` + quoted(text) + `}`
		}
		if w := do(p, request(path, body)); w.Code != http.StatusConflict || !strings.Contains(w.Body.String(), "not solved for yet") {
			t.Errorf("%s: %d %s", path, w.Code, w.Body)
		}
	}
	ask, news := waiting(t, p)
	ask("none")
	if got := news(); !got.Unknown || got.ID != "none" {
		t.Errorf("of no plan: %+v", got)
	}
	ask(first.ID)
	last := -1.0
	for {
		got := news()
		if got.ID != first.ID || got.Error != "" || float64(got.Done) < last {
			t.Fatalf("%+v after %g", got, last)
		}
		if last = float64(got.Done); got.Solved {
			break
		}
		if (got.Words == "") != (got.Done == 0) {
			t.Errorf("it says %+v", got)
		}
	}
	second := plan()
	if second.Model.Waits || second.ID == first.ID || second.Plan.Model != radiate.BodyModel || second.Text != text || !strings.Contains(second.Model.Words, "up to") {
		t.Errorf("at last: %+v, planned by %q", second.Model, second.Plan.Model)
	}
	if w := files(); w.Code != http.StatusOK {
		t.Errorf("files: %d %s", w.Code, w.Body)
	}
	ask(first.ID)
	if got := news(); !got.Solved {
		t.Errorf("of what is at hand: %+v", got)
	}
}

// TestBodyWithSeats: seats are served roughly first, by the ball and by the field of the body.
func TestBodyWithSeats(t *testing.T) {
	text := cube(500) + "[[seat]]\nx_m = 2\ny_m = 0.5\nz_m = 0.3\n[[seat]]\nx_m = 2\ny_m = -0.5\nz_m = 0.3\n"
	p, _ := newPage(t, text)
	plan := func(rough bool) planAnswer {
		t.Helper()
		return ask[planAnswer](t, p, "/api/plan", planAsked{text, rough})
	}
	seen := map[string]bool{}
	check := func(got planAnswer, rough, waits bool) {
		t.Helper()
		if got.Rough != rough || got.Model.Waits != waits || seen[got.ID] {
			t.Errorf("rough %v, by the ball %v, seen before %v: %q", got.Rough, got.Model.Waits, seen[got.ID], got.ID)
		}
		seen[got.ID] = true
	}
	first := plan(true)
	check(first, true, true)
	check(plan(false), false, true)
	ask, news := waiting(t, p)
	ask(first.ID)
	for !news().Solved {
	}
	check(plan(true), true, false)
	check(plan(false), false, false)
}

// TestWhatIsOffered: the other model is offered where it makes a difference.
func TestWhatIsOffered(t *testing.T) {
	whole := "name = \"x\"\n[body]\nshape = \"ball\"\nradius_mm = 100\n[mounts]\ncount = 6\n[driver]\ndiameter_mm = 30\n[spot]\nx_m = 2\ny_m = 0\nz_m = 0.3\n[coverage]\ncells = 8\n"
	for _, c := range []struct{ name, text, other string }{
		{"ball", whole, ""},
		{"point", small, ""},
		{"cube by the ball", strings.Replace(cube(500), `"body"`, `"sphere"`, 1), "body"},
		{"cube by points", strings.Replace(cube(500), `"body"`, `"point"`, 1), ""},
	} {
		p, _ := newPage(t, c.text)
		got := ask[planAnswer](t, p, "/api/plan", asked{c.text}).Model
		if got.Other != c.other || (got.Words == "") != (c.other == "") || (got.Press == "") != (c.other == "") || got.Waits {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
}

// TestBetterPlaceDoesNotWait: a better chair is looked for by the ball while it stands for the body.
func TestBetterPlaceDoesNotWait(t *testing.T) {
	text := cube(500)
	p, _ := newPage(t, text)
	ask[whereFound](t, p, "/api/where", whereAsked{text, "chair"})
	if !ask[planAnswer](t, p, "/api/plan", asked{text}).Model.Waits {
		t.Error("the field was solved for within the request")
	}
}

// TestSolverMovesOn: what nobody waits for any more is given up, and what another body needs is begun;
// the same body, from another chair, goes on.
func TestSolverMovesOn(t *testing.T) {
	long := cube(12000)
	p, _ := newPage(t, long)
	about := func(text string) string { t.Helper(); return ask[planAnswer](t, p, "/api/plan", asked{text}).ID }
	ask, news := waiting(t, p)
	ask(about(long))
	news()
	first := running(p)
	if len(first) != 1 {
		t.Fatalf("%d are solved for", len(first))
	}
	elsewhere := strings.Replace(long, "y_m = 0", "y_m = 0.5", 1)
	ask(about(elsewhere))
	for id := about(elsewhere); news().ID != id; {
	}
	if now := running(p); len(now) != 1 || now[0] != first[0] || first[0].waiting != 1 {
		t.Fatalf("from another chair: %d are solved for, the same %v", len(now), now[0] == first[0])
	}
	ask(about(cube(500)))
	<-first[0].ended
	if !errors.Is(first[0].err, context.Canceled) {
		t.Errorf("of another body: %v", first[0].err)
	}
	for !news().Solved {
	}
	ask(about(strings.Replace(long, "x_m = 2", "x_m = 2.5", 1)))
	news()
	ask("")
	for id := "x"; id != ""; id = news().ID {
	}
	if now := running(p); len(now) != 0 {
		t.Errorf("%d are solved for at the end", len(now))
	}
}

// TestSolverTells: of a body that cannot be solved for the reason is told.
func TestSolverTells(t *testing.T) {
	x := &solution{task: task{words: words.Solving, failed: words.NotSolved}, by: newSolver(), ended: make(chan struct{}), err: errors.New("it has no faces")}
	if got := x.tell(); got.Error != "" || got.Solved || got.Words != "" {
		t.Errorf("at the beginning: %+v", got)
	}
	x.done, x.whole, x.began = 0.05, 40, time.Now()
	if got := x.tell(); got.Done != 0.05 || !strings.HasSuffix(got.Words, "5 %, about 38 seconds left") {
		t.Errorf("under way: %+v", got)
	}
	close(x.ended)
	if got := x.tell(); got.Solved || !strings.Contains(got.Error, "it has no faces") {
		t.Errorf("%+v", got)
	}
}

// TestSolveRefuses: what is no question ends the talk.
func TestSolveRefuses(t *testing.T) {
	p, _ := newPage(t, small)
	server := httptest.NewServer(p)
	defer server.Close()
	conn := dialTo(t, server, "solve")
	if err := conn.Write(t.Context(), websocket.MessageText, json.RawMessage(`{"seat":1}`)); err != nil {
		t.Fatal(err)
	}
	if _, _, err := conn.Read(t.Context()); websocket.CloseStatus(err) != websocket.StatusUnsupportedData {
		t.Errorf("%v", err)
	}
}
