package main

import (
	"archive/zip"
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"pappus/preview"
	"pappus/preview/programme"

	"github.com/gopxl/beep/v2/wav"
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
// page's address.
func serving(t *testing.T, design string) string {
	t.Helper()
	address, stop := servingUntil(t, design, "0")
	t.Cleanup(stop)
	return address
}

// servingUntil is serving on a port, until stop is called.
func servingUntil(t *testing.T, design, port string) (address string, stopped func()) {
	t.Helper()
	ctx, stop := context.WithCancel(context.Background())
	out, in := io.Pipe()
	root := newRoot()
	root.SetArgs([]string{"serve", design, "--port", port})
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
	line, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	if _, err := fmt.Sscanf(line, "The page is at %s Ctrl-C stops.", &address); err != nil || !strings.HasPrefix(address, "http://127.0.0.1:") {
		t.Fatalf("%q: %v", line, err)
	}
	return strings.TrimSuffix(address, "/;"), stopped
}

// fetch posts a request and returns the answer.
func fetch(t *testing.T, address string, request map[string]any) []byte {
	t.Helper()
	body, err := json.Marshal(request)
	if err != nil {
		t.Fatal(err)
	}
	r, err := http.Post(address, "application/json", bytes.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	data, err := io.ReadAll(r.Body)
	if err != nil || r.StatusCode != http.StatusOK {
		t.Fatalf("%s: %s %.200s %v", address, r.Status, data, err)
	}
	return data
}

func TestServe(t *testing.T) {
	t.Parallel()
	address := served(t)
	r, err := http.Get(address + "/")
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	if page, err := io.ReadAll(r.Body); err != nil || !bytes.Contains(bytes.ToLower(page), []byte("<!doctype html>")) {
		t.Errorf("%v %.100s", err, page)
	}
	for what, want := range map[string][]string{
		"tables": {"plan.json", "delays.csv", "octaves.csv"}, "pictures": {"response.png", "coverage_above_1k.svg"}, "sounds": {"clicks_as_built.wav"},
		"processor": {"processor.csv", "processor.json"}, "level": {"level.png", "sections.csv"}, "sheets": {"sheets.pdf", "fit.csv"},
	} {
		t.Run(what, func(t *testing.T) {
			data := fetch(t, address+"/api/files", map[string]any{"text": little, "what": what})
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

// What is heard on the page is one period that joins on to itself, in each case as
// long.
func TestServeSounds(t *testing.T) {
	address := served(t)
	for _, c := range []struct {
		programme, kind string
		ears            bool
		channels        int
	}{
		{"clicks", "as_built", false, 1}, {"clicks", "aligned", false, 1}, {"clicks", "point", true, 2},
	} {
		data := fetch(t, address+"/api/sound", map[string]any{
			"text": little, "programme": c.programme, "case": c.kind, "two_ears": c.ears, "spot_m": []float64{1, 1, 1},
		})
		s, format, err := wav.Decode(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		n := len(programme.Clicks(preview.Rate))
		if s.Len() != n || int(format.SampleRate) != preview.Rate || format.NumChannels != c.channels {
			t.Errorf("%+v: %d samples, want %d; %+v", c, s.Len(), n, format)
		}
		samples := make([][2]float64, n)
		if got, _ := s.Stream(samples); got != n {
			t.Fatalf("%+v: %d samples", c, got)
		}
		step := 0.0
		for i := range n - 1 {
			step = max(step, math.Abs(samples[i+1][0]-samples[i][0]))
		}
		if seam := math.Abs(samples[0][0] - samples[n-1][0]); !(step > 0.01) || seam > step {
			t.Errorf("%+v: a step of %g at the seam, %g elsewhere", c, seam, step)
		}
	}
}

// A walk lasts as long as the way at an easy pace, and a second more; one through the
// body is none.
func TestServeWalk(t *testing.T) {
	address := served(t)
	request := map[string]any{"text": little, "programme": "clicks", "case": "aligned", "two_ears": true, "from_m": []float64{0.6, 0, 1}, "way": "round"}
	s, format, err := wav.Decode(bytes.NewReader(fetch(t, address+"/api/walk", request)))
	if err != nil {
		t.Fatal(err)
	}
	// The echoes of the last sample come after it.
	if n := s.Len(); n < 2*preview.Rate || n > 2*preview.Rate+preview.Rate/4 || format.NumChannels != 2 {
		t.Errorf("%d samples, %+v", n, format)
	}
	for _, c := range []struct {
		from []float64
		want string
	}{{[]float64{1, -0.6, 0}, "inside the body"}, {[]float64{1, 5, 1}, "at most 8 m"}} {
		request["from_m"] = c.from
		body, err := json.Marshal(request)
		if err != nil {
			t.Fatal(err)
		}
		r, err := http.Post(address+"/api/walk", "application/json", bytes.NewReader(body))
		if err != nil {
			t.Fatal(err)
		}
		words, err := io.ReadAll(r.Body)
		r.Body.Close()
		if err != nil || r.StatusCode != http.StatusBadRequest || !strings.Contains(string(words), c.want) {
			t.Errorf("to %v: %s %s %v", c.from, r.Status, words, err)
		}
	}
}

// TestServeSoundAtSeats: each seat hears the plan for all of them from its own place, in every
// case; the middle one at the plan's spot, and a walk leads from one to the next.
func TestServeSoundAtSeats(t *testing.T) {
	address := served(t)
	two := strings.Replace(little, "[spot]\nx_m = 2\ny_m = 0\nz_m = 1\n", "[[seat]]\nx_m = 2\ny_m = 0\nz_m = 1\n[[seat]]\nx_m = 1\ny_m = 2\nz_m = 1\n", 1)
	heard := map[string][]byte{}
	for name, at := range map[string][]float64{"spot": nil, "first": {2, 0, 1}, "second": {1, 2, 1}} {
		for _, kind := range []string{"aligned", "middle_seat"} {
			request := map[string]any{"text": two, "programme": "clicks", "case": kind}
			if at != nil {
				request["spot_m"] = at
			}
			heard[name+" "+kind] = fetch(t, address+"/api/sound", request)
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
	fetch(t, address+"/api/walk", map[string]any{"text": two, "programme": "clicks", "case": "middle_seat", "from_m": []float64{2, 0, 1}, "to_m": []float64{1, 2, 1}})
}
