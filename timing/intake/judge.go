package intake

import (
	"math"
	"slices"

	"pappus/layout"
	"pappus/timing/unlike"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"
)

var nan = math.NaN()

// Middle is the median of a value and how far drivers scatter about it, as a standard deviation
// that odd ones do not move.
type Middle struct {
	Value   float64 // in Hz, ohm, dB or one; NaN: not known
	Scatter float64 // as a factor less 1, or in dB
	Count   int     // of drivers
	log     float64
}

const (
	odd     = 3.5    // times the scatter
	fewest  = 5      // drivers that can be held against each other
	normal  = 1.4826 // the scatter of a normal deviate over the median of its magnitudes
	rougher = 2      // times the middle misfit
	clearDB = 10     // dB over the noise that a third must be
)

// leastOff is by how much a value must be off, at least, for a driver to be sent back: what data
// sheets leave open (common practice: 10 percent of fs, 15 of Q, 5 of Re, 1 dB of sensitivity, and
// 1.5 dB of the response). Of few drivers, which the design alone judges, it counts twice.
var leastOff = [values]float64{math.Log(1.10), math.Log(1.15), math.Log(1.05), 1, 1.5}

// Judge holds the drivers against each other, and against a design's where it is not nil.
func (l *Lot) Judge(design *layout.Driver) {
	l.hear()
	for v := range values {
		l.Middles[v] = l.middle(v)
	}
	l.rough()
	want := wanted(design)
	for i := range l.Drivers {
		for v := range values {
			l.hold(&l.Drivers[i], v, want[v])
		}
	}
	for v := range Level {
		if m := l.Middles[v]; m.Count >= fewest && math.Abs(m.log-want[v]) > leastOff[v] {
			l.OffDesign = append(l.OffDesign, Reason{Code: OffDesign, Value: v, Is: m.Value, Want: v.shown(want[v])})
		}
	}
	l.bin()
}

// wanted returns what a design has of each value; NaN where nothing is known.
func wanted(d *layout.Driver) (out [values]float64) {
	for v := range out {
		out[v] = nan
	}
	if d == nil {
		return out
	}
	if d.DCOhm > 0 {
		out[Ohm] = math.Log(d.DCOhm)
	}
	if s := d.Small; s.Fs > 0 {
		out[Resonance] = math.Log(s.Fs)
		if s.Qms > 0 && s.Qes > 0 {
			out[Q] = math.Log(s.Qms * s.Qes / (s.Qms + s.Qes))
		}
	}
	return out
}

// hold rejects a driver for a value that is odd.
func (l *Lot) hold(d *Driver, v Value, want float64) {
	m := l.Middles[v]
	is, sigma := d.value(v)
	if m.Count >= fewest {
		off, spread := math.Abs(is-m.log), m.Scatter
		if v <= Ohm {
			spread = math.Log1p(m.Scatter)
		}
		if v == Response {
			off = is - m.log // one can be too even only by chance
		}
		if off > leastOff[v] && off > odd*math.Hypot(spread, sigma) {
			d.Reasons = append(d.Reasons, Reason{Code: Odd, Value: v, Is: v.shown(is), Want: m.Value})
		}
		return
	}
	if math.Abs(is-want) > 2*leastOff[v] {
		d.Reasons = append(d.Reasons, Reason{Code: OffDesign, Value: v, Is: v.shown(is), Want: v.shown(want)})
	}
}

// middle returns the median of a value over all drivers that have it.
func (l *Lot) middle(v Value) Middle {
	var all []float64
	for _, d := range l.Drivers {
		if is, _ := d.value(v); !math.IsNaN(is) && !d.is(Copy) {
			all = append(all, is)
		}
	}
	m := Middle{Value: nan, Scatter: nan, Count: len(all), log: median(all)}
	if len(all) == 0 {
		return m
	}
	m.Value = v.shown(m.log)
	for i := range all {
		all[i] = math.Abs(all[i] - m.log)
	}
	if m.Scatter = normal * median(all); v <= Ohm {
		m.Scatter = math.Expm1(m.Scatter)
	}
	return m
}

// is tells whether a driver is rejected for something.
func (d Driver) is(c Code) bool {
	return slices.ContainsFunc(d.Reasons, func(r Reason) bool { return r.Code == c })
}

