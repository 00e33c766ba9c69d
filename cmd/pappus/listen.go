package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"time"

	"pappus/preview"
	"pappus/preview/play"
	"pappus/preview/programme"
	"pappus/timing"

	"github.com/gopxl/beep/v2"
	"github.com/spf13/cobra"
	"gonum.org/v1/gonum/spatial/r3"
)

// turn is how long one case plays before the next.
const turn = 4 * time.Second

// crossfade is how long a change takes, in samples: 10 ms.
const crossfade = rate / 100

// hearing is what is listened to, and how.
type hearing struct {
	programme, file string
	cases           []string
	twoEars, dry    bool
	turnDeg         float64
	walk            []string
	rounds          int
	blind           bool
	folder          string
	bits            int
}

func newListen(f *flags) *cobra.Command {
	var h hearing
	c := &cobra.Command{
		Use:   "listen [DESIGN.toml]",
		Short: "Play what the spot hears: as built, aligned and from one ideal point",
		Long: "Play what the spot hears, one case after another, all as loud and at the same instant of\n" +
			"the programme. While it plays, one key each, also from standard input:\n\n" + keyHelp,
		Args: cobra.MaximumNArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			return oneLine(listen(c, f, first(args), h))
		},
	}
	flag := c.Flags()
	flag.StringVar(&h.programme, "programme", "pink_noise", "what to play: "+strings.Join(programmes(), ", "))
	flag.StringVar(&h.file, "file", "", "your own sound in its place: WAV, FLAC, MP3 or Ogg Vorbis")
	flag.StringSliceVar(&h.cases, "cases", caseNames(preview.Written), "what to hold against each other: "+strings.Join(caseNames(preview.Cases), ", "))
	flag.BoolVar(&h.twoEars, "two-ears", false, "through a rigid-ball head at the spot, facing the body; for headphones")
	flag.Float64Var(&h.turnDeg, "turn-deg", 0, "with --two-ears: the head turned to the left, -180 to 180")
	flag.BoolVar(&h.dry, "dry", false, "without the surface or the room")
	flag.StringArrayVar(&h.walk, "walk", nil, "walk from the spot to x,y,z in metres; give it again to walk on")
	flag.IntVar(&h.rounds, "rounds", 3, "how often all cases are played, 1 to 100")
	flag.BoolVar(&h.blind, "blind", false, "a blind test of the first two cases, ten tries")
	flag.StringVarP(&h.folder, "output", "o", "", "write WAV files and pictures of the sound into a folder, and play nothing")
	flag.IntVar(&h.bits, "bits", 16, "of the WAV files: 16, 24 or 32 (float)")
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

func caseNames(cases []preview.Case) []string {
	var names []string
	for _, c := range cases {
		names = append(names, c.Name)
	}
	return names
}

// check returns what cannot be meant.
func (h hearing) check() error {
	switch {
	case h.rounds < 1 || h.rounds > 100:
		return fmt.Errorf("--rounds %d: must be from 1 to 100", h.rounds)
	case !(math.Abs(h.turnDeg) <= 180):
		return fmt.Errorf("--turn-deg %g: must be from -180 to 180", h.turnDeg)
	case h.turnDeg != 0 && !h.twoEars:
		return errors.New("--turn-deg: takes --two-ears")
	case h.blind && len(h.cases) < 2:
		return errors.New("--blind: takes two --cases")
	case h.blind && h.folder != "":
		return errors.New("--blind: plays, and so cannot go with --output")
	}
	_, err := h.depth()
	return err
}

// chosenCases returns the cases of their names.
func (h hearing) chosenCases() ([]preview.Case, error) {
	var out []preview.Case
	for _, name := range h.cases {
		i := slices.IndexFunc(preview.Cases, func(c preview.Case) bool { return c.Name == name })
		if i < 0 {
			return nil, fmt.Errorf("--cases %s: must be of %s", name, strings.Join(caseNames(preview.Cases), ", "))
		}
		out = append(out, preview.Cases[i])
	}
	if len(out) == 0 || len(out) > len(preview.Cases) {
		return nil, fmt.Errorf("--cases: %d of them, 1 to %d are possible", len(out), len(preview.Cases))
	}
	return out, nil
}

// way returns the walk from the spot; nil where there is none.
func (h hearing) way(p *timing.Plan) (*preview.Way, error) {
	if len(h.walk) == 0 {
		return nil, nil
	}
	way := &preview.Way{Places: []r3.Vec{p.Array.Spot}}
	for _, text := range h.walk {
		to, err := point(text)
		if err != nil {
			return nil, fmt.Errorf("--walk %w", err)
		}
		way.Places = append(way.Places, to)
	}
	return way, nil
}

func listen(c *cobra.Command, f *flags, design string, h hearing) error {
	if err := h.check(); err != nil {
		return err
	}
	if f.json && h.folder == "" {
		return errors.New("--json: takes --output; what only plays has no result")
	}
	cases, err := h.chosenCases()
	if err != nil {
		return err
	}
	source, err := h.source()
	if err != nil {
		return err
	}
	p, err := planned(design)
	if err != nil {
		return err
	}
	set, err := h.set(p, cases, source)
	if err != nil {
		return err
	}
	out := c.OutOrStdout()
	if f.quiet {
		out = io.Discard
	}
	switch {
	case h.folder != "":
		return h.write(c.OutOrStdout(), f, p, set, cases, source)
	case h.blind:
		err = blindTest(c.Context(), out, c.InOrStdin(), set, cases, source)
	default:
		err = h.playTurns(c.Context(), out, c.InOrStdin(), set, cases, source)
	}
	switch {
	case errors.Is(err, context.Canceled):
		return nil
	case errors.Is(err, play.ErrNoDevice):
		return fmt.Errorf("%w; \"pappus listen -o FOLDER\" writes the same sounds as WAV files", err)
	}
	return err
}

// set prepares the cases.
func (h hearing) set(p *timing.Plan, cases []preview.Case, s source) (*preview.Set, error) {
	who := preview.Listener{TwoEars: h.twoEars, TurnDeg: h.turnDeg, Dry: h.dry}
	way, err := h.way(p)
	switch {
	case err != nil:
		return nil, err
	case way != nil:
		return preview.NewWalk(p, who, *way, cases, s.once, rate)
	}
	return preview.NewSet(p, who, cases, s.once, rate)
}

// caution stands before everything that plays.
const caution = "Start with the volume all the way down, above all on headphones, and turn it up slowly.\n"

// playTurns plays all cases in turn, so many times, or as the keys say.
func (h hearing) playTurns(ctx context.Context, out io.Writer, in io.Reader, set *preview.Set, cases []preview.Case, s source) error {
	k := openKeys(in)
	defer k.close()
	out = k.writer(out)
	fmt.Fprintf(out, "%s%s, %s each%s.\n", caution, s.words, turn, k.hint())
	say := func(i int) { fmt.Fprintf(out, "now: %s\n", cases[i].Words) }
	desk := preview.NewDesk(preview.NewSwitch(sources(set, len(cases), s), crossfade), int(turn.Seconds()*rate), h.rounds*len(cases), say)
	knob := preview.NewKnob(desk, crossfade)
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	level := &levelKeys{knob: knob, out: out}
	go k.each(ctx, func(key byte) { deskKey(key, desk, level, stop) })
	return play.Play(ctx, rate, knob, play.DefaultLevel)
}

// sources streams each of n cases without an end.
func sources(set *preview.Set, n int, s source) []beep.Streamer {
	out := make([]beep.Streamer, n)
	for i := range out {
		out[i] = set.Through(i, s.endless())
	}
	return out
}
