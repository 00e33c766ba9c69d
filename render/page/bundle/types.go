package main

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"maps"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
)

// types returns the TypeScript of what the page and its server send each other: one
// interface for each struct with JSON keys in the page's package, and for each of package
// document that one of those holds. Comments come along. A field is null where its comment
// has the word or its type is a pointer, and may be away where it is left out when empty;
// a tag ts has the type where Go has none for it.
func types(page string) ([]byte, error) {
	s := shapes{found: map[string]shape{}, wanted: map[string]bool{}}
	if err := s.read(filepath.Join(page, "..", "document")); err != nil {
		return nil, err
	}
	documents := slices.Collect(maps.Keys(s.found))
	if err := s.read(page); err != nil {
		return nil, err
	}
	for name := range s.found {
		if !slices.Contains(documents, name) {
			s.want(name)
		}
	}
	var b bytes.Buffer
	b.WriteString("// Made by go generate ./render/page from the structs of render/document and render/page.\n\n" +
		"import type { Delays, Kind, Quantity, Value, View } from \"./types\";\n\n" +
		"export type Triple = [number, number, number];\n")
	for _, name := range slices.Sorted(maps.Keys(s.wanted)) {
		s.write(&b, s.found[name])
	}
	return b.Bytes(), s.err
}

// shape is a struct with JSON keys.
type shape struct {
	name, about string
	fields      []*ast.Field
}

// shapes are all that there are, by their names in TypeScript.
type shapes struct {
	found  map[string]shape
	wanted map[string]bool
	err    error
}

// read finds the shapes of a package.
func (s *shapes) read(folder string) error {
	files, err := filepath.Glob(filepath.Join(folder, "*.go"))
	if err != nil {
		return err
	}
	for _, name := range files {
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments)
		if err != nil {
			return err
		}
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		for _, d := range file.Decls {
			if g, ok := d.(*ast.GenDecl); ok && len(g.Specs) == 1 {
				s.take(g)
			}
		}
	}
	return nil
}

// take takes a declaration in, where it is one of a shape.
func (s *shapes) take(g *ast.GenDecl) {
	t, ok := g.Specs[0].(*ast.TypeSpec)
	if !ok {
		return
	}
	of, ok := t.Type.(*ast.StructType)
	if !ok || !slices.ContainsFunc(of.Fields.List, func(f *ast.Field) bool { return tag(f, "json") != "" }) {
		return
	}
	about := strings.TrimPrefix(text(g.Doc), t.Name.Name+" ")
	s.found[exported(t.Name.Name)] = shape{exported(t.Name.Name), exported(strings.TrimPrefix(strings.TrimPrefix(about, "is "), "are ")), of.Fields.List}
}

// want marks a shape, and all that it holds, as one to write.
func (s *shapes) want(name string) {
	if _, ok := s.found[name]; !ok || s.wanted[name] {
		return
	}
	s.wanted[name] = true
	for _, f := range s.found[name].fields {
		if tag(f, "ts") != "" {
			continue
		}
		ast.Inspect(f.Type, func(n ast.Node) bool {
			if i, ok := n.(*ast.Ident); ok {
				s.want(exported(i.Name))
			}
			return true
		})
	}
}

func (s *shapes) write(b *bytes.Buffer, of shape) {
	var bases []string
	var body bytes.Buffer
	for _, f := range of.fields {
		key, options, _ := strings.Cut(tag(f, "json"), ",")
		about := strings.TrimSpace(text(f.Doc) + " " + text(f.Comment))
		if key == "" {
			base := s.of(f.Type, false)
			if name, ok := strings.CutSuffix(base, " | null"); ok {
				base = "Partial<" + name + ">"
			}
			bases = append(bases, base)
			continue
		}
		if about != "" {
			fmt.Fprintf(&body, "  /** %s */\n", about)
		}
		kind := tag(f, "ts")
		if kind == "" {
			kind = s.of(f.Type, strings.Contains(about, "null"))
		}
		if options == "omitempty" {
			key, kind = key+"?", strings.TrimSuffix(kind, " | null")
		}
		fmt.Fprintf(&body, "  %s: %s;\n", key, kind)
	}
	if of.about != "" {
		fmt.Fprintf(b, "\n/** %s */", of.about)
	}
	extends := ""
	if bases != nil {
		extends = " extends " + strings.Join(bases, ", ")
	}
	fmt.Fprintf(b, "\nexport interface %s%s {\n%s}\n", of.name, extends, body.String())
}

// of returns a Go type in TypeScript; what in it can be null is.
func (s *shapes) of(e ast.Expr, null bool) string {
	or := func(kind string) string {
		if null {
			return kind + " | null"
		}
		return kind
	}
	switch e := e.(type) {
	case *ast.StarExpr:
		return s.of(e.X, false) + " | null"
	case *ast.SelectorExpr:
		return s.of(e.Sel, null)
	case *ast.ArrayType:
		if n, ok := e.Len.(*ast.BasicLit); ok {
			count, _ := strconv.Atoi(n.Value)
			return "[" + strings.Join(slices.Repeat([]string{s.of(e.Elt, null)}, count), ", ") + "]"
		}
		if name := s.of(e.Elt, null); strings.HasSuffix(name, "[]") {
			return name + "[]" // of numbers
		}
		return or(s.of(e.Elt, false) + "[]")
	case *ast.Ident:
		switch e.Name {
		case "string":
			return or("string")
		case "bool":
			return or("boolean")
		case "int", "int64", "float64", "Number", "number":
			return or("number")
		case "Numbers":
			return strings.ReplaceAll(or("number"), "number | null", "(number | null)") + "[]"
		case "triple", "Triple":
			return or("Triple")
		}
		if name := exported(e.Name); s.wanted[name] {
			return or(name)
		}
	}
	s.err = fmt.Errorf("no TypeScript for %v: give it a tag ts", e)
	return "unknown"
}

func tag(f *ast.Field, key string) string {
	if f.Tag == nil {
		return ""
	}
	all, err := strconv.Unquote(f.Tag.Value)
	if err != nil {
		return ""
	}
	return reflect.StructTag(all).Get(key)
}

// text is a comment in one line.
func text(c *ast.CommentGroup) string { return strings.Join(strings.Fields(c.Text()), " ") }

// exported begins a name, or a sentence, with a capital.
func exported(name string) string {
	if name == "" {
		return ""
	}
	return strings.ToUpper(name[:1]) + name[1:]
}
