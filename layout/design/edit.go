package design

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2"
)

// ErrEdit is wrapped where a text is good TOML but is written in such a way that
// one key alone cannot be changed in it.
var ErrEdit = errors.New("cannot be changed in place")

// Set returns the text of a design with one key changed; text itself stays as it
// is. Comments, blank lines and the order of the keys stay, and a comment that
// trails the value keeps its column where there is room.
//
// key is a full name: body.radius_mm, or channel[2].gain_db, where the row after
// the last is a new one. value is a number (float64, int or int64), a string, a
// bool, or a []any of those and of lists. A key that the text has only as a
// remark, "# key = value", becomes live in its place; a table that it does not
// have is added. A value of nil remarks the key out.
//
// A table that is there or not (surface, room, woofer) is a key too: true brings
// it in, nil remarks it out with all that it holds. So does nil for channel, with
// all [[channel]] tables.
//
// Whether the design is then a good one is for Parse to say. Any error is an
// *Error: ErrSyntax, ErrTooLarge, ErrUnknownKey, ErrType for what TOML cannot
// hold, ErrEdit.
func Set(text []byte, key string, value any) ([]byte, error) {
	if len(text) > maxSize {
		return nil, tooLarge("design", maxSize)
	}
	mark := []byte("\ufeff")
	body, marked := bytes.CutPrefix(text, mark)
	var before map[string]any
	if err := toml.Unmarshal(body, &before); err != nil {
		return nil, Malformed("design", body, err)
	}
	c, err := newChange(key, value)
	if err != nil {
		return nil, err
	}
	e := editor{text: body, change: c, outline: findOutline(body)}
	out := e.edit()
	var after map[string]any
	if err := toml.Unmarshal(out, &after); err != nil || !same(c.expect(before, after), after) {
		return nil, c.fault("written in a way that cannot be changed here; edit the text", ErrEdit)
	}
	if marked {
		out = slices.Concat(mark, out)
	}
	return out, nil
}

// change is what is to become of one key.
type change struct {
	path  string // full name
	table string // empty for a key at the top
	name  string // empty for a whole table
	row   int    // of [[channel]], from 1; 0 for other tables
	text  string // the value as the file has it; empty: remark out
}

func newChange(path string, value any) (change, error) {
	c := change{path: path}
	if value != nil {
		text, ok := literal(value, 0)
		if !ok {
			return c, c.fault(fmt.Sprintf("a value of type %T cannot be written", value), ErrType)
		}
		c.text = text
	}
	d := defaults()
	if path == "channel" && value == nil {
		c.table = path
		return c, nil
	}
	for _, t := range d.tables() {
		if t.optional && t.name == path {
			c.table = path
			if value != nil && value != true {
				return c, c.fault("must be true, or nothing to take the table out", ErrType)
			}
			return c, nil
		}
		if name := strings.TrimPrefix(path, t.name+"."); (t.name == "" || name != path) && hasKey(t.keys, name) {
			c.table, c.name = t.name, name
			return c, nil
		}
	}
	if rest, ok := strings.CutPrefix(path, "channel["); ok {
		number, name, _ := strings.Cut(rest, "].")
		row, err := strconv.Atoi(number)
		if err == nil && row >= 1 && row <= MaxDrivers && strconv.Itoa(row) == number && hasKey(new(Channel).keys(), name) {
			c.table, c.name, c.row = nth("channel", row), name, row
			return c, nil
		}
	}
	return c, c.fault("not a known key", ErrUnknownKey)
}

func (c change) fault(reason string, kind error) *Error {
	return &Error{File: "design", Key: shorten(c.path, 60), Value: shorten(c.text, 60), Reason: reason, Err: kind}
}

// expect returns what the file should hold after the change, given what it held
// and, where a table is written key by key, whether it is still there.
func (c change) expect(before, after map[string]any) map[string]any {
	want := maps.Clone(before)
	if want == nil {
		want = map[string]any{}
	}
	switch {
	case c.name == "" && c.text == "":
		delete(want, c.table)
		return want
	case c.name == "":
		if _, ok := want[c.table]; !ok {
			want[c.table] = map[string]any{}
		}
		return want
	case c.table == "":
		c.put(want)
		return want
	}
	home := c.home(want)
	if home == nil {
		return want
	}
	c.put(home)
	if _, there := after[c.table]; !there && len(home) == 0 {
		delete(want, c.table)
	}
	return want
}

// home returns a copy of the table that the key is in, which it puts in place; nil
// where there is none and none is wanted.
func (c change) home(want map[string]any) map[string]any {
	var old map[string]any
	if c.row == 0 {
		old, _ = want[c.table].(map[string]any)
		if old == nil && (c.text == "" || want[c.table] != nil) {
			return nil
		}
		home := clone(old)
		want[c.table] = home
		return home
	}
	rows, _ := want["channel"].([]any)
	rows = slices.Clone(rows)
	if c.row == len(rows)+1 && c.text != "" {
		rows = append(rows, map[string]any{})
	}
	if c.row > len(rows) {
		return nil
	}
	old, _ = rows[c.row-1].(map[string]any)
	home := clone(old)
	rows[c.row-1], want["channel"] = home, rows
	return home
}

func clone(m map[string]any) map[string]any {
	out := map[string]any{}
	maps.Copy(out, m)
	return out
}

func (c change) put(home map[string]any) {
	if c.text == "" {
		delete(home, c.name)
		return
	}
	var read map[string]any
	if err := toml.Unmarshal([]byte("v = "+c.text), &read); err != nil {
		return // the text will not read either
	}
	home[c.name] = read["v"]
}

// same tells whether two values are alike; a number that is none is like another.
func same(a, b any) bool {
	switch a := a.(type) {
	case map[string]any:
		b, ok := b.(map[string]any)
		return ok && maps.EqualFunc(a, b, same)
	case []any:
		b, ok := b.([]any)
		return ok && slices.EqualFunc(a, b, same)
	case float64:
		b, ok := b.(float64)
		return ok && (a == b || a != a && b != b)
	}
	return a == b
}
