package folder

import (
	"io"

	"pappus/render/figure"
	"pappus/render/table"
	"pappus/timing/tolerance"
)

// Tolerance lists what drivers that are not alike do to a plan.
func Tolerance(s *tolerance.Study) []file {
	return append([]file{
		{Name: "tolerance.csv", Write: func(w io.Writer) error { return table.Tolerance(w, s) }},
		{Name: "response.csv", Write: func(w io.Writer) error { return table.ToleranceResponse(w, s) }},
	}, drawn("tolerance", func(w io.Writer, f figure.Format) error { return figure.Tolerance(w, f, s) })...)
}
