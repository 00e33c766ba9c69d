package document_test

import (
	"bytes"
	"encoding/json"
	"io"
	"math"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/render/document"
	"pappus/timing"
	"pappus/timing/seats"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"gonum.org/v1/gonum/spatial/r3"
)

func demo(t testing.TB) (*timing.Plan, *timing.Survey) {
	t.Helper()
	a, err := layout.Build(design.Default())
	if err != nil {
		t.Fatal(err)
	}
	a.Coverage.Cells = 8
	p, err := timing.Make(t.Context(), a)
	if err != nil {
		t.Fatal(err)
	}
	s, err := timing.Look(p)
	if err != nil {
		t.Fatal(err)
	}
	return p, s
}

// TestKeys holds the keys that other programs rely on.
func TestKeys(t *testing.T) {
	p, s := demo(t)
	var b bytes.Buffer
	if err := document.Write(&b, document.OfPlan(p, s)); err != nil {
		t.Fatal(err)
	}
	var doc map[string]any
	if err := json.Unmarshal(b.Bytes(), &doc); err != nil {
		t.Fatal(err)
	}
	first := func(list any) map[string]any { return list.([]any)[0].(map[string]any) }
	phase := doc["phase"].(map[string]any)
	measures := doc["measures"].(map[string]any)
	for _, test := range []struct {
		name string
		in   map[string]any
		keys string
	}{
		{"top", doc, "name air spot drivers channels response measures warnings choices octaves level_unit amplifier front"},
		{"amplifier", doc["amplifier"].(map[string]any), "volt given watt into_ohm minimum_ohm"},
		{"front", first(doc["front"]), "longest_string smear_us comb_onset_hz louder_db driver_v limited_by least_ohm most_drivers in_step rule chosen"},
		{"air", doc["air"].(map[string]any), "speed_of_sound_m_s temperature_c humidity_percent pressure_kpa"},
		{"spot", doc["spot"].(map[string]any), "x_m y_m z_m"},
		{"driver", first(doc["drivers"]), "id x_mm y_mm z_mm normal channel path_m arrival_us straight_path_m delay_us level_db seen"},
		{"channel", first(doc["channels"]), "id drivers delay_us exact_us series parallel nominal_ohm dc_ohm"},
		{"response", doc["response"].(map[string]any), "frequency_hz aligned_db unaligned_db in_step_db"},
		{"phase", phase, "frequency_hz aligned unaligned in_step"},
		{"aligned phase", phase["aligned"].(map[string]any), "first_us phase_deg group_delay_ms"},
		{"aligned", measures["aligned"].(map[string]any), "smear_us spread_us comb_onset_hz"},
		{"unaligned", measures["unaligned"].(map[string]any), "smear_us spread_us comb_onset_hz"},
		{"echo", first(doc["echoes"]), "by extra_mm late_us dip_hz depth_db at_m dip_100_mm_nearer_hz dip_100_mm_further_hz"},
		{"octave", first(doc["octaves"]), "octave_hz omni_as_built_deviation_db omni_as_built_pass omni_deviation_db omni_pass spatial_as_built_db spatial_db"},
		{"spatial", doc["spatial"].(map[string]any), "third_hz as_built_third_db third_db as_built_mean_db mean_db"},
	} {
		for _, key := range strings.Fields(test.keys) {
			if _, ok := test.in[key]; !ok {
				t.Errorf("%s: no key %s", test.name, key)
			}
		}
	}
	if doc["warnings"] == nil {
		t.Error("warnings is null, want a list")
	}
}

