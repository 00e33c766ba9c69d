package design

import (
	"bytes"
	_ "embed"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"
	"sync"

	"pappus/layout/prose"
	"pappus/layout/regular"

	"github.com/pelletier/go-toml/v2"
)

// MostBytes is the most that a design file, or another that is read as one, may hold, in bytes.
const MostBytes = 1 << 20

//go:embed lantern.toml
var lantern string

// Read reads and checks the design file at path. Any error is an *Error; for a
// file that is not there errors.Is(err, fs.ErrNotExist) holds.
func Read(path string) (*Design, error) {
	data, err := ReadFile(path, MostBytes)
	if err != nil {
		return nil, err
	}
	return Parse(path, data)
}

// ReadFile reads a design file, or one that a design names, of at most so many bytes.
// Any error is an *Error; fs.ErrNotExist can be told from it.
func ReadFile(path string, most int) ([]byte, error) {
	data, err := regular.Read(path, most)
	switch {
	case errors.Is(err, regular.ErrLarge):
		return nil, tooLarge(path, most)
	case err != nil:
		return nil, unreadable(path, err)
	}
	return data, nil
}

// unreadable is the error for a file that the system would not give.
func unreadable(path string, err error) *Error {
	return &Error{File: path, Reason: prose.Reason(err).Error(), Err: err}
}

// tooLarge is the error for a file that holds more than any design would.
func tooLarge(path string, most int) *Error {
	return &Error{File: path, Reason: fmt.Sprintf("too large; must be at most %d bytes", most), Err: ErrRange}
}

// Parse checks a design that has been read already; name stands for its file in messages,
// and the files that it names are looked for beside it. Any error is an *Error: of several
// faults the first in the file, but what is missing last, since a misspelt key is also a
// missing one.
func Parse(name string, data []byte) (*Design, error) {
	d, faults := Examine(name, data)
	if len(faults) == 0 {
		return d, nil
	}
	missing := func(e *Error) int {
		if e.Err == ErrMissing {
			return 1
		}
		return 0
	}
	return nil, slices.MinFunc(faults, func(a, b *Error) int { return missing(a) - missing(b) })
}

// Examine reads a design as Parse does and returns all that is wrong with it, in the order
// of the file, and the design as far as it can be read: what is wrong has its default. It
// is nil where the text is no TOML. Conflicts between values are told only where each value
// is a possible one.
func Examine(name string, data []byte) (*Design, []*Error) {
	r := reader{Design: defaults()}
	r.Path = name
	if r.Reader = Decode(name, data, r.Design.tables); r.in == nil {
		return nil, r.Faults()
	}
	r.Lines = r.lines
	r.fill()
	if len(r.faults) == 0 {
		r.check()
	}
	return r.Design, r.Faults()
}

// defaults gives a design before anything is read into it. Defaults that hang on other
// values are filled in afterwards, by fill.
func defaults() *Design {
	d := untouched()
	return &d
}

// untouched is what defaults copies: it holds nothing that is written to in its place.
var untouched = sync.OnceValue(func() (d Design) {
	for _, t := range d.tables() {
		preset(t.Rows())
	}
	return d
})

