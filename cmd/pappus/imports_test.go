package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// rank orders the rooms: a package may import its own room and those of a lower
// rank, no other of the same.
var rank = map[string]int{"layout": 1, "timing": 2, "render": 3, "preview": 3, "cmd": 4}

// TestImportsPointOneWay reads the imports of every file, tests included.
func TestImportsPointOneWay(t *testing.T) {
	files := 0
	err := filepath.WalkDir("../..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || filepath.Ext(path) != ".go" {
			return err
		}
		relative, err := filepath.Rel("../..", path)
		if err != nil {
			return err
		}
		from, _, _ := strings.Cut(filepath.ToSlash(relative), "/")
		if rank[from] == 0 {
			return nil // the reference tables import nothing of ours
		}
		files++
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, spec := range f.Imports {
			name, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				return err
			}
			inside, ours := strings.CutPrefix(name, "pappus/")
			to, _, _ := strings.Cut(inside, "/")
			if ours && to != "testdata" && to != from && rank[to] >= rank[from] {
				t.Errorf("%s: %s may not import %s", relative, from, name)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if files < 20 {
		t.Errorf("read only %d files; the walk is wrong", files)
	}
}
