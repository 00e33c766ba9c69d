package main

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pappus/layout/design"
	"pappus/preview"
	"pappus/preview/programme"
	"pappus/testdata/jargon"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// refusal runs a command that must fail, and returns what it says. It is one line without
// jargon.
func refusal(t *testing.T, args ...string) string {
	t.Helper()
	root := newRoot()
	root.SetArgs(args)
	root.SetOut(io.Discard)
	root.SetErr(io.Discard)
	root.SetIn(new(bytes.Buffer))
	err := root.ExecuteContext(t.Context())
	if err == nil {
		t.Errorf("%q: no error", args)
		return ""
	}
	text := said(err)
	if found := jargon.In(text); found != "" || strings.ContainsAny(text, "\n\r\t") || len(text) > 500 {
		t.Errorf("%q: %s\n%s", args, found, text)
	}
	return text
}

// commands lists every command, as it is called.
func commands(c *cobra.Command) []*cobra.Command {
	var out []*cobra.Command
	for _, sub := range c.Commands() {
		if !sub.Hidden && sub.Name() != "completion" && sub.Name() != "help" {
			out = append(append(out, sub), commands(sub)...)
		}
	}
	return out
}

func called(c *cobra.Command) []string { return strings.Fields(c.CommandPath())[1:] }

func TestEveryFlagIsRefusedInPlainWords(t *testing.T) {
	for _, c := range commands(newRoot()) {
		c.InheritedFlags() // makes them known
		c.Flags().VisitAll(func(f *pflag.Flag) {
			with := func(arg string) []string {
				if c.Name() == "impedance" || c.Name() == "drivers" {
					return append(called(c), "table.csv", arg) // which it needs
				}
				return append(called(c), arg)
			}
			name := "--" + f.Name
			switch f.Value.Type() {
			case "int", "float64", "bool":
				for _, bad := range []string{"x", "1,2,3", "“1”", "0x", "1e", "", " "} {
					if text := refusal(t, with(name+"="+bad)...); !strings.HasPrefix(text, name+" ") || !strings.Contains(text, "must be") {
						t.Errorf("%s=%s: %s", name, bad, text)
					}
				}
			}
			if f.Value.Type() == "float64" {
				for _, bad := range []string{"nan", "inf", "-Inf"} {
					if text := refusal(t, with(name+"="+bad)...); !strings.HasPrefix(text, name+" ") {
						t.Errorf("%s=%s: %s", name, bad, text)
					}
				}
				if text := refusal(t, with(name+"=12,5")...); !strings.HasSuffix(text, "write 12.5") {
					t.Error(text)
				}
			}
			if f.Value.Type() != "bool" {
				if text := refusal(t, with(name)...); !strings.HasPrefix(text, name+" takes a value: ") {
					t.Error(text)
				}
			}
			for _, wrong := range []string{name + "s", strings.ToUpper(name), name[:len(name)-1]} {
				if c.Flags().Lookup(strings.TrimPrefix(wrong, "--")) != nil {
					continue
				}
				if text := refusal(t, with(wrong)...); !strings.HasSuffix(text, "; did you mean "+name+"?") && len(f.Name) > 3 {
					t.Error(text)
				}
			}
		})
		refusal(t, append(called(c), "---x")...)
		refusal(t, append(called(c), "-Z")...)
	}
}

func TestEveryCommandIsAskedAfter(t *testing.T) {
	for _, c := range newRoot().Commands() {
		for _, wrong := range []string{c.Name() + "s", strings.ToUpper(c.Name()), c.Name()[:1] + c.Name()[2:3] + c.Name()[1:2] + c.Name()[3:]} {
			if text := refusal(t, wrong); wrong != c.Name() && !strings.HasSuffix(text, "; did you mean "+c.Name()+"?") {
				t.Errorf("%s: %s", wrong, text)
			}
		}
	}
	for _, args := range [][]string{{"wobble"}, {"help", "wobble"}, {"lantern.toml"}, {"plan", "a.toml", "b.toml"}, {"version", "x"}, {"compare"}, {"impedance"}, {"impedance", "a", "b", "c"}} {
		refusal(t, args...)
	}
}

