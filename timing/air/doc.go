// Package air says how fast sound travels in air and how much of it the air
// takes away.
//
// Speed: O. Cramer, "The variation of the specific heat ratio and the speed of
// sound in air with temperature, pressure, humidity, and CO2 concentration",
// J. Acoust. Soc. Am. 93 (1993) 2510, equation 15. Loss: ISO
// 9613-1:1993, clause 6.2, equations 3 to 5, and annex B for the humidity.
package air
