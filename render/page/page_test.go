package page

import (
	"archive/zip"
	"bytes"
	"context"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"pappus/layout/design"
	"pappus/render/outdir"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// small is a design that is planned in no time.
const small = `# A small one.
name = "Ball of six"
[body]
shape = "ball"
radius_mm = 100   # across is twice that
[mounts]
count = 6
[driver]
diameter_mm = 30
[timing]
model = "point"
[spot]
x_m = 2
y_m = 0
z_m = 1
[coverage]
cells = 8
`

// options are those of a page that writes down what it is asked for.
func options(path string) Options {
	return Options{
		Path: path, Version: "1.2.3",
		Programmes: []Named{{Name: "clicks", Words: "click train"}}, Cases: []Named{{Name: "aligned", Words: "aligned"}}, Files: []Named{{Name: "plan", Words: "all"}},
		Pace: 1.2,
		Stems: func(p *timing.Spot, at r3.Vec, cases []string, h Hearing) (*Stems, error) {
			return &Stems{Filters: [][]float64{{p.Array.Spot.X, at.X, at.Y}}, Stems: []Stem{{From: 3, Left: []float64{1, 2}}}, Cases: [][]Fed{{{0, -2, 1.5}}}}, nil
		},
		Loudness: func(_ context.Context, p *timing.Spot, at r3.Vec, h Hearing) (map[string]float64, error) {
			return map[string]float64{h.Programme: p.Array.Spot.X + 10*at.X}, nil
		},
		Programme: func(name string) (Sound, error) { return Sound{Samples: []float64{0.5, -0.5, 0.25}}, nil },
		Write: func(what string, p *timing.Plan) ([]outdir.File, error) {
			return []outdir.File{{Name: what + ".txt", Write: func(w io.Writer) error {
				_, err := io.WriteString(w, p.Array.Name)
				return err
			}}}, nil
		},
	}
}

// newPage returns a page of a design in a file of its own, with the file's path.
func newPage(t testing.TB, text string) (*Page, string) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "mine.toml")
	if err := os.WriteFile(path, []byte(text), 0o640); err != nil {
		t.Fatal(err)
	}
	p, err := New(options(path))
	if err != nil {
		t.Fatal(err)
	}
	return p, path
}

// request returns a request as the page's own script sends it.
func request(path, body string) *http.Request {
	r := httptest.NewRequest(http.MethodPost, "http://127.0.0.1:7000"+path, strings.NewReader(body))
	r.Header.Set("Content-Type", "application/json")
	r.Header.Set("Origin", "http://127.0.0.1:7000")
	return r
}

// do answers a request of a browser that was let in.
func do(p *Page, r *http.Request) *httptest.ResponseRecorder {
	w := httptest.NewRecorder()
	r.AddCookie(p.lock.kept(r.Host))
	p.ServeHTTP(w, r)
	return w
}

// kept is the secret as a browser keeps it that was let in by a host.
func (k lock) kept(host string) *http.Cookie {
	return &http.Cookie{Name: cookieFor(host), Value: k.secret}
}

// letIn are the headers by which a socket comes in.
func (k lock) letIn(host string) http.Header { return http.Header{"Cookie": {k.kept(host).String()}} }

// ask posts a value and reads the answer.
func ask[Out any](t testing.TB, p *Page, path string, in any) (out Out) {
	t.Helper()
	body, err := json.Marshal(in)
	if err != nil {
		t.Fatal(err)
	}
	w := do(p, request(path, string(body)))
	if w.Code != http.StatusOK {
		t.Fatalf("%s: %d %s", path, w.Code, w.Body)
	}
	if err := json.Unmarshal(w.Body.Bytes(), &out); err != nil {
		t.Fatalf("%s: %v", path, err)
	}
	return out
}

type object = map[string]any

