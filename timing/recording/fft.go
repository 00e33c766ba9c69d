package recording

// length returns the least length from n on that is a product of twos, threes and
// fives with at least one five and three: transforms of powers of two alone are slow,
// since their strides meet in the processor's cache.
func length(n int) int {
	best := 0
	for five := 5; best == 0 || five < best; five *= 5 {
		for three := 3 * five; best == 0 || three < best; three *= 3 {
			size := three
			for size < n || size%2 == 1 {
				size *= 2
			}
			if best == 0 || size < best {
				best = size
			}
		}
	}
	return best
}
