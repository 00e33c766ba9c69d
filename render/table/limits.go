package table

import (
	"fmt"
	"io"
	"math"
	"strings"

	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/limiter"
)

// Limits writes one row for each channel: what its limiters are set to, and what sets them.
func Limits(w io.Writer, channels []limiter.Channel) error {
	t := newSheet("channel", "rms_v:3", "peak_v:3", "rms_dbfs:2", "peak_dbfs:2", "heat_rms_v:3", "travel_peak_v:3", "tones_peak_v:3", "amplifier_peak_v:3")
	for _, c := range channels {
		t.add(c.ID, c.RMS, c.Peak, c.RMSFull, c.PeakFull, c.Heat, c.Travel, c.Tones, c.Clip)
	}
	return t.write(w)
}

// Music writes one row for each crest factor: the loudest that such music may be.
func Music(w io.Writer, music []limiter.Music) error {
	t := newSheet("crest_db:1", "rms_v:3", "channel", "limited_by", "spot_dba:1")
	for _, m := range music {
		t.add(m.Crest, m.Volt, m.Channel, words.LimitedBy(m.Volt, m.By), m.Level)
	}
	return t.write(w)
}

// Listening writes one row for each place: how loud music is at most, and how long one may hear it.
func Listening(w io.Writer, places []limiter.Place) error {
	t := newSheet("place", "level_dba:1", "at_work_hours_a_day:3", "adult_hours_a_week:3", "child_hours_a_week:3")
	for _, l := range places {
		t.add(place(l), l.Level, l.AtWork, l.Adult, l.Child)
	}
	return t.write(w)
}

// place is what a place is called.
func place(l limiter.Place) string {
	if l.Name == "" {
		return "the spot"
	}
	return l.Name
}

// LimitScreen writes for people what limiters are set to, how loud music of each crest factor may
// be, how long one may hear that of the one asked for, and which amplifier fits.
func LimitScreen(w io.Writer, p *timing.Plan, l limiter.Limits, colour bool) error {
	s := &screen{style: style(colour)}
	s.limiters(p, l.Channels)
	s.section("loudest music   crest dB    V RMS  limited by   at the spot")
	for _, m := range l.Music {
		level := "-"
		if !math.IsNaN(m.Level) {
			level = finite(m.Level, 0) + " dB(A)"
		}
		s.row("%-22s %4.1f %8.2f  %-11s %12s %s", words.Crest(m.Crest), m.Crest, m.Volt, words.LimitedBy(m.Volt, m.By), level, mark(m.Crest == l.Crest))
	}
	s.listening(l)
	fmt.Fprintln(s)
	s.say(words.AmplifierNeed(p, l.Channels, l.Crest))
	return s.to(w)
}

// limiters writes the channels' limiters, those that are alike together.
func (s *screen) limiters(p *timing.Plan, channels []limiter.Channel) {
	width := len("channel")
	groups := alike(channels)
	for _, g := range groups {
		width = max(width, len(runs(g.ids)))
	}
	width = min(width, 24)
	row := s.list(fmt.Sprintf("%-*s  RMS V  peak V  RMS dB  peak dB  peak set by", width, "channel"), "%-*s %6.2f %7.2f %7.1f %8.1f  %s")
	for _, g := range groups {
		c := g.of
		by := "the cones' travel"
		switch {
		case math.IsInf(c.Peak, 1):
			by = "not known"
		case c.Clip <= c.Travel:
			by = "the amplifier"
		}
		ids := runs(g.ids)
		for len(ids) > width { // a line of its own for what does not fit
			at := strings.LastIndex(ids[:width], ",") + 1
			if at == 0 {
				break
			}
			fmt.Fprintln(s, ids[:at])
			ids = strings.TrimSpace(ids[at:])
		}
		row(width, ids, c.RMS, c.Peak, c.RMSFull, c.PeakFull, by)
	}
	s.say(words.Limiters(p, channels))
	s.say(words.FullScale(p, channels))
}

// limited are channels whose limiters are set alike.
type limited struct {
	ids []int
	of  limiter.Channel
}

// alike puts channels together whose limiters differ by no more than can be read.
func alike(channels []limiter.Channel) []limited {
	var out []limited
	at := map[string]int{}
	for _, c := range channels {
		key := fmt.Sprintf("%.2f %.2f", c.RMS, c.Peak)
		i, found := at[key]
		if !found {
			i = len(out)
			at[key] = i
			out = append(out, limited{of: c})
		}
		out[i].ids = append(out[i].ids, c.ID)
	}
	return out
}

// listening writes how long one may hear the music at each place.
func (s *screen) listening(l limiter.Limits) {
	if len(l.Places) == 0 {
		return
	}
	width := len("the spot")
	for _, p := range l.Places {
		width = max(width, len([]rune(place(p))))
	}
	s.section(fmt.Sprintf("%-*s  at most      at work, a day    a week: adults    children", width, "there"))
	for _, p := range l.Places {
		s.row("%-*s %3.0f dB(A)  %18s %17s %11s", width, place(p), p.Level, words.Hours(p.AtWork), words.Hours(p.Adult), words.Hours(p.Child))
	}
	s.say(words.Ears)
}