// preset puts the defaults of rows where their values go.
func preset(rows []Row) {
	for _, r := range rows {
		v := r.Default
		if n, ok := v.(int); ok {
			v = int64(n)
		}
		if v != nil && v != needed && r.take(v) != nil {
			panic("design: a default that " + r.Name + " does not take")
		}
	}
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

// DefaultTOML gives the text of the built-in design, with a comment to each key: what works
// is the best thing to begin from.
func DefaultTOML() []byte { return []byte(lantern) }

// SeatsTOML gives the text of the built-in design for five children on cushions round the
// story corner, in place of one: the starter with its area live, and no spot.
func SeatsTOML() []byte {
	text := DefaultTOML()
	for _, k := range []struct {
		key   string
		value any
	}{
		{"spot", nil}, {"area[1].name", "cushion"}, {"area[1].shape", arc}, {"area[1].count", 5},
		{"area[1].radius_m", 2}, {"area[1].z_m", 0.6}, {"area[1].from_deg", -60}, {"area[1].to_deg", 60},
	} {
		var err error
		if text, err = Set(text, k.key, k.value); err != nil {
			panic("design: " + err.Error())
		}
	}
	return text
}

// reader checks a design.
type reader struct {
	*Design
	*Reader
	heard []Listener // where somebody listens; nil where the areas do not tell
}

// Table is one table of a file, or where there is More one of many, [[name]].
type Table struct {
	Name     string         // empty for the top
	Optional bool           // may stay away, with the keys that it needs
	Needs    bool           // one that may not stay away has keys that must be there
	Unless   []string       // it may stay away where one of these tables is there
	Rows     func() []Row   // its keys, and where their values go; made where they are asked for
	Inner    func() []Table // the tables in it, [name.inner]; nil: none
	More     func() []Row   // the rows of one more
	Each     func() [][]Row // the rows of each that there is
	Most     int            // of many
}

// inner are the tables in a table.
func (t Table) inner() []Table {
	if t.Inner == nil {
		return nil
	}
	return t.Inner()
}

// Many is a table [[name]] that fills a list, of so many rows at most.
func Many[T any](name string, most int, list *[]T, rows func(*T) []Row) Table {
	begun := func(one *T) []Row {
		r := rows(one)
		preset(r)
		return r
	}
	return Table{Name: name, Optional: true, Rows: func() []Row { return begun(new(T)) }, Most: most,
		More: func() []Row {
			*list = append(*list, *new(T))
			return begun(&(*list)[len(*list)-1])
		},
		Each: func() [][]Row {
			all := make([][]Row, len(*list))
			for i := range *list {
				all[i] = rows(&(*list)[i])
			}
			return all
		},
	}
}

// Reader takes the values of a file into rows, and gathers what is wrong.
type Reader struct {
	file   string
	schema func() []Table // the same ones each time
	lines  map[string]int
	in     map[string]any // nil where it is no TOML
	faults []*Error
}

// Decode reads a TOML file into the rows of tables, which are made where something is to be
// read into them.
func Decode(name string, data []byte, tables func() []Table) *Reader {
	r := &Reader{file: name, schema: sync.OnceValue(tables)}
	if len(data) > MostBytes {
		r.faults = []*Error{tooLarge(name, MostBytes)}
		return r
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff")) // with which some editors begin a file
	in := map[string]any{}
	if err := toml.Unmarshal(data, &in); err != nil {
		r.faults = []*Error{r.malformed(data, err)}
		return r
	}
	r.in, r.lines = in, findLines(data)
	r.top()
	return r
}

// Faults returns what is wrong, in the order of the file.
func (r *Reader) Faults() []*Error {
	slices.SortStableFunc(r.faults, func(a, b *Error) int { return a.Line - b.Line })
	return r.faults
}

// Fault notes that something is wrong with a key; a value of nil leaves it out.
func (r *Reader) Fault(path string, value any, reason string, kind error) {
	text := ""
	if value != nil {
		text = written(value)
	}
	r.fault(path, text, reason, kind)
}

// fault is Fault for a value as it is to be shown.
func (r *Reader) fault(path, value, reason string, kind error) {
	r.faults = append(r.faults, &Error{File: r.file, Line: r.line(path), Key: shorten(path, 60), Value: value, Reason: reason, Err: kind})
}

// line is where a key stands, or its table; 0 where neither does.
func (r *Reader) line(path string) int { return Lines(r.lines).Of(path) }

// has says whether the file gives a value for the key.
func (r *Reader) has(path string) bool { return r.lines[path] > 0 }

// top reads the whole file.
func (r *Reader) top() {
	var known []string
	for _, t := range r.schema() {
		switch v, given := r.in[t.Name]; {
		case t.Name == "":
			rows := t.Rows()
			known = append(known, names(rows)...)
			r.take("", r.in, rows)
			continue
		case !given && (t.Optional || !t.Needs || slices.ContainsFunc(t.Unless, r.has)):
		case t.More != nil:
			r.many(t, v)
		default:
			r.one(t.Name, v, given, t.Rows(), t.inner()...)
		}
		known = append(known, t.Name)
	}
	for _, name := range slices.Sorted(maps.Keys(r.in)) {
		if !slices.Contains(known, name) {
			r.Fault(join("", name), nil, r.hintAtTop(name, known), ErrUnknownKey)
		}
	}
}

// many reads the tables [[name]].
func (r *Reader) many(t Table, v any) {
	tables, ok := v.([]any)
	if !ok {
		r.Fault(t.Name, v, fmt.Sprintf("must be tables that begin with [[%s]]", t.Name), ErrType)
		return
	}
	for i, v := range tables {
		if i == t.Most {
			r.Fault(nth(t.Name, i+1), nil, fmt.Sprintf("too many; must be at most %d", t.Most), ErrRange)
			return
		}
		r.one(nth(t.Name, i+1), v, true, t.More())
	}
}

// one reads one table at a path, and those in it.
func (r *Reader) one(path string, v any, given bool, rows []Row, inner ...Table) {
	in, ok := v.(map[string]any)
	if given && !ok {
		head := "[" + path + "]"
		if name, _, many := strings.Cut(path, "["); many {
			head = "[[" + name + "]]"
		}
		r.Fault(path, v, "must be a table that begins with "+head, ErrType)
		return
	}
	r.take(path, in, rows)
	known, tables := names(rows), []string{}
	for _, t := range inner {
		tables = append(tables, t.Name)
		if v, table := in[t.Name].(map[string]any); table { // else it is a key misspelt
			r.one(join(path, t.Name), v, true, t.Rows())
			known = append(known, t.Name)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(in)) {
		_, table := in[name].(map[string]any)
		switch {
		case slices.Contains(known, name):
		case table && inner != nil:
			r.Fault(join(path, name), nil, "not a known table"+prose.DidYouMean(name, tables), ErrUnknownKey)
		default:
			r.Fault(join(path, name), nil, r.hint(name, known), ErrUnknownKey)
		}
	}
}

// take takes the values of one table up.
func (r *Reader) take(path string, in map[string]any, rows []Row) {
	for _, row := range rows {
		at := join(path, row.Name)
		v, given := in[row.Name]
		if !given {
			if row.Default == needed {
				r.lacks(at, row.kindly())
			}
			continue
		}
		if to, many := row.To.(varying); many {
			r.vary(at, v, to)
			continue
		}
		switch err := row.take(v); err {
		case nil:
		case ErrType:
			r.Fault(at, v, "must be "+row.kindly()+row.instead(v), err)
		default:
			r.Fault(at, v, "must be "+row.allowed()+row.instead(v), err)
		}
	}
}

// lacks notes a key that is not there.
func (r *Reader) lacks(path, kindly string) {
	r.Fault(path, nil, "missing; must be "+kindly, ErrMissing)
}
