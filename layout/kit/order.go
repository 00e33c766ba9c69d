package kit

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"

	"pappus/layout"
	"pappus/layout/poly"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// obstacle is what a segment must go off as long as one of some others is in its place.
type obstacle struct {
	of      []int // the others
	normals []r3.Vec
	edge    bool // of the outline of a segment that is a share of the directions from the centre
}

// obstacles returns those of each segment: its seams; and in a lap the inside of its wall wherever a
// tongue is near, of whichever segment, for what is behind the wall's planes is convex.
func (w *wall) obstacles(seams []seam, joint layout.Kit) [][]obstacle {
	out, faces := make([][]obstacle, w.segments()), w.faces()
	for _, s := range seams {
		a, b := w.regions[s.a].Segment, w.regions[s.b].Segment
		central := isCentral(w.regions[s.a].Sides) && isCentral(w.regions[s.b].Sides)
		out[a] = append(out[a], obstacle{[]int{b}, []r3.Vec{r3.Scale(-1, s.plane.Normal)}, central})
		out[b] = append(out[b], obstacle{[]int{a}, []r3.Vec{s.plane.Normal}, central})
		if joint.Joint != Lap {
			continue
		}
		for segment, normals := range w.over(s, faces) {
			if len(normals) == 0 {
				continue
			}
			others := slices.DeleteFunc([]int{a, b}, func(o int) bool { return o == segment })
			out[segment] = append(out[segment], obstacle{others, normals, false})
		}
	}
	for segment, normals := range w.foot() {
		out[segment] = append(out[segment], obstacle{normals: normals, edge: true})
	}
	return out
}

// rimSteps is round how many places the edge at a body's cut is looked at.
const rimSteps = 180

// foot returns, by segment, the normals of its edge at the body's cut as those of a seam, where nothing is
// beyond, so that segments in steps come off straight out there too.
func (w *wall) foot() [][]r3.Vec {
	out := make([][]r3.Vec, w.segments())
	for i := 0; w.floor != nil && i < rimSteps; i++ {
		azimuth := 2 * math.Pi * float64(i) / rimSteps
		at, _ := w.hit(r3.Vec{Z: -w.floor.Offset}, direction(azimuth), w.thick)
		for _, r := range w.regions {
			if isCentral(r.Sides) && inside(r.Sides, at) > 0 {
				out[r.Segment] = append(out[r.Segment], r3.Unit(r3.Cross(at, direction(azimuth+math.Pi/2))))
			}
		}
	}
	return out
}

// segments is how many there are.
func (w *wall) segments() (n int) {
	for _, r := range w.regions {
		n = max(n, r.Segment+1)
	}
	return n
}

// face is a face of the wall's inside.
type face struct {
	normal  r3.Vec
	outline []r3.Vec
}

// faces returns all of them; not the floor.
func (w *wall) faces() (out []face) {
	inner := w.under(w.thick)
	for _, f := range inner.Faces {
		if f.Cut > len(w.planes) {
			continue
		}
		p := face{normal: w.planes[f.Cut-1].Normal}
		for _, c := range f.Corners {
			p.outline = append(p.outline, inner.Vertices[c])
		}
		out = append(out, p)
	}
	return out
}

// over returns, by segment, the normals of the wall where a tongue along a seam could be under it.
func (w *wall) over(s seam, faces []face) [][]r3.Vec {
	near := slices.Concat(about(w.regions[s.a].Sides, reach), about(w.regions[s.b].Sides, reach))
	out := make([][]r3.Vec, w.segments())
	for _, p := range faces {
		here := poly.Clip(p.outline, near)
		if len(here) == 0 {
			continue
		}
		for _, r := range w.regions {
			if areaOf(poly.Clip(here, r.Sides)) > leastFace {
				out[r.Segment] = append(out[r.Segment], p.normal)
			}
		}
	}
	return out
}

// leastFace is the area in m2 of a face that is none, but the rounding of an edge.
const leastFace = 1e-9

// areaOf is that of a flat outline in m2.
func areaOf(outline []r3.Vec) float64 {
	var sum r3.Vec
	for i := 2; i < len(outline); i++ {
		sum = r3.Add(sum, r3.Cross(r3.Sub(outline[i-1], outline[0]), r3.Sub(outline[i], outline[0])))
	}
	return r3.Norm(sum) / 2
}

// off returns the direction in which a segment goes off best while some are in their places, and the
// least cosine of that. A share of the directions from the centre takes one, where it has one, that all of
// its outline is seen from: what goes towards there never leaves the share, whatever is beyond.
func off(all []obstacle, there func(segment int) bool) (r3.Vec, float64) {
	var normals, more []r3.Vec
	for _, o := range all {
		if slices.ContainsFunc(o.of, there) {
			normals = append(normals, o.normals...)
		} else if o.edge {
			more = append(more, o.normals...)
		}
	}
	if way, least := wayOff(slices.Concat(normals, more)); least > sliding {
		return way, least
	}
	return wayOff(normals)
}

// ErrOrder tells that segments cannot be put together by hand, one after the other.
var ErrOrder = errors.New("no order puts the segments together")

// stuck is the error of segments of which none comes off the others.
func stuck(segments []int) error {
	var numbers []string
	for _, s := range segments {
		numbers = append(numbers, strconv.Itoa(s+1))
	}
	return fmt.Errorf("%w: of %s none comes off in one straight line while the others are there", ErrOrder, prose.Each(numbers))
}

// order returns the segments in an order in which each can be put in its place while those before it are in
// theirs: it is taken apart from the end, each time the segment of the highest number that comes off.
// What is there less keeps nothing from coming off, so that no order is missed (R. H. Wilson and J.-C.
// Latombe, Geometric reasoning about mechanical assembly, Artificial Intelligence 71 (1994) 371).
// Where none comes off it returns those that are left, and false.
func order(all [][]obstacle) (out []int, ok bool) {
	left := make([]int, len(all))
	for i := range left {
		left[i] = i
	}
	isLeft := func(o int) bool { return slices.Contains(left, o) }
	for len(left) > 0 {
		last := len(left) - 1
		for ; last >= 0; last-- {
			if _, least := off(all[left[last]], isLeft); least > -sliding {
				break
			}
		}
		if last < 0 {
			return left, false
		}
		out = append(out, left[last])
		left = slices.Delete(left, last, last+1)
	}
	slices.Reverse(out)
	return out, true
}

// way is how a segment comes off.
type way struct {
	off  r3.Vec  // zero: nothing keeps it
	lean float64 // rad by which it may go otherwise
}

// findWays finds for each segment how it comes off those before it.
func (k *maker) findWays() error {
	k.ways = make([]way, max(1, k.wall.segments()))
	for i, all := range k.wall.obstacles(k.seams, k.Kit) {
		before := func(o int) bool { return o < i }
		if !slices.ContainsFunc(all, func(o obstacle) bool { return slices.ContainsFunc(o.of, before) }) {
			continue
		}
		out, least := off(all, before)
		if least < -sliding {
			return stuck([]int{i})
		}
		k.ways[i] = way{out, math.Asin(min(max(least, 0), 1))}
	}
	return k.wall.failed()
}
