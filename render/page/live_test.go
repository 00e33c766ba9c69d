package page

import (
	"context"
	"encoding/binary"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"net"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"pappus/layout/design"

	"pappus/render/document"
	"pappus/timing"

	"github.com/coder/websocket"
	"gonum.org/v1/gonum/spatial/r3"
)

// liveAnswer is a message of a live page, as the browser reads it.
type liveAnswer struct {
	Seq      int64
	Unknown  bool
	Fault    string
	Error    string
	Spot     []float64 `json:"spot_m"`
	Columns  columns
	Channels []struct {
		ID      int
		Drivers []int
		Delay   float64 `json:"delay_us"`
	}
	Levels   map[string][]*float64
	Measures map[string]map[string]*float64
	Polar    *struct {
		Angle []float64    `json:"angle_deg"`
		Band  []float64    `json:"band_hz"`
		Level [][]*float64 `json:"level_db"`
	}
	Strip     *strip
	AsPlanned *struct {
		Aligned  []*float64 `json:"aligned_db"`
		Measures map[string]map[string]*float64
	} `json:"as_planned"`

	bytes int
	Map   *heat `json:"-"` // of all strips
}

// heat is a whole map.
type heat struct {
	strip
	values []float64 // NaN: no sound can be there
	has    []bool
}

// put puts a strip into a map; one of another size begins anew.
func (h *heat) put(s strip) *heat {
	if h == nil || h.Columns != s.Columns || h.Rows != s.Rows || h.Fine != s.Fine {
		h = &heat{values: make([]float64, s.Columns*s.Rows), has: make([]bool, s.Columns*s.Rows)}
	}
	h.strip = s
	of, i := timing.Slice{Columns: s.Columns, Rows: s.Rows}, 0
	for cell := range h.values {
		if !(timing.Strip{From: s.From, To: s.To}).Has(of, cell) {
			continue
		}
		n := binary.LittleEndian.Uint16(s.Cells[2*i:])
		if h.has[cell], h.values[cell] = true, float64(s.Least+int(n))/s.Per; n == silent {
			h.values[cell] = math.NaN()
		}
		i++
	}
	return h
}

func (a liveAnswer) String() string {
	return fmt.Sprintf("seq %d, unknown %v, fault %q, error %q, spot %v, %d drivers, map %v", a.Seq, a.Unknown, a.Fault, a.Error, a.Spot, len(a.Columns.Level), a.Map != nil)
}

// dial opens a live page.
func dial(t testing.TB, server *httptest.Server) *websocket.Conn {
	t.Helper()
	return dialTo(t, server, "live")
}

// dialTo opens a socket of a page that was let in.
func dialTo(t testing.TB, server *httptest.Server, what string) *websocket.Conn {
	t.Helper()
	to := &websocket.DialOptions{HTTPHeader: server.Config.Handler.(*Page).lock.letIn(server.Listener.Addr().String())}
	conn, _, err := websocket.Dial(t.Context(), strings.Replace(server.URL, "http", "ws", 1)+"/api/"+what, to)
	if err != nil {
		t.Fatal(err)
	}
	conn.SetReadLimit(1 << 20)
	t.Cleanup(func() { conn.CloseNow() })
	return conn
}

func say(t testing.TB, conn *websocket.Conn, v any) {
	t.Helper()
	body, ok := v.(string)
	if !ok {
		b, err := json.Marshal(v)
		if err != nil {
			t.Fatal(err)
		}
		body = string(b)
	}
	if err := conn.Write(t.Context(), websocket.MessageText, []byte(body)); err != nil {
		t.Fatal(err)
	}
}

