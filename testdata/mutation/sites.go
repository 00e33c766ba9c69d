package main

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"math"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
)

// site is a number in the source.
type site struct {
	file       string // its path
	name       string // of the constant or the function that has it
	line       int
	from, to   int // bytes of the file that it takes
	text, free string
	changed    []string // what it is changed to
	kind       string   // its type, if that is a basic one and it is not in a function's constant
	named      int      // where a constant of the package has its name; 0: it is a literal
}

// String says where a number stands.
func (s site) String() string {
	return fmt.Sprintf("%s/%s:%d %s %s", filepath.Base(filepath.Dir(s.file)), filepath.Base(s.file), s.line, s.name, s.text)
}

// sites lists a package's numbers, in the order of their files.
func (s source) sites() []site {
	var out []site
	for _, f := range s.files {
		w := walk{source: s, free: s.marks(f)}
		for _, d := range f.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				w.within(d, d.Name.Name)
			case *ast.GenDecl:
				w.within(d, "")
			}
		}
		out = append(out, w.out...)
	}
	return out
}

var mark = regexp.MustCompile(`\bfree: (\S.*)`)

// marks returns the reasons why numbers of a file are free, by their lines.
func (s source) marks(f *ast.File) map[int]string {
	out := map[int]string{}
	text := strings.Split(string(s.text[s.set.Position(f.Pos()).Filename]), "\n")
	for _, group := range f.Comments {
		for _, c := range group.List {
			m := mark.FindStringSubmatch(c.Text)
			if m == nil {
				continue
			}
			line := s.set.Position(c.Pos()).Line
			if strings.HasPrefix(strings.TrimSpace(text[line-1]), "//") {
				line = s.set.Position(group.End()).Line + 1
			}
			out[line] = m[1]
		}
	}
	return out
}

// walk gathers the numbers of a file.
type walk struct {
	source
	free map[int]string
	out  []site
}

// within gathers those of a declaration, name being that of the function, if it is one.
func (w *walk) within(d ast.Node, name string) {
	var above []ast.Node
	ast.Inspect(d, func(n ast.Node) bool {
		if n == nil {
			above = above[:len(above)-1]
			return true
		}
		switch n := n.(type) {
		case *ast.GenDecl:
			if n.Tok == token.CONST {
				w.constants(n)
				return false
			}
		case *ast.ArrayType:
			return false
		case *ast.ValueSpec:
			if name == "" || len(above) < 2 {
				name = n.Names[0].Name
			}
		case *ast.BasicLit:
			if w.counts(n, above) {
				w.add(n, name, w.info.Types[n].Value)
				w.out[len(w.out)-1].kind = kindOf(w.info.Types[n].Type)
			}
		}
		above = append(above, n)
		return true
	})
}

// constants gathers the numbers of a declaration of constants: each value as a whole.
func (w *walk) constants(d *ast.GenDecl) {
	for _, spec := range d.Specs {
		v := spec.(*ast.ValueSpec)
		for i, expr := range v.Values {
			c, ok := w.info.Defs[v.Names[i]].(*types.Const)
			if !ok || counted(expr) || !numeric(c.Type()) || constant.Sign(c.Val()) == 0 {
				continue
			}
			w.add(expr, v.Names[i].Name, c.Val())
			if last := &w.out[len(w.out)-1]; !w.isLocal(v.Names[i]) {
				last.kind, last.named = kindOf(c.Type()), w.set.Position(v.Names[i].Pos()).Offset
			}
		}
	}
}

// counted tells whether an expression counts by iota.
func counted(expr ast.Expr) bool {
	found := false
	ast.Inspect(expr, func(n ast.Node) bool {
		id, ok := n.(*ast.Ident)
		found = found || ok && id.Name == "iota"
		return true
	})
	return found
}

func numeric(t types.Type) bool {
	b, ok := t.Underlying().(*types.Basic)
	return ok && b.Info()&(types.IsInteger|types.IsFloat) != 0 && b.Kind() != types.UntypedRune
}

// counts tells whether a literal is a number that may decide something; above is what it stands
// in, the outermost first.
func (w *walk) counts(l *ast.BasicLit, above []ast.Node) bool {
	if l.Kind != token.INT && l.Kind != token.FLOAT || strings.HasPrefix(l.Value, "0o") {
		return false
	}
	v, _ := constant.Float64Val(constant.ToFloat(constant.MakeFromLiteral(l.Value, l.Kind, 0)))
	compared, node := false, ast.Node(l)
	for i := len(above) - 1; i >= 0; i-- {
		switch p := above[i].(type) {
		case *ast.IndexExpr:
			if p.Index == node {
				return false
			}
		case *ast.SliceExpr:
			if p.X != node {
				return false
			}
		case *ast.BinaryExpr:
			switch p.Op {
			case token.SHL, token.SHR:
				return false
			case token.LSS, token.GTR, token.LEQ, token.GEQ, token.EQL, token.NEQ:
				compared = true
			}
		case *ast.KeyValueExpr:
			if p.Key == node {
				return false
			}
		case *ast.CallExpr, *ast.FuncLit, ast.Stmt:
			i = 0 // what is outside has nothing to do with it
		}
		node = above[max(i, 0)]
	}
	least := 3.0
	if compared {
		least = 2
	}
	return v >= least || v != math.Trunc(v)
}

// add takes up a number.
func (w *walk) add(e ast.Expr, name string, v constant.Value) {
	from, to := w.set.Position(e.Pos()), w.set.Position(e.End())
	s := site{file: from.Filename, name: name, line: from.Line, from: from.Offset, to: to.Offset, free: w.free[from.Line]}
	s.text = string(w.text[s.file][s.from:s.to])
	for _, by := range []float64{1.2, 0.8} {
		s.changed = append(s.changed, changed(v, by))
	}
	w.out = append(w.out, s)
}

// changed returns a number times a factor: a whole one by 1 at least.
func changed(v constant.Value, by float64) string {
	if i, exact := constant.Int64Val(constant.ToInt(v)); v.Kind() == constant.Int && exact {
		to := int64(math.Round(float64(i) * by))
		if to == i {
			to += int64(math.Copysign(1, float64(i)*(by-1)))
		}
		return strconv.FormatInt(to, 10)
	}
	f, _ := constant.Float64Val(constant.ToFloat(v))
	text := strconv.FormatFloat(f*by, 'g', 12, 64)
	if !strings.ContainsAny(text, ".e") {
		text += ".0"
	}
	return text
}
