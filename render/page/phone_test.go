package page

import (
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"net/netip"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"pappus/render/document"

	"github.com/google/go-cmp/cmp"
)

// phoneAt is where a phone comes in, in tests.
const phoneAt = "192.168.1.20:7000"

// strung is small, with drivers that have to be joined in strings.
const strung = small + "[wiring]\nchannels = 1\nminimum_load_ohm = 16\n"

// newPhone returns a page of a small design with a way in for a phone, and the design's path.
func newPhone(t testing.TB) (*Page, *Phone, string) {
	t.Helper()
	p, path := newPage(t, strung)
	h, err := p.Phone(netip.MustParseAddrPort(phoneAt))
	if err != nil {
		t.Fatal(err)
	}
	return p, h, path
}

// fromPhone is a request as the page's script on the phone sends it, with a cookie if there is
// one. Without a body it is a GET.
func fromPhone(path, body string, cookie *http.Cookie) *http.Request {
	r := httptest.NewRequest(http.MethodGet, "http://"+phoneAt+path, nil)
	if body != "" {
		r = httptest.NewRequest(http.MethodPost, "http://"+phoneAt+path, strings.NewReader(body))
		r.Header.Set("Content-Type", "application/json")
		r.Header.Set("Origin", "http://"+phoneAt)
	}
	if cookie != nil {
		r.AddCookie(cookie)
	}
	return r
}

func (h *Phone) do(r *http.Request) *httptest.ResponseRecorder {
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w
}

// letIn opens the address and returns the cookie that lets in from then on.
func letIn(t testing.TB, h *Phone) *http.Cookie {
	t.Helper()
	w := h.do(fromPhone("/"+h.lock.secret, "", nil))
	cookies := w.Result().Cookies()
	if w.Code != http.StatusSeeOther || len(cookies) != 1 || w.Header().Get("Location") != "/bench" {
		t.Fatalf("%d %v %.80s", w.Code, cookies, w.Body)
	}
	if w := h.do(fromPhone("/bench", "", cookies[0])); w.Code != http.StatusOK || !strings.Contains(w.Body.String(), `id="bench"`) {
		t.Fatalf("the bench: %d %.80s", w.Code, w.Body)
	}
	return cookies[0]
}

// TestPhoneSecret: nobody comes in without the secret, and all are told the same; it is random,
// long, and kept where no script and no other site has it.
func TestPhoneSecret(t *testing.T) {
	_, h, _ := newPhone(t)
	_, other, _ := newPhone(t)
	if len(h.lock.secret) < 26 || h.lock.secret == other.lock.secret { // 5 bits a letter
		t.Errorf("secrets %q, %q", h.lock.secret, other.lock.secret)
	}
	cookie := letIn(t, h)
	if !cookie.HttpOnly || cookie.SameSite != http.SameSiteStrictMode || cookie.Value != h.lock.secret || cookie.Path != "/" || cookie.MaxAge != 0 {
		t.Errorf("the cookie is %v", cookie)
	}
	wrong := &http.Cookie{Name: cookie.Name, Value: other.lock.secret}
	for _, c := range []struct {
		name   string
		path   string
		body   string
		cookie *http.Cookie
	}{
		{"nothing", "/", "", nil},
		{"no secret", "/bench", "", nil},
		{"another's", "/" + other.lock.secret, "", nil},
		{"a part", "/" + h.lock.secret[:25], "", nil},
		{"and more", "/" + h.lock.secret + "A", "", nil},
		{"as a folder", "/" + h.lock.secret + "/", "", nil},
		{"in small letters", "/" + strings.ToLower(h.lock.secret), "", nil},
		{"as a question", "/bench?" + h.lock.secret, "", nil},
		{"script", "/bench.js", "", nil},
		{"data", "/api/bench", "{}", nil},
		{"the book", "/api/book", "{}", nil},
		{"tick", "/api/tick", `{"drivers":[1],"step":"alone","driver":0,"done":true}`, nil},
		{"another's cookie", "/bench", "", wrong},
		{"an empty cookie", "/bench", "", &http.Cookie{Name: cookie.Name}},
		{"a cookie of another port", "/bench", "", &http.Cookie{Name: "pappus_7001", Value: h.lock.secret}},
		{"secret by post", "/" + h.lock.secret, "{}", nil},
		{"what is not there", "/nothing", "", nil},
	} {
		w := h.do(fromPhone(c.path, c.body, c.cookie))
		if w.Code != http.StatusForbidden || len(w.Result().Cookies()) > 0 || w.Header().Get("Connection") != "close" || !strings.Contains(w.Body.String(), "started anew") {
			t.Errorf("%s: %d %v %.80s", c.name, w.Code, w.Header(), w.Body)
		}
		if strings.Contains(w.Body.String(), h.lock.secret) {
			t.Errorf("%s: the secret is told", c.name)
		}
		checkHeaders(t, c.name, w.Header())
	}
}

