package page

import (
	"io/fs"
	"net/http"
	"net/netip"

	"pappus/render/document"
)

// mostOfPhone is the most that a request of a phone may hold, in bytes: a tick of a string of
// mostTicked drivers, whose numbers have at most five digits and a comma, and room for the rest.
const mostOfPhone = 6*mostTicked + 4<<10

// Phone is the way in for a phone in the same network: the view for the bench and the wiring book, of
// the design as it is saved, its ticks, and nothing else of the page; it is an http.Handler. Only who knows
// the secret in its address is let in.
//
// The secret goes over the network as it is: who listens there can have it.
type Phone struct {
	page    *Page
	at      netip.AddrPort
	lock    lock
	view    []byte // what is at /bench
	pages   []byte // what is at /book
	handler http.Handler
}

// Phone opens the way in for a phone that comes to an address of this machine.
func (p *Page) Phone(at netip.AddrPort) (*Phone, error) {
	files, err := fs.Sub(built, "built")
	if err != nil {
		return nil, err
	}
	h := &Phone{page: p, at: at, lock: newLock("/bench",
		"the program was started anew, or this phone was not here yet: open the address that it gives now, or point the camera at its code")}
	if h.view, err = fs.ReadFile(files, "bench.html"); err != nil {
		return nil, err
	}
	if h.pages, err = fs.ReadFile(files, "book.html"); err != nil {
		return nil, err
	}
	link := phoneAnswer{Address: h.Address()}
	if link.Code, err = codeOf(link.Address); err != nil {
		return nil, err
	}
	p.phone = link
	mux, asking := http.NewServeMux(), whole(mostOfPhone, "too large for a tick", atMost(mostRequests, manyRequests))
	for _, path := range []string{"GET /{$}", "GET /bench"} {
		mux.HandleFunc(path, show(h.view))
	}
	mux.HandleFunc("GET /book", show(h.pages))
	for _, name := range []string{"bench.css", "bench.js", "book.css", "book.js"} {
		mux.HandleFunc("GET /"+name, func(w http.ResponseWriter, r *http.Request) { http.ServeFileFS(w, r, files, name) })
	}
	mux.Handle("GET /api/phone", asking(func(w http.ResponseWriter, _ *http.Request) { reply(w, phoneAnswer{OnPhone: true, Code: []string{}}) }))
	mux.Handle("POST /api/bench", asking(answer(h.bench)))
	mux.Handle("POST /api/book", asking(answer(h.book)))
	mux.Handle("POST /api/ticks", asking(answer(p.readTicks)))
	mux.Handle("POST /api/tick", asking(answer(h.tick)))
	way := door{h.own, "this is not the address that the program gave", h.lock}
	h.handler = way.guard(mux)
	return h, nil
}

// Address is what to open on the phone, with the secret.
func (h *Phone) Address() string { return h.lock.address(h.at) }

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

// show answers with a view.
func show(view []byte) http.HandlerFunc {
	return func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		_, _ = w.Write(view) // who is gone does not miss it
	}
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
	text, err := h.page.disk.read()
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
	OnPhone bool   `json:"on_phone"`           // this is the phone: it has the saved design's bench and wiring book, and nothing else of the page
	Address string `json:"address"`            // what to open on the phone; empty: there is no way in for one
	Code    code   `json:"code" ts:"string[]"` // the address for its camera
}

// phoneLink tells the page on the computer how a phone comes to its bench.
func (p *Page) phoneLink(w http.ResponseWriter, _ *http.Request) { reply(w, p.phone) }
