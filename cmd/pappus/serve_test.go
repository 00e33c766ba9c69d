package main

import (
	"archive/zip"
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"net/http/cookiejar"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
)

// little is a design that is planned and surveyed in no time.
const little = `name = "Ball of six"
[body]
shape = "ball"
radius_mm = 100
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

// served runs the command on a design until the test ends, and returns the page's
// address.
func served(t *testing.T) string {
	t.Helper()
	design := filepath.Join(t.TempDir(), "little.toml")
	if err := os.WriteFile(design, []byte(little), 0o600); err != nil {
		t.Fatal(err)
	}
	return serving(t, design)
}

// serving runs the command on a design's file until the test ends, and returns the
// page's address as it is printed, with the secret.
func serving(t testing.TB, design string) string {
	t.Helper()
	address, stop := servingUntil(t, design, "0")
	t.Cleanup(stop)
	return address
}

// servingUntil is serving on a port, until stop is called.
func servingUntil(t testing.TB, design, port string) (address string, stopped func()) {
	t.Helper()
	said, stopped := saying(t, design, "--port", port)
	return addressIn(t, said), stopped
}

// addressIn is the page's address in what the command says first.
func addressIn(t testing.TB, said *bufio.Reader) (address string) {
	t.Helper()
	line, err := said.ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	if _, err := fmt.Sscanf(line, "The page is at %s", &address); err != nil || !strings.HasPrefix(address, "http://127.0.0.1:") {
		t.Fatalf("%q: %v", line, err)
	}
	if line, err = said.ReadString('\n'); err != nil || !strings.Contains(line, "Ctrl-C stops.") {
		t.Fatalf("%q: %v", line, err)
	}
	return address
}

// stranger keeps cookies, and has none.
func stranger(t testing.TB) *http.Client {
	t.Helper()
	jar, err := cookiejar.New(nil)
	if err != nil {
		t.Fatal(err)
	}
	return &http.Client{Jar: jar}
}

// letIn opens the page by its address, and returns who has the cookie then, and the address
// without the secret.
func letIn(t testing.TB, address string) (client *http.Client, base string) {
	t.Helper()
	client = stranger(t)
	r, err := client.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	if page, err := io.ReadAll(r.Body); err != nil || r.StatusCode != http.StatusOK || !bytes.Contains(bytes.ToLower(page), []byte("<!doctype html>")) {
		t.Fatalf("%s %v %.100s", r.Status, err, page)
	}
	return client, address[:strings.LastIndex(address, "/")]
}

// saying runs the command with flags until it is stopped, and returns what it says.
func saying(t testing.TB, design string, flags ...string) (said *bufio.Reader, stopped func()) {
	t.Helper()
	ctx, stop := context.WithCancel(context.Background())
	out, in := io.Pipe()
	root := newRoot()
	args := append([]string{"serve"}, flags...)
	if design != "" { // else the built-in one
		args = append(args, design)
	}
	root.SetArgs(args)
	root.SetOut(in)
	ended := make(chan error, 1)
	go func() {
		ended <- root.ExecuteContext(ctx)
		in.Close()
	}()
	stopped = sync.OnceFunc(func() {
		stop()
		if err := <-ended; err != nil {
			t.Errorf("it ended with %v", err)
		}
	})
	return bufio.NewReader(out), stopped
}

// fetch comes in by an address, posts a request and returns the answer.
func fetch(t *testing.T, address, path string, request map[string]any) []byte {
	t.Helper()
	client, base := letIn(t, address)
	body, err := json.Marshal(request)
	if err != nil {
		t.Fatal(err)
	}
	r, err := client.Post(base+path, "application/json", bytes.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	data, err := io.ReadAll(r.Body)
	if err != nil || r.StatusCode != http.StatusOK {
		t.Fatalf("%s: %s %.200s %v", path, r.Status, data, err)
	}
	return data
}

func TestServe(t *testing.T) {
	t.Parallel()
	address := served(t)
	for what, want := range map[string][]string{
		"tables": {"plan.json", "delays.csv", "octaves.csv"}, "pictures": {"response.png", "coverage_above_1k.svg"}, "sounds": {"clicks_as_built.wav"},
		"processor": {"processor.csv", "processor.json"}, "level": {"level.png", "sections.csv"}, "sheets": {"sheets.pdf", "fit.csv"},
	} {
		t.Run(what, func(t *testing.T) {
			data := fetch(t, address, "/api/files", map[string]any{"text": little, "what": what})
			z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
			if err != nil {
				t.Fatal(err)
			}
			size := map[string]uint64{}
			for _, f := range z.File {
				size[f.Name] = f.UncompressedSize64
			}
			for _, name := range want {
				if size[name] == 0 {
					t.Errorf("%s is not there: %v", name, size)
				}
			}
		})
	}
}

// TestPlanAtOnce: what a plan writes is drawn and sounded at the same time, in this process,
// so that the race detector sees it.
func TestPlanAtOnce(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "little.toml"), []byte(little), 0o600); err != nil {
		t.Fatal(err)
	}
	root := newRoot()
	root.SetArgs([]string{"plan", filepath.Join(dir, "little.toml"), "-q", "-o", filepath.Join(dir, "out")})
	if err := root.ExecuteContext(t.Context()); err != nil {
		t.Fatal(err)
	}
	for _, ending := range []string{".csv", ".png", ".svg", ".wav"} {
		if files, err := filepath.Glob(filepath.Join(dir, "out", "*"+ending)); err != nil || len(files) < 10 {
			t.Errorf("%d files end in %s: %v", len(files), ending, err)
		}
	}
}

// A walk through the body is none.
func TestServeWalk(t *testing.T) {
	address := served(t)
	request := map[string]any{"text": little, "from_m": []float64{0.6, 0, 1}, "way": "round"}
	if got := string(fetch(t, address, "/api/walk", request)); got != `{"to_m":[-0.6,0,1],"pace_m_s":1.2}`+"\n" && got != `{"to_m":[-0.6,-0,1],"pace_m_s":1.2}`+"\n" {
		t.Errorf("it leads to %s", got)
	}
	request["from_m"] = []float64{1, -0.6, 0}
	body, err := json.Marshal(request)
	if err != nil {
		t.Fatal(err)
	}
	client, base := letIn(t, address)
	r, err := client.Post(base+"/api/walk", "application/json", bytes.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	if words, err := io.ReadAll(r.Body); err != nil || r.StatusCode != http.StatusBadRequest || !strings.Contains(string(words), "inside the body") {
		t.Errorf("%s %s %v", r.Status, words, err)
	}
}

// TestServeSoundAtSeats: each seat hears the plan for all of them from its own place, in every
// case; the middle one at the plan's spot.
func TestServeSoundAtSeats(t *testing.T) {
	address := served(t)
	two := strings.Replace(little, "[spot]\nx_m = 2\ny_m = 0\nz_m = 1\n", "[[seat]]\nx_m = 2\ny_m = 0\nz_m = 1\n[[seat]]\nx_m = 1\ny_m = 2\nz_m = 1\n", 1)
	heard := map[string][]byte{}
	for name, at := range map[string][]float64{"spot": nil, "first": {2, 0, 1}, "second": {1, 2, 1}} {
		for _, kind := range []string{"aligned", "middle_seat"} {
			request := map[string]any{"text": two, "cases": []string{kind}}
			if at != nil {
				request["spot_m"] = at
			}
			heard[name+" "+kind] = fetch(t, address, "/api/ears", request)
		}
	}
	if !bytes.Equal(heard["spot aligned"], heard["first aligned"]) {
		t.Error("the middle seat does not hear what the spot hears")
	}
	for _, c := range [][2]string{{"first aligned", "second aligned"}, {"second aligned", "second middle_seat"}} {
		if bytes.Equal(heard[c[0]], heard[c[1]]) {
			t.Errorf("%s is %s", c[0], c[1])
		}
	}
}
