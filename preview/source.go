package preview

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"sync/atomic"

	"pappus/preview/decode"
	"pappus/preview/limit"
	"pappus/preview/programme"

	"github.com/gopxl/beep/v2"
)

// Rate is that of all sound that is played or written, in samples a second.
const Rate = 48000

const (
	fileSeconds = 6.0  // s, about, of a programme in a file; whole periods are taken
	edge        = 0.01 // s, rise at the beginning, fall at the end

	// How long one case plays before the next, in s: at least, and at most for the sake of
	// whole periods of the programme.
	shortestTurn, longestTurn = 4, 12
)

// Source is what is played, at Rate: a programme or the listener's own file.
type Source struct {
	Name, Words string // for file names, for people
	period      int    // samples until it begins again
	own         bool
	times       func(n int) beep.Streamer // so often from its beginning; below 0: without an end
	cut         *atomic.Int64             // samples of a file that is cut short, once they were read; 0: it is whole
}

// FromProgramme makes a programme a source.
func FromProgramme(p programme.Programme) Source {
	loop := p.Make(Rate)
	return Source{Name: p.Name, Words: p.Words, period: len(loop), times: func(n int) beep.Streamer {
		if n < 0 {
			return loop.Streamer()
		}
		return beep.Take(n*len(loop), loop.Streamer())
	}}
}

// FromFile opens a sound file once to see that it can be played; each stream then opens
// it anew. Errors are those of package decode.
func FromFile(path string) (Source, error) {
	s, err := decode.Open(path, Rate)
	if err != nil {
		return Source{}, err
	}
	rate, channels := s.Format()
	words := fmt.Sprintf("%s (%s, %d Hz, %d channels mixed to mono)", filepath.Base(path), s.Kind(), rate, channels)
	if channels == 1 {
		words = fmt.Sprintf("%s (%s, %d Hz)", filepath.Base(path), s.Kind(), rate)
	}
	name := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	out := Source{Name: plainName(name), Words: words, period: s.Len(), own: true, cut: new(atomic.Int64)}
	out.times = func(n int) beep.Streamer { return &reopened{path: path, left: n, cut: out.cut} }
	return out, s.Close()
}

// plainName makes a name fit for a file on any system.
func plainName(name string) string {
	plain := strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' {
			return r
		}
		return '_'
	}, name)
	return cmp.Or(plain, "sound")
}

// lasting streams whole periods that last at least so many seconds, without a step at
// either end: about 6 s of a programme, and of one's own file all, once.
func (s Source) lasting(seconds float64) func() beep.Streamer {
	n := 1
	if !s.own {
		n = periods(s.period, Rate)
	}
	n = max(n, s.periods(seconds))
	return func() beep.Streamer { return edged(s.times(n), Rate) }
}

// periods returns how many whole periods of so many samples last about 6 s: one at least.
func periods(period, rate int) int {
	return max(1, int(math.Round(fileSeconds*float64(rate)/float64(period))))
}

// edged streams a source that rises and falls within 10 ms, so that it begins and ends
// without a step.
func edged(src beep.Streamer, rate int) beep.Streamer {
	short := int(edge * float64(rate))
	return limit.Fade(src, short, short)
}

// periods returns how many periods last so many seconds.
func (s Source) periods(seconds float64) int {
	samples := int(seconds * Rate)
	return (samples + s.period - 1) / s.period
}

// turn returns for how many samples one case plays before the next: whole periods that
// last so many seconds, where they are not long.
func (s Source) turn(seconds float64) int {
	if whole := s.periods(seconds) * s.period; whole <= int(max(seconds, longestTurn)*Rate) {
		return whole
	}
	return int(seconds * Rate)
}

// Warning says what is missing of the source, as far as it has been read; it is empty
// where nothing is.
func (s Source) Warning() string {
	if s.cut == nil || s.cut.Load() == 0 {
		return ""
	}
	return fmt.Sprintf("%s is cut short: only its first %.2f s are heard", s.Words, float64(s.cut.Load())/Rate)
}

// reopened streams a sound file so many times, each time opened when it is first read
// and closed at its end. One that is cut short ends where it is cut.
type reopened struct {
	path   string
	left   int // times that are left, this one too; below 0: no end
	cut    *atomic.Int64
	stream *decode.Stream
	given  bool // something since the last beginning
	err    error
}

// Stream fills samples.
func (r *reopened) Stream(samples [][2]float64) (n int, ok bool) {
	for n < len(samples) && r.open() {
		got, more := r.stream.Stream(samples[n:])
		n += got
		r.given = r.given || got > 0
		if !more && !r.again() {
			break
		}
	}
	return n, n > 0
}

// open reports whether there is a stream to read.
func (r *reopened) open() bool {
	if r.stream == nil && r.err == nil {
		r.stream, r.err = decode.Open(r.path, Rate)
	}
	return r.err == nil
}

// again goes on from the beginning, if there is to be one, or ends.
func (r *reopened) again() bool {
	err := r.stream.Err()
	if errors.Is(err, decode.ErrShort) && r.given {
		r.cut.Store(int64(r.stream.Position()))
		err = nil
	}
	if r.err = cmp.Or(err, r.stream.Close()); r.err != nil {
		return false
	}
	if r.left--; r.left == 0 || !r.given {
		r.err = errEnd
		return false
	}
	r.stream, r.given = nil, false
	return true
}

// errEnd marks a stream that is over; it is no failure.
var errEnd = errors.New("end of the sound")

// Err is what went wrong.
func (r *reopened) Err() error {
	if errors.Is(r.err, errEnd) {
		return nil
	}
	return r.err
}
