// Package spread puts points on a sphere as evenly as can be.
//
// Evenly means least Coulomb energy, the sum of 1/distance over all pairs
// (Thomson's problem; energies in D. J. Wales and S. Ulker, Phys. Rev. B 74
// (2006) 212101). The start is a spiral of equal areas (E. B. Saff and A. B. J.
// Kuijlaars, Math. Intelligencer 19 (1997) 5).
package spread
