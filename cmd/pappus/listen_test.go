package main

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"pappus/preview"
	"pappus/preview/blind"

	"github.com/gopxl/beep/v2"
	"github.com/gopxl/beep/v2/generators"
)

func silence() beep.Streamer { return generators.Silence(-1) }

func TestDeskKeys(t *testing.T) {
	var out bytes.Buffer
	var on []int
	desk := preview.NewDesk(preview.NewSwitch([]beep.Streamer{silence(), silence(), silence()}, 480), 100, 0, func(i int) { on = append(on, i) })
	stopped := 0
	level := &levelKeys{knob: preview.NewKnob(desk, 480), out: &out}
	for _, key := range []byte("2 b9z+-==q\x03") {
		deskKey(key, desk, level, func() { stopped++ })
	}
	if want := []int{1, 2, 1}; !slices.Equal(on, want) {
		t.Errorf("on: %v, want %v", on, want)
	}
	if want := "level +2 dB\nlevel +0 dB\nlevel +2 dB\nlevel +4 dB\n"; out.String() != want {
		t.Errorf("said %q, want %q", out.String(), want)
	}
	if stopped != 2 {
		t.Errorf("stopped %d times", stopped)
	}
	for range 40 {
		level.press('+')
	}
	if level.level != loudest {
		t.Errorf("raised to %g dB", level.level)
	}
}

// TestTrial: ten answers, all right by peeping, end the test; X is never named.
func TestTrial(t *testing.T) {
	var out bytes.Buffer
	desk := preview.NewDesk(preview.NewSwitch([]beep.Streamer{silence(), silence()}, 480), 1, 0, nil)
	stopped := 0
	tr := &trial{test: blind.New(7), desk: desk, level: &levelKeys{knob: preview.NewKnob(desk, 480), out: &out}, out: &out, stop: func() { stopped++ }}
	tr.ask()
	for range blind.Tries {
		x, _ := tr.test.X()
		tr.key('x')
		tr.key('1')
		tr.key("ab"[x])
	}
	if r := tr.test.Result(); r.Right != 10 || stopped != 1 {
		t.Errorf("%d right, stopped %d times", r.Right, stopped)
	}
	if n := strings.Count(out.String(), "try "); n != 10 {
		t.Errorf("asked %d times", n)
	}
}

// TestOwnFileRepeats: a file without an end begins again, and one that is gone
// says so.
func TestOwnFileRepeats(t *testing.T) {
	s, err := ownFile("../../preview/decode/testdata/tone16.wav")
	if err != nil {
		t.Fatal(err)
	}
	once, endless := s.once(), s.endless()
	buffer := make([][2]float64, 4800)
	length := 0
	for {
		n, ok := once.Stream(buffer)
		if length += n; !ok {
			break
		}
	}
	if once.Err() != nil || length == 0 {
		t.Fatalf("%d samples, %v", length, once.Err())
	}
	more := 0
	for more < 5*length {
		n, ok := endless.Stream(buffer)
		if more += n; !ok {
			t.Fatalf("ends after %d samples: %v", more, endless.Err())
		}
	}
	gone := &reopened{path: "no such file"}
	if n, ok := gone.Stream(buffer); n != 0 || ok || gone.Err() == nil {
		t.Errorf("%d samples of nothing, %v", n, gone.Err())
	}
}

func TestPlainName(t *testing.T) {
	for have, want := range map[string]string{"My song.v2": "My_song_v2", "": "sound", "../x": "___x", "ok-1": "ok-1"} {
		if got := plainName(have); got != want {
			t.Errorf("%q: %q, want %q", have, got, want)
		}
	}
}
