package table

import (
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"pappus/render/words"
	"pappus/timing"
)

// Front writes one row for each split that no other beats in both smear and level, from
// the shortest strings to the least smear; only a head where the design leaves no choice.
func Front(w io.Writer, p *timing.Plan) error {
	rows := [][]string{{"longest_string", "smear_us", "comb_onset_hz", "louder_db", "driver_v", "limited_by", "least_ohm",
		"most_drivers", "in_step", "rule", "chosen"}}
	for _, f := range p.Front {
		rows = append(rows, []string{strconv.Itoa(f.Longest), fixed(1e6*f.Smear, 2), hertz(f.CombOnset), fixed(f.Louder, 2),
			fixed(f.DriverVolt, 4), f.Limit(), fixed(f.LeastOhm, 3), strconv.Itoa(f.Most),
			strconv.FormatBool(f.InStep), strconv.FormatBool(f.Rule), strconv.FormatBool(f.Chosen)})
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// front writes for people what shorter strings cost and bring, and which the plan has.
// Where there is one split alone there is nothing to weigh.
func front(b *strings.Builder, p *timing.Plan, s style) {
	if len(p.Front) < 2 {
		return
	}
	fmt.Fprintln(b, s.faint("strings of  smear us  comb onset  louder dB  V each  least ohm"))
	for _, f := range p.Front {
		volt := fixed(f.DriverVolt, 2)
		if f.ByDriver {
			volt += "*"
		}
		fmt.Fprintln(b, strings.TrimRight(fmt.Sprintf("%10s %9.1f %11s %10.1f %7s %10.2f %s", longest(f.Longest), 1e6*f.Smear, words.Onset(f.CombOnset),
			f.Louder, volt, f.LeastOhm, frontMark(f)), " "))
	}
	note := "  < as planned"
	if slices.ContainsFunc(p.Front, func(f timing.Strung) bool { return f.ByDriver }) {
		note += "; * all that a driver stands"
	}
	fmt.Fprintln(b, s.faint(note))
	fmt.Fprintln(b, wrap(words.Front(p)))
	fmt.Fprintln(b)
}

// longest writes the length of the longest strings.
func longest(drivers int) string {
	if drivers == 1 {
		return "1"
	}
	return "up to " + strconv.Itoa(drivers)
}

func frontMark(f timing.Strung) string {
	switch {
	case f.Chosen:
		return "<"
	case f.Rule:
		return "the rule's"
	case !f.InStep:
		return "out of step"
	}
	return ""
}
