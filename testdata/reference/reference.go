// Package reference reads the tables in its folder: values from outside the
// project that the tests check it against. Each table's first line names its
// source.
package reference

import (
	"embed"
	"encoding/csv"
	"fmt"
	"strconv"
)

//go:embed *.csv
var tables embed.FS

// Row is one line of a table, by column name.
type Row map[string]string

// Table returns the rows of a table, named with its ending.
func Table(name string) ([]Row, error) {
	f, err := tables.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	records, err := r.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	rows := make([]Row, 0, len(records)-1)
	for _, record := range records[1:] {
		row := make(Row, len(record))
		for i, column := range records[0] {
			row[column] = record[i]
		}
		rows = append(rows, row)
	}
	return rows, nil
}

// Float returns a column as a number. It panics where there is none, since the
// tables are our own.
func (r Row) Float(column string) float64 {
	v, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		panic(fmt.Sprintf("reference: column %s: %v", column, err))
	}
	return v
}
