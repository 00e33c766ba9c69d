// Package rehearsal makes recordings of an array that is not built yet: what a microphone at
// the listening spot, or at a seat, would hear of a sweep, by the plan's own model, with noise, two clocks
// that differ, and faults of wiring. It shows what a measurement will look like, and proves
// that one finds what is wrong.
package rehearsal
