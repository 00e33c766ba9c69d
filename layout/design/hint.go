package design

import (
	"slices"
	"strings"

	"pappus/layout/prose"
)

// aboutKeys returns what a key may be, by its full name; a channel's by that of any.
func aboutKeys(path string) (kind, bool) {
	table, name, ok := strings.Cut(path, ".")
	if !ok {
		table, name = "", path
	}
	if strings.HasPrefix(table, "channel[") {
		return kindOf(new(Channel).keys(), name)
	}
	for _, t := range defaults().tables() {
		if t.name == table {
			return kindOf(t.keys, name)
		}
	}
	return kind{}, false
}

func kindOf(keys []key, name string) (kind, bool) {
	for _, k := range keys {
		if k.name == name {
			return k.kind, true
		}
	}
	return kind{}, false
}

// hint says what a key that is not known may have been meant to be: one of another
// table, else one with a name like it, here or there.
func (r *reader) hint(name string, here []string) string {
	const unknown = "not a known key"
	if home := r.home(name); home != "" {
		return unknown + " here; it belongs " + home
	}
	if near := prose.DidYouMean(name, here); near != "" {
		return unknown + near
	}
	if near := prose.Nearest(name, r.allNames()); near != "" {
		return unknown + "; did you mean " + near + "? It belongs " + r.home(near)
	}
	return unknown + "; known here: " + strings.Join(here, ", ")
}

// hintAtTop is hint for what stands at the top: a table has the name of a table.
func (r *reader) hintAtTop(name string, v any, known []string) string {
	if _, one := v.(map[string]any); one {
		if near := prose.DidYouMean(name, known); near != "" {
			return "not a known table" + near
		}
	}
	return r.hint(name, known)
}

// home says where a key belongs; nothing where there is no such key.
func (r *reader) home(name string) string {
	var homes []string
	for _, t := range r.tables() {
		if hasKey(t.keys, name) && t.name == "" {
			return "above the first table"
		}
		if hasKey(t.keys, name) {
			homes = append(homes, "["+t.name+"]")
		}
	}
	if hasKey(new(Channel).keys(), name) {
		homes = append(homes, "a [[channel]]")
	}
	if len(homes) == 0 {
		return ""
	}
	return "in " + prose.Either(homes)
}

// allNames lists the keys of all tables, each once.
func (r *reader) allNames() []string {
	all := names(new(Channel).keys())
	for _, t := range r.tables() {
		all = append(all, names(t.keys)...)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

func hasKey(keys []key, name string) bool {
	return slices.ContainsFunc(keys, func(k key) bool { return k.name == name })
}

func names(keys []key) []string {
	out := make([]string, len(keys))
	for i, k := range keys {
		out[i] = k.name
	}
	return out
}