func TestStart(t *testing.T) {
	p, path := newPage(t, small)
	r := httptest.NewRequest(http.MethodGet, "http://localhost:7000/api/start", nil)
	w := do(p, r)
	var out started
	if err := json.Unmarshal(w.Body.Bytes(), &out); err != nil {
		t.Fatal(err)
	}
	if out.Path != path || out.Text != small || !out.CanSave || out.Name != "Ball of six" || out.Version != "1.2.3" || out.Read != hashOf([]byte(small)) {
		t.Errorf("%+v", out)
	}
	if len(out.Keys) != len(design.Keys()) || len(out.Tables) != len(design.Tables()) || len(out.Programmes) != 1 || len(out.Cases) != 1 || len(out.Files) != 1 {
		t.Errorf("%d keys, %d tables", len(out.Keys), len(out.Tables))
	}
	demo, err := New(Options{})
	if err != nil {
		t.Fatal(err)
	}
	w = do(demo, httptest.NewRequest(http.MethodGet, "http://localhost/api/start", nil))
	if !strings.Contains(w.Body.String(), `"can_save":false`) || !strings.Contains(w.Body.String(), "story corner") {
		t.Errorf("the demo: %.200s", w.Body)
	}
	if _, err := New(Options{Path: filepath.Join(t.TempDir(), "none.toml")}); err == nil || !strings.Contains(err.Error(), "there is no such file") {
		t.Errorf("no file: %v", err)
	}
}

func TestPlan(t *testing.T) {
	p, _ := newPage(t, small)
	out := ask[object](t, p, "/api/plan", asked{small})
	if out["id"] != hashOf([]byte(small)) || out["name"] != "Ball of six" || out["floor_m"] != nil || out["room"] != nil {
		t.Errorf("%v %v %v %v", out["id"], out["name"], out["floor_m"], out["room"])
	}
	values := out["values"].(object)
	if values["body.radius_mm"] != 100.0 || values["driver.dc_ohm"] != 6.8 || values["driver.fs_hz"] != nil {
		t.Errorf("values %v", values)
	}
	if given := out["given"].([]any); !slices.Contains(given, any("mounts.count")) || slices.Contains(given, any("air.pressure_kpa")) {
		t.Errorf("given %v", given)
	}
	plan := out["plan"].(object)
	if len(plan["drivers"].([]any)) != 6 || plan["octaves"] != nil || plan["measures"] == nil || plan["warnings"] == nil {
		t.Errorf("plan %v", plan)
	}
	if len(out["drivers"].([]any)) != 6 || len(out["processor"].([]any)) != 6 || len(out["counts"].([]any)) == 0 || len(out["sentences"].([]any)) < 3 {
		t.Errorf("%v", out)
	}
	d := out["drivers"].([]any)[0].(object)
	if d["cone_mm"] != 30.0 || d["flange_mm"] != 30.0 || len(d["at_mm"].([]any)) != 3 {
		t.Errorf("driver %v", d)
	}
	survey := ask[object](t, p, "/api/survey", asked{small})
	if len(survey["octaves"].([]any)) != 7 || survey["in_step_area_m2"] == nil || survey["spatial"] == nil || len(survey) != 3 {
		t.Errorf("survey %v", survey)
	}
	demo := ask[object](t, p, "/api/plan", asked{string(design.DefaultTOML())})
	if demo["floor_m"] != -0.025 {
		t.Errorf("floor %v", demo["floor_m"])
	}
}

