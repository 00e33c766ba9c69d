package design

import (
	"bytes"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"
)

// entry is a key or a header of a text, live or as a remark.
type entry struct {
	path    string // full name; of a header its table's: channel[2], or channel[0] as a remark
	section string // the table whose header it stands under
	home    int    // index of that header in the outline, also of one that is a remark; -1: none
	header  bool
	live    bool
	inner   bool // within braces or brackets
	// Where it begins, with the # of a remark; its name, or [, begins; its value begins and
	// ends. In bytes.
	from, name, value, to int
}

// outline is all entries of a text, in order.
type outline []entry

const remarkedName = `[A-Za-z0-9_-]+(\.[A-Za-z_][A-Za-z0-9_-]*)*`

var remarkedHeader = regexp.MustCompile(`^#[ \t]?(\[` + remarkedName + `\]|\[\[` + remarkedName + `\]\])[ \t]*(#.*)?$`)

// remarks tells whether a remark would be a header, or a key, by how it begins: with bare keys,
// dots and a sign of equality.
func remarks(remark []byte) (header, key bool) {
	rest := remark[1:]
	if len(rest) > 0 && (rest[0] == ' ' || rest[0] == '\t') {
		rest = rest[1:]
	}
	if len(rest) > 0 && rest[0] == '[' {
		return remarkedHeader.Match(remark), false
	}
	n := 0
	for n < len(rest) && (isBareByte(rest[n]) || rest[n] == '.') {
		n++
	}
	after := bytes.TrimLeft(rest[n:], " \t")
	return false, n > 0 && len(after) > 0 && after[0] == '='
}

// revealed is a text with the # of all remarks gone that would be headers or keys without.
func revealed(text []byte) []byte {
	out := slices.Clone(text)
	p := unstable.Parser{KeepComments: true}
	p.Reset(text)
	for p.NextExpression() {
		e := p.Expression()
		if e.Kind != unstable.Comment {
			continue
		}
		remark := p.Raw(e.Raw)
		header, key := remarks(remark)
		var in map[string]any
		if header || key && toml.Unmarshal(remark[1:], &in) == nil {
			out[e.Raw.Offset] = ' '
		}
	}
	return out
}

// findOutline goes through a text that is known to be good TOML, and through its remarks
// where they are asked for.
func findOutline(text []byte, remarks bool) outline {
	f := outliner{text: text, rows: map[string]int{}, home: -1}
	if remarks {
		text = revealed(text)
	}
	var p unstable.Parser
	p.Reset(text)
	for p.NextExpression() {
		switch e := p.Expression(); e.Kind {
		case unstable.Table, unstable.ArrayTable:
			f.open(e)
		case unstable.KeyValue:
			f.pair(f.table(int(e.Raw.Offset)), e, nil)
		}
	}
	return f.outline
}

// longest is the length of a name below which nothing is looked up any more: no
// key of a design comes near it, and long names in long files cost their product.
const longest = 200

type outliner struct {
	outline
	text  []byte
	rows  map[string]int // tables of that name so far, for [[name]]
	live  string         // the table that a key would be in
	shown string         // the table that a remark would be in
	home  int            // its header
}

// begins returns where the entry begins whose name does at a place, and whether it is live.
func (f *outliner) begins(name int) (from int, live bool) {
	line := lineStart(f.text, name)
	if blank := bytes.TrimLeft(f.text[line:name], " \t"); len(blank) > 0 && blank[0] == '#' {
		return name - len(blank), false
	}
	return name, true
}

// table is the one that a key at a place is in.
func (f *outliner) table(at int) string {
	if _, live := f.begins(at); live {
		return f.live
	}
	return f.shown
}

