package console

import (
	"context"
	"errors"
	"fmt"
	"io"
	"sync"
	"time"

	"pappus/preview"
	"pappus/preview/blind"
	"pappus/preview/play"
)

// heardX is for how long X must have been on in a try before it is answered, in
// samples: half a second, and what waits before the device.
const heardX = 6 * preview.Rate / 10

// blindKeys says what the keys do in a blind test.
const blindKeys = "1, 2, x: hear A, B, X; a or b: say what X is; + -: level; q: stop; ?: these keys.\n"

// Blind plays A, B or X, the first two cases, as the keys say and asks ten times which of
// both X is. along says where the listener walks. Errors are those of play.Play.
func Blind(ctx context.Context, out io.Writer, in io.Reader, s *preview.Audition, along string) error {
	k := openKeys(in)
	defer k.restore()
	out = k.writer(out)
	fmt.Fprintf(out, "%s%s%s. A is %s, B is %s, X is one of them.\n%s%s", Caution, s.Source.Words, s.Whereabouts()+s.LeftOut(), s.Cases[0].Words, s.Cases[1].Words, along, blindKeys)
	desk := preview.NewDesk(preview.NewSwitch(s.Endless(2), crossfade), 1, 0, nil)
	desk.Choose(0)
	volume := preview.NewVolume(desk, crossfade)
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	t := newTrial(uint64(time.Now().UnixNano()), desk, &levelKeys{volume: volume, out: out}, stop)
	t.line = !k.terminal
	t.ask()
	go func() {
		k.each(ctx, t.key)
		// A device that is not there should have been found out before this ends.
		for desk.Given() < heardX && ctx.Err() == nil {
			time.Sleep(20 * time.Millisecond)
		}
		stop()
	}()
	err := play.Play(ctx, preview.Rate, volume, play.DefaultLevel)
	if !errors.Is(err, play.ErrNoDevice) {
		t.conclude()
	}
	return err
}

// trial is a blind test under way.
type trial struct {
	mu    sync.Mutex
	test  *blind.Test
	desk  *preview.Desk
	level *levelKeys
	stop  func()
	line  bool // end the line of a question: no terminal shows the answer beside it

	since int // what the desk had given when X came on; below 0: it is not on
	heard int // samples of X in this try before that
	told  bool
}

func newTrial(seed uint64, desk *preview.Desk, level *levelKeys, stop func()) *trial {
	return &trial{test: blind.New(seed), desk: desk, level: level, stop: stop, since: -1}
}

func (t *trial) say(format string, values ...any) { fmt.Fprintf(t.level.out, format, values...) }

func (t *trial) ask() {
	t.say("try %d of %d: ", t.test.Result().Tries+1, blind.Tries)
	if t.line {
		t.say("\n")
	}
}

// key does what a key says.
func (t *trial) key(key byte) {
	t.mu.Lock()
	defer t.mu.Unlock()
	x, open := t.test.X()
	switch {
	case !open || stops(key):
		t.stop()
	case key == '1' || key == '2':
		t.leave()
		t.desk.Choose(int(key - '1'))
	case key == 'x':
		t.leave()
		t.since = t.desk.Given()
		t.desk.Choose(int(x))
	case key == 'a' || key == 'b':
		t.answer(blind.Side(key - 'a'))
	case key == '?' || key == 'h':
		t.say("%s", blindKeys)
	default:
		t.level.press(key)
	}
}

// leave counts how long X was on.
func (t *trial) leave() {
	if t.since >= 0 {
		t.heard += t.desk.Given() - t.since
	}
	t.since = -1
}

// answer records what X is said to be, and asks again or ends. Who has not heard X
// has nothing to say.
func (t *trial) answer(s blind.Side) {
	on := t.since >= 0
	t.leave()
	if t.heard < heardX {
		if !t.told {
			t.say("hear X first, for half a second: x\n")
			t.told = true
		}
		if on {
			t.since = t.desk.Given()
		}
		return
	}
	t.heard, t.told = 0, false
	t.say("you said %s\n", s)
	if t.test.Answer(s); t.test.Done() {
		t.stop()
		return
	}
	t.ask()
}

// conclude says how the test went.
func (t *trial) conclude() {
	t.mu.Lock()
	defer t.mu.Unlock()
	n := t.test.Result().Tries
	if n < blind.Tries {
		t.say("stopped after %d of %d\n", n, blind.Tries)
	}
	if n > 0 {
		t.say("%s\n", t.test.Result())
	}
}
