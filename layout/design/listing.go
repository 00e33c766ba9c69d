package design

import (
	"math"
	"regexp"
	"slices"
	"strings"
)

// Key describes one key of the design file, for who builds a form of them.
type Key struct {
	Path    string // full name: body.radius_mm; name; of one of many tables: channel.gain_db
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

// Group describes one table of the design file.
type Group struct {
	Name     string // empty for the top; channel for the rows of [[channel]]
	Optional bool   // stands for a thing that is there only if the table is
	Many     bool   // there may be several, [[name]]
	Remark   string // from the starter
}

// Keys lists every key there is, in the order of the file; those of [[channel]] last.
func Keys() []Key {
	remarks, _ := starterRemarks()
	var out []Key
	for _, t := range defaults().tables() {
		for _, r := range t.Rows() {
			k := Key{Path: join(t.Name, r.Name), Table: t.Name, Name: r.Name, Kind: r.kind(), Choices: r.words, Needed: r.Default == needed}
			k.Label, k.Unit = r.label()
			k.Remark = remarks[k.Path]
			if !k.Needed {
				k.Default = r.value()
			}
			if k.Kind != Text {
				k.Low, k.High = r.low, r.high
			}
			if r.few != nil {
				k.Choices = texts(r.few)
			}
			out = append(out, k)
		}
	}
	return out
}

// Tables lists every table there is, in the order of the file; [[channel]] last.
func Tables() []Group {
	_, remarks := starterRemarks()
	var out []Group
	for _, t := range defaults().tables() {
		out = append(out, Group{t.Name, t.Optional, t.More != nil, remarks[t.Name]})
	}
	return out
}

// units are the endings of names and what people write for them.
var units = []struct{ ending, unit string }{
	{"price_kg", "per kg"}, {"_mm3_s", "mm³/s"}, {"_kg", "kg"},
	{"_kg_m3", "kg/m³"}, {"_cm2", "cm²"}, {"_mm2", "mm²"}, {"_mm", "mm"}, {"_m", "m"}, {"_us", "µs"}, {"_hz", "Hz"},
	{"_db", "dB"}, {"_ohm", "Ω"}, {"_volt", "V"}, {"_percent", "%"}, {"_kpa", "kPa"}, {"_deg", "°"}, {"_w", "W"},
	{"_g", "g"}, {"_mh", "mH"}, {"_tm", "T m"}, {"_l", "l"}, {"_c", "°C"},
}

// label names a key for a form: in words of its own, or by its name without the unit.
func (r Row) label() (label, unit string) {
	label = r.Name
	for _, u := range units {
		if name, ends := strings.CutSuffix(r.Name, u.ending); ends {
			label, unit = name, u.unit
			break
		}
	}
	if r.Label != "" {
		return r.Label, unit
	}
	return strings.ReplaceAll(label, "_", " "), unit
}

// starterRemarks reads the starter: what trails a key is about the key, what
// stands above a table, up to a blank line, about the table.
func starterRemarks() (keys, tables map[string]string) {
	keys, tables = map[string]string{}, map[string]string{}
	text := []byte(lantern)
	for _, n := range findOutline(text, true) {
		path := anyRow.ReplaceAllString(n.path, "")
		if n.header {
			if _, second := tables[path]; !second {
				tables[path] = above(text, n.from)
			}
		} else if _, words, ok := strings.Cut(string(text[n.to:lineEnd(text, n.to)]), "#"); ok {
			keys[path] = strings.TrimSpace(words)
		}
	}
	return keys, tables
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
	for _, t := range new(Design).tables() {
		for _, r := range t.Rows() {
			known[join(t.Name, r.Name)] = true
		}
	}
	var out []string
	for _, n := range findOutline(text, false) {
		if known[anyRow.ReplaceAllString(n.path, "")] && !slices.Contains(out, n.path) {
			out = append(out, n.path)
		}
	}
	return out
}

// anyRow is what tells one row of [[channel]] from another.
var anyRow = regexp.MustCompile(`\[[0-9]+\]`)

// Values returns what every key comes to, by its full name: numbers, words, flags
// and lists as the file would have them; nil where there is none. Keys of a table
// that stands for a thing that is not there are left out. Of each [[channel]] the
// row is in the name: channel[2].gain_db.
func (d *Design) Values() map[string]any {
	out := map[string]any{}
	add := func(table string, rows []Row) {
		for _, r := range rows {
			out[join(table, r.Name)] = r.value()
		}
	}
	there := map[string]bool{"search": d.Search.Present, "surface": d.Surface.Present, "room": d.Room.Present, "woofer": d.Woofer.Present}
	for _, t := range d.tables() {
		if !t.Optional || there[t.Name] {
			add(t.Name, t.Rows())
		}
		if t.Each == nil {
			continue
		}
		for i, rows := range t.Each() {
			add(nth(t.Name, i+1), rows)
		}
	}
	return out
}

// rowOf returns the row of a key by its full name; of one of many tables that is not there
// the row that it would have; empty where there is no such key.
func rowOf(tables []Table, path string) Row {
	table, name, _ := cutLast(path)
	if strings.HasPrefix(table, "search.") {
		tables = unfolded(tables)
	}
	for _, t := range tables {
		if t.Name != anyRow.ReplaceAllString(table, "") {
			continue
		}
		rows := t.Rows()
		if t.Each != nil {
			for i, r := range t.Each() {
				if table == nth(t.Name, i+1) {
					rows = r
				}
			}
		}
		if i := slices.IndexFunc(rows, func(r Row) bool { return r.Name == name }); i >= 0 {
			return rows[i]
		}
	}
	return Row{}
}

// Get returns what a key comes to, as Values does, by its full name.
func (d *Design) Get(path string) any { return rowOf(d.tables(), path).value() }

// Shown is Get as the file would have it; empty where there is nothing.
func (d *Design) Shown(path string) string { return Literal(d.Get(path)) }

// Number is Get for a number, in the key's unit; 0 where there is none.
func (d *Design) Number(path string) float64 {
	v, _ := d.Get(path).(float64)
	return v
}

// Put sets a number, in the key's unit, whether it is in range or not. Others that hang on
// it stay as they are.
func (d *Design) Put(path string, v float64) {
	r := rowOf(d.tables(), path)
	r.Limits = From(math.Inf(-1), math.Inf(1))
	if err := r.take(v); err != nil {
		panic("design: " + path + " is no number")
	}
}
