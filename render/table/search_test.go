package table_test

import (
	"bytes"
	"encoding/csv"
	"math"
	"strings"
	"testing"

	"pappus/layout/design"
	"pappus/render/table"
	"pappus/timing/search"
)

// searched is a search that offers two designs of three on the front.
func searched() *search.Result {
	d := design.Default()
	d.Search.Drivers, d.Search.Channels = 120, 6
	figures := search.Figures{Drivers: 31, Channels: 6, Loss: 1.2346, Level: 96.49, Onset: math.Inf(1), Evenness: 4.4, Lowest: 267.4, Price: math.NaN(), Mass: math.NaN(),
		Plastic: 0.6123, Hours: 33.2, Litres: 2.345, Width: 0.21, Height: 0.175, Depth: 0.208, Pieces: 3}
	set := []search.Setting{{Key: "mounts.count", Value: 48}, {Key: "body.shape", Value: "ball"}, {Key: "mounts.skip"}}
	one := search.Point{Name: "ball of 105 mm, 31 drivers on 6 channels", Figures: figures, Full: true, Front: true, Found: 1, Set: set, Variant: 7}
	two, third, last := one, one, one
	two.Found, two.Variant = 2, -1
	third.Found = 0
	last.Found, last.Front, last.Full, last.Evenness = 0, false, false, math.NaN()
	return &search.Result{Job: search.Job{Design: d}, Aims: []search.Aim{search.Loss, search.Level, search.Cost}, Space: 4180, Screened: 4180, Fit: 2911, Full: 80, Stopped: true,
		Found: []search.Found{{Point: one, Why: []search.Reason{{Code: search.Loudest}}}, {Point: two, Why: []search.Reason{{Code: search.Quickest, Among: search.OnePiece}}}},
		Tried: []search.Point{one, two, third, last},
		Short: []search.Shortfall{{Key: "search.width_mm", Asked: 250, Broken: 812}, {Key: "search.level_db", Asked: 120, Nearest: 112, None: true}},
		Start: &search.Start{OnFront: true}}
}

func rows(t *testing.T, b *bytes.Buffer) [][]string {
	t.Helper()
	out, err := csv.NewReader(b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func TestSearchTables(t *testing.T) {
	var b bytes.Buffer
	if err := table.SearchFront(&b, searched()); err != nil {
		t.Fatal(err)
	}
	front := rows(t, &b)
	if len(front) != 4 || front[1][0] != "1" || front[3][0] != "" {
		t.Errorf("%q", front)
	}
	if got, want := strings.Join(front[2], ","), "2,31,6,1.235,96.490,,4.400,267.4,,0.612,,33.20,2.3450,210.0,175.0,208.0,3,2_quickest_in_one_piece.toml,ball of 105 mm, 31 drivers on 6 channels,The quickest that prints in one piece,mounts.count = 48; body.shape = \"ball\""; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	b.Reset()
	if err := table.SearchTried(&b, searched()); err != nil {
		t.Fatal(err)
	}
	tried := rows(t, &b)
	for i, want := range []string{"variant,stage,at_random,front,number", "7,full,false,true,1", ",polished,false,true,2", "7,full,false,true,", "7,screened,false,false,"} {
		if got := strings.Join(tried[i][:5], ","); got != want {
			t.Errorf("row %d: %s, want %s", i, got, want)
		}
	}
}

func TestSearchScreen(t *testing.T) {
	var b bytes.Buffer
	if err := table.SearchScreen(&b, searched(), false); err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(b.String()) {
		if n := len(strings.TrimSuffix(line, "\n")); n > 80 {
			t.Errorf("%d letters: %s", n, line)
		}
	}
	for _, want := range []string{"what to build from 120 drivers and 6 channels", "Look out: stopped before all was done", "The loudest.", "812 designs: width_mm = 250",
		"No design of 40 mm flanges is as loud as 120 dB: 112 dB is the most", "on the front itself", " 1       31  1.23    96.5    4.4   267  33.2    2.3      3"} {
		if !strings.Contains(strings.ReplaceAll(b.String(), "\n", " "), want) {
			t.Errorf("no %q in\n%s", want, b.String())
		}
	}
}