// words that flags take, each nearly right.
func TestWordsOfFlagsAreAskedAfter(t *testing.T) {
	for _, flag := range []struct {
		command, name string
		words         []string
	}{
		{"listen", "programme", programme.Names()}, {"listen", "cases", preview.NamesOf(preview.Cases)}, {"measure", "reference", references},
	} {
		for _, word := range flag.words {
			for _, wrong := range []string{strings.ToUpper(word), word + "s", strings.ReplaceAll(word, "_", "-") + "-", word[:1] + "x" + word[1:]} {
				text := refusal(t, flag.command, "--"+flag.name, wrong)
				if !strings.HasPrefix(text, "--"+flag.name+" "+wrong+": must be one of ") || !strings.HasSuffix(text, "; did you mean "+word+"?") {
					t.Errorf("%s for %s: %s", wrong, word, text)
				}
			}
		}
	}
}

func TestFlagsOutOfRange(t *testing.T) {
	for _, args := range [][]string{
		{"listen", "--rounds", "0"}, {"listen", "--rounds", "100000000"}, {"listen", "--bits", "12"}, {"listen", "--turn-deg", "181"}, {"listen", "--turn-deg", "3"},
		{"listen", "--cases", ""}, {"listen", "--cases", "aligned,aligned"}, {"listen", "--blind", "--cases", "aligned"}, {"listen", "--json"}, {"listen", "--file", ""},
		{"listen", "--walk", "1"}, {"listen", "--walk", "1,5,,2"}, {"listen", "--walk", "201,0,0"}, {"listen", "--walk", "nan,0,0"}, {"listen", "--walk", ""},
		{"sweep", "--level-db", "0"}, {"sweep", "--level-db", "3"}, {"sweep", "--start-hz", "1"}, {"sweep", "--stop-hz", "1e9"}, {"sweep", "--stop-hz", "-1e9"},
		{"sweep", "--length-s", "1e9"}, {"sweep", "--length-s", "-1"}, {"sweep", "--rate", "3"}, {"sweep", "--rate", "100000000"},
		{"serve", "--port", "-1"}, {"serve", "--port", "65536"},
		{"measure"}, {"measure", "-i", "nowhere"}, {"measure", "-i", ".", "--also", "x"}, {"measure", "-i", ".", "--also", "x=1,2"},
		{"impedance", "a.wav"}, {"impedance", "a.csv", "--mass-g", "1", "--box-l", "2"}, {"impedance", "a.csv", "--write"}, {"impedance", "a.csv", "--channel", "1", "--write"},
		{"tune", "add"}, {"new", "nowhere/a.toml"},
	} {
		refusal(t, args...)
	}
}

