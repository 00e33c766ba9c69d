package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// TestLoosen: constants of a file are found by name, and become variables that can be told of.
func TestLoosen(t *testing.T) {
	const text = "package p\n\nimport \"math\"\n\nconst (\n\tone = 1 // of them\n\thalf = 0.5\n)\n\nvar root = math.Sqrt(half)\n"
	const want = "package p\n\nimport \"pappus/testdata/trialtable\"\n\n\nimport \"math\"\n\nconst (\n\twas_one = 1 // of them\n\twas_half = 0.5\n)\n\nvar root = math.Sqrt(half)\n" +
		"\nvar half = was_half\nvar _ = trialtable.Try(\"half\", &half)\n" +
		"\nvar one = was_one\nvar _ = trialtable.Try(\"one\", &one)\n"
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, "p.go"), []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	var some []constant
	for _, name := range []string{"one", "half"} {
		c, err := find(folder, name)
		if err != nil {
			t.Fatal(err)
		}
		some = append(some, c)
	}
	if diff := cmp.Diff(want, loosen(text, some)); diff != "" {
		t.Error(diff)
	}
	if _, err := find(folder, "root"); err == nil || !strings.Contains(err.Error(), "no constant root") {
		t.Errorf("a variable: %v", err)
	}
}
