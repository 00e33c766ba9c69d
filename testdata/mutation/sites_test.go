package main

import (
	"go/ast"
	"go/importer"
	"go/token"
	"go/types"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

const text = `package some

type kind int

const (
	first kind = iota
	second
)

const (
	name   = "some"
	factor = 0.05
	most   = 10
	one    = 1
	large  = 1 << 23
	both   = factor * most
	seed   = 7 // free: any will do
	none   = 0
	pair, other = 3, 1.3
)

var table = []float64{0.25, 4, 1}

func of(x []float64) float64 {
	const inside = 6
	var array [5]float64
	if len(x) < 2 || x[3] > 0.3 || 2*len(x) == 8 {
		return array[4] + 1.5
	}
	// free: a step of a
	// search
	step := 0.01
	return 2*step + float64(inside<<3) + sum(x[4:])/7
}

func sum(x []float64) float64 { return x[0] }
`

// TestSites: which numbers are found, what they are changed to, and which are free.
func TestSites(t *testing.T) {
	s := source{path: "some", set: token.NewFileSet(), text: map[string][]byte{},
		info: types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Defs: map[*ast.Ident]types.Object{}}}
	if err := s.add("some/some.go", []byte(text)); err != nil {
		t.Fatal(err)
	}
	if err := s.check(importer.Default()); err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, one := range s.sites() {
		line := one.String() + " -> " + strings.Join(one.changed, " ")
		if one.free != "" {
			line += " free: " + one.free
		}
		got = append(got, line)
	}
	want := []string{
		"some/some.go:12 factor 0.05 -> 0.06 0.04",
		"some/some.go:13 most 10 -> 12 8",
		"some/some.go:14 one 1 -> 2 0",
		"some/some.go:15 large 1 << 23 -> 10066330 6710886",
		"some/some.go:16 both factor * most -> 0.6 0.4",
		"some/some.go:17 seed 7 -> 8 6 free: any will do",
		"some/some.go:19 pair 3 -> 4 2",
		"some/some.go:19 other 1.3 -> 1.56 1.04",
		"some/some.go:22 table 0.25 -> 0.3 0.2",
		"some/some.go:22 table 4 -> 4.8 3.2",
		"some/some.go:25 inside 6 -> 7 5",
		"some/some.go:27 of 2 -> 3 1",
		"some/some.go:27 of 0.3 -> 0.36 0.24",
		"some/some.go:27 of 2 -> 3 1",
		"some/some.go:27 of 8 -> 10 6",
		"some/some.go:28 of 1.5 -> 1.8 1.2",
		"some/some.go:32 of 0.01 -> 0.012 0.008 free: a step of a",
		"some/some.go:33 of 7 -> 8.4 5.6",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}
