package timing

import (
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// Where a room's table begins, in radii of the ball that stands for the body: near
// to it tables grow large.
const followFrom = 3.0

// following is a field for all spots of a room that are not near to the body.
type following struct {
	field radiate.Field // nil: none is ready
	near  float64       // m, from the ball's centre
}

// Follow makes ready for moves one after another. In a room, where each wall sends
// another image of the array to the spot, Move then looks the field up, which is
// within 0.05 dB and 1 degree for each image, in place of reckoning it for every
// spot anew. Elsewhere Move is fast, and exact, as it is; so it stays near to the
// body.
func (p *Planner) Follow() error {
	room := p.array.Room
	if !room.Present || p.array.Timing.Model != sphereModel {
		return nil
	}
	near := followFrom * p.array.Body.BallRadius
	places := []r3.Vec{r3.Add(p.array.Body.BallCentre, r3.Vec{Z: near})}
	for corner := range 8 {
		at := r3.Scale(-1, room.Body)
		if corner&1 != 0 {
			at.X += room.Size.X
		}
		if corner&2 != 0 {
			at.Y += room.Size.Y
		}
		if corner&4 != 0 {
			at.Z += room.Size.Z
		}
		places = append(places, at)
	}
	field, err := newField(p.array, p.medium, places)
	p.follow = following{field, near}
	return err
}

// fieldAt returns the field for a spot in m.
func (p *Planner) fieldAt(spot r3.Vec) (radiate.Field, error) {
	if p.follow.field != nil && r3.Norm(r3.Sub(spot, p.array.Body.BallCentre)) >= p.follow.near {
		return p.follow.field, nil
	}
	return newField(p.array, p.medium, []r3.Vec{spot})
}
