package main

import (
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"math"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"pappus/layout/design"

	"github.com/coder/websocket"
	"gonum.org/v1/gonum/stat"
)

var endure = flag.Duration("endure", 0, "how long TestEndures moves, saves and hears; 0: not at all")

// mostGrowth is by how much a figure may grow in an hour: over a working day of eight no more than a
// hundred megabytes, or a hundred files.
const mostGrowth = 12.5

// TestEndures has a page of the built-in design moved, planned, saved, heard, opened anew and left in
// the middle of a request for as long as -endure says, and holds that memory and files stay flat: the
// interval of 95 % of their slope by the minutes has zero in it, or is below mostGrowth an hour.
// The first quarter is left out: that is when caches fill.
func TestEndures(t *testing.T) {
	if *endure == 0 {
		t.Skip("by -endure 60m")
	}
	if _, err := os.Stat("/proc/self/status"); err != nil {
		t.Skip("there is no /proc here")
	}
	path := filepath.Join(t.TempDir(), "lantern.toml")
	if err := os.WriteFile(path, design.DefaultTOML(), 0o600); err != nil {
		t.Fatal(err)
	}
	u := &user{t: t, address: serving(t, path), path: path}
	u.client, u.base = letIn(t, u.address)
	ctx, stop := context.WithTimeout(t.Context(), *endure)
	defer stop()
	var all sync.WaitGroup
	for _, does := range []func(context.Context){u.moves, u.watches, u.saves, u.hears, u.leaves} {
		all.Go(func() { does(ctx) })
	}
	taken := u.takes(ctx)
	all.Wait()
	t.Logf("%d moves, %d saves, %d sounds, %d half requests", u.moved.Load(), u.saved.Load(), u.heard.Load(), u.left.Load())
	hold(t, taken[len(taken)/4:])
}

// user does with a page what a person does, without a browser.
type user struct {
	t                         *testing.T
	address, base, path       string
	client                    *http.Client
	quiet                     sync.RWMutex // held while figures are taken, and by each doing till then
	moved, saved, heard, left atomic.Int64
}

// post asks, and returns the answer where there is one.
func (u *user) post(ctx context.Context, verb string, in any) (body []byte, ok bool) {
	data, err := json.Marshal(in)
	if err != nil {
		u.t.Error(err)
		return nil, false
	}
	r, err := http.NewRequestWithContext(ctx, http.MethodPost, u.base+"/api/"+verb, bytes.NewReader(data))
	if err != nil {
		u.t.Error(err)
		return nil, false
	}
	r.Header.Set("Content-Type", "application/json")
	u.quiet.RLock()
	defer u.quiet.RUnlock()
	answer, err := u.client.Do(r)
	if err != nil {
		return nil, u.ends(ctx, verb, err)
	}
	defer answer.Body.Close()
	body, err = io.ReadAll(answer.Body)
	if err != nil {
		return nil, u.ends(ctx, verb, err)
	}
	if answer.StatusCode != http.StatusOK && answer.StatusCode != http.StatusConflict {
		u.t.Errorf("%s: %s %.200s", verb, answer.Status, body)
	}
	return body, answer.StatusCode == http.StatusOK
}

// ends tells of an error, unless it is the end.
func (u *user) ends(ctx context.Context, what string, err error) bool {
	if ctx.Err() == nil {
		u.t.Errorf("%s: %v", what, err)
	}
	return false
}

// text is the design in one of 60 states, so that what is kept of designs has to be given up.
func (u *user) text(n int64) string {
	return strings.Replace(string(design.DefaultTOML()), "radius_mm = 150", fmt.Sprintf("radius_mm = %d", 150+n%60), 1)
}

// plan returns the name of a design's plan; empty at the end.
func (u *user) plan(ctx context.Context, n int64) string {
	body, _ := u.post(ctx, "plan", map[string]any{"text": u.text(n)})
	var out struct{ ID string }
	_ = json.Unmarshal(body, &out) // empty at the end
	return out.ID
}