// median returns the median; NaN of nothing.
func median(x []float64) float64 {
	if len(x) == 0 {
		return nan
	}
	s := slices.Sorted(slices.Values(x))
	return (s[(len(s)-1)/2] + s[len(s)/2]) / 2
}

// rough rejects drivers whose impedance is that of no driver, where those of others are.
func (l *Lot) rough() {
	var all []float64
	for _, d := range l.Drivers {
		if d.Fit != nil {
			all = append(all, d.Fit.Misfit)
		}
	}
	middle := median(all)
	for i := range l.Drivers {
		d := &l.Drivers[i]
		if d.Fit == nil || !d.Fit.Rough() {
			continue
		}
		r := Reason{Code: Rough, Is: d.Fit.Misfit, Want: middle}
		if len(all) >= fewest && d.Fit.Misfit > rougher*middle {
			d.Reasons = append(d.Reasons, r)
		} else {
			d.Notes = append(d.Notes, r)
		}
	}
}

// hear fills in what recordings tell against their middle.
func (l *Lot) hear() {
	var at []float64
	votes := 0
	for i, d := range l.Drivers {
		if d.Heard != nil {
			votes += l.sign[i]
			if !math.IsNaN(l.at[i]) {
				at = append(at, l.at[i])
			}
		}
	}
	middle := l.middleBands()
	for i := range l.Drivers {
		h := l.Drivers[i].Heard
		if h == nil {
			continue
		}
		h.Late = l.at[i] - median(at)
		h.against(l, i, middle)
	}
	for i := range l.Drivers {
		if h := l.Drivers[i].Heard; h != nil && l.sign[i]*votes < 0 {
			h.Reversed = true
			l.Drivers[i].Notes = append(l.Drivers[i].Notes, Reason{Code: Turned})
		}
	}
}

// middleBands returns the median level of all drivers in each third, by its centre.
func (l *Lot) middleBands() map[float64]float64 {
	all := map[float64][]float64{}
	for _, bands := range l.bands {
		for _, b := range bands {
			if b.SNR() >= clearDB {
				all[b.Centre] = append(all[b.Centre], b.Level)
			}
		}
	}
	out := map[float64]float64{}
	for centre, levels := range all {
		out[centre] = median(levels)
	}
	return out
}

// The thirds in Hz in which responses are held against each other: below, a fixture or a box of the
// trial tells more than the driver, above, a millimetre of the microphone's place does.
const unevenLow, unevenHigh = 200, 8000

// against fills in how loud a driver is against the middle, and how uneven.
func (h *Heard) against(l *Lot, i int, middle map[float64]float64) {
	var weighed, all []float64
	for _, b := range l.bands[i] {
		if b.SNR() < clearDB || b.Centre < 0.9*unevenLow || b.Centre > 1.1*unevenHigh {
			continue
		}
		off := b.Level - middle[b.Centre]
		all = append(all, off)
		if b.Centre > 0.9*layout.WeightLowHz && b.Centre < 1.1*layout.WeightHighHz {
			weighed = append(weighed, off)
		}
	}
	if len(weighed) == 0 {
		h.Level, h.Error, h.Uneven = nan, nan, nan
		return
	}
	h.Level = stat.Mean(weighed, nil)
	h.Error = stat.PopStdDev(weighed, nil) / math.Sqrt(float64(len(weighed)))
	floats.AddConst(-h.Level, all)
	h.Uneven = floats.Norm(all, 2) / math.Sqrt(float64(len(all)))
}

// middleDriver returns the driver of median values; how its cone moves is known where an impedance was
// measured. ohm is taken where no resistance was.
func (l *Lot) middleDriver(ohm float64) unlike.Driver {
	of := func(value func(d Driver) float64) float64 {
		var all []float64
		for _, d := range l.Drivers {
			if d.Fit != nil && d.Good() {
				all = append(all, value(d))
			}
		}
		return median(all)
	}
	if math.IsNaN(of(func(d Driver) float64 { return d.Fit.DCOhm.Value })) {
		return unlike.Driver{DCOhm: ohm}
	}
	return unlike.Driver{
		Resonance: of(func(d Driver) float64 { return d.Fit.Resonance.Value }), Qms: of(func(d Driver) float64 { return d.Fit.Qms.Value }),
		Qes: of(func(d Driver) float64 { return d.Fit.Qes.Value }), DCOhm: of(func(d Driver) float64 { return d.Fit.DCOhm.Value }),
		Inductance: of(func(d Driver) float64 { return d.Henry })}
}
