package sheets

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"io"
	"math"
	"slices"

	"pappus/layout"
	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// Explode is how far the parts of the whole taken apart are moved, over kit.Part.Away.
const Explode = 0.45

// The side of that picture in pixels, and what is left free at each.
const (
	imageSide   = 1200
	imageMargin = 40.0
)

// partColours tell parts apart (Okabe and Ito).
var partColours = []color.RGBA{{230, 159, 0, 255}, {86, 180, 233, 255}, {0, 158, 115, 255}, {240, 228, 66, 255}, {0, 114, 178, 255}, {213, 94, 0, 255}, {204, 121, 167, 255}}

// assembly draws the parts of the whole taken apart, from above and the listening spot's side, as
// SVG: a shaded picture with the parts' names over it.
func (k Kit) assembly(w io.Writer, a *layout.Array) error {
	azimuth := math.Atan2(a.Spot.Y, a.Spot.X)
	sin, cos := math.Sincos(azimuth)
	level, high := math.Cos(isometric), math.Sin(isometric)
	v := look(r3.Vec{X: level * cos, Y: level * sin, Z: high}, r3.Vec{Z: 1})
	c := newCanvas(v)
	var names []string
	for _, p := range slices.Concat(k.Parts, k.Fitted(a.Body.Cut, a.Stand)) {
		if p.Loose {
			continue
		}
		away := r3.Scale(Explode, p.Away)
		c.meshes = append(c.meshes, p.Mesh.Moved(func(at r3.Vec) r3.Vec { return r3.Add(at, away) }))
		name := p.Name
		if slices.Contains(names, name) { // once of several alike
			name = ""
		}
		names = append(names, name)
	}
	c.fit()
	for i, m := range c.meshes {
		c.draw(m, partColours[i%len(partColours)])
	}
	var data bytes.Buffer
	if err := png.Encode(&data, c.image); err != nil {
		return err
	}
	fmt.Fprintf(w, `<svg xmlns="http://www.w3.org/2000/svg" width="%[1]d" height="%[1]d" viewBox="0 0 %[1]d %[1]d" font-family="sans-serif">`+"\n", imageSide)
	fmt.Fprintf(w, `<title>%s, taken apart</title><image width="%d" height="%d" href="data:image/png;base64,%s"/>`+"\n",
		escaped(a.Name), imageSide, imageSide, base64.StdEncoding.EncodeToString(data.Bytes()))
	for i, m := range c.meshes {
		x, y, _ := c.on(mean(m))
		fmt.Fprintf(w, `<text x="%.0f" y="%.0f" font-size="18" text-anchor="middle" stroke="white" stroke-width="4" paint-order="stroke">%s</text>`+"\n", x, y, escaped(names[i]))
	}
	_, err := fmt.Fprintln(w, "</svg>")
	return err
}

// mean returns the middle of a mesh's box.
func mean(m poly.Mesh) r3.Vec {
	b := m.Bounds()
	return r3.Scale(0.5, r3.Add(b.Min, b.Max))
}

// canvas draws meshes, the nearest in front (E. Catmull, A Subdivision Algorithm for Computer
// Display of Curved Surfaces, 1974: the depth of each pixel is kept).
type canvas struct {
	view
	meshes    []poly.Mesh
	image     *image.RGBA
	depth     []float64
	left, top float64 // m along right and up, at the picture's corner
	pixels    float64 // for each m
}

func newCanvas(v view) *canvas {
	c := &canvas{view: v, image: image.NewRGBA(image.Rect(0, 0, imageSide, imageSide)), depth: make([]float64, imageSide*imageSide)}
	for i := range c.image.Pix {
		c.image.Pix[i] = 255
	}
	for i := range c.depth {
		c.depth[i] = math.Inf(-1)
	}
	return c
}

// fit brings all meshes into the picture.
func (c *canvas) fit() {
	left, right, low, high := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, m := range c.meshes {
		for _, v := range m.Vertices {
			f := c.flat(v)
			left, right, low, high = min(left, f.X), max(right, f.X), min(low, f.Y), max(high, f.Y)
		}
	}
	wide := max(right-left, high-low)
	c.pixels = (imageSide - 2*imageMargin) / wide
	c.left = (left+right-wide)/2 - imageMargin/c.pixels
	c.top = (low+high+wide)/2 + imageMargin/c.pixels
}

// on returns where a place is drawn, and how near it is.
func (c *canvas) on(p r3.Vec) (x, y, near float64) {
	f := c.flat(p)
	return (f.X - c.left) * c.pixels, (c.top - f.Y) * c.pixels, r3.Dot(p, c.towards)
}

// draw draws the sides of a mesh that look at the eye, lighter the more they look up to the right.
func (c *canvas) draw(m poly.Mesh, colour color.RGBA) {
	light := r3.Unit(r3.Add(c.towards, r3.Add(r3.Scale(0.4, c.right), r3.Scale(0.6, c.up))))
	for _, t := range m.Triangles {
		n := r3.Triangle{m.Vertices[t[0]], m.Vertices[t[1]], m.Vertices[t[2]]}.Normal()
		if r3.Dot(n, c.towards) <= 0 {
			continue
		}
		shine := 0.35 + 0.65*max(0, r3.Dot(r3.Unit(n), light))
		c.triangle(m, t, color.RGBA{uint8(shine * float64(colour.R)), uint8(shine * float64(colour.G)), uint8(shine * float64(colour.B)), 255})
	}
}

// triangle fills a triangle.
func (c *canvas) triangle(m poly.Mesh, t [3]int, colour color.RGBA) {
	var x, y, z [3]float64
	for i, v := range t {
		x[i], y[i], z[i] = c.on(m.Vertices[v])
	}
	twice := (x[1]-x[0])*(y[2]-y[0]) - (x[2]-x[0])*(y[1]-y[0])
	if twice == 0 {
		return
	}
	for py := max(0, int(min(y[0], y[1], y[2]))); py <= min(imageSide-1, int(max(y[0], y[1], y[2]))); py++ {
		for px := max(0, int(min(x[0], x[1], x[2]))); px <= min(imageSide-1, int(max(x[0], x[1], x[2]))); px++ {
			dx, dy := float64(px)+0.5-x[0], float64(py)+0.5-y[0]
			b := (dx*(y[2]-y[0]) - (x[2]-x[0])*dy) / twice
			g := ((x[1]-x[0])*dy - dx*(y[1]-y[0])) / twice
			near := z[0] + b*(z[1]-z[0]) + g*(z[2]-z[0])
			if at := py*imageSide + px; b >= 0 && g >= 0 && b+g <= 1 && near > c.depth[at] {
				c.depth[at] = near
				c.image.SetRGBA(px, py, colour)
			}
		}
	}
}
