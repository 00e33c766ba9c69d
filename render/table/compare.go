package table

import (
	"fmt"
	"io"
	"strings"

	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/omni"
)

// Compare writes designs side by side, one line each, for people.
func Compare(w io.Writer, designs []timing.Candidate, colour bool) error {
	b, s := &strings.Builder{}, style(colour)
	fmt.Fprintln(b, s.faint("                         drivers  smear us         comb onset       uneven  3 dB area"))
	fmt.Fprintln(b, s.faint("                                  before  after    before  after       dB         m2"))
	for _, d := range designs {
		p := d.Plan
		fmt.Fprintf(b, "%-25s%7d %7.0f %6.0f %9s %8s %6.1f %9.2f\n", shorten(p.Array.Name, 24), len(p.Array.Mounts),
			1e6*p.Unaligned.Smear, 1e6*p.Aligned.Smear, words.Onset(p.Unaligned.CombOnset), words.Onset(p.Aligned.CombOnset),
			d.Unevenness, d.Within3DB)
	}
	fmt.Fprintln(b, "\n"+s.faint("evenly all round by ISO 3382-1, up to   as built  with the delays"))
	for _, d := range designs {
		fmt.Fprintf(b, "%-39s %9s %16s\n", shorten(d.Plan.Array.Name, 38), upTo(d.Omni.AsBuilt), upTo(d.Omni.Aligned))
	}
	fmt.Fprintln(b, s.faint("  "+compareFoot))
	_, err := io.WriteString(w, b.String())
	return err
}

// compareFoot says what the columns are of.
const compareFoot = `before, after: without and with the delays, of the direct sound
  uneven: over angle, on the level circle through the spot; 3 dB area: at the
  ears' height, where the level is within 3 dB of the spot's; both with the
  delays, mean of 500 Hz to 4 kHz`

// upTo names the highest octave up to which all pass.
func upTo(results []omni.Result) string {
	if last := timing.UpTo(results); last > 0 {
		return band.Hertz(last)
	}
	return "none"
}

func shorten(name string, width int) string {
	if r := []rune(name); len(r) > width {
		return string(r[:width-1]) + "…"
	}
	return name
}
