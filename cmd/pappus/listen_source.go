package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"pappus/preview/decode"

	"github.com/gopxl/beep/v2"
)

// source is what is played: a programme of ours or the listener's own file.
type source struct {
	name, words string
	once        func() beep.Streamer // from the beginning to the end
	endless     func() beep.Streamer
}

// source opens what is played.
func (h hearing) source() (source, error) {
	if h.file != "" {
		return ownFile(h.file)
	}
	kind, err := chosen(h.programme)
	if err != nil {
		return source{}, err
	}
	loop := kind.Make(rate)
	return source{kind.Name, kind.Words,
		func() beep.Streamer { return beep.Take(len(loop), loop.Streamer()) },
		func() beep.Streamer { return loop.Streamer() },
	}, nil
}

// ownFile opens a sound file once to see that it can be played; each stream then
// opens it anew.
func ownFile(path string) (source, error) {
	s, err := decode.Open(path, rate)
	if err != nil {
		return source{}, fmt.Errorf("--file: %w", err)
	}
	own, channels := s.Format()
	words := fmt.Sprintf("%s (%s, %d Hz, %d of its channels as one)", filepath.Base(path), s.Kind(), own, channels)
	if channels == 1 {
		words = fmt.Sprintf("%s (%s, %d Hz)", filepath.Base(path), s.Kind(), own)
	}
	if err := s.Close(); err != nil {
		return source{}, fmt.Errorf("--file: %w", err)
	}
	name := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	return source{plainName(name), words,
		func() beep.Streamer { return &reopened{path: path} },
		func() beep.Streamer { return &reopened{path: path, endless: true} },
	}, nil
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

// reopened streams a sound file, opened when it is first read and closed at its
// end; without an end it begins again.
type reopened struct {
	path    string
	endless bool
	stream  *decode.Stream
	given   bool // something since the last beginning
	err     error
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
	}
	return r.err == nil
}

// again goes on from the beginning, if there is to be one, or ends.
func (r *reopened) again() bool {
	r.err = errors.Join(r.stream.Err(), r.stream.Close())
	if r.err == nil && r.endless && r.given {
		r.stream, r.given = nil, false
		return true
	}
	if r.err == nil {
		r.err = errEnd
	}
	return false
}

// errEnd marks a stream that is over; it is no failure.
var errEnd = errors.New("end of the sound")

func (r *reopened) Err() error {
	if errors.Is(r.err, errEnd) {
		return nil
	}
	return r.err
}
