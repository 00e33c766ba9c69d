package layout

import (
	"fmt"
	"math"

	"pappus/layout/csvtable"
	"pappus/layout/design"
	"pappus/layout/prose"
)

// responseColumns are those of a driver's measured response. Phase may be
// wrapped or not.
var responseColumns = []csvtable.Column{
	{Name: "frequency_hz", Low: 1, High: 100000}, {Name: "level_db", Low: -500, High: 500}, {Name: "phase_deg", Low: -1e6, High: 1e6},
}

const (
	leastMeasured     = 2      // lines
	mostMeasured      = 100000 // lines
	mostMeasuredBytes = 8 << 20
)

// WeightLowHz and WeightHighHz are the band in which drivers are compared and their sound
// weighed: the ear is keen in it. What a measured response must cover some of, too.
const WeightLowHz, WeightHighHz = 500, 4000

// response gives the measured response that the design names, or nil.
func response(d *design.Design) ([]ResponsePoint, error) {
	return measured(d, d.Driver.Response, parseResponse)
}

// measured reads a table that the design names; nil where it names none.
func measured[T any](d *design.Design, name string, parse func(path string, data []byte) ([]T, error)) ([]T, error) {
	if name == "" {
		return nil, nil
	}
	path := beside(d, name)
	data, err := design.ReadFile(path, mostMeasuredBytes)
	if err != nil {
		return nil, err
	}
	return parse(path, data)
}

// parseResponse reads a measured response: a CSV table of frequency in Hz,
// level in dB and phase in degrees. Any error is a *design.Error that names the
// file, and the line where one is to blame.
func parseResponse(path string, data []byte) ([]ResponsePoint, error) {
	t := csvtable.Table{File: path, Columns: responseColumns}
	out, err := rising(t, data, func(v []float64) ResponsePoint {
		return ResponsePoint{Frequency: v[0], Level: v[1], Phase: v[2] * math.Pi / 180}
	})
	if err != nil {
		return nil, err
	}
	if low, high := out[0].Frequency, out[len(out)-1].Frequency; high <= WeightLowHz || low >= WeightHighHz {
		return nil, t.Fault(0, "", prose.Sprintf("from %.10g to %.10g Hz; must cover some of %d to %d Hz",
			low, high, WeightLowHz, WeightHighHz), design.ErrRange)
	}
	return out, nil
}

// rising reads a table whose first column rises from line to line, of two lines
// or more.
func rising[T any](t csvtable.Table, data []byte, point func(v []float64) T) ([]T, error) {
	var out []T
	last := math.Inf(-1)
	err := t.Read(data, func(line int, v []float64) error {
		if len(out) == mostMeasured {
			return t.Fault(line, "", fmt.Sprintf("too many lines; must be at most %d", mostMeasured), design.ErrRange)
		}
		if v[0] <= last {
			e := t.Fault(line, t.Columns[0].Name, prose.Sprintf("must be above the one before, %.10g", last), design.ErrRange)
			e.Value = prose.Sprintf("%.10g", v[0])
			return e
		}
		last = v[0]
		out = append(out, point(v))
		return nil
	})
	if err == nil && len(out) < leastMeasured {
		err = t.Fault(0, "", fmt.Sprintf("%s; must be at least %d", prose.Count(len(out), "line of numbers", "lines of numbers"), leastMeasured), design.ErrRange)
	}
	return out, err
}
