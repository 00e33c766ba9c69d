package table

import (
	"cmp"
	"fmt"
	"io"
	"strings"

	"pappus/layout/design"
	"pappus/render/words"
	"pappus/timing/search"
)

// searchColumns are the figures of designs in tables of a search.
var searchColumns = []string{"drivers", "channels", "lost_db:3", "loudest_db:3", "comb_onset_hz:1", "unevenness_db:3", "lowest_hz:1",
	"price:2", "plastic_kg:3", "mass_kg:3", "print_hours:2", "inside_l:4", "width_mm:1", "height_mm:1", "depth_mm:1", "pieces"}

// searchFigures are the figures of a design in the order of searchColumns.
func searchFigures(f search.Figures) []any {
	return []any{f.Drivers, f.Channels, f.Loss, f.Level, f.Onset, f.Evenness, f.Lowest,
		f.Price, f.Plastic, f.Mass, f.Hours, f.Litres, 1000 * f.Width, 1000 * f.Height, 1000 * f.Depth, f.Pieces}
}

// SearchFront writes one row for each design that no other beats in all that is sought: its
// number where it is offered, its file and why.
func SearchFront(w io.Writer, r *search.Result) error {
	t := newSheet(append(append([]string{"number"}, searchColumns...), "file", "name", "why", "settings")...)
	for _, f := range r.Found {
		t.add(append(append([]any{f.Found}, searchFigures(f.Figures)...), words.FileOf(f), f.Name, words.Why(r, f), settings(f.Set))...)
	}
	for _, p := range r.Tried {
		if p.Front && p.Found == 0 {
			t.add(append(append([]any{nil}, searchFigures(p.Figures)...), nil, p.Name, nil, settings(p.Set))...)
		}
	}
	return t.write(w)
}

// SearchTried writes one row for each design that was tried: those planned in full, and a
// sample of those that were screened alone.
func SearchTried(w io.Writer, r *search.Result) error {
	t := newSheet(append(append([]string{"variant", "stage", "at_random", "front", "number"}, searchColumns...), "name", "settings")...)
	for _, p := range r.Tried {
		var variant, number any
		if p.Variant >= 0 {
			variant = p.Variant
		}
		if p.Found > 0 {
			number = p.Found
		}
		t.add(append(append([]any{variant, words.SearchStage(p), p.Random, p.Front, number}, searchFigures(p.Figures)...), p.Name, settings(p.Set))...)
	}
	return t.write(w)
}

// settings writes the keys that were set, as the file has them.
func settings(set []search.Setting) string {
	var out []string
	for _, s := range set {
		if s.Value != nil {
			out = append(out, s.Key+" = "+design.Literal(s.Value))
		}
	}
	return strings.Join(out, "; ")
}

// SearchScreen writes for people what a search found: the designs offered with their figures
// and why, what no design can reach, which limits bind, and how the design given stands.
func SearchScreen(w io.Writer, r *search.Result, colour bool) error {
	s := &screen{style: style(colour)}
	s.say(s.strong(words.Searched(r)))
	s.say(words.SearchedHow(r) + ".")
	s.say(words.NotLookedFor(r))
	s.say(words.SearchedBy(r))
	if r.Stopped {
		s.lookOut(words.SearchStopped(r))
	}
	if len(r.Found) > 0 {
		s.offered(r)
	}
	if out := words.OutOfReach(r); len(out) > 0 {
		fmt.Fprintln(s)
		s.sayAll(out)
	}
	if bind := words.Binding(r); len(bind) > 0 {
		s.section("designs that a limit takes away")
		s.sayAll(bind)
	}
	if own := words.OfStart(r); own != "" {
		fmt.Fprintln(s)
		s.say(own)
	}
	return s.to(w)
}

// offeredColumn is a figure of the designs offered: its name, its unit, and what it is of a
// design, empty where it is not known.
type offeredColumn struct {
	name, unit string
	of         func(f search.Found) string
}

var offeredColumns = []offeredColumn{
	{"drivers", "", func(f search.Found) string { return fmt.Sprint(f.Drivers) }},
	{"radius", "mm", func(f search.Found) string {
		if f.Plan == nil {
			return ""
		}
		return finite(1000*f.Plan.Array.Body.Radius, 0)
	}},
	{"lost", "dB", func(f search.Found) string { return finite(f.Loss, 2) }},
	{"loudest", "dB", func(f search.Found) string { return finite(f.Level, 1) }},
	{"uneven", "dB", func(f search.Found) string { return finite(f.Evenness, 1) }},
	{"from", "Hz", func(f search.Found) string { return finite(f.Lowest, 0) }},
	{"print", "h", func(f search.Found) string { return finite(f.Hours, 1) }},
	{"inside", "l", func(f search.Found) string { return finite(f.Litres, 1) }},
	{"pieces", "", func(f search.Found) string {
		if f.Pieces == 0 {
			return "more"
		}
		return fmt.Sprint(f.Pieces)
	}},
	{"mass", "kg", func(f search.Found) string { return finite(f.Mass, 1) }},
	{"price", "", func(f search.Found) string { return finite(f.Price, 0) }},
}

// offered lists the designs offered, each with what it is and why; a figure that is not known of
// any has no column.
func (s *screen) offered(r *search.Result) {
	fmt.Fprintln(s)
	head, units := "   ", "   "
	rows := make([]string, len(r.Found))
	for i, f := range r.Found {
		rows[i] = fmt.Sprintf("%2d ", f.Found)
	}
	for _, c := range offeredColumns {
		cells, known := make([]string, len(r.Found)), false
		for i, f := range r.Found {
			cells[i] = c.of(f)
			known = known || cells[i] != ""
		}
		if !known {
			continue
		}
		wide := max(6, len(c.name)+1)
		head, units = head+fmt.Sprintf("%*s", wide, c.name), units+fmt.Sprintf("%*s", wide, c.unit)
		for i := range rows {
			rows[i] += fmt.Sprintf("%*s", wide, cmp.Or(cells[i], "-"))
		}
	}
	s.note(head)
	s.note(strings.TrimRight(units, " "))
	for i, f := range r.Found {
		fmt.Fprintln(s, rows[i])
		fmt.Fprintln(s, indented(4, words.OfferedAs(r, f)))
	}
	s.note(indented(2, words.SearchNote(r)))
}
