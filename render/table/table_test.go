package table_test

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/render/table"
	"pappus/timing"
)

func demo(t testing.TB) *timing.Plan {
	t.Helper()
	a, err := layout.Build(design.Default())
	if err != nil {
		t.Fatal(err)
	}
	p, err := timing.Make(t.Context(), a)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// look surveys a plan coarsely.
func look(t testing.TB, p *timing.Plan) *timing.Survey {
	t.Helper()
	p.Array.Coverage.Cells = 8
	s, err := timing.Look(p)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestDelays(t *testing.T) {
	p := demo(t)
	var b bytes.Buffer
	if err := table.Delays(&b, p); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 1+len(p.Arrivals) {
		t.Fatalf("%d rows for %d drivers", len(rows), len(p.Arrivals))
	}
	for i, row := range rows[1:] {
		r := p.Arrivals[i]
		want := []string{fmt.Sprint(p.Array.Mounts[i].ID), fmt.Sprintf("%.5f", r.Path), fmt.Sprintf("%.2f", 1e6*r.Delay), fmt.Sprint(r.Seen)}
		if got := []string{row[0], row[5], row[11], row[14]}; fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("got %v, want %v", got, want)
		}
	}
	if strings.Contains(b.String(), "-0.00,") {
		t.Error("a zero is negative")
	}
}

func TestChannels(t *testing.T) {
	p := demo(t)
	var b bytes.Buffer
	if err := table.Channels(&b, p); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	drivers := 0
	for i, row := range rows[1:] {
		ids := strings.Fields(row[len(row)-1])
		if fmt.Sprint(len(ids)) != row[6] {
			t.Errorf("channel %d: %s drivers, %d named", i+1, row[6], len(ids))
		}
		drivers += len(ids)
	}
	if drivers != len(p.Arrivals) {
		t.Errorf("%d drivers in channels, want %d", drivers, len(p.Arrivals))
	}
}

func TestChoices(t *testing.T) {
	p := demo(t)
	var b bytes.Buffer
	if err := table.Choices(&b, p); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 5 || rows[0][4] != "short_1k_db" || rows[1][0] != "straight" || rows[1][4] != fmt.Sprintf("%.3f", p.Choices[0].Short[3]) {
		t.Errorf("got %v", rows)
	}
}

func TestOctaves(t *testing.T) {
	s := look(t, demo(t))
	var b bytes.Buffer
	if err := table.Octaves(&b, s); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 8 || rows[4][0] != "1000.0" || rows[4][1] != fmt.Sprintf("%.2f", s.Octaves[3].Directivity) || rows[7][5] != "" {
		t.Errorf("got %v", rows)
	}
}

func TestScreen(t *testing.T) {
	p := demo(t)
	s := look(t, p)
	var plain, coloured bytes.Buffer
	if err := table.Screen(&plain, p, s, false); err != nil {
		t.Fatal(err)
	}
	if err := table.Screen(&coloured, p, s, true); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(plain.String(), "\x1b") || !strings.Contains(coloured.String(), "\x1b") {
		t.Error("colour does not follow the flag")
	}
	for _, line := range strings.Split(plain.String(), "\n") {
		if utf8.RuneCountInString(line) > 80 {
			t.Errorf("a line of %d columns: %s", utf8.RuneCountInString(line), line)
		}
	}
	for _, want := range []string{p.Array.Name, fmt.Sprintf("%.1f", 1e6*p.Channels[0].Delay), "smear", "comb onset",
		"heard 1.80 m in front along the floor, 0.40 m to the loudspeaker's left, ears\n0.63 m above the table or floor\n"} {
		if !strings.Contains(plain.String(), want) {
			t.Errorf("does not say %q", want)
		}
	}
}

func TestScreenOfManyDrivers(t *testing.T) {
	p := demo(t)
	s := look(t, p)
	for len(p.Arrivals) < 2000 {
		p.Arrivals = append(p.Arrivals, p.Arrivals[0])
		p.Array.Mounts = append(p.Array.Mounts, p.Array.Mounts[0])
	}
	var b bytes.Buffer
	if err := table.Screen(&b, p, s, false); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(b.String(), "and 1940 more in delays.csv") || strings.Count(b.String(), "\n") > 105 {
		t.Errorf("not cut short:\n%s", b.String())
	}
}

// TestPathShorterThanStraight: a path that begins on the ball, inside a corner of the body,
// is told why it is shorter than the straight line.
func TestPathShorterThanStraight(t *testing.T) {
	p := *demo(t)
	s := look(t, &p)
	p.Arrivals = append([]timing.Arrival(nil), p.Arrivals...)
	for i := range p.Arrivals {
		p.Arrivals[i].Path = p.Arrivals[i].Straight
	}
	screen := func() string {
		var b bytes.Buffer
		if err := table.Screen(&b, &p, s, false); err != nil {
			t.Fatal(err)
		}
		return b.String()
	}
	if strings.Contains(screen(), "seem the shorter") {
		t.Error("no path is shorter")
	}
	p.Arrivals[3].Path -= 0.00045
	if strings.Contains(screen(), "seem the shorter") {
		t.Error("half a millimetre does not show, and is explained")
	}
	p.Arrivals[3].Path -= 0.0001
	if !strings.Contains(screen(), "seem the shorter") {
		t.Error("0.55 mm show, and are not explained")
	}
	p.Arrivals[3].Path -= 0.02
	if !strings.Contains(screen(), "begin on the ball that stands for the body") {
		t.Error("a path 20 mm shorter than the straight line is not explained")
	}
}

// TestNoPlaceInStep: an area of 0.00 m2 is none.
func TestNoPlaceInStep(t *testing.T) {
	p := demo(t)
	s := look(t, p)
	s.InStep = 0
	var b bytes.Buffer
	if err := table.Screen(&b, p, s, false); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(b.String(), "0.00 m2") || !strings.Contains(b.String(), "no place at the spot keeps the smear under 100 us") {
		t.Errorf("says\n%s", b.String())
	}
}

func TestCompare(t *testing.T) {
	p := demo(t)
	var b bytes.Buffer
	err := table.Compare(&b, []timing.Candidate{{Plan: p, Unevenness: 2.34, Within3DB: 1.25, Spatial: timing.Spatial{AsBuilt: timing.Deviations{Mean: 1.26}, Aligned: timing.Deviations{Mean: math.Inf(1)}}}, {Plan: p}}, false)
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(b.String()), "\n")
	if len(lines) != 18 || !strings.Contains(lines[6], "none") || !strings.Contains(lines[2], "2.3") || !strings.Contains(lines[2], "1.25") ||
		!strings.HasSuffix(lines[10], "1.3                -") {
		t.Errorf("got\n%s", b.String())
	}
}

// TestPhase: a row for each frequency, empty where nothing is known.
func TestPhase(t *testing.T) {
	p := demo(t)
	p.Phase.Aligned.Angle[1] = math.NaN()
	var b bytes.Buffer
	if err := table.Phase(&b, p); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 1+len(p.Phase.Frequency) || rows[2][1] != "" {
		t.Fatalf("%d rows, the second %v", len(rows), rows[2])
	}
	want := []string{fmt.Sprintf("%.2f", p.Phase.Aligned.Angle[9]*180/math.Pi), fmt.Sprintf("%.4f", 1000*p.Phase.InStep.Group[9])}
	if got := []string{rows[10][1], rows[10][6]}; fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("got %v, want %v", got, want)
	}
}