// moves drags the chair to and fro, over one design after another, on sockets that are opened anew.
func (u *user) moves(ctx context.Context) {
	for n := int64(0); ctx.Err() == nil; n++ {
		id := u.plan(ctx, n)
		conn, _, err := websocket.Dial(ctx, strings.Replace(u.base, "http", "ws", 1)+"/api/live", &websocket.DialOptions{HTTPClient: u.client})
		if err != nil {
			u.ends(ctx, "live", err)
			return
		}
		conn.SetReadLimit(4 << 20)
		said := make(chan figures, 1)
		go u.listens(ctx, conn, said)
		for i := range 100 {
			cells := 24
			if i%20 == 19 {
				cells = 96
			}
			if !u.move(ctx, conn, said, id, n*100+int64(i), cells) {
				break
			}
		}
		conn.CloseNow()
		for range said { // what came meanwhile
		}
	}
}

// figures are what a move is answered with first, apart from what is drawn.
type figures struct {
	Seq          int64
	Error, Fault string
	Spot         json.RawMessage `json:"spot_m"`
}

// listens takes in what is said, and answers pings, till the socket is closed.
func (u *user) listens(ctx context.Context, conn *websocket.Conn, said chan<- figures) {
	defer close(said)
	for {
		_, body, err := conn.Read(ctx)
		if err != nil {
			return
		}
		var f figures
		if err := json.Unmarshal(body, &f); err != nil || f.Error != "" {
			u.t.Errorf("move: %v %.200s", err, body)
			return
		}
		if f.Spot != nil || f.Fault != "" {
			said <- f
		}
	}
}

// move moves the chair once, and waits for its figures.
func (u *user) move(ctx context.Context, conn *websocket.Conn, said <-chan figures, id string, seq int64, cells int) bool {
	u.quiet.RLock()
	defer u.quiet.RUnlock()
	turn := float64(seq) / 7
	body := fmt.Sprintf(`{"seq":%d,"id":%q,"spot_m":[%.4f,%.4f,0.63],"view":%q,"quantity":%q,"band_hz":1000,"cells":%d}`, seq, id,
		1.6+0.4*math.Cos(turn), 0.8*math.Sin(turn), []string{"above", "side"}[seq%2], []string{"level", "summing_loss", "comb_onset"}[seq%3], cells)
	if err := conn.Write(ctx, websocket.MessageText, []byte(body)); err != nil {
		return u.ends(ctx, "move", err)
	}
	for f := range said {
		if f.Seq == seq {
			u.moved.Add(1)
			return true
		}
	}
	return u.ends(ctx, "move", io.ErrUnexpectedEOF)
}

// watches hears of the file.
func (u *user) watches(ctx context.Context) {
	for ctx.Err() == nil {
		conn, _, err := websocket.Dial(ctx, strings.Replace(u.base, "http", "ws", 1)+"/api/watch", &websocket.DialOptions{HTTPClient: u.client})
		if err != nil {
			u.ends(ctx, "watch", err)
			return
		}
		conn.SetReadLimit(4 << 20)
		for range 20 {
			if _, _, err := conn.Read(ctx); err != nil {
				break
			}
		}
		conn.CloseNow()
	}
}

// saves saves, and now and then an editor saves in between, which is a conflict, and taken.
func (u *user) saves(ctx context.Context) {
	read := u.held(ctx)
	for n := int64(0); ctx.Err() == nil; n++ {
		if n%5 == 4 {
			if err := os.WriteFile(u.path, []byte(u.text(n)+"# by hand\n"), 0o600); err != nil {
				u.t.Error(err)
			}
		}
		body, ok := u.post(ctx, "save", map[string]any{"text": u.text(n), "read": read})
		var out struct{ Read string }
		if ok && json.Unmarshal(body, &out) == nil {
			read = out.Read
			u.saved.Add(1)
		} else {
			read = u.held(ctx)
		}
		pause(ctx, time.Second)
	}
}

// held is what the page says that the file is.
func (u *user) held(ctx context.Context) string {
	r, err := http.NewRequestWithContext(ctx, http.MethodGet, u.base+"/api/start", nil)
	if err != nil {
		return ""
	}
	answer, err := u.client.Do(r)
	if err != nil {
		u.ends(ctx, "start", err)
		return ""
	}
	defer answer.Body.Close()
	var out struct{ Read string }
	if err := json.NewDecoder(answer.Body).Decode(&out); err != nil {
		u.ends(ctx, "start", err)
	}
	return out.Read
}

