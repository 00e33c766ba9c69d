package sheets

import (
	"math"
	"strings"
	"sync"

	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"codeberg.org/go-pdf/fpdf"
	"gonum.org/v1/gonum/spatial/r2"
)

// room is what a drawing has already, so that words find a place over none of it, and lines a way
// round drivers and words.
type room struct {
	r2.Box // mm, of all that may be drawn on
	discs  []round
	rims   []round // lines that are circles
	lines  [][2]r2.Vec
	words  []r2.Box
	clear  float64 // mm between a line and what it goes round
	grid
}

// round is a driver on paper, or a rim.
type round struct {
	r2.Vec
	radius float64
}

// Distances in mm that words keep from what is drawn: from drivers and other words, and from lines,
// whose arrowheads are 0.9 wide on either side.
const (
	offWords = 0.4
	offLines = 1.0
)

// newRoom is a drawing with drivers and rims in it.
func newRoom(area r2.Box, discs, rims []round) *room {
	m := &room{Box: area, discs: discs, rims: rims, clear: 1}
	for i, d := range discs {
		for _, other := range discs[:i] {
			m.clear = min(m.clear, 0.25*(r2.Norm(r2.Sub(d.Vec, other.Vec))-d.radius-other.radius))
		}
	}
	m.grid = newGrid(area, max(0.15, min(0.8, m.clear))) // two squares at least in the narrowest gap

	for _, d := range discs {
		m.grid.bar(r2.NewBox(d.X-d.radius-m.clear, d.Y-d.radius-m.clear, d.X+d.radius+m.clear, d.Y+d.radius+m.clear),
			func(p r2.Vec) bool { return r2.Norm(r2.Sub(p, d.Vec)) < d.radius+m.clear })
	}
	return m
}

// line adds one that is drawn.
func (m *room) line(points ...r2.Vec) {
	for i := 1; i < len(points); i++ {
		m.lines = append(m.lines, [2]r2.Vec{points[i-1], points[i]})
		m.grid.crowd(points[i-1], points[i])
	}
}

// word adds words that are drawn.
func (m *room) word(b r2.Box) {
	m.words = append(m.words, b)
	m.grid.bar(grown(b, m.clear), func(r2.Vec) bool { return true })
}

// holds tells whether there is a place for words in a box.
func (m *room) holds(b r2.Box) bool {
	if b.Min.X < m.Min.X || b.Min.Y < m.Min.Y || b.Max.X > m.Max.X || b.Max.Y > m.Max.Y {
		return false
	}
	if !m.grid.empty(b) {
		return false
	}
	for _, w := range m.words {
		if meet(grown(b, offWords), w) {
			return false
		}
	}
	for _, d := range m.discs {
		if toBox(d.Vec, b) < d.radius+offWords {
			return false
		}
	}
	for _, d := range m.rims {
		if toBox(d.Vec, b) < d.radius+offWords && furthest(d.Vec, b) > d.radius-offWords {
			return false
		}
	}
	wide := grown(b, offLines)
	for _, l := range m.lines {
		if crosses(l[0], l[1], wide) {
			return false
		}
	}
	return true
}

// sees tells whether a straight line goes over no driver and no words; it may touch those that it
// ends at.
func (m *room) sees(from, to r2.Vec) bool {
	for _, d := range m.discs {
		least := d.radius + m.clear
		for _, end := range []r2.Vec{from, to} {
			if at := r2.Norm(r2.Sub(end, d.Vec)); at < least {
				least = min(at, d.radius) - 1e-9
			}
		}
		if toSegment(d.Vec, from, to) < least {
			return false
		}
	}
	for _, w := range m.words {
		if crosses(from, to, grown(w, m.clear)) {
			return false
		}
	}
	return true
}

// pulled takes out of a way the corners that it does not need.
func (m *room) pulled(way []r2.Vec) []r2.Vec {
	out := []r2.Vec{way[0]}
	for at := 0; at < len(way)-1; {
		next := at + 1
		for next < len(way)-1 && m.sees(way[at], way[next+1]) {
			next++
		}
		out, at = append(out, way[next]), next
	}
	return out
}

// widths are those of letters in a typeface's size, as printed.
var widths = sync.OnceValue(func() func(string) float64 {
	doc := fpdf.New("P", "mm", "A4", "")
	doc.AddUTF8FontFromBytes(typeface, "", liberationsansregular.TTF)
	doc.SetFont(typeface, "", 100/pointsToMM)
	of := map[rune]float64{}
	for c := ' '; c <= '~'; c++ {
		of[c] = doc.GetStringWidth(string(c)) / 100
	}
	of['−'] = of['+']
	return func(words string) (sum float64) {
		for _, c := range words {
			if w, ok := of[c]; ok {
				sum += w
			} else {
				sum += of['m'] // free: of letters that no label has
			}
		}
		return sum
	}
})

// boxOf is the box of some words on a sheet: digits and capitals are 0.73 of the size tall, some
// letters reach under the line by 0.21, and signs alone are over it.
func (i item) boxOf() r2.Box {
	wide, at, above, below := i.size*widths()(i.words), i.points[0], 0.73, 0.0
	switch {
	case i.words == "+" || i.words == "−":
		above, below = 0.6, -0.1
	case strings.ContainsAny(i.words, "gjpqy,;()"):
		below = 0.21
	}
	from := at.X - float64(i.anchor)/2*wide
	return r2.NewBox(from, at.Y-above*i.size, from+wide, at.Y+below*i.size)
}

func grown(b r2.Box, by float64) r2.Box {
	return r2.NewBox(b.Min.X-by, b.Min.Y-by, b.Max.X+by, b.Max.Y+by)
}

func meet(a, b r2.Box) bool {
	return a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y
}

// toBox is how far a point is from a box, furthest how far from its furthest corner.
func toBox(p r2.Vec, b r2.Box) float64 {
	return math.Hypot(max(b.Min.X-p.X, 0, p.X-b.Max.X), max(b.Min.Y-p.Y, 0, p.Y-b.Max.Y))
}

func furthest(p r2.Vec, b r2.Box) float64 {
	return math.Hypot(max(p.X-b.Min.X, b.Max.X-p.X), max(p.Y-b.Min.Y, b.Max.Y-p.Y))
}

// toSegment is how far a point is from a straight line between two.
func toSegment(p, a, b r2.Vec) float64 {
	along := r2.Sub(b, a)
	t := 0.0
	if n := r2.Norm2(along); n > 0 {
		t = max(0, min(1, r2.Dot(r2.Sub(p, a), along)/n))
	}
	return r2.Norm(r2.Sub(p, r2.Add(a, r2.Scale(t, along))))
}

// crosses tells whether a straight line between two points has one in a box (the line is cut by
// the box's four sides in turn; Liang and Barsky 1984).
func crosses(a, b r2.Vec, in r2.Box) bool {
	low, high := 0.0, 1.0
	for _, side := range [4][2]float64{{a.X - b.X, a.X - in.Min.X}, {b.X - a.X, in.Max.X - a.X}, {a.Y - b.Y, a.Y - in.Min.Y}, {b.Y - a.Y, in.Max.Y - a.Y}} {
		switch step, room := side[0], side[1]; {
		case step == 0 && room < 0:
			return false
		case step > 0:
			high = min(high, room/step)
		case step < 0:
			low = max(low, room/step)
		}
	}
	return low <= high
}
