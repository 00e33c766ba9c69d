package dampinglog_test

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"pappus/layout/dampinglog"
	"pappus/layout/design"
	"pappus/layout/wholefile"
	"pappus/testdata/drawn"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/pelletier/go-toml/v2"
	"pgregory.net/rapid"
)

const two = `# mine
[fits]
stuffing_g = 90
depth_mm = 80.5
vents = 6

[[trial]]
date = 2025-03-01
impedance = "t1.csv"
[[trial]]
vents = 2
vent_mm = 8
stuffing_g = 30.5
depth_mm = 40
impedance = "t2.csv"
response = "r2.csv"
remark = "loose, \"at the rear\""
`

var (
	first  = dampinglog.Trial{Date: "2025-03-01", Impedance: "t1.csv"}
	second = dampinglog.Trial{Vents: 2, VentMM: 8, StuffingG: 30.5, DepthMM: 40, Impedance: "t2.csv", Response: "r2.csv", Remark: `loose, "at the rear"`}
)

func TestParse(t *testing.T) {
	got, err := dampinglog.Parse("a/mine.damping.toml", []byte(two))
	if err != nil {
		t.Fatal(err)
	}
	want := &dampinglog.Log{Path: "a/mine.damping.toml", Fits: dampinglog.Fits{StuffingG: 90, DepthMM: 80.5, Vents: 6}, Trials: []dampinglog.Trial{first, second}}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
	if got := got.File("t1.csv"); got != filepath.Join("a", "t1.csv") {
		t.Error(got)
	}
	if got := dampinglog.Beside("b/mine.toml"); got != "b/mine.damping.toml" {
		t.Error(got)
	}
}

func TestNothing(t *testing.T) {
	for _, text := range []string{"", "# nothing yet\n", "\ufeff"} {
		l, err := dampinglog.Parse("x", []byte(text))
		if err != nil || len(l.Trials) != 0 || l.Fits.Said() {
			t.Errorf("%q: %+v, %v", text, l, err)
		}
	}
	l, err := dampinglog.Read(filepath.Join(t.TempDir(), "none.toml"))
	if err != nil || len(l.Trials) != 0 || l.Fits.Said() {
		t.Errorf("%+v, %v", l, err)
	}
}

// TestFaults: each fault names its line and key.
func TestFaults(t *testing.T) {
	trial := "[[trial]]\nimpedance = \"a\"\n"
	cases := []struct {
		name, text string
		line       int
		key        string
		kind       error
	}{
		{"no TOML", "a b", 1, "", design.ErrSyntax},
		{"twice", "[[trial]]\nvents = 1\nvents = 2\n", 3, "", design.ErrSyntax},
		{"unknown table", trial + "[box]\n", 3, "box", design.ErrUnknownKey},
		{"unknown key", trial + trial + "vent = 1\n", 5, "trial[2].vent", design.ErrUnknownKey},
		{"unknown fit", "[fits]\nmass_g = 1\n", 2, "fits.mass_g", design.ErrUnknownKey},
		{"dotted", "fits.mass_g = 1\n", 1, "fits.mass_g", design.ErrUnknownKey},
		{"text for number", trial + "stuffing_g = \"30\"\n", 3, "trial[1].stuffing_g", design.ErrType},
		{"below nothing", trial + "stuffing_g = -1\n", 3, "trial[1].stuffing_g", design.ErrRange},
		{"no number", trial + "depth_mm = nan\n", 3, "trial[1].depth_mm", design.ErrRange},
		{"half a vent", trial + "vents = 1.5\n", 3, "trial[1].vents", design.ErrType},
		{"many vents", trial + "vents = 1001\n", 3, "trial[1].vents", design.ErrRange},
		{"pinholes", trial + "vents = 1\nvent_mm = 0.1\n", 4, "trial[1].vent_mm", design.ErrRange},
		{"vents of no width", trial + "vents = 1\n", 1, "trial[1]", design.ErrMissing},
		{"no impedance", trial + "[[trial]]\n", 3, "trial[2]", design.ErrMissing},
		{"date as text", trial + "date = \"2025-03-01\"\n", 3, "trial[1].date", design.ErrType},
		{"date with time", trial + "date = 2025-03-01T10:00:00Z\n", 3, "trial[1].date", design.ErrType},
		{"two lines", trial + "remark = \"a\\nb\"\n", 3, "trial[1].remark", design.ErrRange},
		{"one trial", "[trial]\nimpedance = \"a\"\n", 1, "trial", design.ErrType},
		{"numbers for trials", "trial = [1]\n", 1, "trial[1]", design.ErrType},
		{"first in the file", trial + "vents = -1\n" + trial + "depth_mm = -1\n", 3, "trial[1].vents", design.ErrRange},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			_, err := dampinglog.Parse("x.toml", []byte(c.text))
			var e *design.Error
			if !errors.As(err, &e) || !errors.Is(err, c.kind) || e.Key != c.key || e.Line != c.line {
				t.Errorf("%v, want line %d, %s, %v", err, c.line, c.key, c.kind)
			}
		})
	}
}

