package table

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"pappus/layout/prose"
	"pappus/render/tape"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/omni"
	"pappus/timing/reverb"
)

// most is how many drivers are listed on the screen; the rest is in the CSV.
const most = 60

// shorter is by how much in m a path must be below the straight line to be shown so.
const shorter = 0.0005

// Screen writes what a plan found, for people: the spot, the delays, the
// figures before and after, what the rest of the room gets, and what to look out
// for. Nothing is wider than 80
// columns but names and warnings.
func Screen(w io.Writer, p *timing.Plan, survey *timing.Survey, colour bool) error {
	b := &strings.Builder{}
	s := style(colour)
	a := p.Array
	fmt.Fprintf(b, "%s\n", s.strong(a.Name))
	fmt.Fprintf(b, "%s on a body of %.0f mm radius (%s)\n%s\nsound travels at %.1f m/s; model %s, delays by %s\n\n",
		prose.Count(len(a.Mounts), "driver", "drivers"), 1000*a.Body.Radius, a.Body.Name, wrap("heard "+tape.Of(a, a.Spot).Full()), p.SpeedOfSound, a.Timing.Model, a.Timing.DelaysBy)
	if len(p.Channels) < len(a.Mounts) {
		channels(b, p, s)
	}
	drivers(b, p, s)
	fmt.Fprintln(b)
	figures(b, p, s)
	choices(b, p, s)
	around(b, p, survey, s)
	if p.Array.Woofer.Present {
		fmt.Fprintln(b)
	}
	if err := woofer(b, p, s); err != nil {
		return err
	}
	fmt.Fprintf(b, "\n%s\n", words.Found(p))
	for _, note := range words.Notes(p) {
		fmt.Fprintln(b, s.faint(wrap(note)))
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func channels(b *strings.Builder, p *timing.Plan, s style) {
	fmt.Fprintln(b, s.faint("channel  delay us  gain dB  drivers  strings   dc ohm  least ohm  W each"))
	for i, c := range p.Channels {
		fmt.Fprintf(b, "%7d %9.1f %8.1f %8d %4d of %-3d %6.1f %10s %7s\n",
			c.ID, 1e6*c.Delay, c.Gain, len(c.Mounts), c.Parallel, c.Series, c.DCOhm, dash(p.Banks[i].LowestOhm, 1), dash(p.Banks[i].DriverWatt, 2))
	}
	fmt.Fprintln(b, ProtectionWords(p))
	fmt.Fprintln(b)
}

// drivers lists drivers in two columns.
func drivers(b *strings.Builder, p *timing.Plan, s style) {
	const head = "driver path m straight  field delay us"
	n := min(len(p.Arrivals), most)
	half := (n + 1) / 2
	fmt.Fprintln(b, s.faint(head+"    "+head))
	for i := range half {
		fmt.Fprint(b, line(p, i))
		if j := i + half; j < n {
			fmt.Fprint(b, "    ", line(p, j))
		}
		fmt.Fprintln(b)
	}
	if left := len(p.Arrivals) - n; left > 0 {
		fmt.Fprintf(b, "and %d more in delays.csv\n", left)
	}
	fmt.Fprintln(b, s.faint("  a star marks drivers that the body hides from the spot\n"+
		"  metres by the path round the body, straight through it, and by the field"))
	if slices.ContainsFunc(p.Arrivals, func(a timing.Arrival) bool { return a.Path < a.Straight-shorter }) {
		fmt.Fprintln(b, s.faint("  path and field begin on the ball that stands for the body, straight at the\n"+
			"  driver itself: so a path can seem the shorter"))
	}
}

func line(p *timing.Plan, i int) string {
	r := p.Arrivals[i]
	star := " "
	if !r.Seen {
		star = "*"
	}
	return fmt.Sprintf("%5d%s %6.3f %8.3f %6.3f %8.1f", p.Array.Mounts[i].ID, star, r.Path, r.Straight, r.Heard()*p.SpeedOfSound, 1e6*r.Delay)
}

func figures(b *strings.Builder, p *timing.Plan, s style) {
	fmt.Fprintln(b, s.faint("direct sound      as built   with the delays"))
	fmt.Fprintf(b, "smear        %10.0f us   %12.0f us\n", 1e6*p.Unaligned.Smear, 1e6*p.Aligned.Smear)
	fmt.Fprintf(b, "comb onset   %13s   %15s\n", words.Onset(p.Unaligned.CombOnset), words.Onset(p.Aligned.CombOnset))
	for _, e := range words.Told(p.Echoes) {
		fmt.Fprintf(b, "\n%s\n", wrap(words.Echo(e)+" "+words.EchoCure(e, p.SpeedOfSound)))
	}
}

// choices says what each way of taking the delays would cost, had each driver
// its own.
func choices(b *strings.Builder, p *timing.Plan, s style) {
	if len(p.Choices) == 0 {
		return
	}
	fmt.Fprintln(b, "\n"+s.faint("one delay each, taken by   dB short of in step, per octave"))
	fmt.Fprintf(b, "%-22s", "")
	for _, centre := range p.Choices[0].Band {
		fmt.Fprintf(b, "%7s", band.Name(centre))
	}
	fmt.Fprintln(b)
	for _, c := range p.Choices {
		fmt.Fprintf(b, "%-22s", ways[c.By])
		for _, v := range c.Short {
			fmt.Fprintf(b, "%7.2f", max(v, 0))
		}
		fmt.Fprintln(b)
	}
}

// around says what the loudspeaker does beyond the spot.
func around(b *strings.Builder, p *timing.Plan, survey *timing.Survey, s style) {
	row := func(name string, value func(o timing.Octave) string) {
		fmt.Fprintf(b, "%-22s", name)
		for _, o := range survey.Octaves {
			fmt.Fprintf(b, "%7s", value(o))
		}
		fmt.Fprintln(b)
	}
	fmt.Fprintln(b, "\n"+s.faint("round the room            per octave, with the delays"))
	row("", func(o timing.Octave) string { return band.Name(o.Band) })
	row("directivity, dB", func(o timing.Octave) string { return fixed(o.Directivity, 1) })
	row("unevenness, dB", func(o timing.Octave) string { return fixed(o.Unevenness, 1) })
	row("within 3 dB, m2", func(o timing.Octave) string { return fixed(o.Reach, 2) })
	row("omni as built", func(o timing.Octave) string { return passed(survey.Omni.AsBuilt, o.Band) })
	row("omni with the delays", func(o timing.Octave) string { return passed(survey.Omni.Aligned, o.Band) })
	fmt.Fprintln(b, s.faint("  omni: even by ISO 3382-1, whose sources play all drivers in parallel; it and\n  the unevenness are of the level circle through the spot, not of up and down"))
	if len(survey.Reverb) > 0 {
		for _, r := range []struct {
			name string
			time func(reverb.Time) float64
		}{
			{"reverb Sabine, s", func(t reverb.Time) float64 { return t.Sabine }},
			{"reverb Eyring, s", func(t reverb.Time) float64 { return t.Eyring }},
		} {
			fmt.Fprintf(b, "%-22s", r.name)
			for _, t := range survey.Reverb {
				fmt.Fprintf(b, "%7s", fixed(r.time(t), 2))
			}
			fmt.Fprintln(b)
		}
		fmt.Fprintln(b, s.faint("  both times take the sound for even all over the room, which small rooms are not"))
	}
	fmt.Fprintln(b, words.InStep(survey.InStep, p.Array.Coverage.SmearLimit))
}

// passed says whether an octave passes as omnidirectional.
func passed(results []omni.Result, centre float64) string {
	for _, r := range results {
		switch {
		case r.Band != centre:
		case r.Pass:
			return "pass"
		default:
			return "fail"
		}
	}
	return "-"
}

// ways puts the ways of taking delays in words.
var ways = map[string]string{
	"straight": "straight line",
	"path":     "path round the body",
	"field":    "field",
	"peak":     "peak of the impulse",
}

// style writes text for a terminal, plain where it is false.
type style bool

func (s style) strong(t string) string { return s.wrap("1", t) }
func (s style) faint(t string) string  { return s.wrap("2", t) }
func (s style) alert(t string) string  { return s.wrap("33", t) }

func (s style) wrap(code, t string) string {
	if !s {
		return t
	}
	return "\x1b[" + code + "m" + t + "\x1b[0m"
}