// Every face of a solid is wound counter-clockwise from outside, and together they
// close: the volume by the divergence theorem is that of the body.
func TestSolid(t *testing.T) {
	for _, c := range []struct {
		name, text string
		low, high  float64 // of the volume, in litres
	}{
		{"ball", small, 4.15, 4.19}, // 4/3 pi r3 is 4.189
		{"half ball", strings.Replace(small, "radius_mm = 100", "cut_height_mm = 0\nradius_mm = 100", 1), 2.08, 2.095},
		{"cube", strings.Replace(small, `"ball"`, `"cube"`, 1), 1.5395, 1.5397}, // (2r/root 3)^3
	} {
		d, err := design.Parse("a.toml", []byte(strings.Replace(c.text, "[mounts]", "[mounts]\non = \"even\"", 1)))
		if err != nil {
			t.Fatal(err)
		}
		made, err := newPlans("a.toml").make(context.Background(), "", strings.Replace(c.text, "[mounts]", "[mounts]\non = \"even\"", 1))
		if err != nil {
			t.Fatal(c.name, err, d.Name)
		}
		s, volume := solidsOf(made.array)[0], 0.0
		for _, f := range s.Faces {
			at := func(i int) r3.Vec { return vector(s.Vertices[f[i]]) }
			for i := 1; i+1 < len(f); i++ {
				volume += r3.Dot(at(0), r3.Cross(at(i), at(i+1))) / 6e6
			}
		}
		if volume < c.low || volume > c.high {
			t.Errorf("%s: %.4f l", c.name, volume)
		}
	}
}

func TestFaults(t *testing.T) {
	p, path := newPage(t, small)
	if err := os.WriteFile(filepath.Join(filepath.Dir(path), "other.csv"), []byte("a,b\n1,2\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ name, path, body, want string }{
		{"two at once", "/api/plan", `{"text":"[body]\nradius_mm = 1\nshape = 3\n"}`, `"line":2,"key":"body.radius_mm","value":"1","reason":"must be from 20 to 5000"},{"line":3,"key":"body.shape"`},
		{"syntax", "/api/plan", `{"text":"[body"}`, `"line":1,"key":"","value":"","reason":"not readable as TOML`},
		{"stranger", "/api/edit", `{"text":"","set":[{"key":"body.size","value":1}]}`, `"key":"body.size"`},
		{"edit of no TOML", "/api/edit", `{"text":"[body","set":[{"key":"name","value":"a"}]}`, `not readable as TOML`},
		{"too large a job", "/api/plan", `{"text":` + quoted(large()) + `}`, "too many to plan on a page"},
		{"a file that is not there", "/api/plan", `{"text":` + quoted(strings.Replace(small, "diameter_mm", "response = \"no.csv\"\ndiameter_mm", 1)) + `}`,
			`"key":"driver.response","value":"no.csv","reason":"no.csv: there is no such file"`},
		{"a file that is none", "/api/plan", `{"text":` + quoted(strings.Replace(small, "[mounts]\ncount = 6", "[mounts]\non = \"list\"\nlist = \"other.csv\"", 1)) + `}`,
			`"key":"mounts.list","value":"other.csv","reason":"other.csv, line`},
		{"wiring", "/api/plan", `{"text":` + quoted(small+"[wiring]\nchannels = 1\nminimum_load_ohm = 100\n") + `}`, `"key":"wiring.minimum_load_ohm"`},
	} {
		w := do(p, request(c.path, c.body))
		if w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), c.want) {
			t.Errorf("%s: %d %s", c.name, w.Code, w.Body)
		}
	}
}

func quoted(s string) string {
	b, _ := json.Marshal(s)
	return string(b)
}

// large is a design that would take minutes.
func large() string {
	text := strings.Replace(small, "count = 6", "count = 2000", 1)
	return strings.NewReplacer("diameter_mm = 30", "diameter_mm = 5").Replace(text) +
		"[room]\nsize_m = [6, 6, 6]\nbody_at_m = [3, 3, 3]\nabsorption = 0.1\norder = 10\n"
}

func TestEdit(t *testing.T) {
	p, _ := newPage(t, small)
	out := ask[edited](t, p, "/api/edit", object{"text": small, "set": []object{
		{"key": "body.radius_mm", "value": 160}, {"key": "surface", "value": true}, {"key": "mounts.skip", "value": []int{2}}, {"key": "name", "value": nil},
	}})
	want := strings.NewReplacer("radius_mm = 100   #", "radius_mm = 160   #", "count = 6", "count = 6\nskip = [2]", "name =", "# name =").Replace(small) + "\n[surface]\n"
	if out.Text != want {
		t.Errorf("got\n%s", out.Text)
	}
}

