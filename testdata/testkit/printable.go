package testkit

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"pappus/layout/poly"
)

// wrong are the lines of admesh's report that are 0 where it has nothing to mend. Normals are not
// among them: of a needle it has another by its own rounding.
var wrong = []string{"Total disconnected facets", "Degenerate facets", "Edges fixed", "Facets removed",
	"Facets added", "Facets reversed", "Backwards edges"}

// Printable has admesh, a mesh checker of its own mind, read a mesh as it is written: there is
// nothing to mend, it has so many parts (0: any number), and the volume that the mesh has. Where
// there is no admesh nothing is checked.
func Printable(t testing.TB, m poly.Mesh, parts int) {
	t.Helper()
	if _, err := exec.LookPath("admesh"); err != nil {
		return
	}
	path := filepath.Join(t.TempDir(), "part.stl")
	var b bytes.Buffer
	if err := poly.WriteSTL(&b, m, "part"); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	text, err := exec.Command("admesh", path).CombinedOutput()
	if err != nil {
		t.Fatal(err)
	}
	report := string(text)
	for _, name := range wrong {
		if n := after(t, report, name); n != 0 {
			t.Errorf("%s: %g", name, n)
		}
	}
	if n := after(t, report, "Number of parts"); parts != 0 && n != float64(parts) {
		t.Errorf("%g parts, want %d", n, parts)
	}
	if got, want := after(t, report, "Volume"), 1e9*m.Volume(); math.Abs(got/want-1) > 1e-4 {
		t.Errorf("volume %g mm3, want %g", got, want)
	}
}

// after returns the first number after a name in a report.
func after(t testing.TB, report, name string) (n float64) {
	t.Helper()
	for _, line := range strings.Split(report, "\n") {
		_, rest, ok := strings.Cut(line, name)
		if !ok {
			continue
		}
		_, rest, _ = strings.Cut(rest, ":")
		if f := strings.Fields(rest); len(f) > 0 {
			if _, err := fmt.Sscan(f[0], &n); err != nil {
				t.Fatal(line, err)
			}
			return n
		}
	}
	t.Fatalf("no %q in\n%s", name, report)
	return 0
}
