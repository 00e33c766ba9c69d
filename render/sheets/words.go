package sheets

import (
	"slices"
	"strconv"
	"strings"
)

// wrap breaks words into lines of at most so many characters where it can.
func wrap(words string, most int) []string {
	var lines []string
	line := ""
	for _, w := range strings.Fields(words) {
		if line != "" && len([]rune(line))+1+len([]rune(w)) > most {
			lines = append(lines, line)
			line = ""
		}
		if line != "" {
			line += " "
		}
		line += w
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// cutShort gives words, cut to a number of characters.
func cutShort(words string, most int) string {
	r := []rune(words)
	if len(r) <= most {
		return words
	}
	return strings.TrimSpace(string(r[:most-1])) + "…"
}

// letters names a class by a letter; A to Z, then AA, AB and so on.
func letters(n int) string {
	name := ""
	for ; n >= 0; n = n/26 - 1 {
		name = string(rune('A'+n%26)) + name
	}
	return name
}

// numbers lists numbers, runs of three or more as first to last.
func numbers(ids []int) string {
	ids = slices.Sorted(slices.Values(ids))
	var out []string
	for i := 0; i < len(ids); {
		j := i
		for j+1 < len(ids) && ids[j+1] == ids[j]+1 {
			j++
		}
		if j-i >= 2 {
			out = append(out, strconv.Itoa(ids[i])+"–"+strconv.Itoa(ids[j]))
		} else {
			for _, id := range ids[i : j+1] {
				out = append(out, strconv.Itoa(id))
			}
		}
		i = j + 1
	}
	return strings.Join(out, ", ")
}
