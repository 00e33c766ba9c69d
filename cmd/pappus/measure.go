package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"pappus/layout"
	"pappus/layout/prose"
	"pappus/preview/decode"
	sound "pappus/preview/sweep"
	"pappus/render/document"
	"pappus/render/folder"
	"pappus/render/table"
	"pappus/timing"
	"pappus/timing/recording"
	"pappus/timing/verdict"

	"github.com/spf13/cobra"
)

// measuring says what was recorded, and how it is looked at.
type measuring struct {
	sweep         sound.Options
	in, at        string
	reference     string
	built, gated  bool
	gateMS        float64
	microphone    string
	lowHz, highHz float64
	positions     []string
}

func newMeasure(f *flags) *cobra.Command {
	var m measuring
	c := f.command(&cobra.Command{
		Use:   "measure [DESIGN.toml] -i RECORDINGS",
		Short: "Hold recordings of the sweep against the plan: faults, delays, levels",
		Long: "Hold recordings of the sweep against the plan. The folder holds WAV files of what \"pappus sweep\"\n" +
			"wrote: all.wav with every channel on, channel_1.wav and so on with one channel on; either may\n" +
			"be left out. Stereo files have the microphone left and a wire from the player right; channels\n" +
			"are only compared in time with that wire.\n\n" +
			"Each may be recorded again, with nothing moved: all_2.wav, all_3.wav, channel_1_2.wav. Four takes\n" +
			"halve the noise, and how far they scatter is part of the errors. Takes of all channels are brought\n" +
			"into time, and their mean is judged; of a channel the mean of its levels and times. Other places\n" +
			"for all channels are added with --also, of which the mean energy counts.\n\n" +
			"Where the design has several seats, seat_1.wav and so on are all channels on at each of them, in\n" +
			"the order of the design: how much is lost there against the plan. Channels one by one at a seat are\n" +
			"seat_1_channel_3.wav; a fault that any seat hears is told. Further takes are seat_1_2.wav,\n" +
			"seat_1_channel_3_2.wav.",
	}, "measured", "folder for tables and pictures", func(j *job) (outcome, error) { return measure(j, m) })
	addSweepFlags(c, &m.sweep)
	flag := c.Flags()
	flag.StringVarP(&m.in, "input", "i", "", "folder with the recordings")
	flag.StringVar(&m.at, "at", "", "where all.wav and the channels were recorded: a seat's name, or x,y,z in metres; not given: at the spot")
	flag.StringVar(&m.reference, "reference", "right", "where the wire from the player is: right, left or none")
	flag.BoolVar(&m.built, "as-built", false, "no delays were set while recording")
	flag.BoolVar(&m.gated, "gated", false, "leave echoes out of the level, against the array alone")
	flag.Float64Var(&m.gateMS, "gate-ms", 0, "for how long the gate listens; not given: 10 ms")
	flag.StringVar(&m.microphone, "microphone", "", "the microphone's correction, a CSV of frequency_hz,level_db")
	flag.Float64Var(&m.lowHz, "match-low-hz", 0, "levels are matched from here; not given: 500 Hz")
	flag.Float64Var(&m.highHz, "match-high-hz", 0, "to here; not given: 4 kHz")
	flag.StringArrayVar(&m.positions, "also", nil, "another recording of all channels and where it was made: FILE.wav=x,y,z in metres; all are averaged; further takes there are FILE_2.wav and so on")
	return c
}

func measure(j *job, m measuring) (outcome, error) {
	t := verdict.Takes{Folder: m.in, Wire: verdict.Wire(slices.Index(references, m.reference)),
		Level: verdict.LevelSetting{Case: timing.Aligned, Low: m.lowHz, High: m.highHz, Gated: m.gated}}
	if m.built {
		t.Level.Case = timing.AsBuilt
	}
	if err := among("reference", m.reference, references); err != nil {
		return outcome{}, err
	}
	for _, text := range m.positions {
		place, err := also(text)
		if err != nil {
			return outcome{}, err
		}
		t.Also = append(t.Also, place)
	}
	if m.in == "" {
		return outcome{}, errors.New("--input: a folder with recordings is needed; \"pappus sweep --rehearse -o rehearsal\" makes some up")
	}
	if info, err := os.Stat(m.in); err != nil {
		return outcome{}, fmt.Errorf("--input %s: %w", m.in, prose.Reason(err))
	} else if !info.IsDir() {
		return outcome{}, fmt.Errorf("--input %s: it is a file; name the folder with the recordings", m.in)
	}
	p, err := j.planAt(m.at)
	if err != nil {
		return outcome{}, err
	}
	s, err := sound.New(p, m.sweep)
	if err != nil {
		return outcome{}, err
	}
	t.Sweep = s.Sweep
	if t.Options, err = m.options(); err != nil {
		return outcome{}, err
	}
	t.Read = func(path string) (int, [][]float64, error) {
		j.say("reading " + path)
		return decode.Channels(path)
	}
	found, err := t.Judge(p)
	if errors.Is(err, verdict.ErrNone) {
		err = fmt.Errorf("--input %s: %w", m.in, err)
	}
	return outcome{
		plan: p, files: folder.Measured(p, found),
		json:   func(document.Written) any { return document.OfMeasured(p, found) },
		screen: func(w io.Writer, colour bool) error { return table.MeasuredScreen(w, p, found, colour) },
		last:   fmt.Sprintf("\nTables and pictures are in %s.\n", j.folder),
	}, err
}

// options returns how recordings are looked at.
func (m measuring) options() (recording.Options, error) {
	o := recording.Options{Gate: m.gateMS / 1000}
	if m.microphone == "" {
		return o, nil
	}
	var err error
	if o.Microphone, err = layout.ReadMicrophone(m.microphone); err != nil {
		err = fmt.Errorf("--microphone: %w", err)
	}
	return o, err
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
