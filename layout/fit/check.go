package fit

import (
	"fmt"
	"math"
	"slices"

	"pappus/layout/body"

	"gonum.org/v1/gonum/spatial/r3"
)

// Report is how one driver fits. Every clearance is in m, below 0 where
// something is in the way; NaN where the driver's outline does not tell, +Inf
// where there is nothing to be near to.
type Report struct {
	Flange float64 // from the flange's rim to the edge of the face
	// Cutout is what is left of the face's inner side between the cut-out and
	// the nearest other wall.
	Cutout float64

	Gap   float64 // as the function [Gap] has it, to the flange that is least far off
	GapTo int     // whose: an index of a mount; -1: there is none

	Inside   float64 // from basket and magnet to the nearest neighbour's
	InsideTo int
	Wall     float64 // from basket and magnet to the inner side of another wall

	Terminal   float64 // to a wall or a neighbour's basket, magnet or terminal
	TerminalTo int     // whose; -1: a wall, or none

	ScrewRing   float64 // radius of the smallest circle of screws that keeps off the cut-out
	ScrewFlange float64 // from the screw holes on it to the flange's rim
	ScrewEdge   float64 // from them to the edge of the face

	// Through is by how much the radius of the cut-out is more than that of the
	// widest part behind it. Below 0 the driver does not go in straight; many
	// with a terminal at the side can be tilted in.
	Through float64
}

// Slack is a length in m: what lacks less of a limit keeps it.
const Slack = 1e-9

// Fits tells whether every clearance that is known keeps its limit. Through
// does not count.
func (r Report) Fits(l Limits) bool { return !(r.Lack(l) > Slack) }

// Lack is the most in m that any known clearance lacks of its limit; below 0 where
// all have more than they need, by so much, and -Inf where none is known.
func (r Report) Lack(l Limits) float64 {
	most := r.lackOfBody(l)
	if lack := l.Edge - r.ScrewFlange; lack > most {
		most = lack
	}
	return most
}

// lackOfBody is Lack but for what the driver alone decides.
func (r Report) lackOfBody(l Limits) float64 {
	most := math.Inf(-1)
	for _, v := range [...][2]float64{
		{r.Flange, l.Edge}, {r.Cutout, l.Edge}, {r.ScrewEdge, l.Edge},
		{r.Gap, l.Apart}, {r.Inside, l.Apart}, {r.Wall, l.Apart}, {r.Terminal, l.Apart},
	} {
		if lack := v[1] - v[0]; lack > most { // which what is not known is not
			most = lack
		}
	}
	return most
}

func (r Report) fitsBody(l Limits) bool { return !(r.lackOfBody(l) > Slack) }

// Check reports on every mount of a body, all with the same driver. A smallest
// ring of screws keeps its holes off the cut-out by the limit to an edge.
// An error about
// a mount names its index.
func Check(b *body.Body, mounts []Mount, d Outline, l Limits) ([]Report, error) {
	if err := valid(b, mounts, d, l); err != nil {
		return nil, err
	}
	return report(newWalls(b, false), mounts, d, l), nil
}

func valid(b *body.Body, mounts []Mount, d Outline, l Limits) error {
	if err := d.check(); err != nil {
		return err
	}
	if err := l.check(); err != nil {
		return err
	}
	for i, m := range mounts {
		if err := m.check(len(b.Faces)); err != nil {
			return fmt.Errorf("mount %d: %w", i, err)
		}
	}
	return nil
}

func report(w *walls, mounts []Mount, d Outline, l Limits) []Report {
	out := make([]Report, len(mounts))
	for i, m := range mounts {
		out[i] = alone(w, m, d, l, math.Inf(1))
	}
	flanges(out, mounts, d)
	in := insides(mounts, d)
	if d.Depth > 0 {
		least, to := nearest(in.middles, in.reach, func(i, j int, limit float64) float64 {
			// The same both ways, to the last digit.
			return leastApart(in.baskets[min(i, j)], in.baskets[max(i, j)], limit)
		})
		for i := range out {
			out[i].Inside, out[i].InsideTo = least[i], to[i]
		}
	}
	if d.TerminalReach > 0 {
		least, to := nearest(in.middles, in.reach, func(i, j int, limit float64) float64 {
			return leastApart(in.terminals[i], in.all(j), limit)
		})
		for i := range out {
			if least[i] < out[i].Terminal {
				out[i].Terminal, out[i].TerminalTo = least[i], to[i]
			}
		}
	}
	return out
}

