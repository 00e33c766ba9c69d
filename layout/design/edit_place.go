package design

import (
	"bytes"
	"slices"
	"strings"
	"unicode/utf8"
)

// editor makes one change to a text.
type editor struct {
	text []byte
	change
	outline
}

// edit returns a new text.
func (e *editor) edit() []byte {
	if e.name == "" {
		return e.editTable()
	}
	at := slices.IndexFunc(e.pairs, func(p pair) bool { return p.path == e.path })
	switch {
	case at >= 0 && e.change.text == "" && e.pairs[at].inner:
		return e.takeOut(e.pairs[at])
	case at >= 0 && e.change.text == "":
		return e.remarkOut(e.text, e.pairs[at].from, e.pairs[at].to)
	case at >= 0:
		p := e.pairs[at]
		return e.replace(e.text, p.from, p.from, p.value, p.to)
	case e.change.text == "":
		return e.text
	}
	if r, ok := e.remarked(); ok {
		return e.revive(r)
	}
	return e.insert()
}

// remarked returns the remark to bring to life: one in the table itself, or in one
// that is a remark as a whole.
func (e *editor) remarked() (remark, bool) {
	live := e.hasTable()
	for _, r := range e.remarks {
		if r.path != e.path {
			continue
		}
		if r.header < 0 || e.headers[r.header].live || !live && e.canRevive(r.header) {
			return r, true
		}
	}
	return remark{}, false
}

// hasTable tells whether the change's table is in the text.
func (e *editor) hasTable() bool {
	is := func(p pair) bool { return p.path == e.table || under(p.path, e.table) }
	return e.liveHeader() >= 0 || e.table != "" && slices.ContainsFunc(e.pairs, is)
}

func (e *editor) liveHeader() int {
	return slices.IndexFunc(e.headers, func(h header) bool { return h.live && h.name == e.table })
}

// canRevive tells whether a header that is remarked out may come to life: no key
// between it and the next would change its table.
func (e *editor) canRevive(h int) bool {
	next := len(e.text)
	for _, other := range e.headers[h+1:] {
		if other.live {
			next = other.from
			break
		}
	}
	return !slices.ContainsFunc(e.pairs, func(p pair) bool { return p.from > e.headers[h].from && p.from < next })
}

// revive turns a remark into a key, and its header where that is one.
func (e *editor) revive(r remark) []byte {
	out := e.replace(e.text, r.from, r.key, r.value, r.to)
	if r.header >= 0 && !e.headers[r.header].live {
		out = uncomment(out, e.headers[r.header].from)
	}
	return out
}

// uncomment takes the # of a line away, and one blank after it.
func uncomment(text []byte, from int) []byte {
	to := from + 1
	if to < len(text) && (text[to] == ' ' || text[to] == '\t') {
		to++
	}
	return slices.Concat(text[:from], text[to:])
}

// replace gives a key a new value: what stands from open to key goes, the key
// stays, what stands from value to end is replaced. What trails keeps its column.
func (e *editor) replace(text []byte, open, key, value, end int) []byte {
	longer := utf8.RuneCountInString(e.change.text) - utf8.RuneCount(text[value:end]) - (key - open)
	if bytes.ContainsRune(text[value:end], '\n') {
		longer = 0
	}
	tail := shift(text[end:], longer)
	return slices.Concat(text[:open], text[key:value], []byte(e.change.text), tail)
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
	lines := bytes.SplitAfter(text[from:to], []byte("\n"))
	out := slices.Clone(text[:from])
	for _, line := range lines {
		out = append(append(out, "# "...), line...)
	}
	return append(out, shift(text[to:], len("# "))...)
}

// takeOut takes a key out of an inline table, and one comma with it.
func (e *editor) takeOut(p pair) []byte {
	const blank = " \t\r\n"
	after := bytes.TrimLeft(e.text[p.to:], blank)
	if len(after) > 0 && after[0] == ',' {
		return slices.Concat(e.text[:p.from], bytes.TrimLeft(after[1:], " \t"))
	}
	before := bytes.TrimRight(e.text[:p.from], blank)
	if len(before) > 0 && before[len(before)-1] == ',' {
		return slices.Concat(before[:len(before)-1], e.text[p.to:])
	}
	return slices.Concat(e.text[:p.from], e.text[p.to:])
}

