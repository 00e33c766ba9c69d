package main

import (
	"errors"
	"fmt"
	"io"
	"maps"
	"os"
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
	var places []verdict.Place
	for _, text := range m.positions {
		place, err := also(text)
		if err != nil {
			return err
		}
		places = append(places, place)
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
	found, err := verdict.Takes{Sweep: s.Sweep, Options: options, Wire: verdict.Wire(slices.Index(references, m.reference)), Folder: m.in, Also: places, Level: m.level(),
		Read: func(path string) (int, [][]float64, error) {
			said.say("reading " + path)
			return decode.Channels(path)
		}}.Judge(p)
	if errors.Is(err, verdict.ErrNone) {
		err = fmt.Errorf("--input %s: %w", m.in, err)
	}
	if err != nil {
		return err
	}
	if err := addAll(m.folder, measuredTables(p, found)); err != nil {
		return err
	}
	said.stop()
	out := c.OutOrStdout()
	switch {
	case f.json:
		return document.Write(out, document.OfMeasured(p, found))
	case f.quiet:
		return nil
	}
	if err := f.heed(out, p); err != nil {
		return err
	}
	if err := table.MeasuredScreen(out, p, found, colour(out)); err != nil {
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

// level returns how the whole array was recorded.
func (m measuring) level() verdict.LevelSetting {
	return verdict.LevelSetting{Case: played(m.built), Low: m.lowHz, High: m.highHz, Gated: m.gated}
}

// played returns what an array did while it was recorded.
func played(asBuilt bool) timing.Case {
	if asBuilt {
		return timing.AsBuilt
	}
	return timing.Aligned
}

// references are where the wire from the player may be, as verdict.Wire counts them.
var references = []string{"right", "left", "none"}

// also reads which recording was made where.
func also(text string) (verdict.Place, error) {
	path, place, ok := strings.Cut(text, "=")
	at, err := point(place)
	if !ok || err != nil || path == "" {
		return verdict.Place{}, fmt.Errorf("--also %s: must be FILE.wav=x,y,z in metres, as corner.wav=1.2,-0.4,0.6", text)
	}
	return verdict.Place{Path: path, At: at}, nil
}

// measuredTables lists tables and pictures of what recordings came to.
func measuredTables(p *timing.Plan, f verdict.Found) []file {
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

// point reads a place in the room, in m.
func point(text string) (r3.Vec, error) {
	var v r3.Vec
	var rest string
	if n, _ := fmt.Sscanf(text+" ", "%g,%g,%g%s", &v.X, &v.Y, &v.Z, &rest); n != 3 || !(r3.Norm(v) <= 200) {
		return v, fmt.Errorf("%q: must be x,y,z in metres, as 1.2,-0.4,0.6, with points for decimals and within 200 m", text)
	}
	return v, nil
}
