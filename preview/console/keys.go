package console

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"os"

	"pappus/preview"

	"golang.org/x/term"
)

// KeyHelp says what the keys do while a set of cases plays.
const KeyHelp = "  1 2 3   that case, until q   space  the next case, until q\n" +
	"  b       back to the other    + -    louder, softer by 2 dB\n" +
	"  q       stop                 ?      these keys\n"

// How far the keys may raise the level over the quiet start, and lower it, in dB; the
// limiter holds whatever comes.
const loudest, softest, levelStep = 20, -40, 2

// keys are what is pressed while something plays.
type keys struct {
	in       io.Reader
	restore  func()
	terminal bool
}

// openKeys makes ready to read single keys; restore puts the terminal back.
func openKeys(in io.Reader) *keys {
	k := &keys{in: in, restore: func() {}}
	f, ok := in.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return k
	}
	if before, err := term.MakeRaw(int(f.Fd())); err == nil {
		k.terminal = true
		k.restore = func() { _ = term.Restore(int(f.Fd()), before) }
	}
	return k
}

// hint names the keys where there is someone to press them.
func (k *keys) hint() string {
	if !k.terminal {
		return "; Ctrl-C stops"
	}
	return "; space: next, b: back, + -: level, q: stop, ?: keys"
}

// writer returns out fit for a terminal that takes single keys, which wants each
// line told to begin at the left.
func (k *keys) writer(out io.Writer) io.Writer {
	if !k.terminal {
		return out
	}
	return rawWriter{out}
}

type rawWriter struct{ io.Writer }

func (w rawWriter) Write(p []byte) (int, error) {
	if _, err := w.Writer.Write(bytes.ReplaceAll(p, []byte("\n"), []byte("\r\n"))); err != nil {
		return 0, err
	}
	return len(p), nil
}

// each does something for every key until there are no more or ctx is done.
func (k *keys) each(ctx context.Context, do func(byte)) {
	one := make([]byte, 1)
	for ctx.Err() == nil {
		n, err := k.in.Read(one)
		if n > 0 && ctx.Err() == nil {
			do(one[0])
		}
		if err != nil {
			return
		}
	}
}

// Keys that stop: q, and Ctrl-C, which a terminal that takes single keys hands on.
func stops(key byte) bool { return key == 'q' || key == 3 }

// deskKey does what a key says while the cases play.
func deskKey(key byte, desk *preview.Desk, level *levelKeys, stop func()) {
	switch {
	case stops(key):
		stop()
	case key >= '1' && key <= '9':
		desk.Choose(int(key - '1'))
	case key == ' ' || key == 'n':
		desk.Next()
	case key == 'b':
		desk.Back()
	case key == '?' || key == 'h':
		fmt.Fprint(level.out, KeyHelp)
	default:
		level.press(key)
	}
}

// levelKeys turns the volume by keys.
type levelKeys struct {
	volume *preview.Volume
	out    io.Writer
	level  float64 // dB over the quiet start
}

func (l *levelKeys) press(key byte) {
	switch key {
	case '+', '=':
		l.level = min(l.level+levelStep, loudest)
	case '-':
		l.level = max(l.level-levelStep, softest)
	default:
		return
	}
	l.volume.Turn(l.level)
	fmt.Fprintf(l.out, "level %+.0f dB\n", l.level)
}
