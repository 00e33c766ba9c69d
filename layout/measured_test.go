package layout_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"pappus/layout"
	"pappus/layout/design"

	"github.com/google/go-cmp/cmp"
)

// TestReadMeasured: tables read as a design's own do, and faults name file and line.
func TestReadMeasured(t *testing.T) {
	folder := t.TempDir()
	file := func(name, text string) string {
		path := filepath.Join(folder, name)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	ohms, err := layout.ReadImpedance(file("ohm.csv", "# mine\nfrequency_hz,ohm,degrees\n20,7.5,3\n200, 30, -4.5\n"))
	if d := cmp.Diff([]layout.ImpedancePoint{{Frequency: 20, Ohm: 7.5, Degrees: 3}, {Frequency: 200, Ohm: 30, Degrees: -4.5}}, ohms); err != nil || d != "" {
		t.Error(err, d)
	}
	levels, err := layout.ReadResponse(file("level.csv", "frequency_hz,level_db,phase_deg\n200,80,0\n2000,81,180\n"))
	if err != nil || len(levels) != 2 || levels[1].Level != 81 {
		t.Error(levels, err)
	}
	_, err = layout.ReadImpedance(file("bad.csv", "frequency_hz,ohm,degrees\n20,7,0\n10,7,0\n"))
	var e *design.Error
	if !errors.As(err, &e) || e.Line != 3 || e.Key != "frequency_hz" {
		t.Error(err)
	}
	if _, err := layout.ReadResponse(filepath.Join(folder, "none.csv")); !errors.Is(err, fs.ErrNotExist) {
		t.Error(err)
	}
}
