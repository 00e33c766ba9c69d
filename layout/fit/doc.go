// Package fit says where drivers get in each other's way or reach over the edge
// of their face. A flange is a flat round disc in the plane of its mount.
//
// How near two flanges are is told by their diameter: Gap is by how much the
// diameter of both may still grow until they touch, or, below 0, must shrink
// until they no longer overlap. For two in one plane that is the distance
// between their rims. For two in planes that lean from each other it is exact
// too: two discs of one radius touch when both reach the same point of the line
// in which their planes meet.
//
// A flange has a thickness, a screw a head, and a printed part is off by some
// tenths of a millimetre: leave some room (common practice: a millimetre or
// more between flanges).
//
// Plane and solid geometry; no source is needed beyond Euclid.
package fit
