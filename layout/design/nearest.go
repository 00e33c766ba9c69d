package design

// nearest gives the word that is most like the given one, or "" where none is
// close: at most two letters off, and less than half of the word.
func nearest(word string, words []string) string {
	best, least := "", 3
	for _, w := range words {
		if n := distance(word, w); n < least && 2*n < len(w) {
			best, least = w, n
		}
	}
	return best
}

// distance is the number of letters to add, drop or change to make a into b
// (Levenshtein, Soviet Physics Doklady 10 (1966) 707).
func distance(a, b string) int {
	if len(a) > len(b)+2 || len(b) > len(a)+2 {
		return 3 // far enough for what is asked here
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		left, corner := i+1, i
		for j := range len(b) {
			change := corner
			if a[i] != b[j] {
				change++
			}
			corner = row[j+1]
			row[j] = left
			left = min(change, left+1, corner+1)
		}
		row[len(b)] = left
	}
	return row[len(b)]
}
