package page

import (
	"bufio"
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"net/netip"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	"github.com/coder/websocket"
)

var flood = flag.Int("flood", 400, "how many connections that never end a request TestHalfOpen opens")

// answering serves a page as the command does, until the test ends.
func answering(t testing.TB, p *Page) (at string) {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- Serve(ctx, l, p) }()
	t.Cleanup(func() {
		stop()
		if err := <-ended; err != nil {
			t.Error(err)
		}
	})
	return l.Addr().String()
}

// TestStrangers: without the secret there is one plain page, whatever is asked for, which tells
// nothing of the design; APIs, sockets and files alike.
func TestStrangers(t *testing.T) {
	p, path := newPage(t, small)
	other, _ := newPage(t, small)
	const at = "127.0.0.1:7000"
	for _, c := range []struct {
		name, method, path string
		cookie             *http.Cookie
	}{
		{"page", "GET", "/", nil},
		{"bench", "GET", "/bench", nil},
		{"script", "GET", "/page.js", nil},
		{"licences", "GET", "/LICENCES.txt", nil},
		{"what is not there", "GET", "/nothing", nil},
		{"start", "GET", "/api/start", nil},
		{"socket", "GET", "/api/live", nil},
		{"watch", "GET", "/api/watch", nil},
		{"save", "POST", "/api/save", nil},
		{"plan", "POST", "/api/plan", nil},
		{"parts", "POST", "/api/parts", nil},
		{"parts being made", "GET", "/api/solve", nil},
		{"measure", "POST", "/api/measure", nil},
		{"secret by post", "POST", "/" + p.lock.secret, nil},
		{"secret in a question", "GET", "/?" + p.lock.secret, nil},
		{"another's secret", "GET", "/" + other.lock.secret, nil},
		{"another's cookie", "GET", "/api/start", other.lock.kept(at)},
		{"another port's cookie", "GET", "/api/start", p.lock.kept("127.0.0.1:7001")},
		{"empty cookie", "GET", "/api/start", &http.Cookie{Name: cookieFor(at)}},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := httptest.NewRequest(c.method, "http://"+at+c.path, strings.NewReader("{}"))
			if c.cookie != nil {
				r.AddCookie(c.cookie)
			}
			w := httptest.NewRecorder()
			p.ServeHTTP(w, r)
			if w.Code != http.StatusForbidden || !strings.Contains(w.Body.String(), "open the address that the program printed") || w.Header().Get("Connection") != "close" || len(w.Result().Cookies()) > 0 {
				t.Errorf("%d %v %s", w.Code, w.Header(), w.Body)
			}
			for _, told := range []string{p.lock.secret, "Ball", "mine", path} {
				if strings.Contains(w.Body.String(), told) {
					t.Errorf("it tells %q: %s", told, w.Body)
				}
			}
			checkHeaders(t, c.name, w.Header())
		})
	}
}

// TestWelcome: the address gives the cookie and leads to one without the secret, also from where a
// redirect would not carry the cookie; each port has its own.
func TestWelcome(t *testing.T) {
	p, _ := newPage(t, small)
	for _, c := range []struct {
		name, host, site, mode, cookie string
		want                           int
		header                         string
	}{
		{"typed", "127.0.0.1:7000", "none", "navigate", "pappus_7000", http.StatusSeeOther, "Location"},
		{"a program", "127.0.0.1:7001", "", "", "pappus_7001", http.StatusSeeOther, "Location"},
		{"by name, no port", "localhost", "none", "navigate", "pappus_80", http.StatusSeeOther, "Location"},
		{"another port's page", "127.0.0.1:7000", "same-site", "navigate", "pappus_7000", http.StatusSeeOther, "Location"},
		{"a link elsewhere", "127.0.0.1:7000", "cross-site", "navigate", "pappus_7000", http.StatusOK, "Refresh"},
		{"a picture elsewhere", "127.0.0.1:7000", "cross-site", "no-cors", "", http.StatusForbidden, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := httptest.NewRequest("GET", p.Address(netip.MustParseAddrPort("127.0.0.1:7000")), nil)
			r.Host = c.host
			for key, value := range map[string]string{"Sec-Fetch-Site": c.site, "Sec-Fetch-Mode": c.mode} {
				if value != "" {
					r.Header.Set(key, value)
				}
			}
			w := httptest.NewRecorder()
			p.ServeHTTP(w, r)
			cookies := w.Result().Cookies()
			if w.Code != c.want || len(cookies) != len(c.cookie[:min(1, len(c.cookie))]) {
				t.Fatalf("%d %v", w.Code, cookies)
			}
			if strings.Contains(w.Body.String(), p.lock.secret) {
				t.Errorf("the secret is told: %s", w.Body)
			}
			if c.cookie == "" {
				return
			}
			if k := cookies[0]; k.Name != c.cookie || !k.HttpOnly || k.SameSite != http.SameSiteStrictMode || k.Path != "/" || k.MaxAge != 0 || k.Value != p.lock.secret {
				t.Errorf("the cookie is %v", k)
			}
			if to := w.Header().Get(c.header); to != "/" && to != "0; url=/" {
				t.Errorf("it leads to %q", to)
			}
		})
	}
}

