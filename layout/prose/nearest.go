package prose

import (
	"strings"
	"unicode"
)

// Nearest returns the word that was probably meant, or "" where none is close: one that
// is the same but for case, hyphens and spaces; else one that is at most two letters off,
// and less than half of the word; else the only one that begins with what was written, or
// with all of it but the ending, or that it begins with. Of some as near it is the one
// that begins alike for longest, then the first.
func Nearest(word string, words []string) string {
	given := folded(word)
	if given == "" {
		return ""
	}
	best, least, longest := "", 2, -1
	for _, w := range words {
		known := folded(w)
		n, same := distance(given, known), alike(given, known)
		if (n < least || n == least && same > longest) && (n == 0 || 2*n < len(known)) {
			best, least, longest = w, n, same
		}
	}
	if best == "" {
		return begun(given, words)
	}
	return best
}

// DidYouMean returns the end of a sentence that refuses a word: "; did you mean so?", or
// nothing where no word is near.
func DidYouMean(word string, words []string) string {
	if n := Nearest(word, words); n != "" {
		return "; did you mean " + n + "?"
	}
	return ""
}

// folded leaves of a word what must be right: letters and digits, in lower case.
func folded(word string) string {
	return strings.Map(func(c rune) rune {
		if unicode.IsLetter(c) || unicode.IsDigit(c) {
			return unicode.ToLower(c)
		}
		return -1
	}, word)
}

// Endings are worth this many letters at most, and a beginning says something from so
// many on. These are judged by the words of a design: "vertex" is vertices, "height" is
// height_mm, "geo" is geodesic, but "an" is not antiprism.
const ending, beginning = 3, 3

// alike is how many letters two words have in common from their beginning.
func alike(a, b string) int {
	n := 0
	for n < min(len(a), len(b)) && a[n] == b[n] {
		n++
	}
	return n
}

// begun returns the only word that begins as the given one does; "" where there are more.
func begun(given string, words []string) string {
	letters := []rune(given)
	for cut := 0; cut < ending && len(letters)-cut >= beginning && (cut == 0 || len(letters)-cut > ending); cut++ {
		stem, found := string(letters[:len(letters)-cut]), ""
		for _, w := range words {
			if !strings.HasPrefix(folded(w), stem) {
				continue
			}
			if found != "" {
				return ""
			}
			found = w
		}
		if found != "" {
			return found
		}
	}
	for _, w := range words {
		if known := folded(w); len(known) > ending && strings.HasPrefix(given, known) {
			return w
		}
	}
	return ""
}

// distance is the number of letters to add, drop or change, or of neighbours to swap, to
// make a into b (Levenshtein, Soviet Physics Doklady 10 (1966) 707; Damerau, CACM 7
// (1964) 171); 3 where it is more than 2.
func distance(a, b string) int {
	const far = 3
	if len(a) > len(b)+2 || len(b) > len(a)+2 {
		return far
	}
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := range len(a) {
		row[0] = i + 1
		for j := range len(b) {
			change := last[j]
			if a[i] != b[j] {
				change++
			}
			row[j+1] = min(change, row[j]+1, last[j+1]+1)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last, row = last, row, before
	}
	return min(last[len(b)], far)
}
