package wiring

import (
	"errors"
	"fmt"
	"math"

	"pappus/layout/prose"
)

// Errors that this package wraps.
var (
	ErrLoad  = errors.New("load below the amplifier's minimum")
	ErrValue = errors.New("impossible value")
)

// Source is what feeds the drivers of a channel: an amplifier and its wire.
type Source struct {
	Volt          float64 // RMS, before the output resistance, above 0
	MinimumOhm    float64 // the least load that the amplifier may see, 0 or above
	ResistanceOhm float64 // of the amplifier's output, 0 or above
	WireOhm       float64 // out and back, from the amplifier to the strings, 0 or above
}

// Share is what each driver of some strings gets; all values RMS.
type Share struct {
	Strings
	Volt, Ampere, Watt float64
}

// Draw is what drivers draw from an amplifier; all values RMS.
type Draw struct {
	LoadOhm float64 // of the drivers alone
	Ampere  float64 // from the amplifier
	Watt    float64 // from the amplifier's output, wire included
	// WireWatt is what the wire turns into heat.
	WireWatt float64
	// Damping is the load over the resistance of output and wire together; +Inf
	// where there is none.
	Damping float64
	Share   []Share // per driver, for each length of string
}

// Draw returns what drivers of ohm each, so strung, draw from a source. With
// the nominal impedance it is what is usually quoted; with the direct current
// resistance it is the most that can flow, and hardly ever less than does.
//
// A load, taken without the wire, that is below the source's minimum is an
// error that wraps ErrLoad and says why; values that cannot be wrap ErrValue.
func (a Arrangement) Draw(ohm float64, from Source) (Draw, error) {
	if a.Drivers() < 1 {
		return Draw{}, fmt.Errorf("%w: no drivers", ErrValue)
	}
	if err := from.check(ohm); err != nil {
		return Draw{}, err
	}
	if err := a.Check(ohm, from.MinimumOhm); err != nil {
		return Draw{}, err
	}
	load, extra := a.Load(ohm), from.ResistanceOhm+from.WireOhm
	d := Draw{LoadOhm: load, Ampere: from.Volt / (load + extra), Damping: math.Inf(1)}
	d.WireWatt = d.Ampere * d.Ampere * from.WireOhm
	d.Watt = d.Ampere * d.Ampere * (load + from.WireOhm)
	if extra > 0 {
		d.Damping = load / extra
	}
	for _, s := range a {
		each := Share{Strings: s, Volt: d.Ampere * load / float64(s.Series)}
		each.Ampere = each.Volt / ohm
		each.Watt = each.Volt * each.Ampere
		d.Share = append(d.Share, each)
	}
	return d, nil
}

// Check returns an error that wraps ErrLoad and gives the reason where the load
// of drivers of ohm each is below the least that the amplifier may see.
func (a Arrangement) Check(ohm, minimumOhm float64) error {
	if load := a.Load(ohm); load < minimumOhm*(1-rounding) {
		return prose.Errorf("%w: %s of %.3g ohm each load it with %.3g ohm, its minimum is %.3g ohm; it can overheat and fail",
			ErrLoad, a, ohm, load, minimumOhm)
	}
	return nil
}

func (s Source) check(ohm float64) error {
	for _, v := range []struct {
		name         string
		value, least float64
	}{
		{"driver's ohm", ohm, math.SmallestNonzeroFloat64},
		{"volt", s.Volt, math.SmallestNonzeroFloat64},
		{"minimum load in ohm", s.MinimumOhm, 0},
		{"output resistance in ohm", s.ResistanceOhm, 0},
		{"wire in ohm", s.WireOhm, 0},
	} {
		if err := check(v.name, v.value, v.least); err != nil {
			return err
		}
	}
	return nil
}

// check returns an error where a value is under least, endless or no number.
func check(name string, value, least float64) error {
	if value >= least && !math.IsInf(value, 0) {
		return nil
	}
	if least > 0 {
		return prose.Errorf("%w: %s %g, must be above 0", ErrValue, name, value)
	}
	return prose.Errorf("%w: %s %g, must be 0 or above", ErrValue, name, value)
}
