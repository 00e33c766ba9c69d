package design

import (
	"math"
	"slices"
	"strings"

	"pappus/layout/prose"
)

// synonyms are words that people say for those that a design uses.
var synonyms = map[string][]string{
	"sphere": {ball}, "spherical": {ball, "sphere"}, "globe": {ball}, "hemisphere": {ball}, "cylinder": {prism}, "box": {"cube"}, "hexahedron": {"cube"},
	"football": {"truncated icosahedron"}, "soccer ball": {"truncated icosahedron"}, "buckyball": {"truncated icosahedron"},
	"mesh": {file}, "stl": {file}, "off": {file},
	"corners": {"vertices"}, "points": {"list"}, "csv": {"list"}, "uniform": {"even"}, "uniformly": {"even"},
	"free field": {point}, "free": {point}, "none": {point},
	"delay": {"arrival"}, "time": {"arrival"}, "timing": {"arrival"}, "distance": {"arrival"}, "adjacent": {"neighbours"},
	"rings": {"height"}, "elevation": {"height"},
	"lr": {linkwitz}, "lr4": {linkwitz}, "bw": {"butterworth"},
	"line": {straight}, "phase": {"field"}, "arc": {"path"},
}

// meant is the end of a sentence that asks whether another of the words was meant;
// nothing where none is near.
func (r Row) meant(text string) string {
	plain := strings.Join(strings.FieldsFunc(strings.ToLower(text), func(c rune) bool { return c == ' ' || c == '_' || c == '-' }), " ")
	near := prose.Nearest(text, r.words)
	for _, w := range r.words {
		if near == "" && slices.Contains(synonyms[plain], w) {
			near = w
		}
	}
	if near == "" {
		return ""
	}
	return "; did you mean " + Quote(near) + "?"
}

// instead is the end of a sentence that says what to write in place of a value that the
// key does not take; nothing where that is not plain to see.
func (r Row) instead(v any) string {
	text, isText := v.(string)
	if r.words != nil {
		if !isText {
			return ""
		}
		return r.meant(text)
	}
	for _, other := range others(v) {
		if _, err := r.read(other); err != nil {
			continue
		}
		if _, still := other.(string); isText && !still {
			return "; write " + literally(other) + ", without quotes"
		}
		return "; write " + literally(other)
	}
	return ""
}

// literally writes a value as the file has it.
func literally(v any) string {
	if f, ok := v.(float64); ok {
		return plain(f)
	}
	return written(v)
}

// others are what a value may have been meant to be, the most like it first.
func others(v any) []any {
	var out []any
	switch v := v.(type) {
	case string:
		if truth, ok := truths[strings.ToLower(strings.TrimSpace(v))]; ok {
			out = append(out, truth == "true")
		}
		for _, number := range prose.Numbers(v) {
			out = append(out, fromTOML(number), []any{fromTOML(number)})
		}
	case float64:
		if v == math.Trunc(v) && math.Abs(v) < 1<<53 {
			out = append(out, int64(v))
		}
		out = append(out, []any{v})
	case int64:
		out = append(out, []any{v}, written(v))
		if v == 0 || v == 1 {
			out = append(out, v == 1)
		}
	case bool:
		out = append(out, written(v))
	case []any:
		out = append(out, unquoted(v), joined(v))
		if len(v) == 1 {
			out = append(out, v[0])
		}
	}
	return out
}

// unquoted reads the texts in a list as numbers; nil where one is none.
func unquoted(list []any) any {
	out := make([]any, len(list))
	for i, v := range list {
		out[i] = v
		if text, ok := v.(string); ok {
			read := prose.Numbers(text)
			if len(read) != 1 {
				return nil
			}
			out[i] = fromTOML(read[0])
		}
	}
	return out
}

// joined reads a list of whole numbers as numbers that were parted at their decimal
// commas: [4,5, 3,2] as [4.5, 3.2]; nil where it cannot be that.
func joined(list []any) any {
	if len(list)%2 != 0 {
		return nil
	}
	var out []any
	for i := 0; i < len(list); i += 2 {
		whole, ok1 := list[i].(int64)
		part, ok2 := list[i+1].(int64)
		if !ok1 || !ok2 || part < 0 {
			return nil
		}
		out = append(out, fromTOML(literally(whole)+"."+literally(part)))
	}
	return out
}
