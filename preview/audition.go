package preview

import (
	"cmp"
	"context"
	"io"

	"pappus/layout"
	"pappus/preview/wave"
	"pappus/timing"

	"github.com/gopxl/beep/v2"
)

// pictured is how much of a sound its spectrogram shows, in samples: 8 s.
const pictured = 8 * Rate

// standing is how long a walk in a file is heard after its end, in s.
const standing = 1.0

// Audition is who listens to what, in which cases, all matched in level.
type Audition struct {
	Plan     *timing.Spot
	Listener Listener
	Where    string // where the listener is at rest, for people; empty: at the spot
	Way      *Way   // nil: the listener is at rest
	Cases    []Case
	Source   Source
	set      *Set
}

// Prepare matches the cases; before it nothing is heard. Errors are those of NewSet and
// NewWalk, or the source's.
func (s *Audition) Prepare(ctx context.Context) (err error) {
	if s.Way == nil {
		s.set, err = NewSet(ctx, s.Plan, s.Listener, s.Cases, s.Source.lasting(0), Rate)
		return err
	}
	s.set, err = NewWalk(ctx, s.Plan, s.Listener, *s.Way, s.Cases, s.Source.lasting(s.Way.lasting()), Rate)
	return err
}

// lasting returns for how many seconds of a walk the programme goes on: there and back
// while it plays; in a file a while longer than the way, to hear where it ends.
func (w Way) lasting() float64 {
	if w.ToAndFro {
		return w.Wait + 2*w.Seconds()
	}
	return w.Seconds() + standing
}

// Turn returns for how many samples one case plays before the next: on a walk at least
// once along it.
func (s *Audition) Turn() int {
	if s.Way == nil {
		return s.Source.turn(shortestTurn)
	}
	return s.Source.turn(max(shortestTurn, s.Way.Wait+s.Way.Seconds()))
}

// Endless streams each of the first n cases without an end.
func (s *Audition) Endless(n int) []beep.Streamer {
	out := make([]beep.Streamer, n)
	for i := range out {
		out[i] = s.set.Through(i, s.Source.times(-1))
	}
	return out
}

// File is a sound file to be written: its name, and what writes it.
type File struct {
	Name  string
	Write func(io.Writer) error
}

// Files lists each case as a WAV file, written until ctx ends.
func (s *Audition) Files(ctx context.Context, depth wave.Depth) []File {
	var out []File
	for i, c := range s.Cases {
		f := wave.Format{Rate: Rate, Channels: 1, Depth: depth, Title: s.Plan.Array.Name + ", " + s.Source.Words + ", " + c.Words, Comment: s.comment(c)}
		if s.Listener.TwoEars {
			f.Channels = 2
		}
		out = append(out, File{s.Source.Name + "_" + c.Name + ".wav", func(w io.Writer) error {
			return wave.Write(w, Until(ctx, s.set.Streamer(i)), f)
		}})
	}
	return out
}

// comment says in a file what it holds.
func (s *Audition) comment(c Case) string {
	text := c.Words
	if s.Listener.TwoEars {
		text += ", with two ears"
	}
	if s.Listener.Dry {
		text += ", without surface or room"
	}
	if s.Way != nil {
		text += s.Whereabouts()
	}
	return whatIsHeard(s.Plan, cmp.Or(s.Where, theSpot), text+s.LeftOut(), s.MatchedBy())
}

// theSpot is where one listens where nothing else is asked for.
const theSpot = "the listening spot"

// whatIsHeard says in a sound file what is heard where, and by which rule cases are as loud.
func whatIsHeard(p *timing.Spot, where, words, rule string) string {
	return "What " + where + " hears of the design \"" + p.Array.Name + "\": " + words +
		". All cases of one programme are equally loud (" + rule + ")."
}

// Whereabouts says in words that the listener walks, or is not at the spot.
func (s *Audition) Whereabouts() string {
	switch {
	case s.Way == nil && s.Where != "":
		return ", at " + s.Where
	case s.Way == nil:
		return ""
	case s.Way.ToAndFro:
		return ", walking to and fro"
	}
	return ", walking"
}

// LeftOut says what of a room is not heard on a walk.
func (s *Audition) LeftOut() string {
	if s.Way == nil || s.Listener.Dry || !s.Plan.Array.Room.Present {
		return ""
	}
	by := "floor"
	switch s.Plan.Array.On {
	case layout.OnCeiling:
		by = "ceiling"
	case layout.OnWall:
		by = "back wall"
	}
	return ", with the " + by + "'s echo but not the room's other ones"
}

// Side says in a picture whose sound it shows.
func (s *Audition) Side() string {
	if s.Listener.TwoEars {
		return ", left ear"
	}
	return ""
}

// MatchedBy says by what the cases are equally loud.
func (s *Audition) MatchedBy() string {
	return [...]string{
		ByLoudness: "ITU-R BS.1770-5",
		ByUngated:  "weighted as in ITU-R BS.1770-5; too short or too soft for its gates",
		ByRMS:      "by their RMS; too short to be weighted",
	}[s.set.measure]
}

// Excerpts returns the beginning of each case, as the left ear hears it.
func (s *Audition) Excerpts() ([]Sound, error) {
	var out []Sound
	for i, c := range s.Cases {
		heard := beep.Take(pictured, s.set.Streamer(i))
		out = append(out, Sound{Words: c.Words, Samples: leftOf(heard)})
		if err := heard.Err(); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// Clicks returns what the listener's left ear hears of a click in each case.
func (who Listener) Clicks(p *timing.Spot, cases []Case) ([]Sound, error) {
	responses, err := who.Responses(p, plain(cases), Rate)
	return clicksOf(responses, cases), err
}

// clicksOf names responses by their cases.
func clicksOf(responses []Response, cases []Case) (out []Sound) {
	for i, r := range responses {
		out = append(out, Sound{Words: cases[i].Words, Samples: r.Left})
	}
	return out
}
