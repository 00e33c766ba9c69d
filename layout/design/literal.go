package design

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"pappus/layout/prose"
)

// literalDepth is the most lists in lists that a value may be.
const literalDepth = 8

// Literal writes a value as a design file has it: what Set takes, or what Values gives.
// It is empty for what TOML cannot hold.
func Literal(v any) string { return literal(v, 0) }

func literal(v any, depth int) string {
	switch v := v.(type) {
	case bool, int, int64:
		return fmt.Sprint(v)
	case float64:
		if !math.IsNaN(v) && !math.IsInf(v, 0) {
			return plain(v)
		}
	case string:
		if utf8.ValidString(v) {
			return Quote(v)
		}
	case []any:
		parts := make([]string, len(v))
		for i, e := range v {
			if parts[i] = literal(e, depth+1); parts[i] == "" || depth == literalDepth {
				return ""
			}
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case map[string]any:
		return spanned(v)
	}
	return ""
}

// spanned writes a range as a table on one line; it is empty for any other table.
func spanned(v map[string]any) string {
	var parts []string
	for _, name := range []string{"from", "to", "step"} {
		if text := Literal(v[name]); text != "" {
			parts = append(parts, name+" = "+text)
		}
	}
	if len(parts) != len(v) || len(parts) < 2 {
		return ""
	}
	return "{ " + strings.Join(parts, ", ") + " }"
}

// Quote writes a basic string of TOML, on one line.
func Quote(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, c := range s {
		switch {
		case c == '"' || c == '\\':
			b.WriteByte('\\')
			b.WriteRune(c)
		case c < 0x20 || c == 0x7f:
			fmt.Fprintf(&b, "\\u%04X", c)
		default:
			b.WriteRune(c)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// plain writes a number as the file would have it.
func plain(v float64) string { return prose.Number(v, 0) }

// written gives a value about as the file has it, short enough for a message.
func written(v any) string {
	switch v := v.(type) {
	case string:
		return strconv.Quote(shorten(v, 40))
	case float64:
		s := plain(v)
		if strings.Trim(s, "-0123456789") == "" {
			s += ".0" // not to be taken for a whole number
		}
		return s
	case map[string]any:
		return "{…}"
	case []any:
		const most = 7
		var parts []string
		for _, e := range v[:min(len(v), most)] {
			if _, deep := e.([]any); deep {
				parts = append(parts, "[…]")
			} else {
				parts = append(parts, written(e))
			}
		}
		if len(v) > most {
			parts = append(parts, "…")
		}
		return "[" + strings.Join(parts, ", ") + "]"
	}
	return shorten(fmt.Sprint(v), 40)
}