// TestPhoneHosts: it answers only by its own address, and to no other site.
func TestPhoneHosts(t *testing.T) {
	_, h, _ := newPhone(t)
	cookie := letIn(t, h)
	at80, err := h.page.Phone(netip.MustParseAddrPort("[fd00::2]:80"))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, host, origin, site, mode string
		of                             *Phone
		want                           int
	}{
		{"own", phoneAt, "", "", "", h, 303},
		{"own, with its origin", phoneAt, "http://" + phoneAt, "same-origin", "", h, 303},
		{"a link on another site", phoneAt, "", "cross-site", "navigate", h, 200},
		{"a picture on another site", phoneAt, "", "cross-site", "no-cors", h, 403},
		{"another site", phoneAt, "http://evil.example", "", "", h, 403},
		{"no origin to tell", phoneAt, "null", "", "", h, 403},
		{"the computer's page", phoneAt, "http://127.0.0.1:7001", "", "", h, 403},
		{"a name for it", "evil.example:7000", "", "", "", h, 403},
		{"a name that begins as it", "192.168.1.20.evil.example:7000", "", "", "", h, 403},
		{"localhost", "localhost:7000", "", "", "", h, 403},
		{"loopback", "127.0.0.1:7000", "", "", "", h, 403},
		{"another port", "192.168.1.20:7001", "", "", "", h, 403},
		{"no port", "192.168.1.20", "", "", "", h, 403},
		{"another address", "192.168.1.21:7000", "", "", "", h, 403},
		{"none", "", "", "", "", h, 403},
		{"the port of http is left out", "[fd00::2]", "", "", "", at80, 303},
		{"the port of http is said", "[fd00::2]:80", "", "", "", at80, 303},
		{"another way to write it", "[fd00:0::2]", "", "", "", at80, 303},
	} {
		r := httptest.NewRequest(http.MethodGet, "http://x/"+c.of.lock.secret, nil)
		r.AddCookie(cookie)
		r.Host = c.host
		for key, value := range map[string]string{"Origin": c.origin, "Sec-Fetch-Site": c.site, "Sec-Fetch-Mode": c.mode} {
			if value != "" {
				r.Header.Set(key, value)
			}
		}
		w := c.of.do(r)
		if w.Code != c.want {
			t.Errorf("%s: %d, want %d; %.80s", c.name, w.Code, c.want, w.Body)
		}
		checkHeaders(t, c.name, w.Header())
	}
}

