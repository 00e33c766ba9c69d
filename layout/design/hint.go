package design

import (
	"slices"
	"strings"

	"pappus/layout/prose"
)

// hint says what a key that is not known may have been meant to be: one with a name like
// it, else one of another table, else one with a name like one of those.
func (r *Reader) hint(name string, here []string) string {
	const unknown = "not a known key"
	if near := prose.DidYouMean(name, here); near != "" {
		return unknown + near
	}
	if home := r.home(name); home != "" {
		return unknown + " here; it belongs " + home
	}
	if near := prose.Nearest(name, r.allNames()); near != "" {
		return unknown + "; did you mean " + near + "? It belongs " + r.home(near)
	}
	return unknown + "; known here: " + strings.Join(here, ", ")
}

// hintAtTop is hint for what stands at the top: a table has the name of a table.
func (r *Reader) hintAtTop(name string, known []string) string {
	if _, one := r.in[name].(map[string]any); one {
		if near := prose.DidYouMean(name, known); near != "" {
			return "not a known table" + near
		}
	}
	return r.hint(name, known)
}

// home says where a key belongs; nothing where there is no such key.
func (r *Reader) home(name string) string {
	var homes []string
	for _, t := range r.schema() {
		switch {
		case !hasKey(t.Rows(), name):
		case t.Name == "":
			return "above the first table"
		case t.More != nil:
			homes = append(homes, "a [["+t.Name+"]]")
		default:
			homes = append(homes, "["+t.Name+"]")
		}
	}
	if len(homes) == 0 {
		return ""
	}
	return "in " + prose.Either(homes)
}

// allNames lists the keys of all tables, each once.
func (r *Reader) allNames() []string {
	var all []string
	for _, t := range r.schema() {
		all = append(all, names(t.Rows())...)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

func hasKey(rows []Row, name string) bool {
	return slices.ContainsFunc(rows, func(r Row) bool { return r.Name == name })
}

func names(rows []Row) []string {
	out := make([]string, len(rows))
	for i, r := range rows {
		out[i] = r.Name
	}
	return out
}
