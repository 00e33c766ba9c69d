package design

import (
	"maps"
	"reflect"
	"slices"
	"strings"
)

// Setting is a key's new value, as Set takes it; nil takes the key out, or for seat, channel
// and body_at all those tables.
type Setting struct {
	Key   string
	Value any
}

// Lines says on which line of its file each key and table of a design stands. How a design is
// written is no part of what it is: all are equal.
type Lines map[string]int

// Of is the line of a key, or of its table where the file leaves it out; 0 where neither is there.
func (l Lines) Of(path string) int {
	for path != "" && l[path] == 0 {
		path = path[:max(strings.LastIndexAny(path, ".["), 0)]
	}
	return l[path]
}

// Equal tells that any two are equal.
func (Lines) Equal(Lines) bool { return true }

// With returns the design that the text of d would be with settings made in it, without the
// text: defaults that hang on other values are filled in anew. d stays as it is. An error is
// the *Error that Parse would give, but for its line.
func (d *Design) With(settings ...Setting) (*Design, error) {
	out := *d
	r := &reader{Design: &out, Reader: &Reader{file: d.Path, lines: maps.Clone(map[string]int(d.Lines)), schema: out.tables}}
	if r.lines == nil {
		r.lines = map[string]int{}
	}
	tables := out.tables()
	for _, t := range tables {
		if t.More == nil && t.Name != "room" { // whose walls stand for each other, and have no other defaults
			r.unfill(t)
		}
	}
	for _, s := range settings {
		r.put(tables, s)
	}
	for _, t := range tables {
		for _, row := range t.Rows() {
			if at := join(t.Name, row.Name); t.More == nil && row.Default == needed && r.has(t.Name) && !r.has(at) {
				r.lacks(at, row.kindly())
			}
		}
	}
	out.Lines = r.lines
	r.fill()
	if len(r.faults) == 0 {
		r.check()
	}
	if len(r.faults) > 0 {
		return nil, r.faults[0]
	}
	return &out, nil
}

// unfill gives the keys of a table their defaults that the file does not have.
func (r *reader) unfill(t Table) {
	for _, row := range t.Rows() {
		if !r.has(join(t.Name, row.Name)) {
			row.reset()
		}
	}
}

// reset gives a row its default.
func (r Row) reset() {
	switch to := r.To.(type) {
	case cut:
		to.Cut, to.HasCut = 0, false
		return
	case kelvin:
		*to.to = 0
	default:
		reflect.ValueOf(to).Elem().SetZero()
	}
	preset([]Row{r})
}

// put makes one setting.
func (r *reader) put(tables []Table, s Setting) {
	if s.Value == nil {
		r.remove(tables, s.Key)
		return
	}
	row := rowOf(tables, s.Key)
	if row.To == nil {
		r.fault(s.Key, "", "not a known key", ErrUnknownKey)
		return
	}
	v, before := fromGo(s.Value), r.Room.Absorption
	if err := row.take(v); err != nil {
		r.Fault(s.Key, v, "must be "+row.kindly()+row.instead(v), err)
		return
	}
	for i, wall := range r.Room.walls() {
		if s.Key == "room.absorption" && r.has("room."+wall.Name) {
			r.Room.Absorption[i] = before[i]
		}
	}
	for path := s.Key; path != ""; path, _, _ = cutLast(path) {
		if r.lines[path] == 0 {
			r.lines[path] = 1 // anywhere but at none
		}
	}
}

// remove takes a key out, or all of a table.
func (r *reader) remove(tables []Table, key string) {
	switch key {
	case "seat":
		r.Seats = nil
	case "channel":
		r.Channels = nil
	case "body_at":
		r.Copies = nil
	default:
		if row := rowOf(tables, key); row.To != nil {
			row.reset()
		}
	}
	maps.DeleteFunc(r.lines, func(path string, _ int) bool { return path == key || under(path, key) })
}

// fromGo is a value that Set takes as a file gives it.
func fromGo(v any) any {
	switch v := v.(type) {
	case int:
		return int64(v)
	case []any:
		out := slices.Clone(v)
		for i := range out {
			out[i] = fromGo(out[i])
		}
		return out
	}
	return v
}
