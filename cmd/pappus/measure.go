package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"pappus/layout"
	"pappus/layout/prose"
	"pappus/preview/decode"
	sound "pappus/preview/sweep"
	"pappus/render/document"
	"pappus/render/figure"
	"pappus/render/table"
	"pappus/timing"
	"pappus/timing/recording"
	"pappus/timing/verdict"

	"github.com/spf13/cobra"
	"gonum.org/v1/gonum/spatial/r3"
)

// measuring says what was recorded, and how it is looked at.
type measuring struct {
	sweep         sound.Options
	in, folder    string
	reference     string
	built, gated  bool
	gateMS        float64
	microphone    string
	lowHz, highHz float64
	positions     []string
}

func newMeasure(f *flags) *cobra.Command {
	var m measuring
	c := &cobra.Command{
		Use:   "measure [DESIGN.toml] -i RECORDINGS",
		Short: "Hold recordings of the sweep against the plan: faults, delays, levels",
		Long: "Hold recordings of the sweep against the plan. The folder holds WAV files of what \"pappus sweep\"\n" +
			"wrote: all.wav with every channel on, channel_1.wav and so on with one channel on; either may\n" +
			"be left out. Further takes of a channel are channel_1_2.wav, channel_1_3.wav; their mean counts,\n" +
			"and how far they scatter. Stereo files have the microphone left and a wire from the player right; channels\n" +
			"are only compared in time with that wire.",
		Args: oneDesign,
		RunE: func(c *cobra.Command, args []string) error {
			return measure(c, f, first(args), m)
		},
	}
	addSweepFlags(c, &m.sweep)
	flag := c.Flags()
	flag.StringVarP(&m.in, "input", "i", "", "folder with the recordings")
	flag.StringVarP(&m.folder, "output", "o", "measured", "folder for tables and pictures")
	flag.StringVar(&m.reference, "reference", "right", "where the wire from the player is: right, left or none")
	flag.BoolVar(&m.built, "as-built", false, "no delays were set while recording")
	flag.BoolVar(&m.gated, "gated", false, "leave echoes out of the level, against the array alone")
	flag.Float64Var(&m.gateMS, "gate-ms", 0, "for how long the gate listens; not given: 10 ms")
	flag.StringVar(&m.microphone, "microphone", "", "the microphone's correction, a CSV of frequency_hz,level_db")
	flag.Float64Var(&m.lowHz, "match-low-hz", 0, "levels are matched from here; not given: 500 Hz")
	flag.Float64Var(&m.highHz, "match-high-hz", 0, "to here; not given: 4 kHz")
	flag.StringArrayVar(&m.positions, "also", nil, "another recording of all channels and where it was made: FILE.wav=x,y,z in metres; all are averaged")
	return c
}

func measure(c *cobra.Command, f *flags, design string, m measuring) error {
	if err := among("reference", m.reference, references); err != nil {
		return err
	}
	for _, text := range m.positions {
		if _, _, err := also(text); err != nil {
			return err
		}
	}
	if m.in == "" {
		return errors.New("--input: a folder with recordings is needed; \"pappus sweep --rehearse -o rehearsal\" makes some up")
	}
	if info, err := os.Stat(m.in); err != nil {
		return fmt.Errorf("--input %s: %w", m.in, prose.Reason(err))
	} else if !info.IsDir() {
		return fmt.Errorf("--input %s: it is a file; name the folder with the recordings", m.in)
	}
	p, err := f.planned(design)
	if err != nil {
		return err
	}
	s, err := sound.New(p, m.sweep)
	if err != nil {
		return err
	}
	options, err := m.options()
	if err != nil {
		return err
	}
	said := startProgress(c.ErrOrStderr(), f.quiet)
	defer said.stop()
	found, err := takes{measuring: m, signal: s, options: options, say: said.say, read: decode.Channels}.judge(p)
	if errors.Is(err, errNoRecordings) {
		err = fmt.Errorf("--input %s: %w", m.in, err)
	}
	if err != nil {
		return err
	}
	if err := addAll(m.folder, found.files(p)); err != nil {
		return err
	}
	said.stop()
	out := c.OutOrStdout()
	switch {
	case f.json:
		return document.Write(out, document.OfMeasured(p, found.Judged))
	case f.quiet:
		return nil
	}
	if err := f.heed(out, p); err != nil {
		return err
	}
	if err := found.screen(out, p); err != nil {
		return err
	}
	_, err = fmt.Fprintf(out, "\nTables and pictures are in %s.\n", m.folder)
	return err
}

// options returns how recordings are looked at.
func (m measuring) options() (recording.Options, error) {
	o := recording.Options{Gate: m.gateMS / 1000}
	if m.microphone == "" {
		return o, nil
	}
	correction, err := layout.ReadMicrophone(m.microphone)
	if err != nil {
		return o, fmt.Errorf("--microphone: %w", err)
	}
	for _, line := range correction {
		o.Microphone = append(o.Microphone, recording.Correction(line))
	}
	return o, nil
}

// played returns what the array did while it was recorded.
func (m measuring) played() timing.Case {
	if m.built {
		return timing.AsBuilt
	}
	return timing.Aligned
}

