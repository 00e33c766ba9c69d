package folder

import (
	"io"
	"slices"

	"pappus/render/figure"
	"pappus/render/table"
	"pappus/timing/intake"
	"pappus/timing/tolerance"
)

// Tolerance lists what drivers that are not alike do to a plan.
func Tolerance(s *tolerance.Study) []file {
	return append([]file{
		{Name: "tolerance.csv", Write: func(w io.Writer) error { return table.Tolerance(w, s) }},
		{Name: "response.csv", Write: func(w io.Writer) error { return table.ToleranceResponse(w, s) }},
	}, drawn("tolerance", func(w io.Writer, f figure.Format) error { return figure.Tolerance(w, f, s) })...)
}

// Drivers lists what became of a folder of drivers; d is nil without a design.
func Drivers(name string, l *intake.Lot, d *intake.Deal) []file {
	out := []file{{Name: "drivers.csv", Write: func(w io.Writer) error { return table.Drivers(w, l, d) }}}
	if d != nil && d.Places != nil {
		out = append(out, file{Name: "strings.csv", Write: func(w io.Writer) error { return table.SortedStrings(w, l, d) }})
		out = append(out, drawn("sorted", func(w io.Writer, f figure.Format) error { return figure.Sorted(w, f, d) })...)
	}
	if slices.ContainsFunc(l.Drivers, func(one intake.Driver) bool { return one.Fit != nil }) {
		out = append(out, drawn("drivers", func(w io.Writer, f figure.Format) error { return figure.Lot(w, f, name, l, d) })...)
	}
	return out
}
