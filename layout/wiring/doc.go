// Package wiring strings equal drivers together so that the amplifier sees a
// load that it may drive: strings of drivers in series, strings in parallel as
// a bank.
//
// Sources: Ohm's law and Kirchhoff's laws. That the load is judged by the
// direct current resistance rather than by the nominal impedance is common
// practice and on the safe side: the impedance of a driver is hardly ever lower
// than its resistance. Where a measured table shows that it is, the table rules.
//
// Where all strings are alike, every driver of the bank carries the same
// current, so the power divides evenly; in unequal strings the shorter ones get
// more. One driver that fails open silences its string; one that fails short
// loads the rest of it. A load under the amplifier's minimum can overheat and
// destroy it.
//
// Wire: the diameters of the American Wire Gauge after ASTM B258, 0.005 inch
// for gauge 36 and 92 to the power of 1/39 per gauge; nominal sections of IEC
// 60228; resistivity and temperature coefficient of annealed copper at 20 C
// after IEC 60028, 1/58 ohm mm2/m and 0.00393 per kelvin; all quoted from
// memory.
package wiring
