package design

import (
	"sort"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// lines says on which line of the file a key stands, by its full name.
type lines map[string]int

// findLines goes through a file that is known to be good TOML.
func findLines(data []byte) lines {
	f := lineFinder{at: lines{}, rows: map[string]int{}}
	for i, c := range data {
		if c == '\n' {
			f.ends = append(f.ends, i)
		}
	}
	var p unstable.Parser
	p.Reset(data)
	table := ""
	for p.NextExpression() {
		switch e := p.Expression(); e.Kind {
		case unstable.Table:
			table = f.header(e, false)
		case unstable.ArrayTable:
			table = f.header(e, true)
		case unstable.KeyValue:
			f.pair(table, e)
		}
	}
	return f.at
}

// longest is the length of a name below which nothing is looked up any more: no
// key of a design comes near it, and long names in long files cost their product.
const longest = 200

type lineFinder struct {
	at   lines
	rows map[string]int // tables of that name so far, for [[name]]
	ends []int          // where the lines end
}

// mark notes the line of a key where it is first named.
func (f *lineFinder) mark(path string, key *unstable.Node) {
	if _, ok := f.at[path]; !ok {
		f.at[path] = 1 + sort.SearchInts(f.ends, int(key.Raw.Offset))
	}
}

// header gives the full name of the table that a header opens.
func (f *lineFinder) header(e *unstable.Node, row bool) string {
	path := ""
	for k := e.Key(); k.Next() && len(path) < longest; {
		path = join(path, string(k.Node().Data))
		f.mark(path, k.Node())
		if row && k.IsLast() {
			f.rows[path]++
		}
		if n := f.rows[path]; n > 0 {
			path = nth(path, n)
			f.mark(path, k.Node())
		}
	}
	return path
}

// pair marks a key and those in its value.
func (f *lineFinder) pair(path string, e *unstable.Node) {
	var last *unstable.Node
	for k := e.Key(); k.Next() && len(path) < longest; {
		last = k.Node()
		path = join(path, string(last.Data))
		f.mark(path, last)
	}
	if last != nil {
		f.value(path, e.Value(), last)
	}
}

// value marks the keys of inline tables; key is the one that they belong to.
func (f *lineFinder) value(path string, v, key *unstable.Node) {
	if len(path) >= longest {
		return
	}
	switch v.Kind {
	case unstable.InlineTable:
		for c := v.Children(); c.Next(); {
			if c.Node().Kind == unstable.KeyValue {
				f.pair(path, c.Node())
			}
		}
	case unstable.Array:
		n := 0
		for c := v.Children(); c.Next(); {
			if c.Node().Kind == unstable.Comment {
				continue
			}
			n++
			f.mark(nth(path, n), key)
			f.value(nth(path, n), c.Node(), key)
		}
	}
}

// join gives the full name of a key in a table.
func join(table, key string) string {
	if bare := key != "" && strings.Trim(key, bareLetters) == ""; !bare {
		key = strconv.Quote(key)
	}
	if table == "" {
		return key
	}
	return table + "." + key
}

const bareLetters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-"

// nth gives the name of the n-th row under a name, from 1.
func nth(name string, n int) string {
	return name + "[" + strconv.Itoa(n) + "]"
}
