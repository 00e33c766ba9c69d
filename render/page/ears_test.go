package page

import (
	"encoding/binary"
	"encoding/json"
	"math"
	"net/http"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// unpacked takes an answer apart.
func unpacked(t *testing.T, body []byte, head any) (samples []float32) {
	t.Helper()
	long := binary.LittleEndian.Uint32(body)
	if long%4 != 0 || json.Unmarshal(body[4:4+long], head) != nil {
		t.Fatalf("%d bytes of %q", long, body)
	}
	for rest := body[4+long:]; len(rest) > 0; rest = rest[4:] {
		samples = append(samples, math.Float32frombits(binary.LittleEndian.Uint32(rest)))
	}
	return samples
}

// TestEars are asked for at a place, which is that of the plan where nothing else is said; with
// several seats the plan is that of all.
func TestEars(t *testing.T) {
	p, _ := newPage(t, small)
	for _, c := range []struct {
		name, text, more string
		want             []float32 // planned for, and heard at
	}{
		{"at the spot", small, "", []float32{2, 2, 0, 1, 2}},
		{"moved", small, `,"spot_m":[3,-1,1]`, []float32{3, 3, -1, 1, 2}},
		{"walking", small, `,"spot_m":[3,-1,1],"at_m":[3,1,1]`, []float32{3, 3, 1, 1, 2}},
		{"at another seat", twoSeats, `,"spot_m":[3,-1,1]`, []float32{2, 3, -1, 1, 2}},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := do(p, request("/api/ears", `{"text":`+quoted(c.text)+`,"cases":["aligned"]`+c.more+`}`))
			var head earsHead
			if samples := unpacked(t, w.Body.Bytes(), &head); !cmp.Equal(samples, c.want) {
				t.Errorf("%v, want %v", samples, c.want)
			}
			want := earsHead{Rate: 48000, Filters: []int{3}, Stems: []stemHead{{1, 0, 3, 2}}, Cases: map[string][]Fed{"aligned": {{0, -2, 1.5}}}}
			if diff := cmp.Diff(want, head); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// TestEarsRefuse what cannot be heard.
func TestEarsRefuse(t *testing.T) {
	p, _ := newPage(t, small)
	for _, c := range []struct {
		name, path, body string
		status           int
		want             string
	}{
		{"in the body", "/api/ears", `"spot_m":[0,0,0]`, 422, "inside the body"},
		{"too far", "/api/ears", `"spot_m":[0,0,1e9]`, 400, "within 100 m"},
		{"ears too far", "/api/ears", `"at_m":[0,0,1e9]`, 400, "within 100 m"},
		{"case", "/api/ears", `"cases":["b"]`, 400, "not known"},
		{"programme", "/api/loudness", `"programme":"../x"`, 400, "not known"},
		{"too far to be loud", "/api/loudness", `"programme":"clicks","spot_m":[300,0,1]`, 400, "within 100 m"},
		{"as loud", "/api/loudness", `"programme":"clicks","spot_m":[3,0,1],"at_m":[4,0,1]`, 200, `{"gains":{"clicks":43}}`},
	} {
		w := do(p, request(c.path, `{"text":`+quoted(small)+`,`+c.body+`}`))
		if w.Code != c.status || !strings.Contains(w.Body.String(), c.want) {
			t.Errorf("%s: %d %s", c.name, w.Code, w.Body)
		}
	}
}

// TestProgrammeIsKept by the browser, which asks whether it is the same still.
func TestProgrammeIsKept(t *testing.T) {
	p, _ := newPage(t, small)
	ask := func(name, tag string) (int, string, []byte) {
		r := request("/api/programme?name="+name, "")
		r.Method = http.MethodGet
		r.Header.Set("If-None-Match", tag)
		w := do(p, r)
		return w.Code, w.Header().Get("ETag"), w.Body.Bytes()
	}
	code, tag, body := ask("clicks", "")
	var head programmeHead
	if samples := unpacked(t, body, &head); code != 200 || head.Samples != 3 || !cmp.Equal(samples, []float32{0.5, -0.5, 0.25}) {
		t.Errorf("%d: %+v, %v", code, head, samples)
	}
	if code, _, body := ask("clicks", tag); code != http.StatusNotModified || len(body) > 0 {
		t.Errorf("asked again: %d, %d bytes", code, len(body))
	}
	if code, _, _ := ask("x", tag); code != http.StatusBadRequest {
		t.Errorf("none of that name: %d", code)
	}
}
