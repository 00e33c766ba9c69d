package page

import (
	"encoding/json"
	"fmt"
	"net/http"
	"strings"
	"testing"

	"pappus/layout/design"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
)

// TestEditMends: another shape is no dead end, and what was mended is said.
func TestEditMends(t *testing.T) {
	p, _ := newPage(t, small)
	demo := string(design.DefaultTOML())
	out := ask[edited](t, p, "/api/edit", object{"text": demo, "set": []object{{"key": "body.shape", "value": "dodecahedron"}}})
	want := []string{
		`base = "icosahedron" and subdivision = 2 were taken out: only for body.shape = "geodesic"`,
		"skip = [33] was taken out: a dodecahedron, cut as this one is, has 6 places",
	}
	if diff := cmp.Diff(want, out.Mended); diff != "" {
		t.Error(diff)
	}
	plan := ask[planAnswer](t, p, "/api/plan", asked{out.Text})
	if len(plan.Drivers) != 6 {
		t.Errorf("%d drivers", len(plan.Drivers))
	}
}

// TestPlanCures: with the faults of a design comes a text that can be planned.
func TestPlanCures(t *testing.T) {
	p, _ := newPage(t, small)
	broken := strings.Replace(string(design.DefaultTOML()), "radius_mm = 150", "radius_mm = 5", 1)
	w := do(p, request("/api/plan", `{"text":`+quoted(broken)+`}`))
	var out struct {
		Faults []fault
		Cure   *edited
	}
	if err := json.Unmarshal(w.Body.Bytes(), &out); err != nil || w.Code != http.StatusUnprocessableEntity || len(out.Faults) != 1 || out.Cure == nil {
		t.Fatalf("%d %v: %s", w.Code, err, w.Body)
	}
	if len(out.Cure.Mended) != 1 || !strings.HasPrefix(out.Cure.Mended[0], "radius_mm becomes 101: ") {
		t.Errorf("cure %q", out.Cure.Mended)
	}
	ask[planAnswer](t, p, "/api/plan", asked{out.Cure.Text})
	w = do(p, request("/api/plan", `{"text":`+quoted(large())+`}`))
	if err := json.Unmarshal(w.Body.Bytes(), &out); err != nil || out.Cure == nil || !strings.HasPrefix(strings.Join(out.Cure.Mended, ""), "order becomes 2 in place of 10: ") {
		t.Errorf("of too many ways it says %d %v: %s", w.Code, err, w.Body)
	}
	if w := do(p, request("/api/plan", `{"text":"[body"}`)); w.Code != http.StatusUnprocessableEntity || strings.Contains(w.Body.String(), `"cure"`) {
		t.Errorf("of no TOML it has a cure: %s", w.Body)
	}
}

// TestEveryShapeIsPlanned: from the starter, every shape of the list can be planned, or
// one press makes it so.
func TestEveryShapeIsPlanned(t *testing.T) {
	p, _ := newPage(t, small)
	for _, k := range design.Keys() {
		if k.Path != "body.shape" && k.Path != "mounts.on" {
			continue
		}
		for _, shape := range k.Choices {
			t.Run(shape, func(t *testing.T) {
				out := ask[edited](t, p, "/api/edit", object{"text": string(design.DefaultTOML()), "set": []object{{"key": k.Path, "value": shape}}})
				_, err := p.plans.of(t.Context(), out.Text, p.work)
				if err == nil {
					return
				}
				found, ok := p.cured(err, out.Text).(*faulty)
				if !ok || found.Cure == nil {
					t.Fatalf("%v without a cure", err)
				}
				if _, err := p.plans.of(t.Context(), found.Cure.Text, p.work); err != nil {
					t.Errorf("cured by %q: %v", found.Cure.Mended, err)
				}
			})
		}
	}
}

// TestPlanSaysWhere: along the floor and up, for the plan and for a move; strings with
// their loads; and what to look out for.
func TestPlanSaysWhere(t *testing.T) {
	p, _ := newPage(t, small)
	out := ask[planAnswer](t, p, "/api/plan", asked{small + "[wiring]\nchannels = 2\n"})
	if out.Place.Along != 2 || out.Place.Tape != "2.00 m in front along the floor, ears 1.00 m above its middle" {
		t.Errorf("the place is %+v", out.Place)
	}
	banks := out.Wiring
	if len(banks) != 2 {
		t.Fatalf("%+v", banks)
	}
	n := 0
	for _, b := range banks {
		for _, s := range b.Strings {
			n += len(s.Drivers)
		}
		if !(b.DC > 0) {
			t.Errorf("a load of %g ohm", b.DC)
		}
	}
	if n != 6 {
		t.Errorf("%d drivers in strings", n)
	}
	loud := ask[planAnswer](t, p, "/api/plan", asked{small + "[wiring]\namplifier_volt = 20\n"})
	if len(loud.Findings) == 0 || loud.Findings[0].Rank != "danger" || !loud.Findings[0].Stops || loud.Findings[0].Lead != "Danger" || loud.Findings[0].Cure == "" {
		t.Errorf("of drivers that get too much it says %+v", loud.Findings)
	}
	s := &session{plans: p.plans}
	moved, at := s.answer(move{ID: out.ID, Spot: triple{1.56, 0, 2.32}})
	if at == nil || moved.Place == nil || moved.Place.Short != "1.56 m away along the floor, straight in front" {
		t.Errorf("%+v", moved.Place)
	}
	if moved, at = s.answer(move{ID: out.ID}); at != nil || moved.Fault == "" || moved.Place == nil {
		t.Errorf("%+v", moved)
	}
}

