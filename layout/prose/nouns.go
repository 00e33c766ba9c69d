package prose

import (
	"strconv"
	"strings"
)

// Count writes a number with the noun that goes with it: 1 driver, 2 drivers.
func Count(n int, one, many string) string {
	return strconv.Itoa(n) + " " + Noun(n, one, many)
}

// Noun returns the noun that goes with a number.
func Noun(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// Either writes words as "a, b or c".
func Either(words []string) string { return joined(words, " or ") }

// Each writes words as "a, b and c".
func Each(words []string) string { return joined(words, " and ") }

func joined(words []string, last string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	n := len(words) - 1
	return strings.Join(words[:n], ", ") + last + words[n]
}
