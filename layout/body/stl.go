package body

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"io"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"
)

// FromSTL reads a convex body from a stereolithography file, text or binary
// (StereoLithography Interface Specification, 3D Systems, 1989): triangles with
// corners in mm, counter-clockwise seen from outside. The normals in the file
// are passed over: the order of the corners tells the outer side. What the
// surface must be, what becomes of its corners and faces, and the errors are as
// for [FromOFF].
func FromSTL(name string, r io.Reader) (*Body, error) {
	return fromFile(name, r, readSTL)
}

// The parts of a binary file, in bytes: a title, a count, and for each triangle
// a normal, three corners and two bytes more.
const (
	stlHead     = 84
	stlTriangle = 50
)

// readSTL tells text from binary. Binary files may begin with the word of text
// ones too, so length goes first.
func readSTL(data []byte) ([]r3.Vec, [][]int, error) {
	if len(data) >= stlHead {
		count := int64(binary.LittleEndian.Uint32(data[stlHead-4:]))
		if int64(len(data)) == stlHead+count*stlTriangle {
			return binarySTL(data[stlHead:])
		}
	}
	if bytes.HasPrefix(bytes.ToLower(bytes.TrimLeft(data, " \t\r\n")), []byte("solid")) {
		return textSTL(data)
	}
	if len(data) < stlHead {
		return nil, nil, fmt.Errorf("%w: neither text, which begins with solid, nor binary", ErrFormat)
	}
	return nil, nil, fmt.Errorf("%w: %d bytes do not hold the %d triangles that it tells of", ErrFormat,
		len(data), binary.LittleEndian.Uint32(data[stlHead-4:]))
}

func binarySTL(data []byte) ([]r3.Vec, [][]int, error) {
	if n := len(data) / stlTriangle; n > MostFileTriangles {
		return nil, nil, fmt.Errorf("%w, not %d triangles", ErrTooLarge, n)
	}
	var s soup
	for ; len(data) > 0; data = data[stlTriangle:] {
		var v [9]float64
		for i := range v {
			v[i] = float64(math.Float32frombits(binary.LittleEndian.Uint32(data[12+4*i:])))
		}
		for i := 0; i < len(v); i += 3 {
			s.corner(r3.Vec{X: v[i], Y: v[i+1], Z: v[i+2]})
		}
	}
	return s.points, s.polygons, nil
}

// soup is triangles that share no corners.
type soup struct {
	points   []r3.Vec
	polygons [][]int
}

func (s *soup) corner(p r3.Vec) {
	s.points = append(s.points, p)
	if n := len(s.points); n%3 == 0 {
		s.polygons = append(s.polygons, []int{n - 3, n - 2, n - 1})
	}
}

// facetLines are the lines of one facet in text, by their first words.
var facetLines = []string{"facet normal", "outer loop", "vertex", "vertex", "vertex", "endloop", "endfacet"}

func textSTL(data []byte) ([]r3.Vec, [][]int, error) {
	l := newLines(data, "")
	l.next() // solid and a title
	var s soup
	for {
		words := l.next()
		switch {
		case words == nil:
			return nil, nil, l.fault("the file ends before endsolid")
		case strings.EqualFold(words[0], "endsolid"):
			if l.next() != nil {
				return nil, nil, l.fault("goes on after endsolid")
			}
			return s.points, s.polygons, nil
		case len(s.polygons) == MostFileTriangles:
			return nil, nil, fmt.Errorf("%w: line %d begins another one", ErrTooLarge, l.number)
		}
		if err := l.facet(&s, words); err != nil {
			return nil, nil, err
		}
	}
}

// facet reads a facet from its first line on.
func (l *lines) facet(s *soup, words []string) error {
	for i, want := range facetLines {
		if i > 0 {
			words = l.next()
		}
		begin := strings.Fields(want)
		if len(words) < len(begin) || !strings.EqualFold(strings.Join(words[:len(begin)], " "), want) {
			return l.fault("must begin with " + want)
		}
		if want != "vertex" {
			continue
		}
		p, err := l.point(words[1:])
		if err != nil {
			return err
		}
		s.corner(p)
	}
	return nil
}
