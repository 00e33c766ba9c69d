package design

import (
	"math"
	"sort"

	"pappus/layout/impedance"
)

// The band of hearing in Hz, in which an amplifier must bear the load.
const hearingLow, hearingHigh = 20.0, 20000.0

// LeastOhm returns the lowest load in ohm that one driver makes of itself: the
// direct current resistance, or the lowest magnitude of its measured impedance
// from 20 Hz to 20 kHz where that is lower. That of a driver without a filter is
// never below its resistance; one with parts across its terminals may dip.
//
// Equal strings of s drivers, p of them, make s/p of it. Between the points of a
// table the logarithm of the magnitude runs straight over log frequency, as in
// impedance.Measured, so the lowest is at one of them or at the end of the band.
func (d Driver) LeastOhm() float64 {
	if len(d.Impedance) == 0 {
		return d.DCOhm
	}
	least := min(d.DCOhm, ohmAt(d.Impedance, hearingLow), ohmAt(d.Impedance, hearingHigh))
	for _, p := range d.Impedance {
		if p.Frequency > hearingLow && p.Frequency < hearingHigh {
			least = min(least, p.Ohm)
		}
	}
	return least
}

// ohmAt returns the magnitude in ohm that a table has at a frequency in Hz; beyond
// its ends that of the end.
func ohmAt(table []impedance.Point, hz float64) float64 {
	i := sort.Search(len(table), func(i int) bool { return table[i].Frequency >= hz })
	switch i {
	case 0:
		return table[0].Ohm
	case len(table):
		return table[i-1].Ohm
	}
	a, b := table[i-1], table[i]
	return a.Ohm * math.Pow(b.Ohm/a.Ohm, math.Log(hz/a.Frequency)/math.Log(b.Frequency/a.Frequency))
}
