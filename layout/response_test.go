package layout_test

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/design"

	"github.com/google/go-cmp/cmp"
)

const responseHead = "frequency_hz,level_db,phase_deg\n"

// measured gives a design beside whose file in a folder a response is looked for.
func measured(t *testing.T, dir string) *design.Design {
	return parse(t, filepath.Join(dir, "a.toml"), with(cube, "", "[driver]\ndiameter_mm = 10\nresponse = \"driver.csv\"\n"))
}

func TestResponse(t *testing.T) {
	dir := t.TempDir()
	text := "# on the axis\nfrequency_hz, level_db, phase_deg\n100, -12.5, 90\n\n1000,0,0\n20000,-3,-540\n"
	if err := os.WriteFile(filepath.Join(dir, "driver.csv"), []byte("\ufeff"+strings.ReplaceAll(text, "\n", "\r\n")), 0o600); err != nil {
		t.Fatal(err)
	}
	a, err := layout.Build(measured(t, dir))
	if err != nil {
		t.Fatal(err)
	}
	want := []layout.ResponsePoint{{Frequency: 100, Level: -12.5, Phase: math.Pi / 2}, {Frequency: 1000}, {Frequency: 20000, Level: -3, Phase: -3 * math.Pi}}
	if d := cmp.Diff(want, a.Driver.Response, near); d != "" {
		t.Error(d)
	}
}

func TestResponseFaults(t *testing.T) {
	dense := strings.Builder{}
	for i := range 100001 {
		fmt.Fprintf(&dense, "%.1f,0,0\n", 1+0.5*float64(i))
	}
	cases := []struct {
		name, text string
		kind       error
		want       string // after the folder
	}{
		{"empty", "", design.ErrSyntax, "driver.csv:1: must begin with the line frequency_hz,level_db,phase_deg"},
		{"no first line", "100,0,0\n200,0,0\n", design.ErrSyntax, "driver.csv:1: must begin with the line frequency_hz,level_db,phase_deg"},
		{"one line", responseHead + "1000,0,0\n", design.ErrRange, "driver.csv: 1 line of numbers; must be at least 2"},
		{"too few values", responseHead + "1000,0,0\n2000,0\n", design.ErrSyntax, "driver.csv:3: 2 values; must be 3: frequency_hz,level_db,phase_deg"},
		{"quote in the midst", responseHead + "1000,0\",0\n", design.ErrSyntax, "driver.csv:2: not readable as CSV: bare \" in non-quoted-field"},
		{"text for a number", responseHead + "1000,loud,0\n", design.ErrType, `driver.csv:2: level_db = "loud": must be a number from -500 to 500`},
		{"not a number", responseHead + "1000,0,0\n# next\n2000,0,nan\n", design.ErrRange, `driver.csv:4: phase_deg = "nan": must be a number from -1000000 to 1000000`},
		{"no frequency", responseHead + "0,0,0\n", design.ErrRange, `driver.csv:2: frequency_hz = "0": must be a number from 1 to 100000`},
		{"level absurd", responseHead + "1000,1e999,0\n", design.ErrRange, `driver.csv:2: level_db = "1e999": must be a number from -500 to 500`},
		{"not rising", responseHead + "1000,0,0\n1000,1,0\n", design.ErrRange, "driver.csv:3: frequency_hz = 1000: must be above the one before, 1000"},
		{"rising by less than a logarithm tells", responseHead + "1000,0,0\n1000.0000000000001,1,0\n", design.ErrRange, "driver.csv:3: frequency_hz = 1000: must be above the one before, 1000"},
		{"falling", responseHead + "1000,0,0\n2000,1,0\n500.25,1,0\n", design.ErrRange, "driver.csv:4: frequency_hz = 500.25: must be above the one before, 2000"},
		{"too low", responseHead + "20,0,0\n500,0,0\n", design.ErrRange, "driver.csv: from 20 to 500 Hz; must cover some of 500 to 4000 Hz"},
		{"too high", responseHead + "4000,0,0\n20000,0,0\n", design.ErrRange, "driver.csv: from 4000 to 20000 Hz; must cover some of 500 to 4000 Hz"},
		{"too long", responseHead + dense.String(), design.ErrRange, "driver.csv:100002: too many lines; must be at most 100000"},
		{"too large", responseHead + strings.Repeat("#", 8<<20), design.ErrRange, "driver.csv: too large; must be at most 8388608 bytes"},
	}
	dir := t.TempDir()
	d := measured(t, dir)
	check := func(t *testing.T, kind error, want string) {
		t.Helper()
		_, err := layout.Build(d)
		var e *design.Error
		if !errors.Is(err, kind) || !errors.As(err, &e) {
			t.Fatalf("error %v", err)
		}
		want = fmt.Sprintf("%s:%d: driver.response = \"driver.csv\": %s", d.Path, d.Lines["driver.response"], filepath.Join(dir, want))
		if err.Error() != want || d.Lines["driver.response"] == 0 {
			t.Errorf("\n got %s\nwant %s", err, want)
		}
	}
	check(t, fs.ErrNotExist, "driver.csv: there is no such file; must be a file's name, beside the design or with its folder")
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			if err := os.WriteFile(filepath.Join(dir, "driver.csv"), []byte(c.text), 0o600); err != nil {
				t.Fatal(err)
			}
			check(t, c.kind, c.want)
		})
	}
}

func TestImpedance(t *testing.T) {
	dir := t.TempDir()
	write := func(text string) {
		if err := os.WriteFile(filepath.Join(dir, "ohm.csv"), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	design := parse(t, filepath.Join(dir, "a.toml"), with("shape = \"cube\"\nradius_mm = 100", "", small+"impedance = \"ohm.csv\"\n"))
	write("frequency_hz,ohm,degrees\n100,30,20\n1000,7.2,-5\n")
	a, err := layout.Build(design)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff([]layout.ImpedancePoint{{Frequency: 100, Ohm: 30, Degrees: 20}, {Frequency: 1000, Ohm: 7.2, Degrees: -5}}, a.Driver.Impedance); d != "" {
		t.Error(d)
	}
	for _, text := range []string{"frequency_hz,ohm,degrees\n100,30,20\n", "frequency_hz,ohm,degrees\n100,30,20\n90,30,20\n", "frequency_hz,ohm,degrees\n100,-3,20\n200,3,2\n", "hz\n"} {
		write(text)
		if _, err := layout.Build(design); err == nil || !strings.Contains(err.Error(), "ohm.csv") {
			t.Errorf("%q: %v", text, err)
		}
	}
}
