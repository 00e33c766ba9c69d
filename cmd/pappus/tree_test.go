package main

import (
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// TestTreeIsAsDrawn: DEVELOPERS.md draws each folder with Go code once, and no other.
func TestTreeIsAsDrawn(t *testing.T) {
	data, err := os.ReadFile("../../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(packages(t), drawn(string(data))); diff != "" {
		t.Errorf("the tree (-) and DEVELOPERS.md (+):\n%s", diff)
	}
}

// TestFilesAreThere: every file and folder that DEVELOPERS.md names from the top is there.
func TestFilesAreThere(t *testing.T) {
	data, err := os.ReadFile("../../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	named := regexp.MustCompile("`((?:cmd|layout|timing|render|preview|testdata)/[a-z_0-9/.]+)`").FindAllStringSubmatch(string(data), -1)
	if len(named) < 20 {
		t.Errorf("found only %d names; the expression is wrong", len(named))
	}
	for _, n := range named {
		if _, err := os.Stat(filepath.Join("../..", filepath.FromSlash(n[1]))); err != nil {
			t.Errorf("DEVELOPERS.md names %s: %v", n[1], err)
		}
	}
}

// packages lists the folders with Go code, by their paths from the top.
func packages(t *testing.T) []string {
	var out []string
	err := filepath.WalkDir("../..", func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "node_modules" || strings.HasPrefix(d.Name(), ".") && name != "../..") {
			return fs.SkipDir
		}
		if filepath.Ext(name) == ".go" {
			relative, err := filepath.Rel("../..", filepath.Dir(name))
			if err != nil {
				return err
			}
			out = append(out, filepath.ToSlash(relative))
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// drawn reads the tree of the document: a folder a line, two more spaces a level.
func drawn(text string) []string {
	line := regexp.MustCompile(`^    ((?:  )*)([a-z/]+) {2,}(?:\S.*)$`)
	_, text, _ = strings.Cut(text, "## The tree")
	text, _, _ = strings.Cut(text, "\n## ")
	var out, above []string
	for l := range strings.Lines(text) {
		if m := line.FindStringSubmatch(strings.TrimRight(l, "\n")); m != nil {
			level := len(m[1]) / 2
			above = append(above[:min(level, len(above))], m[2])
			if !strings.Contains(l, "(no code of its own)") {
				out = append(out, path.Join(above...))
			}
		}
	}
	slices.Sort(out)
	return out
}
