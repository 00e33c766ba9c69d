// Package search finds what to build: designs of a space that no other beats in all of what
// is sought, and few that stand for them.
//
// Every candidate is screened by what is cheap: whether it can be built and keeps the limits
// (layout/space), and what timing.Sketch makes of it. Layers of the screened (package pareto)
// say which get the full figures of timing.Make, at most one in twenty, a tenth of them drawn
// at random from the rest against blind spots. The best are polished by small changes.
package search