// Whatever is given for a file or a folder, each command says in plain words which it is
// and what is wrong with it.
func TestFilesThatCannotBe(t *testing.T) {
	t.Chdir(t.TempDir())
	write := func(name, text string) {
		t.Helper()
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Mkdir("folder", 0o700); err != nil {
		t.Fatal(err)
	}
	write("good.toml", string(design.DefaultTOML()))
	write("empty", "")
	write("picture", "\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR")
	write("latin.toml", "name = \"Gr\xfc\xdfe\"\n")
	write("comma.toml", "[body]\nradius_mm = 150,5\n")
	write("list.csv", "x;y;z\n1;2;3\n")
	write("link.toml", "")
	if err := os.Remove("link.toml"); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("link.toml", "link.toml"); err != nil {
		t.Logf("no links here: %v", err)
		write("link.toml", "")
	}
	paths := []string{"missing.toml", "folder", "empty", "picture", "latin.toml", "comma.toml", "list.csv", "link.toml", "good.toml/a.toml", "no/where.toml", strings.Repeat("long", 100)}
	if os.Getuid() != 0 { // to whom nothing is closed
		write("closed.toml", "")
		if err := os.Chmod("closed.toml", 0); err != nil {
			t.Fatal(err)
		}
		paths = append(paths, "closed.toml")
	}
	for _, path := range paths {
		for _, command := range [][]string{
			{"plan"}, {"sheets"}, {"kit"}, {"wiring"}, {"channels"}, {"level"}, {"limits"}, {"sweep"}, {"sweep", "--rehearse"}, {"measure", "-i", "folder"}, {"listen"}, {"compare"}, {"compare", "good.toml"},
			{"tune"}, {"tune", "add", "--impedance", "list.csv"},
		} {
			if command[0] == "compare" && len(command) > 1 && path != "missing.toml" {
				continue // the good one is planned first
			}
			if text := refusal(t, append(command, path)...); !strings.HasPrefix(text, path) {
				t.Errorf("%q %s: %s", command, path, text)
			}
		}
		if path == "list.csv" || path == "comma.toml" || path == "latin.toml" || path == "picture" {
			continue // what tables hold is for their own reader to say
		}
		for _, command := range [][]string{{"impedance"}, {"impedance", "--channel", "1"}, {"tune", "add", "--impedance"}} {
			if text := refusal(t, append(command, path)...); !strings.HasPrefix(text, path) {
				t.Errorf("%q %s: %s", command, path, text)
			}
		}
	}
	for _, path := range paths {
		refusal(t, "listen", "--file", path)
		refusal(t, "measure", "-i", path)
		refusal(t, "impedance", "--series-ohm", "10", path+".wav")
	}
	for _, path := range []string{"good.toml", "good.toml/a.toml", "no/where.toml"} {
		refusal(t, "new", path)
	}
	for _, folder := range []string{"good.toml", "good.toml/within", "/proc/nowhere", strings.Repeat("long", 100)} {
		if _, err := os.Stat("/proc"); err != nil && strings.HasPrefix(folder, "/proc") {
			continue
		}
		if text := refusal(t, "wiring", "-o", folder); !strings.Contains(text, folder) || !strings.Contains(text, "name another") {
			t.Errorf("-o %s: %s", folder, text)
		}
	}
}

// TestNoFolder: an empty name is refused by every command that writes into a folder, before it
// reads anything.
func TestNoFolder(t *testing.T) {
	for _, c := range commands(newRoot()) {
		if c.Flags().Lookup("output") == nil {
			continue
		}
		for _, flag := range [][]string{{"-o", ""}, {"--output="}} {
			args := append(called(c), flag...)
			if slices.Contains([]string{"impedance", "compare", "drivers"}, c.Name()) {
				args = append(args, "none.csv")
			}
			if text := refusal(t, args...); !strings.HasPrefix(text, "--output: names no folder") {
				t.Errorf("%q: %s", args, text)
			}
		}
	}
}

// A file that stands in the way is named, with what to do, and stays as it is.
func TestRefusedOverwrite(t *testing.T) {
	t.Chdir(t.TempDir())
	mine := filepath.Join("my wires", "strings.csv")
	if err := os.Mkdir("my wires", 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(mine, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	want := mine + " is in the way: it was not written by this program, or changed since, and stays as it is; write into another folder, or move that file away"
	if text := refusal(t, "wiring", "-o", "my wires"); text != want {
		t.Errorf("\n got %s\nwant %s", text, want)
	}
	if now, err := os.ReadFile(mine); err != nil || string(now) != "mine" {
		t.Errorf("%q, %v", now, err)
	}
	if err := os.WriteFile("mine.toml", nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if text := refusal(t, "new", "mine.toml"); text != "mine.toml is there already and stays as it is; name another file, or move that one away" {
		t.Error(text)
	}
}

// Paths with spaces are quoted where they are to be copied.
func TestPathsToBeCopied(t *testing.T) {
	t.Chdir(t.TempDir())
	root, out := newRoot(), new(bytes.Buffer)
	root.SetArgs([]string{"new", "my lantern.toml"})
	root.SetOut(out)
	if err := root.ExecuteContext(t.Context()); err != nil || !strings.HasSuffix(out.String(), "then: pappus plan 'my lantern.toml'\n") {
		t.Errorf("%s, %v", out, err)
	}
	if text := refusal(t, "plan", "my", "lantern.toml"); text != "a path with spaces stands in quotes: pappus plan 'my lantern.toml'" {
		t.Error(text)
	}
	if text := refusal(t, "my lantern.toml"); text != "my lantern.toml is no command; to plan that design: pappus plan 'my lantern.toml'" {
		t.Error(text)
	}
	root, out = newRoot(), new(bytes.Buffer)
	root.SetArgs([]string{"sweep", "my lantern.toml", "-o", "my sweep", "--length-s", "0.3"})
	root.SetOut(out)
	if err := root.ExecuteContext(t.Context()); err != nil || !strings.Contains(out.String(), "Then:\npappus measure 'my lantern.toml' -i FOLDER\n") {
		t.Errorf("%s, %v", out, err)
	}
}
