package design

import (
	"errors"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"pappus/layout/prose"

	"github.com/pelletier/go-toml/v2"
)

// malformed is the error for a text that is not TOML, as err tells: it names line and
// key, and says what to write in place of what stands there.
func (r *Reader) malformed(text []byte, err error) *Error {
	e := &Error{File: r.file, Err: ErrSyntax}
	if why := notText(text); why != "" {
		e.Reason = why
		return e
	}
	var d *toml.DecodeError
	if errors.As(err, &d) {
		e.Line, _ = d.Position()
	}
	said := strings.TrimPrefix(err.Error(), "toml: ")
	lines := strings.Split(string(text), "\n")
	l := blamed(lines, e.Line)
	l.table = tableAt(lines, l.number)
	if l.key == "" || strings.Contains(said, "already") {
		e.Reason = "not readable as TOML: " + meant(said, l)
		return e
	}
	e.Line, e.Key, e.Value = l.number, shorten(l.path(), 60), shorten(l.value, 40)
	k := rowOf(r.schema(), l.path())
	if e.Reason = k.cure(l.value); e.Reason == "" {
		e.Reason = "not readable as TOML: " + meant(said, l) + k.must("; must be ")
	}
	return e
}

// longestList is on how many lines a list is looked for that was not closed.
const longestList = 50

// blamed returns the line that is wrong where the parser stops at another: a list that is
// not closed is good until the next key.
func blamed(text []string, number int) line {
	l := lineAt(text, number)
	if l.key != "" && !isTOML(l.value) {
		return l
	}
	for at := number - 1; at > max(0, number-longestList); at-- {
		before := lineAt(text, at)
		if strings.HasPrefix(before.value, "[") && strings.Count(before.value, "[") > strings.Count(before.value, "]") {
			return before
		}
		if before.key != "" {
			break
		}
	}
	return l
}

// notText says why a file is no text at all; nothing where it is.
func notText(data []byte) string {
	switch {
	case len(data) > 1 && (data[0] == 0xff && data[1] == 0xfe || data[0] == 0xfe && data[1] == 0xff):
		return "the text is saved as UTF-16; save it as UTF-8"
	case slices.Contains(data, 0):
		return "this is not a text, but a file of another kind"
	case !utf8.Valid(data):
		return "the text is not saved as UTF-8, or it is a file of another kind; save it as UTF-8"
	}
	return ""
}

// line is one line of a file: the table that it is in, its key and its value.
type line struct {
	table, key, value string
	number            int // from 1
}

func (l line) path() string {
	if l.table == "" {
		return l.key
	}
	return l.table + "." + l.key
}

// pairLine is a line with a key and a value. A name such as of a key is worth showing;
// what is not is left to the words on the whole line.
var pairLine = regexp.MustCompile(`^([A-Za-z0-9_.-]+)\s*=\s*(.*)$`)

// lineAt returns a line by its number, from 1, without its table.
func lineAt(text []string, number int) line {
	l := line{number: number}
	if number < 1 || number > len(text) {
		return l
	}
	if m := pairLine.FindStringSubmatch(strings.TrimSpace(text[number-1])); m != nil {
		l.key, l.value = m[1], uncommented(m[2])
	}
	return l
}

// tableAt returns the table that a line is in; what stands above it is good TOML.
func tableAt(text []string, number int) string {
	above := strings.Join(text[:min(max(number-1, 0), len(text))], "\n")
	if n := findOutline([]byte(above), false).last(func(n entry) bool { return n.header }); n != nil {
		return n.path
	}
	return ""
}

// uncommented leaves the remark out that follows a value.
func uncommented(value string) string {
	quoted := rune(0)
	for i, c := range value {
		switch {
		case quoted == 0 && c == '#':
			return strings.TrimSpace(value[:i])
		case quoted == 0 && (c == '"' || c == '\''):
			quoted = c
		case c == quoted:
			quoted = 0
		}
	}
	return value
}

// cure says what to write for a value that TOML cannot hold; nothing where that is not
// plain to see.
func (k Row) cure(value string) string {
	if value == "" {
		return "the value is missing" + k.must("; must be ")
	}
	if read := prose.Numbers(value); read != nil && k.words == nil {
		return k.plainNumber(read)
	}
	for _, mend := range mends {
		mended, ok := mend(value)
		if !ok || !isTOML(mended) {
			continue
		}
		if text := prose.Unquoted(mended); k.words != nil && !slices.Contains(k.words, text) {
			return "must be " + k.allowed() + k.meant(text)
		}
		return "not written as TOML has it" + k.must("; must be ") + "; write " + shorten(mended, 60)
	}
	return ""
}

