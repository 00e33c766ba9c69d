package main

import (
	"cmp"
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"sync/atomic"

	"pappus/preview"
	"pappus/preview/decode"

	"github.com/gopxl/beep/v2"
)

// source is what is played: a programme of ours or the listener's own file.
type source struct {
	name, words string
	period      int // samples until it begins again
	own         bool
	times       func(n int) beep.Streamer // so often from its beginning; below 0: without an end
	cut         *atomic.Int64             // samples of a file that is cut short, once they were read; 0: it is whole
}

// endless streams the source without an end.
func (s source) endless() beep.Streamer { return s.times(-1) }

// lasting returns whole periods that last at least so many seconds, without a step at
// either end: about 6 s of a programme, and of one's own file all, once.
func (s source) lasting(seconds float64) func() beep.Streamer {
	n := 1
	if !s.own {
		n = preview.Periods(s.period, rate)
	}
	n = max(n, s.periods(seconds))
	return func() beep.Streamer { return preview.Edged(s.times(n), rate) }
}

// periods returns how many periods last so many seconds.
func (s source) periods(seconds float64) int {
	samples := int(seconds * rate)
	return (samples + s.period - 1) / s.period
}

// turn returns for how many samples one case plays before the next: whole periods
// that last so many seconds, where they are not long.
func (s source) turn(seconds float64) int {
	if whole := s.periods(seconds) * s.period; whole <= int(max(seconds, longestTurn)*rate) {
		return whole
	}
	return int(seconds * rate)
}

// warning says what is missing of the source; it is empty where nothing is.
func (s source) warning() string {
	if s.cut == nil || s.cut.Load() == 0 {
		return ""
	}
	return fmt.Sprintf("%s is cut short: only its first %.2f s are heard", s.words, float64(s.cut.Load())/rate)
}

// source opens what is played.
func (h hearing) source() (source, error) {
	if h.file != "" {
		s, err := ownFile(h.file)
		if err != nil {
			return s, fmt.Errorf("--file: %w", err)
		}
		return s, nil
	}
	kind, err := chosen(h.programme)
	if err != nil {
		return source{}, err
	}
	loop := kind.Make(rate)
	return source{name: kind.Name, words: kind.Words, period: len(loop), times: func(n int) beep.Streamer {
		if n < 0 {
			return loop.Streamer()
		}
		return beep.Take(n*len(loop), loop.Streamer())
	}}, nil
}

// ownFile opens a sound file once to see that it can be played; each stream then
// opens it anew.
func ownFile(path string) (source, error) {
	s, err := decode.Open(path, rate)
	if err != nil {
		return source{}, err
	}
	own, channels := s.Format()
	words := fmt.Sprintf("%s (%s, %d Hz, %d channels mixed to mono)", filepath.Base(path), s.Kind(), own, channels)
	if channels == 1 {
		words = fmt.Sprintf("%s (%s, %d Hz)", filepath.Base(path), s.Kind(), own)
	}
	period := s.Len()
	if err := s.Close(); err != nil {
		return source{}, err
	}
	name := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	out := source{name: plainName(name), words: words, period: period, own: true, cut: new(atomic.Int64)}
	out.times = func(n int) beep.Streamer { return &reopened{path: path, left: n, cut: out.cut} }
	return out, nil
}

// plainName makes a name fit for a file on any system.
func plainName(name string) string {
	plain := strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' {
			return r
		}
		return '_'
	}, name)
	if plain == "" {
		return "sound"
	}
	return plain
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
		r.stream, r.err = decode.Open(r.path, rate)
		if r.err != nil {
			r.err = fmt.Errorf("--file: %w", r.err)
		}
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
	if err = cmp.Or(err, r.stream.Close()); err != nil {
		r.err = fmt.Errorf("--file: %w", err)
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

func (r *reopened) Err() error {
	if errors.Is(r.err, errEnd) {
		return nil
	}
	return r.err
}
