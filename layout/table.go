package layout

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"pappus/layout/design"
	"pappus/layout/prose"
)

// table is a CSV file of numbers that a design names. Its first line holds the
// names of its columns; lines that begin with # are remarks.
type table struct {
	file    string // for messages
	columns []column
}

// column is one column of a table and what its numbers may be.
type column struct {
	name      string
	low, high float64
}

// read hands each line's numbers on, in order; the slice is used again. Any
// error is a *design.Error that names file and line, or what each gave.
func (t table) read(data []byte, each func(line int, v []float64) error) error {
	r := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(data, []byte("\ufeff"))))
	r.Comment = '#'
	r.TrimLeadingSpace = true
	r.FieldsPerRecord = -1
	r.ReuseRecord = true

	row, err := r.Read()
	if err != nil && err != io.EOF {
		return t.malformed(err)
	}
	if !slices.EqualFunc(row, t.columns, func(s string, c column) bool { return strings.TrimSpace(s) == c.name }) {
		return t.fault(lineOf(r, row), "", "must begin with the line "+t.head(), design.ErrSyntax)
	}
	v := make([]float64, len(t.columns))
	for {
		row, err := r.Read()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return t.malformed(err)
		}
		line := lineOf(r, row)
		if err := t.numbers(v, line, row); err != nil {
			return err
		}
		if err := each(line, v); err != nil {
			return err
		}
	}
}

// numbers fills dst with the numbers of one line.
func (t table) numbers(dst []float64, line int, row []string) error {
	if len(row) != len(t.columns) {
		return t.fault(line, "", fmt.Sprintf("%d values; must be %d: %s", len(row), len(t.columns), t.head()), design.ErrSyntax)
	}
	for i, s := range row {
		c := t.columns[i]
		n, err := strconv.ParseFloat(strings.TrimSpace(s), 64)
		kind := design.ErrRange
		if err != nil && !errors.Is(err, strconv.ErrRange) {
			kind = design.ErrType
		}
		// Written so that NaN fails.
		if !(err == nil && n >= c.low && n <= c.high) {
			e := t.fault(line, c.name, prose.Sprintf("must be a number from %.10g to %.10g", c.low, c.high), kind)
			e.Value = short(s)
			return e
		}
		dst[i] = n
	}
	return nil
}

// head is the first line of the file.
func (t table) head() string {
	names := make([]string, len(t.columns))
	for i, c := range t.columns {
		names[i] = c.name
	}
	return strings.Join(names, ",")
}

// fault is the error for a line of the table; key may name a column.
func (t table) fault(line int, key, reason string, err error) *design.Error {
	return &design.Error{File: t.file, Line: line, Key: key, Reason: reason, Err: err}
}

// malformed is the error for a text that is not CSV.
func (t table) malformed(err error) *design.Error {
	var p *csv.ParseError
	if errors.As(err, &p) {
		return t.fault(p.Line, "", "not readable as CSV: "+p.Err.Error(), design.ErrSyntax)
	}
	return t.fault(0, "", "not readable as CSV: "+err.Error(), design.ErrSyntax)
}

// lineOf gives the line on which the row just read begins.
func lineOf(r *csv.Reader, row []string) int {
	if len(row) == 0 {
		return 1
	}
	line, _ := r.FieldPos(0)
	return line
}

// short keeps a value readable within a message.
func short(s string) string {
	if r := []rune(s); len(r) > 40 {
		s = string(r[:40]) + "…"
	}
	return strconv.Quote(s)
}