func hear(t testing.TB, conn *websocket.Conn) (out liveAnswer) {
	t.Helper()
	ctx, stop := context.WithTimeout(t.Context(), 20*time.Second)
	defer stop()
	_, body, err := conn.Read(ctx)
	if err != nil {
		t.Fatal(err)
	}
	var last drawn
	if json.Unmarshal(body, &last) == nil && last.Lean != nil {
		return hear(t, conn) // the last of what follows a move, which may come when the next is asked
	}
	if err := json.Unmarshal(body, &out); err != nil {
		t.Fatalf("%v: %.200s", err, body)
	}
	out.bytes = len(body)
	return out
}

// answered sends a move and takes all of its answer in.
func answered(t testing.TB, conn *websocket.Conn, m move) liveAnswer {
	t.Helper()
	say(t, conn, m)
	return rest(t, conn, m, hear(t, conn))
}

// rest takes in what follows the figures of a move.
func rest(t testing.TB, conn *websocket.Conn, m move, out liveAnswer) liveAnswer {
	t.Helper()
	if out.Spot == nil {
		return out
	}
	hasMap := m.Quantity != "" && m.Cells > 0
	for wants := m.rests() || hasMap; wants; {
		a := hear(t, conn)
		if a.Seq != m.Seq {
			t.Fatalf("an answer to move %d in that to %d", a.Seq, m.Seq)
		}
		if a.Polar != nil {
			out.Polar = a.Polar
			wants = hasMap
		}
		if a.Strip != nil {
			out.Map = out.Map.put(*a.Strip)
			wants = !a.Strip.Last || m.rests() && !a.Strip.Fine
		}
	}
	return out
}

func serve(t testing.TB, p *Page) *httptest.Server {
	s := httptest.NewServer(p)
	t.Cleanup(s.Close)
	return s
}

func TestLive(t *testing.T) {
	p, _ := newPage(t, small)
	id := ask[planAnswer](t, p, "/api/plan", asked{small}).ID
	conn := dial(t, serve(t, p))
	at := triple{1, 1, 1}
	for i, c := range []struct {
		name string
		move any
		want func(a liveAnswer) bool
	}{
		{"no map", move{ID: id, Spot: at}, func(a liveAnswer) bool {
			return len(a.Columns.Level) == 6 && a.Columns.Path == nil && len(a.Channels) == 6 && len(a.Levels["aligned_db"]) == 256 && a.Map == nil && a.Polar == nil &&
				*a.Measures["aligned"]["smear_us"] < *a.Measures["unaligned"]["smear_us"] && a.Spot[1] == 1
		}},
		{"level from above", move{ID: id, Spot: at, View: "above", Quantity: "level", Band: 1000, Cells: 8}, func(a liveAnswer) bool {
			m := a.Map
			return m.Columns == 8 && m.Rows == 8 && len(m.values) == 64 && m.Unit == "dB" && m.Low[0] == -m.High[0] && m.High[1] > 3
		}},
		{"smear from the side", move{ID: id, Spot: at, View: "side", Quantity: "smear", Cells: 8}, func(a liveAnswer) bool {
			m := a.Map
			return m.Columns == 8 && m.Rows == 4 && len(m.values) == 32 && m.Unit == "us" && math.Abs(float64(m.Low[1])+0.1) < 1e-9
		}},
		{"at rest", move{ID: id, Spot: at, View: "above", Quantity: "comb_onset", Cells: 33}, func(a liveAnswer) bool {
			return len(a.Map.values) == 33*33 && len(a.Columns.Path) == 6 && a.Map.Unit == "Hz" && a.Map.Most > 11000 && len(a.Polar.Level) == 7 && len(a.Polar.Level[0]) == len(a.Polar.Angle)
		}},
		{"in the body", move{ID: id, Spot: triple{0, 0, 0.05}}, func(a liveAnswer) bool { return a.Fault == "the spot is inside the body" && a.Columns.Level == nil }},
		{"no such plan", move{ID: "x", Spot: at}, func(a liveAnswer) bool { return a.Unknown }},
		{"no such view", move{ID: id, Spot: at, View: "below"}, func(a liveAnswer) bool { return strings.Contains(a.Error, "view") }},
		{"no such quantity", move{ID: id, Spot: at, Quantity: "taste"}, func(a liveAnswer) bool { return strings.Contains(a.Error, "quantity") }},
		{"too many cells", move{ID: id, Spot: at, Cells: 97}, func(a liveAnswer) bool { return strings.Contains(a.Error, "cells") }},
		{"one cell", move{ID: id, Spot: at, Cells: 1}, func(a liveAnswer) bool { return strings.Contains(a.Error, "cells") }},
		{"too far", move{ID: id, Spot: triple{101}}, func(a liveAnswer) bool { return strings.Contains(a.Error, "spot_m") }},
		{"no band", move{ID: id, Spot: at, Band: 1}, func(a liveAnswer) bool { return strings.Contains(a.Error, "band_hz") }},
	} {
		m := c.move.(move)
		m.Seq = int64(i + 1)
		if a := answered(t, conn, m); a.Seq != m.Seq || !c.want(a) {
			t.Errorf("%s: %v", c.name, a)
		}
	}
	say(t, conn, `{"seq": 1, "what": 2}`)
	if a := hear(t, conn); !strings.Contains(a.Error, "what") {
		t.Errorf("a field too many: %v", a)
	}
	say(t, conn, "[")
	if a := hear(t, conn); a.Error == "" {
		t.Errorf("no JSON: %v", a)
	}
}

