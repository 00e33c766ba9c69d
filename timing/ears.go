package timing

import (
	"math"

	"pappus/layout"
	"pappus/timing/head"
	"pappus/timing/path"

	"gonum.org/v1/gonum/spatial/r3"
)

// Ears is a Hearing with a head between two ears: a rigid ball, see package
// head, which shades the ears but casts no shadow and no echo on the body.
//
// What comes from a driver comes to the head from where the driver is seen, or,
// where the body hides it, from where its path round the body leaves the
// ball. The mirror image in the surface below is heard driver by driver too; each
// echo of a room as one sound from the middle of the mirrored body.
type Ears struct {
	*Hearing
	head *head.Head
}

// behind is the angle in rad from the point right behind the body over which the
// place where a hidden driver is heard moves in to the body's middle: there its
// sound comes round by all sides at once.
const behind = 10 * math.Pi / 180

// NewEars is NewHearing for two ears; places are those of the head's centre.
func NewEars(p *Spot, l Listening, places []r3.Vec, frequency []float64) (*Ears, error) {
	h, err := NewHearing(p, l, places, frequency)
	if err != nil {
		return nil, err
	}
	return newEars(h, len(places) > 1)
}

// newEars puts a head between the ears of a Hearing, one that moves or not.
func newEars(h *Hearing, moving bool) (e *Ears, err error) {
	e = &Ears{Hearing: h}
	e.head, err = head.New(h.medium.Wavenumber, moving)
	return e, err
}

// At fills left and right, one slice each for each case, with the complex pressure
// at the ears of an upright head whose centre is at a place in m and which looks along
// nose, as Hearing.At does. For several places and without a room it allocates nothing but what the head keeps.
func (e *Ears) At(left, right [][]complex128, place, nose r3.Vec) {
	e.check(left)
	e.check(right)
	held := e.scratch.Get().(*ear)
	defer e.scratch.Put(held)
	l, r := head.Ears(nose)
	for _, g := range e.groups {
		for i := range g.ways {
			e.way(held, &g, g.mounts, i, place, l, r, func(m int) {
				g.feed(left, held.left, m)
				g.feed(right, held.right, m)
			})
		}
	}
}

// way calls visit with each of a group's mounts, or of some of them, once held has what two
// ears at directions from the head's centre hear of it by one of the group's ways.
func (e *Ears) way(held *ear, g *group, mounts []layout.Mount, i int, place, l, r r3.Vec, visit func(m int)) {
	way, echo := g.ways[i], e.echo(g, i, place, l, r)
	held.each(g, mounts, way, place, func(m int, heard []complex128) {
		clear(held.left)
		clear(held.right)
		if echo != nil {
			echo.filter(held, heard)
		} else { // seen from the body it is the head that is mirrored
			from := source(e.towards(*g, mounts[m].Point, way.Moved(place)), way.Turned(l), way.Turned(r))
			e.head.Add(held.left, held.right, heard, from)
		}
		visit(m)
	})
}

// echo is what the head does to a sound that comes from the middle of a mirrored
// body.
type echo struct{ left, right []complex128 }

// echo returns that of a group by one of its ways in a room; nil without a room, or for the
// group itself.
func (e *Ears) echo(g *group, i int, place, left, right r3.Vec) *echo {
	if !e.whole || i < g.bodies {
		return nil
	}
	way, o := g.ways[i], &echo{make([]complex128, len(e.plain)), make([]complex128, len(e.plain))}
	e.head.Add(o.left, o.right, e.plain, source(r3.Sub(g.middle, way.Moved(place)), way.Turned(left), way.Turned(right)))
	return o
}

// filter adds a row to both ears.
func (o *echo) filter(held *ear, row []complex128) {
	for f, v := range row {
		held.left[f] += v * o.left[f]
		held.right[f] += v * o.right[f]
	}
}

// source returns a sound that comes from a place relative to the head's centre,
// as the head has it.
func source(from, left, right r3.Vec) head.Source {
	return head.Source{Distance: r3.Norm(from), Left: path.Angle(from, left), Right: path.Angle(from, right)}
}

// towards returns the vector in m from a place to where a mount of a group is heard
// from there.
func (h *Hearing) towards(g group, mount, place r3.Vec) r3.Vec {
	body := h.plan.Array.Body
	if g.apart || !hasBody(h.plan.Array) {
		return r3.Sub(mount, place)
	}
	mount, place = body.OnBall(mount), r3.Sub(place, body.BallCentre)
	rho, r := r3.Norm(mount), r3.Norm(place)
	if rho == 0 || r <= rho || r3.Dot(mount, place) >= rho*rho {
		return r3.Sub(mount, place)
	}
	ahead := r3.Scale(-1/r, place)
	across := r3.Sub(mount, r3.Scale(r3.Dot(mount, ahead), ahead))
	tangent := math.Sqrt((r - rho) * (r + rho))
	side := r3.Norm(across)
	if side == 0 {
		return r3.Scale(tangent, ahead)
	}
	angle := math.Asin(rho/r) * min(1, (math.Pi-path.Angle(mount, place))/behind)
	sin, cos := math.Sincos(angle)
	return r3.Add(r3.Scale(tangent*cos, ahead), r3.Scale(tangent*sin/side, across))
}
