package main

import (
	"context"
	"fmt"
	"io"
	"time"

	"pappus/preview"
	"pappus/preview/blind"
	"pappus/preview/play"
)

// blindTest plays A, B or X as the keys say and asks ten times which of both X is.
func blindTest(ctx context.Context, out io.Writer, in io.Reader, set *preview.Set, cases []preview.Case, s source) error {
	k := openKeys(in)
	defer k.close()
	out = k.writer(out)
	fmt.Fprintf(out, "%s%s. A is %s, B is %s, X is one of them.\n"+
		"1, 2, x: hear A, B, X; a or b: say what X is; + -: level; q: stop.\n", caution, s.words, cases[0].Words, cases[1].Words)
	desk := preview.NewDesk(preview.NewSwitch(sources(set, 2, s), crossfade), 1, 0, nil)
	desk.Choose(0)
	knob := preview.NewKnob(desk, crossfade)
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	t := &trial{test: blind.New(uint64(time.Now().UnixNano())), desk: desk, level: &levelKeys{knob: knob, out: out}, out: out, stop: stop}
	t.ask()
	go k.each(ctx, t.key)
	err := play.Play(ctx, rate, knob, play.DefaultLevel)
	if len(t.test.Answered()) > 0 {
		fmt.Fprintln(out, t.test.Result())
	}
	return err
}

// trial is a blind test under way.
type trial struct {
	test  *blind.Test
	desk  *preview.Desk
	level *levelKeys
	out   io.Writer
	stop  func()
}

func (t *trial) ask() {
	fmt.Fprintf(t.out, "try %d of %d: ", len(t.test.Answered())+1, blind.Tries)
}

// key does what a key says.
func (t *trial) key(key byte) {
	x, open := t.test.X()
	switch {
	case !open || stops(key):
		t.stop()
	case key == '1' || key == '2':
		t.desk.Choose(int(key - '1'))
	case key == 'x':
		t.desk.Choose(int(x))
	case key == 'a' || key == 'b':
		t.answer(blind.Side(key - 'a'))
	default:
		t.level.press(key)
	}
}

// answer records what X is said to be, and asks again or ends.
func (t *trial) answer(s blind.Side) {
	fmt.Fprintf(t.out, "X is %s\n", s)
	if err := t.test.Answer(s); err != nil || t.test.Done() {
		t.stop()
		return
	}
	t.ask()
}
