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
	"strings"

	"pappus/layout/body"
	"pappus/layout/design"

	"gonum.org/v1/gonum/spatial/r3"
)

// columns is the first line of a list of mounts.
var columns = []string{"x_mm", "y_mm", "z_mm", "nx", "ny", "nz"}

const (
	farthestMM  = 10000  // for a point's coordinates
	longest     = 1000   // for a normal's components before they are scaled
	shortest    = 1e-6   // for a normal before it is scaled
	mostListed  = 10000  // lines, before the cut
	mostOnFace  = 1e-3   // of the radius, off a face's plane to be on it still
	leastOnFace = 0.9998 // cosine of the lean, about one degree
)

// listedMount is one line of a list: a place and where it was written.
type listedMount struct {
	Mount
	line int
}

// listed gives the mounts of the list that the design names, on or near the body.
func listed(d *design.Design, b *body.Body) ([]Mount, error) {
	path := d.Mounts.List
	if !filepath.IsAbs(path) {
		path = filepath.Join(filepath.Dir(d.Path), path)
	}
	data, err := design.ReadFile(path)
	if err != nil {
		return nil, err
	}
	list, err := parseList(path, data)
	if err != nil {
		return nil, err
	}
	// A builder may let drivers in or set them on blocks, but not far: what
	// follows takes the body's surface for theirs.
	most := max(10*mm, 0.1*b.Radius)
	ps := facePlanes(b)
	out := make([]Mount, len(list))
	for i, l := range list {
		face, away := -1, r3.Norm(l.Point)-b.Radius
		if !b.IsBall() {
			face = ps.towards(l.Point)
			away = r3.Dot(ps[face].normal, l.Point) - ps[face].distance
		}
		if math.Abs(away) > most {
			side := "outside"
			if away < 0 {
				side = "inside"
			}
			return nil, badMount(path, l.line, "x_mm,y_mm,z_mm", fmt.Sprintf(
				"the point is %.3g mm %s the body's surface; must be within %.3g mm of it", math.Abs(away)/mm, side, most/mm))
		}
		if face >= 0 && math.Abs(away) <= mostOnFace*b.Radius && r3.Dot(ps[face].normal, l.Normal) >= leastOnFace {
			l.Face = face
		}
		out[i] = l.Mount
	}
	return out, nil
}

// parseList reads a list of mounts: a CSV file whose first line is columns, in
// mm and of any length. Points come out in m and normals as unit vectors, on no
// face. Any error is a *design.Error that names file and line.
func parseList(path string, data []byte) ([]listedMount, error) {
	r := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(data, []byte("\ufeff"))))
	r.Comment = '#'
	r.TrimLeadingSpace = true
	r.FieldsPerRecord = -1
	r.ReuseRecord = true

	head := strings.Join(columns, ",")
	row, err := r.Read()
	if err != nil && err != io.EOF {
		return nil, badCSV(path, err)
	}
	if !slices.EqualFunc(row, columns, func(a, b string) bool { return strings.TrimSpace(a) == b }) {
		return nil, &design.Error{File: path, Line: lineOf(r, row), Reason: "must begin with the line " + head, Err: design.ErrSyntax}
	}
	var out []listedMount
	for {
		row, err := r.Read()
		if err == io.EOF {
			return out, nil
		}
		if err != nil {
			return nil, badCSV(path, err)
		}
		line := lineOf(r, row)
		if len(row) != len(columns) {
			return nil, &design.Error{File: path, Line: line, Reason: fmt.Sprintf("%d values; must be %d: %s", len(row), len(columns), head), Err: design.ErrSyntax}
		}
		if len(out) == mostListed {
			return nil, &design.Error{File: path, Line: line, Reason: fmt.Sprintf("too many mounts; must be at most %d", mostListed), Err: ErrTooManyMounts}
		}
		m, err := parseMount(path, line, row)
		if err != nil {
			return nil, err
		}
		out = append(out, listedMount{m, line})
	}
}

// parseMount reads one line of a list.
func parseMount(path string, line int, row []string) (Mount, error) {
	var v [6]float64
	for i, s := range row {
		high := float64(farthestMM)
		if i >= 3 {
			high = longest
		}
		n, err := strconv.ParseFloat(strings.TrimSpace(s), 64)
		kind := design.ErrRange
		if err != nil && !errors.Is(err, strconv.ErrRange) {
			kind = design.ErrType
		}
		// Written so that NaN fails.
		if !(err == nil && math.Abs(n) <= high) {
			return Mount{}, &design.Error{
				File: path, Line: line, Key: columns[i], Value: short(s),
				Reason: fmt.Sprintf("must be a number from -%[1]g to %[1]g", high), Err: kind,
			}
		}
		v[i] = n
	}
	p := r3.Scale(mm, r3.Vec{X: v[0], Y: v[1], Z: v[2]})
	n := r3.Vec{X: v[3], Y: v[4], Z: v[5]}
	if r3.Norm(n) < shortest {
		return Mount{}, badMount(path, line, "nx,ny,nz", "the normal has no length; must point away from the body")
	}
	if n = r3.Unit(n); !(r3.Dot(n, p) > 0) {
		return Mount{}, badMount(path, line, "nx,ny,nz", "the normal does not point outward; must point away from the body")
	}
	return Mount{Point: p, Normal: n, Face: -1}, nil
}

func badMount(path string, line int, key, reason string) *design.Error {
	return &design.Error{File: path, Line: line, Key: key, Reason: reason, Err: ErrBadMount}
}

// badCSV is the error for a text that is not CSV.
func badCSV(path string, err error) *design.Error {
	e := &design.Error{File: path, Reason: "not readable as CSV: " + err.Error(), Err: design.ErrSyntax}
	var p *csv.ParseError
	if errors.As(err, &p) {
		e.Line, e.Reason = p.Line, "not readable as CSV: "+p.Err.Error()
	}
	return e
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
