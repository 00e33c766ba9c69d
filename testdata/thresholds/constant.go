package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// constant is one of a package, in the text of its file.
type constant struct {
	file, text string
	from, to   int // bytes of its value
	value      string
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
		if v := valueOf(parsed, name); v != nil {
			from, to := set.Position(v.Pos()).Offset, set.Position(v.End()).Offset
			return constant{whole, string(text), from, to, string(text[from:to])}, nil
		}
	}
	return constant{}, fmt.Errorf("%s has no constant %s", folder, name)
}

// valueOf returns what a constant of a file is; nil where there is none.
func valueOf(f *ast.File, name string) (value ast.Expr) {
	for _, d := range f.Decls {
		g, ok := d.(*ast.GenDecl)
		if !ok || g.Tok != token.CONST {
			continue
		}
		for _, s := range g.Specs {
			spec := s.(*ast.ValueSpec)
			for i, n := range spec.Names {
				if n.Name == name && i < len(spec.Values) {
					return spec.Values[i]
				}
			}
		}
	}
	return nil
}

// times returns the file with the constant multiplied: a whole one stays whole.
func (c constant) times(factor float64) string {
	value := fmt.Sprintf("(%s) * %v", c.value, factor)
	if whole, err := strconv.Atoi(c.value); err == nil {
		value = strconv.Itoa(int(math.Round(factor * float64(whole))))
	}
	return c.text[:c.from] + value + c.text[c.to:]
}
