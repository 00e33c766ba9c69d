package ball

import "math"

// grid is where the nodes of a table lie for one run of wavenumbers.
//
// Across, in gamma, the remainder is interpolated by cubics through four nodes
// (Lagrange), which for exp(iwx) and the step h err by at most (3/128)(wh)^4
// between the middle two. The remainder is made of a few kinds of waves, and
// the density of nodes per radian is the sum of what they ask for:
//
//   - around pi, the sound that comes the other way round, exp(-2ika(pi-gamma))
//     against the first one and as strong there, so w = 2ka; with wh = 0.5 the error
//     is 0.0015 of one wave, which keeps 0.0058 (0.05 dB) even in dips of 12 dB.
//     Away from pi it is the weaker by the loss of a creeping wave, about
//     exp(-2c(pi-gamma)) with c = 0.88 (ka/2)^(1/3) for a rigid ball (Keller, J.
//     Opt. Soc. Am. 52 (1962) 116; the number from memory), so that the density
//     may fall quickly;
//   - the lobes of the cap itself, w = ka sin alpha, and the edge of the shadow,
//     of the width (2/ka)^(1/3), anywhere;
//   - near the ball and above the cap, the cap's shape, of the width of the
//     height, and the sound of its rim against that of its centre, w up to ka
//     by the sine of the angle under which the rim is seen.
//
// Along, the nodes lie in the angle v = acos(a/r), under which the horizon is
// seen from the centre: in it the edge of the shadow is as wide as in gamma,
// far points are few, and near the ball heights are v^2/2. The rim's sound
// changes against the centre's by ka times one less the cosine of the rim's
// angle. A share of r itself is added to follow the loss in air. Coarse nodes are computed, those between
// them are filled in by cubics when the table is made, and a straight line
// through two of them is enough: it errs by (wh)^2/8.
//
// The factors were fitted by measuring; the tests hold the error, and show that
// half the density is not enough.
type grid struct {
	// The index over gamma is even*g + early*(1-(1-g)^8) + late*g^4 with
	// g = gamma/pi.
	even, early, late float64

	across     int     // nodes over gamma, one before 0 and one after pi among them
	perV, perR float64 // the index along is perV*v + perR*r - first
	first      float64
	coarse     int // nodes along that are computed
	along      int // nodes along in all
}

// dense is the number of cells along in one coarse cell.
const dense = 5

const (
	acrossEven   = 3.0 // nodes per radian
	acrossLobes  = 1.7 // times ka sin alpha
	acrossEdge   = 3.0 // times (ka/2)^(1/3)
	acrossHeight = 3.0 // by the least height over a
	acrossRim    = 1.2 // times ka by the sine of the rim's angle
	acrossLate   = 4.0 // times ka

	alongEven   = 8.0 // coarse nodes per radian
	alongLobes  = 1.5 // times ka sin alpha
	alongEdge   = 4.0 // times (ka/2)^(1/3)
	alongHeight = 4.0 // by the least v
	alongRim    = 1.2 // times ka by one less the cosine of the rim's angle
	alongLoss   = 4.0 // coarse nodes per neper
)

// newGrid returns the grid for wavenumbers up to kMost and losses up to
// lossMost; refinement multiplies all densities.
func newGrid(c Cap, kMost, lossMost, rMin, rMax, refinement float64) grid {
	var (
		ka     = kMost * c.Radius
		lobes  = ka * math.Sin(min(c.HalfAngle, math.Pi/2))
		edge   = math.Cbrt(ka / 2)
		height = rMin/c.Radius - 1
		even   = acrossEven + acrossLobes*lobes + acrossEdge*edge
		slant  = math.Hypot(c.HalfAngle, height) // from the nearest point to the rim, about
		early  = acrossHeight/height + acrossRim*ka*c.HalfAngle/slant
		late   = acrossLate * ka
		vMin   = math.Acos(c.Radius / rMin)
		vMax   = math.Acos(c.Radius / rMax)
	)
	total := even + early/8 + late/4 // the mean density
	cells := math.Ceil(refinement * math.Pi * total)
	g := grid{
		even:   cells * even / total,
		early:  cells * early / 8 / total,
		late:   cells * late / 4 / total,
		across: int(cells) + 3,
		perV:   refinement * (alongEven + alongLobes*lobes + alongEdge*edge + alongHeight/vMin + alongRim*ka*(1-height/slant)),
		perR:   refinement * alongLoss * lossMost,
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

// distance is r of coarse node j, by halving.
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
