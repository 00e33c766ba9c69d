package dampinglog

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"time"

	"pappus/layout/design"
	"pappus/layout/prose"
	"pappus/layout/wholefile"
)

// head begins a new log.
const head = `# The damping log: each trial of vents and stuffing, and what was measured then.
# Trials are added at the end; what stands here is never changed by the program.
`

// Add adds a trial to the log at a path, which is made if there is none. fits says
// what there is room for; nil, or one that says nothing, leaves that as it is. What
// was in the file stays, byte for byte, in front of what is new; the file is
// replaced as a whole, or stays as it was. Of two at once the second waits.
//
// Other errors are of the file system or *design.Error: a log that cannot be read, a
// trial that would not be read back the same.
func Add(path string, t Trial, fits *Fits) error {
	if to, err := filepath.EvalSymlinks(path); err == nil {
		path = to
	}
	draft, err := wholefile.Begin(path)
	if err != nil {
		return err
	}
	defer draft.Abandon()
	old, err := design.ReadFile(path, maxSize)
	if errors.Is(err, fs.ErrNotExist) {
		old, err = []byte(head), nil
	}
	if err != nil {
		return err
	}
	text, err := grown(path, old, t, fits)
	if err != nil {
		return err
	}
	var mode fs.FileMode
	if info, err := os.Stat(path); err == nil {
		mode = info.Mode()
	}
	return draft.Put(text, mode)
}

// grown returns a log's text with a trial behind it, once that reads back as it
// should.
func grown(name string, old []byte, t Trial, fits *Fits) ([]byte, error) {
	before, err := Parse(name, old)
	if err != nil {
		return nil, err
	}
	at := fmt.Sprintf("trial[%d]", len(before.Trials)+1)
	if t.Date != "" {
		if _, err := time.Parse(time.DateOnly, t.Date); err != nil {
			return nil, &design.Error{File: name, Key: at + ".date", Value: strconv.Quote(t.Date), Reason: "must be a day such as 2025-03-01", Err: design.ErrType}
		}
	}
	said := fits != nil && fits.Said()
	if said && before.Fits.Said() {
		return nil, fmt.Errorf("%s: what fits is in the log already; change it there", name)
	}
	room := before.Fits
	if said {
		room = *fits
	}
	if key, value, most := room.exceeded(t); key != "" {
		return nil, &design.Error{File: name, Key: at + "." + key, Value: plain(value), Err: design.ErrRange,
			Reason: fmt.Sprintf("must be at most %s, which is what fits; if more does fit, change %s under [fits] in the log", plain(most), key)}
	}
	b := bytes.NewBuffer(append([]byte{}, old...))
	if len(old) > 0 && old[len(old)-1] != '\n' {
		b.WriteByte('\n')
	}
	if said {
		fits.text(b)
	}
	t.text(b)
	after, err := Parse(name, b.Bytes())
	if err != nil {
		return nil, err
	}
	if n := len(before.Trials); len(after.Trials) != n+1 || after.Trials[n] != t {
		return nil, &design.Error{File: name, Key: at, Err: design.ErrConflict,
			Reason: "would not read back as it is; without vents vent_mm and fill_g must be 0, and without stuffing depth_mm"}
	}
	return b.Bytes(), nil
}

// exceeded returns the key of a trial that is more than fits, its value and the most; an
// empty key where there is none.
func (f Fits) exceeded(t Trial) (key string, value, most float64) {
	switch {
	case t.StuffingG > f.StuffingG: // never so where it is not said, NaN
		return "stuffing_g", t.StuffingG, f.StuffingG
	case t.DepthMM > f.DepthMM:
		return "depth_mm", t.DepthMM, f.DepthMM
	case f.Vents >= 0 && t.Vents > f.Vents:
		return "vents", float64(t.Vents), float64(f.Vents)
	}
	return "", 0, 0
}

func (f Fits) text(b *bytes.Buffer) {
	table(b, "\n# What there is room for.\n[fits]\n", entry{"stuffing_g", plain(f.StuffingG), !math.IsNaN(f.StuffingG)},
		entry{"depth_mm", plain(f.DepthMM), !math.IsNaN(f.DepthMM)}, entry{"vents", plain(float64(f.Vents)), f.Vents >= 0})
}

func (t Trial) text(b *bytes.Buffer) {
	quoted := func(key, value string) entry { return entry{key, design.Quote(value), value != ""} }
	table(b, "\n[[trial]]\n", entry{"date", t.Date, t.Date != ""}, entry{"vents", plain(float64(t.Vents)), true},
		entry{"vent_mm", plain(t.VentMM), t.VentMM != 0}, entry{"fill_g", plain(t.FillG), t.FillG != 0}, entry{"stuffing_g", plain(t.StuffingG), true},
		entry{"depth_mm", plain(t.DepthMM), t.DepthMM != 0},
		quoted("impedance", t.Impedance), quoted("response", t.Response), quoted("remark", t.Remark))
}

// entry is a key with its value as TOML has it, which may be left out.
type entry struct {
	key, value string
	said       bool
}

func table(b *bytes.Buffer, head string, entries ...entry) {
	b.WriteString(head)
	for _, e := range entries {
		if e.said {
			fmt.Fprintf(b, "%s = %s\n", e.key, e.value)
		}
	}
}

// plain writes a number as TOML has it.
func plain(v float64) string { return prose.Number(v, 0) }
