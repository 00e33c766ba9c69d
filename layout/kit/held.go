package kit

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// Meeting is where two segments meet, and what holds them there.
type Meeting struct {
	A, B      int     // numbers of segments, from 1
	Long      float64 // m, of the seam
	Lapped    float64 // m of it that have a tongue under them; of a flange none
	Fasteners int     // screws and dowels
}

// Bare tells whether a seam that is long enough for a screw has none: drivers leave no room.
func (m Meeting) Bare() bool { return m.Fasteners == 0 && m.Long > pitch }

// meetings returns what holds each two segments that meet.
func (k *maker) meetings() (out []Meeting) {
	index := make(map[[2]int]int)
	for _, s := range k.seams {
		pair := [2]int{k.wall.regions[s.a].Segment, k.wall.regions[s.b].Segment}
		i, ok := index[pair]
		if !ok {
			i = len(out)
			index[pair] = i
			out = append(out, Meeting{A: pair[0] + 1, B: pair[1] + 1})
		}
		m := &out[i]
		m.Fasteners += len(k.fastened[s.number])
		long, lapped := k.lapOf(s)
		m.Long, m.Lapped = m.Long+long, m.Lapped+lapped
	}
	return slices.DeleteFunc(out, func(m Meeting) bool { return m.Long == 0 }) // in a corner alone
}

// lapOf measures a seam, and what of it a tongue is under.
func (k *maker) lapOf(s seam) (long, lapped float64) {
	from := r3.Scale(s.plane.Offset, s.plane.Normal)
	for i := 1; i < len(s.points); i++ {
		a, b := s.points[i-1], s.points[i]
		step := r3.Norm(r3.Sub(b, a))
		if step > 0.1*k.wall.radius { // the seam is elsewhere between
			continue
		}
		long += step
		over := r3.Add(r3.Scale(0.5, r3.Add(a, b)), r3.Scale(reach/2, s.plane.Normal))
		if at, _ := k.wall.hit(from, r3.Sub(over, from), k.wall.thick+k.Gap+k.wall.thick/2); k.Joint == Lap && k.offDrivers(at, 0) {
			lapped += step
		}
	}
	return long, lapped
}