// TestNumbers compares some numbers with the plan's, in the units of the keys.
func TestNumbers(t *testing.T) {
	p, s := demo(t)
	var b bytes.Buffer
	if err := document.Write(&b, document.OfPlan(p, s)); err != nil {
		t.Fatal(err)
	}
	var doc struct {
		Drivers []struct {
			ID       int
			X        float64 `json:"x_mm"`
			Delay    float64 `json:"delay_us"`
			Arrival  float64 `json:"arrival_us"`
			Path     float64 `json:"path_m"`
			Straight float64 `json:"straight_path_m"`
		}
	}
	if err := json.Unmarshal(b.Bytes(), &doc); err != nil {
		t.Fatal(err)
	}
	if len(doc.Drivers) != len(p.Arrivals) {
		t.Fatalf("%d drivers, want %d", len(doc.Drivers), len(p.Arrivals))
	}
	for i, d := range doc.Drivers {
		r, m := p.Arrivals[i], p.Array.Mounts[i]
		if d.ID != m.ID || math.Abs(d.X-1000*m.Point.X) > 1e-3 || math.Abs(d.Delay-1e6*r.Delay) > 1e-3 ||
			math.Abs(d.Arrival-1e6*r.Path/p.SpeedOfSound) > 1e-3 || math.Abs(d.Path-r.Path) > 1e-6 || math.Abs(d.Straight-r.Straight) > 1e-6 {
			t.Errorf("driver %d: %+v", m.ID, d)
		}
	}
}

