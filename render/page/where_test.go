package page

import (
	"strings"
	"testing"

	"pappus/layout/design"
)

// TestWhere: the chair's better place, the body's, and what cannot be asked.
func TestWhere(t *testing.T) {
	p, _ := newPage(t, small)
	about := func(text, what string) string { return `{"text":` + quoted(text) + `,"what":` + quoted(what) + `}` }
	for _, c := range []struct {
		name, body string
		status     int
		want       string
	}{
		{"chair", about(string(design.DefaultTOML()), "chair"), 200, `"key":"spot.x_m"`},
		{"body", about(string(design.DefaultTOML()), "body"), 200, `"key":"placing.yaw_deg"`},
		{"neither", about(string(design.DefaultTOML()), "table"), 400, "must be chair or body"},
		{"seats", about(string(design.SeatsTOML()), "chair"), 400, "places of their own"},
		{"no design", about("x", "chair"), 422, "faults"},
	} {
		if w := do(p, request("/api/where", c.body)); w.Code != c.status || !strings.Contains(w.Body.String(), c.want) {
			t.Errorf("%s: %d %s", c.name, w.Code, w.Body)
		}
	}
}
