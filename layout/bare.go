package layout

import (
	"path/filepath"
	"slices"
	"strings"
	"unicode"

	"pappus/layout/csvtable"
)

// bareEndings are those of tables as measuring programs write them: numbers between blanks, in
// the order of the columns, without a line of names; what does not begin with a number is a remark.
var bareEndings = []string{".zma", ".txt"}

// withNames returns a bare table with names for its columns, and how many lines that is more; one
// that has names already, and other files, stay as they are.
func withNames(path string, data []byte, columns []csvtable.Column) (text []byte, more int) {
	if !slices.Contains(bareEndings, strings.ToLower(filepath.Ext(path))) {
		return data, 0
	}
	var names []string
	for _, c := range columns {
		names = append(names, c.Name)
	}
	if strings.Contains(strings.ToLower(string(data)), names[0]) {
		return data, 0
	}
	lines := strings.Split(strings.ReplaceAll(string(data), "\r\n", "\n"), "\n")
	for i, l := range lines {
		if lines[i] = bareLine(l, len(names)); lines[i] == "" {
			lines[i] = "#"
		}
	}
	return []byte(strings.Join(append([]string{strings.Join(names, "\t")}, lines...), "\n")), 1
}

// bareLine returns so many numbers of a line with tabs between them; nothing where it has none.
func bareLine(l string, count int) string {
	l = strings.TrimSpace(l)
	if first := strings.TrimLeft(l, "+-."); first == "" || !unicode.IsDigit(rune(first[0])) {
		return ""
	}
	numbers := strings.Fields(strings.NewReplacer(";", " ", ", ", " ").Replace(l))
	return strings.Join(numbers[:min(count, len(numbers))], "\t")
}
