package figure

import (
	"cmp"
	"io"
	"math"
	"slices"

	"pappus/render/sheets"
	"pappus/render/words"
	"pappus/timing/search"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Search draws what a search found: over what it is meant to save, each other thing that it is
// after in a panel of its own, with all designs that were planned in full, those that no other
// beats, and those offered by their numbers. A search that offers nothing is an error.
func Search(w io.Writer, f Format, r *search.Result) error {
	across, up := frontAims(r.Aims)
	v := frontView{head: words.OfSearch(r), across: frontAxis{words.AimAxis(r, across), across.More()}, names: words.OfferedBy(r)}
	for _, a := range up {
		v.up = append(v.up, frontAxis{words.AimAxis(r, a), a.More()})
	}
	values := func(of search.Figures) []float64 {
		out := []float64{across.Of(of)}
		for _, a := range up {
			out = append(out, a.Of(of))
		}
		return out
	}
	for _, p := range r.Tried {
		switch {
		case p.Front:
			v.front = append(v.front, values(p.Figures))
		case p.Full:
			v.tried = append(v.tried, values(p.Figures))
		default:
			v.screened = append(v.screened, values(p.Figures))
		}
	}
	for _, p := range r.Found {
		v.offered, v.looks = append(v.offered, values(p.Figures)), append(v.looks, look(sheets.Look(p.Plan.Array)))
	}
	if r.Start != nil {
		v.own = values(r.Start.Figures)
	}
	return v.write(w, f)
}

// mostPanels is how many panels can be read on one page.
const mostPanels = 3

// frontAims returns which aim goes across, the first that is meant to be saved, and which go
// up, each in its panel; one that is alone goes over the drivers, or over the litres.
func frontAims(aims []search.Aim) (across search.Aim, up []search.Aim) {
	saved := []search.Aim{search.Cost, search.Price, search.Drivers, search.Hours, search.Litres}
	at := slices.IndexFunc(aims, func(a search.Aim) bool { return slices.Contains(saved, a) })
	switch {
	case len(aims) == 1 && at == 0 && aims[0] != search.Litres:
		return search.Litres, aims
	case len(aims) == 1:
		return search.Drivers, aims
	case at < 0:
		at = len(aims) - 1
	}
	up = slices.Delete(slices.Clone(aims), at, at+1)
	return aims[at], up[:min(len(up), mostPanels)]
}

// frontView is what a search found, in the values that are drawn: one across, the same in all
// panels, and one up for each panel.
type frontView struct {
	head   words.Picture
	across frontAxis
	up     []frontAxis
	// The values of designs, across, then up; NaN: not known. Of those screened alone they are
	// about what they would be in full.
	screened, tried, front, offered [][]float64
	own                             []float64 // the design that was given; nil: none
	names                           []words.Offered
	looks                           []look // of the offered; nil: none
}

// frontAxis is a value's name with its unit, and whether more of it is better.
type frontAxis struct {
	name string
	more bool
}

// The marks of a picture of a front.
var (
	screenedStyle = draw.GlyphStyle{Color: rule, Radius: 1.3, Shape: draw.CircleGlyph{}}
	triedStyle    = draw.GlyphStyle{Color: faint(quiet), Radius: 1.6, Shape: draw.CircleGlyph{}}
	frontStyle    = draw.GlyphStyle{Color: colours[0], Radius: 2.6, Shape: draw.CircleGlyph{}}
	ownStyle      = draw.GlyphStyle{Color: colours[1], Radius: 5, Shape: draw.RingGlyph{}}
	frontEdge     = draw.LineStyle{Color: colours[5], Width: 1.2}
)

// write writes the picture: the panels one above the other, the names beside them.
func (v frontView) write(w io.Writer, f Format) error {
	if len(v.offered) == 0 {
		return nothing("front")
	}
	var panels [][]*plot.Plot
	for i := range v.up {
		panels = append(panels, []*plot.Plot{v.panel(i)})
	}
	legend := []entry{ofMark("looked at", screenedStyle), ofMark("planned in full", triedStyle), ofMark("on the front: none is better in all", frontStyle), ofLine("the best in these two", frontEdge)}
	if v.own != nil {
		legend = append(legend, ofMark("the design given", ownStyle))
	}
	return write(w, f, func(page draw.Canvas) {
		c := legendAbove(heading(page, v.head), legend)
		v.list(draw.Crop(c, c.Max.X-c.Min.X-listWide, 0, 0, 0))
		tiles := draw.Tiles{Rows: len(panels), Cols: 1, PadY: vg.Points(24), PadTop: vg.Points(16)}
		for i, room := range plot.Align(panels, tiles, draw.Crop(c, 0, -listWide-12, 0, 0)) {
			panels[i][0].Draw(room[0])
			title := vg.Point{X: panels[i][0].DataCanvas(room[0]).Min.X, Y: room[0].Max.Y + 4}
			room[0].FillText(font(10.5, ink), title, v.up[i].name)
		}
	})
}

// panel is the plot of one value over that across.
func (v frontView) panel(i int) *plot.Plot {
	name := ""
	if i == len(v.up)-1 {
		name = v.across.name
	}
	c := newChart(name, "")
	offered := pairs(v.offered, i)
	planned := slices.Concat(pairs(v.tried, i), pairs(v.front, i), offered)
	shown := slices.Clone(planned)
	c.scatter(pairs(v.screened, i), screenedStyle)
	c.scatter(pairs(v.tried, i), triedStyle)
	c.Add(&plotter.Line{XYs: bestOf(planned, v.across.more, v.up[i].more), LineStyle: frontEdge})
	c.scatter(pairs(v.front, i), frontStyle)
	if v.own != nil {
		own := pairs([][]float64{v.own}, i)
		shown = append(shown, own...)
		c.scatter(own, ownStyle)
	}
	c.Add(numbered(ordered(v.offered, i)))
	c.around(shown, pairs(v.screened, i))
	c.steps(10, 5)
	return c.Plot
}

// pairs returns a value over that across of designs, those that are known.
func pairs(values [][]float64, up int) plotter.XYs {
	return slices.DeleteFunc(ordered(values, up), func(at plotter.XY) bool { return !isFinite(at) })
}

// ordered is pairs with those that are not known in their places.
func ordered(values [][]float64, up int) plotter.XYs {
	out := make(plotter.XYs, len(values))
	for i, v := range values {
		out[i] = plotter.XY{X: v[0], Y: v[1+up]}
	}
	return out
}

// bestOf returns the stairs that no point is beyond, where more is better or less: what the
// best design has at each value across.
func bestOf(points plotter.XYs, moreAcross, moreUp bool) plotter.XYs {
	turned := func(v float64, more bool) float64 {
		if more {
			return -v
		}
		return v
	}
	sorted := slices.SortedFunc(slices.Values(points), func(a, b plotter.XY) int {
		return cmp.Or(cmp.Compare(turned(a.X, moreAcross), turned(b.X, moreAcross)), cmp.Compare(turned(a.Y, moreUp), turned(b.Y, moreUp)))
	})
	var out plotter.XYs
	for _, at := range sorted {
		if n := len(out); n > 0 {
			last := out[n-1]
			if turned(at.Y, moreUp) >= turned(last.Y, moreUp) {
				continue
			}
			out = append(out, plotter.XY{X: at.X, Y: last.Y})
		}
		out = append(out, at)
	}
	return out
}

// around sets the axes so that some points are within them, with room for discs, and others
// beside them as far as they leave the first at least a third of an axis.
func (c *chart) around(points, others plotter.XYs) {
	const room, most = 0.07, 1.0
	for i, a := range []*plot.Axis{&c.X, &c.Y} {
		low, high := spanOf(points, i)
		switch {
		case !(low <= high):
			low, high = 0, 1
		case low == high:
			low, high = low-max(1, math.Abs(low))/2, high+max(1, math.Abs(low))/2
		}
		span := high - low
		if from, to := spanOf(others, i); from <= to {
			low, high = min(low, max(from, low-most*span)), max(high, min(to, high+most*span))
		}
		a.Min, a.Max = low-room*(high-low), high+room*(high-low)
	}
}

// spanOf returns the least and the most of points, across for 0, up for 1.
func spanOf(points plotter.XYs, axis int) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, at := range points {
		v := []float64{at.X, at.Y}[axis]
		low, high = min(low, v), max(high, v)
	}
	return low, high
}
