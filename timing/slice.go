package timing

import (
	"math"

	"pappus/layout"

	"gonum.org/v1/gonum/spatial/r3"
)

// Point returns the middle of a cell, in m.
func (s Slice) Point(column, row int) r3.Vec {
	return r3.Add(s.Origin, r3.Add(
		r3.Scale(float64(column)*s.Step, s.Right),
		r3.Scale(float64(row)*s.Step, s.Up)))
}

// within returns the middles of the cells that sound can reach, in m, and which cells
// they are, row after row.
func (s Slice) within(a *layout.Array) (places []r3.Vec, cells []int) {
	for cell := range s.Columns * s.Rows {
		if at := s.Point(cell%s.Columns, cell/s.Columns); a.Reach(at) == nil {
			places, cells = append(places, at), append(cells, cell)
		}
	}
	return places, cells
}

// HorizontalSlice returns the level slice at the height of the plan's spot, a
// square round the body's axis, x to the right and y up: the room seen from
// above. Its size is the design's.
func HorizontalSlice(p *Spot) Slice {
	c := p.Array.Coverage
	step := 2 * c.HalfWidth / float64(c.Cells)
	corner := -c.HalfWidth + step/2
	return Slice{
		Name:    "from above",
		Origin:  r3.Vec{X: corner, Y: corner, Z: p.Array.Spot.Z},
		Right:   r3.Vec{X: 1},
		Up:      r3.Vec{Y: 1},
		Step:    step,
		Columns: c.Cells,
		Rows:    c.Cells,
	}
}

// VerticalSlice returns the upright slice through the origin and the plan's spot: to the right
// is towards the spot, up is z. It is as wide as the horizontal slice and half as high, from
// the floor or the surface that the body stands on up, from the ceiling that it hangs from
// down, or on a wall from below it to above.
func VerticalSlice(p *Spot) Slice {
	a := p.Array
	step := 2 * a.Coverage.HalfWidth / float64(a.Coverage.Cells)
	right := towards(a.Spot)
	start := r3.Scale(-a.Coverage.HalfWidth+step/2, right)
	rows := (a.Coverage.Cells + 1) / 2
	start.Z = bottom(a, float64(rows)*step) + step/2
	return Slice{
		Name:    "from the side",
		Origin:  start,
		Right:   right,
		Up:      r3.Vec{Z: 1},
		Step:    step,
		Columns: a.Coverage.Cells,
		Rows:    rows,
	}
}

// bottom returns where an upright slice so high begins, in m.
func bottom(a *layout.Array, high float64) float64 {
	up := r3.Vec{Z: 1}
	switch {
	case a.On == layout.OnCeiling && a.Room.Present:
		return a.Room.Size.Z - a.Room.Body.Z - high
	case a.On == layout.OnCeiling:
		return a.Extent(up) + a.Stand - high
	case a.Room.Present:
		return -a.Room.Body.Z
	case a.On == layout.OnWall:
		return -high / 2
	}
	return -a.Extent(r3.Scale(-1, up)) - a.Stand
}

// towards returns the horizontal direction of a point, x where it stands on
// the vertical axis.
func towards(at r3.Vec) r3.Vec {
	reach := math.Hypot(at.X, at.Y)
	if reach == 0 {
		return r3.Vec{X: 1}
	}
	return r3.Vec{X: at.X / reach, Y: at.Y / reach}
}