// TestTicket lets in the first who comes with it, in time.
func TestTicket(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		k := newLock("/", "no")
		for _, c := range []struct {
			name string
			wait time.Duration
			word func(ticket string) string
			want bool
		}{
			{"at once", 0, func(w string) string { return w }, true},
			{"in time", ticketTime - time.Second, func(w string) string { return w }, true},
			{"late", ticketTime, func(w string) string { return w }, false},
			{"nothing", 0, func(string) string { return "" }, false},
			{"another", 0, func(string) string { return k.secret }, false},
		} {
			word := k.ticket.anew()
			time.Sleep(c.wait)
			if got := k.ticket.spend(c.word(word)); got != c.want {
				t.Errorf("%s: %t", c.name, got)
			}
			if c.want && k.ticket.spend(word) {
				t.Errorf("%s: it lets in twice", c.name)
			}
		}
	})
	p, _ := newPage(t, small)
	at := netip.MustParseAddrPort("127.0.0.1:7000")
	once := p.AddressOnce(at)
	for i, want := range []int{http.StatusSeeOther, http.StatusForbidden} {
		w := httptest.NewRecorder()
		p.ServeHTTP(w, httptest.NewRequest("GET", once, nil))
		if w.Code != want || len(w.Result().Cookies()) != 1-i {
			t.Errorf("time %d: %d", i+1, w.Code)
		}
	}
}

// TestSocketsGiveWay: of too many the one that was silent for longest is told that it rests, and the
// newest is answered.
func TestSocketsGiveWay(t *testing.T) {
	p, _ := newPage(t, small)
	id := ask[planAnswer](t, p, "/api/plan", asked{small}).ID
	s := serve(t, p)
	var all []*websocket.Conn
	for range mostSockets {
		all = append(all, dial(t, s))
	}
	answered(t, all[0], move{ID: id, Spot: triple{1, 1, 1}}) // the second is silent for longest now
	newest := dial(t, s)
	if _, _, err := all[1].Read(t.Context()); websocket.CloseStatus(err) != rests {
		t.Errorf("%v", err)
	}
	for i, conn := range []*websocket.Conn{all[0], all[2], newest} {
		if a := answered(t, conn, move{ID: id, Spot: triple{1, 1, 1}}); a.Unknown || a.Fault != "" {
			t.Errorf("page %d: %v", i, a)
		}
	}
}

