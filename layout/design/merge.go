package design

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2"
)

// Conflict is a key, or tables of which there may be several, that two people set to different
// values. Each is as a file has it; empty: it is not there.
type Conflict struct {
	Key, Base, Mine, Theirs string
}

// Merged is a text with the changes of two people.
type Merged struct {
	Text      []byte
	Mine      []string // keys that were put into theirs
	Conflicts []Conflict
}

// Merge puts into theirs, whose remarks and order stay, what mine has changed of base: a
// three-way merge by keys. [[seat]] and the like are one thing each, since their numbers
// shift. Where both changed a key and not alike it is a conflict, and mine holds only where
// keep names it. Any error is an *Error: ErrSyntax for a text that is no TOML or that one key
// alone cannot be changed in.
func Merge(base, mine, theirs []byte, keep []string) (Merged, error) {
	var all [3]map[string]any
	for i, text := range [][]byte{base, mine, theirs} {
		var err error
		if all[i], err = parts(text); err != nil {
			r := Reader{file: [...]string{"the former file", "the page's text", "the file"}[i], schema: defaults().tables}
			return Merged{}, r.malformed(text, err)
		}
	}
	out := Merged{Text: theirs}
	for _, key := range keysOf(all[:]) {
		b, m, t := partText(all[0], key), partText(all[1], key), partText(all[2], key)
		if m == b || m == t {
			continue
		}
		if t != b {
			out.Conflicts = append(out.Conflicts, Conflict{key, b, m, t})
			if !slices.Contains(keep, key) {
				continue
			}
		}
		if table, _, ok := strings.Cut(key, "."); ok && m == "" && slices.Contains(out.Mine, table) && all[1][table] == nil {
			continue // it is gone with its table
		}
		var err error
		if out.Text, err = setPart(out.Text, key, all[1][key]); err != nil {
			return Merged{}, err
		}
		out.Mine = append(out.Mine, key)
	}
	return out, nil
}

// tableThere is the value of a table's own key, which is merged before what it holds.
const tableThere = true

// parts are what a text holds by full names: values, true for a table that is there, and
// the list of all rows for those of which there may be several.
func parts(text []byte) (map[string]any, error) {
	in, out := map[string]any{}, map[string]any{}
	if err := toml.Unmarshal(text, &in); err != nil {
		return nil, err
	}
	for name, v := range in {
		table, ok := v.(map[string]any)
		if !ok {
			out[name] = v
			continue
		}
		out[name] = tableThere
		for key, v := range table {
			out[join(name, key)] = v
		}
	}
	return out, nil
}

// keysOf are the keys of all, sorted, so that a table comes before its keys.
func keysOf(all []map[string]any) []string {
	known := map[string]bool{}
	for _, one := range all {
		for key := range one {
			known[key] = true
		}
	}
	return slices.Sorted(maps.Keys(known))
}

// rows are the tables of a list of them; false: it is none.
func rows(v any) ([]map[string]any, bool) {
	list, ok := v.([]any)
	if !ok || len(list) == 0 {
		return nil, false
	}
	out := make([]map[string]any, len(list))
	for i, v := range list {
		if out[i], ok = v.(map[string]any); !ok {
			return nil, false
		}
	}
	return out, true
}

// partText is a part as it is compared and shown; empty: it is not there.
func partText(in map[string]any, key string) string {
	v, ok := in[key]
	if !ok {
		return ""
	}
	tables, ok := rows(v)
	if !ok {
		if text := Literal(v); text != "" {
			return text
		}
		return fmt.Sprint(v)
	}
	out := make([]string, len(tables))
	for i, t := range tables {
		var cells []string
		for _, name := range slices.Sorted(maps.Keys(t)) {
			cells = append(cells, name+" = "+partText(t, name))
		}
		out[i] = strings.Join(cells, ", ")
	}
	return strings.Join(out, "; ")
}

// setPart sets a part; nil takes it away.
func setPart(text []byte, key string, v any) ([]byte, error) {
	tables, ok := rows(v)
	if !ok {
		return Set(text, key, v)
	}
	if held, err := parts(text); err == nil && held[key] != nil {
		if text, err = Set(text, key, nil); err != nil {
			return nil, err
		}
	}
	for i, t := range tables {
		for _, name := range slices.Sorted(maps.Keys(t)) {
			var err error
			if text, err = Set(text, join(nth(key, i+1), name), t[name]); err != nil {
				return nil, err
			}
		}
	}
	return text, nil
}
