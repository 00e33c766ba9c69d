package table

import (
	"fmt"
	"io"
	"slices"

	"pappus/layout/prose"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/omni"
	"pappus/timing/reverb"
)

// Delays writes one row for each driver: where it sits, how far and when it is
// heard at the spot by the path, by the straight line, by the field and by the
// peak of the impulse response (empty where not computed), and its delay, as a time and as the way
// that sound travels in it.
func Delays(w io.Writer, p *timing.Plan) error {
	t := newSheet("driver", "channel", "x_mm:2", "y_mm:2", "z_mm:2", "path_m:5", "straight_path_m:5",
		"arrival_us:2", "straight_arrival_us:2", "field_arrival_us:2", "peak_arrival_us:2", "delay_us:2", "delay_mm:2", "level_db:2", "seen")
	for i, r := range p.Arrivals {
		m := p.Array.Mounts[i]
		t.add(m.ID, p.Channels[r.Channel].ID, 1000*m.Point.X, 1000*m.Point.Y, 1000*m.Point.Z, r.Path, r.Straight,
			1e6*r.Time, 1e6*r.Straight/p.SpeedOfSound, 1e6*r.Field, 1e6*p.Peaks[i], 1e6*r.Delay, 1000*r.Delay*p.SpeedOfSound, r.Level, r.Seen)
	}
	return t.write(w)
}

// Choices writes one row for each way of taking delays: by how many dB each
// octave at the spot falls short of all drivers in step.
func Choices(w io.Writer, p *timing.Plan) error {
	head := []string{"delays_by"}
	for _, centre := range band.Octaves() {
		head = append(head, "short_"+band.Name(centre)+"_db:3")
	}
	t := newSheet(head...)
	for _, c := range p.Choices {
		row := []any{c.By}
		for _, short := range c.Short {
			row = append(row, short)
		}
		t.add(row...)
	}
	return t.write(w)
}

// Octaves writes one row for each octave band: what the loudspeaker does beyond
// the spot.
func Octaves(w io.Writer, s *timing.Survey) error {
	t := newSheet("octave_hz:1", "directivity_db:2", "power_db:2", "unevenness_db:2", "within_3_db_m2:4",
		"omni_limit_db:0", "omni_as_built_deviation_db:2", "omni_as_built_pass", "omni_deviation_db:2", "omni_pass", "reverb_sabine_s:3", "reverb_eyring_s:3", "spatial_as_built_db:2", "spatial_db:2")
	for b, o := range s.Octaves {
		row := []any{o.Band, o.Directivity, o.Power, o.Unevenness, o.Reach, nil, nil, nil, nil, nil, nil, nil, s.Spatial.AsBuilt.Octave[b], s.Spatial.Aligned.Octave[b]}
		for i, results := range [][]omni.Result{s.Omni.AsBuilt, s.Omni.Aligned} {
			for _, r := range results {
				if r.Band == o.Band {
					row[5], row[6+2*i], row[7+2*i] = r.Limit, r.Deviation, r.Pass
				}
			}
		}
		if len(s.Reverb) > 0 {
			row[10], row[11] = s.Reverb[b].Sabine, s.Reverb[b].Eyring
		}
		t.add(row...)
	}
	return t.write(w)
}

// Screen writes what a plan found, for people: the spot, the delays, the
// figures before and after, what the rest of the room gets, and what to look out
// for. Nothing is wider than 80
// columns but names and warnings.
func Screen(w io.Writer, p *timing.Plan, survey *timing.Survey, colour bool) error {
	s := &screen{style: style(colour)}
	a := p.Array
	fmt.Fprintf(s, "%s\n", s.strong(a.Name))
	on := "a body"
	if n := len(a.Bodies()); n > 1 {
		on = fmt.Sprintf("%d bodies", n)
	}
	fmt.Fprintf(s, "%s on %s of %.0f mm radius (%s)\n%s\nsound travels at %.1f m/s; model %s, delays by %s\n\n",
		prose.Count(len(a.Mounts), "driver", "drivers"), on, 1000*a.Body.Radius, a.Body.Name, Wrap(words.Where(p)), p.SpeedOfSound, a.Timing.Model, a.Timing.DelaysBy)
	if len(p.Channels) < len(a.Mounts) {
		s.channels(p)
	}
	s.drivers(p)
	s.figures(p)
	s.seats(p)
	s.choices(p)
	s.around(p, survey)
	if p.Array.Woofer.Present {
		fmt.Fprintln(s)
	}
	if err := s.woofer(p); err != nil {
		return err
	}
	fmt.Fprintf(s, "\n%s\n", words.Found(p))
	for _, note := range words.Notes(p) {
		s.note(Wrap(note))
	}
	return s.to(w)
}

func (s *screen) channels(p *timing.Plan) {
	row := s.list("channel  delay us    mm  gain dB  drivers  strings   dc ohm  least ohm  W each", "%7d %9.1f %5.0f %8.1f %8d %4d of %-3d %6.1f %10.1f %7.2f")
	for i, c := range p.Channels {
		row(c.ID, 1e6*c.Delay, 1000*c.Delay*p.SpeedOfSound, c.Gain, len(c.Mounts), c.Parallel, c.Series, c.DCOhm, p.Banks[i].LowestOhm, p.Banks[i].DriverWatt)
	}
	s.protection(p)
	fmt.Fprintln(s)
}

// protection says which high-pass to set and how loud it may be.
func (s *screen) protection(p *timing.Plan) {
	s.say(words.HighPass(p))
	s.say(words.Noise(p))
}

// mostDrivers is how many drivers are listed on the screen; the rest is in the CSV.
const mostDrivers = 60

// shorter is by how much in m a path must be below the straight line to be shown so.
const shorter = 0.0005

