// Package carve adds, subtracts and intersects solids that are bounded by closed meshes.
//
// [Combine] takes any number of meshes at once and a rule that says of a place, by which of
// them it is in, whether it is in the outcome. All triangles are cut where they meet others;
// each piece then stays where the rule says one thing on its front and another behind it, and
// is turned where what stays is in front. Of pieces that lie on each other one stays. Which
// meshes a place is in is told by its winding numbers along a ray, and is the same for all
// pieces that hang together without a cut between them. Where two triangles meet and what the
// rule says hangs on one of them only, whatever it is of the meshes that have a surface there,
// they are not cut: that is found in rounded numbers with room for their error, and in doubt
// they are. A place on a line is on it in all triangles that have the line.
//
// Nothing is decided by rounded numbers. Corners are put on a lattice of 2^-42 m; where edges
// and planes meet is kept as a ratio of whole numbers; signs are taken in floating point only
// where their bound of error (J. R. Shewchuk, Adaptive Precision Floating-Point Arithmetic,
// Discrete Comput. Geom. 18 (1997) 305, in its simplest form) leaves no doubt, and else from
// the whole numbers. So pieces agree on every corner and edge, flat faces that lie in one plane
// are one case among others, and the outcome is closed. Rounding comes last: corners move by
// less than a lattice step, and edges that are too short for a file of single precision are
// drawn together to where the volume stays as it is. So volumes add up to the lattice step times the
// area, less than 1e-10 of what is a hand wide.
//
// The way of cutting follows B. Zhou, E. Grinspun, D. Zorin and A. Jacobson, Mesh Arrangements
// for Solid Geometry, ACM Trans. Graph. 35 (2016) 39; triangles are cut along given edges by
// flips (S. W. Sloan, A fast algorithm for generating constrained Delaunay triangulations,
// Computers and Structures 47 (1993) 441).
package carve
