package page

import (
	"time"

	"pappus/timing"
)

// How long maps may take. A dragged chair is seen to move in steps from about a tenth of a
// second on (R. B. Miller, Response time in man-computer conversational transactions, AFIPS
// 1968), and half of that leaves the figures as much of the machine as the map has.
const (
	dragTime  = 50 * time.Millisecond  // what a map of a dragged chair may take
	stillTime = 100 * time.Millisecond // one that takes longer is for a chair that stands still so long
	stripTime = 40 * time.Millisecond  // from one strip of a fine map to the next, and to its end when it is dropped
)

// ladder are the cells along a side that a map of a dragged chair may have: few, since each is
// prepared anew.
var ladder = []int{12, 16, 24, dragCells}

// firstCells is where it begins, the machine not being known: of 300 drivers a map of the comb onset,
// which takes the longest, has so many in 27 ms on two cores of 2026, half of dragTime.
const firstCells = 16

// steady is what part of the time a map with more cells may be foretold to take, so that the
// cells do not change with every draught: of maps alike, nine in ten took up to 1.4 times as long
// as the middle one (40 of each quantity, 39 and 300 drivers).
const steady = 0.7

// kind is what maps are alike in as far as their cost goes.
type kind struct {
	view      string
	quantity  timing.Quantity
	perOctave int
	own       bool // each place with its own delays
}

// pace is what a map of one kind took the last time.
type pace struct {
	cells int           // along a side
	begin time.Duration // before the first cell
	cell  time.Duration // for each cell
}

// of foretells what a map with so many cells along a side, of the same shape, takes.
func (p pace) of(cells, columns, rows int) time.Duration {
	share := float64(rows) / float64(columns)
	return p.begin + time.Duration(float64(p.cell)*share*float64(cells*cells))
}

// ownTime is what a map of a chair at rest may take in which each place has its own delays:
// people wait for about ten seconds with their minds on the matter (Miller, as above), and there
// is something to see from the first strip on.
const ownTime = 4 * time.Second

// within returns the cells along a side, of so many columns and rows at the most, with which a
// map takes no more than some time.
func (p pace) within(may time.Duration, columns, rows int) int {
	for n := columns; n > ladder[0]; n-- {
		if p.of(n, columns, rows) <= may {
			return n
		}
	}
	return min(ladder[0], columns)
}

// next returns the cells of the next map of a dragged chair.
func (p pace) next(columns, rows, most int) int {
	out := ladder[0]
	for _, n := range ladder[1:] {
		may := dragTime
		if n > p.cells {
			may = time.Duration(steady * float64(dragTime))
		}
		if n <= most && p.of(n, columns, rows) <= may {
			out = n
		}
	}
	return min(out, most)
}

// waits tells whether a map with so many cells along a side is one for a chair that stands still.
func (p pace) waits(cells, columns, rows int) bool { return p.of(cells, columns, rows) > stillTime }

// breath is for how long the figures have the machine for themselves after a map that took so
// long.
func breath(took time.Duration) time.Duration { return min(took, dragTime) }

// strip returns how many cells a strip of a fine map has, where a square of them is not more; one
// square where it is not known how long cells take.
func (p pace) strip() int {
	if p.cell <= 0 {
		return 1
	}
	return int(min(max(stripTime/p.cell, 1), mostStrip))
}

// mostStrip is how many cells a strip has at the most: those that 20 KB hold, which a home's line of
// 5 Mbit/s takes in in a frame of 33 ms. A cell has two bytes, in base64, and the head 256; a strip
// may go over by less than a square of a map's cells.
const mostStrip = (20<<10-256)*3/4/2 - 4*mostCells