// TestAdd: what was there stays byte for byte, whatever it looks like.
func TestAdd(t *testing.T) {
	for name, old := range map[string]string{"log": two, "no end of line": strings.TrimSuffix(two, "\n"), "remark at the end": "# a", "byte order mark": "\ufeff" + two, "other ends of lines": strings.ReplaceAll(two, "\n", "\r\n")} {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "a.damping.toml")
			if err := os.WriteFile(path, []byte(old), 0o600); err != nil {
				t.Fatal(err)
			}
			before, err := dampinglog.Read(path)
			if err != nil {
				t.Fatal(err)
			}
			if err := dampinglog.Add(path, second, nil); err != nil {
				t.Fatal(err)
			}
			data, err := os.ReadFile(path)
			if err != nil || !bytes.HasPrefix(data, []byte(old)) {
				t.Errorf("%q, %v", data, err)
			}
			after, err := dampinglog.Read(path)
			if err != nil {
				t.Fatal(err)
			}
			before.Trials = append(before.Trials, second)
			if d := cmp.Diff(before, after, cmpopts.EquateNaNs()); d != "" {
				t.Error(d)
			}
			if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
				t.Error(info.Mode(), err)
			}
			left, err := filepath.Glob(path + "*")
			if err != nil || len(left) != 1 {
				t.Error(left, err)
			}
		})
	}
}

// TestAddAnything: any trial that can be is added and read back, the others are
// refused and the file stays.
func TestAddAnything(t *testing.T) {
	folder := t.TempDir()
	n := 0
	rapid.Check(t, func(t *rapid.T) {
		n++
		path := filepath.Join(folder, fmt.Sprint(n))
		trial := dampinglog.Trial{
			Date:  rapid.SampledFrom([]string{"", "2025-03-01", "2025-02-30", "now", "2025-03-01\n[x]"}).Draw(t, "date"),
			Vents: rapid.IntRange(-1, 1001).Draw(t, "vents"), VentMM: rapid.Float64Range(-1, 201).Draw(t, "across"),
			FillG:     rapid.Float64Range(-1, 10001).Draw(t, "filling"),
			StuffingG: rapid.Float64().Draw(t, "stuffing"), DepthMM: rapid.Float64Range(-1, 5001).Draw(t, "depth"),
			Impedance: rapid.String().Draw(t, "impedance"), Response: rapid.String().Draw(t, "response"), Remark: rapid.String().Draw(t, "remark"),
		}
		if err := dampinglog.Add(path, first, nil); err != nil {
			t.Fatal(err)
		}
		before, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		refused := dampinglog.Add(path, trial, nil)
		after, err := os.ReadFile(path)
		if err != nil || !bytes.HasPrefix(after, before) || (refused != nil) != bytes.Equal(after, before) {
			t.Fatalf("%v, %v: %q", refused, err, after)
		}
		if refused == nil {
			l, err := dampinglog.Read(path)
			if err != nil || len(l.Trials) != 2 || l.Trials[1] != trial {
				t.Fatalf("%+v, %v", l, err)
			}
		}
		if _, err := os.Stat(filepath.Join(filepath.Dir(path), wholefile.Name(filepath.Base(path)))); !errors.Is(err, fs.ErrNotExist) {
			t.Fatal(err)
		}
	})
}

func TestAddFits(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.toml")
	fits := dampinglog.Fits{StuffingG: 90, DepthMM: math.NaN(), Vents: 0}
	if err := dampinglog.Add(path, first, &fits); err != nil {
		t.Fatal(err)
	}
	l, err := dampinglog.Read(path)
	if err != nil || !cmp.Equal(l.Fits, fits, cmpopts.EquateNaNs()) || len(l.Trials) != 1 {
		t.Fatalf("%+v, %v", l, err)
	}
	if err := dampinglog.Add(path, second, &fits); err == nil || !strings.Contains(err.Error(), "in the log already") {
		t.Error(err)
	}
	// second has openings, of which none fit, or else too much stuffing.
	for _, change := range []func(t *dampinglog.Trial){
		func(*dampinglog.Trial) {},
		func(t *dampinglog.Trial) { t.Vents, t.VentMM, t.StuffingG = 0, 0, 90.5 },
		func(t *dampinglog.Trial) { t.Vents, t.VentMM, t.StuffingG = 0, 0, math.NaN() },
	} {
		more := second
		change(&more)
		if err := dampinglog.Add(path, more, nil); !errors.Is(err, design.ErrRange) {
			t.Errorf("%+v: %v", more, err)
		}
	}
	fitting := second
	fitting.Vents, fitting.VentMM, fitting.StuffingG = 0, 0, 90
	if err := dampinglog.Add(path, fitting, nil); err != nil {
		t.Error(err)
	}
	fitting.Date = "2025-02-30"
	if err := dampinglog.Add(path, fitting, nil); !errors.Is(err, design.ErrType) {
		t.Error(err)
	}
}

