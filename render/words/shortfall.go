package words

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"pappus/layout/prose"
	"pappus/timing/search"
)

// limitWords say what a limit of a search asks of a design, with its number and unit for %s,
// and what the nearest to it is.
var limitWords = map[string]struct{ ask, nearest, unit string }{
	"search.drivers":       {"makes do with %s", "the fewest", "driver"},
	"search.least_drivers": {"takes %s", "the most", "driver"},
	"search.channels":      {"makes do with %s", "the fewest", "channel"},
	"search.width_mm":      {"is at most %s wide", "the least", "mm"},
	"search.height_mm":     {"is at most %s high", "the least", "mm"},
	"search.depth_mm":      {"is at most %s deep", "the least", "mm"},
	"search.mass_kg":       {"weighs at most %s", "the least", "kg"},
	"search.price":         {"costs at most %s", "the least", ""},
	"search.hours":         {"is printed within %s", "the least", "h"},
	"search.litres_least":  {"holds %s", "the most", "l"},
	"search.litres_most":   {"holds at most %s", "the least", "l"},
	"search.level_db":      {"is as loud as %s", "the most", "dB"},
	"search.lowest_hz":     {"plays down to %s", "the lowest", "Hz"},
	"search.pieces":        {"is printed in %s", "the fewest", "piece"},
}

// troubleWords say what a design has that the program warns of, by the code of the finding.
var troubleWords = map[string]string{
	"drivers_misfit":    "drivers that do not fit",
	"channels_unused":   "channels without use",
	"channels_fewer":    "fewer channels than asked for",
	"load_too_low":      "loads under the amplifier's minimum",
	"strings_too_long":  "strings longer than asked for",
	"excursion":         "cones that move too far",
	"driver_power":      "drivers that get more than they stand",
	"list_off_body":     "places off the body",
	"cannot_be_built":   "bodies that cannot be built",
	"cannot_be_planned": "spots that cannot be planned for",
}

// trouble says what a code stands for.
func trouble(code string) string {
	return cmp.Or(troubleWords[code], strings.ReplaceAll(code, "_", " "))
}

// manyOf are units that are counted.
var manyOf = map[string]string{"driver": "drivers", "channel": "channels", "piece": "pieces"}

// withUnit writes a number of a limit with its unit.
func withUnit(v float64, unit string) string {
	if many := manyOf[unit]; many != "" {
		return prose.Count(int(math.Round(v)), unit, many)
	}
	return strings.TrimSuffix(prose.Sprintf("%.4g ", v)+unit, " ")
}

// OutOfReach says which limits no design can keep, and what comes nearest; nothing where there
// are none.
func OutOfReach(r *search.Result) (said []string) {
	for _, s := range r.Short {
		if _, limit := limitWords[s.Key]; s.None && limit {
			said = append(said, "No design"+ofFlange(r)+" "+outOfReach(s)+".")
		} else if s.None {
			said = append(said, "Every design"+ofFlange(r)+" that keeps all limits has "+trouble(s.Key)+".")
		}
	}
	return said
}

// ofFlange says how large the drivers are that designs are made of.
func ofFlange(r *search.Result) string {
	if f := r.Job.Design.Driver.FlangeRadius; f > 0 {
		return prose.Sprintf(" of %.3g mm flanges", 2000*f)
	}
	return ""
}

// outOfReach goes on after "no design": what it cannot keep, and what comes nearest.
func outOfReach(s search.Shortfall) string {
	w := limitWords[s.Key]
	text := fmt.Sprintf(w.ask, withUnit(s.Asked, w.unit))
	if math.IsNaN(s.Nearest) {
		return text
	}
	if manyOf[w.unit] == "" {
		return text + ": " + withUnit(s.Nearest, w.unit) + " is " + w.nearest + by(s.By)
	}
	n := int(math.Round(s.Nearest))
	return text + ": " + fmt.Sprint(n) + " " + prose.Noun(n, "is", "are") + " " + w.nearest + by(s.By)
}

// by names a design that comes nearest to a limit.
func by(p search.Point) string {
	if p.Name == "" {
		return ""
	}
	return ", " + lower(p.Name)
}

// Binding says which limits bind, the hardest first: how many designs each alone takes away.
func Binding(r *search.Result) (said []string) {
	for _, s := range r.Short {
		if !s.None && s.Broken > 0 {
			said = append(said, fmt.Sprintf("%s: %s", prose.Count(s.Broken, "design", "designs"), binding(s)))
		}
	}
	return said
}

// binding names a limit by its key and value.
func binding(s search.Shortfall) string {
	if _, known := limitWords[s.Key]; !known {
		return trouble(s.Key)
	}
	if math.IsNaN(s.Asked) { // the search's own floor
		return strings.TrimPrefix(s.Key, "search.")
	}
	return prose.Sprintf("%s = %.4g", strings.TrimPrefix(s.Key, "search."), s.Asked)
}

// OfStart says how the design that was given stands; nothing where none was.
func OfStart(r *search.Result) string {
	s := r.Start
	switch {
	case s == nil:
		return ""
	case len(s.Broken) > 0:
		return "The design given does not keep all limits: it " + notKept(s.Broken[0]) + "."
	case s.OnFront:
		return fmt.Sprintf("The design given is on the front itself: nothing found is better than it in %s at once.", AimNames(r))
	case s.Better > 0:
		return fmt.Sprintf("Design %d is nowhere worse than the design given%s.", s.Better, gains(r, *s))
	}
	return "The design given is beaten by one that another stands for here; front.csv has it."
}

// notKept says what a design is, in place of what is asked.
func notKept(s search.Shortfall) string {
	w, known := limitWords[s.Key]
	if !known {
		return "has " + trouble(s.Key)
	}
	if manyOf[w.unit] != "" {
		return fmt.Sprintf("has %s, and %.0f %s asked", withUnit(s.Nearest, w.unit), s.Asked, prose.Noun(int(math.Round(s.Asked)), "is", "are"))
	}
	return fmt.Sprintf("has %s, and %s is asked", withUnit(s.Nearest, w.unit), withUnit(s.Asked, w.unit))
}

// gains says by how much a design is better than the one given.
func gains(r *search.Result, s search.Start) string {
	better, _ := against(r, r.Found[s.Better-1].Figures, s.Figures)
	if len(better) == 0 {
		return ""
	}
	return ": " + prose.Each(better)
}
