package main

import (
	"errors"
	"fmt"
	"io"

	"pappus/layout/prose"
	"pappus/preview/play"
	sound "pappus/preview/sweep"
	"pappus/render/document"
	"pappus/render/folder"
	"pappus/render/outdir"
	"pappus/render/table"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/impedancefit"
	"pappus/timing/rehearsal"
	"pappus/timing/sweep"

	"github.com/gopxl/beep/v2"
	"github.com/spf13/cobra"
)

// addSweepFlags adds what says which sweep is meant; sweep and measure must be told
// the same.
func addSweepFlags(c *cobra.Command, o *sound.Options) {
	f := c.Flags()
	f.Float64Var(&o.Start, "start-hz", 0, "where the sweep begins; not given: at the high-pass's corner")
	f.Float64Var(&o.Stop, "stop-hz", 0, "where it ends; not given: at 20 kHz")
	f.Float64Var(&o.Length, "length-s", 0, "how long it lasts; not given: 10 s")
	f.BoolVar(&o.Below, "below", false, "let it begin below the high-pass's corner: cones can move too far")
}

func newSweep(f *flags) *cobra.Command {
	var o sound.Options
	var aloud, rehearse, impedance bool
	var at string
	var seed uint64
	c := f.command(&cobra.Command{
		Use:   "sweep [DESIGN.toml]",
		Short: "Make the sweep to measure with: one file for all, one for each channel",
		Long: "Make the sweep to measure with: one file for all channels, and one for each.\n\n" +
			"With --impedance: the slow sweep from 10 Hz to 20 kHz that \"pappus impedance\" knows without\n" +
			"being told, a tone to set its voltage by, and which voltage and resistor suit the design's driver.",
	}, "sweep", "folder for the files", func(j *job) (outcome, error) {
		if impedance {
			return impedanceSweep(j, o)
		}
		return makeSweep(j, o, aloud, rehearse, at, seed)
	})
	addSweepFlags(c, &o)
	c.Flags().Float64Var(&o.Level, "level-db", sound.UsualLevel, "of its peaks, full scale 0")
	c.Flags().IntVar(&o.Rate, "rate", 0, "samples a second; not given: 48000")
	c.Flags().BoolVar(&aloud, "play", false, "play it in place of writing it")
	c.Flags().BoolVar(&rehearse, "rehearse", false, "write what a microphone would record of the design, with two faults to find")
	c.Flags().Uint64Var(&seed, "seed", 0, "with --rehearse: another loudspeaker for each number, as they are built, in a room with noise, and what is wrong in truth.txt")
	c.Flags().BoolVar(&impedance, "impedance", false, "make the sweep for impedances, of one driver through a resistor")
	c.Flags().StringVar(&at, "at", "", "with --rehearse: where the microphone is, a seat's name or x,y,z in metres; not given: at the spot")
	return c
}

// The rates of processors and sound devices, in samples a second.
const leastRate, mostRate = 8000, 384000

// checkOptions refuses levels and rates that no options can be.
func checkOptions(o sound.Options) error {
	if o.Level == 0 { // which Options take for the usual
		return errors.New("--level-db 0: impossible level: a sweep at full scale clips and overheats; -20 is usual")
	}
	if o.Rate != 0 && (o.Rate < leastRate || o.Rate > mostRate) {
		return fmt.Errorf("--rate %d: must be from %d to %d", o.Rate, leastRate, mostRate)
	}
	return nil
}

// impedanceSweep makes the sweep for impedances.
func impedanceSweep(j *job, o sound.Options) (outcome, error) {
	for _, other := range []string{"start-hz", "stop-hz", "length-s", "below", "play", "rehearse", "at", "seed"} {
		if err := exclusive(j.Command, "impedance", other); err != nil {
			return outcome{}, err
		}
	}
	if err := checkOptions(o); err != nil {
		return outcome{}, err
	}
	a, err := load(j.design())
	if err != nil {
		return outcome{}, err
	}
	s, err := sound.ForImpedance(o)
	volt, ohm := impedancefit.Feed(a.Driver)
	return outcome{
		files: ofSounds(s.ImpedanceFiles()),
		json:  func(w document.Written) any { return document.OfImpedanceSweep(w, s.Sweep, s.Rate, s.Level, volt, ohm) },
		last:  table.Wrap(words.ImpedanceSweep(j.folder, volt, ohm, j.design())) + "\n",
	}, err
}

