package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
)

// source is a package with its types.
type source struct {
	path, dir string
	set       *token.FileSet
	files     []*ast.File
	text      map[string][]byte // by the files' paths
	info      types.Info
	compiled  map[string]string // files of what it imports, by path
}

// listed is what go list says of a package.
type listed struct {
	ImportPath, Dir, Export string
	GoFiles                 []string
	DepOnly                 bool
}

// load reads the packages of patterns, with the compiled ones that they import.
func load(patterns []string) ([]source, error) {
	cmd := exec.Command("go", append([]string{"list", "-export", "-deps", "-json=ImportPath,Dir,Export,GoFiles,DepOnly", "--"}, append(patterns, "os")...)...)
	cmd.Stderr = os.Stderr
	text, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w", err)
	}
	var all []listed
	compiled := map[string]string{}
	for d := json.NewDecoder(bytes.NewReader(text)); ; {
		var one listed
		if err := d.Decode(&one); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, err
		}
		compiled[one.ImportPath] = one.Export
		if !one.DepOnly && one.ImportPath != "os" {
			all = append(all, one)
		}
	}
	var out []source
	for _, one := range all {
		s, err := one.read(compiled)
		if err != nil {
			return nil, err
		}
		out = append(out, s)
	}
	return out, nil
}

// read parses a package and finds its types.
func (l listed) read(compiled map[string]string) (source, error) {
	s := source{path: l.ImportPath, dir: l.Dir, set: token.NewFileSet(), text: map[string][]byte{}, compiled: compiled,
		info: types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Defs: map[*ast.Ident]types.Object{}}}
	for _, name := range l.GoFiles {
		path := filepath.Join(l.Dir, name)
		text, err := os.ReadFile(path)
		if err != nil {
			return s, err
		}
		if err := s.add(path, text); err != nil {
			return s, err
		}
	}
	lookup := func(path string) (io.ReadCloser, error) { return os.Open(compiled[path]) }
	return s, s.check(importer.ForCompiler(s.set, "gc", lookup))
}

// add parses a file.
func (s *source) add(path string, text []byte) error {
	f, err := parser.ParseFile(s.set, path, text, parser.ParseComments)
	if err != nil {
		return err
	}
	s.files, s.text[path] = append(s.files, f), text
	return nil
}

// check finds the types.
func (s *source) check(imports types.Importer) error {
	_, err := (&types.Config{Importer: imports}).Check(s.path, s.set, s.files, &s.info)
	return err
}
