package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// TestTypesAreCurrent: the committed types are those of the structs as they are.
func TestTypesAreCurrent(t *testing.T) {
	const page = ".."
	want, err := types(page)
	if err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile(filepath.Join(page, "web", "src", "document.ts"))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("run go generate ./render/page:\n%s", diff)
	}
}
