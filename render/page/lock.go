package page

import (
	"crypto/rand"
	"crypto/subtle"
	"fmt"
	"html"
	"io"
	"net"
	"net/http"
	"net/netip"
	"strings"
	"sync"
	"time"
)

// lock lets in who has a secret. It stands once in the address that the program gives; the answer
// keeps it in a cookie that no script and no other site has the use of (HttpOnly and
// SameSite=Strict, RFC 6265bis), and leads on to an address without it. Whoever else comes is told
// one and the same, whatever there is at that path, and is not kept.
type lock struct {
	secret string // of 128 random bits or more
	home   string // where the address leads to
	words  string // for who has not the secret
	ticket *ticket
}

func newLock(home, words string) lock { return lock{rand.Text(), home, words, new(ticket)} }

// ticketTime is how long a ticket lasts: a browser that has to be started first takes some seconds.
const ticketTime = time.Minute

// ticket is a word that lets in once in place of the secret: it goes to the browser on a command
// line, which other accounts of the machine can read for as long as the browser runs.
type ticket struct {
	mu    sync.Mutex
	word  string // empty: none
	until time.Time
}

// anew is a new ticket, in place of the one before.
func (t *ticket) anew() string {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.word, t.until = rand.Text(), time.Now().Add(ticketTime)
	return t.word
}

// spend tells whether a word is the ticket, which lets nobody else in then.
func (t *ticket) spend(word string) bool {
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.word == "" || subtle.ConstantTimeCompare([]byte(word), []byte(t.word)) == 0 {
		return false
	}
	t.word = ""
	return time.Now().Before(t.until)
}

// address is what to open, with the secret, where the program listens.
func (k lock) address(at netip.AddrPort) string { return "http://" + at.String() + k.entry() }

// entry is the path that has the secret.
func (k lock) entry() string { return "/" + k.secret }

// guard answers who has the secret in the address, and lets in who has it in the cookie.
func (k lock) guard(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		given, _ := strings.CutPrefix(r.URL.Path, "/")
		cookie, err := r.Cookie(cookieFor(r.Host))
		switch {
		case r.Method == http.MethodGet && (k.knows(given) || k.ticket.spend(given)):
			k.welcome(w, r)
		case err != nil || !k.knows(cookie.Value):
			turnAway(w, r, &failure{http.StatusForbidden, k.words})
		default:
			noStranger(r)
			next.ServeHTTP(w, r)
		}
	})
}

// welcome gives the cookie and leads on. Where a link on another site, or a file, led here, the
// browser would not send the cookie along (it is SameSite=Strict, and a redirect goes on with who
// began), so that the page itself leads on there.
func (k lock) welcome(w http.ResponseWriter, r *http.Request) {
	http.SetCookie(w, &http.Cookie{Name: cookieFor(r.Host), Value: k.secret, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode})
	if r.Header.Get("Sec-Fetch-Site") != "cross-site" {
		http.Redirect(w, r, k.home, http.StatusSeeOther)
		return
	}
	w.Header().Set("Refresh", "0; url="+k.home)
	plain(w, http.StatusOK, "Come in", `<a href="`+k.home+`">The page is here.</a>`)
}

// knows tells whether a word is the secret, and takes as long whichever it is.
func (k lock) knows(word string) bool {
	return subtle.ConstantTimeCompare([]byte(word), []byte(k.secret)) == 1
}

// cookieFor is the cookie's name. Those of one machine are sent to all of its ports (RFC 6265,
// 8.5), so that each port has its own; that of http is left out of a Host header (RFC 9110, 7.2).
func cookieFor(host string) string {
	_, port, err := net.SplitHostPort(host)
	if err != nil {
		port = "80"
	}
	return fmt.Sprintf("pappus_%s", port)
}

// turnAway refuses a request in words for who asked, and ends the connection: the page's own
// script, or a person who opened an address.
func turnAway(w http.ResponseWriter, r *http.Request, f *failure) {
	w.Header().Set("Connection", "close")
	if strings.HasPrefix(r.URL.Path, "/api/") {
		fail(w, f)
		return
	}
	plain(w, f.status, "Not this way", html.EscapeString(strings.ToUpper(f.words[:1])+f.words[1:])+".")
}

// plain is a page without anything of a design. Its words are HTML.
func plain(w http.ResponseWriter, status int, title, words string) {
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	_, _ = io.WriteString(w, `<!doctype html><html lang="en-GB"><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">`+
		`<meta name="color-scheme" content="light dark"><title>Pappus</title><link rel="icon" href="data:,"><main><h1>`+title+`</h1><p>`+words+"</p></main></html>\n")
}
