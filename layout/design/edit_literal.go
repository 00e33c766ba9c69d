package design

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// literalDepth is the most lists in lists that a value may be.
const literalDepth = 8

// literal writes a value as TOML has it, and whether it can.
func literal(v any, depth int) (string, bool) {
	switch v := v.(type) {
	case bool:
		return strconv.FormatBool(v), true
	case int:
		return strconv.Itoa(v), true
	case int64:
		return strconv.FormatInt(v, 10), true
	case float64:
		return plain(v), !math.IsNaN(v) && !math.IsInf(v, 0)
	case string:
		return Quote(v), utf8.ValidString(v)
	case []any:
		parts := make([]string, len(v))
		for i, e := range v {
			part, ok := literal(e, depth+1)
			if !ok || depth == literalDepth {
				return "", false
			}
			parts[i] = part
		}
		return "[" + strings.Join(parts, ", ") + "]", true
	}
	return "", false
}

// Literal writes a value as a design file has it: what Set takes, or what Values gives.
// It is empty for what TOML cannot hold.
func Literal(v any) string {
	text, _ := literal(v, 0)
	return text
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
