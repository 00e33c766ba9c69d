package radiate

import (
	"math"

	"pappus/timing/harmonic"

	"gonum.org/v1/gonum/spatial/r3"
)

// Within returns of some rings what keep tells of each place to be kept; nil: all. What is
// summed at a place is the same to the bit.
func (x *Rings) Within(keep []bool) *Rings {
	if keep == nil {
		return x
	}
	out := *x
	out.Ring, out.Near = nil, nil
	for _, ring := range x.Ring {
		one := Ring{R: ring.R, cos: ring.cos, sin: ring.sin}
		for i, place := range ring.Place {
			if keep[place] {
				one.Place, one.azimuth = append(one.Place, place), append(one.azimuth, ring.azimuth[i])
			}
		}
		if one.Place != nil {
			out.Ring = append(out.Ring, one)
		}
	}
	for _, place := range x.Near {
		if keep[place] {
			out.Near = append(out.Near, place)
		}
	}
	return &out
}

// Summed is what all mounts of an array give by some ways for one feed, ready to be heard at
// places, some after others.
type Summed struct {
	scene *Scene
	feed  Feed
	part  []summedWay
	near  bool // places that are not on rings are summed too
}

// summedWay is one way of it.
type summedWay struct {
	rings *Rings
	whole []*whole
}

// NewSummed returns the sum of a feed by some ways at places in m, on all cores: over harmonics
// where the drivers are on a ball, else driver by driver.
func (s *Scene) NewSummed(feed Feed, ways []Way, frame harmonic.Frame, places []r3.Vec) *Summed {
	x := &Summed{scene: s, feed: feed, near: true}
	for body := range s.Array.Bodies() {
		nearest, from := math.Inf(1), len(x.part)
		for _, way := range ways {
			if way.Body != body {
				continue
			}
			rings := s.Rings(way, frame, places)
			if len(rings.Ring) > 0 {
				nearest = min(nearest, rings.Ring[0].R)
			}
			x.part = append(x.part, summedWay{rings: rings})
		}
		w := s.newWhole(body, feed, s.turned(frame, body), nearest)
		for i := range x.part[from:] {
			x.part[from+i].whole = w
		}
	}
	return x
}

// OnRings is NewSummed for places that are sorted already, without those that are near.
func (s *Scene) OnRings(feed Feed, rings *Rings) *Summed {
	x := &Summed{scene: s, feed: feed}
	if len(rings.Ring) > 0 {
		x.part = []summedWay{{rings, s.newWhole(rings.way.Body, feed, rings.frame, rings.Ring[0].R)}}
	}
	return x
}

// Add adds to dst[place][frequency] what the places hear that keep tells; nil: all. The result
// is the same to the bit for any number of cores, and whichever places are heard together.
func (x *Summed) Add(dst []complex128, keep []bool) {
	for _, part := range x.part {
		rings := part.rings.Within(keep)
		for _, w := range part.whole {
			w.add(dst, rings)
		}
		if !x.near {
			continue
		}
		x.scene.EachNear(rings, func(_, place int, pressure []complex128) {
			x.feed.AddTo(row(dst, place, len(x.scene.Medium.Frequency)), pressure)
		})
	}
}
