package design_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pappus/layout/design"
	"pappus/testdata/jargon"
)

// What TOML cannot hold, and what the key cannot, is named with what to write instead.
func TestCures(t *testing.T) {
	const number = "must be a plain number, with a point for decimals; write "
	for _, c := range []struct {
		name, key, value string
		want             string // after file and line
	}{
		{"decimal comma", "body.radius_mm", "150,5", "body.radius_mm = 150,5: " + number + "150.5"},
		{"decimal comma and a remark", "body.radius_mm", "150,5 # of the plinth", "body.radius_mm = 150,5: " + number + "150.5"},
		{"decimal comma in quotes", "body.radius_mm", `"150,5"`, `body.radius_mm = "150,5": must be a number from 20 to 5000; write 150.5, without quotes`},
		{"number in quotes", "body.radius_mm", `"150"`, `body.radius_mm = "150": must be a number from 20 to 5000; write 150, without quotes`},
		{"number in typographic quotes", "body.radius_mm", "“150”", "body.radius_mm = “150”: " + number + "150"},
		{"minus and degree sign", "mounts.keep_clear_below_deg", "−30°", "mounts.keep_clear_below_deg = −30°: " + number + "-30"},
		{"dash for minus", "spot.z_m", "–0,4", "spot.z_m = –0,4: " + number + "-0.4"},
		{"unit", "body.radius_mm", "150 mm", "body.radius_mm = 150 mm: " + number + "150"},
		{"thousands and decimals", "body.radius_mm", "1.234,5", "body.radius_mm = 1.234,5: " + number + "1234.5"},
		{"a comma that may be either", "body.radius_mm", "1,234", "body.radius_mm = 1,234: " + number + "1234"}, // 1.234 is out of range
		{"a comma that may be either, and both fit", "processor.step_us", "1,234", "processor.step_us = 1,234: " + number + "1.234 or 1234"},
		{"no digit before the point", "surface.absorption", ".5", "surface.absorption = .5: " + number + "0.5"},
		{"out of range, too", "body.radius_mm", "15000,5", "body.radius_mm = 15000,5: must be a number from 20 to 5000"},
		{"too large for the machine", "mounts.count", "99999999999999999999", "mounts.count = 99999999999999999999: must be a whole number from 0 to 2000"},
		{"whole number with decimals", "mounts.count", "12.0", "mounts.count = 12.0: must be a whole number from 0 to 2000; write 12"},
		{"no value", "body.radius_mm", "", "body.radius_mm: the value is missing; must be a number from 20 to 5000"},

		{"typographic quotes", "body.shape", "“ball”", "body.shape = “ball”: not written as TOML has it; must be SHAPES; write \"ball\""},
		{"low and high quotes", "name", "„Lantern“", "name = „Lantern“: not written as TOML has it; must be text in quotes, 1 to 120 letters on one line; write \"Lantern\""},
		{"no quotes", "body.shape", "ball", "body.shape = ball: not written as TOML has it; must be SHAPES; write \"ball\""},
		{"no quotes and misspelt", "body.shape", "bal", "body.shape = bal: must be SHAPES; did you mean \"ball\"?"},
		{"quotes not closed", "name", `"Lantern`, "name = \"Lantern: not written as TOML has it; must be text in quotes, 1 to 120 letters on one line; write \"Lantern\""},
		{"backslash", "mounts.list", `"C:\mounts.csv"`, `mounts.list = "C:\mounts.csv": not written as TOML has it; must be text in quotes, 1 to 1000 letters on one line; write "C:\\mounts.csv"`},
		{"number for text", "name", "3", `name = 3: must be text in quotes, 1 to 120 letters on one line; write "3"`},
		{"yes", "woofer.invert", "yes", "woofer.invert = yes: not written as TOML has it; must be true or false; write true"},
		{"truth in quotes", "woofer.invert", `"True"`, `woofer.invert = "True": must be true or false; write true, without quotes`},

		{"semicolons", "print.bed_mm", "[220; 220; 250]", "print.bed_mm = [220; 220; 250]: not written as TOML has it; must be three numbers from 10 to 5000 in square brackets; write [220, 220, 250]"},
		{"semicolons and decimal commas", "print.bed_mm", "[220,5; 220; 250]", "print.bed_mm = [220,5; 220; 250]: not written as TOML has it; must be three numbers from 10 to 5000 in square brackets; write [220.5, 220, 250]"},
		{"decimal commas in a list", "print.bed_mm", "[220,5, 219,5, 250,0]", "print.bed_mm = [220, 5, 219, 5, 250, 0]: must be three numbers from 10 to 5000 in square brackets; write [220.5, 219.5, 250.0]"},
		{"degree signs in a list", "mounts.keep_clear_deg", "[[180°, −10°, 15°]]", "mounts.keep_clear_deg = [[180°, −10°, 15°]]: not written as TOML has it; must be a list of [azimuth from -360 to 360, elevation from -90 to 90, half angle from 0.1 to 90], in degrees, at most 100; write [[180, -10, 15]]"},
		{"texts in a list", "print.bed_mm", `["220,5", "220", "250"]`, `print.bed_mm = ["220,5", "220", "250"]: must be three numbers from 10 to 5000 in square brackets; write [220.5, 220, 250]`},
		{"one for a list", "mounts.skip", "3", "mounts.skip = 3: must be whole numbers from 1 to 10000 in square brackets, none twice; write [3]"},
		{"list not closed", "mounts.skip", "[3, 4", "mounts.skip = [3, 4: not written as TOML has it; must be whole numbers from 1 to 10000 in square brackets, none twice; write [3, 4]"},
	} {
		t.Run(c.name, func(t *testing.T) {
			text, line := typed(c.key, c.value)
			_, err := design.Parse("a.toml", []byte(text))
			want := fmt.Sprintf("a.toml:%d: %s", line, strings.ReplaceAll(c.want, "SHAPES",
				`"geodesic", "ball", "prism", "antiprism", "file" or a solid such as "cube" or "truncated icosahedron"`))
			if err == nil || err.Error() != want {
				t.Errorf("\n got %v\nwant %s", err, want)
			}
		})
	}
}

