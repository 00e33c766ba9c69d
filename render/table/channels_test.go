package table_test

import (
	"bytes"
	"encoding/csv"
	"io"
	"math"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"pappus/layout"
	"pappus/layout/body"
	"pappus/layout/impedance"
	"pappus/render/table"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/excursion"

	"github.com/google/go-cmp/cmp"
)

func TestChannelTables(t *testing.T) {
	p := demo(t)
	rows := settings(t, p)
	deaths, err := timing.Dead(p)
	if err != nil {
		t.Fatal(err)
	}
	for _, test := range []struct {
		name  string
		write func(io.Writer) error
		rows  int
	}{
		{"counts", func(w io.Writer) error { return table.Counts(w, p) }, 1 + len(p.Counts)},
		{"processor", func(w io.Writer) error { return table.Processor(w, rows, p.Array.Processor.Rate) }, 1 + 2*len(p.Channels)}, // two sections of the high-pass
		{"strings", func(w io.Writer) error { return table.Strings(w, p) }, 1 + len(timing.Harness(p))},
		{"deaths", func(w io.Writer) error { return table.Deaths(w, p, deaths) }, 1 + len(deaths)},
		{"arrangements", func(w io.Writer) error { return table.Arrangements(w, timing.Stringings(p)) }, ways(p)},
		{"highest", func(w io.Writer) error { return table.Highest(w, p) }, 1 + 7},
	} {
		t.Run(test.name, func(t *testing.T) {
			var b bytes.Buffer
			if err := test.write(&b); err != nil {
				t.Fatal(err)
			}
			got, err := csv.NewReader(&b).ReadAll()
			if err != nil || len(got) != test.rows {
				t.Errorf("%d rows, %v; want %d", len(got), err, test.rows)
			}
			if strings.Contains(b.String(), "NaN") || strings.Contains(b.String(), "Inf") {
				t.Error("a number is none")
			}
		})
	}
}

