package table

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"pappus/layout/prose"
	"pappus/render/words"
	"pappus/timing"
)

// manyWays is how many ways of stringing with unequal strings that the amplifier allows
// a screen shows of each size, from the lowest load; the table has them all.
const manyWays = 4

// Arrangements writes one row for each way of stringing each channel's drivers,
// at the design's voltage.
func Arrangements(w io.Writer, stringings []timing.Stringing) error {
	rows := [][]string{{"drivers", "channels", "strings", "unequal", "chosen", "nominal_ohm", "dc_ohm", "lowest_ohm", "lowest_hz",
		"amplifier_w", "least_driver_w", "most_driver_w", "refused"}}
	for _, s := range stringings {
		for _, o := range s.Options {
			refused := ""
			if o.Refused != nil {
				refused = o.Refused.Error()
			}
			rows = append(rows, []string{strconv.Itoa(s.Drivers), join(s.Channels), join(o.Lengths()), strconv.FormatBool(!o.IsEqual()), strconv.FormatBool(o.Chosen),
				fixed(o.NominalOhm, 3), fixed(o.DCOhm, 3), finite(o.LowestOhm, 3), finite(o.LowestHz, 0),
				fixed(o.Watt, 4), fixed(o.LeastWatt, 4), fixed(o.MostWatt, 4), refused})
		}
	}
	return csv.NewWriter(w).WriteAll(rows)
}

func join(numbers []int) string {
	words := make([]string, len(numbers))
	for i, n := range numbers {
		words[i] = strconv.Itoa(n)
	}
	return strings.Join(words, " ")
}

// ArrangementScreen writes the same for people: all equal strings and the first
// few unequal ones of each size, and what the wire takes.
func ArrangementScreen(w io.Writer, p *timing.Plan, stringings []timing.Stringing, colour bool) error {
	b, s := &strings.Builder{}, style(colour)
	fmt.Fprintln(b, s.faint("ways to string     dc ohm  least ohm   amp W  W each"))
	for _, group := range stringings {
		word := prose.Noun(len(group.Channels), "channel", "channels")
		fmt.Fprintf(b, "%d %s (%s %s)\n", group.Drivers, prose.Noun(group.Drivers, "driver", "drivers"), word, runs(group.Channels))
		allowed, refused := 0, 0
		for _, o := range group.Options {
			if !o.IsEqual() {
				if o.Refused != nil {
					refused++
					continue
				}
				if allowed++; allowed > manyWays {
					continue
				}
			}
			arrangementLine(b, s, o)
		}
		fmt.Fprint(b, unshown(allowed-manyWays, refused))
	}
	fmt.Fprintln(b, s.faint(prose.Sprintf("  < as planned; power at %.3g V (RMS), least and most of a driver", p.Array.Wiring.Voltage)))
	if advice := words.Wire(p); advice != "" {
		fmt.Fprintln(b, wrap(advice))
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// unshown says how many ways with unequal strings a screen leaves out: that are allowed,
// and that load the amplifier too much.
func unshown(allowed, refused int) string {
	switch {
	case allowed > 0 && refused > 0:
		return fmt.Sprintf("  and %d more with unequal strings, beside %d under the minimum\n", allowed, refused)
	case allowed > 0:
		return fmt.Sprintf("  and %d more with unequal strings\n", allowed)
	case refused > 0:
		return fmt.Sprintf("  and %d with unequal strings under the minimum\n", refused)
	}
	return ""
}

// runs writes numbers that rise with those in a row together: 1 to 3, 7, 9.
func runs(numbers []int) string {
	var words []string
	for from := 0; from < len(numbers); {
		to := from
		for to+1 < len(numbers) && numbers[to+1] == numbers[to]+1 {
			to++
		}
		switch word := strconv.Itoa(numbers[from]); {
		case to > from+1:
			words = append(words, fmt.Sprintf("%s to %d", word, numbers[to]))
		default:
			to = from
			words = append(words, word)
		}
		from = to + 1
	}
	return strings.Join(words, ", ")
}

func arrangementLine(b *strings.Builder, s style, o timing.Option) {
	watt := fixed(o.MostWatt, 3)
	if !o.IsEqual() {
		watt = fixed(o.LeastWatt, 3) + " to " + watt
	}
	end := ""
	if o.Chosen {
		end = " <"
	}
	if o.Refused != nil {
		end += " " + s.alert("under the minimum")
	}
	fmt.Fprintf(b, "  %-16s %6.2f %10s %7.2f  %s%s\n", short(o), o.DCOhm, dash(o.LowestOhm, 2), o.Watt, watt, end)
}

// short names an arrangement in few letters: 3 of 2, or 2 of 3 + 1 of 2.
func short(o timing.Option) string {
	parts := make([]string, len(o.Arrangement))
	for i, g := range o.Arrangement {
		parts[i] = fmt.Sprintf("%d of %d", g.Parallel, g.Series)
	}
	return strings.Join(parts, " + ")
}
