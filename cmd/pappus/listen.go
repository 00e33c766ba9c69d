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

	"pappus/layout"
	"pappus/layout/prose"
	"pappus/preview"
	"pappus/preview/console"
	"pappus/preview/play"
	"pappus/preview/programme"
	"pappus/preview/wave"
	"pappus/render/document"
	"pappus/render/folder"
	"pappus/render/tape"
	"pappus/render/words"
	"pappus/timing"

	"github.com/spf13/cobra"
)

// hearing is what is listened to, and how.
type hearing struct {
	programme, file string
	cases           []string
	twoEars, dry    bool
	turnDeg         float64
	at              string
	walk            []string
	rounds          int
	blind           bool
	bits            int
}

func newListen(f *flags) *cobra.Command {
	var h hearing
	c := f.command(&cobra.Command{
		Use:   "listen [DESIGN.toml]",
		Short: "Play what the spot or a seat hears: as built, aligned and from one ideal point",
		Long: "Play what the spot hears, one case after another, all as loud and at the same instant of\n" +
			"the programme. While it plays, one key each, also from standard input:\n\n" + console.KeyHelp + "\n" +
			"A walk goes at " + fmt.Sprint(preview.Pace) + " m/s, to and fro while it plays, and once in a file. The Doppler shift\n" +
			"is left out, and of a room all echoes but that of the floor, or of what the body is\nfixed to.",
	}, "", "write WAV files and pictures of the sound into a folder, and play nothing", func(j *job) (outcome, error) {
		return listen(j, h)
	})
	flag := c.Flags()
	flag.StringVar(&h.programme, "programme", "pink_noise", "what to play: "+strings.Join(programme.Names(), ", "))
	flag.StringVar(&h.file, "file", "", "your own sound in its place: WAV, FLAC, MP3 or Ogg Vorbis")
	flag.StringSliceVar(&h.cases, "cases", nil, "what to hold against each other: "+strings.Join(preview.NamesOf(preview.Cases), ", ")+
		"; not given: as_built,aligned,point, or as_built,middle_seat,aligned where there are several seats")
	flag.StringVar(&h.at, "at", "", "where to listen: a seat's name, or x,y,z in metres as --walk has it; not given: at the spot")
	flag.BoolVar(&h.twoEars, "two-ears", false, "through a rigid-ball head, facing the body, or the middle of several; for headphones")
	flag.Float64Var(&h.turnDeg, "turn-deg", 0, "with --two-ears: the head turned to the left, -180 to 180; the body is then heard more in the right ear")
	flag.BoolVar(&h.dry, "dry", false, "without the surface or the room")
	flag.StringArrayVar(&h.walk, "walk", nil, "walk from there to a seat or to x,y,z in metres from the body's middle: forward, to the loudspeaker's own left (the right hand of who faces it) and up; give it again to walk on, or "+allSeats+" for one seat after another")
	flag.IntVar(&h.rounds, "rounds", 3, "how often all cases are played, 1 to 100, unless a key holds one")
	flag.BoolVar(&h.blind, "blind", false, "a blind test of the first two cases, ten tries")
	flag.IntVar(&h.bits, "bits", 16, "of the WAV files: 16, 24 or 32 (float)")
	return c
}

// depths are how samples may be written, by their bits.
var depths = map[int]wave.Depth{16: wave.PCM16, 24: wave.PCM24, 32: wave.Float32}

// check returns what cannot be meant.
func (h hearing) check(j *job) error {
	given := j.Flags().Changed
	switch _, known := depths[h.bits]; {
	case given("file") && h.file == "":
		return errors.New("--file: names no file")
	case given("file") && given("programme"):
		return errors.New("--file: plays in place of a --programme; give one of them")
	case h.rounds < 1 || h.rounds > 100:
		return fmt.Errorf("--rounds %d: must be from 1 to 100", h.rounds)
	case !(math.Abs(h.turnDeg) <= 180):
		return prose.Errorf("--turn-deg %g: must be from -180 to 180", h.turnDeg)
	case h.turnDeg != 0 && !h.twoEars:
		return errors.New("--turn-deg: takes --two-ears")
	case h.blind && h.cases != nil && len(h.cases) < 2:
		return errors.New("--blind: takes two --cases")
	case h.blind && j.folder != "":
		return errors.New("--blind: plays, and so cannot go with --output")
	case !known:
		return fmt.Errorf("--bits %d: must be 16, 24 or 32", h.bits)
	case j.json && j.folder == "":
		return errors.New("--json: takes --output; what only plays has no result")
	}
	return nil
}

