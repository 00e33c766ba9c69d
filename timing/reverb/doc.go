// Package reverb gives the reverberation time of a box room by the two oldest
// formulas:
//
//	T = 24 ln 10 V / (c (A + 4 m V))
//
// with V the volume in m3, c the speed of sound, m the loss of energy in air
// per metre, twice that of pressure in nepers, and A the room's absorption in
// m2: by Sabine the sum of area times coefficient, by Eyring -S ln(1 - mean
// coefficient) over the whole surface S.
//
// W. C. Sabine, Collected Papers on Acoustics, 1922; C. F. Eyring, J. Acoust.
// Soc. Am. 1 (1930) 217; loss in air: V. O. Knudsen, J. Acoust. Soc. Am. 3 (1931)
// 126; Kuttruff, Room Acoustics, chapter 5.
//
// Both take the sound to be as strong and from all sides everywhere. A small room
// with one soft surface is far from it, and no room is below its Schroeder
// frequency: take the times for a caution, not a promise.
package reverb
