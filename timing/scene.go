package timing

import (
	"fmt"
	"math"

	"pappus/layout"
	"pappus/timing/ball"
	"pappus/timing/radiate"
	"pappus/timing/shoebox"

	"gonum.org/v1/gonum/spatial/r3"
)

// scene is an array in its surroundings: the ways by which its sound comes.
type scene struct {
	array  *layout.Array
	medium *radiate.Medium
}

// newField returns the field that an array's design names, with the surface
// below it or the room round it, for the frequencies of a medium and for the
// given places in m. A model that timing does not know is an error.
func newField(a *layout.Array, m *radiate.Medium, places []r3.Vec) (radiate.Field, error) {
	s := scene{a, m}
	return s.field(s.images(), places)
}

// images returns all ways by which an array is heard, still without fields: the
// body itself first.
func (s scene) images() []radiate.Image {
	a := s.array
	switch {
	case a.Room.Present:
		return s.room()
	case a.Surface.Present:
		floor := radiate.Floor(nil, a.Surface.Height, s.reflection(a.Surface.Absorption))
		return []radiate.Image{radiate.Direct(nil), floor}
	}
	return []radiate.Image{radiate.Direct(nil)}
}

// alone returns an array in open air, for what is told of its direct sound.
func alone(a *layout.Array) *layout.Array {
	free := *unroomed(a)
	free.Surface.Present = false
	return &free
}

// unroomed returns an array without the room, for what is told of the
// loudspeaker itself.
func unroomed(a *layout.Array) *layout.Array {
	free := *a
	free.Room.Present = false
	return &free
}

// splitField returns the parts of what newField has in one: the field of the body alone,
// and that of all that comes by the surface below it or by the walls of its room, nil
// where nothing does.
func splitField(a *layout.Array, m *radiate.Medium, places []r3.Vec) (direct, echoes radiate.Field, err error) {
	s := scene{a, m}
	images := s.images()
	if err := s.equip(images, places); err != nil {
		return nil, nil, err
	}
	if len(images) > 1 {
		echoes = radiate.Images(images[1:], len(m.Frequency))
	}
	return images[0].Field, echoes, nil
}

// directField returns the field of the body alone.
func directField(a *layout.Array, m *radiate.Medium, places []r3.Vec) (radiate.Field, error) {
	return scene{a, m}.field([]radiate.Image{radiate.Direct(nil)}, places)
}

// reflection returns what a wall leaves of the pressure at each frequency.
func (s scene) reflection(absorption layout.Absorption) []float64 {
	factor := make([]float64, len(s.medium.Frequency))
	for f, hz := range s.medium.Frequency {
		factor[f] = radiate.Reflection(absorption.At(hz))
	}
	return factor
}

// room returns the images of the room, still without fields.
func (s scene) room() []radiate.Image {
	r := s.array.Room
	var walls [6][]float64
	for wall := range walls {
		walls[wall] = s.reflection(r.Absorption[wall])
	}
	var images []radiate.Image
	for _, i := range shoebox.Images(r.Size, r.Body, r.Order) {
		image := radiate.Image{Flip: i.Flip, Shift: i.Shift}
		if i.Order() > 0 {
			image.Factor = make([]float64, len(s.medium.Frequency))
			for f := range image.Factor {
				var reflection [6]float64
				for wall := range walls {
					reflection[wall] = walls[wall][f]
				}
				image.Factor[f] = i.Factor(reflection)
			}
		}
		images = append(images, image)
	}
	return images
}

// field gives each image its model and returns the sum of all.
func (s scene) field(images []radiate.Image, places []r3.Vec) (radiate.Field, error) {
	if err := s.equip(images, places); err != nil {
		return nil, err
	}
	if len(images) == 1 {
		return images[0].Field, nil
	}
	return radiate.Images(images, len(s.medium.Frequency)), nil
}

// equip gives each image its model. Images that each hear all places from one
// distance get the exact field for it; else all share one table.
func (s scene) equip(images []radiate.Image, places []r3.Vec) error {
	near, far := math.Inf(1), 0.0
	single := true
	for _, image := range images {
		from, to := distances(image, s.array.Body.BallCentre, places)
		near, far = min(near, from), max(far, to)
		single = single && to-from <= 1e-12*to
	}
	shared, err := radiate.Field(nil), error(nil)
	if !single {
		if shared, err = s.model(near, far); err != nil {
			return err
		}
	}
	for i := range images {
		images[i].Field = shared
		if single {
			if images[i].Field, err = s.model(distances(images[i], s.array.Body.BallCentre, places)); err != nil {
				return err
			}
		}
	}
	return nil
}

// distances returns the least and greatest distance from a centre at which an image
// hears places.
func distances(image radiate.Image, centre r3.Vec, places []r3.Vec) (near, far float64) {
	near = math.Inf(1)
	for _, p := range places {
		d := r3.Norm(r3.Sub(image.Moved(p), centre))
		near, far = min(near, d), max(far, d)
	}
	return near, far
}

// model returns the field of the body alone, for distances in m.
func (s scene) model(near, far float64) (radiate.Field, error) {
	switch s.array.Timing.Model {
	case pointModel:
		return radiate.Point(s.medium), nil
	case baffleModel:
		return radiate.Baffle(s.medium, s.array.Driver.ConeRadius), nil
	case sphereModel:
		return radiate.Sphere(s.medium, coneCap(s.array), s.array.Body.BallCentre, near, far)
	}
	return nil, fmt.Errorf("no model is called %q", s.array.Timing.Model)
}

// coneCap returns the cap that stands for a driver's cone on the ball of the
// body's volume: as wide as the cone, from 1 to 60 degrees of half angle.
func coneCap(a *layout.Array) ball.Cap {
	const degree = math.Pi / 180
	half := math.Asin(min(1, a.Driver.ConeRadius/a.Body.BallRadius))
	return ball.Cap{Radius: a.Body.BallRadius, HalfAngle: min(max(half, degree), 60*degree)}
}
