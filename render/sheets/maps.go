package sheets

import (
	"math"
	"strconv"

	"pappus/layout"
	"pappus/layout/prose"
	"pappus/render/tape"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Map draws the mounts with their numbers from above and from four sides.
func Map(a *layout.Array) *Sheet {
	above, axes, held := "from above (forward is up)", "x points forward, y to the loudspeaker's own left.", ""
	if how := tape.Held(a, 0); how != "" {
		above, axes, held = "from its top (its front mark is up)", "x points to its front mark, y to its own left, z to its top.", "In the room it is "+how+"."
	}
	s := page("map", "Where the mounts are", "Numbers as in all tables. Each view shows the mounts that look its way. "+axes, long, short)
	up := r3.Vec{Z: 1}
	views := []struct {
		name string
		view view
	}{
		{above, look(up, r3.Vec{X: 1})},
		{"from the front (from +x)", look(r3.Vec{X: 1}, up)},
		{"from the left (from +y)", look(r3.Vec{Y: 1}, up)},
		{"from behind (from −x)", look(r3.Vec{X: -1}, up)},
		{"from the right (from −y)", look(r3.Vec{Y: -1}, up)},
	}
	const columns, gap, caption = 3, 8.0, 7.0
	wide := (s.Width - 2*margin - (columns-1)*gap) / columns
	tall := (s.Height - 2*margin - heading - gap) / 2
	box := func(i int) r2.Box {
		x, y := margin+float64(i%columns)*(wide+gap), margin+heading+float64(i/columns)*(tall+gap)
		return r2.NewBox(x, y, x+wide, y+tall-caption)
	}
	scale := math.Inf(1)
	for i, v := range views {
		scale = min(scale, v.view.fit(a, box(i), math.Inf(1)).scale)
	}
	for i, v := range views {
		w := v.view.fit(a, box(i), scale)
		w.body(s, a.Body, false)
		for _, m := range w.farFirst(a) {
			if w.faces(m) {
				w.mount(s, a, m)
			}
		}
		s.text(r2.Vec{X: box(i).Center().X, Y: box(i).Max.Y + caption - 2}, 3, middle, ink, v.name)
	}
	low := box(5).Min
	s.paragraph(r2.Vec{X: low.X + 4, Y: low.Y + 20}, 3.2, 50, ink,
		a.Name+": "+prose.Count(len(a.Own()), "mount", "mounts")+", numbers "+numbers(a.IDs(all(a)))+".")
	if held != "" {
		s.paragraph(r2.Vec{X: low.X + 4, Y: low.Y + 2}, 3, 52, ink, held)
	}
	if n := len(a.Bodies()); n > 1 {
		s.paragraph(r2.Vec{X: low.X + 4, Y: low.Y + 33}, 3, 52, ink,
			prose.Count(n, "body", "bodies")+" alike; on the second the numbers are "+strconv.Itoa(a.Mounts[len(a.Own())].ID-a.Mounts[0].ID)+" higher, and so on.")
	}
	s.paragraph(r2.Vec{X: low.X + 4, Y: low.Y + 45}, 3, 52, quiet,
		"Discs are the flanges. A body that hangs overhead needs a second, separate hold.")
	return s
}

func all(a *layout.Array) []int {
	out := make([]int, len(a.Own()))
	for i := range out {
		out[i] = i
	}
	return out
}
