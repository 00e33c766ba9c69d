package box

import "math"

// Vent is a vent as it is built: equal round holes.
type Vent struct {
	Radius float64 // m, of one hole
	Number int
	Depth  float64 // m, of the hole
}

// Area returns the area of all holes in m2.
func (v Vent) Area() float64 { return float64(v.Number) * math.Pi * v.Radius * v.Radius }

// Specific returns the flow resistance, in Pa s/m, that a sheet over all holes
// must have for a vent of a resistance in Pa s/m3. Sheets lie in series:
// divide it by that of one to find how many.
func (v Vent) Specific(resistance float64) float64 { return resistance * v.Area() }

// Velocity returns the speed of the air in m/s for a volume velocity in m3/s.
// Common practice: keep a bare opening below 17 m/s peak, a twentieth of the
// speed of sound; and one behind felt below 1 m/s, over which its resistance
// is no longer the same for loud and soft.
func (v Vent) Velocity(flow float64) float64 { return flow / v.Area() }

// MassRatio returns the reactance of the air that moves in the holes over a
// resistance in Pa s/m3 at a frequency in Hz. Where it is not far below 1 at the
// system's resonance the vent is a port, not a resistance: make more of the
// area, or more and smaller holes. The mass is that of the depth and an end of
// 0.85 radii at each side (Beranek and Mellow, for a hole in a wide wall).
func (v Vent) MassRatio(resistance, hz float64, a Air) float64 {
	return 2 * math.Pi * hz * v.Mass(a) / resistance
}

// Mass returns the mass in kg/m4 of the air that moves in the holes.
func (v Vent) Mass(a Air) float64 { return a.Density * (v.Depth + 2*0.85*v.Radius) / v.Area() }

// GapRatio returns the free area at the edge of a stand, all round a body of a
// perimeter in m at its foot and a gap below it in m, over a vent's area: what
// feeds a vent in the base. Common practice: at least 1, better 2; legs and
// cables take some of it.
func (v Vent) GapRatio(perimeter, gap float64) float64 { return perimeter * gap / v.Area() }
