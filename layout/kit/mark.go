package kit

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"pappus/layout/spread"

	"gonum.org/v1/gonum/spatial/r3"
)

// Heights of numbers in m: the smallest that a nozzle of 0.4 mm draws well (common practice).
const tall, small = 5e-3, 4e-3

// label is what is cut into the inside of a wall, and where it may stand, the best place first.
type label struct {
	words  string
	height float64
	at     []pole
}

// mark cuts numbers and arrows into the inside of a segment: of each mount, of the segment with
// an arrow that points up, F at the front, and the neighbour's at each joint. It returns what
// there was no room for.
func (k *maker) mark(b *blank, segment int, parted bool) (missing []string) {
	var labels []label
	if parted {
		labels = append(labels, k.neighbours(segment)...)
		labels = append(labels, label{"S" + strconv.Itoa(segment+1) + "^", tall, k.everywhere(segment, k.heart(segment))})
	}
	if first := k.frontSegment(); first == segment || !parted {
		labels = append(labels, label{"F^", tall, k.everywhere(segment, r3.Vec{X: k.wall.radius, Z: k.lowest() / 2})})
	}
	for i, p := range k.seats {
		if k.within(segment, p.at, 0) {
			labels = append(labels, label{strconv.Itoa(k.array.Own()[i].ID), small, k.around(p)})
		}
	}
	var taken []label
	for _, l := range labels {
		p, ok := k.find(l, segment, taken)
		if !ok && l.height > small {
			l.height = small
			p, ok = k.find(l, segment, taken)
		}
		if ok {
			b.add(cut, p.engrave(l.words, l.height))
			taken = append(taken, label{l.words, l.height, []pole{p}})
		} else {
			missing = append(missing, l.words)
		}
	}
	return missing
}

func (k *maker) lowest() float64 {
	if k.wall.floor != nil {
		return -k.wall.floor.Offset
	}
	return -k.wall.radius
}

// heart is about the middle of a segment: of its mounts, or of what it is a share of.
func (k *maker) heart(segment int) (sum r3.Vec) {
	for _, d := range spread.Spiral(400) {
		at, _ := k.wall.hit(r3.Vec{}, d, k.wall.thick)
		if at.Z > k.lowest() && k.within(segment, at, 0) {
			sum = r3.Add(sum, at)
		}
	}
	return sum
}

// frontSegment is the one that is nearest to straight ahead.
func (k *maker) frontSegment() int {
	best, most := 0, math.Inf(-1)
	for _, r := range k.wall.regions {
		if in := inside(r.Sides, r3.Vec{X: k.wall.radius, Z: max(k.lowest()+0.2*k.wall.radius, 0)}); in > most {
			best, most = r.Segment, in
		}
	}
	return best
}

// everywhere returns places all over a segment, those towards a point first.
func (k *maker) everywhere(segment int, towards r3.Vec) (out []pole) {
	for _, d := range spread.Spiral(3000) {
		at, _ := k.wall.hit(r3.Vec{}, d, k.wall.thick)
		if k.within(segment, at, 0) && r3.Norm(r3.Sub(r3.Unit(at), r3.Unit(towards))) < 0.8 {
			p := k.wall.on(r3.Vec{}, d, r3.Vec{Z: 1}, k.wall.thick)
			out = append(out, p)
		}
	}
	aim := r3.Unit(towards)
	slices.SortStableFunc(out, func(p, q pole) int {
		return cmp.Compare(r3.Norm(r3.Sub(r3.Unit(p.at), aim)), r3.Norm(r3.Sub(r3.Unit(q.at), aim)))
	})
	return out
}

// around returns places round a seat, on the inside.
func (k *maker) around(p pole) (out []pole) {
	for more := range 3 {
		for i := range 16 {
			sin, cos := math.Sincos(math.Pi/2 + 2*math.Pi*float64(i)/16)
			far := k.markedFrom() + 0.75*small + 2e-3*float64(more)
			q := k.wall.on(r3.Vec{}, p.place(far*cos, far*sin, -k.wall.thick), r3.Vec{Z: 1}, k.wall.thick)
			out = append(out, q)
		}
	}
	return out
}

