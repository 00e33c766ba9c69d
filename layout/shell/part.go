package shell

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Part returns what of the mesh lies in all of some half-spaces, closed by flat
// faces where they cut it. The error wraps ErrNothingLeft where nothing does.
func (m Mesh) Part(planes ...Plane) (Mesh, error) {
	for _, p := range planes {
		c, err := m.cut(p)
		if err != nil {
			return Mesh{}, fmt.Errorf("cutting: %w", err)
		}
		m = c
	}
	return m, nil
}

// Wedges returns the half-spaces of equal segments of a turn round the z axis,
// cut by upright planes, the first from an azimuth in rad; one segment is the
// whole. Heights in m, rising, cut each of them further. Bottom layers come
// first, each from the azimuth on.
func Wedges(count int, azimuth float64, heights ...float64) [][]Plane {
	var out [][]Plane
	for layer := range len(heights) + 1 {
		for i := range count {
			var in []Plane
			if count > 1 {
				in = append(in, upright(azimuth+2*math.Pi*float64(i)/float64(count), -1))
			}
			if count > 2 {
				in = append(in, upright(azimuth+2*math.Pi*float64(i+1)/float64(count), 1))
			}
			if layer > 0 {
				in = append(in, Plane{Normal: r3.Vec{Z: -1}, Offset: -heights[layer-1]})
			}
			if layer < len(heights) {
				in = append(in, Plane{Normal: r3.Vec{Z: 1}, Offset: heights[layer]})
			}
			out = append(out, in)
		}
	}
	return out
}

// upright returns the half-space on one side of the plane through the z axis at
// an azimuth: behind it, going round, for 1, and past it for -1.
func upright(azimuth, side float64) Plane {
	sin, cos := math.Sincos(azimuth)
	return Plane{Normal: r3.Vec{X: -side * sin, Y: side * cos}}
}

// cut returns what of the mesh lies in a half-space.
func (m Mesh) cut(p Plane) (Mesh, error) {
	c := cutter{from: m, plane: p, crossed: make(map[[2]int]int), border: make(map[[2]int]bool)}
	box := m.Bounds()
	c.slack = merge / 2 * max(box.Max.X-box.Min.X, box.Max.Y-box.Min.Y, box.Max.Z-box.Min.Z)
	c.side = make([]int8, len(m.Vertices))
	for i, v := range m.Vertices {
		switch out := p.above(v); {
		case out < -c.slack:
			c.side[i] = 1
		case out > c.slack:
			c.side[i] = -1
		}
	}
	c.out.Vertices = slices.Clone(m.Vertices)
	for _, t := range m.Triangles {
		c.clip(t)
	}
	if len(c.out.Triangles) == 0 {
		return Mesh{}, ErrNothingLeft
	}
	if err := c.close(); err != nil {
		return Mesh{}, err
	}
	return c.out.tidy(), nil
}

// cutter gathers what lies in a half-space.
type cutter struct {
	from    Mesh
	plane   Plane
	slack   float64
	side    []int8
	crossed map[[2]int]int
	border  map[[2]int]bool // edges on the plane that have one triangle
	out     Mesh
}

// clip keeps the part of a triangle in the half-space.
func (c *cutter) clip(t [3]int) {
	if c.side[t[0]] <= 0 && c.side[t[1]] <= 0 && c.side[t[2]] <= 0 {
		return
	}
	var kept []int
	for i, v := range t {
		w := t[(i+1)%3]
		if c.side[v] >= 0 {
			kept = append(kept, v)
		}
		if c.side[v]*c.side[w] < 0 {
			kept = append(kept, c.cross(min(v, w), max(v, w)))
		}
	}
	rim(kept, c.side, c.border)
	c.out.Triangles = append(c.out.Triangles, [3]int(kept[:3]))
	if len(kept) == 4 {
		c.out.Triangles = append(c.out.Triangles, [3]int{kept[0], kept[2], kept[3]})
	}
}

func (c *cutter) cross(a, b int) int {
	if v, ok := c.crossed[[2]int{a, b}]; ok {
		return v
	}
	v := len(c.out.Vertices)
	c.crossed[[2]int{a, b}] = v
	c.out.Vertices = append(c.out.Vertices, between(c.from.Vertices[a], c.from.Vertices[b], c.plane))
	return v
}

// close puts flat faces on the loops in the plane.
func (c *cutter) close() error {
	loops, err := loopsOf(c.border)
	if err != nil || len(loops) == 0 {
		return err
	}
	flat := flatten(c.out.Vertices, c.plane.Normal)
	var outlines, holes [][]int
	for _, l := range loops {
		if area(flat, l) > 0 {
			outlines = append(outlines, l)
		} else {
			holes = append(holes, l)
		}
	}
	owner := make([][][]int, len(outlines))
	for _, h := range holes {
		at := smallestAround(flat, outlines, flat[h[0]])
		if at < 0 {
			return errTangled
		}
		owner[at] = append(owner[at], h)
	}
	for i, o := range outlines {
		lid, err := triangulate(flat, o, owner[i])
		if err != nil {
			return err
		}
		c.out.Triangles = append(c.out.Triangles, lid...)
	}
	return nil
}

// loopsOf joins the edges of a border, turned round, to loops.
func loopsOf(border map[[2]int]bool) ([][]int, error) {
	next := make(map[int]int, len(border))
	starts := make([]int, 0, len(border))
	for e := range border {
		if _, twice := next[e[1]]; twice {
			return nil, errTangled
		}
		next[e[1]] = e[0]
		starts = append(starts, e[1])
	}
	slices.Sort(starts)
	var loops [][]int
	for _, first := range starts {
		var loop []int
		for v := first; ; {
			after, ok := next[v]
			if !ok {
				break
			}
			delete(next, v)
			loop = append(loop, v)
			v = after
		}
		if loop == nil {
			continue
		}
		if len(loop) < 3 || !border[[2]int{loop[0], loop[len(loop)-1]}] {
			return nil, errTangled
		}
		loops = append(loops, loop)
	}
	return loops, nil
}

// smallestAround returns the outline of least area that a point is inside of,
// -1 for none.
func smallestAround(points []r2.Vec, outlines [][]int, p r2.Vec) int {
	best, least := -1, math.Inf(1)
	for i, o := range outlines {
		if a := area(points, o); a < least && isInside(points, o, p) {
			best, least = i, a
		}
	}
	return best
}

// isInside counts the edges of a loop on the way from a point to the far right.
func isInside(points []r2.Vec, loop []int, p r2.Vec) bool {
	inside := false
	for i, v := range loop {
		a, b := points[v], points[loop[(i+1)%len(loop)]]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			inside = !inside
		}
	}
	return inside
}

// flatten returns points seen along a direction that points at the eye, so that
// counter-clockwise stays so.
func flatten(points []r3.Vec, towards r3.Vec) []r2.Vec {
	right, up := across(towards)
	out := make([]r2.Vec, len(points))
	for i, p := range points {
		out[i] = r2.Vec{X: r3.Dot(p, right), Y: r3.Dot(p, up)}
	}
	return out
}

// across returns two unit vectors square to a direction and to each other; with
// it they are right-handed.
func across(n r3.Vec) (right, up r3.Vec) {
	away := r3.Vec{Z: 1}
	if math.Abs(n.Z) > 0.9 {
		away = r3.Vec{Y: 1}
	}
	right = r3.Unit(r3.Cross(away, n))
	return right, r3.Cross(n, right)
}
