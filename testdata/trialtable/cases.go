package trialtable

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pappus/testdata/thorough"
	"pappus/timing/cores"
	"pappus/timing/trial"

	"github.com/google/go-cmp/cmp"
)

var whole = flag.Bool("whole", false, "make all cases of the tables of trials again, not some of them")

// Trial is a table of trials whose cases are made one by one. What each came to stands in a file of the same name in
// testdata, of which the table is the sum: so that some cases made again tell of all that a change does to many.
type Trial struct {
	File, Remark string // the table beside the package, and how it is made
	Cases        int
	Few, Many    int                      // how many are made again every day, and where THOROUGH is set; with -whole or -write all
	One          func(i int) Tally        // makes a case, and counts what becomes of it
	Sorted       func(a, b trial.Row) int // how rows stand in the table; nil: as cases have them
}

// Hold makes some of the cases again, chosen by RAPID_SEED, and compares each with what it came to, and the table with
// the sum of all; or makes all of them, and compares or writes both. It returns the table.
func (t Trial) Hold(test *testing.T) trial.Table {
	test.Helper()
	if Whole() {
		return t.holdAll(test)
	}
	table, err := trial.Read(read(test, t.File))
	if err != nil {
		test.Fatal(err)
	}
	stored, err := t.stored(table, read(test, t.cases()))
	if err != nil {
		test.Fatalf("%s: %v; it is written with -write", t.cases(), err)
	}
	sum := t.sum(stored)
	sum.Hold(test, t.File, t.Remark)
	for _, fault := range t.again(table, stored, Some(t.Cases, t.Few, t.Many)) {
		test.Errorf("%s: %s (rows, times of cases); -whole makes all again, -write writes them", t.File, fault)
	}
	return table
}

// Whole tells whether all is to be made again, however long that takes.
func Whole() bool { return *write || *whole }

// Some returns which of so many cases are tried: few of them, chosen by RAPID_SEED, many where THOROUGH is set, and all
// with -whole.
func Some(cases, few, many int) []int {
	some := rand.New(rand.NewPCG(thorough.Seed(), 6001)).Perm(cases)
	switch {
	case Whole():
		return some
	case thorough.Set:
		return some[:many]
	}
	return some[:few]
}

// again makes some cases, and tells which come to something else.
func (t Trial) again(table trial.Table, stored []Tally, some []int) (faults []string) {
	for i, made := range t.made(some) {
		if got, want := line(table, made), line(table, stored[some[i]]); got != want {
			faults = append(faults, fmt.Sprintf("case %d comes to %s, and came to %s", some[i], got, want))
		}
	}
	return faults
}

// made makes cases, on all cores.
func (t Trial) made(some []int) []Tally {
	out := make([]Tally, len(some))
	cores.Each(len(some), func(_, i int) { out[i] = t.One(some[i]) })
	return out
}

// sum is the table of cases.
func (t Trial) sum(each []Tally) (sum Tally) {
	for _, one := range each {
		sum.Join(one)
	}
	if t.Sorted != nil {
		slices.SortStableFunc(sum.Table, t.Sorted)
	}
	return sum
}

// holdAll makes all cases, and compares or writes both files.
func (t Trial) holdAll(test *testing.T) trial.Table {
	test.Helper()
	all := make([]int, t.Cases)
	for i := range all {
		all[i] = i
	}
	each := t.made(all)
	sum := t.sum(each)
	sum.Hold(test, t.File, t.Remark)
	text := t.text(sum.Table, each)
	if *write {
		if err := os.MkdirAll(filepath.Dir(t.cases()), 0o755); err != nil {
			test.Fatal(err)
		}
		if err := os.WriteFile(t.cases(), []byte(text), 0o644); err != nil {
			test.Fatal(err)
		}
	} else if diff := cmp.Diff(read(test, t.cases()), text); diff != "" {
		test.Errorf("%s (-) is not what is made now (+); write it with -write:\n%s", t.cases(), diff)
	}
	return sum.Table
}

// text writes what each case came to.
func (t Trial) text(table trial.Table, each []Tally) string {
	lines := []string{"# What each case of " + t.File + " came to: rows of that table, counted from 0, each with how many times of how many cases.", "case,came_to"}
	for i, one := range each {
		lines = append(lines, strconv.Itoa(i)+","+line(table, one))
	}
	return strings.Join(lines, "\n") + "\n"
}

// cases is the file with what each case came to.
func (t Trial) cases() string { return filepath.Join("testdata", t.File) }

// line writes what a case came to by the rows of a table, in its order.
func line(table trial.Table, one Tally) string {
	var out []string
	for i, r := range table {
		if c := one.Table.Of(r.Of, r.What); c.Cases > 0 {
			out = append(out, fmt.Sprintf("%d:%d/%d", i, c.Times, c.Cases))
		}
	}
	for _, r := range one.Table {
		if table.Of(r.Of, r.What).Cases == 0 {
			out = append(out, fmt.Sprintf("%q:%d/%d", r.Of+", "+r.What, r.Times, r.Cases))
		}
	}
	return strings.Join(out, " ")
}

// stored reads what each case came to.
func (t Trial) stored(table trial.Table, text string) ([]Tally, error) {
	lines := strings.Split(strings.TrimSpace(text), "\n")
	if len(lines) != t.Cases+2 {
		return nil, fmt.Errorf("%d lines, want a remark, a head and %d cases", len(lines), t.Cases)
	}
	out := make([]Tally, t.Cases)
	for i, one := range lines[2:] {
		number, rest, _ := strings.Cut(one, ",")
		if number != strconv.Itoa(i) {
			return nil, fmt.Errorf("line %d: case %s, want %d", i+3, number, i)
		}
		for _, word := range strings.Fields(rest) {
			var row, times, cases int
			if _, err := fmt.Sscanf(word, "%d:%d/%d", &row, &times, &cases); err != nil || row < 0 || row >= len(table) || times > cases || cases < 1 {
				return nil, fmt.Errorf("line %d: %q", i+3, word)
			}
			out[i].Table = append(out[i].Table, trial.Row{Of: table[row].Of, What: table[row].What, Count: trial.Count{Cases: cases, Times: times}})
		}
	}
	return out, nil
}

// read reads a file of a package.
func read(test *testing.T, file string) string {
	test.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		test.Fatal(err)
	}
	return string(text)
}
