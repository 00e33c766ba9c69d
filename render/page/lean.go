package page

import (
	"context"

	"pappus/render/document"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// leanCells is how many cells a map has, along a side, by which it is told how far one may lean:
// as wide as a head where a map shows five metres.
const leanCells = 32

// edge is a line on a map: along and up, in m.
type edge [][2]number

// lean tells how far one may lean at the spot, or at each seat, in the plane of a job's map.
func (b *painter) lean(work context.Context, j job) error {
	s, _ := j.slice(leanCells)
	live, err := b.live(work, j.spot, mapOf{slice: s, quantity: timing.LiveLoss, perOctave: dragOctave})
	if err != nil {
		return err
	}
	loss := make([]float64, s.Columns*s.Rows)
	if err := live.Begin(loss, j.spot).Strip(work, timing.Strip{To: s.Columns + s.Rows}); err != nil {
		return err
	}
	var lines []edge
	for _, at := range j.spot.Listeners() {
		for _, points := range s.Lean(loss, at).Lines {
			line := make(edge, len(points))
			for i, p := range points {
				line[i] = [2]number{
					document.To(3, r3.Dot(s.Origin, s.Right)+p.Column*s.Step), document.To(3, r3.Dot(s.Origin, s.Up)+p.Row*s.Step)}
			}
			lines = append(lines, line)
		}
	}
	if len(lines) == 0 {
		return nil // all over the map, or nowhere
	}
	return b.send(drawn{Seq: j.Seq, Lean: lines})
}
