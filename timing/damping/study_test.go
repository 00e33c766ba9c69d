package damping_test

import (
	"fmt"
	"math"
	"math/cmplx"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/dampinglog"
	"pappus/layout/design"
	"pappus/timing/damping"
)

// lantern is the built-in design.
func lantern(t *testing.T) *layout.Array {
	t.Helper()
	a, err := layout.Build(design.Default())
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// TestStudy: a log is read with the tables beside it, and a trial whose table is not there is
// named.
func TestStudy(t *testing.T) {
	a := lantern(t)
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

// TestStudyFibre: a log with a closed trial and one with filled vents tells what its fibre resists, by the
// tables beside it; without the closed one it tells nothing.
func TestStudyFibre(t *testing.T) {
	a := lantern(t)
	h, err := a.Hollow()
	if err != nil {
		t.Fatal(err)
	}
	const resists = 1.5
	b := tubes{body: body{mass: 0.75e-3, cms: 1.5e-3, rms: 0.221, bl: 2.1, re: 7.1, area: 8e-4, number: float64(h.Vented.Number), compliance: h.Vented.Volume / h.Vented.Air.Stiffness()}, resists: resists, heavy: 1.4, leak: 1e9}
	folder := t.TempDir()
	write := func(name, text string) {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	var log strings.Builder
	for i, state := range []dampinglog.Trial{{}, {Vents: 5, VentMM: 1e3 * tubeWide, FillG: 5}} {
		table := "frequency_hz,ohm,degrees\n"
		for hz := 20.0; hz < 20000; hz *= 1.03 {
			z := b.at(hz, state, 1)
			table += fmt.Sprintf("%.6f,%.6f,%.6f\n", hz, cmplx.Abs(z), cmplx.Phase(z)*180/math.Pi)
		}
		write(fmt.Sprintf("ohm-%d.csv", i), table)
		fmt.Fprintf(&log, "[[trial]]\nvents = %d\nvent_mm = %g\nfill_g = %g\nstuffing_g = 0\nimpedance = \"ohm-%d.csv\"\n", state.Vents, state.VentMM, state.FillG, i)
		write("lantern.damping.toml", log.String())
		s, err := damping.NewStudy(a, "lantern.toml", filepath.Join(folder, "lantern.damping.toml"))
		if err != nil {
			t.Fatal(err)
		}
		if i == 0 && s.Fibre != nil {
			t.Errorf("%+v of no fibre", s.Fibre)
		}
		if i == 1 && (s.Fibre == nil || len(s.Fibre.Trials) != 1 || s.Fibre.Resists.Least > resists || s.Fibre.Resists.Most < resists || math.Abs(math.Log(s.Fibre.Resists.Likely/resists)) > 0.2) {
			t.Errorf("%+v, want about %g", s.Fibre, resists)
		}
	}
}
