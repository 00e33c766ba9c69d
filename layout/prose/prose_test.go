package prose_test

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"

	"pappus/layout/prose"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestNumber(t *testing.T) {
	for _, c := range []struct {
		v      float64
		digits int
		want   string
	}{
		{1000, 3, "1000"}, {999.6, 3, "1000"}, {96000, 4, "96000"}, {1234567, 3, "1230000"}, {0.00123456, 3, "0.00123"},
		{2.5, 3, "2.5"}, {-0.5, 0, "-0.5"}, {0, 3, "0"}, {math.Copysign(0, -1), 3, "0"}, {1e9, 0, "1e9"}, {1.5e-7, 2, "1.5e-7"}, {-2e300, 0, "-2e300"},
		{1.1e-4, 0, "0.00011"}, {9e-5, 0, "9e-5"}, {9e8, 0, "900000000"}, {math.NaN(), 3, "nan"}, {math.Inf(1), 3, "inf"}, {math.Inf(-1), 0, "-inf"}, {0.1 + 0.2, 15, "0.3"},
	} {
		if got := prose.Number(c.v, c.digits); got != c.want {
			t.Errorf("Number(%v, %d) = %s, want %s", c.v, c.digits, got, c.want)
		}
	}
}

func TestFixed(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{prose.Fixed(2.5, 2), "2.50"}, {prose.Fixed(-0.004, 2), "0.00"}, {prose.Fixed(-0.006, 2), "-0.01"}, {prose.Fixed(math.NaN(), 1), ""}, {prose.Fixed(-0.4, 0), "0"},
		{prose.Trimmed(2.5, 2), "2.5"}, {prose.Trimmed(20, 2), "20"}, {prose.Trimmed(-0.001, 2), "0"}, {prose.Trimmed(100, 0), "100"},
		{prose.Hertz(999.4, 3), "999 Hz"}, {prose.Hertz(1234.5, 3), "1.23 kHz"}, {prose.Hertz(1000, 4), "1 kHz"},
		{prose.Minus("-0.5"), "\u22120.5"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}

// What is written reads as the number rounded to those digits, and has no exponent where
// people would not write one.
func TestNumberReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v, digits := rapid.Float64Range(-1e12, 1e12).Draw(t, "v"), rapid.IntRange(1, 17).Draw(t, "digits")
		text := prose.Number(v, digits)
		want, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'e', digits-1, 64), 64)
		if got, err := strconv.ParseFloat(text, 64); err != nil || got != want {
			t.Fatalf("%s reads as %v, want %v", text, got, want)
		}
		if a := math.Abs(want); (a == 0 || a >= 1e-3 && a <= 1e7) && strings.ContainsAny(text, "eE+") {
			t.Fatalf("%s has an exponent", text)
		}
	})
}