// TestPhoneHasTheBenchAlone: who is let in has the view for the bench and what it needs, no text
// is taken, and none of the page's other doings are there.
func TestPhoneHasTheBenchAlone(t *testing.T) {
	_, h, _ := newPhone(t)
	cookie := letIn(t, h)
	long := `{"drivers":[` + strings.Repeat("1,", mostOfPhone/2) + `1]}`
	for _, c := range []struct {
		path, body string
		want       int
	}{
		{"/", "", 200},
		{"/bench", "", 200},
		{"/bench.css", "", 200},
		{"/bench.js", "", 200},
		{"/book", "", 200},
		{"/book.css", "", 200},
		{"/api/book", "{}", 200},
		{"/api/book", `{"text":` + quoted(small) + `}`, 400},
		{"/api/parts", "{}", 404},
		{"/api/phone", "", 200},
		{"/api/bench", "{}", 200},
		{"/api/ticks", "{}", 200},
		{"/api/bench", `{"text":` + quoted(small) + `}`, 400},
		{"/api/tick", long, 413},
		{"/bench.html", "", 404},
		{"/page.js", "", 404},
		{"/page.css", "", 404},
		{"/index.html", "", 404},
		{"/LICENCES.txt", "", 404},
		{"/../mine.toml", "", 404},
		{"/mine.bench.toml", "", 404},
		{"/api/start", "", 404},
		{"/api/found", "", 404},
		{"/api/programme?name=clicks", "", 404},
		{"/api/live", "", 404},
		{"/api/watch", "", 404},
		{"/api/plan", "{}", 404},
		{"/api/survey", "{}", 404},
		{"/api/edit", "{}", 404},
		{"/api/save", "{}", 404},
		{"/api/ears", "{}", 404},
		{"/api/loudness", "{}", 404},
		{"/api/walk", "{}", 404},
		{"/api/where", "{}", 404},
		{"/api/offered", "{}", 404},
		{"/api/files", "{}", 404},
		{"/api/merge", "{}", 404},
		{"/api/measure", "{}", 404},
	} {
		r := fromPhone(c.path, c.body, cookie)
		w := h.do(r)
		if w.Code != c.want && !(c.want == 404 && (w.Code == 405 || w.Code == 307)) {
			t.Errorf("%s: %d, want %d; %.80s", c.path, w.Code, c.want, w.Body)
		}
		if strings.Contains(w.Body.String(), filepath.Dir(h.page.options.Path)) {
			t.Errorf("%s tells the folder: %.200s", c.path, w.Body)
		}
		checkHeaders(t, c.path, w.Header())
	}
	unsaid := fromPhone("/api/tick", long, cookie)
	unsaid.ContentLength = -1
	if w := h.do(unsaid); w.Code != http.StatusRequestEntityTooLarge {
		t.Errorf("a long tick in chunks: %d", w.Code)
	}
	whole := "[" + strings.TrimSuffix(strings.Repeat("10000,", mostTicked), ",") + "]"
	if room := len(`{"drivers":` + whole + `,"step":"driver","driver":10000,"done":false}`); room > mostOfPhone || mostOfPhone > room*11/10 {
		t.Errorf("a tick of the longest string is %d bytes, room is for %d", room, mostOfPhone)
	}
}

// TestPhoneTicks: what a phone ticks stands beside what the computer ticks, of the same string
// too, and at the same time; strings that the saved design has not are refused.
func TestPhoneTicks(t *testing.T) {
	p, h, path := newPhone(t)
	cookie := letIn(t, h)
	var bench document.Bench
	if err := json.Unmarshal(h.do(fromPhone("/api/bench", "{}", cookie)).Body.Bytes(), &bench); err != nil {
		t.Fatal(err)
	}
	ids := bench.Channels[0].Strings[0].Drivers
	if len(ids) < 2 {
		t.Fatalf("strings of %d", len(ids))
	}
	var all sync.WaitGroup
	for i, id := range ids {
		in, err := json.Marshal(ticking{ids, "driver", id, true})
		if err != nil {
			t.Fatal(err)
		}
		all.Go(func() {
			w := do(p, request("/api/tick", string(in)))
			if i%2 == 1 {
				w = h.do(fromPhone("/api/tick", string(in), cookie))
			}
			if w.Code != http.StatusOK {
				t.Errorf("driver %d: %d %s", id, w.Code, w.Body)
			}
		})
	}
	all.Wait()
	want := ticksAnswer{"mine.bench.toml", []ticked{{ids, ids, false, false}}, hashOf([]byte(strung))}
	if diff := cmp.Diff(want, ask[ticksAnswer](t, p, "/api/ticks", ticksAsked{})); diff != "" {
		t.Error(diff)
	}
	if w := h.do(fromPhone("/api/tick", `{"drivers":[1000],"step":"alone","driver":0,"done":true}`, cookie)); w.Code != http.StatusConflict {
		t.Errorf("a string that is not there: %d %s", w.Code, w.Body)
	}
	// The design is saved anew, by another program: it is told, and what it has now counts.
	if err := os.WriteFile(path, []byte(strings.Replace(strung, "count = 6", "count = 5", 1)), 0o600); err != nil {
		t.Fatal(err)
	}
	in, _ := json.Marshal(ticking{ids, "driver", ids[0], false})
	if w := h.do(fromPhone("/api/tick", string(in), cookie)); w.Code != http.StatusConflict {
		t.Errorf("a string of before: %d %s", w.Code, w.Body)
	}
	if got := ask[ticksAnswer](t, p, "/api/ticks", ticksAsked{}); got.Read == want.Read || len(got.Strings[0].Soldered) != len(ids) {
		t.Errorf("then %v", got)
	}
	if w := do(p, request("/api/save", `{"text":`+quoted(strung)+`,"read":"`+want.Read+`"}`)); w.Code != http.StatusConflict {
		t.Errorf("what the phone looked at was written over: %d", w.Code)
	}
}

