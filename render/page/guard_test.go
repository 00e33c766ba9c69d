package page

import (
	"context"
	"sync"

	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// Host headers as in a DNS rebinding attack, and origins of foreign pages, are
// refused (OWASP, "DNS rebinding" and "Cross-Site WebSocket Hijacking").
func TestHostsAndOrigins(t *testing.T) {
	p, _ := newPage(t, small)
	for _, c := range []struct {
		name, method, path, host, origin, site string
		want                                   int
	}{
		{"page", "GET", "/", "127.0.0.1:7000", "", "none", 200},
		{"page by name", "GET", "/", "LOCALHOST:7000", "", "", 200},
		{"page by IPv6", "GET", "/", "[::1]:7000", "", "", 200},
		{"page without port", "GET", "/", "[::1]", "", "", 200},
		{"another loopback address", "GET", "/", "127.8.8.8:1", "", "", 200},
		{"own script", "GET", "/api/start", "127.0.0.1:7000", "", "same-origin", 200},
		{"own post", "POST", "/api/edit", "127.0.0.1:7000", "http://127.0.0.1:7000", "same-origin", 200},
		{"post of a program", "POST", "/api/edit", "127.0.0.1:7000", "", "", 200},
		{"rebound name", "GET", "/", "evil.example", "", "", 403},
		{"rebound name, port", "GET", "/api/start", "evil.example:7000", "http://evil.example:7000", "same-origin", 403},
		{"name that begins well", "GET", "/", "localhost.evil.example:7000", "", "", 403},
		{"name that begins as an address", "GET", "/", "127.0.0.1.evil.example", "", "", 403},
		{"no host", "GET", "/", "", "", "", 403},
		{"address of the net", "GET", "/", "192.168.1.2:7000", "", "", 403},
		{"any address", "GET", "/", "0.0.0.0:7000", "", "", 403},
		{"foreign origin", "POST", "/api/save", "127.0.0.1:7000", "http://evil.example", "cross-site", 403},
		{"foreign origin, no metadata", "POST", "/api/save", "127.0.0.1:7000", "http://evil.example", "", 403},
		{"no origin to tell", "POST", "/api/save", "127.0.0.1:7000", "null", "", 403},
		{"another port", "POST", "/api/save", "127.0.0.1:7000", "http://127.0.0.1:7001", "same-site", 403},
		{"another scheme", "POST", "/api/save", "127.0.0.1:7000", "https://127.0.0.1:7000", "", 403},
		{"another name of it", "POST", "/api/save", "127.0.0.1:7000", "http://localhost:7000", "", 403},
		{"foreign script tag", "GET", "/page.js", "127.0.0.1:7000", "", "cross-site", 403},
		{"foreign read", "GET", "/api/start", "127.0.0.1:7000", "", "cross-site", 403},
		{"foreign socket", "GET", "/api/live", "127.0.0.1:7000", "http://evil.example", "", 403},
	} {
		r := httptest.NewRequest(c.method, "http://x"+c.path, strings.NewReader(`{"text":"","set":[]}`))
		r.Host = c.host
		r.Header.Set("Content-Type", "application/json")
		if c.origin != "" {
			r.Header.Set("Origin", c.origin)
		}
		if c.site != "" {
			r.Header.Set("Sec-Fetch-Site", c.site)
		}
		w := do(p, r)
		if w.Code != c.want {
			t.Errorf("%s: %d, want %d; %.80s", c.name, w.Code, c.want, w.Body)
		}
		checkHeaders(t, c.name, w.Header())
	}
}

// checkHeaders wants every answer to forbid all but the page's own (Content
// Security Policy Level 3, W3C).
func checkHeaders(t *testing.T, name string, h http.Header) {
	t.Helper()
	policy := map[string]string{}
	for _, d := range strings.Split(h.Get("Content-Security-Policy"), "; ") {
		key, value, _ := strings.Cut(d, " ")
		policy[key] = value
	}
	for key, want := range map[string]string{
		"default-src": "'none'", "script-src": "'self'", "style-src": "'self'", "base-uri": "'none'",
		"form-action": "'none'", "frame-ancestors": "'none'",
	} {
		if policy[key] != want {
			t.Errorf("%s: %s is %q", name, key, policy[key])
		}
	}
	if c := policy["connect-src"]; !strings.HasPrefix(c, "'self'") || strings.Contains(c, "evil") || strings.Contains(c, "*") {
		t.Errorf("%s: connect-src is %q", name, c)
	}
	for key, want := range map[string]string{
		"X-Content-Type-Options": "nosniff", "Referrer-Policy": "no-referrer", "X-Frame-Options": "DENY", "Cache-Control": "no-store",
		"Cross-Origin-Resource-Policy": "same-origin", "Cross-Origin-Opener-Policy": "same-origin",
	} {
		if h.Get(key) != want {
			t.Errorf("%s: %s is %q", name, key, h.Get(key))
		}
	}
}

func TestBodies(t *testing.T) {
	p, _ := newPage(t, small)
	plain := request("/api/plan", `{"text":""}`)
	plain.Header.Set("Content-Type", "text/plain")
	for _, c := range []struct {
		name string
		r    *http.Request
		want int
	}{
		{"a form's type", plain, 415},
		{"no JSON", request("/api/plan", `{"text":`), 400},
		{"a field too many", request("/api/plan", `{"text":"","more":1}`), 400},
		{"two values", request("/api/plan", `{"text":""} {}`), 400},
		{"wrong type", request("/api/plan", `{"text":1}`), 400},
		{"nothing", request("/api/plan", ``), 400},
		{"3 MB", request("/api/plan", `{"text":"`+strings.Repeat("#", mostBody)+`"}`), 413},
		{"a text above 1 MB", request("/api/plan", `{"text":"`+strings.Repeat("#", mostText+1)+`"}`), 422},
		{"1 MB to save", request("/api/save", `{"text":"`+strings.Repeat("#", mostText+1)+`"}`), 413},
		{"no such verb", request("/api/plans", `{}`), 405},
		{"GET of a verb", httptest.NewRequest("GET", "http://localhost/api/plan", nil), 404},
		{"file that is not there", httptest.NewRequest("GET", "http://localhost/page.go", nil), 404},
		{"live without a socket", httptest.NewRequest("GET", "http://localhost/api/live", nil), 426},
	} {
		w := do(p, c.r)
		if w.Code != c.want {
			t.Errorf("%s: %d, want %d; %.80s", c.name, w.Code, c.want, w.Body)
		}
	}
}

func TestTooManyRequests(t *testing.T) {
	p, _ := newPage(t, small)
	var in, asked sync.WaitGroup
	in.Add(mostWork)
	leave := make(chan struct{})
	p.options.Loudness = func(context.Context, *timing.Spot, r3.Vec, Hearing) (map[string]float64, error) {
		in.Done()
		<-leave
		return nil, nil
	}
	sound := `{"text":` + quoted(small) + `,"programme":"clicks"}`
	for range mostWork {
		asked.Go(func() { do(p, request("/api/loudness", sound)) })
	}
	in.Wait()
	in.Add(mostRequests - mostWork) // the others wait for their turn
	codes := make(chan int, 2*mostRequests)
	for range 2 * mostRequests {
		asked.Go(func() { codes <- do(p, request("/api/loudness", sound)).Code })
	}
	for range mostRequests + mostWork {
		if code := <-codes; code != http.StatusTooManyRequests {
			t.Fatalf("%d", code)
		}
	}
	if w := do(p, request("/api/edit", `{"text":""}`)); w.Code != http.StatusTooManyRequests || w.Header().Get("Retry-After") == "" {
		t.Errorf("%d %v", w.Code, w.Header())
	}
	close(leave)
	asked.Wait()
	if w := do(p, request("/api/edit", `{"text":""}`)); w.Code != http.StatusOK {
		t.Errorf("when they are answered: %d %s", w.Code, w.Body)
	}
}