// Two pages on one design each get their own answers.
func TestTwoAtOnce(t *testing.T) {
	p, _ := newPage(t, small)
	id := ask[planAnswer](t, p, "/api/plan", asked{small}).ID
	s := serve(t, p)
	var wait sync.WaitGroup
	for c := range 2 {
		conn := dial(t, s)
		wait.Go(func() {
			for i := range 20 {
				at := triple{1 + float64(c), 0.125 * float64(i), 1}
				if a := answered(t, conn, move{Seq: int64(i), ID: id, Spot: at, View: "above", Quantity: "level", Cells: 8}); a.Seq != int64(i) || a.Spot[0] != at[0] || a.Spot[1] != at[1] {
					t.Errorf("page %d, move %d: %v", c, i, a)
				}
			}
		})
	}
	wait.Wait()
}

// Of what comes while one is worked on only the newest is taken, and work on the one before
// ends.
func TestStaleMovesAreDropped(t *testing.T) {
	in := newNewest[int]()
	for i := range 5 {
		in.put(i)
	}
	v, work, err := in.take(t.Context())
	if err != nil || v != 4 || work.Err() != nil {
		t.Fatal(v, work.Err(), err)
	}
	in.put(5)
	if work.Err() == nil {
		t.Error("a former one is still worked on")
	}
	v, work, err = in.take(t.Context())
	if err != nil || v != 5 || work.Err() != nil {
		t.Fatal(v, work.Err(), err)
	}
	if in.cut(); work.Err() == nil {
		t.Error("work that is cut goes on")
	}
	ctx, end := context.WithCancel(t.Context())
	end()
	if _, _, err := in.take(ctx); err == nil {
		t.Error("it waits for ever")
	}
}

// The newest is worked on to the end, however soon it is taken.
func TestNoMoveEndsItself(t *testing.T) {
	in := newNewest[int]()
	for i := range 2000 {
		done := make(chan struct{})
		go func() {
			defer close(done)
			in.put(i)
		}()
		v, work, err := in.take(t.Context())
		if err != nil || v != i {
			t.Fatal(v, err)
		}
		if <-done; work.Err() != nil {
			t.Fatalf("move %d ended itself", i)
		}
	}
}