// markedFrom is the radius about a mount within which nothing is cut into the wall's inside.
func (k *maker) markedFrom() float64 {
	from := k.array.Driver.CutoutRadius + 0.8e-3
	if r := k.array.Driver.ScrewRadius; r > 0 {
		from = max(from, k.ring()+0.8*r+0.4e-3)
	}
	if k.Mounting == Rear {
		from = max(from, k.array.Driver.FlangeRadius+k.Gap+0.4e-3)
	}
	return from
}

// neighbours are the numbers of the segments across each joint: beside the lap, as near to it as there is
// room.
func (k *maker) neighbours(segment int) (out []label) {
	done := make(map[int]bool)
	for _, s := range k.seams {
		a, b := k.wall.regions[s.a].Segment, k.wall.regions[s.b].Segment
		other, into := b, -1.0
		if b == segment {
			other, into = a, 1
		}
		if a != segment && b != segment || done[other] {
			continue
		}
		done[other] = true
		l := label{words: strconv.Itoa(other + 1), height: tall}
		n := len(s.points)
		for _, far := range []float64{1, 4, 8, 12} {
			for i := range s.points {
				at := s.points[(n/2+i)%n]
				away := into * (reach + tall/2 + 1e-3*far)
				p := k.wall.on(r3.Vec{}, r3.Add(at, r3.Scale(away, s.plane.Normal)), r3.Scale(-into, s.plane.Normal), k.wall.thick)
				l.at = append(l.at, p)
			}
		}
		out = append(out, l)
	}
	return out
}

// find returns the first place of a label that is free.
func (k *maker) find(l label, segment int, taken []label) (pole, bool) {
	wide := width(l.words, l.height)
	for _, p := range l.at {
		if k.isFree(p, wide, l.height, segment) && !slices.ContainsFunc(taken, func(t label) bool {
			return r3.Norm(r3.Sub(t.at[0].at, p.at)) < math.Hypot(wide, l.height)/2+math.Hypot(width(t.words, t.height), t.height)/2
		}) {
			return p, true
		}
	}
	return pole{}, false
}

// isFree tells whether a box on the inside of the wall is clear of all there is.
func (k *maker) isFree(p pole, wide, high float64, segment int) bool {
	for i := range 9 {
		x, y := float64(i%3-1)*(wide/2+lineWide), float64(i/3-1)*(high/2+lineWide)
		at := p.place(x, y, 0)
		if !k.within(segment, at, -1e-3) || at.Z < k.lowest()+ledgeTall+postTall+1e-3 && k.wall.floor != nil {
			return false
		}
		for _, v := range k.walled {
			if r3.Norm(r3.Sub(at, v.at)) < k.Vents.socketRadius()+k.wall.thick+1e-3 {
				return false
			}
		}
		for _, s := range k.seats {
			away := r3.Sub(at, s.at)
			if r3.Dot(away, s.out) > -k.wall.radius && r3.Norm(r3.Cross(away, s.out)) < k.markedFrom() && r3.Dot(s.out, p.out) < 0 {
				return false
			}
		}
		for _, s := range k.seams {
			a, b := about(k.wall.regions[s.a].Sides, reach+1e-3), about(k.wall.regions[s.b].Sides, reach+1e-3)
			if inside(a, at) > 0 && inside(b, at) > 0 {
				return false
			}
		}
		for _, q := range k.wall.planes {
			if r3.Dot(q.Normal, p.out) < 0 && q.Above(at)+k.wall.thick > max(k.wall.thick/2-lineDeep, lineDeep/2) { // half of the wall stays
				return false
			}
		}
	}
	return true
}