// needs are what each of the tables needs that there may be several of.
var needs = map[string][]string{
	"channel": {"drivers = [1]"},
	"part":    {`name = "screw"`},
	"seat":    {"x_m = 2", "y_m = 0", "z_m = 1"},
	"body_at": {"x_m = 0", "y_m = 1", "z_m = 0"},
	"area":    {`shape = "ring"`, "count = 3", "radius_m = 2", "z_m = 1"},
}

// typed gives the least design with a key set to a value, and the line where it stands.
func typed(path, value string) (text string, line int) {
	table, name, ok := strings.Cut(path, ".")
	if !ok {
		return name0(path, value) + least, 1
	}
	row := name + " = " + value
	var out []string
	in, put := "", false
	for _, l := range strings.Split(strings.TrimSpace(least), "\n") {
		if strings.HasPrefix(l, "[") {
			in = strings.Trim(l, "[]")
		}
		if key, _, _ := strings.Cut(l, " ="); in == table && key == name {
			continue
		}
		out = append(out, l)
		if l == "["+table+"]" {
			out, put = append(out, row), true
		}
	}
	switch {
	case put:
	case needs[table] != nil:
		out = append(out, "[["+table+"]]", row)
		for _, need := range needs[table] {
			if !strings.HasPrefix(need, name+" ") {
				out = append(out, need)
			}
		}
	default:
		out = append(out, "["+table+"]", row)
	}
	for i, l := range out {
		if l == row {
			line = i + 1
		}
	}
	return strings.Join(out, "\n") + "\n", line
}

func name0(key, value string) string { return key + " = " + value + "\n" }

// bad are values that some keys cannot have, as a newcomer or a spreadsheet gives them.
var bad = []string{
	"nan", "inf", "-inf", "1e300", "-1e300", "1e-300", "-1", "0", "100000", "123456789", "99999999999999999999", "0.12345678901234567", "1e6",
	`"text"`, `""`, `"150,5"`, `"a\nb"`, `"\u001b[31m"`, "true", "[]", "[[]]", "[1, 2, 3, 4]", "[nan]", `["a"]`, "{}", "{a = 1}", "2025-03-01", "12:30:00",
	"150,5", "−30°", "“cube”", "cube", "150 mm", "1.234,5", "1,234", "'", "", "= 3", "[1;2]", "[1,5; 2]", "[1", "True", "12.0", "15e", `C:\x`, `"C:\x"`, "0x", "1__2", "12 34", "€5",
}