// takes reads recordings and judges them.
type takes struct {
	measuring
	signal  sound.Signal
	options recording.Options
	say     func(string)
	// read returns a recording's channels; fs.ErrNotExist where there is none.
	read func(path string) (rate int, channels [][]float64, err error)
}

// found is what recordings came to.
type found struct {
	document.Judged
	gated bool
	words []string // what is wrong with the recordings, beside what Channels has
	notes []string // what else to know
}

// judge holds all recordings against the plan. One that cannot be used is named, and the
// others are judged; without any that can the first one's error is returned.
func (t takes) judge(p *timing.Plan) (found, error) {
	out := found{gated: t.gated}
	ch, err := t.channels(p)
	if err != nil {
		return out, err
	}
	whole, err := t.analyse(filepath.Join(t.in, allName+".wav"), filepath.Join(t.in, sound.WholeName+".wav"))
	switch {
	case err == nil || errors.Is(err, fs.ErrNotExist):
	case ch.heard == 0 || isCut(err):
		return out, err
	default:
		out.words = append(out.words, fmt.Sprintf("the recording of all channels is not judged: %v", err))
	}
	if whole == nil && ch.heard == 0 {
		if ch.err != nil {
			return out, ch.err
		}
		return out, fmt.Errorf("%w: has neither %s.wav nor %s.wav", errNoRecordings, allName, channelName(p.Channels[0].ID))
	}
	if len(p.Channels) == 1 && ch.heard == 1 && whole == nil {
		whole = ch.measured[0] // one channel is all there is
	}
	out.words = append(out.words, ch.words...)
	if ch.heard > 0 && len(p.Channels) > 1 {
		v, err := verdict.OfChannels(p, ch.measured, verdict.Setting{Case: t.played(), Missing: ch.missing, Repeats: ch.repeats, Whole: whole})
		switch {
		case err == nil:
			v.Words, out.words = append(out.words, v.Words...), nil
			out.notes = v.Notes
			out.Channels = &v
		case whole == nil:
			return out, err
		default:
			out.words = append(out.words, fmt.Sprintf("the channels are not compared: %v", err))
		}
	}
	if whole == nil {
		return out, nil
	}
	if out.Channels != nil && out.Channels.OtherCase {
		out.notes = append(out.notes, "the level of the whole array is not judged before it is clear whether the delays were set")
		return out, nil
	}
	v, err := t.level(p, *whole)
	if err != nil {
		return out, err
	}
	out.Level, out.Whole = &v, whole
	return out, nil
}

// errNoRecordings is when there is nothing to judge.
var errNoRecordings = errors.New("no recordings")

// isCut tells whether an error says that nobody waits for an answer any more.
func isCut(err error) bool {
	return errors.Is(err, context.Canceled) || errors.Is(err, context.DeadlineExceeded)
}

// singles are the recordings of single channels.
type singles struct {
	measured []*recording.Measured   // nil: nothing is heard, or missing
	repeats  [][]*recording.Measured // further recordings of each
	missing  []int                   // channels without a recording that can be used
	heard    int
	words    []string // which those are, and why
	err      error    // the first reason
}

// channels analyses the recordings of single channels. Where there is none at all nothing
// is missing: channels were not recorded one by one.
func (t takes) channels(p *timing.Plan) (singles, error) {
	out := singles{measured: make([]*recording.Measured, len(p.Channels)), repeats: make([][]*recording.Measured, len(p.Channels))}
	absent := 0
	for i, c := range p.Channels {
		name := channelName(c.ID) + ".wav"
		m, err := t.analyse(filepath.Join(t.in, name), filepath.Join(t.in, sound.ChannelName(c.ID)+".wav"))
		switch {
		case err == nil:
			out.measured[i] = m
			out.heard++
			if err := t.again(&out, i, c.ID); err != nil {
				return out, err
			}
			continue
		case isCut(err):
			return out, err
		case errors.Is(err, recording.ErrQuiet):
			continue
		case errors.Is(err, fs.ErrNotExist):
			absent++
			out.words = append(out.words, fmt.Sprintf("there is no recording of channel %d (%s), so nothing is told of it", c.ID, name))
		default:
			out.words = append(out.words, fmt.Sprintf("nothing is told of channel %d: %v", c.ID, err))
			if out.err == nil {
				out.err = err
			}
		}
		out.missing = append(out.missing, i)
	}
	if absent == len(p.Channels) {
		out.missing, out.words = nil, nil
	}
	return out, nil
}

// again analyses what else was recorded of a channel: channel_1_2.wav and so on. One that
// cannot be used is named, and the others are judged.
func (t takes) again(out *singles, i, id int) error {
	for take := 2; ; take++ {
		m, err := t.analyse(filepath.Join(t.in, takeName(id, take)))
		switch {
		case err == nil:
			out.repeats[i] = append(out.repeats[i], m)
		case isCut(err):
			return err
		case errors.Is(err, fs.ErrNotExist):
			return nil
		default:
			out.words = append(out.words, fmt.Sprintf("take %d of channel %d does not count: %v", take, id, err))
		}
	}
}

