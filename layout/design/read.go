package design

import (
	"bytes"
	_ "embed"
	"fmt"
	"io"
	"maps"
	"os"
	"slices"

	"pappus/layout/prose"

	"github.com/pelletier/go-toml/v2"
)

// maxSize is the most that a design file may hold, in bytes.
const maxSize = 1 << 20

//go:embed lantern.toml
var lantern string

// Read reads and checks the design file at path. Any error is an *Error; for a
// file that is not there errors.Is(err, fs.ErrNotExist) holds.
func Read(path string) (*Design, error) {
	data, err := ReadFile(path, maxSize)
	if err != nil {
		return nil, err
	}
	return Parse(path, data)
}

// ReadFile reads a design file, or one that a design names, of at most so many
// bytes.
// Any error is an *Error; ErrTooLarge and fs.ErrNotExist can be told from it.
func ReadFile(path string, most int) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, unreadable(path, err)
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, int64(most)+1))
	if err != nil {
		return nil, unreadable(path, err)
	}
	if len(data) > most {
		return nil, tooLarge(path, most)
	}
	return data, nil
}

// unreadable is the error for a file that the system would not give.
func unreadable(path string, err error) *Error {
	return &Error{File: path, Reason: prose.Reason(err).Error(), Err: err}
}

// tooLarge is the error for a file that holds more than any design would.
func tooLarge(path string, most int) *Error {
	return &Error{File: path, Reason: fmt.Sprintf("too large; must be at most %d bytes", most), Err: ErrTooLarge}
}

// Parse checks a design that has been read already; name stands for its file
// in messages, and the files that it names are looked for beside it. Any error
// is an *Error.
func Parse(name string, data []byte) (*Design, error) {
	if len(data) > maxSize {
		return nil, tooLarge(name, maxSize)
	}
	// Some editors begin a file with a byte order mark.
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	var in map[string]any
	if err := toml.Unmarshal(data, &in); err != nil {
		return nil, malformed(name, data, err, aboutKeys)
	}
	r := reader{Design: defaults(), file: name, lines: findLines(data)}
	r.Path = name
	r.top(in)
	if err := r.first(); err != nil {
		return nil, err
	}
	r.fill()
	r.check()
	if err := r.first(); err != nil {
		return nil, err
	}
	return r.Design, nil
}

// Default gives the design that is built into the program: a lantern of small
// drivers in the story corner of a village library.
func Default() *Design {
	d, err := Parse("lantern.toml", DefaultTOML())
	if err != nil {
		panic("design: " + err.Error())
	}
	return d
}

// DefaultTOML gives the text of the built-in design.
func DefaultTOML() []byte { return []byte(lantern) }

// Starter gives a design to begin from, with a comment to each key. It is the
// built-in one: something that works is the best thing to change.
func Starter() []byte { return DefaultTOML() }

// reader fills a design from what the file holds and gathers what is wrong.
type reader struct {
	*Design
	file   string
	lines  lines
	faults []*Error
}

// fault notes that something is wrong with a key.
func (r *reader) fault(path, value, reason string, kind error) {
	r.faults = append(r.faults, &Error{
		File: r.file, Line: r.lines[path], Key: shorten(path, 60), Value: value, Reason: reason, Err: kind,
	})
}

// first gives the fault to speak of: what is missing comes last, since a
// misspelt key is also a missing one; else the first in the file.
func (r *reader) first() error {
	if len(r.faults) == 0 {
		return nil
	}
	return slices.MinFunc(r.faults, func(a, b *Error) int {
		if m := missing(a) - missing(b); m != 0 {
			return m
		}
		return a.Line - b.Line
	})
}

func missing(e *Error) int {
	if e.Err == ErrMissing {
		return 1
	}
	return 0
}

// has says whether the file gives a value for the key.
func (r *reader) has(path string) bool { return r.lines[path] > 0 }

// top reads the whole file.
func (r *reader) top(in map[string]any) {
	tables := r.tables()
	top, tables := tables[0].keys, tables[1:]
	known := append(names(top), "channel")
	r.keys("", in, top)
	for _, t := range tables {
		known = append(known, t.name)
		v, given := in[t.name]
		sub, ok := v.(map[string]any)
		if given && !ok {
			r.fault(t.name, written(v), fmt.Sprintf("must be a table that begins with [%s]", t.name), ErrType)
			continue
		}
		if !given && t.optional {
			continue
		}
		r.keys(t.name, sub, t.keys)
		r.strangers(t.name, sub, t.keys)
	}
	r.channels(in["channel"])
	for _, name := range sorted(in) {
		if !slices.Contains(known, name) {
			r.fault(join("", name), "", r.hintAtTop(name, in[name], known), ErrUnknownKey)
		}
	}
}

// keys reads the keys of one table.
func (r *reader) keys(path string, in map[string]any, keys []key) {
	for _, k := range keys {
		at := join(path, k.name)
		v, given := in[k.name]
		if !given {
			if k.needed {
				r.lack(path, at, k)
			}
			continue
		}
		switch err := k.set(v); err {
		case nil:
		case ErrType:
			r.fault(at, written(v), "must be "+k.kindly+k.instead(v), err)
		default:
			r.fault(at, written(v), "must be "+k.allowed+k.instead(v), err)
		}
	}
}

// lack notes that a key is not there, on the line where its table begins.
func (r *reader) lack(table, path string, k key) {
	r.fault(path, "", "missing; must be "+k.kindly, ErrMissing)
	r.faults[len(r.faults)-1].Line = r.lines[table]
}

// strangers notes the keys of a table that are not known.
func (r *reader) strangers(path string, in map[string]any, keys []key) {
	for _, name := range sorted(in) {
		if !hasKey(keys, name) {
			r.fault(join(path, name), "", r.hint(name, names(keys)), ErrUnknownKey)
		}
	}
}

// channels reads the [[channel]] tables.
func (r *reader) channels(v any) {
	if v == nil {
		return
	}
	rows, ok := v.([]any)
	if !ok {
		r.fault("channel", written(v), "must be tables that begin with [[channel]]", ErrType)
		return
	}
	for i, row := range rows {
		at := nth("channel", i+1)
		in, ok := row.(map[string]any)
		if !ok {
			r.fault(at, written(row), "must be a table that begins with [[channel]]", ErrType)
			continue
		}
		if i == MaxDrivers {
			r.fault(at, "", fmt.Sprintf("too many channels; must be at most %d", MaxDrivers), ErrRange)
			return
		}
		var c Channel
		r.keys(at, in, c.keys())
		r.strangers(at, in, c.keys())
		r.Channels = append(r.Channels, c)
	}
}

// sorted gives the names in a table.
func sorted(m map[string]any) []string { return slices.Sorted(maps.Keys(m)) }
