package main

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"time"

	"pappus/preview"
	"pappus/preview/play"
	"pappus/preview/programme"
	"pappus/timing"

	"github.com/gopxl/beep/v2"
	"github.com/spf13/cobra"
)

// turn is how long one case plays before the next.
const turn = 4 * time.Second

// crossfade is how long a change takes, in samples: 10 ms.
const crossfade = rate / 100

func newListen(f *flags) *cobra.Command {
	var kind string
	var rounds int
	c := &cobra.Command{
		Use:   "listen [DESIGN.toml]",
		Short: "Play what the spot hears: as built, aligned and from one ideal point, in turn",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			return oneLine(listen(c, f, first(args), kind, rounds))
		},
	}
	c.Flags().StringVar(&kind, "programme", "pink_noise", "what to play: "+strings.Join(programmes(), ", "))
	c.Flags().IntVar(&rounds, "rounds", 3, "how often all cases are played, 1 to 100")
	return c
}

func programmes() []string {
	var names []string
	for _, k := range programme.All {
		names = append(names, k.Name)
	}
	return names
}

// chosen returns the programme of a name.
func chosen(name string) (programme.Programme, error) {
	for _, k := range programme.All {
		if k.Name == name {
			return k, nil
		}
	}
	return programme.Programme{}, fmt.Errorf("--programme %s: must be one of %s", name, strings.Join(programmes(), ", "))
}

func listen(c *cobra.Command, f *flags, design, name string, rounds int) error {
	kind, err := chosen(name)
	if err != nil {
		return err
	}
	if rounds < 1 || rounds > 100 {
		return fmt.Errorf("--rounds %d: must be from 1 to 100", rounds)
	}
	a, err := load(design)
	if err != nil {
		return err
	}
	p, err := timing.Make(a)
	if err != nil {
		return err
	}
	if !f.quiet {
		fmt.Fprintf(c.OutOrStdout(), "Start with the volume all the way down, above all on headphones, and turn it up slowly.\n"+
			"%s, %s each; Ctrl-C stops.\n", kind.Words, turn)
	}
	say := func(i int) {
		if !f.quiet {
			fmt.Fprintf(c.OutOrStdout(), "now: %s\n", preview.Cases[i].Words)
		}
	}
	err = playTurns(c.Context(), p, kind, rounds, say)
	switch {
	case errors.Is(err, context.Canceled):
		return nil
	case errors.Is(err, play.ErrNoDevice):
		return fmt.Errorf("%w; the same sounds are in the WAV files that \"pappus plan\" writes", err)
	}
	return err
}

// playTurns plays all cases in turn, so many times.
func playTurns(ctx context.Context, p *timing.Plan, kind programme.Programme, rounds int, say func(int)) error {
	loop := kind.Make(rate)
	once := func() beep.Streamer { return beep.Take(len(loop), loop.Streamer()) }
	set, err := preview.NewSet(p, once, rate)
	if err != nil {
		return err
	}
	sources := make([]beep.Streamer, len(preview.Cases))
	for i := range sources {
		sources[i] = set.Through(i, loop.Streamer())
	}
	each := int(turn.Seconds() * rate)
	turns := preview.Alternate(preview.NewSwitch(sources, crossfade), each, say)
	return play.Play(ctx, rate, beep.Take(rounds*len(sources)*each, turns), play.DefaultLevel)
}