// allSeats is the walk along all seats, in the order of the design.
const allSeats = "seats"

// places returns where one listens and, where one walks, then goes, by their names or, for
// places without one, as they were given. Without --at a walk along all seats begins at the
// first of them.
func (h hearing) places(a *layout.Array) ([]layout.Seat, error) {
	out := []layout.Seat{{At: a.Spot}}
	var err error
	if h.at != "" {
		if out[0], err = place(a, h.at); err != nil {
			return nil, fmt.Errorf("--at %w", err)
		}
	}
	for i, text := range h.walk {
		if text == allSeats && len(a.Seats) > 0 {
			if i == 0 && h.at == "" {
				out = nil
			}
			out = append(out, a.Seats...)
			continue
		}
		to, err := place(a, text)
		if err != nil {
			return nil, fmt.Errorf("--walk %w", err)
		}
		out = append(out, to)
	}
	return out, nil
}

// put puts the listener at a place, or on the way along several.
func (h hearing) put(s *preview.Audition, places []layout.Seat) {
	if len(h.walk) > 0 {
		s.Way = &preview.Way{}
		for _, p := range places {
			s.Way.Places = append(s.Way.Places, p.At)
		}
		return
	}
	if h.at == "" {
		return
	}
	s.Listener.At = &places[0].At
	if s.Where = "a place " + tape.Of(s.Plan.Array, places[0].At).Full(); places[0].Name != "" {
		s.Where = preview.SeatWords(places[0])
	}
}

// checkCases returns what is wrong with the cases that were asked for.
func (h hearing) checkCases() error {
	for at, name := range h.cases {
		if err := among("cases", name, preview.NamesOf(preview.Cases)); err != nil {
			return err
		}
		if slices.Contains(h.cases[:at], name) {
			return fmt.Errorf("--cases: %s is there twice", name)
		}
	}
	if h.cases != nil && len(h.cases) == 0 {
		return fmt.Errorf("--cases: names none; must be one or more of %s", strings.Join(preview.NamesOf(preview.Cases), ", "))
	}
	return nil
}

// chosenCases returns the cases that were asked for of a plan, or the usual ones.
func (h hearing) chosenCases(p *timing.Spot) ([]preview.Case, error) {
	if h.cases == nil {
		return preview.Usual(p), nil
	}
	var out []preview.Case
	for _, name := range h.cases {
		c, ok := preview.CaseNamed(preview.CasesOf(p), name)
		if !ok {
			return nil, fmt.Errorf("--cases: %s takes a design with several seats", name)
		}
		out = append(out, c)
	}
	return out, nil
}

// source opens what is played.
func (h hearing) source() (preview.Source, error) {
	if h.file != "" {
		s, err := preview.FromFile(h.file)
		return s, h.ofFile(err)
	}
	kind, ok := programme.Named(h.programme)
	if !ok {
		return preview.Source{}, among("programme", h.programme, programme.Names())
	}
	return preview.FromProgramme(kind), nil
}

// ofFile says of which flag an error is where a file is played.
func (h hearing) ofFile(err error) error {
	if err == nil || h.file == "" || errors.Is(err, context.Canceled) {
		return err
	}
	return fmt.Errorf("--file: %w", err)
}

// audition is all that is asked for, but for the plan and the places.
func (h hearing) audition(j *job) (*preview.Audition, error) {
	s := &preview.Audition{Listener: preview.Listener{TwoEars: h.twoEars, TurnDeg: h.turnDeg, Dry: h.dry}}
	err := h.check(j)
	if err == nil {
		err = h.checkCases()
	}
	if err == nil {
		s.Source, err = h.source()
	}
	return s, err
}

