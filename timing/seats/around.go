package seats

import "gonum.org/v1/gonum/spatial/r3"

// Around returns where a head that moves so far in m goes, from its seat: the seat itself,
// which comes first, and before, behind, left, right, above and below it. Nowhere else for
// 0 and less.
//
// Of patterns planned on with the same effort (eight channels for five seats of the lantern
// and of a ball of 60, aim even, then worst), judged at twelve other places 150 mm off:
//
//	the seat alone           8.51, 9.00; 6.92, 7.73 dB
//	and left and right       8.26, 9.05; 6.59, 7.31
//	and a tetrahedron        8.19, 8.90; 6.52, 7.29
//	and an octahedron        8.12, 8.85; 6.49, 7.15
//	and a cube, too          8.31, 9.17; 6.46, 7.13, whose search has too few tries
//
// At the seats themselves the octahedron's plans are 0.1 to 0.3 dB worse than those for these
// alone.
func Around(head float64) []r3.Vec {
	out := []r3.Vec{{}}
	if head <= 0 {
		return out
	}
	return append(out, r3.Vec{X: head}, r3.Vec{X: -head}, r3.Vec{Y: head}, r3.Vec{Y: -head}, r3.Vec{Z: head}, r3.Vec{Z: -head})
}