// alone reports on what does not depend on other mounts. A distance to a wall that is
// more than enough may be told as that.
func alone(w *walls, m Mount, d Outline, l Limits, enough float64) Report {
	nan := math.NaN()
	r := Report{Gap: math.Inf(1), GapTo: -1, Inside: nan, InsideTo: -1, Wall: nan, Terminal: nan, TerminalTo: -1,
		ScrewRing: nan, ScrewFlange: nan, ScrewEdge: nan, Through: nan}
	outside, inside := w.edge(m, l.Wall)
	r.Flange, r.Cutout = outside-d.FlangeRadius, inside-d.CutoutRadius
	if d.ScrewRadius > 0 {
		r.ScrewRing = d.CutoutRadius + l.Edge + d.ScrewRadius
		r.ScrewFlange = d.FlangeRadius - r.ScrewRing - d.ScrewRadius
		r.ScrewEdge = outside - r.ScrewRing - d.ScrewRadius
	}
	if d.Depth > 0 {
		r.Wall = w.clearance(m, behind(m, d, l.Wall), d.CutoutRadius, l.Wall, enough)
	}
	if d.TerminalReach > 0 {
		r.Terminal = w.clearance(m, []solid{terminal(m, d)}, 0, l.Wall, enough)
		if d.TerminalReach > d.CutoutRadius && !w.baseOnly {
			r.Terminal = min(r.Terminal, d.TerminalFront-l.Wall)
		}
	}
	if d.Depth > 0 || d.TerminalReach > 0 {
		r.Through = d.CutoutRadius - max(d.magnet(), d.TerminalReach)
	}
	return r
}

// flanges fills in the nearest flange of each mount. Two flanges reach a common
// point only where half their distance does, so that points bound the gap.
func flanges(out []Report, mounts []Mount, d Outline) {
	points := make([]r3.Vec, len(mounts))
	for i, m := range mounts {
		points[i] = m.Point
	}
	gaps, to := nearest(points, d.FlangeRadius, func(i, j int, _ float64) float64 {
		return Gap(mounts[i].Point, mounts[i].Normal, mounts[j].Point, mounts[j].Normal, d.FlangeRadius)
	})
	for i := range out {
		out[i].Gap, out[i].GapTo = gaps[i], to[i]
	}
}

// inside is what all drivers have behind their flanges: by mount the basket and the magnet,
// what the terminal may sweep, and the middle of a ball of radius reach that holds all.
type inside struct {
	baskets, terminals [][]solid
	middles            []r3.Vec
	reach              float64
}

func insides(mounts []Mount, d Outline) inside {
	deep := max(d.Depth, d.TerminalFront+d.TerminalLength)
	in := inside{reach: math.Hypot(deep/2, max(d.CutoutRadius, d.magnet(), d.TerminalReach))}
	for _, m := range mounts {
		in.baskets = append(in.baskets, behind(m, d, 0))
		var terminals []solid
		if d.TerminalReach > 0 {
			terminals = append(terminals, terminal(m, d))
		}
		in.terminals = append(in.terminals, terminals)
		in.middles = append(in.middles, r3.Sub(m.Point, r3.Scale(deep/2, m.Normal)))
	}
	return in
}

func (in inside) all(i int) []solid { return slices.Concat(in.baskets[i], in.terminals[i]) }

// leastApart is apart for all parts of two drivers.
func leastApart(a, b []solid, limit float64) float64 {
	least := math.Inf(1)
	for i := range a {
		for j := range b {
			least = min(least, apart(&a[i], &b[j], min(least, limit)))
		}
	}
	return least
}

// keep tells whether what neighbours have behind their flanges keeps a distance.
func (in inside) keep(apart float64) bool {
	reach := apart + 2*in.reach
	for i := range in.middles {
		for j := range i {
			if r3.Norm2(r3.Sub(in.middles[i], in.middles[j])) < reach*reach && !keepApart(in.all(i), in.all(j), apart-Slack) {
				return false
			}
		}
	}
	return true
}

func keepApart(a, b []solid, least float64) bool {
	for i := range a {
		for j := range b {
			if width, _ := gap(&a[i], &b[j], least); width < least {
				return false
			}
		}
	}
	return true
}

// All tells whether every report of [Check] would fit, and the driver has room
// for its screws. It stops at the first that does not, and does not look how far
// things are from each other, so that it is much faster. Errors are those of Check.
func All(b *body.Body, mounts []Mount, d Outline, l Limits) (bool, error) {
	if err := valid(b, mounts, d, l); err != nil {
		return false, err
	}
	return d.takesScrews(l) && allFit(newWalls(b, false), mounts, d, l), nil
}

// allFit tells whether every mount fits but for what the driver alone decides,
// as fitsBody does, and stops at the first that does not.
func allFit(w *walls, mounts []Mount, d Outline, l Limits) bool {
	out := make([]Report, len(mounts))
	for i, m := range mounts {
		if out[i] = alone(w, m, d, l, l.Apart); !out[i].fitsBody(l) {
			return false
		}
	}
	flanges(out, mounts, d)
	return !slices.ContainsFunc(out, func(r Report) bool { return !r.fitsBody(l) }) && insides(mounts, d).keep(l.Apart)
}

// OffBase tells of each mount whether a driver there, alone, keeps its flange, its
// cut-out, its screws and all behind it off the base that a cut leaves; of a body
// without a cut they all do. Errors are those of [Check].
func OffBase(b *body.Body, mounts []Mount, d Outline, l Limits) ([]bool, error) {
	if err := valid(b, mounts, d, l); err != nil {
		return nil, err
	}
	w := newWalls(b, true)
	out := make([]bool, len(mounts))
	for i, m := range mounts {
		r := alone(w, m, d, l, l.Apart)
		out[i] = r.fitsBody(l)
	}
	return out, nil
}