// takeName returns how a further recording of a channel is called.
func takeName(id, take int) string { return fmt.Sprintf("%s_%d.wav", channelName(id), take) }

// analyse reads and analyses one recording, which has the first of some names that is there.
func (t takes) analyse(paths ...string) (*recording.Measured, error) {
	var path string
	var rate int
	var channels [][]float64
	err := fs.ErrNotExist
	for _, path = range paths {
		t.say("reading " + path)
		if rate, channels, err = t.read(path); !errors.Is(err, fs.ErrNotExist) {
			break
		}
	}
	if err != nil {
		return nil, err
	}
	take := recording.Take{Rate: float64(rate), Samples: channels[0]}
	switch {
	case len(channels) == 1 || t.reference == "none":
	case t.reference == "left":
		take.Samples, take.Reference = channels[1], channels[0]
	default:
		take.Reference = channels[1]
	}
	m, err := recording.Analyse(take, t.signal.Sweep, t.options)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	return &m, nil
}

// references are where the wire from the player may be.
var references = []string{"right", "left", "none"}

// also reads which recording was made where.
func also(text string) (path string, where r3.Vec, err error) {
	path, place, ok := strings.Cut(text, "=")
	if where, err = point(place); !ok || err != nil || path == "" {
		return path, where, fmt.Errorf("--also %s: must be FILE.wav=x,y,z in metres, as corner.wav=1.2,-0.4,0.6", text)
	}
	return path, where, nil
}

// level judges the level of the whole array at one or more places.
func (t takes) level(p *timing.Plan, at recording.Measured) (verdict.Level, error) {
	positions := []verdict.Position{{At: p.Array.Spot, Measured: at}}
	for _, text := range t.positions {
		path, where, err := also(text)
		if err != nil {
			return verdict.Level{}, err
		}
		m, err := t.analyse(path)
		if err != nil {
			return verdict.Level{}, err
		}
		positions = append(positions, verdict.Position{At: where, Measured: *m})
	}
	return verdict.OfLevel(p, positions, verdict.LevelSetting{Case: t.played(), Low: t.lowHz, High: t.highHz, Gated: t.gated})
}

// files lists tables and pictures of what was found.
func (f found) files(p *timing.Plan) []file {
	var out []file
	if f.Channels != nil {
		out = append(out, file{"channels.csv", func(w io.Writer) error { return table.MeasuredChannels(w, p, *f.Channels) }})
	}
	if f.Level == nil {
		return out
	}
	level, whole := *f.Level, *f.Whole
	out = append(out,
		file{"bands.csv", func(w io.Writer) error { return table.MeasuredBands(w, level, whole) }},
		file{"response.csv", func(w io.Writer) error { return table.MeasuredResponse(w, whole) }})
	impulse := []figure.Sound{{Words: "measured at the spot", Samples: whole.Impulse}}
	pictures := map[string]func(io.Writer, figure.Format) error{
		"measured": func(w io.Writer, f figure.Format) error { return figure.Measured(w, f, p, level) },
		"impulse": func(w io.Writer, f figure.Format) error {
			return figure.Energy(w, f, p.Array.Name+": measured, what is heard of a click", impulse, int(whole.Rate))
		},
	}
	if whole.HasHarmonics() {
		pictures["harmonics"] = func(w io.Writer, f figure.Format) error { return figure.Harmonics(w, f, p, whole) }
	}
	for _, name := range slices.Sorted(maps.Keys(pictures)) {
		for _, format := range []figure.Format{figure.PNG, figure.SVG} {
			out = append(out, file{name + "." + string(format), func(w io.Writer) error { return pictures[name](w, format) }})
		}
	}
	return out
}

// sentences says what is wrong with the recordings, how the whole array measured, and what
// else to know.
func (f found) sentences() []string {
	var out []string
	for _, words := range f.words {
		out = append(out, "Look out: "+words)
	}
	notes := f.notes
	if f.Level != nil {
		out = append(out, table.LevelMeasuredWords(*f.Level, *f.Whole, f.gated))
		notes = append(slices.Clone(notes), f.Whole.Warnings...)
	}
	for _, note := range notes {
		out = append(out, "Mind: "+note+".")
	}
	return out
}

// screen writes what was found for people.
func (f found) screen(w io.Writer, p *timing.Plan) error {
	if f.Channels != nil {
		if err := table.MeasuredScreen(w, p, *f.Channels, colour(w)); err != nil {
			return err
		}
	}
	for _, words := range f.sentences() {
		if _, err := fmt.Fprintln(w, words); err != nil {
			return err
		}
	}
	return nil
}

// point reads a place in the room, in m.
func point(text string) (r3.Vec, error) {
	var v r3.Vec
	var rest string
	if n, _ := fmt.Sscanf(text+" ", "%g,%g,%g%s", &v.X, &v.Y, &v.Z, &rest); n != 3 || !(r3.Norm(v) <= 200) {
		return v, fmt.Errorf("%q: must be x,y,z in metres, as 1.2,-0.4,0.6, with points for decimals and within 200 m", text)
	}
	return v, nil
}