// TestSocketsAreAsked: who does not answer within the time is gone, and has no place any more.
func TestSocketsAreAsked(t *testing.T) {
	p, _ := newPage(t, small)
	for _, k := range []*sockets{&p.sockets.live, &p.sockets.watch, &p.sockets.solve} {
		k.pulse = 20 * time.Millisecond
	}
	at := answering(t, p)
	for _, what := range []string{"live", "watch", "solve"} {
		conn, err := net.Dial("tcp", at)
		if err != nil {
			t.Fatal(err)
		}
		defer conn.Close()
		fmt.Fprintf(conn, "GET /api/%s HTTP/1.1\r\nHost: %s\r\nCookie: %s\r\nConnection: Upgrade\r\nUpgrade: websocket\r\nSec-WebSocket-Version: 13\r\nSec-WebSocket-Key: AAAAAAAAAAAAAAAAAAAAAA==\r\n\r\n", what, at, p.lock.kept(at))
		if r, err := http.ReadResponse(bufio.NewReader(conn), nil); err != nil || r.StatusCode != http.StatusSwitchingProtocols {
			t.Fatalf("%s: %v %v", what, r, err)
		}
		if _, err := io.Copy(io.Discard, conn); err != nil && !errors.Is(err, io.EOF) && !strings.Contains(err.Error(), "reset") {
			t.Errorf("%s: %v", what, err)
		}
	}
}

// TestHalfBodies: requests that never end keep no place from those that do.
func TestHalfBodies(t *testing.T) {
	p, _ := newPage(t, small)
	at := answering(t, p)
	for range 2 * mostRequests {
		conn, err := net.Dial("tcp", at)
		if err != nil {
			t.Fatal(err)
		}
		defer conn.Close()
		fmt.Fprintf(conn, "POST /api/edit HTTP/1.1\r\nHost: %s\r\nCookie: %s\r\nContent-Type: application/json\r\nContent-Length: 100\r\n\r\n{", at, p.lock.kept(at))
	}
	for range 2 * mostRequests {
		if w := do(p, request("/api/edit", `{"text":""}`)); w.Code != http.StatusOK {
			t.Fatalf("%d %s", w.Code, w.Body)
		}
	}
}

// TestHalfOpen: the owner is answered on a new connection while strangers hold ever so many that
// never say what they want, and on the one that was there before.
func TestHalfOpen(t *testing.T) {
	p, _ := newPage(t, small)
	at := answering(t, p)
	ask := func(c *http.Client) {
		t.Helper()
		r, err := http.NewRequest("GET", "http://"+at+"/api/start", nil)
		if err != nil {
			t.Fatal(err)
		}
		r.Header = p.lock.letIn(at)
		began := time.Now()
		answer, err := c.Do(r)
		if err != nil {
			t.Fatal(err)
		}
		defer answer.Body.Close()
		if _, err := io.Copy(io.Discard, answer.Body); err != nil || answer.StatusCode != http.StatusOK {
			t.Errorf("%s %v", answer.Status, err)
		}
		t.Logf("answered in %v", time.Since(began).Round(time.Microsecond))
	}
	before := &http.Client{Transport: &http.Transport{}}
	ask(before)
	for i := range *flood {
		conn, err := net.Dial("tcp", at)
		if err != nil {
			t.Fatal(err)
		}
		defer conn.Close()
		if i%2 == 0 {
			fmt.Fprint(conn, "GET / HTTP/1.1\r\nHost: ")
		}
		if (i+1)%100 == 0 {
			ask(&http.Client{Transport: &http.Transport{DisableKeepAlives: true}})
		}
	}
	ask(before)
}

// TestStrangersGiveWay: the first of too many is closed, and nobody who is known.
func TestStrangersGiveWay(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		s := newStrangers(2)
		var theirs, ours []net.Conn
		for range 5 {
			a, b := net.Pipe()
			defer a.Close()
			defer b.Close()
			theirs, ours = append(theirs, a), append(ours, b)
			s.came(b)
			if len(ours) == 1 {
				s.left(b) // it has shown the secret
			}
		}
		open := ""
		for _, c := range theirs {
			var one [1]byte
			_ = c.SetReadDeadline(time.Now().Add(time.Second))
			if _, err := c.Read(one[:]); errors.Is(err, io.EOF) {
				open += "-"
			} else {
				open += "o"
			}
		}
		if open != "o--oo" || s.all.Len() != 2 || len(s.of) != 2 {
			t.Errorf("%s, %d, %d", open, s.all.Len(), len(s.of))
		}
	})
}
