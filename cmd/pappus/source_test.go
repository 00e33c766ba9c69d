package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// general is the verb that writes an exponent where a number is large for its digits.
var general = regexp.MustCompile(`%[-+0-9.*]*(\[[0-9]+\])?[-+0-9.*]*g`)

// TestNumbersAreWrittenInFull: what people read is written by package prose, which writes
// 1000 Hz where package fmt has 1e+03 Hz. Drawings are for programs.
func TestNumbersAreWrittenInFull(t *testing.T) {
	files := 0
	err := filepath.WalkDir("../..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") || filepath.Base(path) == "svg.go" {
			return err
		}
		relative, err := filepath.Rel("../..", path)
		if err != nil {
			return err
		}
		if from, _, _ := strings.Cut(filepath.ToSlash(relative), "/"); rank[from] == 0 {
			return nil
		}
		files++
		set := token.NewFileSet()
		f, err := parser.ParseFile(set, path, nil, 0)
		if err != nil {
			return err
		}
		ast.Inspect(f, func(n ast.Node) bool {
			if call, ok := n.(*ast.CallExpr); ok && ofFmt(call) && general.MatchString(formatOf(call)) {
				t.Errorf("%v: write it with package prose", set.Position(call.Pos()))
			}
			return true
		})
		return nil
	})
	if err != nil || files < 100 {
		t.Fatalf("read %d files: %v", files, err)
	}
}

// ofFmt tells whether a call is one of package fmt that writes.
func ofFmt(call *ast.CallExpr) bool {
	s, ok := call.Fun.(*ast.SelectorExpr)
	if !ok {
		return false
	}
	id, ok := s.X.(*ast.Ident)
	return ok && id.Name == "fmt" && (s.Sel.Name == "Sprintf" || s.Sel.Name == "Errorf" || s.Sel.Name == "Fprintf" || s.Sel.Name == "Printf")
}

// formatOf returns the literals among a call's arguments, joined.
func formatOf(call *ast.CallExpr) string {
	var text strings.Builder
	for _, arg := range call.Args {
		ast.Inspect(arg, func(n ast.Node) bool {
			_, inner := n.(*ast.CallExpr)
			if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING {
				s, _ := strconv.Unquote(l.Value) // the parser has read it
				text.WriteString(s)
			}
			return !inner
		})
	}
	return text.String()
}
