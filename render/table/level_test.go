package table_test

import (
	"bytes"
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"pappus/render/table"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/biquad"
)

// levelled levels the demo.
func levelled(t testing.TB) (*timing.Plan, timing.Levelling, timing.Correction) {
	t.Helper()
	p := demo(t)
	l, err := timing.Level(&p.Spot)
	if err != nil {
		t.Fatal(err)
	}
	c, err := l.Correction(p.Array.Processor.Rate)
	if err != nil {
		t.Fatal(err)
	}
	return p, l, c
}

// numbersOf reads a row of a CSV file from a column on.
func numbersOf(t *testing.T, row []string, from int) []float64 {
	t.Helper()
	var out []float64
	for _, cell := range row[from:] {
		v, err := strconv.ParseFloat(cell, 64)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, v)
	}
	return out
}

// TestLevelAndSections: what the coefficients in the one file make of a tone is
// what the other file says that the correction does.
func TestLevelAndSections(t *testing.T) {
	_, l, c := levelled(t)
	var b bytes.Buffer
	if err := table.Sections(&b, c); err != nil {
		t.Fatal(err)
	}
	sections, err := csv.NewReader(&b).ReadAll()
	if err != nil || len(sections) != 1+len(l.Sections) {
		t.Fatalf("%d rows, %v", len(sections), err)
	}
	var chain biquad.Chain
	rate := 0.0
	for i, row := range sections[1:] {
		v := numbersOf(t, row, 1)
		if row[0] != l.Sections[i].Shape.String() || math.Abs(v[0]-l.Sections[i].Frequency) > 1e-3 || math.Abs(v[2]-l.Sections[i].Gain) > 1e-3 {
			t.Errorf("section %d reads %v, want %v", i+1, row, l.Sections[i])
		}
		chain, rate = append(chain, biquad.Section{B0: v[3], B1: v[4], B2: v[5], A1: v[6], A2: v[7]}), v[8]
	}
	if err := table.Level(&b, l); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil || len(rows) != 1+len(l.Frequency) {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for _, row := range rows[1:] {
		v := numbersOf(t, row, 0)
		if math.Abs(v[1]+v[4]-v[2]) > 2e-3 || math.Abs(v[3]-l.Target) > 1e-3 {
			t.Fatalf("row %v does not add up", row)
		}
		if got := toneLevel(chain, v[0], rate); math.Abs(got-v[4]) > 2e-3 {
			t.Fatalf("%g Hz: the coefficients make %.4f dB, the table says %.3f", v[0], got, v[4])
		}
	}
}

// toneLevel sends one second of a tone through a chain and returns by how many dB
// its second half comes out louder than it went in.
func toneLevel(chain biquad.Chain, hz, rate float64) float64 {
	n := int(rate)
	tone, out := make([]float64, n), make([]float64, n)
	for i := range tone {
		tone[i] = math.Sin(2 * math.Pi * hz / rate * float64(i))
	}
	chain.Filter(out, tone)
	var before, after float64
	for i := n / 2; i < n; i++ {
		before, after = before+tone[i]*tone[i], after+out[i]*out[i]
	}
	return 10 * math.Log10(after/before)
}

func TestLevelScreen(t *testing.T) {
	p, l, c := levelled(t)
	var plain, coloured bytes.Buffer
	if err := table.LevelScreen(&plain, p, l, c, nil, false); err != nil {
		t.Fatal(err)
	}
	if err := table.LevelScreen(&coloured, p, l, c, nil, true); err != nil {
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
	flat := strings.Join(strings.Fields(plain.String()), " ")
	for _, want := range []string{p.Array.Name, "dB before", l.Sections[0].Shape.String(), words.Nulls(l.Nulls), "ms late", "heats the drivers", "never both"} {
		if !strings.Contains(flat, want) {
			t.Errorf("does not say %q:\n%s", want, plain.String())
		}
	}
}

// TestNothingToSet: no empty table, no filter that does nothing, no warning of either.
func TestNothingToSet(t *testing.T) {
	l := timing.Levelling{Frequency: []float64{100, 10000}, UnevenBefore: 0.24}
	p, _, c := levelled(t)
	var b bytes.Buffer
	if err := table.LevelScreen(&b, p, l, c, nil, false); err != nil {
		t.Fatal(err)
	}
	for _, not := range []string{"section  ", "FIR", "Look out"} {
		if strings.Contains(b.String(), not) {
			t.Errorf("%q in\n%s", not, b.String())
		}
	}
}
