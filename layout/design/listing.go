package design

import (
	"cmp"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// Key describes one key of the design file, for who builds a form of them.
type Key struct {
	Path    string // full name: body.radius_mm; name; for a [[channel]]: channel.gain_db
	Table   string // empty for the keys at the top
	Name    string
	Label   string // what it is, in a few words, without the unit
	Unit    string // as people write it; empty where there is none
	Kind    Kind
	Low     float64  // of a number, or of each in a list
	High    float64  // High is above Low where there is a range
	Choices []string // the words or numbers that may stand there; nil: any in range
	Default any      // number, text or flag; nil: none, or one that hangs on other values
	Needed  bool     // must be there where its table is
	Remark  string   // from the starter
}

// Kind is what a value may be.
type Kind string

// A List may also be one number where it is of absorptions.
const (
	Number Kind = "number"
	Whole  Kind = "whole"
	Choice Kind = "choice"
	Flag   Kind = "flag"
	Text   Kind = "text"
	List   Kind = "list"
)

// Table describes one table of the design file.
type Table struct {
	Name     string // empty for the top; channel for the rows of [[channel]]
	Optional bool   // stands for a thing that is there only if the table is
	Remark   string // from the starter
}

// Keys lists every key there is, in the order of the file; those of [[channel]] last.
func Keys() []Key {
	d, seen := defaults(), starterRemarks()
	var out []Key
	add := func(table string, keys []key, holder any) {
		for _, k := range keys {
			path := k.name
			if table != "" {
				path = table + "." + k.name
			}
			item := Key{Path: path, Table: table, Name: k.name, Label: labelOf(path, k.name), Unit: unitOf(k.name), Needed: k.needed, Remark: seen.keys[path]}
			if v := valueOf(holder, table, k.name); !k.needed && settled(k, v) {
				item.Default = v
			}
			item.describe(k.kind)
			out = append(out, item)
		}
	}
	for _, t := range d.tables() {
		add(t.name, t.keys, *defaults())
	}
	add("channel", new(Channel).keys(), Channel{})
	return out
}

// Tables lists every table there is, in the order of the file; [[channel]] last.
func Tables() []Table {
	seen := starterRemarks()
	var out []Table
	for _, t := range defaults().tables() {
		out = append(out, Table{t.name, t.optional, seen.tables[t.name]})
	}
	return append(out, Table{"channel", true, seen.tables["channel"]})
}

// settled tells whether a key takes a value: then it is a default that stands, not
// one that says that there is none.
func settled(k key, v any) bool {
	switch n := v.(type) {
	case nil:
		return false
	case int:
		v = int64(n)
	}
	return k.set(v) == nil
}

// describe fills in kind, range and choices. It asks the key itself what it takes,
// and reads its range where people read it.
func (k *Key) describe(is kind) {
	takes := func(v any) bool { return is.set(v) != ErrType }
	switch {
	case takes(true):
		k.Kind = Flag
	case takes("") && strings.HasPrefix(is.allowed, `"`):
		k.Kind, k.Choices = Choice, choices(k.Path, is.allowed)
	case takes(""):
		k.Kind = Text
	case takes([]any{}):
		k.Kind = List
	case takes(0.5):
		k.Kind = Number
	default:
		k.Kind = Whole
	}
	if m := span.FindStringSubmatch(is.kindly); m != nil && (k.Kind == Number || k.Kind == Whole || k.Kind == List) {
		k.Low, _ = strconv.ParseFloat(m[1], 64)
		k.High, _ = strconv.ParseFloat(m[2], 64)
	} else if k.Kind == Whole {
		k.Choices = few.FindAllString(is.allowed, -1)
		low, high := k.Choices[0], k.Choices[len(k.Choices)-1]
		k.Low, _ = strconv.ParseFloat(low, 64)
		k.High, _ = strconv.ParseFloat(high, 64)
	}
}

var (
	span     = regexp.MustCompile(`from (-?[0-9.]+(?:e[+-]?[0-9]+)?) to (-?[0-9.]+(?:e[+-]?[0-9]+)?)`)
	few      = regexp.MustCompile(`[0-9]+`)
	inQuotes = regexp.MustCompile(`"([^"]*)"`)
)

// choices returns the words that a key may have.
func choices(path, allowed string) []string {
	if path == "body.shape" { // too many for a sentence
		return slices.Concat([]string{geodesic, ball}, solids, halves, []string{prism, anti, file})
	}
	var out []string
	for _, m := range inQuotes.FindAllStringSubmatch(allowed, -1) {
		out = append(out, m[1])
	}
	return out
}

// units are the endings of names and what people write for them.
var units = []struct{ ending, unit string }{
	{"_kg_m3", "kg/m³"}, {"_cm2", "cm²"}, {"_mm2", "mm²"}, {"_mm", "mm"}, {"_m", "m"}, {"_us", "µs"}, {"_hz", "Hz"},
	{"_db", "dB"}, {"_ohm", "Ω"}, {"_volt", "V"}, {"_percent", "%"}, {"_kpa", "kPa"}, {"_deg", "°"}, {"_w", "W"},
	{"_g", "g"}, {"_mh", "mH"}, {"_tm", "T m"}, {"_l", "l"}, {"_c", "°C"},
}

// unitOf returns the unit that a key's name ends in.
func unitOf(name string) string {
	for _, u := range units {
		if strings.HasSuffix(name, u.ending) {
			return u.unit
		}
	}
	return ""
}

// remarks are what the starter says of keys and tables.
type remarks struct{ keys, tables map[string]string }

// starterRemarks reads the starter: what trails a key is about the key, what
// stands above a table, up to a blank line, about the table.
func starterRemarks() remarks {
	out := remarks{map[string]string{}, map[string]string{}}
	text := []byte(lantern)
	o := findOutline(text)
	name := func(path string) string {
		return strings.NewReplacer("channel[0]", "channel").Replace(path)
	}
	note := func(path string, to int) {
		if _, words, ok := strings.Cut(string(text[to:lineEnd(text, to)]), "#"); ok {
			out.keys[name(path)] = strings.TrimSpace(words)
		}
	}
	for _, p := range o.pairs {
		note(p.path, p.to)
	}
	for _, r := range o.remarks {
		note(r.path, r.to)
	}
	for _, h := range o.headers {
		out.tables[name(h.name)] = above(text, h.from)
	}
	return out
}

// above returns the comment on the lines above a place, as one line.
func above(text []byte, at int) string {
	var lines []string
	for at = lineStart(text, at); at > 0; {
		at = lineStart(text, at-1)
		line, ok := strings.CutPrefix(string(text[at:lineEnd(text, at)]), "#")
		if !ok || strings.TrimSpace(line) == "" {
			break
		}
		lines = append(lines, strings.TrimSpace(line))
	}
	slices.Reverse(lines)
	return strings.Join(lines, " ")
}

// Given lists the keys of Keys that a text gives a value for, in order; of each
// [[channel]] with its row, as channel[2].gain_db. The text must be good TOML.
func Given(text []byte) []string {
	known := map[string]bool{}
	for _, k := range Keys() {
		known[k.Path] = true
	}
	type place struct {
		path string
		line int
	}
	var out []place
	for path, line := range findLines(text) {
		if known[rows.ReplaceAllString(path, "channel.")] {
			out = append(out, place{path, line})
		}
	}
	slices.SortFunc(out, func(a, b place) int {
		return cmp.Or(cmp.Compare(a.line, b.line), cmp.Compare(a.path, b.path))
	})
	paths := make([]string, len(out))
	for i, p := range out {
		paths[i] = p.path
	}
	return paths
}

var rows = regexp.MustCompile(`^channel\[[0-9]+\]\.`)
