package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// constant is one of a package, in its file.
type constant struct {
	name, file string
	at, end    int // bytes of its name and after its file's imports
}

// find looks for a constant of a package.
func find(folder, name string) (constant, error) {
	files, err := filepath.Glob(filepath.Join(folder, "*.go"))
	if err != nil {
		return constant{}, err
	}
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		text, err := os.ReadFile(file)
		if err != nil {
			return constant{}, err
		}
		set := token.NewFileSet()
		parsed, err := parser.ParseFile(set, file, text, 0)
		if err != nil {
			return constant{}, err
		}
		whole, err := filepath.Abs(file)
		if err != nil {
			return constant{}, err
		}
		if at := placeOf(parsed, name); at.IsValid() {
			return constant{name, whole, set.Position(at).Offset, set.Position(parsed.Name.End()).Offset}, nil
		}
	}
	return constant{}, fmt.Errorf("%s has no constant %s", folder, name)
}

// placeOf returns where a file says what a constant is; none where it does not.
func placeOf(f *ast.File, name string) token.Pos {
	for _, d := range f.Decls {
		g, ok := d.(*ast.GenDecl)
		if !ok || g.Tok != token.CONST {
			continue
		}
		for _, s := range g.Specs {
			spec := s.(*ast.ValueSpec)
			for i, n := range spec.Names {
				if n.Name == name && i < len(spec.Values) {
					return n.Pos()
				}
			}
		}
	}
	return token.NoPos
}

// loosen returns a file's text with variables in place of some of its constants, each of which
// package trialtable is told of.
func loosen(text string, some []constant) string {
	slices.SortFunc(some, func(a, b constant) int { return b.at - a.at })
	end := some[0].end
	for _, c := range some {
		text = text[:c.at] + "was_" + text[c.at:]
	}
	text = text[:end] + "\n\nimport \"pappus/testdata/trialtable\"\n" + text[end:]
	for _, c := range some {
		text += fmt.Sprintf("\nvar %[1]s = was_%[1]s\nvar _ = trialtable.Try(%[1]q, &%[1]s)\n", c.name)
	}
	return text
}
