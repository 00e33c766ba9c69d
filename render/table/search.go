package table

import (
	"fmt"
	"io"
	"strings"

	"pappus/layout/design"
	"pappus/render/words"
	"pappus/timing/search"
)

// searchColumns are the figures of designs in tables of a search.
var searchColumns = []string{"drivers", "channels", "lost_db:3", "loudest_db:3", "comb_onset_hz:1", "unevenness_db:3", "lowest_hz:1",
	"price:2", "plastic_kg:3", "mass_kg:3", "print_hours:2", "inside_l:4", "width_mm:1", "height_mm:1", "pieces"}

// searchFigures are the figures of a design in the order of searchColumns.
func searchFigures(f search.Figures) []any {
	return []any{f.Drivers, f.Channels, f.Loss, f.Level, f.Onset, f.Evenness, f.Lowest,
		f.Price, f.Plastic, f.Mass, f.Hours, f.Litres, 1000 * f.Width, 1000 * f.Height, f.Pieces}
}

// SearchFront writes one row for each design that no other beats in all that is sought: its
// number where it is offered, its file and why.
func SearchFront(w io.Writer, r *search.Result) error {
	t := newSheet(append(append([]string{"number"}, searchColumns...), "file", "name", "why", "settings")...)
	for _, f := range r.Found {
		t.add(append(append([]any{f.Found}, searchFigures(f.Figures)...), words.FileOf(f), f.Name, words.Why(f), settings(f.Set))...)
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

// offered lists the designs offered, each with what it is and why.
func (s *screen) offered(r *search.Result) {
	fmt.Fprintln(s)
	row := s.list("    drivers lost dB loudest dB uneven dB from Hz print h litres pieces  price", "%2d %8d %7.2f %10.1f %9.1f %7.0f %7.1f %6.1f %6d %6s")
	for _, f := range r.Found {
		row(f.Found, f.Drivers, f.Loss, f.Level, f.Evenness, f.Lowest, f.Hours, f.Litres, f.Pieces, dash(f.Price, 0))
		fmt.Fprintln(s, indented(4, words.OfferedAs(f)))
	}
	s.note(indented(2, words.SearchNote(r)))
}