// Whatever a key is given, the error names the file, the line and a key, in one short
// line of plain words.
func TestEveryKeyIsRefusedInPlainWords(t *testing.T) {
	for _, k := range design.Keys() {
		for _, value := range bad {
			text, line := typed(k.Path, value)
			_, err := design.Parse("a.toml", []byte(text))
			if err == nil {
				continue
			}
			var e *design.Error
			if !errors.As(err, &e) {
				t.Fatalf("%s = %s: %T", k.Path, value, err)
			}
			said := err.Error()
			if found := jargon.In(said); found != "" {
				t.Errorf("%s = %s: %s\n%s", k.Path, value, found, said)
			}
			if strings.ContainsAny(said, "\n\r") || len(said) > 500 || !strings.HasPrefix(said, "a.toml:") {
				t.Errorf("%s = %s: %s", k.Path, value, said)
			}
			blamed := e.Key == k.Path || strings.HasPrefix(e.Key, inText(k.Path)) || strings.HasPrefix(e.Key, k.Path)
			// A possible value may clash with another key, which is blamed then, or lack one.
			clash := errors.Is(err, design.ErrConflict) || errors.Is(err, design.ErrMissing) || errors.Is(err, design.ErrRange)
			if !blamed && !clash || errors.Is(err, design.ErrSyntax) && (!blamed || e.Line != line) {
				t.Errorf("%s = %s on line %d: blames %q on line %d: %s", k.Path, value, line, e.Key, e.Line, said)
			}
		}
	}
}

// A number as a spreadsheet writes it is cured for every key that takes numbers.
func TestEveryNumberIsCured(t *testing.T) {
	for _, k := range design.Keys() {
		if k.Kind != design.Number || k.High <= k.Low {
			continue
		}
		good := (k.Low + k.High) / 2
		point := fmt.Sprintf("%.2f", good+0.25)
		if good+0.25 > k.High {
			point = fmt.Sprintf("%.3f", good)
		}
		comma := strings.Replace(point, ".", ",", 1)
		for _, value := range []string{comma, `"` + comma + `"`, "“" + comma + "”", comma + "°", "\u00a0" + comma + " %"} {
			text, _ := typed(k.Path, value)
			_, err := design.Parse("a.toml", []byte(text))
			if err == nil || !strings.Contains(err.Error(), "write "+strings.TrimRight(strings.TrimRight(point, "0"), ".")) {
				t.Errorf("%s = %s: %v", k.Path, value, err)
			}
		}
	}
}

// misspelt gives words that are nearly a word.
func misspelt(word string) []string {
	out := []string{strings.ToUpper(word), "x" + word, word + "s", strings.ReplaceAll(word, " ", "-") + "-"}
	if n := len(word); n > 4 {
		out = append(out, word[:n-1], word[1:], word[:n-2]+word[n-1:]+word[n-2:n-1], word[:2]+"x"+word[3:])
	}
	return out
}

// Every word that a design may use is asked after where it is nearly right, and so is
// every key and every table.
func TestEveryWordIsAskedAfter(t *testing.T) {
	asked := func(text, word, wrong string) {
		t.Helper()
		_, err := design.Parse("a.toml", []byte(text))
		if err == nil || !strings.Contains(err.Error(), "did you mean "+word+"?") {
			t.Errorf("%s for %s: %v", wrong, word, err)
		}
	}
	tables := map[string]bool{}
	for _, k := range design.Keys() {
		valid := map[string]bool{}
		for _, w := range k.Choices {
			valid[w] = true
		}
		for _, w := range k.Choices {
			if k.Kind != design.Choice || strings.Trim(w, "0123456789") == "" {
				continue
			}
			for _, wrong := range misspelt(w) {
				if !valid[wrong] {
					text, _ := typed(k.Path, design.Quote(wrong))
					asked(text, design.Quote(w), wrong)
				}
			}
		}
		if k.Table != "" && len(k.Name) > 4 {
			for _, wrong := range misspelt(k.Name) {
				if wrong == k.Name {
					continue
				}
				text, _ := typed(k.Table+"."+wrong, "1")
				asked(text, k.Name, wrong)
			}
		}
		if k.Table != "" && !tables[k.Table] {
			tables[k.Table] = true
			if k.Table == "seat" {
				continue // "seats" is a table too
			}
			asked(least+"["+k.Table+"s]\nx = 1\n", k.Table, k.Table+"s")
		}
	}
}

