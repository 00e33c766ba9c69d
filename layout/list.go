package layout

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"path/filepath"
	"slices"
	"strconv"

	"pappus/layout/body"
	"pappus/layout/design"

	"gonum.org/v1/gonum/spatial/r3"
)

var listHeader = []string{"x_mm", "y_mm", "z_mm", "nx", "ny", "nz"}

// listed reads the CSV of points and normals that a design names; it is
// looked for beside the design.
func listed(d *design.Design, b *body.Body) ([]Mount, error) {
	name := d.Mounts.List
	if !filepath.IsAbs(name) {
		name = filepath.Join(filepath.Dir(d.Path), name)
	}
	data, err := design.ReadFile(name)
	if err != nil {
		return nil, err
	}
	mounts, err := ParseList(name, data)
	if err != nil {
		return nil, err
	}
	for i, m := range mounts {
		if d := r3.Norm(m.Point); d > 1.5*b.Radius || d < 0.1*b.Radius {
			return nil, listFault(name, i+2, fmt.Errorf("%w: the point is %.0f mm from the centre; must be from %.0f to %.0f",
				design.ErrRange, 1000*d, 100*b.Radius, 1500*b.Radius))
		}
	}
	return mounts, nil
}

// ParseList reads mounts from a CSV with the header x_mm,y_mm,z_mm,nx,ny,nz:
// points in mm from the body's centre and outward normals of any length. Mounts
// are in the order of the file and not numbered. Errors are *design.Error with
// the file's line.
func ParseList(name string, data []byte) ([]Mount, error) {
	r := csv.NewReader(bytes.NewReader(data))
	r.Comment, r.TrimLeadingSpace, r.FieldsPerRecord = '#', true, len(listHeader)
	header, err := r.Read()
	if err != nil || !slices.Equal(header, listHeader) {
		return nil, listFault(name, 1, fmt.Errorf("%w: the first line must be x_mm,y_mm,z_mm,nx,ny,nz", design.ErrSyntax))
	}
	var mounts []Mount
	for {
		record, err := r.Read()
		if errors.Is(err, io.EOF) {
			return mounts, nil
		}
		var parse *csv.ParseError
		if errors.As(err, &parse) {
			return nil, listFault(name, parse.Line, fmt.Errorf("%w: %w", design.ErrSyntax, parse.Err))
		}
		line, _ := r.FieldPos(0)
		m, err := parseMount(record)
		if err != nil {
			return nil, listFault(name, line, err)
		}
		if mounts = append(mounts, m); len(mounts) > design.MaxDrivers {
			return nil, listFault(name, line, fmt.Errorf("%w: must be from 1 to %d", ErrTooManyMounts, design.MaxDrivers))
		}
	}
}

func parseMount(record []string) (Mount, error) {
	var v [6]float64
	for i, text := range record {
		x, err := strconv.ParseFloat(text, 64)
		if err != nil || math.IsNaN(x) || math.Abs(x) > 1e5 {
			return Mount{}, fmt.Errorf("%w: %s = %q; must be a number from -100000 to 100000", design.ErrRange, listHeader[i], text)
		}
		v[i] = x
	}
	m := Mount{
		Point:  r3.Vec{X: v[0] / 1000, Y: v[1] / 1000, Z: v[2] / 1000},
		Normal: r3.Vec{X: v[3], Y: v[4], Z: v[5]},
	}
	length := r3.Norm(m.Normal)
	if length < 1e-9 {
		return m, fmt.Errorf("%w: the normal has no length", design.ErrRange)
	}
	m.Normal = r3.Scale(1/length, m.Normal)
	if r3.Dot(m.Normal, m.Point) <= 0 {
		return m, fmt.Errorf("%w: the normal points inward", design.ErrRange)
	}
	return m, nil
}

func listFault(name string, line int, err error) error {
	return &design.Error{File: name, Line: line, Reason: err.Error(), Err: err}
}