func TestSprintf(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{prose.Sprintf("%.3g Hz", 1000.0), "1000 Hz"},
		{prose.Sprintf("%g to %v", 20000.0, 1e7), "20000 to 10000000"},
		{prose.Sprintf("%.2f %d %s %q", 1.005e3, 7, "a", "b"), `1005.00 7 a "b"`},
		{prose.Sprintf("%.1f|%+.1f|%5.0f|%.2f", -0.04, -0.04, math.Copysign(0, -1), -0.006), "0.0|+0.0|    0|-0.01"},
		{prose.Sprintf("%+.2g|%7.3g|%-7g|", 12.34, 1000.0, 5.0), "+12|   1000|5      |"},
		{prose.Errorf("%g: %w", 1e6, fs.ErrExist).Error(), "1000000: file already exists"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
	if err := prose.Errorf("%g: %w", 1e6, fs.ErrExist); !errors.Is(err, fs.ErrExist) {
		t.Error("wraps nothing")
	}
}

func TestNouns(t *testing.T) {
	got := []string{prose.Count(0, "driver", "drivers"), prose.Count(1, "driver", "drivers"), prose.Count(12, "driver", "drivers"),
		prose.Either([]string{"a"}), prose.Either([]string{"a", "b", "c"}), prose.Each([]string{"1", "2"}), prose.Each(nil)}
	want := []string{"0 drivers", "1 driver", "12 drivers", "a", "a, b or c", "1 and 2", ""}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

func TestNearest(t *testing.T) {
	shapes := []string{"tetrahedron", "cube", "dodecahedron", "icosahedron", "truncated icosahedron", "geodesic", "ball", "prism", "antiprism"}
	places := []string{"faces", "vertices", "edges", "even", "list"}
	for _, c := range []struct {
		word  string
		among []string
		want  string
	}{
		{"icosahedral", shapes, "icosahedron"}, {"Cube", shapes, "cube"}, {"cub", shapes, "cube"}, {"truncated_icosahedron", shapes, "truncated icosahedron"},
		{"dodeca", shapes, "dodecahedron"}, {"geo", shapes, "geodesic"}, {"garden", shapes, ""}, {"", shapes, ""}, {"an", shapes, ""},
		{"face", places, "faces"}, {"vertex", places, "vertices"}, {"edge", places, "edges"}, {"evne", places, "even"}, {"e", places, ""},
		{"paln", []string{"new", "plan"}, "plan"}, {"radius", []string{"radius_mm", "wall_mm"}, "radius_mm"},
		{"linkwitz", []string{"butterworth", "linkwitz-riley"}, "linkwitz-riley"}, {"pinknoise", []string{"pink_noise"}, "pink_noise"},
		{"straight line", []string{"path", "straight"}, "straight"}, {"mms_", []string{"qms", "mms_g"}, "mms_g"}, {"wire_mm", []string{"wire_m", "wire_mm2"}, "wire_mm2"},
		{"ıcosahedron", shapes, "icosahedron"}, {"日本", shapes, ""},
	} {
		if got := prose.Nearest(c.word, c.among); got != c.want {
			t.Errorf("%q: %q, want %q", c.word, got, c.want)
		}
	}
}

func TestNumbers(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{"150,5", []string{"150.5"}}, {`"150,5"`, []string{"150.5"}}, {"−30°", []string{"-30"}}, {"–30 °", []string{"-30"}}, {"“150”", []string{"150"}},
		{"150 mm", []string{"150"}}, {"150mm", []string{"150"}}, {"1.234,5", []string{"1234.5"}}, {"1,234.5", []string{"1234.5"}},
		{"1,234", []string{"1.234", "1234"}}, {"0,001", []string{"0.001"}}, {"1 200,5", []string{"1200.5"}}, {"1\u202f200", []string{"1200"}},
		{"1,234,567", []string{"1234567"}}, {",5", []string{"0.5"}}, {".5", []string{"0.5"}}, {"5.", []string{"5"}}, {"007", []string{"7"}},
		{"50 %", []string{"50"}}, {"+3", []string{"3"}}, {"-0,0", []string{"0"}}, {"1’200", []string{"1200"}}, {"2,5e3", []string{"2500"}},
		{"12 cm2", []string{"12"}},
		{"", nil}, {"cube", nil}, {"1,2,3", nil}, {"1.2.3", nil}, {"-", nil}, {"1,2.3,4", nil}, {"[1, 2]", nil}, {"2025-03-01", nil}, {"e", nil},
	} {
		if d := cmp.Diff(c.want, prose.Numbers(c.text)); d != "" {
			t.Errorf("%q: %s", c.text, d)
		}
	}
}

// A path is what a shell takes it for, whatever is in it.
func TestPathInAShell(t *testing.T) {
	sh, err := exec.LookPath("sh")
	if err != nil {
		t.Skip("no shell here")
	}
	for _, path := range []string{"a.toml", "my designs/a b.toml", "it's.toml", "$HOME", "~/a", "a*b", `a\b`, "a\u00a0b", "größe.toml", "a;b&c|d", "a\"b", "#a", "!a", "-o", ""} {
		out, err := exec.Command(sh, "-c", "printf %s "+prose.Path(path)).Output()
		want := path
		if strings.HasPrefix(path, "-") {
			want = "./" + path
		}
		if err != nil || string(out) != want {
			t.Errorf("%q became %q (%v) in a shell, as %s", path, out, err, prose.Path(path))
		}
	}
	if got := prose.Path("designs/lantern_2.toml"); got != "designs/lantern_2.toml" {
		t.Errorf("quotes where none are needed: %s", got)
	}
}

func TestError(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "lantern.toml"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	open := func(name string) error { _, err := os.Open(filepath.Join(dir, name)); return err }
	read := func(name string) error { _, err := os.ReadFile(filepath.Join(dir, name)); return err }
	for _, c := range []struct {
		name string
		err  error
		want string
	}{
		{"near", open("lantren.toml"), "DIR/lantren.toml: there is no such file; did you mean DIR/lantern.toml?"},
		{"no ending", open("lantern"), "DIR/lantern: there is no such file; did you mean DIR/lantern.toml?"},
		{"none near", open("garden.toml"), "DIR/garden.toml: there is no such file"},
		{"no folder", open("no/garden.toml"), "DIR/no/garden.toml: there is no such file; there is no folder DIR/no either"},
		{"folder", read(""), "DIR: it is a folder, not a file"},
		{"file for a folder", open("lantern.toml/a"), "DIR/lantern.toml/a: what should be a folder there is a file"},
		{"named twice", fmt.Errorf("%s: %w", filepath.Join(dir, "garden.toml"), open("garden.toml")), "DIR/garden.toml: there is no such file"},
		{"within words", fmt.Errorf("--file: %w", open("garden.toml")), "--file: DIR/garden.toml: there is no such file"},
		{"full", &fs.PathError{Op: "write", Path: "a.wav", Err: syscall.ENOSPC}, "a.wav: the disk is full"},
		{"not allowed", &fs.PathError{Op: "open", Path: "a.wav", Err: syscall.EACCES}, "a.wav: the system does not allow it; look at who may read and write there"},
		{"two", errors.Join(&fs.PathError{Op: "write", Path: "a.wav", Err: syscall.ENOSPC}, errors.New("and more")), "a.wav: the disk is full and more"},
		{"stopped", fmt.Errorf("writing: %w", context.Canceled), "writing: stopped"},
		{"own", errors.New("body.radius_mm is odd"), "body.radius_mm is odd"},
		{"none", nil, ""},
	} {
		if got := strings.ReplaceAll(prose.Error(c.err), dir, "DIR"); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
	if err := prose.Reason(open("garden.toml")); err.Error() != "there is no such file" || !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("reason: %v", err)
	}
}
