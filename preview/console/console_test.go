package console

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
	level := &levelKeys{volume: preview.NewVolume(desk, 480), out: &out}
	for _, key := range []byte("2 b9z+-==?q\x03") {
		deskKey(key, desk, level, func() { stopped++ })
	}
	if want := []int{1, 2, 1}; !slices.Equal(on, want) {
		t.Errorf("on: %v, want %v", on, want)
	}
	if want := "level +2 dB\nlevel +0 dB\nlevel +2 dB\nlevel +4 dB\n" + KeyHelp; out.String() != want {
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
	return newTrial(7, desk, &levelKeys{volume: preview.NewVolume(desk, 480), out: out}, func() { *stopped++ }), out, stopped
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
	tr.flow(preview.Rate)
	tr.key('a') // A, not X
	tr.key('x')
	tr.flow(heardX / 2)
	tr.key('b') // too short
	tr.key('2')
	tr.flow(preview.Rate)
	tr.key('b') // B went on
	if n := tr.test.Result().Tries; n != 0 {
		t.Fatalf("%d answers to what was not heard", n)
	}
	if n := strings.Count(out.String(), "hear X first"); n != 1 {
		t.Errorf("told %d times: %q", n, out)
	}
	tr.key('x')
	tr.flow(heardX / 2)
	tr.key('b')
	if n := tr.test.Result().Tries; n != 1 {
		t.Fatalf("%d answers, want 1", n)
	}
	tr.key('a') // the next X was not heard
	tr.conclude()
	if !strings.Contains(out.String(), "stopped after 1 of 10\n") {
		t.Errorf("said %q", out)
	}
}
