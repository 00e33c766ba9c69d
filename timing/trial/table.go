package trial

import (
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// What a row counts.
const (
	Missed     = "missed"      // the fault was there and was not found
	FalseAlarm = "false alarm" // it was found and was not there
	Covered    = "covered"     // the 95 percent interval held the truth
	Refused    = "refused"     // no value was given
	Useful     = "of use"      // a value was given, as near to the truth as is of use
)

// Row is how often something happened to one thing: a fault, a value.
type Row struct {
	Of, What string
	Count
}

// Table is the rows of a trial, each of another thing or of something else that happened.
type Table []Row

// Columns are those of a table as CSV: the last three are there for the reader, and follow from the counts.
var Columns = []string{"of", "what", "cases", "times", "percent", "low_percent", "high_percent"}

// Of returns how often something happened to a thing: no cases where there is no such row.
func (t Table) Of(of, what string) Count {
	for _, r := range t {
		if r.Of == of && r.What == what {
			return r.Count
		}
	}
	return Count{}
}

// Read reads a table from CSV; lines that begin with # are remarks.
func Read(text string) (Table, error) {
	r := csv.NewReader(strings.NewReader(text))
	r.Comment = '#'
	lines, err := r.ReadAll()
	if err != nil {
		return nil, err
	}
	if len(lines) == 0 || !slices.Equal(lines[0], Columns) {
		return nil, fmt.Errorf("the columns are not %s", strings.Join(Columns, ","))
	}
	var out Table
	for _, line := range lines[1:] {
		row := Row{Of: line[0], What: line[1]}
		var wrong, wrongTimes error
		row.Cases, wrong = strconv.Atoi(line[2])
		row.Times, wrongTimes = strconv.Atoi(line[3])
		if wrong != nil || wrongTimes != nil || row.Times < 0 || row.Times > row.Cases {
			return nil, fmt.Errorf("%s, %s: %s of %s cases is no count", line[0], line[1], line[3], line[2])
		}
		out = append(out, row)
	}
	return out, nil
}

// Embedded reads the table that a package has embedded.
func Embedded(text string) Table {
	t, err := Read(text)
	if err != nil {
		panic(err) // a test of the package reads it
	}
	return t
}