func TestOtherWordsForTheSame(t *testing.T) {
	for _, c := range []struct{ key, said, meant string }{
		{"body.shape", "icosahedral", "icosahedron"}, {"body.shape", "sphere", "ball"}, {"body.shape", "football", "truncated icosahedron"},
		{"mounts.on", "face", "faces"}, {"mounts.on", "vertex", "vertices"}, {"mounts.on", "uniform", "even"},
		{"timing.model", "spherical", "sphere"}, {"timing.model", "free-field", "point"}, {"wiring.split", "distance", "arrival"},
		{"wiring.split", "neighbors", "neighbours"}, {"protection.family", "Linkwitz–Riley", "linkwitz-riley"}, {"protection.family", "LR4", "linkwitz-riley"},
		{"body.base", "octahedral", "octahedron"}, {"timing.delays_by", "straight line", "straight"},
	} {
		text, _ := typed(c.key, design.Quote(c.said))
		_, err := design.Parse("a.toml", []byte(text))
		if err == nil || !strings.HasSuffix(err.Error(), "; did you mean "+design.Quote(c.meant)+"?") {
			t.Errorf("%s = %q: %v", c.key, c.said, err)
		}
	}
}

func TestKeyOfAnotherTableMisspelt(t *testing.T) {
	text, _ := typed("body.nominal_ohms", "8")
	_, err := design.Parse("a.toml", []byte(text))
	if want := "did you mean nominal_ohm? It belongs in [driver]"; err == nil || !strings.HasSuffix(err.Error(), want) {
		t.Errorf("%v, want %s", err, want)
	}
}

// What is no text at all, or not one in UTF-8, is told as such.
func TestNoText(t *testing.T) {
	for name, c := range map[string]struct{ data, want string }{
		"picture": {"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR", "a.toml: this is not a text, but a file of another kind"},
		"UTF-16":  {"\xff\xfe[\x00b\x00", "a.toml: the text is saved as UTF-16; save it as UTF-8"},
		"Latin-1": {"name = \"Gr\xfc\xdfe\"\n", "a.toml: the text is not saved as UTF-8, or it is a file of another kind; save it as UTF-8"},
	} {
		if _, err := design.Parse("a.toml", []byte(c.data)); !errors.Is(err, design.ErrSyntax) || err.Error() != c.want {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestPathNearlyRight(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "my lantern.toml"), []byte(least), 0o600); err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]string{
		"my lantren.toml": "/my lantren.toml: there is no such file; did you mean 'DIR/my lantern.toml'?",
		"my lantern":      "/my lantern: there is no such file; did you mean 'DIR/my lantern.toml'?",
		"garden.toml":     "/garden.toml: there is no such file",
		"":                ": it is a folder, not a file",
		"a/b.toml":        "/a/b.toml: there is no such file; there is no folder DIR/a either",
	} {
		_, err := design.Read(filepath.Join(dir, name))
		if want = "DIR" + want; err == nil || strings.ReplaceAll(err.Error(), dir, "DIR") != want {
			t.Errorf("%s:\n got %v\nwant %s", name, err, want)
		}
	}
}

// A long file that is not TOML is refused about as fast as one that is.
func TestLongFaultyText(t *testing.T) {
	for name, text := range map[string]string{
		"empty lines":  strings.Repeat("\n", 1<<19) + "x",
		"tables":       strings.Repeat("[a]\n", 1<<17) + "= 3",
		"channels":     strings.Repeat("[[channel]]\n", 1<<16) + "x = 1,5",
		"one value":    "x = " + strings.Repeat("“", 1<<18),
		"open list":    "x = [" + strings.Repeat("1,\n", 1<<18),
		"comma number": "x = " + strings.Repeat("1,", 1<<18),
	} {
		_, err := design.Parse("long.toml", []byte(text))
		if err == nil || len(err.Error()) > 500 {
			t.Errorf("%s: %.600v", name, err)
		}
	}
}
