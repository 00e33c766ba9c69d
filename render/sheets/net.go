package sheets

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"pappus/layout"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r2"
)

// scales are how many mm of the body one mm of a net stands for.
var scales = []float64{1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 7.5, 10, 15, 20, 50, 100}

// mostPages is how many pages a net may take before it is drawn smaller.
const mostPages = 4

// Net draws a foldable net of the body on A4 at the largest scale that takes no
// more than four pages. A ball has none.
func Net(a *layout.Array) []*Sheet {
	if a.Body.IsBall() {
		return nil
	}
	var pages [][]placed
	over := scales[len(scales)-1]
	for _, s := range scales {
		if pages = netPages(a, s); pages != nil && len(pages) <= mostPages {
			over = s
			break
		}
	}
	var sheets []*Sheet
	mark := ""
	if over != 1 {
		mark = " Mark the body by the templates, which are at 1:1."
	}
	for i, on := range pages {
		s := page(fmt.Sprintf("net-%d", i+1), fmt.Sprintf("Paper net, 1:%s, page %d of %d", prose.Trimmed(over, 2), i+1, len(pages)),
			"Cut along full lines, fold back along dashed ones, glue numbers to their like, tape them where no tab is. Print at 100 %: the bar must measure 100 mm."+mark, short, long)
		for _, p := range on {
			s.piece(a, p, 1e3/over)
		}
		s.checkBar(r2.Vec{X: margin, Y: long - margin - 2})
		sheets = append(sheets, s)
	}
	return sheets
}

// The room for nets on a page, in mm.
const (
	netWide  = short - 2*margin
	netTall  = long - 2*margin - heading - 12
	netSpace = 3.0
)

// placed is a piece of a net on a page.
type placed struct {
	piece
	shift r2.Vec // of the lower left corner of its box, from the lower left of the room
}

// netPages unfolds a body at a scale and shares the pieces out over pages, the
// tallest first, in rows. It is nil where a face is larger than a page.
func netPages(a *layout.Array, over float64) [][]placed {
	u := newUnfolder(a, 1e3/over, netWide-2*tabDeep, netTall-2*tabDeep)
	pieces := u.unfold()
	tall := func(p piece) float64 { return p.extent().Size().Y }
	slices.SortStableFunc(pieces, func(p, q piece) int { return cmp.Compare(tall(q), tall(p)) })
	var pages [][]placed
	var x, y, row float64
	for _, p := range pieces {
		box := p.extent()
		w, h := box.Size().X, box.Size().Y
		if x+w > netWide {
			x, y, row = 0, y+row+netSpace, 0
		}
		if pages == nil || y+h > netTall {
			pages = append(pages, nil)
			x, y, row = 0, 0, 0
		}
		last := len(pages) - 1
		pages[last] = append(pages[last], placed{p, r2.Sub(r2.Vec{X: x, Y: netTall - y - h}, box.Min)})
		x, row = x+w+netSpace, max(row, h)
	}
	return pages
}

// piece draws a piece of a net, at so many mm for each m.
func (s *Sheet) piece(a *layout.Array, p placed, scale float64) {
	place := func(q r2.Vec) r2.Vec {
		q = r2.Add(q, p.shift)
		return r2.Vec{X: margin + q.X, Y: margin + heading + netTall - q.Y}
	}
	on := mountsOn(a)
	for _, t := range p.tabs {
		s.polygon(pen{colour: quiet, width: 0.2, fill: pale}, each(t.corners, place)...)
	}
	for _, l := range p.faces {
		edge := r2.Norm(r2.Sub(l.corners[0], l.corners[1]))
		radius := scale * a.Driver.CutoutRadius
		size := max(2, min(5, edge/9, 1.1*radius))
		for i, m := range l.mounts {
			s.circle(pen{colour: blue, width: 0.25}, place(m), radius)
			s.label(place(m), size, ink, strconv.Itoa(a.Mounts[on[l.face][i]].ID))
		}
		if a.Body.Faces[l.face].Base() {
			s.label(place(middleOf(l.corners)), size, quiet, "base")
		}
	}
	for _, f := range p.folds {
		s.line(foldLine, place(f[0]), place(f[1]))
	}
	for _, e := range p.ends {
		s.line(cutLine, place(e.p), place(e.q))
		s.endNumber(e, place)
	}
	for _, t := range p.tabs {
		s.line(foldLine, place(t.corners[0]), place(t.corners[1]))
	}
}

// endNumber writes the number of an edge inside of it.
func (s *Sheet) endNumber(e end, place func(r2.Vec) r2.Vec) {
	along := r2.Sub(e.q, e.p)
	length := r2.Norm(along)
	size := min(2.4, length/6)
	in := r2.Scale(1.0*size/length, r2.Vec{X: -along.Y, Y: along.X})
	s.label(place(r2.Add(r2.Scale(0.5, r2.Add(e.p, e.q)), in)), size, orange, strconv.Itoa(e.edge+1))
}

func middleOf(points []r2.Vec) r2.Vec {
	var sum r2.Vec
	for _, p := range points {
		sum = r2.Add(sum, r2.Scale(1/float64(len(points)), p))
	}
	return sum
}
