package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"math/cmplx"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pappus/layout/impedance"
	"pappus/render/document"
)

// lotOf writes tables of so many drivers that are not alike, one of them odd where asked.
func lotOf(t *testing.T, count int, odd bool) string {
	t.Helper()
	dir, random := t.TempDir(), rand.New(rand.NewPCG(1, 2))
	for i := range count {
		spring, wire := math.Exp(0.04*random.NormFloat64()), math.Exp(0.02*random.NormFloat64())
		if odd && i == count-1 {
			spring = 0.7
		}
		c, err := impedance.New(impedance.Driver{Resonance: 150 * spring, QMS: 3.2 * spring, QES: 1.14 * spring * wire, DCOhm: 7.1 * wire, Inductance: 0.05e-3})
		if err != nil {
			t.Fatal(err)
		}
		var b strings.Builder
		b.WriteString("frequency_hz,ohm,degrees\n")
		for hz := 20.0; hz < 20000; hz *= math.Exp2(1.0 / 12) {
			z := c.At(hz) * complex(1+0.001*random.NormFloat64(), 0.001*random.NormFloat64())
			fmt.Fprintf(&b, "%.4f,%.5f,%.4f\n", hz, cmplx.Abs(z), cmplx.Phase(z)*180/math.Pi)
		}
		if err := os.WriteFile(filepath.Join(dir, fmt.Sprintf("d%d.csv", i+1)), []byte(b.String()), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// screenOf runs a command and returns what it prints.
func screenOf(t *testing.T, args ...string) string {
	t.Helper()
	var out bytes.Buffer
	root := newRoot()
	root.SetArgs(args)
	root.SetOut(&out)
	if err := root.ExecuteContext(t.Context()); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// TestDrivers: from tables to places in the built-in design, on the screen, as tables and as JSON.
func TestDrivers(t *testing.T) {
	lot, into := lotOf(t, 42, true), filepath.Join(t.TempDir(), "out")
	path := filepath.Join(t.TempDir(), "mine.toml")
	screenOf(t, "new", path)
	text := screenOf(t, "drivers", lot, path, "-o", into)
	for _, says := range []string{"42 drivers: 41 good, 1 rejected", "d42: resonance", "bins:", "sorted", "2 spares to keep"} {
		if !strings.Contains(text, says) {
			t.Errorf("%q is not in\n%s", says, text)
		}
	}
	for line := range strings.Lines(text) {
		if len([]rune(strings.TrimRight(line, "\n"))) > 100 {
			t.Errorf("a long line: %s", line)
		}
	}
	for _, name := range []string{"drivers.csv", "strings.csv", "drivers.png", "sorted.svg"} {
		if !exists(filepath.Join(into, name)) {
			t.Errorf("%s is missing", name)
		}
	}
	data, err := os.ReadFile(filepath.Join(into, "drivers.csv"))
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil || len(rows) != 43 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	count := map[string]int{}
	for _, r := range rows[1:] {
		if count[r[2]]++; (r[2] == "use") != (r[len(r)-1] != "") {
			t.Errorf("%v", r)
		}
	}
	if count["use"] != 39 || count["spare"] != 2 || count["reject"] != 1 {
		t.Errorf("%v", count)
	}
	var d document.Drivers
	if err := json.Unmarshal([]byte(screenOf(t, "drivers", lot, path, "--json", "-o", into)), &d); err != nil {
		t.Fatal(err)
	}
	if len(d.Drivers) != 42 || d.Sorted == nil || len(d.Sorted.Spares) != 2 || !(d.Sorted.ScatterSorted < d.Sorted.ScatterAsCome) || d.Drivers[41].Good || d.Drivers[0].Resonance == nil {
		t.Errorf("%+v", d.Sorted)
	}
}

// TestFewDrivers: without a design there are bins alone; too few for one are told of.
func TestFewDrivers(t *testing.T) {
	lot := lotOf(t, 6, false)
	into := filepath.Join(t.TempDir(), "out")
	if text := screenOf(t, "drivers", lot, "-o", into); !strings.Contains(text, "6 good") || strings.Contains(text, "strings,") {
		t.Error(text)
	}
	path := filepath.Join(t.TempDir(), "mine.toml")
	screenOf(t, "new", path)
	if text := screenOf(t, "drivers", lot, path, "-o", into); !strings.Contains(text, "33 more good ones are lacking") {
		t.Error(text)
	}
	for _, args := range [][]string{{"drivers", t.TempDir()}, {"drivers", filepath.Join(lot, "none")}, {"drivers", lot, "none.toml"}, {"drivers", lot, "--reference", "up"}} {
		refusal(t, args...)
	}
}

// TestToleranceCommand: a study on the screen and as JSON.
func TestToleranceCommand(t *testing.T) {
	into := filepath.Join(t.TempDir(), "out")
	if text := screenOf(t, "tolerance", "--runs", "60", "--time-us", "0", "--place-mm", "0", "-o", into); !strings.Contains(text, "60 lots of 39 drivers") || !strings.Contains(text, "all together") || strings.Contains(text, "place ") {
		t.Error(text)
	}
	var d document.Tolerance
	if err := json.Unmarshal([]byte(screenOf(t, "tolerance", "--runs", "60", "--percent", "0", "--time-us", "0", "--place-mm", "0", "--json", "-o", into)), &d); err != nil {
		t.Fatal(err)
	}
	if len(d.Causes) != 2 || d.Causes[1].Cause != "all together" || len(d.Low) != len(d.Frequency) || !exists(filepath.Join(into, "tolerance.png")) {
		t.Errorf("%+v", d.Causes)
	}
	for _, args := range [][]string{{"--runs", "3"}, {"--percent", "80"}, {"--sensitivity-db", "-1"}, {"--place-mm", "1000"}, {"--time-us", "5000"}} {
		refusal(t, append([]string{"tolerance"}, args...)...)
	}
}