// insert adds a key that the text does not have, not even as a remark.
func (e *editor) insert() []byte {
	line := e.name + " = " + e.change.text
	if at, ok := e.lastPair(func(p pair) bool { return p.section == e.table && !p.inner }); ok && (e.table == "" || e.liveHeader() >= 0) {
		return e.addLine(e.indent(at)+line, lineNext(e.text, at.to))
	}
	if h := e.liveHeader(); h >= 0 {
		return e.addLine(line, lineNext(e.text, e.headers[h].from))
	}
	if e.table == "" {
		return e.addLine(line, e.firstHeader())
	}
	if at, ok := e.lastPair(func(p pair) bool { return p.path == e.table }); ok && e.text[at.to-1] == '}' {
		return e.addInside(at, line)
	}
	if at, ok := e.lastPair(func(p pair) bool { return p.section == "" && !p.inner && under(p.path, e.table) }); ok {
		return e.addLine(e.indent(at)+e.table+"."+line, lineNext(e.text, at.to))
	}
	if h := e.deadHeader(); h >= 0 {
		text := uncomment(e.text, e.headers[h].from)
		return addLine(text, line, lineNext(text, e.headers[h].from), e.lineBreak())
	}
	return e.append(line)
}

// lastPair returns the last of the pairs that are so.
func (e *editor) lastPair(is func(pair) bool) (pair, bool) {
	for _, p := range slices.Backward(e.pairs) {
		if is(p) {
			return p, true
		}
	}
	return pair{}, false
}

// deadHeader returns the header of the table that is remarked out and may come to
// life, -1 where there is none.
func (e *editor) deadHeader() int {
	for i, h := range e.headers {
		if !h.live && h.name == e.table && e.canRevive(i) {
			return i
		}
	}
	return -1
}

// indent returns the blanks before a pair.
func (e *editor) indent(p pair) string { return string(e.text[lineStart(e.text, p.from):p.from]) }

// addInside adds a key to an inline table.
func (e *editor) addInside(table pair, line string) []byte {
	last, ok := e.lastPair(func(p pair) bool { return p.inner && p.from > table.from && p.to < table.to })
	if !ok {
		return slices.Concat(e.text[:table.value], []byte("{ "+line+" }"), e.text[table.to:])
	}
	return slices.Concat(e.text[:last.to], []byte(", "+line), e.text[last.to:])
}

// firstHeader returns where the first table begins, the comment above it included.
func (e *editor) firstHeader() int {
	at := len(e.text)
	for _, h := range e.headers {
		if h.live {
			at = h.from
			break
		}
	}
	for at > 0 && at < len(e.text) {
		above := lineStart(e.text, at-1)
		if !bytes.HasPrefix(bytes.TrimLeft(e.text[above:at], " \t"), []byte("#")) {
			break
		}
		at = above
	}
	return at
}

// lineBreak returns how the text breaks its lines.
func (e *editor) lineBreak() string {
	if n := bytes.IndexByte(e.text, '\n'); n > 0 && e.text[n-1] == '\r' {
		return "\r\n"
	}
	return "\n"
}

func (e *editor) addLine(line string, at int) []byte { return addLine(e.text, line, at, e.lineBreak()) }

// addLine adds a line where another begins, or at the end.
func addLine(text []byte, line string, at int, lineBreak string) []byte {
	line += lineBreak
	if at > 0 && text[at-1] != '\n' {
		line = lineBreak + strings.TrimSuffix(line, lineBreak)
	}
	return slices.Concat(text[:at], []byte(line), text[at:])
}

// append adds the table at the end, with a line or none.
func (e *editor) append(line string) []byte {
	head := "[" + e.table + "]"
	if e.row > 0 {
		head = "[[channel]]"
	}
	lineBreak := e.lineBreak()
	out := slices.Clone(e.text)
	if len(out) > 0 {
		if out[len(out)-1] != '\n' {
			out = append(out, lineBreak...)
		}
		out = append(out, lineBreak...)
	}
	out = append(append(out, head...), lineBreak...)
	if line != "" {
		out = append(append(out, line...), lineBreak...)
	}
	return out
}

// editTable brings a whole table in or remarks it out.
func (e *editor) editTable() []byte {
	if e.change.text == "" {
		return e.remarkTable()
	}
	if e.hasTable() {
		return e.text
	}
	if h := e.deadHeader(); h >= 0 {
		return uncomment(e.text, e.headers[h].from)
	}
	return e.append("")
}

// remarkTable makes remarks of a table's headers and keys, the last first, so that
// places stay true.
func (e *editor) remarkTable() []byte {
	type span struct{ from, to int }
	var spans []span
	mine := func(name string) bool { return name == e.table || under(name, e.table) }
	for _, h := range e.headers {
		if h.live && mine(h.name) {
			from := h.from + len(e.text[h.from:]) - len(bytes.TrimLeft(e.text[h.from:], " \t"))
			spans = append(spans, span{from, from + 1 + bytes.IndexByte(e.text[from:], ']')})
		}
	}
	for _, p := range e.pairs {
		if !p.inner && (mine(p.section) || p.section == "" && mine(p.path)) {
			spans = append(spans, span{p.from, p.to})
		}
	}
	slices.SortFunc(spans, func(a, b span) int { return b.from - a.from })
	out := e.text
	for _, s := range spans {
		out = e.remarkOut(out, s.from, s.to)
	}
	return out
}
