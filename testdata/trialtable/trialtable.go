// Package trialtable makes the tables of trials that stand beside the packages they are
// about: tests count the cases again and compare, or write the table with the flag -write.
package trialtable

import (
	"bytes"
	"encoding/csv"
	"flag"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pappus/timing/trial"

	"github.com/google/go-cmp/cmp"
)

var write = flag.Bool("write", false, "write the tables of trials")

// Tally counts cases into a table.
type Tally struct{ Table trial.Table }

// Add counts one case of a thing, in its row, which is added where there is none.
func (t *Tally) Add(of, what string, happened bool) {
	r := t.row(of, what)
	r.Cases++
	if happened {
		r.Times++
	}
}

// Join adds what another one counts.
func (t *Tally) Join(other Tally) {
	for _, r := range other.Table {
		ours := t.row(r.Of, r.What)
		ours.Cases, ours.Times = ours.Cases+r.Cases, ours.Times+r.Times
	}
}

// row returns a row of a thing, which is added where there is none.
func (t *Tally) row(of, what string) *trial.Row {
	at := slices.IndexFunc(t.Table, func(r trial.Row) bool { return r.Of == of && r.What == what })
	if at < 0 {
		at = len(t.Table)
		t.Table = append(t.Table, trial.Row{Of: of, What: what})
	}
	return &t.Table[at]
}

// CSV writes a table: percents, with Wilson's 95 percent interval, beside the counts.
func CSV(t trial.Table) string {
	lines := [][]string{trial.Columns}
	for _, r := range t {
		low, high := r.Interval()
		line := []string{r.Of, r.What, strconv.Itoa(r.Cases), strconv.Itoa(r.Times)}
		for _, share := range []float64{r.Share(), low, high} {
			line = append(line, strconv.FormatFloat(100*share, 'f', 1, 64))
		}
		lines = append(lines, line)
	}
	var out bytes.Buffer
	if err := csv.NewWriter(&out).WriteAll(lines); err != nil {
		panic(err) // a buffer takes all
	}
	return out.String()
}

// Hold compares the table with the file that has it, or writes that, under a remark of one line
// or more that says how it is made.
func (t *Tally) Hold(test *testing.T, file, remark string) {
	test.Helper()
	text := "# " + strings.ReplaceAll(remark, "\n", "\n# ") + "\n" + CSV(t.Table)
	if *write {
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			test.Fatal(err)
		}
		return
	}
	if diff := cmp.Diff(read(test, file), text); diff != "" {
		test.Errorf("%s (-) is not what is made now (+); write it with -write:\n%s", file, diff)
	}
}