// TestWalksGoWhereTheySay: to the left is to the left hand of who sits there, which is
// the loudspeaker's right.
func TestWalksGoWhereTheySay(t *testing.T) {
	p, _ := newPage(t, small)
	for way, want := range map[string]triple{"left": {2, -0.5, 1}, "right": {2, 0.5, 1}, "near": {1, 0, 1}} {
		out := ask[walkAnswer](t, p, "/api/walk", walkAsked{Text: small, From: triple{2, 0, 1}, Way: way})
		if r3.Norm(r3.Sub(vector(out.To), vector(want))) > 1e-12 || out.Pace != 1.2 {
			t.Errorf("%s: %+v, want %v", way, out, want)
		}
	}
	for name, c := range map[string]struct {
		body   string
		status int
		want   string
	}{
		"a way that there is not": {`"from_m":[2,0,1],"way":"up"`, 400, "not known"},
		"to a place":              {`"from_m":[2,0,1],"to_m":[2,1,1]`, 200, `"to_m":[2,1,1]`},
		"round it":                {`"from_m":[2,0,1],"way":"round"`, 200, `"to_m":[-2,`},
		"through the body":        {`"from_m":[2,0,0],"way":"round"`, 400, "inside the body"},
		"to far away":             {`"from_m":[2,0,1],"to_m":[300,1,1]`, 400, "within 100 m"},
	} {
		if w := do(p, request("/api/walk", `{"text":`+quoted(small)+`,`+c.body+`}`)); w.Code != c.status || !strings.Contains(w.Body.String(), c.want) {
			t.Errorf("%s: %d %s", name, w.Code, w.Body)
		}
	}
}

// TestSentencesSayThingsOnce: what heads the page, or stands beside the delays and below
// the strings, is not told again; what no other place has is.
func TestSentencesSayThingsOnce(t *testing.T) {
	p, _ := newPage(t, small)
	for _, c := range []struct{ name, text string }{{"demo", string(design.DefaultTOML())}, {"small", small}} {
		t.Run(c.name, func(t *testing.T) {
			out := ask[object](t, p, "/api/plan", asked{c.text})
			found := fmt.Sprint(out["sentences"])
			for _, once := range []string{"begin to cancel", "best splits", "in every delay", "dB per octave", "High-pass to set", "sends an echo"} {
				if strings.Contains(found, once) {
					t.Errorf("%q is among %s", once, found)
				}
			}
			isLoud := strings.Contains(fmt.Sprint(out["findings"]), "ink noise of")
			if (strings.Contains(found, "Pink noise at") || strings.Contains(found, "How loud it gets")) == isLoud {
				t.Errorf("of noise, which is among the findings: %t, it says %s", isLoud, found)
			}
			if hasFloor := out["floor_m"] != nil; strings.Contains(found, "Against the echo of the surface below: with the body 100 mm higher") != hasFloor {
				t.Errorf("of the echo, with a floor: %t, it says %s", hasFloor, found)
			}
			if rule := out["front_rule"].(string); (rule != "") != (len(out["plan"].(object)["front"].([]any)) > 0) {
				t.Errorf("the rule is %q", rule)
			}
		})
	}
}

// TestFewerWalls: a page follows the sound of so many drivers over as many walls as make up
// to 70,000 ways: 25 of each driver over two walls, 63 over three.
func TestFewerWalls(t *testing.T) {
	for _, c := range []struct{ drivers, order, want int }{{2000, 10, 2}, {1200, 3, 2}, {1000, 3, 3}} {
		text := strings.NewReplacer("count = 2000", fmt.Sprintf("count = %d", c.drivers), "order = 10", fmt.Sprintf("order = %d", c.order),
			"radius_mm = 100", "radius_mm = 300").Replace(large())
		out, ok := fewerWalls("a.toml", text)
		if isLess := c.want < c.order; ok != isLess || isLess && !strings.Contains(string(out.Text), fmt.Sprintf("order = %d\n", c.want)) {
			t.Errorf("%d drivers over %d walls: %t, %q; want %d", c.drivers, c.order, ok, out.Mended, c.want)
		}
	}
}

// TestManyChanges: two hundred keys can be set at once, and no more.
func TestManyChanges(t *testing.T) {
	p, _ := newPage(t, small)
	for n, want := range map[int]int{200: http.StatusOK, 201: http.StatusBadRequest} {
		set := strings.TrimSuffix(strings.Repeat(`{"key":"name","value":"a"},`, n), ",")
		if w := do(p, request("/api/edit", `{"text":"","set":[`+set+`]}`)); w.Code != want {
			t.Errorf("%d changes: %d %.80s", n, w.Code, w.Body)
		}
	}
}
