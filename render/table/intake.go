package table

import (
	"fmt"
	"io"
	"strings"

	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/impedancefit"
	"pappus/timing/intake"
)

// Drivers writes a row for each driver: its values with one standard error each, what was
// decided, and where it goes.
func Drivers(w io.Writer, l *intake.Lot, d *intake.Deal) error {
	t := newSheet("driver", "files", "verdict", "why", "fs_hz:2", "fs_error:2", "qms:4", "qms_error:4", "qes:4", "qes_error:4", "qts:4", "qts_error:4", "re_ohm:4", "re_error:4",
		"le_1k_mh:4", "level_db:3", "level_error_db:3", "uneven_db:3", "late_us:2", "reversed", "bin", "channel", "string", "joint", "mount")
	place := map[int]intake.Place{}
	if d != nil {
		for _, at := range d.Places {
			place[at.Driver] = at
		}
	}
	for i, one := range l.Drivers {
		why := words.Reasons(append(one.Reasons[:len(one.Reasons):len(one.Reasons)], one.Notes...))
		row := append([]any{one.Name, strings.Join(one.Files, " "), verdictOf(l, d, i), why}, measuredOf(one)...)
		row = append(row, binOf(one))
		if at, used := place[i]; used {
			row = append(row, d.Plan.Channels[at.Channel].ID, at.String+1, at.Joint+1, d.Plan.Array.Mounts[at.Mount].ID)
		} else {
			row = append(row, nil, nil, nil, nil)
		}
		t.add(row...)
	}
	return t.write(w)
}

// measuredOf returns what was measured of a driver, a value and an error in turn; nothing for what
// was not.
func measuredOf(d intake.Driver) []any {
	out := make([]any, 11, 16)
	if f := d.Fit; f != nil {
		for i, e := range []impedancefit.Estimate{f.Resonance, f.Qms, f.Qes, f.Qts, f.DCOhm} {
			out[2*i], out[2*i+1] = e.Value, e.Error
		}
		out[10] = 1000 * d.Henry
	}
	if h := d.Heard; h != nil {
		return append(out, h.Level, h.Error, h.Uneven, 1e6*h.Late, h.Reversed)
	}
	return append(out, nil, nil, nil, nil, nil)
}

// binOf names a driver's bin; nothing where it has none.
func binOf(d intake.Driver) any {
	if d.Fit == nil || !d.Good() {
		return nil
	}
	return d.Bin
}

// verdictOf is one word for what becomes of a driver.
func verdictOf(l *intake.Lot, d *intake.Deal, i int) string {
	switch {
	case !l.Drivers[i].Good():
		return "reject"
	case d == nil || d.Places == nil:
		return "good"
	}
	for _, s := range d.Spares {
		if s == i {
			return "spare"
		}
	}
	return "use"
}

// SortedStrings writes a row for each string: its mounts in the order of the joints, and the
// driver for each.
func SortedStrings(w io.Writer, l *intake.Lot, d *intake.Deal) error {
	t := newSheet("channel", "string", "mounts", "drivers")
	for _, s := range d.Strings() {
		t.add(d.Plan.Channels[s.Channel].ID, s.String+1, d.Plan.Array.IDs(s.Mounts), driverNames(l, s.Drivers))
	}
	return t.write(w)
}

func driverNames(l *intake.Lot, drivers []int) string {
	names := make([]string, len(drivers))
	for i, k := range drivers {
		names[i] = l.Drivers[k].Name
	}
	return strings.Join(names, ", ")
}

// IntakeScreen writes for people what became of a lot of drivers, and where each goes.
func IntakeScreen(w io.Writer, folder string, l *intake.Lot, d *intake.Deal, colour bool) error {
	s := &screen{style: style(colour)}
	fmt.Fprintln(s, s.strong("Drivers in "+folder))
	s.say(words.Lot(l))
	s.middles(l)
	s.rejected(l)
	s.bins(l)
	if d != nil {
		s.deal(l, d)
	}
	fmt.Fprintln(s)
	for _, text := range append(words.LotNotes(l), append(words.DealCautions(d), words.IntakeCautions...)...) {
		s.lookOut(text)
	}
	return s.to(w)
}