// TestPhoneLink: the computer's page alone has the address and its code, and none without a way
// in.
func TestPhoneLink(t *testing.T) {
	p, h, _ := newPhone(t)
	for _, c := range []struct {
		name string
		w    *httptest.ResponseRecorder
		want phoneAnswer
	}{
		{"computer", do(p, httptest.NewRequest("GET", "http://localhost/api/phone", nil)), phoneAnswer{false, "http://" + phoneAt + "/" + h.lock.secret, p.phone.Code}},
		{"phone", h.do(fromPhone("/api/phone", "", letIn(t, h))), phoneAnswer{true, "", code{}}},
	} {
		var got phoneAnswer
		if err := json.Unmarshal(c.w.Body.Bytes(), &got); err != nil {
			t.Fatalf("%s: %v %s", c.name, err, c.w.Body)
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: %s", c.name, diff)
		}
	}
	alone, _ := newPage(t, small)
	if w := do(alone, httptest.NewRequest("GET", "http://localhost/api/phone", nil)); strings.TrimSpace(w.Body.String()) != `{"on_phone":false,"address":"","code":[]}` {
		t.Errorf("alone: %d %s", w.Code, w.Body)
	}
}

// TestCode: the three corners of a code by which a camera finds it, its light margin, and the
// same squares in the terminal (ISO/IEC 18004, 6.3.3 and 9.1).
func TestCode(t *testing.T) {
	c, err := codeOf("http://192.168.100.200:65535/" + strings.Repeat("A", 26))
	if err != nil {
		t.Fatal(err)
	}
	if len(c) != 33 { // version 4 has room for 62 bytes at level M
		t.Errorf("%d squares wide", len(c))
	}
	finder := []string{"1111111", "1000001", "1011101", "1011101", "1011101", "1000001", "1111111"}
	for y, row := range finder {
		last := len(c) - 7
		for name, got := range map[string]string{"left above": c[y][:7], "right above": c[y][last:], "left below": c[last+y][:7]} {
			if got != row {
				t.Errorf("%s, row %d: %s", name, y, got)
			}
		}
	}
	lines := strings.Split(strings.TrimSuffix(c.terminal(), "\n"), "\n")
	if len(lines) != (33+2*4+1)/2 {
		t.Errorf("%d lines", len(lines))
	}
	for i, line := range lines {
		line = strings.TrimSuffix(strings.TrimPrefix(line, "\x1b[38;5;16;48;5;231m"), "\x1b[0m")
		squares := []rune(line)
		if len(squares) != 33+2*4 {
			t.Fatalf("line %d has %d squares", i, len(squares))
		}
		for x, r := range squares {
			for half, blocks := range []string{"█▀", "█▄"} {
				if strings.ContainsRune(blocks, r) != c.dark(x-4, 2*i+half-4) {
					t.Fatalf("line %d, square %d is %q", i, x, r)
				}
			}
		}
	}
}
