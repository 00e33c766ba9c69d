package csvtable

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"pappus/layout/design"
)

// errAmbiguous is the kind of error for a number that can be read in two ways.
var errAmbiguous = fmt.Errorf("%w: number that can be read in two ways", design.ErrType)

// Column is one column of a table and what its numbers may be.
type Column struct {
	Name      string
	Low, High float64
	Optional  bool // may be missing; its numbers are then NaN
}

// Table is a CSV file of numbers.
type Table struct {
	File    string // for messages
	Columns []Column
}

// Read hands each line's numbers on, in the order of Columns; the slice is used again.
// Lines count from 1, as an editor shows them. Any error is a *design.Error that names
// file and line, or what each gave.
func (t Table) Read(data []byte, each func(line int, v []float64) error) error {
	r, err := t.open(data)
	if err != nil {
		return err
	}
	if err := r.findMark(); err != nil {
		return err
	}
	v := make([]float64, len(t.Columns))
	return r.rows(func(line int, row []string) error {
		if err := r.numbers(v, line, row); err != nil {
			return err
		}
		return each(line, v)
	})
}

// Fault is the error for a line of the table, 0 for none; key may name a column.
func (t Table) Fault(line int, key, reason string, err error) *design.Error {
	return &design.Error{File: t.File, Line: line, Key: key, Reason: reason, Err: err}
}

// reader is a table whose first line is understood.
type reader struct {
	Table
	lines     []line // those that are not empty
	end       error  // what keeps the text behind them from being read
	separator rune
	decimal   byte  // '.' or ','; 0 while the file has not shown it
	at        []int // of each column in a line; -1: missing
	width     int   // columns in the first line
}

// line is the values of a line, and where it begins.
type line struct {
	number int
	values []string
}

// open reads all lines and finds the columns in the first.
func (t Table) open(data []byte) (*reader, error) {
	text := decode(data)
	r := &reader{Table: t, separator: separatorOf(text)}
	c := csv.NewReader(strings.NewReader(text))
	c.Comma, c.Comment = r.separator, '#'
	c.TrimLeadingSpace = r.separator != '\t' // which would be space itself
	c.FieldsPerRecord = -1
	for {
		row, err := c.Read()
		if err != nil {
			if err != io.EOF {
				r.end = r.malformed(err)
			}
			break
		}
		if number, _ := c.FieldPos(0); len(trimmed(row)) > 0 {
			r.lines = append(r.lines, line{number, row})
		}
	}
	head := line{number: 1}
	if len(r.lines) > 0 {
		head, r.lines = r.lines[0], r.lines[1:]
	} else if r.end != nil {
		return nil, r.end
	}
	return r, r.match(head.number, trimmed(head.values))
}

// match finds the columns in the first line.
func (r *reader) match(line int, names []string) error {
	r.at, r.width = make([]int, len(r.Columns)), len(names)
	known := 0
	for i := range r.at {
		r.at[i] = -1
	}
	for i, c := range r.Columns {
		is := func(s string) bool { return strings.EqualFold(strings.TrimSpace(s), c.Name) }
		r.at[i] = slices.IndexFunc(names, is)
		if r.at[i] >= 0 {
			known++
			if slices.IndexFunc(names[r.at[i]+1:], is) >= 0 {
				return r.Fault(line, c.Name, "stands twice in the first line; must stand there once", design.ErrSyntax)
			}
		} else if !c.Optional {
			return r.Fault(line, "", "must begin with the line "+r.head(), design.ErrSyntax)
		}
	}
	if known == len(names) {
		return nil
	}
	for _, s := range names {
		if !slices.ContainsFunc(r.Columns, func(c Column) bool { return strings.EqualFold(strings.TrimSpace(s), c.Name) }) {
			return r.Fault(line, "", fmt.Sprintf("%s is no column of this table; must begin with the line %s", quoted(s), r.head()), design.ErrSyntax)
		}
	}
	return nil
}

// rows hands on the lines below the first without what is empty beyond their columns.
func (r *reader) rows(each func(line int, row []string) error) error {
	for _, l := range r.lines {
		row := l.values
		if kept := trimmed(row); len(kept) >= r.width {
			row = kept
		} else if len(row) > r.width {
			row = row[:r.width]
		}
		if err := each(l.number, row); err != nil {
			return err
		}
	}
	return r.end
}

// numbers fills dst with the numbers of one line.
func (r *reader) numbers(dst []float64, line int, row []string) error {
	if len(row) != r.width {
		return r.Fault(line, "", r.miscounted(row), design.ErrSyntax)
	}
	for i, c := range r.Columns {
		if r.at[i] < 0 {
			dst[i] = math.NaN()
			continue
		}
		var err error
		if dst[i], err = r.number(line, c, row[r.at[i]]); err != nil {
			return err
		}
	}
	return nil
}

// miscounted says what is wrong with a line that has too few or too many values.
func (r *reader) miscounted(row []string) string {
	for _, other := range separators {
		// Commas may be decimal marks; as many as there should be in one value are not.
		if other == ',' && (len(row) != 1 || strings.Count(row[0], ",") != r.width-1) {
			continue
		}
		if other != r.separator && strings.ContainsRune(strings.Join(row, ""), other) {
			return fmt.Sprintf("its values are separated by %ss, those of the first line by %ss; must be the same throughout", words[other], words[r.separator])
		}
	}
	s := fmt.Sprintf("%d values; must be %d: %s", len(row), r.width, r.head())
	if r.separator == ',' && len(row) > r.width {
		s += "; where the comma is the decimal mark, separate values by semicolons, in the first line too"
	}
	return s
}

// head is the first line that the file must have.
func (r *reader) head() string {
	var names []string
	for i, c := range r.Columns {
		if !c.Optional || r.at[i] >= 0 {
			names = append(names, c.Name)
		}
	}
	if r.separator == ';' {
		return strings.Join(names, ";")
	}
	return strings.Join(names, ",")
}

// malformed is the error for a text that is not CSV.
func (r *reader) malformed(err error) *design.Error {
	var p *csv.ParseError
	if errors.As(err, &p) {
		return r.Fault(p.Line, "", "not readable as CSV: "+p.Err.Error(), design.ErrSyntax)
	}
	return r.Fault(0, "", "not readable as CSV: "+err.Error(), design.ErrSyntax)
}

// trimmed leaves out what is empty at a line's end.
func trimmed(row []string) []string {
	for len(row) > 0 && strings.TrimSpace(row[len(row)-1]) == "" {
		row = row[:len(row)-1]
	}
	return row
}
