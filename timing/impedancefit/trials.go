package impedancefit

import (
	_ "embed"

	"pappus/layout/impedance"
	"pappus/timing/trial"
)

//go:embed trials.csv
var trials string

// Faults that channels are given in trials. Those that are no cause and no mistake are at the end.
const (
	OpenString     = "an open string"
	ShortedDriver  = "a shorted driver"
	ShortedString  = "a shorted string"
	AnotherChannel = "another channel"
	Leak           = "a leak"
	AnotherMake    = "a driver of another make"
)

// Faults lists them, in the order of the table.
var Faults = []string{OpenString, ShortedDriver, ShortedString, AnotherChannel, Leak, AnotherMake}

// Trials returns what became of made-up channels and drivers whose truth is known: how often each
// fault was missed, that is, the verdict was that all is as planned, and how often there was a
// false alarm.
func Trials() trial.Table { return trial.Embedded(trials) }

// AsPlanned tells whether the verdict is that all is as planned.
func (l Load) AsPlanned() bool {
	return l.Sure && l.Cause.State == impedance.Alive && !l.Flat && !l.Loose
}
