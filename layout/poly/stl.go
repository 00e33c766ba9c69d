package poly

import (
	"bufio"
	"bytes"
	"encoding/binary"
	"fmt"
	"io"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"
)

// The parts of a binary file, in bytes: a title, a count, and for each triangle
// a normal, three corners and two bytes more.
const (
	stlHead     = 84
	stlTriangle = 50
)

// readSTL tells text from binary. Binary files may begin with the word of text
// ones too, so length goes first. Triangles share no corners.
func readSTL(data []byte) (points []r3.Vec, polygons [][]int, err error) {
	count := int64(-1)
	if len(data) >= stlHead {
		count = int64(binary.LittleEndian.Uint32(data[stlHead-4:]))
	}
	switch {
	case count >= 0 && int64(len(data)) == stlHead+count*stlTriangle:
		points, err = binarySTL(data[stlHead:])
	case bytes.HasPrefix(bytes.ToLower(bytes.TrimLeft(data, " \t\r\n")), []byte("solid")):
		points, err = textSTL(data)
	case count < 0:
		err = fmt.Errorf("%w: neither text, which begins with solid, nor binary", errFormat)
	default:
		err = fmt.Errorf("%w: %d bytes do not hold the %d triangles that it tells of", errFormat, len(data), count)
	}
	for n := 0; n+2 < len(points); n += 3 {
		polygons = append(polygons, []int{n, n + 1, n + 2})
	}
	return points, polygons, err
}

func binarySTL(data []byte) (points []r3.Vec, err error) {
	if n := len(data) / stlTriangle; n > mostFileTriangles {
		return nil, fmt.Errorf("%w, not %d triangles", errTooLarge, n)
	}
	for ; len(data) > 0; data = data[stlTriangle:] {
		var v [9]float64
		for i := range v {
			v[i] = float64(math.Float32frombits(binary.LittleEndian.Uint32(data[12+4*i:])))
		}
		for i := 0; i < len(v); i += 3 {
			points = append(points, r3.Vec{X: v[i], Y: v[i+1], Z: v[i+2]})
		}
	}
	return points, nil
}

// facetLines are the lines of one facet in text, by their first words.
var facetLines = []string{"facet normal", "outer loop", "vertex", "vertex", "vertex", "endloop", "endfacet"}

func textSTL(data []byte) (points []r3.Vec, err error) {
	l := newLines(data, "")
	l.next() // solid and a title
	for {
		words := l.next()
		switch {
		case words == nil:
			return nil, l.fault("the file ends before endsolid")
		case strings.EqualFold(words[0], "endsolid"):
			if l.next() != nil {
				return nil, l.fault("goes on after endsolid")
			}
			return points, nil
		case len(points) == 3*mostFileTriangles:
			return nil, fmt.Errorf("%w: line %d begins another one", errTooLarge, l.number)
		}
		if points, err = l.facet(points, words); err != nil {
			return nil, err
		}
	}
}

// facet appends the corners of a facet, read from its first line on.
func (l *lines) facet(points []r3.Vec, words []string) ([]r3.Vec, error) {
	for i, want := range facetLines {
		if i > 0 {
			words = l.next()
		}
		begin := strings.Fields(want)
		if len(words) < len(begin) || !strings.EqualFold(strings.Join(words[:len(begin)], " "), want) {
			return nil, l.fault("must begin with " + want)
		}
		if want != "vertex" {
			continue
		}
		p, err := l.point(words[1:])
		if err != nil {
			return nil, err
		}
		points = append(points, p)
	}
	return points, nil
}

// WriteSTL writes a mesh as binary STL in mm. The name, in ASCII and cut to 80
// bytes, is its header. Triangles of which two corners are one at the precision
// of the format (about a hundred-thousandth of a mm) are left out, and so are two
// that lie on each other there, back to back; their neighbours close up.
func WriteSTL(w io.Writer, m Mesh, name string) error {
	out := bufio.NewWriter(w)
	corners, triangles := rounded(m)
	kept := unfolded(triangles)
	// A header that begins with "solid" would pass for the text form.
	ascii := strings.Map(func(r rune) rune {
		if r < ' ' || r > '~' {
			return '?'
		}
		return r
	}, "mesh "+name)
	fmt.Fprintf(out, "%-80.80s", ascii)
	if err := binary.Write(out, binary.LittleEndian, uint32(len(kept))); err != nil {
		return err
	}
	for _, t := range kept {
		n := normalOf(corners[t[0]], corners[t[1]], corners[t[2]])
		facet := struct {
			Normal  [3]float32
			Corners [3][3]float32
			Extra   uint16
		}{[3]float32{float32(n.X), float32(n.Y), float32(n.Z)}, [3][3]float32{corners[t[0]], corners[t[1]], corners[t[2]]}, 0}
		if err := binary.Write(out, binary.LittleEndian, facet); err != nil {
			return err
		}
	}
	return out.Flush()
}

// rounded returns a mesh's corners as they are written, those that are one joined, and the triangles
// that still have three of them.
func rounded(m Mesh) (corners [][3]float32, triangles [][3]int) {
	number := make(map[[3]float32]int, len(m.Vertices))
	as := make([]int, len(m.Vertices))
	for i, v := range m.Vertices {
		// Adding 0 turns a negative zero into the plain one: readers may join
		// corners by their bytes.
		c := [3]float32{float32(v.X*1e3) + 0, float32(v.Y*1e3) + 0, float32(v.Z*1e3) + 0}
		n, there := number[c]
		if !there {
			n = len(corners)
			number[c] = n
			corners = append(corners, c)
		}
		as[i] = n
	}
	for _, t := range m.Triangles {
		if a, b, c := as[t[0]], as[t[1]], as[t[2]]; a != b && b != c && c != a {
			triangles = append(triangles, [3]int{a, b, c})
		}
	}
	return corners, triangles
}

// normalOf returns the unit normal of a triangle as it is written: that of a thin
// one can lean from what it was before its corners were rounded.
func normalOf(a, b, c [3]float32) r3.Vec {
	v := func(p [3]float32) r3.Vec { return r3.Vec{X: float64(p[0]), Y: float64(p[1]), Z: float64(p[2])} }
	n := r3.Triangle{v(a), v(b), v(c)}.Normal()
	if r3.Norm(n) == 0 {
		return r3.Vec{}
	}
	return r3.Unit(n)
}
