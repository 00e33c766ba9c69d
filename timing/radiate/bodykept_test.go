package radiate

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"testing"

	"pappus/layout"
	"pappus/timing/boundary"
	"pappus/timing/harmonic"
	"pappus/timing/store"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
)

// keeping keeps solved fields in a folder of the test's own, and forgets those in memory.
func keeping(t *testing.T) {
	t.Helper()
	before := Kept
	Kept = store.Store{Folder: t.TempDir()}
	held.Purge()
	t.Cleanup(func() { Kept = before; held.Purge() })
}

// solves tells whether an array's field had to be solved for, and returns it.
func solves(t *testing.T, a *layout.Array) (bool, *boundary.Table) {
	t.Helper()
	told := false
	if err := Solve(t.Context(), a, func(float64, float64) { told = true }); err != nil {
		t.Fatal(err)
	}
	x, _ := newSolving(a)
	key, err := x.key()
	if err != nil {
		t.Fatal(err)
	}
	return told, lookUp(key)
}

// TestKept: a solved field is read back to the bit; what is damaged, cut short, of another
// version or no field is solved for anew.
func TestKept(t *testing.T) {
	keeping(t)
	a := laid(t, small)
	if IsSolved(a) {
		t.Fatal("solved before it was asked for")
	}
	anew, first := solves(t, a)
	if !anew || !IsSolved(a) {
		t.Fatal("not solved")
	}
	x, _ := newSolving(a)
	key, _ := x.key()
	file := func() string {
		t.Helper()
		names, err := filepath.Glob(filepath.Join(Kept.Folder, "*"))
		if err != nil || len(names) != 1 {
			t.Fatalf("%v, %v", names, err)
		}
		return names[0]
	}
	input, _ := Kept.Get(key)
	tests := []struct {
		name  string
		spoil func()
		anew  bool
	}{
		{"as it was", func() {}, false},
		{"a bit turned", func() {
			data, err := os.ReadFile(file())
			if err != nil {
				t.Fatal(err)
			}
			data[len(data)/2] ^= 4
			if err := os.WriteFile(file(), data, 0o600); err != nil {
				t.Fatal(err)
			}
		}, true},
		{"cut short", func() {
			if err := os.Truncate(file(), 1000); err != nil {
				t.Fatal(err)
			}
		}, true},
		{"no field", func() { _ = Kept.Put(key, []byte("no field")) }, true},
		{"half a field", func() { _ = Kept.Put(key, input[:len(input)/2]) }, true},
		{"of another version", func() {
			if err := os.Remove(file()); err != nil {
				t.Fatal(err)
			}
			_ = Kept.Put(store.KeyOf("field of a body", solvedVersion+1, []byte("{}")), input)
		}, true},
	}
	for _, test := range tests {
		test.spoil()
		held.Purge()
		anew, table := solves(t, a)
		if anew != test.anew {
			t.Errorf("%s: solved anew: %v", test.name, anew)
		}
		if diff := cmp.Diff(first, table); diff != "" {
			t.Errorf("%s: %s", test.name, diff)
		}
	}
}

// TestKeptFor: drivers that are left out, another temperature, spot, table that is far away in
// the room, turn, or copy need no new solution; another cone, stand, body or top does.
func TestKeptFor(t *testing.T) {
	keeping(t)
	solves(t, laid(t, small))
	for name, a := range map[string]*layout.Array{
		"left out":    laid(t, small, "[mounts]\nskip = [2, 5]\n"),
		"temperature": laid(t, small, "[air]\ntemperature_c = 5\n"),
		"room":        laid(t, small, placed["room"]),
		"two":         laid(t, small, placed["two"]),
		"two, table":  laid(t, small, placed["two, table"]),
	} {
		if anew, _ := solves(t, a); anew {
			t.Errorf("%s: solved anew", name)
		}
	}
	wide, higher, cut := laid(t, small), laid(t, small), laid(t, small)
	wide.Driver.ConeRadius *= 1.1
	higher.Timing.SolveTo = 1500
	b, err := cut.Body.CutAt(-0.05)
	if err != nil {
		t.Fatal(err)
	}
	cut.Body = b
	for name, a := range map[string]*layout.Array{"wide": wide, "higher": higher, "cut": cut, "table": laid(t, small, placed["table"])} {
		if IsSolved(a) {
			t.Errorf("%s: taken to be solved", name)
		}
	}
}

// TestSolveEnds: a solution ends with its context, and is then not kept.
func TestSolveEnds(t *testing.T) {
	keeping(t)
	ctx, stop := context.WithCancel(t.Context())
	defer stop()
	a := laid(t, small)
	err := Solve(ctx, a, func(float64, float64) { stop() })
	if !errors.Is(err, context.Canceled) || IsSolved(a) {
		t.Errorf("ended with %v; solved: %v", err, IsSolved(a))
	}
}

// TestBodyCores: solved and summed on any number of cores, all is the same to the bit.
func TestBodyCores(t *testing.T) {
	keeping(t)
	var first []any
	for _, cores := range []int{1, 2, 5} {
		before := runtime.GOMAXPROCS(cores)
		held.Purge()
		Kept = store.Store{}
		s := hearing(t, laid(t, small, placed["skipped"]), 100, 300, 450, 900)
		n, feed, places := len(s.Medium.Frequency), feeding(s), somewhere()
		sum := make([]complex128, len(places)*n)
		s.NewSummed(feed, s.Ways, harmonic.Round(r3.Vec{Z: 1}), places).Add(sum, nil)
		heard := make([]complex128, len(s.Array.Mounts)*n)
		s.Hear(heard, s.Ways, places[3])
		rings := s.Rings(s.Ways[0], harmonic.Round(r3.Vec{Z: 1}), places[:3])
		sizes := make([]float64, len(places)*n)
		ones := slices.Repeat([]complex128{1}, n)
		s.NewSizes(rings, ones, 0, n).Sum(make([]int, len(s.Array.Mounts)), []float64{1}, ones).Add(sizes, rings)
		runtime.GOMAXPROCS(before)
		all := []any{s.Field.(*bodyField).table, sum, heard, sizes, s.Power(feed)}
		if first == nil {
			first = all
		} else if diff := cmp.Diff(first, all); diff != "" {
			t.Errorf("on %d cores: %s", cores, diff)
		}
	}
}
