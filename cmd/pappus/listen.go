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

	"pappus/layout/prose"
	"pappus/preview"
	"pappus/preview/play"
	"pappus/preview/programme"
	"pappus/render/tape"
	"pappus/timing"

	"github.com/gopxl/beep/v2"
	"github.com/spf13/cobra"
	"gonum.org/v1/gonum/spatial/r3"
)

// How long one case plays before the next, in s: at least, and at most for the sake of
// whole periods of the programme.
const shortestTurn, longestTurn = 4, 12

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
			"the programme. While it plays, one key each, also from standard input:\n\n" + keyHelp + "\n" +
			"A walk goes at " + fmt.Sprint(preview.Pace) + " m/s, to and fro while it plays, and once in a file. The Doppler shift\n" +
			"is left out, and of a room all echoes but the floor's.",
		Args: oneDesign,
		RunE: func(c *cobra.Command, args []string) error {
			if err := h.contradiction(c.Flags().Changed); err != nil {
				return err
			}
			return listen(c, f, first(args), h)
		},
	}
	flag := c.Flags()
	flag.StringVar(&h.programme, "programme", "pink_noise", "what to play: "+strings.Join(programmes(), ", "))
	flag.StringVar(&h.file, "file", "", "your own sound in its place: WAV, FLAC, MP3 or Ogg Vorbis")
	flag.StringSliceVar(&h.cases, "cases", caseNames(preview.Written), "what to hold against each other: "+strings.Join(caseNames(preview.Cases), ", "))
	flag.BoolVar(&h.twoEars, "two-ears", false, "through a rigid-ball head at the spot, facing the body; for headphones")
	flag.Float64Var(&h.turnDeg, "turn-deg", 0, "with --two-ears: the head turned to the left, -180 to 180; the body is then heard more in the right ear")
	flag.BoolVar(&h.dry, "dry", false, "without the surface or the room")
	flag.StringArrayVar(&h.walk, "walk", nil, "walk from the spot to x,y,z in metres from the body's middle: forward, to the loudspeaker's own left (the right hand of who faces it) and up; give it again to walk on")
	flag.IntVar(&h.rounds, "rounds", 3, "how often all cases are played, 1 to 100, unless a key holds one")
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
	return programme.Programme{}, among("programme", name, programmes())
}

func caseNames(cases []preview.Case) []string {
	var names []string
	for _, c := range cases {
		names = append(names, c.Name)
	}
	return names
}

// contradiction returns which of the flags that were given cannot be meant.
func (h hearing) contradiction(given func(flag string) bool) error {
	switch {
	case given("file") && h.file == "":
		return errors.New("--file: names no file")
	case given("file") && given("programme"):
		return errors.New("--file: plays in place of a --programme; give one of them")
	}
	return nil
}

// check returns what cannot be meant.
func (h hearing) check() error {
	switch {
	case h.rounds < 1 || h.rounds > 100:
		return fmt.Errorf("--rounds %d: must be from 1 to 100", h.rounds)
	case !(math.Abs(h.turnDeg) <= 180):
		return prose.Errorf("--turn-deg %g: must be from -180 to 180", h.turnDeg)
	case h.turnDeg != 0 && !h.twoEars:
		return errors.New("--turn-deg: takes --two-ears")
	case h.blind && len(h.cases) < 2:
		return errors.New("--blind: takes two --cases")
	case h.blind && h.folder != "":
		return errors.New("--blind: plays, and so cannot go with --output")
	}
	if _, err := h.depth(); err != nil {
		return err
	}
	_, err := h.corners()
	return err
}

// corners returns where a walk goes to from the spot.
func (h hearing) corners() ([]r3.Vec, error) {
	var out []r3.Vec
	for _, text := range h.walk {
		to, err := point(text)
		switch {
		case err != nil:
			return nil, fmt.Errorf("--walk %w", err)
		case r3.Norm(to) > farthest:
			return nil, prose.Errorf("--walk %s: must be within %g m of the body's centre", text, farthest)
		}
		out = append(out, to)
	}
	return out, nil
}

// chosenCases returns the cases of their names.
func (h hearing) chosenCases() ([]preview.Case, error) {
	var out []preview.Case
	for at, name := range h.cases {
		if slices.Contains(h.cases[:at], name) {
			return nil, fmt.Errorf("--cases: %s is there twice", name)
		}
		i := slices.IndexFunc(preview.Cases, func(c preview.Case) bool { return c.Name == name })
		if i < 0 {
			return nil, among("cases", name, caseNames(preview.Cases))
		}
		out = append(out, preview.Cases[i])
	}
	if len(out) == 0 || len(out) > len(preview.Cases) {
		return nil, fmt.Errorf("--cases: names none; must be one or more of %s", strings.Join(caseNames(preview.Cases), ", "))
	}
	return out, nil
}

// farthest is how far from the body a listener may walk, in m.
const farthest = 200.0

// way returns the walk from the spot; nil where there is none.
func (h hearing) way(p *timing.Plan) (*preview.Way, error) {
	if len(h.walk) == 0 {
		return nil, nil
	}
	way := &preview.Way{Places: []r3.Vec{p.Array.Spot}}
	if h.folder == "" {
		way.Wait, way.ToAndFro = play.Rise.Seconds(), true
	}
	to, err := h.corners()
	way.Places = append(way.Places, to...)
	return way, err
}

