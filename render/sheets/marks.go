package sheets

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"

	"pappus/layout"
	"pappus/layout/poly"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// references picks three mounts from which all others are found: the one most to the front, the
// one most square to it, and the one that is farthest out of their plane.
func references(mounts []layout.Mount) []int {
	if len(mounts) < 3 {
		return nil
	}
	best := func(of func(u r3.Vec) float64) int {
		at, most := 0, math.Inf(-1)
		for i, m := range mounts {
			if v := of(r3.Unit(m.Point)); v > most+1e-9 {
				at, most = i, v
			}
		}
		return at
	}
	unit := func(i int) r3.Vec { return r3.Unit(mounts[i].Point) }
	a := best(func(u r3.Vec) float64 { return u.X })
	b := best(func(u r3.Vec) float64 { return -math.Abs(r3.Dot(u, unit(a))) })
	c := best(func(u r3.Vec) float64 { return math.Abs(r3.Dot(u, r3.Cross(unit(a), unit(b)))) })
	if c == a || c == b {
		return nil
	}
	return []int{a, b, c}
}

// marks writes where the mounts of a ball are: azimuth, elevation, and from three of them the
// straight distance, for dividers, and that of a string over the ball, along a great circle.
func marks(w io.Writer, a *layout.Array) error {
	mounts := a.Own()
	from := references(mounts)
	head := []string{"mount", "azimuth_deg", "elevation_deg"}
	for _, r := range from {
		head = append(head, fmt.Sprintf("chord_from_%d_mm", mounts[r].ID), fmt.Sprintf("string_from_%d_mm", mounts[r].ID))
	}
	rows := [][]string{head}
	for _, m := range mounts {
		u := r3.Unit(m.Point)
		azimuth, elevation := poly.Bearing(u)
		row := []string{strconv.Itoa(m.ID), prose.Fixed(azimuth*180/math.Pi, 2), prose.Fixed(elevation*180/math.Pi, 2)}
		for _, r := range from {
			v := r3.Unit(mounts[r].Point)
			angle := math.Atan2(r3.Norm(r3.Cross(u, v)), r3.Dot(u, v))
			row = append(row, prose.Fixed(2e3*a.Body.Radius*math.Sin(angle/2), 1), prose.Fixed(1e3*a.Body.Radius*angle, 1))
		}
		rows = append(rows, row)
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// tick is a place on a strip: so far from its begin, with what stands beside.
type tick struct {
	at    float64 // mm
	words string
}

const (
	stripLong = 250.0 // mm of a strip on a page
	stripTall = 26.0
)

// Strips draws the tapes that mark a ball by hand, at 1:1: one to be laid round its equator,
// with the azimuths of all mounts, and one from its top down, with their elevations.
func Strips(a *layout.Array) (out []*Sheet) {
	if !a.Body.IsBall() {
		return nil
	}
	radius := 1e3 * a.Body.Radius
	var round, down []tick
	for _, m := range a.Own() {
		azimuth, elevation := poly.Bearing(r3.Unit(m.Point))
		round = append(round, tick{azimuth * radius, strconv.Itoa(m.ID)})
		down = append(down, tick{(math.Pi/2 - elevation) * radius, strconv.Itoa(m.ID)})
	}
	y := math.Inf(1)
	for _, tape := range []struct {
		name  string
		long  float64
		ticks []tick
	}{{"round the equator, from the front to the left", 2 * math.Pi * radius, merged(round)}, {"from the top down, along each azimuth", math.Pi * radius, merged(down)}} {
		for from := 0.0; from < tape.long; from += stripLong {
			if y+stripTall+8 > short-margin {
				out = append(out, page(fmt.Sprintf("strips-%d", len(out)+1), "Strips to mark the ball with",
					"Cut out, join end to end, and lay on the ball. Drawn at 1:1: check the bar of 100 mm.", long, short))
				y = margin + heading + 10
				bar := out[len(out)-1]
				bar.line(thin, r2.Vec{X: long - margin - 100, Y: y - 6}, r2.Vec{X: long - margin, Y: y - 6})
				bar.text(r2.Vec{X: long - margin - 50, Y: y - 7.5}, 2.6, middle, ink, "100 mm")
			}
			strip(out[len(out)-1], y, from, min(stripLong, tape.long-from), tape.name, tape.ticks)
			y += stripTall + 8
		}
	}
	return out
}

// merged puts ticks into order, and those nearer than half a millimetre into one.
func merged(ticks []tick) (out []tick) {
	slices.SortStableFunc(ticks, func(a, b tick) int {
		if a.at < b.at {
			return -1
		}
		if a.at > b.at {
			return 1
		}
		return 0
	})
	for _, t := range ticks {
		if n := len(out); n > 0 && t.at-out[n-1].at < 0.5 {
			out[n-1].words += ", " + t.words
		} else {
			out = append(out, t)
		}
	}
	return out
}

// strip draws a piece of a tape.
func strip(s *Sheet, y, from, long float64, name string, ticks []tick) {
	s.polygon(pen{colour: ink, width: 0.2}, r2.Vec{X: margin, Y: y}, r2.Vec{X: margin + long, Y: y},
		r2.Vec{X: margin + long, Y: y + stripTall}, r2.Vec{X: margin, Y: y + stripTall})
	s.text(r2.Vec{X: margin + 1, Y: y - 1.2}, 2.6, left, quiet, fmt.Sprintf("%s: %.0f to %.0f mm", name, from, from+long))
	row := 0
	for _, t := range ticks {
		if t.at < from-1e-9 || t.at >= from+long-1e-9 {
			continue
		}
		x := margin + t.at - from
		s.line(pen{colour: ink, width: 0.25}, r2.Vec{X: x, Y: y}, r2.Vec{X: x, Y: y + 6})
		// Words of neighbours stand in rows below each other.
		s.text(r2.Vec{X: x + 0.6, Y: y + 9 + 4*float64(row%4)}, 2.6, left, ink, cutShort(t.words, 24))
		row++
	}
}
