package design

import (
	"bytes"
	"regexp"
	"strings"

	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"
)

// outline is where the keys, tables and remarks of a text stand, in bytes.
type outline struct {
	pairs   []pair
	headers []header
	remarks []remark
}

// pair is a key with its value.
type pair struct {
	path            string // full name
	section         string // the table whose header it stands under
	from, value, to int    // the key begins, the value begins, the value ends
	inner           bool   // within the braces of an inline table
}

// header is what begins a table: [name], or [[name]], live or as a remark.
type header struct {
	name string // of a row: channel[2]; of one that is remarked out: channel[0]
	from int
	live bool
}

// remark is a comment that would be a key if it were live.
type remark struct {
	path      string
	section   string
	from      int // of the #
	key       int
	value, to int
	header    int // index of the header that it stands under, -1 for the top
}

// findOutline goes through a text that is known to be good TOML.
func findOutline(text []byte) outline {
	f := outliner{rows: map[string]int{}, header: -1, text: text}
	p := unstable.Parser{KeepComments: true}
	p.Reset(text)
	for p.NextExpression() {
		switch e := p.Expression(); e.Kind {
		case unstable.Table, unstable.ArrayTable:
			f.open(e)
		case unstable.KeyValue:
			f.pair(f.live, e, false)
		case unstable.Comment:
			f.comment(int(e.Raw.Offset), int(e.Raw.Offset+e.Raw.Length))
		}
	}
	return f.outline
}

type outliner struct {
	outline
	text   []byte
	rows   map[string]int
	live   string // the table that a key would be in
	shown  string // the table that a remark would be in
	header int    // its header
}

func (f *outliner) open(e *unstable.Node) {
	path, from := "", 0
	for k := e.Key(); k.Next() && len(path) < longest; {
		if path == "" {
			from = lineStart(f.text, int(k.Node().Raw.Offset))
		}
		path = join(path, string(k.Node().Data))
		if e.Kind == unstable.ArrayTable && k.IsLast() {
			f.rows[path]++
		}
		if n := f.rows[path]; n > 0 {
			path = nth(path, n)
		}
	}
	f.live, f.shown, f.header = path, path, len(f.headers)
	f.headers = append(f.headers, header{path, from, true})
}

func (f *outliner) pair(table string, e *unstable.Node, inner bool) {
	path, end := table, 0
	for k := e.Key(); k.Next(); {
		if len(path) < longest {
			path = join(path, string(k.Node().Data))
		}
		end = int(k.Node().Raw.Offset + k.Node().Raw.Length)
	}
	at := pair{path: path, section: f.live, from: int(e.Raw.Offset), value: f.valueFrom(end), to: int(e.Raw.Offset + e.Raw.Length), inner: inner}
	f.pairs = append(f.pairs, at)
	if v := e.Value(); v.Kind == unstable.InlineTable && len(path) < longest {
		for c := v.Children(); c.Next(); {
			if c.Node().Kind == unstable.KeyValue {
				f.pair(path, c.Node(), true)
			}
		}
	}
}

// valueFrom returns where the value of a key begins that ends here.
func (f *outliner) valueFrom(end int) int {
	rest := f.text[end:]
	at := end + bytes.IndexByte(rest, '=') + 1
	return at + len(f.text[at:]) - len(bytes.TrimLeft(f.text[at:], " \t"))
}

var (
	remarkedHeader = regexp.MustCompile(`^#[ \t]?(\[{1,2})([A-Za-z0-9_-]+)\]{1,2}[ \t]*(#.*)?$`)
	remarkedKey    = regexp.MustCompile(`^#[ \t]?([A-Za-z0-9_.-]+)[ \t]*=[ \t]*`)
)

// comment looks whether a comment on a line of its own is a header or a key that
// is remarked out.
func (f *outliner) comment(from, to int) {
	text := f.text[from:to]
	if m := remarkedHeader.FindSubmatch(text); m != nil {
		f.shown, f.header = string(m[2]), len(f.headers)
		if len(m[1]) == 2 {
			f.shown = nth(f.shown, 0)
		}
		f.headers = append(f.headers, header{f.shown, from, false})
		return
	}
	m := remarkedKey.FindSubmatchIndex(text)
	if m == nil || m[3]-m[2] > longest {
		return
	}
	end := valueEnd(text[m[2]:])
	if end == 0 {
		return
	}
	path := string(text[m[2]:m[3]])
	if f.shown != "" {
		path = f.shown + "." + path
	}
	f.remarks = append(f.remarks, remark{path, f.shown, from, from + m[2], from + m[1], from + m[2] + end, f.header})
}

// valueEnd returns where the value of a line "key = value # more" ends, 0 where it
// is none.
func valueEnd(line []byte) int {
	var in map[string]any
	if toml.Unmarshal(line, &in) != nil {
		return 0
	}
	var p unstable.Parser
	p.Reset(line)
	if !p.NextExpression() || p.Expression().Kind != unstable.KeyValue {
		return 0
	}
	r := p.Expression().Raw
	return int(r.Offset + r.Length)
}

// lineStart returns where the line begins that a place is on.
func lineStart(text []byte, at int) int { return bytes.LastIndexByte(text[:at], '\n') + 1 }

// lineEnd returns where that line ends, before its line break.
func lineEnd(text []byte, at int) int {
	n := bytes.IndexByte(text[at:], '\n')
	if n < 0 {
		return len(text)
	}
	return len(text[:at]) + len(bytes.TrimSuffix(text[at:at+n], []byte("\r")))
}

// lineNext returns where the next line begins.
func lineNext(text []byte, at int) int {
	if n := bytes.IndexByte(text[at:], '\n'); n >= 0 {
		return at + n + 1
	}
	return len(text)
}

// under tells whether a full name is of a table, or of one of its rows.
func under(path, table string) bool {
	return strings.HasPrefix(path, table+".") || strings.HasPrefix(path, table+"[")
}
