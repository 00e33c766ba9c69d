package design

import (
	"bytes"
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2"
)

// Set returns the text of a design with one key changed; text itself stays as it
// is. Comments, blank lines and the order of the keys stay, and a comment that
// trails the value keeps its column where there is room.
//
// key is a full name: body.radius_mm, or channel[2].gain_db, where the row after
// the last is a new one. value is a number (float64, int or int64), a string, a
// bool, or a []any of those and of lists; in a table of [search] also a map[string]any with
// the numbers from, to and, where there is one, step of a range. A key that the text has only as a
// remark, "# key = value", becomes live in its place; a table that it does not
// have is added. A value of nil remarks the key out.
//
// A table that is there or not (surface, room, woofer) is a key too: true brings
// it in, nil remarks it out with all that it holds. So does nil for spot, for one of many
// tables, as seat[2], and for all of them, as seat.
//
// Whether the design is then a good one is for Parse to say. Any error is an
// *Error: ErrSyntax, also for a text that is good TOML but written in such a way that one
// key alone cannot be changed in it; ErrRange for one that is too large; ErrUnknownKey;
// ErrType for what TOML cannot hold.
func Set(text []byte, key string, value any) ([]byte, error) {
	if len(text) > MostBytes {
		return nil, tooLarge("design", MostBytes)
	}
	mark := []byte("\ufeff")
	body, marked := bytes.CutPrefix(text, mark)
	before, err := flat(body)
	if err != nil {
		return nil, (&Reader{file: "design", schema: new(Design).tables}).malformed(body, err)
	}
	c, err := newChange(key, value)
	if err != nil {
		return nil, err
	}
	e := editor{text: body, change: c, outline: findOutline(body, true), lineBreak: "\n"}
	if n := bytes.IndexByte(body, '\n'); n > 0 && body[n-1] == '\r' {
		e.lineBreak = "\r\n"
	}
	out := e.edit()
	if after, err := flat(out); err != nil || !c.done(before, after) {
		return nil, c.fault("written in a way that cannot be changed here; edit the text", ErrSyntax)
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
	row   bool   // the table is one of many, such as [[channel]]
	value string // as the file has it; empty: remark out
}

func newChange(path string, value any) (change, error) {
	c := change{path: path, value: Literal(value)}
	if value != nil && c.value == "" {
		return c, c.fault(fmt.Sprintf("a value of type %T cannot be written", value), ErrType)
	}
	for _, t := range schema() {
		if t.Name == path && (t.Optional && t.More == nil || value == nil && (t.Optional || t.Unless != nil)) {
			c.table = path
			if value != nil && value != true {
				return c, c.fault("must be true, or nothing to take the table out", ErrType)
			}
			return c, nil
		}
		if t.number(path) > 0 && value == nil {
			c.table, c.row = path, true
			return c, nil
		}
		table, name, _ := cutLast(path)
		if c.row = t.number(table) > 0; !c.row && (table != t.Name || t.More != nil) {
			continue
		}
		if hasKey(t.Rows(), name) {
			c.table, c.name = table, name
			return c, nil
		}
	}
	return c, c.fault("not a known key", ErrUnknownKey)
}

// schema is what unfolded makes of the tables of no design in particular, for names alone.
var schema = sync.OnceValue(func() []Table { return unfolded(new(Design).tables()) })

// unfolded are tables, each followed by those in it under their full names.
func unfolded(tables []Table) []Table {
	var out []Table
	for _, t := range tables {
		out = append(out, t)
		for _, in := range t.inner() {
			in.Name = join(t.Name, in.Name)
			out = append(out, in)
		}
	}
	return out
}

// number is which of many tables a full name is of; 0: of none.
func (t Table) number(path string) int {
	number, row := strings.CutPrefix(path, t.Name+"[")
	n, err := strconv.Atoi(strings.TrimSuffix(number, "]"))
	if t.More == nil || !row || err != nil || n < 1 || n > t.Most || path != nth(t.Name, n) {
		return 0
	}
	return n
}

// cutLast parts a full name into its table and its name in it.
func cutLast(path string) (table, name string, within bool) {
	at := strings.LastIndexByte(path, '.')
	return path[:max(at, 0)], path[at+1:], at >= 0
}

func (c change) fault(reason string, kind error) *Error {
	return &Error{File: "design", Key: shorten(c.path, 60), Value: shorten(c.value, 60), Reason: reason, Err: kind}
}

// done tells whether the change and nothing else was made, of what a text held and holds.
func (c change) done(before, after map[string]string) bool {
	mark := c.table + "." // of the table itself
	switch {
	case c.name == "" && c.value == "":
		maps.DeleteFunc(before, func(path, _ string) bool { return path == c.table || under(path, c.table) })
		if c.row {
			before = c.closeUp(before)
		}
	case c.name == "":
		before[mark] = ""
	default: // the table may come and go with its key, and so may the one that it is in
		for path := c.table; path != ""; path, _, _ = cutLast(path) {
			delete(before, path+".")
			delete(after, path+".")
		}
		maps.DeleteFunc(before, func(path, _ string) bool { return path == c.path || strings.HasPrefix(path, c.path+".") })
		value, err := flat([]byte("v = " + cmp.Or(c.value, "{}")))
		for path, v := range value {
			before[c.path+path[len("v"):]] = v
		}
		if c.value == "" {
			delete(before, c.path+".")
		}
		if err != nil {
			return false
		}
	}
	return maps.Equal(before, after)
}

// closeUp gives the rows behind one that is gone a number less, in what a text holds.
func (c change) closeUp(held map[string]string) map[string]string {
	name, number, _ := strings.Cut(strings.TrimSuffix(c.table, "]"), "[")
	gone, _ := strconv.Atoi(number)
	out := make(map[string]string, len(held))
	for path, v := range held {
		if number, rest, row := strings.Cut(strings.TrimPrefix(path, name+"["), "]"); row && strings.HasPrefix(path, name+"[") {
			if n, _ := strconv.Atoi(number); n > gone {
				path = nth(name, n-1) + rest
			}
		}
		out[path] = v
	}
	return out
}

// flat lists what a text holds by full names; each table also by its own, with a dot behind.
func flat(text []byte) (map[string]string, error) {
	var in map[string]any
	err := toml.Unmarshal(text, &in)
	out := map[string]string{}
	flatten(in, "", out)
	return out, err
}

func flatten(in map[string]any, table string, out map[string]string) {
	for name, v := range in {
		path := join(table, name)
		switch v := v.(type) {
		case map[string]any:
			out[path+"."] = ""
			flatten(v, path, out)
			continue
		case []any:
			if len(v) == 0 {
				break
			}
			if _, rows := v[0].(map[string]any); !rows {
				break
			}
			for i, v := range v {
				if row, ok := v.(map[string]any); ok {
					out[nth(path, i+1)+"."] = ""
					flatten(row, nth(path, i+1), out)
				} else {
					out[nth(path, i+1)] = fmt.Sprintf("%#v", v)
				}
			}
			continue
		}
		out[path] = fmt.Sprintf("%#v", v)
	}
}

// editor makes one change to a text.
type editor struct {
	text []byte
	change
	outline
	lineBreak string
}

// edit returns a new text.
func (e *editor) edit() []byte {
	if e.name == "" {
		return e.editTable()
	}
	live := e.find(func(n entry) bool { return n.live && !n.header && n.path == e.path })
	switch {
	case live != nil && e.value == "" && live.inner:
		return e.takeOut(*live)
	case live != nil && e.value == "":
		return e.remarkOut(e.text, live.from, live.to)
	case live != nil:
		return e.replace(*live)
	case e.value == "":
		return e.text
	}
	if r := e.remarked(); r != nil {
		return e.revive(*r)
	}
	return e.insert()
}

// find returns the first entry that is so, nil where none is; last returns the last.
func (o outline) find(is func(entry) bool) *entry {
	if i := slices.IndexFunc(o, is); i >= 0 {
		return &o[i]
	}
	return nil
}

func (o outline) last(is func(entry) bool) *entry {
	for i := range slices.Backward(o) {
		if is(o[i]) {
			return &o[i]
		}
	}
	return nil
}

// header returns the table's header that is live, or the first that is a remark and may
// come to life.
func (e *editor) header(live bool) *entry {
	return e.find(func(n entry) bool {
		return n.header && n.live == live && (live && n.path == e.table || !live && e.shows(n.home) && e.canRevive(n.home))
	})
}

// shows tells whether a header that is a remark is the table's, or where that is one of
// many and the next to come, whether it would be once it came to life.
func (e *editor) shows(header int) bool {
	n := e.outline[header]
	if !e.row || n.path == e.table {
		return n.path == e.table
	}
	name := anyRow.ReplaceAllString(e.table, "")
	of := func(o outline) (rows int) {
		for _, n := range o {
			if n.live && n.header && n.path == nth(name, rows+1) {
				rows++
			}
		}
		return rows
	}
	return n.path == nth(name, 0) && e.table == nth(name, of(e.outline)+1) && of(e.outline[:header]) == of(e.outline)
}

// hasTable tells whether the change's table is in the text.
func (e *editor) hasTable() bool {
	return e.table != "" && e.find(func(n entry) bool { return n.live && (n.path == e.table || under(n.path, e.table)) }) != nil
}

// canRevive tells whether a header that is remarked out may come to life: no key
// between it and the next would change its table.
func (e *editor) canRevive(header int) bool {
	for _, n := range e.outline[header+1:] {
		if n.live {
			return n.header
		}
	}
	return true
}

// remarked returns the remark to bring to life: one in the table itself, or in one
// that is a remark as a whole.
func (e *editor) remarked() *entry {
	return e.find(func(n entry) bool {
		switch {
		case n.live || n.header:
			return false
		case n.home < 0 || e.outline[n.home].live:
			return n.path == e.path
		}
		_, name, _ := cutLast(n.path)
		return name == e.name && e.shows(n.home) && !e.hasTable() && e.canRevive(n.home)
	})
}

// revive turns a remark into a key, and its header where that is one.
func (e *editor) revive(r entry) []byte {
	out := e.replace(r)
	if r.home >= 0 && !e.outline[r.home].live {
		out = uncomment(out, e.outline[r.home])
	}
	return out
}

// uncomment brings a remark to life.
func uncomment(text []byte, n entry) []byte { return slices.Concat(text[:n.from], text[n.name:]) }

// replace gives a key, live or a remark, the new value. What trails keeps its column.
func (e *editor) replace(n entry) []byte {
	old := e.text[n.value:n.to]
	longer := utf8.RuneCountInString(e.value) - utf8.RuneCount(old) - (n.name - n.from)
	if bytes.ContainsRune(old, '\n') {
		longer = 0
	}
	return slices.Concat(e.text[:n.from], e.text[n.name:n.value], []byte(e.value), shift(e.text[n.to:], longer))
}

// shift moves the comment that a text begins with by the blanks before it, to make
// up for what was put before; one blank at least stays.
func shift(text []byte, longer int) []byte {
	rest := bytes.TrimLeft(text, " ")
	blanks := len(text) - len(rest)
	if blanks == 0 || len(rest) == 0 || rest[0] != '#' {
		return text
	}
	return slices.Concat(bytes.Repeat([]byte(" "), max(1, blanks-longer)), rest)
}

// remarkOut makes remarks of the lines of a key.
func (e *editor) remarkOut(text []byte, from, to int) []byte {
	lines := bytes.ReplaceAll(text[from:to], []byte("\n"), []byte("\n# "))
	return slices.Concat(text[:from], []byte("# "), lines, shift(text[to:], len("# ")))
}

// takeOut takes a key out of an inline table, and one comma with it.
func (e *editor) takeOut(n entry) []byte {
	const blank = " \t\r\n"
	before, after := e.text[:n.from], e.text[n.to:]
	if rest, comma := bytes.CutPrefix(bytes.TrimLeft(after, blank), []byte(",")); comma {
		after = bytes.TrimLeft(rest, " \t")
	} else if rest, comma := bytes.CutSuffix(bytes.TrimRight(before, blank), []byte(",")); comma {
		before = rest
	}
	return slices.Concat(before, after)
}

// insert adds a key that the text does not have, not even as a remark.
func (e *editor) insert() []byte {
	line := e.name + " = " + e.value
	key := func(n entry) bool { return n.live && !n.header && !n.inner }
	header := e.header(true)
	if n := e.last(func(n entry) bool { return key(n) && n.section == e.table }); n != nil && (e.table == "" || header != nil) {
		return e.addLine(e.text, e.indent(n)+line, lineNext(e.text, n.to))
	}
	if header != nil {
		return e.addLine(e.text, line, lineNext(e.text, header.from))
	}
	if e.table == "" {
		return e.addLine(e.text, line, e.firstHeader())
	}
	if n := e.last(func(n entry) bool { return key(n) && n.path == e.table && e.text[n.to-1] == '}' }); n != nil {
		return e.addInside(n, line)
	}
	if n := e.last(func(n entry) bool { return key(n) && n.section == "" && under(n.path, e.table) }); n != nil {
		return e.addLine(e.text, e.indent(n)+e.table+"."+line, lineNext(e.text, n.to))
	}
	if n := e.header(false); n != nil {
		text := uncomment(e.text, *n)
		return e.addLine(text, line, lineNext(text, n.from))
	}
	return e.append(line)
}

// indent returns the blanks before a key.
func (e *editor) indent(n *entry) string { return string(e.text[lineStart(e.text, n.from):n.from]) }

// addInside adds a key to an inline table.
func (e *editor) addInside(table *entry, line string) []byte {
	n := e.last(func(n entry) bool { return n.inner && n.from > table.from && n.to < table.to })
	if n == nil {
		return slices.Concat(e.text[:table.value], []byte("{ "+line+" }"), e.text[table.to:])
	}
	return slices.Concat(e.text[:n.to], []byte(", "+line), e.text[n.to:])
}

// firstHeader returns where the first table begins, the comment above it included.
func (e *editor) firstHeader() int {
	n := e.find(func(n entry) bool { return n.live && n.header })
	if n == nil {
		return len(e.text)
	}
	at := lineStart(e.text, n.from)
	for at > 0 {
		above := lineStart(e.text, at-1)
		if !bytes.HasPrefix(bytes.TrimLeft(e.text[above:at], " \t"), []byte("#")) {
			break
		}
		at = above
	}
	return at
}

// addLine adds a line where another begins, or at the end.
func (e *editor) addLine(text []byte, line string, at int) []byte {
	if at > 0 && text[at-1] != '\n' {
		line = e.lineBreak + line
	} else {
		line += e.lineBreak
	}
	return slices.Concat(text[:at], []byte(line), text[at:])
}

// append adds the table at the end, with a line or none.
func (e *editor) append(line string) []byte {
	head := "[" + e.table + "]"
	if e.row {
		head = "[[" + anyRow.ReplaceAllString(e.table, "") + "]]"
	}
	out := slices.Clone(e.text)
	if len(out) > 0 && out[len(out)-1] != '\n' {
		out = append(out, e.lineBreak...)
	}
	if len(out) > 0 {
		out = append(out, e.lineBreak...)
	}
	out = append(out, head+e.lineBreak...)
	if line != "" {
		out = append(out, line+e.lineBreak...)
	}
	return out
}

// editTable brings a whole table in or remarks it out.
func (e *editor) editTable() []byte {
	if e.value == "" {
		return e.remarkTable()
	}
	if e.hasTable() {
		return e.text
	}
	if n := e.header(false); n != nil {
		return uncomment(e.text, *n)
	}
	return e.append("")
}

// remarkTable makes remarks of a table's headers and keys, the last first, so that
// places stay true.
func (e *editor) remarkTable() []byte {
	mine := func(name string) bool { return name == e.table || under(name, e.table) }
	out := e.text
	for _, n := range slices.Backward(e.outline) {
		if !n.live || n.inner || !mine(n.section) && (n.section != "" || !mine(n.path)) {
			continue
		}
		if n.header {
			n.to = n.from + 1 + bytes.IndexByte(e.text[n.from:], ']')
		}
		out = e.remarkOut(out, n.from, n.to)
	}
	return out
}
