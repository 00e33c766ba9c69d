package layout

import (
	"bytes"
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"pappus/layout/body"
	"pappus/layout/design"
	"pappus/layout/poly"
)

// wholeBody makes the body before the cut. Errors are *design.Error.
func wholeBody(d *design.Design) (*body.Body, error) {
	if d.Body.Shape == "file" {
		return fromFile(d)
	}
	b := d.Body
	key := fmt.Sprint(b.Shape, " ", b.Base, b.Subdivision, b.M, b.N, b.Sides, b.Height, b.Dual, b.Radius)
	w := wholes.get(key, func() (w wholeOrNot) {
		if w.Body, w.err = made(b, b.Radius); w.err == nil && b.Dual {
			w.Body, w.err = body.Dual(w.Body)
		}
		return w
	})
	if w.err != nil {
		return nil, fault(d, "body.shape", b.Shape, w.err.Error(), w.err)
	}
	return w.Body, nil
}

// wholeOrNot is a body before its cut, or why there is none.
type wholeOrNot struct {
	*body.Body
	err error
}

// A body is made once for all its cuts and turns, one after the other.
var wholes = newMemory[wholeOrNot](mostKept)

// made is a body by the word for its shape.
func made(b design.Body, radius float64) (*body.Body, error) {
	switch b.Shape {
	case "ball":
		return body.Ball(radius), nil
	case "prism":
		return body.Prism(b.Sides, radius, b.Height)
	case "antiprism":
		return body.Antiprism(b.Sides, radius, b.Height)
	case "geodesic":
		if b.M > 0 {
			return body.GeodesicMN(b.Base, b.M, b.N, radius)
		}
		return body.Geodesic(b.Base, b.Subdivision, radius)
	}
	solid, err := body.Platonic(b.Shape, radius)
	if errors.Is(err, body.ErrUnknownShape) {
		return body.Archimedean(b.Shape, radius)
	}
	return solid, err
}

// fromFile reads a body beside the design and brings it to the design's radius.
func fromFile(d *design.Design) (*body.Body, error) {
	path := beside(d, d.Body.File)
	data, err := design.ReadFile(path, poly.MostFileBytes)
	if err != nil {
		return nil, ofFile(d, "body.file", d.Body.File, err)
	}
	whole, err := body.FromFile(d.Body.File, bytes.NewReader(data), strings.EqualFold(filepath.Ext(path), ".stl"))
	if err == nil && d.Body.Dual {
		whole, err = body.Dual(whole)
	}
	if err != nil {
		return nil, ofFile(d, "body.file", d.Body.File, err)
	}
	return whole.Times(d.Body.Radius / whole.Radius), nil
}