func (f *outliner) open(e *unstable.Node) {
	path, at := "", entry{header: true}
	for k := e.Key(); k.Next() && len(path) < longest; {
		if path == "" {
			at.name = bytes.LastIndexByte(f.text[:k.Node().Raw.Offset], '\n') + 1
			at.name += bytes.IndexByte(f.text[at.name:], '[')
			at.from, at.live = f.begins(at.name)
		}
		path = join(path, string(k.Node().Data))
		if k.IsLast() && e.Kind == unstable.ArrayTable {
			if !at.live {
				path = nth(path, 0)
				break
			}
			f.rows[path]++
		}
		if n := f.rows[path]; n > 0 && at.live {
			path = nth(path, n)
		}
	}
	at.path, at.section, at.home = path, path, len(f.outline)
	f.shown, f.home = path, at.home
	if at.live {
		f.live = path
	}
	f.outline = append(f.outline, at)
}

// pair takes a key in; around is the one in whose braces or brackets it is, nil for none.
func (f *outliner) pair(table string, e *unstable.Node, around *entry) {
	inner := around != nil
	at := entry{path: table, section: table, home: f.home, inner: inner, name: int(e.Raw.Offset), to: int(e.Raw.Offset + e.Raw.Length)}
	if inner {
		at.section = f.live
	}
	for k := e.Key(); k.Next(); {
		if len(at.path) < longest {
			at.path = join(at.path, string(k.Node().Data))
		}
		at.value = int(k.Node().Raw.Offset + k.Node().Raw.Length)
	}
	at.value += bytes.IndexByte(f.text[at.value:], '=') + 1
	at.value += len(f.text[at.value:]) - len(bytes.TrimLeft(f.text[at.value:], " \t"))
	if at.from, at.live = f.begins(at.name); inner {
		at.from, at.live = at.name, around.live
	}
	f.outline = append(f.outline, at)
	f.within(at.path, e.Value(), &at)
}

// within goes through the keys of inline tables.
func (f *outliner) within(path string, v *unstable.Node, around *entry) {
	if len(path) >= longest || v.Kind != unstable.InlineTable && v.Kind != unstable.Array {
		return
	}
	n := 0
	for c := v.Children(); c.Next(); {
		switch c.Node().Kind {
		case unstable.KeyValue:
			f.pair(path, c.Node(), around)
		case unstable.InlineTable, unstable.Array:
			n++
			f.within(nth(path, n), c.Node(), around)
		default:
			n++
		}
	}
}

// findLines says on which line of a text each key, and each table, is first named.
func findLines(text []byte) map[string]int {
	at, line, last := map[string]int{}, 1, 0
	for _, e := range findOutline(text, false) {
		line += bytes.Count(text[last:e.name], []byte("\n"))
		last = e.name
		mark := func(path string) {
			if _, known := at[path]; !known {
				at[path] = line
			}
		}
		for i, c := range e.path[:min(len(e.path), longest)] {
			if c == '.' || c == '[' {
				mark(e.path[:i])
			}
		}
		mark(e.path)
	}
	return at
}

// join gives the full name of a key in a table.
func join(table, key string) string {
	if !isBare(key) {
		key = strconv.Quote(key)
	}
	if table == "" {
		return key
	}
	return table + "." + key
}

// isBare tells whether a key may stand without quotes (TOML 1.0.0, Keys).
func isBare(key string) bool {
	for i := range len(key) {
		if !isBareByte(key[i]) {
			return false
		}
	}
	return key != ""
}

func isBareByte(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '_' || c == '-'
}

// nth gives the name of the n-th row under a name, from 1.
func nth(name string, n int) string { return name + "[" + strconv.Itoa(n) + "]" }

// under tells whether a full name is of a table, or of one of its rows.
func under(path, table string) bool {
	return strings.HasPrefix(path, table+".") || strings.HasPrefix(path, table+"[")
}

// lineStart returns where the line begins that a place is on.
func lineStart(text []byte, at int) int { return bytes.LastIndexByte(text[:at], '\n') + 1 }

// lineEnd returns where that line ends, before its line break.
func lineEnd(text []byte, at int) int {
	if n := bytes.IndexByte(text[at:], '\n'); n >= 0 {
		return at + len(bytes.TrimSuffix(text[at:at+n], []byte("\r")))
	}
	return len(text)
}

// lineNext returns where the next line begins.
func lineNext(text []byte, at int) int {
	if n := bytes.IndexByte(text[at:], '\n'); n >= 0 {
		return at + n + 1
	}
	return len(text)
}
