package csvtable

import (
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
	"golang.org/x/text/transform"
)

// separators are what may stand between values, the first of those that the first line
// has outside of quotes.
var separators = []rune{';', '\t', ','}

var words = map[rune]string{';': "semicolon", '\t': "tab", ',': "comma"}

// lineEnds makes line ends of any system those of one.
var lineEnds = strings.NewReplacer("\r\n", "\n", "\r", "\n")

// decode turns what a file holds into UTF-8 with lines that end in \n: what a byte order
// mark says, else UTF-8, else what Windows has of Latin-1.
func decode(data []byte) string {
	without := charmap.Windows1252.NewDecoder()
	if utf8.Valid(data) {
		without = unicode.UTF8.NewDecoder()
	}
	text, _, err := transform.Bytes(unicode.BOMOverride(without), data)
	if err != nil {
		text = data // every byte means something, so that this is never so
	}
	return lineEnds.Replace(string(text))
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