// drivers lists drivers in two columns.
func (s *screen) drivers(p *timing.Plan) {
	const head = "  no path m through field delay us   mm"
	n := min(len(p.Arrivals), mostDrivers)
	half := (n + 1) / 2
	s.note(head + "  " + head)
	for i := range half {
		line := driver(p, i)
		if j := i + half; j < n {
			line += "  " + driver(p, j)
		}
		fmt.Fprintln(s, line)
	}
	if left := len(p.Arrivals) - n; left > 0 {
		fmt.Fprintf(s, "and %d more in delays.csv\n", left)
	}
	s.note("  a star marks drivers that the body hides from the spot\n" +
		"  metres by the path round the body, straight through it, and by the field;\n" +
		"  mm: how far sound travels in the delay")
	if slices.ContainsFunc(p.Arrivals, func(a timing.Arrival) bool { return a.Path < a.Straight-shorter }) {
		s.note(words.FromTheBall(p))
	}
	fmt.Fprintln(s)
}

func driver(p *timing.Plan, i int) string {
	r := p.Arrivals[i]
	star := " "
	if !r.Seen {
		star = "*"
	}
	return fmt.Sprintf("%4d%s%6.3f%8.3f%6.3f%9.1f%5.0f", p.Array.Mounts[i].ID, star, r.Path, r.Straight, r.Heard()*p.SpeedOfSound, 1e6*r.Delay, 1000*r.Delay*p.SpeedOfSound)
}

func (s *screen) figures(p *timing.Plan) {
	s.note("direct sound      as built   with the delays")
	fmt.Fprintf(s, "smear        %10.0f us   %12.0f us\n", 1e6*p.Unaligned.Smear, 1e6*p.Aligned.Smear)
	fmt.Fprintf(s, "comb onset   %13s   %15s\n", words.Onset(p.Unaligned.CombOnset), words.Onset(p.Aligned.CombOnset))
	fmt.Fprintf(s, "loss         %10s dB   %12s dB\n", finite(p.Unaligned.Loss, 2), finite(p.Aligned.Loss, 2))
	for _, e := range words.Told(p.Echoes) {
		fmt.Fprintf(s, "\n%s\n", Wrap(words.Echo(e)+" "+words.EchoCure(e, p.SpeedOfSound)))
	}
}

// choices says what each way of taking the delays would cost, had each driver
// its own.
func (s *screen) choices(p *timing.Plan) {
	if len(p.Choices) == 0 {
		return
	}
	s.section("one delay each, taken by   dB short of in step, per octave")
	perOctave(s, "", p.Choices[0].Band, band.Name)
	for _, c := range p.Choices {
		perOctave(s, words.Way(c.By), c.Short, func(short float64) string { return finite(max(short, 0), 2) })
	}
}

// around says what the loudspeaker does beyond the spot.
func (s *screen) around(p *timing.Plan, survey *timing.Survey) {
	s.section("round the room            per octave, with the delays")
	all := survey.Octaves
	perOctave(s, "", all, func(o timing.Octave) string { return band.Name(o.Band) })
	perOctave(s, "directivity, dB", all, func(o timing.Octave) string { return finite(o.Directivity, 1) })
	perOctave(s, "unevenness, dB", all, func(o timing.Octave) string { return finite(o.Unevenness, 1) })
	perOctave(s, "within 3 dB, m2", all, func(o timing.Octave) string { return finite(o.Reach, 2) })
	perOctave(s, "omni as built", all, func(o timing.Octave) string { return passed(survey.Omni.AsBuilt, o.Band) })
	perOctave(s, "omni with the delays", all, func(o timing.Octave) string { return passed(survey.Omni.Aligned, o.Band) })
	s.note("  omni: even by ISO 3382-1, whose sources play all drivers in parallel; it and\n  the unevenness are of the level circle through the spot, not of up and down")
	perOctave(s, "sphere as built, dB", survey.Spatial.AsBuilt.Octave, decibel)
	perOctave(s, "sphere delayed, dB", survey.Spatial.Aligned.Octave, decibel)
	s.note(indented(2, words.Spatial(survey.Spatial)))
	if len(survey.Reverb) > 0 {
		perOctave(s, "reverb Sabine, s", survey.Reverb, func(t reverb.Time) string { return finite(t.Sabine, 2) })
		perOctave(s, "reverb Eyring, s", survey.Reverb, func(t reverb.Time) string { return finite(t.Eyring, 2) })
		s.note("  both times take the sound for even all over the room, which small rooms are not")
	}
	fmt.Fprintln(s, words.InStep(survey.InStep, p.Array.Coverage.SmearLimit))
}

// decibel writes a level to a tenth, a dash where there is none.
func decibel(v float64) string { return dash(v, 1) }

// perOctave writes a row with a value for each octave under a name.
func perOctave[T any](s *screen, name string, octaves []T, value func(T) string) {
	fmt.Fprintf(s, "%-22s", name)
	for _, o := range octaves {
		fmt.Fprintf(s, "%7s", value(o))
	}
	fmt.Fprintln(s)
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

// woofer says what the woofer is to be set to, and what to look out for; nothing where there
// is none.
func (s *screen) woofer(p *timing.Plan) error {
	if !p.Array.Woofer.Present {
		return nil
	}
	w, err := timing.WithWoofer(&p.Spot)
	if err != nil {
		return err
	}
	s.say(words.WooferSet(w))
	s.say(words.WooferMeets(w, p.Array.Woofer.Gain))
	s.note(Wrap(words.WooferNote))
	return nil
}

func shorten(name string, width int) string {
	if r := []rune(name); len(r) > width {
		return string(r[:width-1]) + "…"
	}
	return name
}
