package timing

import (
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// Where a room's table begins, in radii of the ball that stands for the body: near
// to it tables grow large.
const followFrom = 3.0

// following is a field of the echoes at all spots of a room that are not near to the
// body.
type following struct {
	echoes radiate.Field // nil: none is ready
	near   float64       // m, from the ball's centre
}

// Follow makes ready for moves one after another. In a room, where each wall sends
// another image of the array to the spot, Move then looks their field up, which is
// within 0.05 dB and 1 degree for each image, in place of computing it for every
// spot anew; the direct sound stays exact. Elsewhere Move is fast, and exact, as it is; so it stays near to the
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
	_, echoes, err := splitField(p.array, p.medium, places)
	p.follow = following{echoes, near}
	return err
}

// fieldsAt returns the fields for a spot in m: of the body alone, and of the echoes, nil
// where there are none.
func (p *Planner) fieldsAt(spot r3.Vec) (direct, echoes radiate.Field, err error) {
	place := []r3.Vec{spot}
	if p.follow.echoes != nil && r3.Norm(r3.Sub(spot, p.array.Body.BallCentre)) >= p.follow.near {
		direct, err = directField(p.array, p.medium, place)
		return direct, p.follow.echoes, err
	}
	return splitField(p.array, p.medium, place)
}
