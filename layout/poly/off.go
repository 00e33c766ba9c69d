package poly

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"
)

// Read reads a convex solid from a file: of text or binary STL (triangles; their normals are
// passed over, since the order of the corners tells the outer side), or OFF, the plain text
// form of the Princeton Shape Benchmark (the word OFF, the numbers of vertices, faces and
// edges, a line for each vertex, and one for each face with how many corners it has and which;
// colours after them are passed over, and so is what follows #). Coordinates are in mm.
//
// The surface must be closed, convex and wound outward, with the file's origin inside it.
// Corners within 1e-5 of the farthest corner's distance become one; faces that are flat
// together within 5e-5 of it become one face. Errors begin with the name.
func Read(name string, r io.Reader, stl bool) (Solid, error) {
	data, err := io.ReadAll(io.LimitReader(r, MostFileBytes+1))
	if err == nil && len(data) > MostFileBytes {
		err = errTooLarge
	}
	read := readOFF
	if stl {
		read = readSTL
	}
	var points []r3.Vec
	var polygons [][]int
	if err == nil {
		points, polygons, err = read(data)
	}
	var s Solid
	if err == nil {
		s, err = convex(points, polygons)
	}
	if err != nil {
		return Solid{}, fmt.Errorf("%s: %w", name, err)
	}
	return s, nil
}

// lines gives the words of a file's lines, without empty ones.
type lines struct {
	scanner *bufio.Scanner
	number  int
	comment string // what starts one; empty for none
}

func newLines(data []byte, comment string) *lines {
	l := &lines{scanner: bufio.NewScanner(bytes.NewReader(data)), comment: comment}
	l.scanner.Buffer(nil, MostFileBytes+1)
	return l
}

// next returns the words of the next line, nil at the end.
func (l *lines) next() []string {
	for l.scanner.Scan() {
		l.number++
		text := l.scanner.Text()
		if l.comment != "" {
			text, _, _ = strings.Cut(text, l.comment)
		}
		if words := strings.Fields(text); len(words) > 0 {
			return words
		}
	}
	return nil
}

// fault tells of what is wrong with the line read last.
func (l *lines) fault(what string) error {
	return fmt.Errorf("%w: line %d: %s", errFormat, l.number, what)
}

// point reads three coordinates.
func (l *lines) point(words []string) (r3.Vec, error) {
	if len(words) != 3 {
		return r3.Vec{}, l.fault("must have three coordinates")
	}
	var v [3]float64
	for i, w := range words {
		x, err := strconv.ParseFloat(w, 64)
		if err != nil && !errors.Is(err, strconv.ErrRange) {
			return r3.Vec{}, l.fault(fmt.Sprintf("%.20q is not a number", w))
		}
		if !finite(x) {
			return r3.Vec{}, fmt.Errorf("%w: line %d: %.20s", errNotFinite, l.number, w)
		}
		v[i] = x
	}
	return r3.Vec{X: v[0], Y: v[1], Z: v[2]}, nil
}

func readOFF(data []byte) ([]r3.Vec, [][]int, error) {
	l := newLines(data, "#")
	words := l.next()
	if words == nil || words[0] != "OFF" {
		return nil, nil, l.fault("must begin with OFF")
	}
	if words = words[1:]; len(words) == 0 {
		words = l.next()
	}
	if len(words) < 2 || len(words) > 3 {
		return nil, nil, l.fault("must have the numbers of vertices, faces and edges")
	}
	vertices, err := l.count(words[0], 3*mostFileTriangles)
	if err != nil {
		return nil, nil, err
	}
	faces, err := l.count(words[1], mostFileTriangles)
	if err != nil {
		return nil, nil, err
	}
	points := make([]r3.Vec, vertices)
	for i := range points {
		if points[i], err = l.point(l.next()); err != nil {
			return nil, nil, err
		}
	}
	polygons, triangles := make([][]int, faces), 0
	for i := range polygons {
		if polygons[i], err = l.polygon(vertices); err != nil {
			return nil, nil, err
		}
		if triangles += len(polygons[i]) - 2; triangles > mostFileTriangles {
			return nil, nil, fmt.Errorf("%w: line %d goes beyond", errTooLarge, l.number)
		}
	}
	if l.next() != nil {
		return nil, nil, l.fault("goes on after the last face")
	}
	return points, polygons, nil
}

// count reads a number of things.
func (l *lines) count(word string, most int) (int, error) {
	n, err := strconv.Atoi(word)
	switch {
	case errors.Is(err, strconv.ErrRange) || err == nil && n > most:
		return 0, fmt.Errorf("%w: line %d tells of %.20s", errTooLarge, l.number, word)
	case err != nil || n < 0:
		return 0, l.fault(fmt.Sprintf("%.20q is not a count", word))
	}
	return n, nil
}

// polygon reads the next line as a face.
func (l *lines) polygon(vertices int) ([]int, error) {
	words := l.next()
	if words == nil {
		return nil, l.fault("the file ends before the last face")
	}
	n, err := l.count(words[0], mostFileTriangles)
	if err != nil {
		return nil, err
	}
	if n < 3 || n > len(words)-1 {
		return nil, l.fault(fmt.Sprintf("a face of %d corners has %d", n, len(words)-1))
	}
	corners := make([]int, n)
	for i, w := range words[1 : n+1] {
		c, err := strconv.Atoi(w)
		if err != nil || c < 0 || c >= vertices {
			return nil, l.fault(fmt.Sprintf("%.20q is not a vertex from 0 to %d", w, vertices-1))
		}
		corners[i] = c
	}
	return corners, nil
}