func TestNoNumberIsNull(t *testing.T) {
	p, s := demo(t)
	p.Aligned.CombOnset = math.Inf(1)
	p.Arrivals[0].Level = math.Inf(-1)
	var b bytes.Buffer
	if err := document.Write(&b, document.OfPlan(p, s)); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"comb_onset_hz": null`, `"level_db": null`} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %s", want)
		}
	}
}

func TestChannelsAndWiring(t *testing.T) {
	made, _ := demo(t)
	a := *made.Array
	a.Timing.DelaysBy, a.Wiring.LongestString = "path", 5 // which holds channels down
	p, err := timing.Make(t.Context(), &a)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := timing.Processor(p, nil)
	if err != nil {
		t.Fatal(err)
	}
	deaths, err := timing.Dead(p)
	if err != nil {
		t.Fatal(err)
	}
	type strung struct {
		Longest int     `json:"longest_string"`
		Smear   float64 `json:"smear_us"`
		Louder  float64 `json:"louder_db"`
		Limit   string  `json:"limited_by"`
		Rule    bool
		Chosen  bool
	}
	var channels struct {
		Front     []strung
		Processor []struct {
			Delay float64 `json:"delay_ms"`
			Exact float64 `json:"exact_us"`
		}
		Held struct {
			Series int
			By     float64 `json:"by_db"`
			Cure   struct {
				Longest int `json:"longest_string"`
			}
		} `json:"held_down"`
		Rounding struct {
			Common float64    `json:"common_us"`
			Worst  float64    `json:"worst_us"`
			Loss   []*float64 `json:"loss_db"`
		}
	}
	var wiring struct {
		Channels []struct {
			Strings []struct{ Drivers []int }
		}
		Front []strung
		Held  map[string]any `json:"held_down"`
		Dead  []any
	}
	var b bytes.Buffer
	if err := writeChannels(&b, p, rows); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(b.Bytes(), &channels); err != nil {
		t.Fatal(err)
	}
	b.Reset()
	if err := document.Write(&b, document.OfWiring(p, deaths)); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(b.Bytes(), &wiring); err != nil {
		t.Fatal(err)
	}
	seen := 0
	for i, c := range wiring.Channels {
		for _, s := range c.Strings {
			seen += len(s.Drivers)
		}
		if got, want := channels.Processor[i], p.Channels[i]; math.Abs(got.Delay-1000*want.Delay) > 2e-6 || math.Abs(got.Exact-1e6*want.Exact) > 1e-3 {
			t.Errorf("channel %d: %+v", i+1, got)
		}
	}
	h, held := p.Held()
	if got := channels.Held; !held || got.Series != h.Series || got.Cure.Longest != h.Cure || math.Abs(got.By-h.By) > 1e-3 || wiring.Held == nil {
		t.Errorf("held down %+v, %v; want %+v", got, wiring.Held, h)
	}
	var front []strung
	for _, f := range p.Front {
		front = append(front, strung{f.Longest, math.Round(1e9*f.Smear) / 1000, math.Round(1000*f.Louder) / 1000, f.Limit(), f.Rule, f.Chosen})
	}
	for _, got := range [][]strung{channels.Front, wiring.Front} {
		if diff := cmp.Diff(front, got, cmpopts.EquateApprox(0, 1e-6)); diff != "" || len(front) < 2 {
			t.Error(diff)
		}
	}
	cost := p.Rounding
	if r := channels.Rounding; math.Abs(r.Common-1e6*cost.Common) > 1e-3 || math.Abs(r.Worst-1e6*cost.Worst) > 1e-3 || len(r.Loss) != len(cost.Loss) {
		t.Errorf("rounding %+v, want %+v", r, cost)
	}
	if seen != len(p.Arrivals) || len(wiring.Dead) != len(deaths) {
		t.Errorf("%d drivers strung, %d dead; want %d and %d", seen, len(wiring.Dead), len(p.Arrivals), len(deaths))
	}
}

// TestPlanHasLoads: the load and powers of every channel and the protection are in the
// plan, as the wiring and the channels have them.
func TestPlanHasLoads(t *testing.T) {
	p, s := demo(t)
	var b bytes.Buffer
	if err := document.Write(&b, document.OfPlan(p, s)); err != nil {
		t.Fatal(err)
	}
	var got struct {
		Channels []struct {
			Lowest float64 `json:"lowest_ohm"`
			At     float64 `json:"lowest_hz"`
			Volt   float64 `json:"amplifier_v"`
			Ampere float64 `json:"amplifier_a"`
			Watt   float64 `json:"amplifier_w"`
			Each   float64 `json:"driver_w"`
			Coil   float64 `json:"driver_a"`
		}
		Protection struct {
			Family  string
			Corner  float64 `json:"corner_hz"`
			Highest []any
		}
	}
	if err := json.Unmarshal(b.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	for i, c := range p.Channels {
		g, k := got.Channels[i], p.Banks[i]
		for name, v := range map[string][2]float64{"lowest": {g.Lowest, k.LowestOhm}, "V": {g.Volt, k.Volt}, "A": {g.Ampere, k.Ampere},
			"W": {g.Watt, k.Watt}, "W each": {g.Each, k.DriverWatt}, "A each": {g.Coil, k.DriverAmpere}} {
			if math.Abs(v[0]-v[1]) > 1e-3 || v[0] == 0 {
				t.Errorf("channel %d, %s: %g, want %g", c.ID, name, v[0], v[1])
			}
		}
		// Kirchhoff: the strings' currents add up to the amplifier's.
		if sum := float64(c.Parallel) * g.Coil; math.Abs(sum-g.Ampere) > 1e-4 {
			t.Errorf("channel %d: strings take %g A of %g", c.ID, sum, g.Ampere)
		}
	}
	if g := got.Protection; g.Family != p.Protection.Family || math.Abs(g.Corner-p.Protection.Corner) > 0.01 || len(g.Highest) != len(p.Maximum.Levels) {
		t.Errorf("protection %+v", g)
	}
}

func BenchmarkWrite(b *testing.B) {
	p, s := demo(b)
	b.ReportAllocs()
	for b.Loop() {
		if err := document.Write(&bytes.Buffer{}, document.OfPlan(p, s)); err != nil {
			b.Fatal(err)
		}
	}
}

func writeChannels(w io.Writer, p *timing.Plan, rows []timing.ProcessorRow) error {
	channels, err := document.OfChannels(p, rows)
	if err != nil {
		return err
	}
	return document.Write(w, channels)
}

// TestSeats: the keys of seats and their figures, and none where there is one spot.
func TestSeats(t *testing.T) {
	p, s := demo(t)
	read := func() map[string]any {
		var b bytes.Buffer
		if err := document.Write(&b, document.OfPlan(p, s)); err != nil {
			t.Fatal(err)
		}
		var doc map[string]any
		if err := json.Unmarshal(b.Bytes(), &doc); err != nil {
			t.Fatal(err)
		}
		return doc
	}
	if _, there := read()["seats"]; there {
		t.Error("seats are told where there is one spot")
	}
	p.Array.Seats = []layout.Seat{{Name: "door", At: r3.Vec{X: 1.5, Y: -1, Z: 0.25}, Weight: 2}, {Name: "window", At: r3.Vec{X: 1.5, Y: 1, Z: 0.25}, Weight: 1}}
	of := func(worst float64) seats.Figures {
		return seats.Figures{Worst: worst, Mean: worst + 1, Between: 0.5, Seat: []float64{worst - 1, worst}, Band: [][]float64{{worst + 2}, {worst + 3}}}
	}
	p.Seating = &timing.Seating{Aim: "even", Thirds: []float64{1000}, MiddleSeat: 1, Planned: of(7), Middle: of(11), Without: of(10), Bound: of(4), Counts: []timing.SeatCount{{Channels: 4, Longest: 5, Figures: of(7.5)}}, Strings: []timing.SeatStrings{{Longest: 2, Value: 8, Figures: of(7), Louder: 10, Chosen: true}}}
	lost := func(worst float64) map[string]any {
		return map[string]any{"worst_db": worst, "mean_db": worst + 1, "between_db": 0.5}
	}
	seat := func(number float64, name, side string, y, weight, off float64) map[string]any {
		third := func(worst float64) []any { return []any{worst + 1 + number} }
		return map[string]any{"number": number, "name": name, "x_m": 1.5, "y_m": y, "z_m": 0.25, "weight": weight, "where": "1.50 m in front along the floor, 1.00 m to the loudspeaker's " + side + ", ears 0.28 m above the table or floor",
			"planned_db": 7 - off, "middle_alone_db": 11 - off, "without_db": 10 - off, "bound_db": 4 - off,
			"planned_thirds_db": third(7), "middle_alone_thirds_db": third(11), "without_thirds_db": third(10), "bound_thirds_db": third(4)}
	}
	p.Seating.Round = &timing.Round{Octaves: []float64{1000}, Height: []float64{0.3}, Radius: 2, Loud: 0.5, Planned: timing.Circles{Gain: [][]float64{{1.5}}, Deviation: [][]float64{{0.5}}},
		Without: timing.Circles{Gain: [][]float64{{0}}, Deviation: [][]float64{{0.25}}}, Front: []timing.RoundPoint{{Loud: 1, Gain: 2, Deviation: 3}}}
	circles := func(gain, off float64) map[string]any {
		return map[string]any{"gain_db": []any{[]any{gain}}, "deviation_db": []any{[]any{off}}}
	}
	count := lost(7.5)
	count["channels"], count["longest_string"] = 4.0, 5.0
	strung := lost(7)
	strung["longest_string"], strung["aim_db"], strung["louder_db"], strung["chosen"] = 2.0, 8.0, 10.0, true
	got := read()["seats"].(map[string]any)
	if words := got["words"].([]any); len(words) != 1 {
		t.Errorf("words %q", words)
	}
	delete(got, "words")
	want := map[string]any{"aim": "even", "head_mm": 150.0, "third_hz": []any{1000.0}, "middle_seat": "window",
		"planned": lost(7), "middle_alone": lost(11), "without": lost(10), "bound": lost(4),
		"each": []any{seat(1, "door", "right", -1, 2, 1), seat(2, "window", "left", 1, 1, 0)}, "counts": []any{count}, "strings": []any{strung},
		"round": map[string]any{"octave_hz": []any{1000.0}, "height_m": []any{0.3}, "radius_m": 2.0, "loud": 0.5, "planned": circles(1.5, 0.5), "without": circles(0, 0.25),
			"front": []any{map[string]any{"loud": 1.0, "gain_db": 2.0, "deviation_db": 3.0}}}}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}
