package kit

import (
	"math"

	"pappus/layout/poly"
)

// strokes are the characters of a font of lines, in a box 4 wide and 6 high.
var strokes = map[rune][][][2]float64{
	'0': {{{0, 0}, {4, 0}, {4, 6}, {0, 6}, {0, 0}}},
	'1': {{{0.8, 4.6}, {2.4, 6}, {2.4, 0}}, {{0.8, 0}, {4, 0}}},
	'2': {{{0, 6}, {4, 6}, {4, 3.2}, {0, 2.8}, {0, 0}, {4, 0}}},
	'3': {{{0, 6}, {4, 6}, {4, 0}, {0, 0}}, {{1, 3.1}, {4, 3.1}}},
	'4': {{{0, 6}, {0, 2.6}, {4, 2.6}}, {{3, 4.4}, {3, 0}}},
	'5': {{{4, 6}, {0, 6}, {0, 3.4}, {4, 3}, {4, 0}, {0, 0}}},
	'6': {{{4, 6}, {0, 6}, {0, 0}, {4, 0}, {4, 3.2}, {0, 3.2}}},
	'7': {{{0, 6}, {4, 6}, {1.4, 0}}},
	'8': {{{0, 0}, {4, 0}, {4, 6}, {0, 6}, {0, 0}}, {{0, 3.1}, {4, 3.1}}},
	'9': {{{0, 0}, {4, 0}, {4, 6}, {0, 6}, {0, 2.9}, {4, 2.9}}},
	'F': {{{0, 0}, {0, 6}, {4, 6}}, {{0, 3.2}, {3, 3.2}}},
	'S': {{{4, 5.8}, {0, 6}, {0, 3.4}, {4, 3}, {4, 0}, {0, 0.2}}},
	'^': {{{2, 0}, {2, 6}}, {{0, 3.6}, {2, 6}, {4, 3.6}}},
	'>': {{{0, 3}, {4, 3}}, {{2, 1}, {4, 3}, {2, 5}}},
	' ': {},
}

// Of engraving: as wide as two lines of a usual nozzle, as deep as three layers, and the
// pitch of characters over their height.
const (
	lineWide = 0.8e-3
	lineDeep = 0.6e-3
	advance  = 6.0 / 6
)

// width returns how wide words are, of a height in m.
func width(words string, height float64) float64 {
	return (float64(len([]rune(words)))*advance - (advance - 4.0/6)) * height
}

// engrave returns words to be cut into a face, centred on a pole: a bar for each stroke.
// Each is a little deeper than the one before, so that no two end in one plane.
func (p pole) engrave(words string, height float64) (out poly.Mesh) {
	unit := height / 6
	x, y, more := -width(words, height)/2, -height/2, 0.0
	for _, c := range words {
		for _, line := range strokes[c] {
			for i := 1; i < len(line); i++ {
				a, b := line[i-1], line[i]
				more += 2e-6
				out = poly.Joined(out, p.bar([2]float64{x + unit*a[0], y + unit*a[1]}, [2]float64{x + unit*b[0], y + unit*b[1]}, more))
			}
		}
		x += advance * height
	}
	return out
}

// bar is one stroke. Its ends reach half a line's width past its own.
func (p pole) bar(a, b [2]float64, more float64) poly.Mesh {
	dx, dy := b[0]-a[0], b[1]-a[1]
	long := math.Hypot(dx, dy)
	dx, dy = dx/long*lineWide/2, dy/long*lineWide/2
	return p.extrude([][2]float64{
		{a[0] - dx + dy, a[1] - dy - dx}, {b[0] + dx + dy, b[1] + dy - dx},
		{b[0] + dx - dy, b[1] + dy + dx}, {a[0] - dx - dy, a[1] - dy + dx},
	}, -lineDeep-more, 1.5e-3+more)
}
