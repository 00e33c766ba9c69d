package damping_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing/damping"
)

// TestStudy: a log is read with the tables beside it, and a trial whose table is not there is
// named.
func TestStudy(t *testing.T) {
	d, err := design.Parse("lantern.toml", design.DefaultTOML())
	if err != nil {
		t.Fatal(err)
	}
	a, err := layout.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	b := body{mass: 0.75e-3, cms: 1.5e-3, rms: 0.221, bl: 2.1, re: 7.1, area: 8e-4, number: 39, compliance: 0.005 / stiffness}
	var table, response strings.Builder
	fmt.Fprintln(&table, "frequency_hz,ohm,degrees")
	for _, p := range impedancePoints(b) {
		fmt.Fprintf(&table, "%.6f,%.6f,%.6f\n", p.Frequency, p.Ohm, p.Degrees)
	}
	fmt.Fprintln(&response, "frequency_hz,level_db,phase_deg")
	for hz := 100.0; hz < 10000; hz *= 1.05 {
		fmt.Fprintf(&response, "%.3f,80,0\n", hz)
	}
	folder := t.TempDir()
	log := filepath.Join(folder, "lantern.damping.toml")
	trial := "[[trial]]\nvents = 0\nstuffing_g = 0\nimpedance = \"ohm.csv\"\nresponse = \"level.csv\"\n"
	for name, text := range map[string]string{"ohm.csv": table.String(), "level.csv": response.String(), "lantern.damping.toml": trial} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	s, err := damping.NewStudy(a, "lantern.toml", log)
	if err != nil || len(s.Trials) != 1 || s.Why != nil || s.Trials[0].Uneven > 1e-6 || s.Next.Reached || s.Next.Thing != damping.Stuffing {
		t.Errorf("%+v, %v", s.Next, err)
	}
	if err := os.Remove(filepath.Join(folder, "level.csv")); err != nil {
		t.Fatal(err)
	}
	if _, err := damping.NewStudy(a, "lantern.toml", log); err == nil || !strings.Contains(err.Error(), "trial 1") {
		t.Errorf("without its response: %v", err)
	}
}
