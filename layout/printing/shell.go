package printing

import (
	"errors"
	"math"

	"pappus/layout/body"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// ErrWall is the error for a wall that leaves no hollow, or is no length.
var ErrWall = errors.New("the wall must be a length above 0 that leaves a hollow")

// Shell is how thick the walls of a body are, in m.
type Shell struct {
	Wall float64
	Base float64 // of the flat face that a cut leaves; 0: it is open
}

// rounding is the length over the radius that arithmetic may be off by.
const rounding = 1e-12

// Hollow returns the volume in m3 inside the walls of a body. What the walls
// take up is the body's volume less that. Errors wrap [ErrWall].
func (s Shell) Hollow(b *body.Body) (float64, error) {
	p, err := pieces(b, s)
	if err != nil {
		return 0, err
	}
	low, high := p.span()
	return p.hollow(low, high), nil
}

// stock is what segments are cut from: a body with faces, or a ball.
type stock struct {
	body         *body.Body
	shell        Shell
	outer, inner solid // empty for a ball
	walls        []half
	slack        float64
}

func pieces(b *body.Body, s Shell) (*stock, error) {
	if !(s.Wall > 0) || !(s.Base >= 0) || math.IsInf(s.Base, 1) {
		return nil, prose.Errorf("%w: wall %g m, base %g m", ErrWall, s.Wall, s.Base)
	}
	p := &stock{body: b, shell: s, slack: rounding * b.Radius}
	if b.IsBall() {
		if low, _ := p.hollowSpan(); !(low < b.Radius-s.Wall) {
			return nil, prose.Errorf("%w: %g m", ErrWall, s.Wall)
		}
		return p, nil
	}
	p.outer = solidOf(b)
	p.inner = p.outer
	for f, face := range b.Faces {
		thick := s.Wall
		if face.Base {
			thick = s.Base
		}
		n := b.Normal(f)
		h := half{n, r3.Dot(n, b.Vertices[face.Corners[0]]) - thick}
		p.walls = append(p.walls, h)
		if p.inner = p.inner.clip(h, p.slack); len(p.inner) == 0 {
			return nil, prose.Errorf("%w: %g m", ErrWall, s.Wall)
		}
	}
	return p, nil
}

// span returns the heights of the body's lowest and highest points.
func (p *stock) span() (low, high float64) {
	low, high = p.body.Lowest(), p.body.Radius
	if !p.body.IsBall() {
		high = math.Inf(-1)
		for _, v := range p.body.Vertices {
			high = max(high, v.Z)
		}
	}
	return low, high
}

// hollowSpan is span for the hollow of a ball.
func (p *stock) hollowSpan() (low, high float64) {
	high = p.body.Radius - p.shell.Wall
	low = -high
	if p.body.IsCut {
		low = max(low, p.body.Cut+p.shell.Base)
	}
	return low, high
}

// hollow returns the volume of the hollow between two heights.
func (p *stock) hollow(low, high float64) float64 {
	if p.body.IsBall() {
		from, to := p.hollowSpan()
		return zone(p.body.Radius-p.shell.Wall, max(low, from), min(high, to))
	}
	return level(p.inner, low, high, p.slack).volume()
}

// level returns what of a solid is between two heights.
func level(s solid, low, high, slack float64) solid {
	return s.clip(half{r3.Vec{Z: 1}, high}, slack).clip(half{r3.Vec{Z: -1}, -low}, slack)
}

// sector returns what of a solid is between two azimuths less than a whole turn
// apart and at most half of one.
func sector(s solid, from, to, slack float64) solid {
	if to-from >= 2*math.Pi-rounding {
		return s
	}
	sin, cos := math.Sincos(from)
	s = s.clip(half{r3.Vec{X: sin, Y: -cos}, 0}, slack)
	sin, cos = math.Sincos(to)
	return s.clip(half{r3.Vec{X: -sin, Y: cos}, 0}, slack)
}

// zone returns the volume of a ball between two heights.
func zone(radius, low, high float64) float64 {
	if !(high > low) {
		return 0
	}
	return math.Pi * (high - low) * (radius*radius - (high*high+high*low+low*low)/3)
}
