package table

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"pappus/render/words"
	"pappus/timing"
)

// Counts writes one row for each number of channels: what the design's way of
// splitting leaves at the spot, the smear with energy weights and plain. Where the
// plan's own channels are none of these, as for a layout by hand, they follow.
func Counts(w io.Writer, p *timing.Plan) error {
	rows := [][]string{{"channels", "split", "smear_us", "plain_smear_us", "comb_onset_hz", "longest_string"}}
	add := func(c timing.Count) {
		rows = append(rows, []string{strconv.Itoa(c.Channels), c.Split, fixed(1e6*c.Smear, 2), fixed(1e6*c.Plain, 2), hertz(c.CombOnset), strconv.Itoa(c.Longest)})
	}
	for _, c := range p.Counts {
		add(c)
	}
	if own, at := p.Own(); at < 0 {
		add(own)
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// hertz writes a frequency; nothing where there is none.
func hertz(f float64) string {
	if math.IsInf(f, 0) {
		return ""
	}
	return fixed(f, 1)
}

// mostCountRows is how many numbers of channels the screen shows at least.
const mostCountRows = 16

// traded tells whether a number of channels leaves more smear than one fewer does because
// its strings are shorter: the rule for the strings gives smear for level.
func traded(counts []timing.Count) bool {
	for i := range counts {
		if i > 0 && counts[i].Smear > counts[i-1].Smear && counts[i].Longest < counts[i-1].Longest {
			return true
		}
	}
	return false
}

// countScreen writes what more channels would bring: every number up to where more
// stop paying and to the plan's own, and the last.
func countScreen(b *strings.Builder, p *timing.Plan, s style) {
	fmt.Fprintln(b, s.faint("channels  smear us  comb onset  in a string"))
	row := func(name string, c timing.Count, mark string) {
		fmt.Fprintln(b, strings.TrimRight(fmt.Sprintf("%8s %9.1f %11s %12d %s", name, 1e6*c.Smear, words.Onset(c.CombOnset), c.Longest, mark), " "))
	}
	own, at := p.Own()
	smear, comb := p.Knees()
	shown := max(mostCountRows, smear, comb, at+1)
	for i, c := range p.Counts {
		mark := ""
		if i == at {
			mark = "<"
		}
		switch last := i == len(p.Counts)-1; {
		case i < shown || last:
			row(strconv.Itoa(c.Channels), c, mark)
		case i == shown:
			fmt.Fprintln(b, s.faint("       … plan writes all to counts.csv"))
		}
	}
	if at < 0 {
		name := strconv.Itoa(own.Channels)
		if len(p.Array.Channels) > 0 {
			name = "by hand"
		}
		row(name, own, "<")
	}
	note := "  < as planned"
	if by := p.CountedBy(); by != "arrival" {
		note += "; all split by " + by + ", as the design asks"
	} else if at < 0 {
		note += "; the others split by arrival, all drivers as loud"
	}
	fmt.Fprintln(b, s.faint(note))
	inString := "  in a string: the most drivers in series"
	if traded(p.Counts[:min(shown, len(p.Counts))]) {
		inString += "; where they are fewer, more channels\n  may leave more smear, for they play louder"
	}
	fmt.Fprintln(b, s.faint(inString))
	for _, line := range strings.Split(words.Counts(p), "\n") {
		fmt.Fprintln(b, wrap(line))
	}
	fmt.Fprintln(b)
}
