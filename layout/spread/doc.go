// Package spread puts points on a sphere as evenly as can be.
//
// Evenly means least Coulomb energy: the sum of 1/distance over all pairs of
// points on the unit sphere (Thomson's problem; energies in D. J. Wales and S.
// Ulker, Phys. Rev. B 74 (2006) 212101). The search runs gonum's LBFGS from
// several starts; the first is a spiral of equal areas (E. B. Saff and A. B. J.
// Kuijlaars, Math. Intelligencer 19 (1997) 5) turned by the golden angle (R.
// Swinbank and R. J. Purser, Q. J. R. Meteorol. Soc. 132 (2006) 1769).
//
// A zone keeps caps of the sphere clear: below a dome, round a handle or a
// cable; and can ask for a symmetry about z. It is held by an augmented
// Lagrangian (J. Nocedal and S. J. Wright, Numerical Optimization, 2nd ed.,
// 2006, 17.3 and 17.4); what points are still inside a cap by at the end is
// taken off by moving them to its border.
//
// A sphere holds very many arrangements of nearly the same energy, the more the
// more points there are. Up to a hundred points the least one known is found as
// a rule; above that, one that is some millionths to some hundred-thousandths
// over the best, which no builder can tell from it.
package spread
