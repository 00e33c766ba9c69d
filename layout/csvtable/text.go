package csvtable

import (
	"bytes"
	"encoding/binary"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// separators are what may stand between values, the first of those that the first line
// has outside of quotes.
var separators = []rune{';', '\t', ','}

var words = map[rune]string{';': "semicolon", '\t': "tab", ',': "comma"}

// decode turns what a file holds into UTF-8 with lines that end in \n.
func decode(data []byte) string {
	text := ""
	switch {
	case bytes.HasPrefix(data, []byte{0xff, 0xfe}):
		text = fromUTF16(data[2:], binary.LittleEndian)
	case bytes.HasPrefix(data, []byte{0xfe, 0xff}):
		text = fromUTF16(data[2:], binary.BigEndian)
	case utf8.Valid(data):
		text = strings.TrimPrefix(string(data), "\ufeff")
	default:
		text = fromLatin(data)
	}
	text = strings.ReplaceAll(text, "\r\n", "\n")
	return strings.ReplaceAll(text, "\r", "\n")
}

// fromUTF16 reads pairs of bytes; an odd one at the end is left out.
func fromUTF16(data []byte, order binary.ByteOrder) string {
	units := make([]uint16, len(data)/2)
	for i := range units {
		units[i] = order.Uint16(data[2*i:])
	}
	return string(utf16.Decode(units))
}

// fromLatin reads Latin-1 and, of what Windows puts where Latin-1 has controls, the
// dashes.
func fromLatin(data []byte) string {
	var b strings.Builder
	for _, c := range data {
		switch c {
		case 0x96:
			b.WriteRune('–')
		case 0x97:
			b.WriteRune('—')
		default:
			b.WriteRune(rune(c))
		}
	}
	return b.String()
}

// separatorOf returns what stands between the names of the first line.
func separatorOf(text string) rune {
	for line := range strings.Lines(text) {
		if s := strings.TrimSpace(line); s == "" || s[0] == '#' || strings.Trim(s, ";,") == "" {
			continue
		}
		bare := unquoted(strings.TrimRight(line, "\n"))
		for _, c := range separators {
			if strings.ContainsRune(bare, c) {
				return c
			}
		}
		break
	}
	return ','
}

// unquoted leaves out what stands in quotes.
func unquoted(s string) string {
	parts := strings.Split(s, `"`)
	var b strings.Builder
	for i := 0; i < len(parts); i += 2 {
		b.WriteString(parts[i])
	}
	return b.String()
}
