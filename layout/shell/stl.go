package shell

import (
	"bufio"
	"encoding/binary"
	"io"

	"gonum.org/v1/gonum/spatial/r3"
)

// WriteSTL writes a mesh as binary STL in mm. The name, in ASCII and cut to 80
// bytes, is its header. Triangles of which two corners are one at the precision
// of the format (about a hundred-thousandth of a mm) are left out; their
// neighbours close up.
func WriteSTL(w io.Writer, m Mesh, name string) error {
	out := bufio.NewWriter(w)
	corners := make([][3]float32, len(m.Vertices))
	for i, v := range m.Vertices {
		// Adding 0 turns a negative zero into the plain one: readers may join
		// corners by their bytes.
		corners[i] = [3]float32{float32(v.X*1e3) + 0, float32(v.Y*1e3) + 0, float32(v.Z*1e3) + 0}
	}
	var kept [][3]int
	for _, t := range m.Triangles {
		a, b, c := corners[t[0]], corners[t[1]], corners[t[2]]
		if a != b && b != c && c != a {
			kept = append(kept, t)
		}
	}
	// A header that begins with "solid" would pass for the text form.
	out.Write(header("mesh " + name))
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
	if err := out.Flush(); err != nil {
		return err
	}
	return nil
}

// header returns a text as 80 bytes of printable ASCII.
func header(text string) []byte {
	out := make([]byte, 0, 80)
	for _, r := range text {
		if r < ' ' || r > '~' {
			r = '?'
		}
		if len(out) < 80 {
			out = append(out, byte(r))
		}
	}
	for len(out) < 80 {
		out = append(out, ' ')
	}
	return out
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