func makeSweep(j *job, o sound.Options, aloud, rehearse bool, at string, seed uint64) (outcome, error) {
	if err := checkOptions(o); err != nil {
		return outcome{}, err
	}
	if at != "" && !rehearse {
		return outcome{}, errors.New("--at: takes --rehearse; a sweep is the same everywhere")
	}
	if seed != 0 && !rehearse {
		return outcome{}, errors.New("--seed: takes --rehearse; a sweep is the same each time")
	}
	p, err := j.planAt(at)
	if err != nil {
		return outcome{}, err
	}
	s, err := sound.New(p, o)
	if err != nil {
		return outcome{}, err
	}
	out := outcome{plan: p, screen: func(w io.Writer, _ bool) error {
		for _, caution := range s.Cautions {
			fmt.Fprintln(w, table.Wrap("Look out: "+caution+"."))
		}
		return nil
	}}
	if aloud {
		if err := j.show(out); err != nil {
			return outcome{}, err
		}
		return outcome{}, play.Play(j.Context(), beep.SampleRate(s.Rate), s.Streamer(), 0)
	}
	measure := prose.Command("pappus measure", j.design())
	if at != "" {
		measure += " --at " + prose.Path(at)
	}
	if rehearse {
		out.files = rehearsed(p, s, seed)
		out.last = fmt.Sprintf("%s are in %s, as if the plan's delays were set, with %s; then: %s -i %s\n",
			prose.Count(len(out.files), "file of a made-up measurement", "files of a made-up measurement"), j.folder, toFind(seed), measure, prose.Path(j.folder))
	} else {
		out.files = ofSounds(s.Files(p))
		out.last = fmt.Sprintf("%d files are in %s. Play each, record it as all.wav, channel_1.wav and\n"+
			"so on: the microphone left, a wire from the player right. %sThen:\n%s -i FOLDER\n", len(out.files), j.folder, atSeats(p), measure)
	}
	out.json = func(w document.Written) any { return document.OfSweep(w, s.Sweep, s.Rate, s.Level, s.Cautions) }
	return out, nil
}

// toFind says what there is to find in made-up measurements.
func toFind(seed uint64) string {
	if seed == 0 {
		return "a fault or two"
	}
	return "a fault or none, which truth.txt tells"
}

// atSeats says what to record at several seats.
func atSeats(p *timing.Plan) string {
	if p.Seating == nil {
		return ""
	}
	return fmt.Sprintf("Record %s.wav once more at\neach of the %d seats, all gains as they are: %s.wav at %q, and so on in the\ndesign's order. ",
		sweep.WholeName, len(p.Array.Seats), sweep.RecordedSeatName(1), p.Array.Seats[0].Name)
}

// rehearsed lists measurements of an array that is not built, with two faults; those of a seed
// have all that a plan does not know, and truth.txt beside them says what is wrong. The impedance
// of a channel with a dead string is there too, where the design tells enough of the driver.
func rehearsed(p *timing.Plan, s sound.Signal, seed uint64) []outdir.File {
	if seed > 0 {
		session := rehearsal.NewDrawn(p, float64(s.Rate), seed)
		return append(ofSounds(s.Rehearsed(p, session)), outdir.File{Name: "truth.txt", Write: func(w io.Writer) error {
			_, err := fmt.Fprintln(w, table.Wrap(words.Rehearsed(p, session)))
			return err
		}})
	}
	session := rehearsal.NewExample(p, float64(s.Rate))
	files := ofSounds(s.Rehearsed(p, session))
	for _, dead := range session.Setting().DeadStrings {
		if points, known, err := rehearsal.Impedance(p, dead[0], dead[1:], 1); err == nil && known {
			files = append(files, folder.ImpedanceTable(sweep.RecordedChannelName(p.Channels[dead[0]].ID, 1)+"_impedance.csv", points))
		}
	}
	return files
}
