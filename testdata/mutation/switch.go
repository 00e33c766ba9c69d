package main

import (
	"fmt"
	"go/ast"
	"go/importer"
	"go/types"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// switchText is a file of the package in which numbers are told apart by a variable of the environment:
// one build then does for all of them.
const switchText = `package %s

import "os"

var mutated__ = os.Getenv("MUTATED")

func mutated__of[T any](at string, was, up, down T) T {
	switch {
	case len(mutated__) != len(at)+1 || mutated__[1:] != at:
		return was
	case mutated__[0] == '+':
		return up
	}
	return down
}
`

// edit is text in place of bytes of a file, or after its end where from is below 0.
type edit struct {
	file     string
	from, to int
	text     string
}

// switched returns the files of a package in which the numbers at indices of its sites can be changed by the
// environment.
func (s source) switched(sites []site, which []int) map[string]string {
	edits := map[string][]edit{}
	for _, i := range which {
		for _, e := range sites[i].edits(i) {
			edits[e.file] = append(edits[e.file], e)
		}
	}
	out := map[string]string{filepath.Join(s.dir, "mutated__.go"): fmt.Sprintf(switchText, s.files[0].Name.Name)}
	for file, some := range edits {
		slices.SortFunc(some, func(a, b edit) int { return b.from - a.from })
		text := string(s.text[file])
		for _, e := range some {
			if e.from < 0 {
				text += e.text
			} else {
				text = text[:e.from] + e.text + text[e.to:]
			}
		}
		out[file] = text
	}
	return out
}

// edits returns what makes a number one that can be changed: a literal in place, a constant as a variable of its
// name beside it.
func (s site) edits(index int) []edit {
	of := func(was string) string {
		return fmt.Sprintf("mutated__of[%s](%q, %s, %s, %s)", s.kind, fmt.Sprint(index), was, s.changed[0], s.changed[1])
	}
	if s.named == 0 {
		return []edit{{s.file, s.from, s.to, of(s.text)}}
	}
	return []edit{{s.file, s.named, s.named, "was__"}, {s.file, -1, -1, fmt.Sprintf("\nvar %s = %s\n", s.name, of("was__"+s.name))}}
}

// switchable returns the indices of sites that can be switched, of those that are not free; the others are
// built one by one: what a constant expression, a length or another type hangs on.
func (s source) switchable(sites []site) []int {
	var out []int
	for i, one := range sites {
		if one.kind != "" && s.checks(s.switched(sites, []int{i})) {
			out = append(out, i)
		}
	}
	return out
}

// checks tells whether files of the package, in place of its own or beside them, have types that fit.
func (s source) checks(files map[string]string) bool {
	other := source{path: s.path, dir: s.dir, set: s.set, text: map[string][]byte{}, info: types.Info{}}
	texts := map[string][]byte{}
	for path, text := range s.text {
		texts[path] = text
	}
	for path, text := range files {
		texts[path] = []byte(text)
	}
	for path, text := range texts {
		if other.add(path, text) != nil {
			return false
		}
	}
	lookup := func(path string) (io.ReadCloser, error) {
		if s.compiled[path] == "" {
			return nil, os.ErrNotExist
		}
		return os.Open(s.compiled[path])
	}
	return other.check(importer.ForCompiler(s.set, "gc", lookup)) == nil
}

// blamed returns the indices of sites without those whose constants an error names.
func blamed(sites []site, which []int, said string) []int {
	return slices.DeleteFunc(slices.Clone(which), func(i int) bool {
		return sites[i].named > 0 && regexp.MustCompile(`\b`+sites[i].name+`\b`).MatchString(said) || strings.Contains(said, fmt.Sprintf("%s:%d:", filepath.Base(sites[i].file), sites[i].line))
	})
}

// kindOf names the type of a number that is a basic one of the language; empty for others.
func kindOf(t types.Type) string {
	b, ok := types.Default(t).(*types.Basic)
	if !ok || b.Kind() == types.Invalid {
		return ""
	}
	return b.Name()
}

// isLocal tells whether what a name declares is within a function.
func (s source) isLocal(name *ast.Ident) bool {
	o := s.info.Defs[name]
	return o == nil || o.Parent() == nil || o.Parent().Parent() != types.Universe
}
