package sheets

import (
	"image/color"

	"gonum.org/v1/gonum/spatial/r2"
)

// Sheet is one page. Lengths are in mm from its upper left corner, y downward.
type Sheet struct {
	Name          string // as in file names
	Title         string
	Width, Height float64
	items         []item
}

// item is one thing on a sheet: words where there are any, else a circle where
// there is a radius, else a polygon or a line.
type item struct {
	pen    pen
	points []r2.Vec
	closed bool
	radius float64
	words  string
	size   float64 // mm, of the words
	anchor anchor
}

// pen is how a line is drawn and what it holds is filled with.
type pen struct {
	colour color.NRGBA
	width  float64 // mm; 0: no line
	dashes []float64
	fill   color.NRGBA // no fill where it is clear
}

type anchor int

const (
	left anchor = iota
	middle
	right
)

var (
	ink      = color.NRGBA{40, 40, 40, 255}
	quiet    = color.NRGBA{105, 105, 105, 255}
	rule     = color.NRGBA{205, 205, 205, 255}
	middling = color.NRGBA{150, 150, 150, 255}
	faint    = color.NRGBA{178, 178, 178, 255} // what is hidden
	pale     = color.NRGBA{240, 240, 240, 255}
	blue     = color.NRGBA{0, 114, 178, 255}
	sky      = color.NRGBA{221, 238, 248, 255}
	orange   = color.NRGBA{213, 94, 0, 255}
)

var (
	cutLine  = pen{colour: ink, width: 0.35}
	foldLine = pen{colour: quiet, width: 0.2, dashes: []float64{2, 1.2}}
	hole     = pen{colour: blue, width: 0.35}
	flange   = pen{colour: quiet, width: 0.2, dashes: []float64{1.5, 1}}
	hair     = pen{colour: ink, width: 0.13}
	thin     = pen{colour: rule, width: 0.2}
)

func (s *Sheet) line(p pen, points ...r2.Vec) {
	s.items = append(s.items, item{pen: p, points: points})
}

func (s *Sheet) polygon(p pen, points ...r2.Vec) {
	s.items = append(s.items, item{pen: p, points: points, closed: true})
}

func (s *Sheet) circle(p pen, centre r2.Vec, radius float64) {
	s.items = append(s.items, item{pen: p, points: []r2.Vec{centre}, radius: radius})
}

// text writes words on a base line.
func (s *Sheet) text(at r2.Vec, size float64, a anchor, c color.NRGBA, words string) {
	if words != "" {
		s.items = append(s.items, item{pen: pen{colour: c}, points: []r2.Vec{at}, size: size, anchor: a, words: words})
	}
}

// label writes words round their middle.
func (s *Sheet) label(at r2.Vec, size float64, c color.NRGBA, words string) {
	// The digits of the typeface are 0.69 of its size tall.
	s.text(r2.Vec{X: at.X, Y: at.Y + 0.345*size}, size, middle, c, words)
}

// paragraph writes words in lines of so many characters and returns the height
// of the base line that would come next.
func (s *Sheet) paragraph(at r2.Vec, size float64, most int, c color.NRGBA, words string) float64 {
	for _, l := range wrap(words, most) {
		s.text(at, size, left, c, l)
		at.Y += 1.4 * size
	}
	return at.Y
}

// page begins a sheet with its title.
func page(name, title, below string, width, height float64) *Sheet {
	s := &Sheet{Name: name, Title: title, Width: width, Height: height}
	s.text(r2.Vec{X: margin, Y: margin + 5}, 5, left, ink, title)
	s.paragraph(r2.Vec{X: margin, Y: margin + 10.5}, 3, int((width-2*margin)/1.45), quiet, below)
	return s
}

// margin keeps clear of what printers cannot reach (common practice: 5 mm), in
// mm; heading is the room for the title.
const (
	margin  = 10.0
	heading = 20.0
)

// The long and the short side of A4 in mm (ISO 216).
const (
	long  = 297.0
	short = 210.0
)

// checkBar draws a bar of 100 mm with a tick each 10 mm.
func (s *Sheet) checkBar(at r2.Vec) {
	for i := range 5 {
		fill := ink
		if i%2 == 1 {
			fill = color.NRGBA{255, 255, 255, 255}
		}
		x := at.X + 20*float64(i)
		s.polygon(pen{fill: fill}, r2.Vec{X: x, Y: at.Y}, r2.Vec{X: x + 20, Y: at.Y}, r2.Vec{X: x + 20, Y: at.Y + 1.5}, r2.Vec{X: x, Y: at.Y + 1.5})
	}
	s.polygon(hair, at, r2.Vec{X: at.X + 100, Y: at.Y}, r2.Vec{X: at.X + 100, Y: at.Y + 1.5}, r2.Vec{X: at.X, Y: at.Y + 1.5})
	for i := range 11 {
		x := at.X + 10*float64(i)
		s.line(hair, r2.Vec{X: x, Y: at.Y - 1.5}, r2.Vec{X: x, Y: at.Y})
	}
	s.text(r2.Vec{X: at.X, Y: at.Y - 2.5}, 2.8, left, ink, "0")
	s.text(r2.Vec{X: at.X + 100, Y: at.Y - 2.5}, 2.8, middle, ink, "100 mm")
}