func TestAddRefused(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "a.toml")
	bad := "[[trial]]\nimpedance = \"a\"\nvents = -1\n"
	if err := os.WriteFile(path, []byte(bad), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := dampinglog.Add(path, first, nil); !errors.Is(err, design.ErrRange) {
		t.Error(err)
	}
	if data, err := os.ReadFile(path); err != nil || string(data) != bad {
		t.Errorf("%q, %v", data, err)
	}
	if err := dampinglog.Add(filepath.Join(folder, "none", "a.toml"), first, nil); !errors.Is(err, fs.ErrNotExist) {
		t.Error(err)
	}
}

// FuzzParse: any text gives a log that TOML has too, or one error of one line.
func FuzzParse(f *testing.F) {
	drawn.Bytes(f, []string{
		two,
		"[[trial]]\nimpedance = 'a'\ndate = 1979-05-27\n[fits]\nvents = 0x3",
		"trial = [{impedance = \"a\"}]\nfits = {vents = 1}",
		"trial.a.b = 1\n[[trial.x]]\n\"\\u0000\" = nan",
	}, func(t testing.TB, data []byte) {
		text := string(data)
		l, err := dampinglog.Parse("fuzz.toml", data)
		if (l == nil) == (err == nil) {
			t.Fatalf("%v and %v", l, err)
		}
		if err == nil {
			var raw struct {
				Trial []struct {
					Vents     int
					StuffingG any `toml:"stuffing_g"` // TOML has whole numbers apart
				}
			}
			if err := toml.Unmarshal([]byte(strings.TrimPrefix(text, "\ufeff")), &raw); err != nil || len(raw.Trial) != len(l.Trials) {
				t.Fatalf("%v: %d trials, %d", err, len(raw.Trial), len(l.Trials))
			}
			for i, want := range raw.Trial {
				if got := l.Trials[i]; got.Vents != want.Vents || want.StuffingG != nil && fmt.Sprint(want.StuffingG) != fmt.Sprint(got.StuffingG) {
					t.Fatalf("%+v, want %+v", got, want)
				}
			}
			return
		}
		var e *design.Error
		if !errors.As(err, &e) || e.Err == nil || e.Reason == "" || strings.ContainsAny(err.Error(), "\n\r\x1b") {
			t.Fatalf("%q", err)
		}
		if e.Line < 0 || e.Line > 1+strings.Count(text, "\n") {
			t.Fatalf("line %d", e.Line)
		}
	})
}

func ExampleAdd() {
	folder, err := os.MkdirTemp("", "log")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer os.RemoveAll(folder)
	path := dampinglog.Beside(filepath.Join(folder, "lantern.toml"))
	for _, t := range []dampinglog.Trial{{Impedance: "bare.csv"}, {StuffingG: 30, Impedance: "loose.csv", Remark: "fluffed up"}} {
		if err := dampinglog.Add(path, t, nil); err != nil {
			fmt.Println(err)
			return
		}
	}
	l, err := dampinglog.Read(path)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(len(l.Trials), "trials, the last with", l.Trials[1].StuffingG, "g:", l.Trials[1].Remark)
	// Output:
	// 2 trials, the last with 30 g: fluffed up
}

// TestExceeds: no more is added than was said to fit, of whatever it is.
func TestExceeds(t *testing.T) {
	fits := dampinglog.Fits{StuffingG: 50, DepthMM: 40, Vents: 2}
	for key, trial := range map[string]dampinglog.Trial{
		"":           {Impedance: "a.csv", StuffingG: 50, DepthMM: 40, Vents: 2, VentMM: 8},
		"stuffing_g": {Impedance: "a.csv", StuffingG: 51},
		"depth_mm":   {Impedance: "a.csv", StuffingG: 50, DepthMM: 41},
		"vents":      {Impedance: "a.csv", Vents: 3, VentMM: 8},
	} {
		err := dampinglog.Add(filepath.Join(t.TempDir(), "a.damping.toml"), trial, &fits)
		var e *design.Error
		if key == "" && err != nil || key != "" && (!errors.As(err, &e) || e.Key != "trial[1]."+key) {
			t.Errorf("%s: %v", key, err)
		}
	}
	l := dampinglog.Log{Path: filepath.Join("x", "a.toml")}
	if got, whole := l.File("t.csv"), filepath.Join(t.TempDir(), "t.csv"); got != filepath.Join("x", "t.csv") || l.File(whole) != whole {
		t.Errorf("%s, %s", got, l.File(whole))
	}
}

// TestAddAtOnce: of many trials added at once, and after a run that was killed amid writing, all
// are in the log, and no draft is left.
func TestAddAtOnce(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "a.toml")
	if err := os.WriteFile(filepath.Join(folder, wholefile.Name("a.toml")), []byte("[[trial]]\nimped"), 0o644); err != nil {
		t.Fatal(err)
	}
	const many = 8
	var group sync.WaitGroup
	for range many {
		group.Go(func() {
			if err := dampinglog.Add(path, first, nil); err != nil {
				t.Error(err)
			}
		})
	}
	group.Wait()
	l, err := dampinglog.Read(path)
	if err != nil || len(l.Trials) != many {
		t.Errorf("%d of %d trials, %v", len(l.Trials), many, err)
	}
	if entries, err := os.ReadDir(folder); err != nil || len(entries) != 1 {
		t.Errorf("left in the folder: %v, %v", entries, err)
	}
}