// middles writes the medians of what was measured.
func (s *screen) middles(l *intake.Lot) {
	fmt.Fprintln(s)
	row := s.list("value         middle   scatter  drivers", "%-10s %9.3f %8.1f%-2s %6d")
	for v, m := range l.Middles {
		v := intake.Value(v)
		if m.Count == 0 {
			continue
		}
		scatter, unit := 100*m.Scatter, " %"
		if v > intake.Ohm {
			scatter, unit = m.Scatter, "dB"
		}
		row(words.ValueOf(v), m.Value, scatter, unit, m.Count)
	}
}

// mostListed is how many drivers, bins or strings a screen lists; tables have all.
const mostListed = 24

// rejected lists drivers with something wrong.
func (s *screen) rejected(l *intake.Lot) {
	for _, kind := range []struct {
		head string
		of   func(d intake.Driver) []intake.Reason
	}{{"rejected", func(d intake.Driver) []intake.Reason { return d.Reasons }}, {"to be known of others", func(d intake.Driver) []intake.Reason {
		if !d.Good() {
			return nil
		}
		return d.Notes
	}}} {
		count := 0
		for _, d := range l.Drivers {
			why := kind.of(d)
			if len(why) == 0 {
				continue
			}
			if count++; count == 1 {
				s.section(kind.head)
			}
			if count <= mostListed {
				s.say(d.Name + ": " + words.Reasons(why))
			}
		}
		s.more(count, "drivers.csv")
	}
}

// more says where the rest is, where there is some.
func (s *screen) more(count int, file string) {
	if count > mostListed {
		s.note(fmt.Sprintf("and %d more: see %s", count-mostListed, file))
	}
}

// bins lists which drivers are alike.
func (s *screen) bins(l *intake.Lot) {
	bins := l.Bins()
	if len(bins) == 0 {
		return
	}
	s.section("bins: steps of resonance, Q and resistance")
	for _, b := range bins[:min(len(bins), mostListed)] {
		s.say(fmt.Sprintf("%v  %d: %s", b.Bin, len(b.Drivers), driverNames(l, b.Drivers)))
	}
	s.more(len(bins), "drivers.csv")
}

// deal lists who goes where, and what that brings.
func (s *screen) deal(l *intake.Lot, d *intake.Deal) {
	if d.Places != nil {
		s.section("strings, in the order of the joints")
		strings := d.Strings()
		row := s.list("channel string  mounts: drivers", "%7d %6d  %s: %s")
		for _, one := range strings[:min(len(strings), mostListed)] {
			row(d.Plan.Channels[one.Channel].ID, one.String+1, spaced(d.Plan.Array.IDs(one.Mounts)), driverNames(l, one.Drivers))
		}
		s.more(len(strings), "strings.csv")
		s.section("what it brings")
		s.heaps(d)
		fmt.Fprintln(s)
	} else {
		fmt.Fprintln(s)
	}
	s.sayAll(words.Deal(l, d))
}

// heaps sets the deals beside each other.
func (s *screen) heaps(d *intake.Deal) {
	row := s.list("                     level   loss  smear  least driver   cone\n"+
		"                        dB     dB     us    ohm      W     mm", "%-19s %6.2f %6.2f %6.0f %6.2f %6.3f %6.2f")
	add := func(name string, f [6]float64) {
		row(name, f[0]-d.Twins.Mean, f[1], 1e6*f[2], f[3], f[4], 1000*f[5])
	}
	for _, h := range []struct {
		name string
		timing.UnlikeHeard
	}{{"twins as designed", d.Twins}, {"twins of the middle", d.Middle}, {"as they come", d.AsCome.UnlikeHeard}} {
		add(h.name, intake.Figures(h.UnlikeHeard))
	}
	var chance [6]float64
	for i, r := range d.Chance {
		if chance[i] = r.High.Value; i == 3 || i == 0 {
			chance[i] = r.Low.Value
		}
	}
	add("by chance", chance)
	add("sorted", intake.Figures(d.Sorted.UnlikeHeard))
	s.note("level from 500 Hz to 4 kHz, over twins as designed; least of all loads, most of\nall drivers and cones; by chance: the worse end of nine deals in ten")
}
