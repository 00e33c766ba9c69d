// Package pareto sorts points by several aims at once: which no other beats in all of them,
// how much a set of them covers, and which few stand for the rest.
//
// A point has one value for each aim, all to be made small; a value to be made large is given
// with its sign turned. One point dominates another that is nowhere less and somewhere
// greater. NaN is not known, and counts as +Inf: worse than all that is.
//
//	Layers       non-dominated sort (Deb, Pratap, Agarwal and Meyarivan 2002) by divide and
//	             conquer (Jensen 2003; Fortin, Grenier and Parizeau 2013)
//	Hypervolume  the volume dominated (Zitzler and Thiele 1998), exact (While, Bradstreet and
//	             Barone 2012)
//	Pick         few points of the front that stand for it, by hypervolume, greedily
//	             (Nemhauser, Wolsey and Fisher 1978; Guerreiro, Fonseca and Paquete 2016)
//
// Layers and Hypervolume are the same to the bit in whatever order points come; where two
// serve Pick alike, it takes the earlier.
package pareto