func listen(j *job, h hearing) (outcome, error) {
	s, err := h.audition(j)
	if err != nil {
		return outcome{}, err
	}
	a, err := load(j.design())
	if err != nil {
		return outcome{}, err
	}
	places, err := h.places(a)
	if err != nil {
		return outcome{}, err
	}
	p, err := j.make(j.Context(), j.progress, a)
	if err != nil {
		return outcome{}, err
	}
	s.Plan = &p.Spot
	if s.Cases, err = h.chosenCases(s.Plan); err != nil {
		return outcome{}, err
	}
	if h.put(s, places); s.Way != nil && j.folder == "" {
		s.Way.Wait, s.Way.ToAndFro = play.Rise.Seconds(), true
	}
	if err := j.heed(p); err != nil {
		return outcome{}, err
	}
	if err := h.prepare(j, s); err != nil {
		return outcome{}, err
	}
	if warning := s.Source.Warning(); warning != "" && !j.quiet {
		fmt.Fprintf(j.ErrOrStderr(), "Look out: %s.\n", warning)
	}
	if j.folder == "" {
		j.stop()
		return outcome{}, h.play(j, s, places)
	}
	files := ofSounds(s.Files(j.Context(), depths[h.bits]))
	name := s.Plan.Array.Name
	files = append(files, folder.Spectrograms("spectrogram", name+": "+s.Source.Words+s.Whereabouts()+s.Side(), preview.Rate, drawnSounds(s.Excerpts))...)
	if s.Way == nil {
		files = append(files, folder.Impulses(name+": what is heard of a click"+s.Whereabouts()+s.Side(), preview.Rate, drawnSounds(func() ([]preview.Sound, error) {
			return s.Listener.Clicks(s.Plan, s.Cases)
		}))...)
	}
	return outcome{
		plan: p, files: files,
		json: func(w document.Written) any {
			out := document.Sounds{Written: w, Programme: s.Source.Name}
			for _, c := range s.Cases {
				out.Cases = append(out.Cases, document.Case{Name: c.Name, Words: c.Words})
			}
			return out
		},
		last: fmt.Sprintf("%s%s, all as loud (%s), %s in %s, with pictures of the sound.\n%s",
			prose.Count(len(s.Cases), "case", "cases"), s.LeftOut(), s.MatchedBy(), prose.Noun(len(s.Cases), "is", "are"), j.folder, console.Caution),
	}, nil
}

// prepare matches the cases, and says so where that takes long.
func (h hearing) prepare(j *job, s *preview.Audition) error {
	long := time.AfterFunc(patience, func() { j.say("measuring loudness...") })
	defer long.Stop()
	err := s.Prepare(j.Context())
	if errors.Is(err, preview.ErrWay) {
		switch {
		case s.Way != nil:
			return fmt.Errorf("--walk: %w", err)
		case h.at != "":
			return fmt.Errorf("--at: %w", err)
		}
	}
	return h.ofFile(err)
}

// play plays the cases in turn, or as a blind test. Who stops it has heard enough.
func (h hearing) play(j *job, s *preview.Audition, places []layout.Seat) (err error) {
	out := j.OutOrStdout()
	if j.quiet {
		out = io.Discard
	}
	along := ""
	if s.Way != nil {
		along = words.Walk(s.Plan.Array, places)
	}
	if h.blind {
		err = console.Blind(j.Context(), out, j.InOrStdin(), s, along)
	} else {
		err = console.Turns(j.Context(), out, j.InOrStdin(), s, h.rounds, along)
	}
	switch {
	case errors.Is(err, context.Canceled):
		return nil
	case errors.Is(err, play.ErrNoDevice):
		return fmt.Errorf("%w; \"pappus listen -o FOLDER\" writes the same sounds as WAV files", err)
	}
	return err
}