// A client that sends faster than it is answered gets the last of its moves.
func TestFlood(t *testing.T) {
	p, _ := newPage(t, small)
	id := ask[planAnswer](t, p, "/api/plan", asked{small}).ID
	conn := dial(t, serve(t, p))
	const many = 300
	for i := range many {
		say(t, conn, move{Seq: int64(i), ID: id, Spot: triple{1, 1, 1 + 0.001*float64(i)}, View: "above", Quantity: "level", Cells: 32})
	}
	answers, last := 0, int64(-1)
	for last != many-1 {
		a := hear(t, conn)
		if a.Strip != nil {
			continue
		}
		if a.Seq <= last {
			t.Fatalf("%d after %d", a.Seq, last)
		}
		answers, last = answers+1, a.Seq
	}
	t.Logf("%d moves, %d answers", many, answers)
	if answers == many {
		t.Error("nothing was dropped")
	}
}

func TestLargeMessage(t *testing.T) {
	p, _ := newPage(t, small)
	conn := dial(t, serve(t, p))
	say(t, conn, `{"id":"`+strings.Repeat("x", mostMessage)+`"}`)
	if _, _, err := conn.Read(t.Context()); websocket.CloseStatus(err) != websocket.StatusMessageTooBig {
		t.Errorf("%v", err)
	}
}

// counted counts the bytes that come in.
type counted struct {
	net.Conn
	in *atomic.Int64
}

func (c counted) Read(into []byte) (int, error) {
	n, err := c.Conn.Read(into)
	c.in.Add(int64(n))
	return n, err
}

// TestPacked: what goes in ten packets goes as it is, and what is larger compressed.
func TestPacked(t *testing.T) {
	s := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		conn, err := accept(w, r)
		if err != nil {
			return
		}
		defer conn.CloseNow()
		for _, size := range []int{14_000, 15_000} {
			if conn.Write(r.Context(), websocket.MessageText, make([]byte, size)) != nil {
				return
			}
		}
		_, _, _ = conn.Read(r.Context()) // until it goes
	}))
	t.Cleanup(s.Close)
	in := new(atomic.Int64)
	client := &http.Client{Transport: &http.Transport{DialContext: func(ctx context.Context, network, address string) (net.Conn, error) {
		conn, err := new(net.Dialer).DialContext(ctx, network, address)
		return counted{conn, in}, err
	}}}
	conn, _, err := websocket.Dial(t.Context(), s.URL, &websocket.DialOptions{HTTPClient: client, CompressionMode: websocket.CompressionNoContextTakeover})
	if err != nil {
		t.Fatal(err)
	}
	defer conn.CloseNow()
	for range 2 {
		if _, _, err := conn.Read(t.Context()); err != nil {
			t.Fatal(err)
		}
	}
	if n := in.Load(); n < 14_000 || n > 15_500 {
		t.Errorf("%d bytes came in of 29,000", n)
	}
}

// When the program ends, live pages are told, and Serve returns without an error, whoever is in the
// middle of a request.
func TestServeEnds(t *testing.T) {
	p, _ := newPage(t, small)
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	ended := make(chan error, 1)
	go func() { ended <- Serve(ctx, l, p) }()
	conn, _, err := websocket.Dial(t.Context(), "ws://"+l.Addr().String()+"/api/live", &websocket.DialOptions{HTTPHeader: p.lock.letIn(l.Addr().String())})
	if err != nil {
		t.Fatal(err)
	}
	defer conn.CloseNow()
	for _, begun := range []string{"", "GET / HTTP/1.1\r\n", "POST /api/edit HTTP/1.1\r\nHost: " + l.Addr().String() + "\r\nCookie: " +
		p.lock.kept(l.Addr().String()).String() + "\r\nContent-Type: application/json\r\nContent-Length: 9\r\n\r\n{"} {
		half, err := net.Dial("tcp", l.Addr().String())
		if err != nil {
			t.Fatal(err)
		}
		defer half.Close()
		if _, err := io.WriteString(half, begun); err != nil {
			t.Fatal(err)
		}
	}
	stop()
	if _, _, err := conn.Read(t.Context()); websocket.CloseStatus(err) != websocket.StatusGoingAway {
		t.Errorf("%v", err)
	}
	if err := <-ended; err != nil {
		t.Errorf("%v", err)
	}
}

