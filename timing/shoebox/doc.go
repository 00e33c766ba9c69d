// Package shoebox finds the mirror images of a body in a box room.
//
// Along one axis, with walls at 0 and L and the body's centre at s, the images
// stand at s + 2nL, having met each wall |n| times, and turned round at
// -s + 2nL, having met the low wall |n-1| times and the high one |n| times, for
// all whole n. An image of the room is one such for each axis. J. B. Allen and D. A.
// Berkley, "Image method for efficiently simulating small-room acoustics", J.
// Acoust. Soc. Am. 65 (1979) 943.
//
// It is exact for hard walls and a point source. For a body it leaves out what
// the body itself scatters of its own reflections; with absorption it takes the
// walls' reflection as equal for all angles.
package shoebox
