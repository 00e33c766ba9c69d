// Package layout lays a design out: the body, where each driver sits on it,
// whether it fits, and which channel it belongs to by hand. Build is the way
// in, Array what comes out.
//
// A design may name two files beside it, both CSV: a list of mounts and a
// driver's measured response. The surroundings are a level surface below the
// body, or a box room, or nothing.
//
// It knows nothing of sound. The sub-packages know one thing each: design the
// file, body the closed surface, spread the even places on a ball, fit the
// flanges, wiring the strings and banks.
//
// Mounts are laid out on the whole body. One stays when its cut-out clears the
// cut plane: a round hole of radius a in a plane whose unit normal is n reaches
// a sqrt(1-n_z^2) below its own centre (plane geometry).
//
// Mounts are numbered from the top down, ring by ring, each ring
// counter-clockwise from x seen from above. Places that are cut away or kept
// clear are not counted; places that are skipped are, and leave a gap.
package layout
