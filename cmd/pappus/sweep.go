package main

import (
	"fmt"
	"io"
	"sync"

	"pappus/layout/prose"
	"pappus/preview"
	"pappus/preview/play"
	sound "pappus/preview/sweep"
	"pappus/preview/wave"
	"pappus/render/document"
	"pappus/render/table"
	"pappus/timing"
	"pappus/timing/recording"
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
	var folder string
	var aloud, rehearse bool
	c := &cobra.Command{
		Use:   "sweep [DESIGN.toml]",
		Short: "Make the sweep to measure with: one file for all, one for each channel",
		Args:  oneDesign,
		RunE: func(c *cobra.Command, args []string) error {
			return makeSweep(c, f, first(args), o, folder, aloud, rehearse)
		},
	}
	addSweepFlags(c, &o)
	c.Flags().Float64Var(&o.Level, "level-db", sound.UsualLevel, "of its peaks, full scale 0")
	c.Flags().IntVar(&o.Rate, "rate", 0, "samples a second; not given: 48000")
	c.Flags().BoolVar(&aloud, "play", false, "play it in place of writing it")
	c.Flags().BoolVar(&rehearse, "rehearse", false, "write what a microphone would record of the design, with two faults to find")
	c.Flags().StringVarP(&folder, "output", "o", "sweep", "folder for the files")
	return c
}

// The rates of processors and sound devices, in samples a second.
const leastRate, mostRate = 8000, 384000

func makeSweep(c *cobra.Command, f *flags, design string, o sound.Options, folder string, aloud, rehearse bool) error {
	if o.Level == 0 { // which Options take for the usual
		return fmt.Errorf("--level-db 0: %w: a sweep at full scale clips and overheats; -20 is usual", sound.ErrLoud)
	}
	if o.Rate != 0 && (o.Rate < leastRate || o.Rate > mostRate) {
		return fmt.Errorf("--rate %d: must be from %d to %d", o.Rate, leastRate, mostRate)
	}
	p, err := f.planned(design)
	if err != nil {
		return err
	}
	s, err := sound.New(p, o)
	if err != nil {
		return err
	}
	out := c.OutOrStdout()
	if f.quiet || f.json {
		out = io.Discard
	}
	if err := f.heed(out, p); err != nil {
		return err
	}
	for _, caution := range s.Cautions {
		fmt.Fprintln(out, table.Wrap("Look out: "+caution+"."))
	}
	if aloud {
		return play.Play(c.Context(), beep.SampleRate(s.Rate), s.Streamer(), 0)
	}
	files := sweepFiles(p, s)
	if rehearse {
		files = rehearsed(p, s)
	}
	if err := addAll(folder, files); err != nil {
		return err
	}
	switch {
	case f.json:
		return document.Write(c.OutOrStdout(), document.OfSweep(written(folder, files, p), s.Sweep, s.Rate, s.Level, s.Cautions))
	case rehearse:
		_, err = fmt.Fprintf(out, "%d made-up measurements are in %s, as if the plan's delays were set, with a fault or two; then: %s -i %s\n",
			len(files), folder, prose.Command("pappus measure", design), prose.Path(folder))
		return err
	}
	_, err = fmt.Fprintf(out, "%d files are in %s. Play each, record it as all.wav, channel_1.wav and\n"+
		"so on: the microphone left, a wire from the player right. Then:\n%s -i FOLDER\n", len(files), folder, prose.Command("pappus measure", design))
	return err
}

func sweepFiles(p *timing.Plan, s sound.Signal) []file {
	var out []file
	signal := sync.OnceValue(func() preview.Sound { return preview.Sound{Samples: s.Samples()} }) // the same in all
	for _, f := range s.Files(p) {
		out = append(out, file{f.Name + ".wav", func(w io.Writer) error { return wave.Write(w, signal().Streamer(), f.Format) }})
	}
	return out
}

// rehearsed lists measurements of an array that is not built, with two faults. The impedance
// of the channel with a dead string is there too, where the design tells enough of the driver.
func rehearsed(p *timing.Plan, s sound.Signal) []file {
	setting := rehearsal.Example(p, float64(s.Rate))
	stage := rehearsal.NewStage(p)
	record := func(name string, channel int) file {
		return file{name + ".wav", func(w io.Writer) error {
			set := setting
			set.Channel, set.Seed = channel, uint64(channel+2)
			take, err := stage.Record(s.Sweep, set)
			if err != nil {
				return err
			}
			return wave.Write(w, stereo(take), wave.Format{Rate: s.Rate, Channels: 2, Depth: wave.PCM24, Title: name,
				Comment: "made up: what a microphone (left) and a wire (right) would give of a sweep"})
		}}
	}
	files := []file{record(sweep.RecordedName, rehearsal.All)}
	for i, channel := range p.Channels {
		files = append(files, record(sweep.RecordedChannelName(channel.ID, 1), i))
	}
	for _, dead := range setting.DeadStrings {
		if points, known, err := rehearsal.Impedance(p, dead[0], dead[1:], 1); err == nil && known {
			files = append(files, file{sweep.RecordedChannelName(p.Channels[dead[0]].ID, 1) + "_impedance.csv", func(w io.Writer) error { return table.MeasuredImpedance(w, points) }})
		}
	}
	return files
}

// stereo streams a take, the microphone left and the reference right.
func stereo(t recording.Take) beep.Streamer {
	left, right := preview.Sound{Samples: t.Samples}.Streamer(), preview.Sound{Samples: t.Reference}.Streamer()
	other := make([][2]float64, 4096)
	return beep.StreamerFunc(func(s [][2]float64) (int, bool) {
		n, ok := left.Stream(s[:min(len(s), len(other))])
		right.Stream(other[:n])
		for i := range n {
			s[i][1] = other[i][1]
		}
		return n, ok
	})
}
