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

// reader is a table whose first line is read.
type reader struct {
	Table
	text      string
	separator rune
	decimal   byte  // '.' or ','; 0 while the file has not shown it
	at        []int // of each column in a line; -1: missing
	width     int   // columns in the first line
}

// open reads the first line.
func (t Table) open(data []byte) (*reader, error) {
	text := decode(data)
	r := &reader{Table: t, text: text, separator: separatorOf(text)}
	head := r.csv()
	row, err := head.Read()
	for err == nil && isEmpty(row) {
		row, err = head.Read()
	}
	if err != nil && err != io.EOF {
		return nil, r.malformed(err)
	}
	return r, r.match(lineOf(head, row), trimmed(row))
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

// csv begins to read the text.
func (r *reader) csv() *csv.Reader {
	c := csv.NewReader(strings.NewReader(r.text))
	c.Comma, c.Comment = r.separator, '#'
	c.TrimLeadingSpace = r.separator != '\t' // which would be space itself
	c.FieldsPerRecord = -1
	c.ReuseRecord = true
	return c
}

// rows hands on the lines below the first that are not empty, without what is empty
// beyond their columns.
func (r *reader) rows(each func(line int, row []string) error) error {
	c, first := r.csv(), true
	for {
		row, err := c.Read()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return r.malformed(err)
		}
		if isEmpty(row) {
			continue
		}
		if first {
			first = false
			continue
		}
		if kept := trimmed(row); len(kept) >= r.width {
			row = kept
		} else if len(row) > r.width {
			row = row[:r.width]
		}
		if err := each(lineOf(c, row), row); err != nil {
			return err
		}
	}
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

// isEmpty tells whether nothing but separators and spaces stands in a line.
func isEmpty(row []string) bool {
	return !slices.ContainsFunc(row, func(s string) bool { return strings.TrimSpace(s) != "" })
}

// trimmed leaves out what is empty at a line's end.
func trimmed(row []string) []string {
	for len(row) > 0 && strings.TrimSpace(row[len(row)-1]) == "" {
		row = row[:len(row)-1]
	}
	return row
}

// lineOf gives the line on which the row just read begins.
func lineOf(c *csv.Reader, row []string) int {
	if len(row) == 0 {
		return 1
	}
	line, _ := c.FieldPos(0)
	return line
}
