// Package timing reckons what an array sounds like from a place in the room:
// when each driver is heard, which delay brings it into step, and what the sum
// then is at the listening spot, round it and all over the room.
//
// It takes a layout.Array and gives a Plan. Sub-packages hold one idea each:
//
//	air      speed of sound (Cramer 1993) and loss (ISO 9613-1)
//	path     how far sound travels, straight and round the body (Keller 1962)
//	radiate  the pressure of one mount at points: the seam for models
//	band     octaves, thirds and smoothing (IEC 61260-1)
//	measure  smear, summing loss, comb onset
//	split    arrivals into groups that share a delay (Fisher 1958)
//
// The sum at a point is over drivers of gain, polarity, delay and radiation:
//
//	p(f) = sum over m of g_m H_m(f) exp(-i 2 pi f delay_m)
//
// Time factor exp(+i omega t); the Field interface of package radiate states
// the normalisation. Levels are in dB over a point source of one driver's
// volume velocity, heard from 1 m.
package timing
