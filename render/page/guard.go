package page

import (
	"net"
	"net/http"
	"net/netip"
	"strings"
)

// door is whom a handler lets in.
type door struct {
	own   func(host string) bool // whether a Host header names it
	words string                 // for those who come by another name
	lock  lock
}

// guard lets in only what comes by the door with its secret, and tells the browser to keep to itself.
func (d door) guard(next http.Handler) http.Handler {
	locked := d.lock.guard(next)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		protect(w.Header(), r.Host)
		switch {
		case !d.own(r.Host):
			turnAway(w, r, &failure{http.StatusForbidden, d.words})
		case !sameOrigin(r, d.lock.entry()):
			turnAway(w, r, &failure{http.StatusForbidden, "this page does not answer to another site"})
		default:
			locked.ServeHTTP(w, r)
		}
	})
}

// loopback tells whether a Host header names this machine. Names other than
// localhost are not looked up: a foreign name may be given any address.
func loopback(host string) bool {
	name := host
	if h, _, err := net.SplitHostPort(host); err == nil {
		name = h
	}
	if strings.EqualFold(name, "localhost") {
		return true
	}
	addr, err := netip.ParseAddr(strings.TrimSuffix(strings.TrimPrefix(name, "["), "]"))
	return err == nil && addr.IsLoopback()
}

// sameOrigin tells whether a request comes from the page itself or from no page at
// all. Browsers send Origin with every POST and WebSocket, and Sec-Fetch-Site with
// all else (Fetch Metadata, W3C).
func sameOrigin(r *http.Request, entry string) bool {
	for _, origin := range r.Header.Values("Origin") {
		if !strings.EqualFold(origin, "http://"+r.Host) {
			return false
		}
	}
	switch r.Header.Get("Sec-Fetch-Site") {
	case "", "same-origin", "none":
		return true
	}
	// A link from elsewhere may open the page, and nothing more.
	return r.Method == http.MethodGet && r.URL.Path == entry && r.Header.Get("Sec-Fetch-Mode") == "navigate"
}

// protect sets the headers that keep a page to itself.
func protect(h http.Header, host string) {
	connect := "'self'"
	if loopback(host) { // older browsers do not take a WebSocket for the page's own
		connect += " ws://" + host
	}
	h.Set("Content-Security-Policy", "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; "+
		"media-src 'self' blob:; font-src 'self'; connect-src "+connect+"; base-uri 'none'; form-action 'none'; frame-ancestors 'none'")
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("X-Frame-Options", "DENY")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
	h.Set("Permissions-Policy", "camera=(), geolocation=(), microphone=(), payment=(), usb=()")
	h.Set("Cache-Control", "no-store")
}
