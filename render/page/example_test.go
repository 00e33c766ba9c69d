package page_test

import (
	"fmt"
	"net/http/httptest"
	"net/netip"
	"strings"

	"pappus/render/page"
)

// A page answers its own machine alone.
func Example() {
	p, err := page.New(page.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	w := httptest.NewRecorder()
	p.ServeHTTP(w, httptest.NewRequest("GET", p.Address(netip.MustParseAddrPort("127.0.0.1:8000")), nil))
	cookie := w.Result().Cookies()[0] // it has the secret of the address from then on
	for _, host := range []string{"127.0.0.1:8000", "library.example"} {
		r := httptest.NewRequest("POST", "http://"+host+"/api/edit", strings.NewReader(
			`{"text": "[body]\nradius_mm = 150 # to a corner\n", "set": [{"key": "body.radius_mm", "value": 160}]}`))
		r.Header.Set("Content-Type", "application/json")
		r.AddCookie(cookie)
		w := httptest.NewRecorder()
		p.ServeHTTP(w, r)
		fmt.Print(w.Code, " ", w.Body)
	}
	// Output:
	// 200 {"text":"[body]\nradius_mm = 160 # to a corner\n","mended":[]}
	// 403 {"error":"this page answers only to its own machine, as localhost"}
}
