package sheets

import (
	"fmt"
	"math"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/testdata/planned"
	"pappus/testdata/thorough"

	"gonum.org/v1/gonum/spatial/r2"
)

// inDisc is the disc that words belong to, by its index in the sheet's items; -1: none.
func inDisc(s *Sheet, words r2.Box) int {
	for i, it := range s.items {
		if it.radius > 0 && it.pen.dashes == nil && furthest(it.points[0], words) < it.radius {
			return i
		}
	}
	return -1
}

// overlapsOf lists what lies over words of a drawing, and what lines go over a driver. A line is
// looked at every tenth of a mm.
func overlapsOf(s *Sheet) (out []string) {
	note := func(format string, of ...any) { out = append(out, fmt.Sprintf(format, of...)) }
	for i, w := range s.items {
		if w.words == "" {
			continue
		}
		box := w.boxOf()
		if box.Min.X < 0 || box.Max.X > s.Width || box.Min.Y < 0 || box.Max.Y > s.Height {
			note("%q is off the sheet", w.words)
		}
		own := inDisc(s, box)
		for k, it := range s.items {
			switch {
			case it.words != "" && k > i && meet(box, it.boxOf()):
				note("%q and %q", w.words, it.words)
			case it.radius > 0 && it.pen.dashes == nil && own < 0 && toBox(it.points[0], box) < it.radius:
				note("%q and a driver", w.words)
			case it.radius > 0 && it.pen.dashes != nil && own < 0 && toBox(it.points[0], box) < it.radius && furthest(it.points[0], box) > it.radius:
				note("%q and a rim", w.words)
			case it.words == "" && it.radius == 0:
				for _, p := range near(it, box) {
					if toBox(p, box) < it.pen.width/2 {
						note("%q and a line", w.words)
						break
					}
				}
			}
		}
	}
	for _, d := range s.items {
		for _, it := range s.items {
			if d.radius == 0 || d.pen.dashes != nil || it.words != "" || it.radius > 0 {
				continue
			}
			for _, p := range near(it, r2.NewBox(d.points[0].X-d.radius, d.points[0].Y-d.radius, d.points[0].X+d.radius, d.points[0].Y+d.radius)) {
				if r2.Norm(r2.Sub(p, d.points[0])) < d.radius-0.01 {
					note("a line and the driver at %.0f, %.0f", d.points[0].X, d.points[0].Y)
					break
				}
			}
		}
	}
	return out
}

// near is alongLine, and nothing for a line that is far from a box.
func near(it item, box r2.Box) []r2.Vec {
	if !meet(bounds(it.points), grown(box, 2)) {
		return nil
	}
	return alongLine(it)
}

func alongLine(it item) (out []r2.Vec) {
	points := it.points
	if it.closed {
		points = append(points[:len(points):len(points)], points[0])
	}
	for i := 1; i < len(points); i++ {
		by := r2.Sub(points[i], points[i-1])
		n := math.Ceil(r2.Norm(by) / 0.1)
		for k := 0.0; k <= n; k++ {
			out = append(out, r2.Add(points[i-1], r2.Scale(k/max(n, 1), by)))
		}
	}
	return out
}

// TestNoOverlaps: on no page or drawing do words lie over words, a driver or a wire, nor does a wire go
// over a driver, on odd bodies, too.
func TestNoOverlaps(t *testing.T) {
	ball := func(n, channels int) func(*design.Design) {
		return func(d *design.Design) {
			d.Body.Shape, d.Body.HasCut, d.Mounts.On, d.Mounts.Count, d.Mounts.Skip = "ball", false, "even", n, nil
			d.Body.Radius, d.Wiring.Channels = 0.15*math.Sqrt(max(1, float64(n)/40)), channels
		}
	}
	for _, c := range []struct {
		name   string
		change func(*design.Design)
	}{
		{"the demo", nil},
		{"one channel", func(d *design.Design) { d.Wiring.Channels = 1 }},
		{"one driver each", func(d *design.Design) { d.Wiring.Channels = 0 }},
		{"two bodies", func(d *design.Design) {
			d.Copies = []design.Copy{{Channels: design.OwnChannels}}
			d.Copies[0].At.Y = -1.5
		}},
		{"hung, with a long cable", func(d *design.Design) {
			d.Placing.On, d.Spot.Z, d.Wiring.WireLength = layout.OnCeiling, -1, 25
		}},
		{"one driver", ball(1, 1)},
		{"two drivers", ball(2, 1)},
		{"two drivers, two channels", ball(2, 2)},
		{"dodecahedron", func(d *design.Design) {
			d.Body.Shape, d.Body.HasCut, d.Mounts.Skip, d.Wiring.Channels = "dodecahedron", false, nil, 3
		}},
		{"300 on a ball", ball(300, 8)},
		{"300 on a ball, one channel", ball(300, 1)},
		{"300 on a ball, one driver each", ball(300, 0)},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := planned.Demo(t, c.change)
			var all []*Sheet
			if len(p.Array.Mounts) < 100 || thorough.Set { // the book has the drawings again, which takes a while of many
				all = WiringBook(p)
			}
			for _, d := range WiringDrawings(p) {
				all = append(all, d.Sheet)
			}
			for _, s := range all {
				for _, o := range overlapsOf(s) {
					t.Errorf("%s, %s: %s", s.Name, s.Title, o)
				}
			}
		})
	}
}

// TestOverlapsAreSeen: what is looked for is found where it is.
func TestOverlapsAreSeen(t *testing.T) {
	at := func(x, y float64) r2.Vec { return r2.Vec{X: x, Y: y} }
	for _, c := range []struct {
		name string
		draw func(s *Sheet)
	}{
		{"words over words", func(s *Sheet) { s.label(at(51, 50), 3, ink, "other") }},
		{"words over a line", func(s *Sheet) { s.line(pen{width: 0.7}, at(50, 20), at(50, 80)) }},
		{"words beside a wide line", func(s *Sheet) { s.line(pen{width: 0.7}, at(20, 51.3), at(80, 51.3)) }},
		{"words over a driver", func(s *Sheet) { s.circle(pen{width: 0.7}, at(55, 50), 4) }},
		{"words over a rim", func(s *Sheet) { s.circle(pen{width: 0.2, dashes: []float64{1, 1}}, at(50, 80), 30) }},
		{"a line over a driver", func(s *Sheet) {
			s.circle(pen{width: 0.7}, at(20, 20), 4)
			s.line(pen{width: 0.7}, at(10, 23), at(30, 23))
		}},
	} {
		s := &Sheet{Width: 100, Height: 100}
		s.label(at(50, 50), 3, ink, "words")
		if found := overlapsOf(s); len(found) > 0 {
			t.Error(found)
		}
		if c.draw(s); len(overlapsOf(s)) == 0 {
			t.Errorf("%s: not seen", c.name)
		}
	}
}