// hears has sounds made, and takes files away.
func (u *user) hears(ctx context.Context) {
	for n := int64(0); ctx.Err() == nil; n++ {
		text := u.text(n)
		u.post(ctx, "ears", map[string]any{"text": text, "cases": []string{"as_built", "aligned"}, "spot_m": []float64{1.5, 0.2, 0.6}})
		u.post(ctx, "loudness", map[string]any{"text": text, "programme": "clicks"})
		if n%30 == 29 {
			u.post(ctx, "files", map[string]any{"text": text, "what": "tables"})
		}
		u.heard.Add(1)
		pause(ctx, 3*time.Second)
	}
}

// leaves goes away in the middle of requests, with the secret and without.
func (u *user) leaves(ctx context.Context) {
	for ctx.Err() == nil {
		for _, begun := range []string{"GET / HTTP/1.1\r\nHost: ", "POST /api/plan HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Length: 100\r\n\r\n{", ""} {
			if conn, err := net.Dial("tcp", strings.TrimPrefix(u.base, "http://")); err == nil {
				_, _ = io.WriteString(conn, begun)
				time.AfterFunc(10*time.Second, func() { conn.Close() })
				u.left.Add(1)
			}
		}
		pause(ctx, 2*time.Second)
	}
}

func pause(ctx context.Context, how time.Duration) {
	select {
	case <-ctx.Done():
	case <-time.After(how):
	}
}

// reading is how much the program holds at a time.
type reading struct{ minute, resident, heap, files float64 }

// takes reads, each minute or sixty times in all where that is more often.
func (u *user) takes(ctx context.Context) (out []reading) {
	began := time.Now()
	for tick := time.NewTicker(min(time.Minute, *endure/60)); ; {
		select {
		case <-ctx.Done():
			return out
		case <-tick.C:
		}
		u.quiet.Lock()
		time.Sleep(100 * time.Millisecond) // what is drawn beside the figures is done, or given up
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		u.quiet.Unlock()
		files, err := os.ReadDir("/proc/self/fd")
		if err != nil {
			u.t.Fatal(err)
		}
		r := reading{time.Since(began).Minutes(), resident(u.t), float64(m.HeapAlloc) / 1e6, float64(len(files))}
		out = append(out, r)
		u.t.Logf("%5.1f min: %6.1f MB resident, %5.1f MB on the heap, %3.0f files, %3d goroutines, %d moves, %d saves, %d sounds",
			r.minute, r.resident, r.heap, r.files, runtime.NumGoroutine(), u.moved.Load(), u.saved.Load(), u.heard.Load())
	}
}

// resident is what the system holds in memory for this program, in MB (proc(5), VmRSS).
func resident(t *testing.T) float64 {
	text, err := os.ReadFile("/proc/self/status")
	if err != nil {
		t.Fatal(err)
	}
	_, rest, _ := strings.Cut(string(text), "VmRSS:")
	kb, err := strconv.ParseFloat(strings.Fields(rest)[0], 64)
	if err != nil {
		t.Fatal(err)
	}
	return kb * 1024 / 1e6
}

// hold fits a line to each figure and holds its slope (Student's t of many readings is 2).
func hold(t *testing.T, taken []reading) {
	for _, f := range []struct {
		name string
		of   func(reading) float64
	}{
		{"MB resident", func(r reading) float64 { return r.resident }},
		{"MB on the heap", func(r reading) float64 { return r.heap }},
		{"files", func(r reading) float64 { return r.files }},
	} {
		var x, y []float64
		for _, r := range taken {
			x, y = append(x, r.minute/60), append(y, f.of(r))
		}
		from, slope := stat.LinearRegression(x, y, nil, false)
		rest := 0.0
		for i := range x {
			rest += math.Pow(y[i]-from-slope*x[i], 2)
		}
		n := float64(len(x))
		off := 2 * math.Sqrt(rest/(n-2)/(stat.Variance(x, nil)*(n-1)))
		t.Logf("%s: %.1f and %+.2f an hour, from %.2f to %.2f by 95 %%", f.name, stat.Mean(y, nil), slope, slope-off, slope+off)
		if *endure >= 30*time.Minute && slope-off > 0 && slope+off > mostGrowth { // in less there is no telling
			t.Errorf("%s grow by more than %g an hour", f.name, mostGrowth)
		}
	}
}
