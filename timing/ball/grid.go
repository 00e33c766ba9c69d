package ball

import "math"

// grid is where the nodes of a table lie for one run of wavenumbers. Both
// directions are interpolated by cubics through four nodes (Lagrange), which
// for exp(iwx) and the step h errs by at most (3/128)(wh)^4 between the middle two.
//
// Across, in gamma, the remainder is made of a few kinds of waves. Its density
// of nodes per radian is the sum of a constant and of a part that grows
// towards pi:
//
//   - around pi, the sound that comes the other way round, exp(-2ika(pi-gamma))
//     against the first one, and as strong there; its nearly extinguished
//     dips ask for five times the accuracy of the rest. Away from pi it is
//     the weaker by the loss of a creeping wave, about exp(-2 c (pi-gamma)) with
//     c = 0.88 (ka/2)^(1/3) for a rigid ball (Keller, J. Opt. Soc. Am. 52 (1962)
//     116; the number from memory);
//   - the lobes of the cap itself, of the width 1/(ka sin alpha);
//   - the edge of the shadow, of the width (2/ka)^(1/3);
//   - near the ball, the cap's own shape, of the width of the height above it.
//
// Along, the nodes lie in the angle v = acos(a/r), the angle under which the
// horizon is seen from the centre: in it the edge of the shadow is as wide as
// in gamma, far points are few, and near the ball heights are v^2/2. A share of
// r itself is added to follow the loss in air.
type grid struct {
	// The index over gamma is even*g + early*(1-(1-g)^8) + late*g^4 with
	// g = gamma/pi.
	even, early, late float64

	across     int     // nodes over gamma, one before 0 and one after pi among them
	perV, perR float64 // the index along is perV*v + perR*r - first
	first      float64
	coarse     int // nodes along that are computed
	along      int // nodes along in all, dense for each coarse one
}

// refinement multiplies the density of nodes in both directions; the tests
// show that half of it is not enough.
const refinement = 1.0

func newGrid(c Cap, kMost, lossMost, rMin, rMax float64) grid {
	var (
		ka     = kMost * c.Radius
		lobes  = ka * math.Sin(min(c.HalfAngle, math.Pi/2))
		edge   = math.Cbrt(ka / 2)
		height = rMin/c.Radius - 1
		even   = gridEven + gridLobes*lobes + gridEdge*edge
		early  = gridHeight/height + gridRim*ka*c.HalfAngle/math.Hypot(c.HalfAngle, height)
		late   = gridLate * ka
		vMin   = math.Acos(c.Radius / rMin)
		vMax   = math.Acos(c.Radius / rMax)
	)
	total := even + early/8 + late/4
	cells := math.Ceil(refinement * math.Pi * total)
	g := grid{
		even:   cells * even / total,
		early:  cells * early / 8 / total,
		late:   cells * late / 4 / total,
		across: int(cells) + 3,
		perV:   refinement * (gridAlong + gridAlongLobes*lobes + gridAlongEdge*edge + gridAlongHeight/vMin),
		perR:   refinement * gridLoss * lossMost,
	}
	span := g.perV*(vMax-vMin) + g.perR*(rMax-rMin)
	cells = max(3, math.Ceil(span))
	if span > 0 {
		g.perV *= cells / span
		g.perR *= cells / span
	}
	g.first = g.perV*vMin + g.perR*rMin
	g.coarse = int(cells) + 1
	g.along = int(cells)*dense + 1
	return g
}

const dense = 4

const (
	gridEven   = 3.0
	gridLobes  = 1.5
	gridEdge   = 3.0
	gridHeight = 3.0
	gridRim    = 1.2
	gridLate   = 4.0

	gridAlong       = 8.0
	gridAlongLobes  = 1.0
	gridAlongEdge   = 4.0
	gridAlongHeight = 4.0
	gridLoss        = 4.0
)

// acrossIndex is the place of gamma among the nodes, 0 at gamma = 0.
func (g *grid) acrossIndex(gamma float64) float64 {
	x := gamma * (1 / math.Pi)
	x2 := x * x
	y := 1 - x
	y *= y
	y *= y
	return g.even*x + g.early*(1-y*y) + g.late*x2*x2
}

// gamma is the angle of node i, the first of which lies before 0, by halving.
func (g *grid) gamma(i int) float64 {
	if i == 0 {
		return -g.gamma(2)
	}
	lo, hi := 0.0, 1.5*math.Pi
	for range 60 {
		x := (lo + hi) / 2
		if g.acrossIndex(x) < float64(i-1) {
			lo = x
		} else {
			hi = x
		}
	}
	return (lo + hi) / 2
}

// distance is r of node j, by halving.
func (g *grid) distance(j int, a, rMin, rMax float64) float64 {
	switch j {
	case 0:
		return rMin
	case g.coarse - 1:
		return rMax
	}
	lo, hi := math.Acos(a/rMin), math.Acos(a/rMax)
	for range 60 {
		v := (lo + hi) / 2
		if g.perV*v+g.perR*a/math.Cos(v)-g.first < float64(j) {
			lo = v
		} else {
			hi = v
		}
	}
	return a / math.Cos((lo+hi)/2)
}

// cubic are the weights of the nodes -1, 0, 1, 2 for the place x, usually in
// 0..1 (Lagrange; Abramowitz and Stegun 25.2.13).
func cubic(x float64) (w [4]float64) {
	a, b, c := x+1, x-1, x-2
	w[0] = -x * b * c / 6
	w[1] = a * b * c / 2
	w[2] = -a * x * c / 2
	w[3] = a * x * b / 6
	return w
}