// walked returns for how many seconds of a walk the programme goes on: there and back
// while it plays; in a file a while longer than the way, to hear where it ends.
func (h hearing) walked(way preview.Way) float64 {
	if way.ToAndFro {
		return way.Wait + 2*way.Seconds()
	}
	return way.Seconds() + standing
}

// walking says in words that the listener walks.
func (h hearing) walking() string {
	switch {
	case len(h.walk) == 0:
		return ""
	case h.folder == "":
		return ", walking to and fro"
	}
	return ", walking"
}

// along says in words between which places the listener walks, a line each; nothing
// where nobody walks.
func (h hearing) along(p *timing.Plan) string {
	way, err := h.way(p)
	if way == nil || err != nil {
		return ""
	}
	var b strings.Builder
	for i, at := range way.Places {
		lead := "then to"
		switch i {
		case 0:
			lead = "You walk from"
		case 1:
			lead = "to"
		}
		fmt.Fprintf(&b, "%s %s\n", lead, tape.Of(p.Array, at).Full())
	}
	return b.String()
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
	p, err := f.planned(design)
	if err != nil {
		return err
	}
	if err := f.heed(c.OutOrStdout(), p); err != nil {
		return err
	}
	said := startProgress(c.ErrOrStderr(), f.quiet)
	defer said.stop()
	set, err := h.set(c.Context(), p, cases, source, said)
	if err != nil {
		return err
	}
	if warning := source.warning(); warning != "" && !f.quiet {
		fmt.Fprintf(c.ErrOrStderr(), "Look out: %s.\n", warning)
	}
	if h.folder == "" {
		said.stop()
	}
	out := c.OutOrStdout()
	if f.quiet {
		out = io.Discard
	}
	switch {
	case h.folder != "":
		return h.write(c.Context(), c.OutOrStdout(), f, p, set, cases, source, said)
	case h.blind:
		err = h.blindTest(c.Context(), out, c.InOrStdin(), p, set, cases, source)
	default:
		err = h.playTurns(c.Context(), out, c.InOrStdin(), p, set, cases, source)
	}
	switch {
	case errors.Is(err, context.Canceled):
		return nil
	case errors.Is(err, play.ErrNoDevice):
		return fmt.Errorf("%w; \"pappus listen -o FOLDER\" writes the same sounds as WAV files", err)
	}
	return err
}

// set prepares the cases, and says so where that takes long.
func (h hearing) set(ctx context.Context, p *timing.Plan, cases []preview.Case, s source, said *progress) (*preview.Set, error) {
	long := time.AfterFunc(patience, func() { said.say("measuring loudness...") })
	defer long.Stop()
	way, err := h.way(p)
	switch {
	case err != nil:
		return nil, err
	case way != nil:
		set, err := preview.NewWalk(ctx, p, h.listener(), *way, cases, s.lasting(h.walked(*way)), rate)
		if unreachable(err) || errors.Is(err, preview.ErrWay) {
			err = fmt.Errorf("--walk: %w", err)
		}
		return set, err
	}
	return preview.NewSet(ctx, p, h.listener(), cases, s.lasting(0), rate)
}

// listener is who listens.
func (h hearing) listener() preview.Listener {
	return preview.Listener{TwoEars: h.twoEars, TurnDeg: h.turnDeg, Dry: h.dry}
}

// caution stands before everything that plays.
const caution = "Start with the volume all the way down, above all on headphones, and turn it up slowly.\n"

// playTurns plays all cases in turn, so many times, or as the keys say.
func (h hearing) playTurns(ctx context.Context, out io.Writer, in io.Reader, p *timing.Plan, set *preview.Set, cases []preview.Case, s source) error {
	k := openKeys(in)
	defer k.close()
	out = k.writer(out)
	turn, err := h.turn(p, s)
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "%s%s%s, %.1f s each%s.\n%s%s\n", caution, s.words, h.walking()+h.left(p), float64(turn)/rate, k.hint(), h.along(p), numbered(cases))
	say := func(i int) { fmt.Fprintf(out, "now: %d %s\n", i+1, cases[i].Words) }
	desk := preview.NewDesk(preview.NewSwitch(sources(set, len(cases), s), crossfade), turn, h.rounds*len(cases), say)
	knob := preview.NewKnob(desk, crossfade)
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	level := &levelKeys{knob: knob, out: out}
	go func() {
		k.each(ctx, func(key byte) { deskKey(key, desk, level, stop) })
		desk.Alone()
	}()
	return play.Play(ctx, rate, knob, play.DefaultLevel)
}

// numbered lists the cases with the keys that choose them.
func numbered(cases []preview.Case) string {
	var words []string
	for i, c := range cases {
		words = append(words, fmt.Sprintf("%d %s", i+1, c.Words))
	}
	return strings.Join(words, "  ")
}

// turn returns for how many samples one case plays: on a walk at least once along it.
func (h hearing) turn(p *timing.Plan, s source) (int, error) {
	way, err := h.way(p)
	if err != nil || way == nil {
		return s.turn(shortestTurn), err
	}
	return s.turn(max(shortestTurn, way.Wait+way.Seconds())), nil
}

// sources streams each of n cases without an end.
func sources(set *preview.Set, n int, s source) []beep.Streamer {
	out := make([]beep.Streamer, n)
	for i := range out {
		out[i] = set.Through(i, s.endless())
	}
	return out
}
