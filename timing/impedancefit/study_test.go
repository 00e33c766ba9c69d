package impedancefit_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pappus/layout/design"
	"pappus/timing/impedancefit"
)

// TestStudy: tables and recordings are read alike, and what a design has of its driver is held
// against them.
func TestStudy(t *testing.T) {
	folder := t.TempDir()
	file := func(name string, n network) string {
		var text strings.Builder
		fmt.Fprintln(&text, "frequency_hz,ohm,degrees")
		for _, p := range measure(n.at, 20, 20000, 24, 1e-3, rand.New(rand.NewPCG(1, 8))) {
			fmt.Fprintf(&text, "%.6f,%.6f,%.6f\n", p.Frequency, p.Ohm, p.Degrees)
		}
		path := filepath.Join(folder, name)
		if err := os.WriteFile(path, []byte(text.String()), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	r := recorded(small, 10, 24000, 20, 10000, 5, 3e-4, rand.New(rand.NewPCG(8, 9)))
	reader := impedancefit.Reader{Series: 10, Low: 20, High: 10000, Decode: func(path string) (int, [][]float64, error) {
		switch {
		case strings.HasSuffix(path, "mono.wav"):
			return 24000, [][]float64{r.Whole}, nil
		case strings.HasSuffix(path, "bridged.wav"):
			return 24000, [][]float64{r.Whole, r.Whole}, nil
		case strings.HasSuffix(path, "take.wav"):
			return 24000, [][]float64{r.Whole, r.Driver}, nil
		}
		return 0, nil, os.ErrNotExist
	}}
	s, err := impedancefit.NewStudy(reader, file("driver.csv", paper.with(0, 0)))
	if err != nil || s.Recorded || s.Name != "driver.csv" {
		t.Fatal(s.Name, err)
	}
	as := impedancefit.Second{Mass: 0.4e-3, Area: paper.area, Air: air}
	if err := s.Again(reader, file("heavy.csv", paper.with(0.4e-3, 0)), as); err != nil || s.Mechanical == nil {
		t.Error(err)
	}
	if err := s.Again(reader, filepath.Join(folder, "driver.csv"), as); err == nil || !strings.Contains(err.Error(), "driver.csv") {
		t.Errorf("the same again: %v", err)
	}
	re := s.Fit.DCOhm.Value
	s.Against(design.Driver{DCOhm: re, Small: design.Small{Fs: 150, Qms: 3, Qes: 1}})
	if s.Planned == nil || s.Doubt() != nil {
		t.Errorf("as designed: %v", s.Doubt())
	}
	s.Against(design.Driver{DCOhm: 2 * re})
	if err := s.Doubt(); err == nil || !strings.Contains(err.Error(), "dc_ohm") {
		t.Errorf("another resistance: %v", err)
	}
	if s.Fit.Systematic, s.Fit.Misfit = true, 0.05; s.Doubt() == nil {
		t.Error("no doubt of a rough fit")
	}
	reader.Bridged = "bridged.wav"
	if s, err := impedancefit.NewStudy(reader, "take.wav"); err != nil || !s.Recorded {
		t.Error(err)
	}
	for _, test := range []struct {
		path, bridged string
		series        float64
		want          string
	}{
		{"take.wav", "", 0, "--series-ohm"}, {"mono.wav", "", 10, "must be 2"}, {"none.wav", "", 10, "not exist"}, {"take.wav", "mono.wav", 10, "must be 2"},
		{filepath.Join(folder, "none.csv"), "", 10, "none.csv"},
	} {
		reader.Series, reader.Bridged = test.series, test.bridged
		if _, err := impedancefit.NewStudy(reader, test.path); err == nil || !strings.Contains(err.Error(), test.want) {
			t.Errorf("%s: %v, want %q", test.path, err, test.want)
		}
	}
}
