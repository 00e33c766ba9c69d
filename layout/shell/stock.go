package shell

import (
	"math"

	"pappus/layout/body"
	"pappus/layout/poly"
	"pappus/layout/prose"
)

// rounding is the length over the radius that arithmetic may be off by.
const rounding = 1e-12

// Hollow returns the volume in m3 inside the walls of a body, all of one thickness in m but for
// the base of a cut, which is open. What the walls take up is the body's volume less that.
func Hollow(b *body.Body, wall float64) (float64, error) {
	p, err := pieces(b, wall)
	if err != nil {
		return 0, err
	}
	volume := p.hollow(b.Span())
	return volume, p.err
}

// stock is what segments are cut from: a body with faces, or a ball.
type stock struct {
	body         *body.Body
	wall         float64
	outer, inner poly.Solid // empty for a ball
	walls        []poly.Plane
	slack        float64
	err          error // of the first cut that failed
}

// What cuts leave bears numbers from seam on; the body's own faces, a cut's base among them,
// bear less.
const seam = 2

func pieces(b *body.Body, wall float64) (*stock, error) {
	p := &stock{body: b, wall: wall, slack: rounding * b.Radius}
	narrow := prose.Errorf("%w: %.4g mm", errWall, 1e3*wall)
	if !(wall > 0) || b.IsBall() && !(b.Lowest() < b.Radius-wall) {
		return nil, narrow
	}
	for f, face := range b.Faces {
		if !face.Base() {
			w := b.Plane(f)
			w.Offset -= wall
			p.walls = append(p.walls, w)
		}
	}
	if p.outer = b.Solid; !b.IsBall() {
		if p.inner = p.within(b.Solid, seam, p.walls...); len(p.inner.Faces) == 0 && p.err == nil {
			return nil, narrow
		}
	}
	return p, p.err
}

// within returns what is left of a solid in half-spaces, whose faces are numbered from first on.
func (p *stock) within(s poly.Solid, first int, planes ...poly.Plane) poly.Solid {
	s, err := s.Within(first, p.slack, planes...)
	if p.err == nil {
		p.err = err
	}
	return s
}

// hollow returns the volume of the hollow between two heights.
func (p *stock) hollow(low, high float64) float64 {
	if p.body.IsBall() {
		radius := p.body.Radius - p.wall
		return body.BallZone(radius, max(low, -radius), min(high, radius))
	}
	return p.level(p.inner, low, high).Volume()
}

// level returns what of a solid is between two heights.
func (p *stock) level(s poly.Solid, low, high float64) poly.Solid {
	return p.within(s, seam, poly.Level(low, high)...)
}

// sector returns what of a solid is between two azimuths, at most half a turn apart or a whole
// one.
func (p *stock) sector(s poly.Solid, from, to float64) poly.Solid {
	if to-from >= 2*math.Pi-rounding {
		return s
	}
	return p.within(s, seam, poly.Sector(from, to)...)
}