func TestSave(t *testing.T) {
	p, path := newPage(t, small)
	held := func() string {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	if w := do(p, request("/api/save", `{"text":"a = 1"}`)); w.Code != http.StatusBadRequest || held() != small {
		t.Errorf("over what nobody read: %d %s", w.Code, w.Body)
	}
	out := ask[saved](t, p, "/api/save", object{"text": small + "# one\n", "read": hashOf([]byte(small))})
	over := `{"text":"a = 1","read":"` + out.Read + `"}`
	if !out.Saved || out.Read != hashOf([]byte(small+"# one\n")) || held() != small+"# one\n" {
		t.Errorf("%+v", out)
	}
	info, err := os.Stat(path)
	if err != nil || runtime.GOOS != "windows" && info.Mode().Perm() != 0o640 {
		t.Errorf("mode %v, %v", info.Mode(), err)
	}
	// A second page that began earlier would overwrite the first.
	if w := do(p, request("/api/save", `{"text":"a = 1","read":"`+hashOf([]byte(small))+`"}`)); w.Code != http.StatusConflict {
		t.Errorf("stale: %d %s", w.Code, w.Body)
	}
	if err := os.WriteFile(path, []byte("# by hand\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if w := do(p, request("/api/save", over)); w.Code != http.StatusConflict || held() != "# by hand\n" {
		t.Errorf("changed by hand: %d %s", w.Code, w.Body)
	}
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	if w := do(p, request("/api/save", over)); w.Code != http.StatusConflict {
		t.Errorf("gone: %d %s", w.Code, w.Body)
	}
	files, err := os.ReadDir(filepath.Dir(path))
	if err != nil || len(files) != 0 {
		t.Errorf("left over: %v %v", files, err)
	}
	demo, err := New(Options{})
	if err != nil {
		t.Fatal(err)
	}
	if w := do(demo, request("/api/save", `{"text":"a = 1"}`)); w.Code != http.StatusForbidden {
		t.Errorf("demo: %d %s", w.Code, w.Body)
	}
}

// A link stays a link, and what it points to is replaced.
func TestSaveThroughLink(t *testing.T) {
	_, path := newPage(t, small)
	link := filepath.Join(t.TempDir(), "link.toml")
	if err := os.Symlink(path, link); err != nil {
		t.Skip(err)
	}
	p, err := New(options(link))
	if err != nil {
		t.Fatal(err)
	}
	ask[saved](t, p, "/api/save", object{"text": "# new\n", "read": hashOf([]byte(small))})
	if text, err := os.ReadFile(path); err != nil || string(text) != "# new\n" {
		t.Errorf("%q %v", text, err)
	}
	if info, err := os.Lstat(link); err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("%v %v", info, err)
	}
}

// Cases that are heard one after another at one spot are heard of one plan.
func TestSoundsShareAPlan(t *testing.T) {
	p, _ := newPage(t, small)
	made, err := p.plans.of(t.Context(), small, p.work)
	if err != nil {
		t.Fatal(err)
	}
	at := func(x float64) *timing.Spot {
		plan, err := p.moved.of(made, triple{x, 1, 1})
		if err != nil {
			t.Fatal(err)
		}
		return plan
	}
	first := at(1)
	if at(1) != first {
		t.Error("planned again")
	}
	for i := range mostMoved {
		if at(2+float64(i)) == first {
			t.Error("another spot's plan")
		}
	}
	if p.moved.kept.Len() != mostMoved {
		t.Errorf("%d are kept", p.moved.kept.Len())
	}
}

func TestFiles(t *testing.T) {
	p, _ := newPage(t, small)
	w := do(p, request("/api/files", `{"text":`+quoted(small)+`,"what":"plan"}`))
	if w.Code != 200 || w.Header().Get("Content-Disposition") != `attachment; filename="pappus-plan.zip"` {
		t.Fatalf("%d %v %s", w.Code, w.Header(), w.Body)
	}
	z, err := zip.NewReader(bytes.NewReader(w.Body.Bytes()), int64(w.Body.Len()))
	if err != nil || len(z.File) != 1 || z.File[0].Name != "plan.txt" {
		t.Fatalf("%v %v", z, err)
	}
	f, err := z.File[0].Open()
	if err != nil {
		t.Fatal(err)
	}
	if text, err := io.ReadAll(f); err != nil || string(text) != "Ball of six" {
		t.Errorf("%q %v", text, err)
	}
	if w := do(p, request("/api/files", `{"text":"","what":"all"}`)); w.Code != 400 {
		t.Errorf("%d %s", w.Code, w.Body)
	}
}

// Work that nobody waits for ends, and another that asks for the same begins anew.
func TestCancelled(t *testing.T) {
	p, _ := newPage(t, small)
	for range mostWork { // no turn is free
		done, err := p.work(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		defer done()
	}
	ctx, stop := context.WithCancel(context.Background())
	ended := make(chan *httptest.ResponseRecorder)
	for range 2 {
		go func() { ended <- do(p, request("/api/plan", `{"text":`+quoted(small)+`}`).WithContext(ctx)) }()
	}
	waits := func() int {
		p.plans.mu.Lock()
		defer p.plans.mu.Unlock()
		if f := p.plans.now[hashOf([]byte(small))]; f != nil {
			return f.waiting
		}
		return 0
	}
	for deadline := time.Now().Add(10 * time.Second); waits() < 2; time.Sleep(time.Millisecond) {
		if time.Now().After(deadline) {
			t.Fatal("nobody waits")
		}
	}
	p.plans.mu.Lock()
	f := p.plans.now[hashOf([]byte(small))]
	p.plans.mu.Unlock()
	stop()
	for range 2 {
		if w := <-ended; w.Code != http.StatusServiceUnavailable {
			t.Errorf("%d %s", w.Code, w.Body)
		}
	}
	<-f.done
	if f.err == nil || f.plan != nil || waits() != 0 {
		t.Errorf("it was planned: %v %v", f.plan, f.err)
	}
}

func TestPlansAreKept(t *testing.T) {
	p, _ := newPage(t, small)
	first, err := p.plans.of(context.Background(), small, p.work)
	if err != nil {
		t.Fatal(err)
	}
	for i := range mostPlans - 1 {
		ask[object](t, p, "/api/plan", asked{small + strings.Repeat("#", i+1)})
	}
	if again, _ := p.plans.of(context.Background(), small, p.work); again != first {
		t.Error("it was planned again")
	}
	for i := range mostPlans {
		ask[object](t, p, "/api/plan", asked{small + strings.Repeat("\n", i+1)})
	}
	if p.plans.kept.Contains(first.id) || p.plans.kept.Len() != mostPlans {
		t.Errorf("%d are kept", p.plans.kept.Len())
	}
}

// TestPlansAhead: who opens the page finds its design planned; who opens anything else does not have it planned.
func TestPlansAhead(t *testing.T) {
	for _, test := range []struct {
		path string
		want bool
	}{{"/page.css", false}, {"/", true}} {
		p, path := newPage(t, small)
		do(p, httptest.NewRequest(http.MethodGet, "http://127.0.0.1:7000"+test.path, nil))
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		known := func() bool { return p.plans.kept.Contains(hashOf(text)) }
		for i := 0; test.want && !known() && i < 1000; i++ {
			time.Sleep(10 * time.Millisecond)
		}
		if known() != test.want {
			t.Errorf("%s: planned %t, want %t", test.path, known(), test.want)
		}
	}
}