// plainNumber says how a number is to be written, or what it must be where it is out of
// range.
func (k Row) plainNumber(read []string) string {
	if k.To != nil {
		fit := slices.DeleteFunc(slices.Clone(read), func(text string) bool { _, err := k.read(fromTOML(text)); return err != nil })
		if len(fit) == 0 {
			return "must be " + k.kindly()
		}
		read = fit
	}
	return "must be a plain number, with a point for decimals; write " + prose.Either(read)
}

// fromTOML reads a number as the file would give it.
func fromTOML(text string) any {
	var in map[string]any
	if toml.Unmarshal([]byte("x = "+text), &in) != nil {
		return text
	}
	return in["x"]
}

func isTOML(value string) bool {
	var in map[string]any
	return toml.Unmarshal([]byte("x = "+value), &in) == nil && len(in) == 1
}

// mends are ways to make a value of TOML of what people write, from those that change the
// least. Each returns whether it has changed anything.
var mends = []func(string) (string, bool){
	func(v string) (string, bool) { return changed(v, strings.TrimLeft(strings.TrimRight(v, ";, "), "=: ")) },
	func(v string) (string, bool) { return changed(v, typewritten(v)) },
	func(v string) (string, bool) { return changed(v, typewritten(semicolons.Replace(decimals(v)))) },
	func(v string) (string, bool) {
		w, ok := truths[strings.ToLower(prose.Unquoted(v))]
		return w, ok
	},
	func(v string) (string, bool) { return Quote(prose.Unquoted(v)), bare.MatchString(prose.Unquoted(v)) },
	func(v string) (string, bool) { return v + "]", strings.HasPrefix(v, "[") },
}

func changed(from, to string) (string, bool) { return to, from != to }

// typewritten replaces quotes, minus signs and spaces of word processors and spreadsheets,
// and leaves signs of degrees and percent out.
func typewritten(v string) string { return keyboard.Replace(prose.Typed(v)) }

var keyboard = strings.NewReplacer("“", `"`, "”", `"`, "„", `"`, "‟", `"`, "«", `"`, "»", `"`, "″", `"`, "‘", "'", "‚", "'", "‛", "'", "°", "", "%", "")

var semicolons = strings.NewReplacer(";", ",")

// commaNumber is a number with a decimal comma in a list with semicolons.
var commaNumber = regexp.MustCompile(`([0-9]),([0-9])`)

// decimals puts points for decimal commas where semicolons part the numbers.
func decimals(v string) string {
	if !strings.Contains(v, ";") {
		return v
	}
	return commaNumber.ReplaceAllString(v, "$1.$2")
}

var truths = map[string]string{"true": "true", "yes": "true", "on": "true", "false": "false", "no": "false", "off": "false"}

// bare is a word, or a path, that should stand in quotes.
var bare = regexp.MustCompile(`^[\p{L}_./\\][\p{L}\p{N}_ ./\\:-]*$`)

// told are the messages of the parser, by a part of each, and what they mean to who wrote
// the file.
var told = []struct{ part, means string }{
	{"terminated", "the quotes are not closed"},
	{"new lines", "the quotes are not closed on their line"},
	{"escape", `\ begins a code in such quotes; write / in paths, or put single quotes round the text`},
	{"to close", "the name of a table stands in brackets, as [body] or [[channel]]"},
	{"array", "a list stands in square brackets, with a comma after each value"},
	{"inline table", "a table on one line stands in braces, with a comma after each key and value"},
	{"control characters", "there is a letter that cannot be seen"},
	{"carriage return", "there is a letter that cannot be seen"},
}

// twice is what the parser says of something that is there twice.
var twice = regexp.MustCompile(`^(key|table) (\S+) (?:is|already)`)

// meant puts into plain words what the parser says of a line.
func meant(said string, l line) string {
	if m := twice.FindStringSubmatch(said); m != nil {
		if m[1] == "table" {
			return "[" + shorten(m[2], 60) + "] is there already; put all its keys under one"
		}
		return shorten(m[2], 60) + " is there already; leave one of them out"
	}
	for _, t := range told {
		if strings.Contains(said, t.part) {
			return t.means
		}
	}
	if l.key != "" {
		return "the value has no end, or more after it"
	}
	return "a line is a key, = and a value, such as radius_mm = 150"
}
