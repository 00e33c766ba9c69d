package main

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/preview"
	"pappus/preview/blind"
	"pappus/timing"

	"github.com/gopxl/beep/v2"
	"github.com/gopxl/beep/v2/generators"
	"gonum.org/v1/gonum/spatial/r3"
)

func silence() beep.Streamer { return generators.Silence(-1) }

func TestDeskKeys(t *testing.T) {
	var out bytes.Buffer
	var on []int
	desk := preview.NewDesk(preview.NewSwitch([]beep.Streamer{silence(), silence(), silence()}, 480), 100, 0, func(i int) { on = append(on, i) })
	stopped := 0
	level := &levelKeys{knob: preview.NewKnob(desk, 480), out: &out}
	for _, key := range []byte("2 b9z+-==?q\x03") {
		deskKey(key, desk, level, func() { stopped++ })
	}
	if want := []int{1, 2, 1}; !slices.Equal(on, want) {
		t.Errorf("on: %v, want %v", on, want)
	}
	if want := "level +2 dB\nlevel +0 dB\nlevel +2 dB\nlevel +4 dB\n" + keyHelp; out.String() != want {
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

// trialOf is a blind test of silence, what it says, and how often it has stopped.
func trialOf(t *testing.T) (tr *trial, out *bytes.Buffer, stopped *int) {
	t.Helper()
	out, stopped = new(bytes.Buffer), new(int)
	desk := preview.NewDesk(preview.NewSwitch([]beep.Streamer{silence(), silence()}, 480), 1, 0, nil)
	desk.Choose(0)
	return newTrial(7, desk, &levelKeys{knob: preview.NewKnob(desk, 480), out: out}, func() { *stopped++ }), out, stopped
}

// flow lets so many samples sound.
func (t *trial) flow(n int) { t.desk.Stream(make([][2]float64, n)) }

// TestTrial: ten answers, all right by peeping, end the test; X is never named.
func TestTrial(t *testing.T) {
	tr, out, stopped := trialOf(t)
	tr.ask()
	for range blind.Tries {
		x, _ := tr.test.X()
		tr.key('x')
		tr.flow(heardX)
		tr.key('1')
		tr.key("ab"[x])
	}
	if r := tr.test.Result(); r.Right != 10 || *stopped != 1 {
		t.Errorf("%d right, stopped %d times", r.Right, *stopped)
	}
	if n := strings.Count(out.String(), "try "); n != 10 {
		t.Errorf("asked %d times", n)
	}
	if strings.Contains(out.String(), "X is") {
		t.Errorf("X is named: %q", out)
	}
	tr.conclude()
	if !strings.Contains(out.String(), "10 of 10 right") || strings.Contains(out.String(), "stopped") {
		t.Errorf("said %q", out)
	}
}

// TestTrialWaitsForX: who has not heard X for half a second in this try has no
// answer, whatever else was heard, and is told so once.
func TestTrialWaitsForX(t *testing.T) {
	tr, out, _ := trialOf(t)
	tr.key('a') // no sound at all
	tr.flow(rate)
	tr.key('a') // A, not X
	tr.key('x')
	tr.flow(heardX / 2)
	tr.key('b') // too short
	tr.key('2')
	tr.flow(rate)
	tr.key('b') // B went on
	if n := len(tr.test.Answered()); n != 0 {
		t.Fatalf("%d answers to what was not heard", n)
	}
	if n := strings.Count(out.String(), "hear X first"); n != 1 {
		t.Errorf("told %d times: %q", n, out)
	}
	tr.key('x')
	tr.flow(heardX / 2)
	tr.key('b')
	if n := len(tr.test.Answered()); n != 1 {
		t.Fatalf("%d answers, want 1", n)
	}
	tr.key('a') // the next X was not heard
	tr.conclude()
	if !strings.Contains(out.String(), "stopped after 1 of 10\n") {
		t.Errorf("said %q", out)
	}
}

// TestOwnFileRepeats: a file without an end begins again, and one that is gone
// says so.
func TestOwnFileRepeats(t *testing.T) {
	s, err := ownFile("../../preview/decode/testdata/tone16.wav")
	if err != nil {
		t.Fatal(err)
	}
	once, endless := s.times(1), s.endless()
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
	twice := 0
	for two := s.times(2); ; {
		n, ok := two.Stream(buffer)
		if twice += n; !ok {
			break
		}
	}
	if twice != 2*length || s.warning() != "" {
		t.Errorf("twice: %d samples of %d, %q", twice, length, s.warning())
	}
	gone := &reopened{path: "no such file", left: 1}
	if n, ok := gone.Stream(buffer); n != 0 || ok || gone.Err() == nil {
		t.Errorf("%d samples of nothing, %v", n, gone.Err())
	}
}

// TestCutFile: what is there of a file that is cut short is played, again and again,
// and the warning says how much that is.
func TestCutFile(t *testing.T) {
	whole, err := os.ReadFile("../../preview/decode/testdata/tone16.wav")
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "cut.wav")
	if err := os.WriteFile(path, whole[:len(whole)/2], 0o600); err != nil {
		t.Fatal(err)
	}
	s, err := ownFile(path)
	if err != nil {
		t.Fatal(err)
	}
	level := preview.LevelOf(s.times(3), rate)
	if level.Peak < 0.01 || s.warning() == "" || !strings.Contains(s.warning(), "cut short") {
		t.Errorf("%+v, %q", level, s.warning())
	}
	t.Log(s.warning())
}

// TestTurns are whole periods, but for what is long.
func TestTurns(t *testing.T) {
	for _, c := range []struct {
		period  int
		seconds float64
		want    int
	}{
		{16384, 4, 12 * 16384}, // 4.1 s of clicks
		{264000, 4, 264000},    // a sweep of 5.5 s
		{264000, 8, 528000},
		{300 * rate, 4, 4 * rate}, // a song
		{10 * rate, 15, 15 * rate},
	} {
		if have := (source{period: c.period}).turn(c.seconds); have != c.want {
			t.Errorf("%d samples, %g s: %d, want %d", c.period, c.seconds, have, c.want)
		}
	}
}

func TestPlainName(t *testing.T) {
	for have, want := range map[string]string{"My song.v2": "My_song_v2", "": "sound", "../x": "___x", "ok-1": "ok-1"} {
		if got := plainName(have); got != want {
			t.Errorf("%q: %q, want %q", have, got, want)
		}
	}
}

// TestWalkSaysWhere: a walk is said as a tape measure finds it, with the loudspeaker's
// own left, which is the right hand of who faces it.
func TestWalkSaysWhere(t *testing.T) {
	p := &timing.Plan{Array: &layout.Array{Spot: r3.Vec{X: 1.56, Z: 2.32}}}
	got := hearing{walk: []string{"1.5,0.5,2.32", "-1,0,0"}}.along(p)
	want := "You walk from 1.56 m in front along the floor, ears 2.32 m above its middle\n" +
		"to 1.50 m in front along the floor, 0.50 m to the loudspeaker's left, ears 2.32 m above its middle\n" +
		"then to 1.00 m behind along the floor, ears level with its middle\n"
	if got != want {
		t.Errorf("it says\n%s", got)
	}
	if got := (hearing{}).along(p); got != "" {
		t.Errorf("of nobody who walks it says %q", got)
	}
}
