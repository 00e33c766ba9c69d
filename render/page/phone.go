package page

import (
	"crypto/rand"
	"crypto/subtle"
	"fmt"
	"html"
	"io"
	"io/fs"
	"net/http"
	"net/netip"
	"strings"

	"pappus/render/document"
)

// mostOfPhone is the most that a request of a phone may hold, in bytes: a tick of a string of
// mostTicked drivers, whose numbers have at most five digits and a comma, and room for the rest.
const mostOfPhone = 6*mostTicked + 4<<10

// Phone is the way in for a phone in the same network: the view for the bench, of the design as
// it is saved, its ticks, and nothing else of the page; it is an http.Handler. Only who knows
// the secret in its address is let in.
//
// The address has the secret once; the answer keeps it in a cookie that no script and no other
// site has the use of (HttpOnly and SameSite=Strict, RFC 6265bis), and the page then takes it
// out of the address bar. It goes over the network as it is: who listens there can have it.
type Phone struct {
	page    *Page
	at      netip.AddrPort
	secret  string // of 128 random bits or more
	view    []byte // what is at the secret's path, and at /bench
	handler http.Handler
}

// Phone opens the way in for a phone that comes to an address of this machine.
func (p *Page) Phone(at netip.AddrPort) (*Phone, error) {
	files, err := fs.Sub(built, "built")
	if err != nil {
		return nil, err
	}
	h := &Phone{page: p, at: at, secret: rand.Text()}
	if h.view, err = fs.ReadFile(files, "bench.html"); err != nil {
		return nil, err
	}
	link := phoneAnswer{Address: h.Address()}
	if link.Code, err = codeOf(link.Address); err != nil {
		return nil, err
	}
	p.phone = link
	mux, asking := http.NewServeMux(), atMost(mostRequests, "too many requests at once; try again")
	for _, path := range []string{"GET /{$}", "GET /bench"} {
		mux.HandleFunc(path, h.show)
	}
	for _, name := range []string{"bench.css", "bench.js"} {
		mux.HandleFunc("GET /"+name, func(w http.ResponseWriter, r *http.Request) { http.ServeFileFS(w, r, files, name) })
	}
	mux.Handle("GET /api/phone", asking(func(w http.ResponseWriter, _ *http.Request) { reply(w, phoneAnswer{OnPhone: true, Code: []string{}}) }))
	mux.Handle("POST /api/bench", asking(answer(h.bench)))
	mux.Handle("POST /api/ticks", asking(answer(p.readTicks)))
	mux.Handle("POST /api/tick", asking(answer(h.tick)))
	way := door{own: h.own, entry: "/" + h.secret, words: "this is not the address that the program gave", fail: turnAway}
	h.handler = way.guard(h.lock(mux))
	return h, nil
}

// Address is what to open on the phone, with the secret.
func (h *Phone) Address() string { return "http://" + h.at.String() + "/" + h.secret }

// Drawn is the address for the phone's camera, drawn in a terminal.
func (h *Phone) Drawn() string { return h.page.phone.Code.terminal() }

// ServeHTTP answers a request.
func (h *Phone) ServeHTTP(w http.ResponseWriter, r *http.Request) { h.handler.ServeHTTP(w, r) }

// own tells whether a Host header is the address of the listener. At the port of http, browsers
// leave it out (RFC 9110, 7.2).
func (h *Phone) own(host string) bool {
	at, err := netip.ParseAddrPort(host)
	if err != nil {
		at, err = netip.ParseAddrPort(host + ":80")
	}
	return err == nil && at == h.at
}

// lock lets in who has the secret, in the address or kept from it. Whoever else comes is told
// one and the same, whatever there is at that path, and is not kept.
func (h *Phone) lock(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		given, _ := strings.CutPrefix(r.URL.Path, "/")
		cookie, err := r.Cookie(h.cookie())
		switch {
		case r.Method == http.MethodGet && h.knows(given):
			http.SetCookie(w, &http.Cookie{Name: h.cookie(), Value: h.secret, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode})
			h.show(w, r)
		case err != nil || !h.knows(cookie.Value):
			turnAway(w, r, &failure{http.StatusForbidden, "the program was started anew, or this phone was not here yet: open the address that it gives now, or point the camera at its code"})
		case r.ContentLength > mostOfPhone:
			turnAway(w, r, &failure{http.StatusRequestEntityTooLarge, "too large for a tick"})
		default:
			r.Body = http.MaxBytesReader(w, r.Body, mostOfPhone)
			next.ServeHTTP(w, r)
		}
	})
}

// cookie is its name; those of one machine are sent to all of its ports.
func (h *Phone) cookie() string { return fmt.Sprintf("pappus_bench_%d", h.at.Port()) }

// knows tells whether a word is the secret, and takes as long whichever it is.
func (h *Phone) knows(word string) bool {
	return subtle.ConstantTimeCompare([]byte(word), []byte(h.secret)) == 1
}

func (h *Phone) show(w http.ResponseWriter, _ *http.Request) {
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, _ = w.Write(h.view) // who is gone does not miss it
}

// turnAway refuses a request in words for who asked, and ends the connection: the page's own
// script, or a person who opened an address.
func turnAway(w http.ResponseWriter, r *http.Request, f *failure) {
	w.Header().Set("Connection", "close")
	if strings.HasPrefix(r.URL.Path, "/api/") {
		fail(w, f)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(f.status)
	words := html.EscapeString(strings.ToUpper(f.words[:1]) + f.words[1:])
	_, _ = io.WriteString(w, `<!doctype html><html lang="en-GB"><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">`+
		`<meta name="color-scheme" content="light dark"><title>Pappus</title><h1>Not this way</h1><p>`+words+".</p></html>\n")
}

// phoneAsked asks for what there is one of.
type phoneAsked struct{}

// bench answers with what is soldered of the design as it is saved. It takes no text: a phone
// has nothing planned.
func (h *Phone) bench(_ http.ResponseWriter, r *http.Request, _ phoneAsked) (any, error) {
	made, err := h.saved(r)
	if err != nil {
		return nil, err
	}
	return benchAnswer{made.array.Name, document.OfBench(made.plan)}, nil
}

// tick notes a step of a string that the design has.
func (h *Phone) tick(w http.ResponseWriter, r *http.Request, in ticking) (any, error) {
	made, err := h.saved(r)
	if err != nil {
		return nil, err
	}
	if !hasString(document.OfBench(made.plan), in.Drivers) {
		return nil, &failure{http.StatusConflict, "the design has no such string now; load this page anew"}
	}
	return h.page.tick(w, r, in)
}

// saved is the plan of the design as it is saved.
func (h *Phone) saved(r *http.Request) (*planned, error) {
	text, err := h.page.disk.now()
	if err != nil {
		return nil, err
	}
	made, err := h.page.plans.of(r.Context(), string(text), h.page.work)
	if err != nil {
		return nil, err
	}
	return made, made.built()
}

// phoneAnswer is how a phone comes to the view for the bench.
type phoneAnswer struct {
	OnPhone bool   `json:"on_phone"`           // this is the phone: it has the saved design's bench, and nothing else of the page
	Address string `json:"address"`            // what to open on the phone; empty: there is no way in for one
	Code    code   `json:"code" ts:"string[]"` // the address for its camera
}

// phoneLink tells the page on the computer how a phone comes to its bench.
func (p *Page) phoneLink(w http.ResponseWriter, _ *http.Request) { reply(w, p.phone) }