// settings returns what the processor is set to for a plan.
func settings(t *testing.T, p *timing.Plan) []timing.ProcessorRow {
	t.Helper()
	rows, err := timing.Processor(p, nil)
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

func TestProcessorWithFilters(t *testing.T) {
	a := demo(t).Array
	a.Protection.Corner, a.Protection.Order = 120, 4
	p, err := timing.Make(t.Context(), a)
	if err != nil {
		t.Fatal(err)
	}
	rows := settings(t, p)
	var b bytes.Buffer
	if err := table.Processor(&b, rows, p.Array.Processor.Rate); err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(b.String(), "high-pass"); n != 2*len(p.Channels) {
		t.Errorf("%d sections for %d channels, want two each", n, len(p.Channels))
	}
	if got := words.HighPass(p); !strings.Contains(got, "Butterworth high-pass of order 4 at 120 Hz") {
		t.Errorf("says %q", got)
	}
}

// TestHighestOnScreen: the figures of the CSV, each under its octave; without a
// sensitivity the causes alone.
func TestHighestOnScreen(t *testing.T) {
	p := *demo(t)
	p.Maximum.Levels = nil
	for i, by := range []excursion.Cause{excursion.ByExcursion, excursion.ByHeat, excursion.ByAmplifier} {
		p.Maximum.Levels = append(p.Maximum.Levels, timing.MaxLevel{Band: band.Octaves()[i], Level: 90.04 + float64(i), By: by})
	}
	rows := settings(t, &p)
	rowsOf := func() [][]string {
		var b bytes.Buffer
		if err := table.ChannelScreen(&b, &p, rows, false); err != nil {
			t.Fatal(err)
		}
		_, rest, found := strings.Cut(b.String(), "loudest tone")
		if !found {
			t.Fatalf("no table in\n%s", b.String())
		}
		var rows [][]string
		for _, line := range strings.Split(rest, "\n")[1:4] {
			rows = append(rows, strings.Fields(line))
		}
		return rows
	}
	want := [][]string{{"125", "250", "500"}, {"dB", "SPL", "90.0", "91.0", "92.0"}, {"limited", "by", "excursion", "heat", "amplifier"}}
	if d := cmp.Diff(want, rowsOf()); d != "" {
		t.Error(d)
	}
	a := *p.Array
	p.Array, a.Driver.Sensitivity = &a, math.NaN()
	if got := rowsOf(); !slices.Equal(got[1], want[2]) {
		t.Errorf("without a sensitivity %q", got)
	}
	p.Maximum.Levels = p.Maximum.Levels[1:2]
	if got := rowsOf(); strings.Join(got[1], " ") != "limited by heat throughout" {
		t.Errorf("of one cause %q", got)
	}
	p.Maximum.Levels[0].By = excursion.ByAmplifier
	if got := rowsOf(); strings.Join(got[1], " ") != "limited by "+words.Volt(&p)+" of the amplifier throughout" {
		t.Errorf("of the amplifier %q", got)
	}
}

func TestChannelScreens(t *testing.T) {
	p := demo(t)
	rows := settings(t, p)
	deaths, err := timing.Dead(p)
	if err != nil {
		t.Fatal(err)
	}
	for name, write := range map[string]func(io.Writer) error{
		"channels": func(w io.Writer) error { return table.ChannelScreen(w, p, rows, false) },
		"wiring":   func(w io.Writer) error { return table.WiringScreen(w, p, deaths, false) },
	} {
		var b bytes.Buffer
		if err := write(&b); err != nil {
			t.Fatal(err)
		}
		for _, line := range strings.Split(b.String(), "\n") {
			if utf8.RuneCountInString(line) > 100 || strings.Contains(line, "NaN") {
				t.Errorf("%s: %s", name, line)
			}
		}
	}
}

// TestWiringOfLoneDrivers: where each driver has a channel of its own, one line stands
// for all in place of three for each.
func TestWiringOfLoneDrivers(t *testing.T) {
	a := demo(t).Array
	a.Wiring.Channels = 0
	p, err := timing.Make(t.Context(), a)
	if err != nil {
		t.Fatal(err)
	}
	deaths, err := timing.Dead(p)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := table.WiringScreen(&b, p, deaths, false); err != nil {
		t.Fatal(err)
	}
	if err := table.ArrangementScreen(&b, p, timing.Stringings(p), false); err != nil {
		t.Fatal(err)
	}
	text := b.String()
	if n := strings.Count(text, "\n"); n > 20 {
		t.Errorf("%d lines", n)
	}
	for _, want := range []string{"Each of the 39 drivers has a channel of its own", "1 driver (channels 1 to 39)", " open ", " shorted "} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
}

// TestSilenceIsAll: a driver that silences all there is loses no number of decibels, and
// no line of the count table ends in a blank.
func TestSilenceIsAll(t *testing.T) {
	a := demo(t).Array
	a.Wiring.Channels, a.Mounts = 1, a.Mounts[:1]
	p, err := timing.Make(t.Context(), a)
	if err != nil {
		t.Fatal(err)
	}
	deaths, err := timing.Dead(p)
	if err != nil {
		t.Fatal(err)
	}
	rows := settings(t, p)
	var b bytes.Buffer
	if err := table.WiringScreen(&b, p, deaths, false); err != nil {
		t.Fatal(err)
	}
	if text := b.String(); strings.Contains(text, "200.0") || !strings.Contains(text, " all ") {
		t.Errorf("silence:\n%s", text)
	}
	b.Reset()
	if err := table.ChannelScreen(&b, p, rows, false); err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(b.String(), "\n") {
		if strings.HasSuffix(line, " ") {
			t.Errorf("a blank at the end of %q", line)
		}
	}
}

// TestDeathsOfAllHaveNoOthers: where a fault silences a whole channel there is no other
// driver of it whose power could be told.
func TestDeathsOfAllHaveNoOthers(t *testing.T) {
	p := demo(t)
	deaths, err := timing.Dead(p)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := table.WiringScreen(&b, p, deaths, false); err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, line := range strings.Split(b.String(), "\n") {
		if strings.HasPrefix(line, "channel  1 string shorted") { // shorts all strings beside it
			seen++
			if strings.Contains(line, " x ") {
				t.Errorf("power of no one: %s", line)
			}
		}
	}
	if seen != 1 {
		t.Errorf("%d rows of a shorted string", seen)
	}
}

// TestHardlyLost: what is lost the same all round is at no angle, and a better way of
// stringing is told from half a tenth of a dB on.
func TestHardlyLost(t *testing.T) {
	p := &timing.Plan{Banks: []timing.Bank{{Strings: [][]int{{0}, {0}}}}, Spot: timing.Spot{
		Array:    &layout.Array{Body: body.Ball(0.15), Mounts: []layout.Mount{{ID: 1}}},
		Channels: []timing.Channel{{Channel: layout.Channel{ID: 1, Mounts: []int{0, 0}}}}}}
	for _, test := range []struct {
		loss, gain    float64
		angle, better bool
	}{{0.045, 0.055, false, true}, {0.055, 0.045, true, false}} {
		d := timing.Death{State: impedance.Open, Loss: test.loss, Angle: math.Pi / 2, LossSpread: 1, LossNeighbours: 1 + test.gain, Power: 1}
		var b bytes.Buffer
		if err := table.WiringScreen(&b, p, []timing.Death{d}, false); err != nil {
			t.Fatal(err)
		}
		if strings.Contains(b.String(), "     90  spread") != test.angle || strings.Contains(b.String(), ", 0.1 dB better") != test.better {
			t.Errorf("%+v:\n%s", test, b.String())
		}
	}
}
