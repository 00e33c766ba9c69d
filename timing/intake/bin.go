package intake

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// Bin is a box on the bench: a driver's steps of resonance, Q and resistance, counted from the
// least that occurs.
type Bin [3]int

// halfBin is how far drivers of a bin are from its middle, as a logarithm: such that one at the
// edge, in a string of four otherwise at the middle and a box as stiff as the cones, moves no more
// than about 1 dB further than its twin for its resonance or its Q, and gives no more than half
// a dB more or less for its resistance (TestBinsAreWorthIt).
var halfBin = [3]float64{math.Log(1.04), math.Log(1.10), math.Log(1.05)}

// bin sorts good drivers into bins.
func (l *Lot) bin() {
	least := Bin{math.MaxInt, math.MaxInt, math.MaxInt}
	for i := range l.Drivers {
		d := &l.Drivers[i]
		if d.Fit == nil || !d.Good() {
			continue
		}
		for v := range least {
			is, _ := d.value(Value(v))
			d.Bin[v] = int(math.Round((is - l.Middles[v].log) / (2 * halfBin[v])))
			least[v] = min(least[v], d.Bin[v])
		}
	}
	for i := range l.Drivers {
		if d := &l.Drivers[i]; d.Fit != nil && d.Good() {
			for v := range least {
				d.Bin[v] -= least[v]
			}
		}
	}
}

// Binned is the drivers of a bin, as indices.
type Binned struct {
	Bin
	Drivers []int
}

// Bins returns the bins that have drivers, the fullest first.
func (l *Lot) Bins() (out []Binned) {
	for i, d := range l.Drivers {
		if d.Fit == nil || !d.Good() {
			continue
		}
		at := slices.IndexFunc(out, func(b Binned) bool { return b.Bin == d.Bin })
		if at < 0 {
			at, out = len(out), append(out, Binned{Bin: d.Bin})
		}
		out[at].Drivers = append(out[at].Drivers, i)
	}
	slices.SortStableFunc(out, func(a, b Binned) int {
		return cmp.Or(cmp.Compare(len(b.Drivers), len(a.Drivers)), slices.Compare(a.Bin[:], b.Bin[:]))
	})
	return out
}

// String names a bin: steps of resonance, Q and resistance from the least on, counted from 1.
func (b Bin) String() string { return fmt.Sprintf("%d-%d-%d", b[0]+1, b[1]+1, b[2]+1) }