// The map that is kept while an upright slice turns by less than a part of a cell
// is the one that was made.
func TestMapIsKept(t *testing.T) {
	p, _ := newPage(t, small)
	id := ask[planAnswer](t, p, "/api/plan", asked{small}).ID
	s, b := &session{plans: p.plans}, newPainter(func(any) error { return nil })
	go1 := func(spot triple, quantity string) {
		m := move{ID: id, Spot: spot, View: "side", Quantity: quantity, Cells: 8}
		out, at := s.answer(m)
		if at == nil {
			t.Fatal(out.Fault, out.Error)
		}
		if err := b.draw(t.Context(), t.Context(), job{m, s.made, at}); err != nil {
			t.Fatal(err)
		}
	}
	go1(triple{2, 0, 1}, "level")
	first, _ := b.maps.Get(b.maps.Keys()[0])
	go1(triple{1.5, 0.0004, 0.5}, "level")
	if again, _ := b.maps.Get(b.maps.Keys()[0]); b.maps.Len() != 1 || again != first {
		t.Error("a nudge made a new map")
	}
	go1(triple{0, 2, 1}, "level")
	for range 2 {
		for _, q := range quantities {
			go1(triple{2, 0, 1}, q.name)
		}
	}
	if b.maps.Len() != mostMaps {
		t.Errorf("%d maps are kept", b.maps.Len())
	}
}

// TestMoveHasOneDelay: for a moved spot, too, each channel has the delay that can be set, and
// the exact one beside it; and the answer tells what the table sends back.
func TestMoveHasOneDelay(t *testing.T) {
	p, err := New(Options{})
	if err != nil {
		t.Fatal(err)
	}
	id := ask[planAnswer](t, p, "/api/plan", asked{string(design.DefaultTOML())}).ID
	s := &session{plans: p.plans}
	a, at := s.answer(move{ID: id, Spot: triple{1.2, -0.7, 0.9}})
	if at == nil || len(a.Channels) == 0 {
		t.Fatal(a.Fault)
	}
	const step = 1e6 / 48000
	for _, c := range a.Channels {
		if n := float64(c.Delay) / step; math.Abs(n-math.Round(n)) > 1e-4 || math.Abs(float64(c.Delay)-float64(c.Exact)) > step/2+1e-6 {
			t.Errorf("channel %d: %g us, exactly %g us", c.ID, float64(c.Delay), float64(c.Exact))
		}
	}
	if len(a.Echoes) != 1 || a.Echoes[0].By != "surface below" || !(a.Echoes[0].Dip > 100) {
		t.Errorf("echoes %+v", a.Echoes)
	}
}

// TestRestingPolar: at rest the answer has the polar of a whole plan for the spot, though
// no such plan is made.
func TestRestingPolar(t *testing.T) {
	p, _ := newPage(t, small)
	id := ask[planAnswer](t, p, "/api/plan", asked{small}).ID
	a := answered(t, dial(t, serve(t, p)), move{ID: id, Spot: triple{1.2, -0.7, 0.9}, Cells: dragCells + 1})
	made, _ := p.plans.kept.Get(id)
	array := *made.array
	array.Spot = r3.Vec{X: 1.2, Y: -0.7, Z: 0.9}
	whole, err := timing.Make(t.Context(), &array)
	if err != nil {
		t.Fatal(err)
	}
	want := document.OfPolar(whole.Horizontal)
	if a.Polar == nil || len(a.Polar.Level) != len(want.Aligned) {
		t.Fatal(a)
	}
	for b, row := range want.Aligned {
		for i, v := range row {
			if *a.Polar.Level[b][i] != float64(v) {
				t.Fatalf("octave %d, angle %d: %g, of a whole plan %g", b, i, *a.Polar.Level[b][i], float64(v))
			}
		}
	}
}
