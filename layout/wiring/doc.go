// Package wiring strings equal drivers together so that the amplifier sees a
// load that it may drive: strings of drivers in series, strings in parallel as
// a bank.
//
// Sources: Ohm's law and Kirchhoff's laws. That the load is judged by the
// direct current resistance rather than by the nominal impedance is common
// practice and on the safe side: the impedance of a driver is hardly ever lower
// than its resistance.
//
// Every driver of such a bank carries the same current, so the power divides
// evenly. One driver that fails open silences its string; one that fails short
// loads the rest of it. A load under the amplifier's minimum can overheat and
// destroy it.
package wiring
