// Package timing computes what an array sounds like from a place in the room:
// when each driver is heard, which delay brings it into step, and what the sum
// then is at the listening spot, round it and all over the room.
//
// It takes a layout.Array and gives a Plan. Sub-packages hold one idea each:
//
//	air           speed of sound (Cramer 1993) and loss (ISO 9613-1)
//	path          how far sound travels, straight and round the body (Keller 1962)
//	radiate       what places hear of an array, driver by driver or in one sum; the models
//	ball          a polar cap that moves in a rigid ball (Morse and Ingard 1968)
//	harmonic      a whole array's sum by the addition theorem (DLMF 14.30.9)
//	cores         work on all cores, the same to the bit on any number of them
//	drive         the driver's own response
//	shoebox       mirror images in a box room (Allen and Berkley 1979)
//	reverb        reverberation times by Sabine and Eyring
//	head          two ears on a rigid head (Duda and Martens 1998)
//	arrival       when a sound arrives, from its spectrum; how late the field is round a ball
//	trust         how far levels can be off because a ball stands for the body
//	band          octaves, thirds and smoothing (IEC 61260-1)
//	measure       smear, summing loss, comb onset
//	omni          how evenly a source radiates in a plane (ISO 3382-1) and all round
//	split         arrivals into groups that share a delay (Fisher 1958)
//	channelcount  what more channels bring
//	crossover     Butterworth, Linkwitz-Riley and Bessel filters
//	biquad        the second-order section that processors are set with
//	equaliser     peaking and shelving sections (W3C Audio EQ Cookbook), FIR filters
//	excursion     how far a cone moves
//	exposure      how long ears may be in a sound (NIOSH 98-126)
//	search/pareto sorting by several aims at once (Deb and others 2002)
//
// and for what has been built:
//
//	sweep         the exponential sweep to measure with (Farina 2000)
//	rehearsal     made-up recordings of an array that is not built yet
//	recording     a sweep found in a recording, and what it tells
//	verdict       recordings held against a plan
//	impedancefit  a driver's values, or a channel's faults, from impedance (Small 1972)
//	damping       trials of stuffing and vents, and which to make next
//
// The sum at a point is over drivers of gain, polarity, delay and radiation:
//
//	p(f) = sum over m of g_m H_m(f) exp(-i 2 pi f delay_m)
//
// # When a driver is heard
//
// In the sphere model a mount that is not on the ball of the body's volume, as on a flat
// face, an edge or a vertex, is moved along its own direction to it, for the field and
// the path alike. By an independent boundary-element solution
// (testdata/reference/faceted_given.csv) delays taken so lose, for 12 drivers on a
// dodecahedron of 150 mm at 2 m, mean of 500 Hz to 3 kHz: by the straight line 1.12 dB,
// by the path with each mount's own distance 0.65, by the path on the ball 0.24, by the
// field on the ball 0.11. So delays go by the field unless the design says otherwise,
// and smear and its maps are measured by it; the path is what explains them.
// TestDelaysOnADodecahedron holds these figures (1.08, 0.64, 0.25 and 0.14 dB, mean of 60
// directions).
//
// What is out of the ball, at a vertex or on a block, is moved in by the same rule; for
// that there is no solution to hold it to.
//
// A cut body with nothing hard near below it takes the ball half way between the whole one
// and its own (body.Body.InOpenAir); on a table the whole one and its mirror image stay.
//
// Time factor exp(+i omega t); the Field interface of package radiate states
// the normalisation. Levels are in dB over a point source of one driver's
// volume velocity, heard from 1 m.
package timing
