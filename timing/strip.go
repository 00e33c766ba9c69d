package timing

// Strip is the cells of a slice in squares round its middle: with C columns and R rows those
// with From <= max(|2 column + 1 - C|, |2 row + 1 - R|) < To, a square one cell wide being 2.
// Places that are as far from the body's axis in other directions are in one strip with it, so
// that they share the sums of their ring.
type Strip struct{ From, To int }

// Has tells whether a cell is in it.
func (s Strip) Has(of Slice, cell int) bool {
	at := of.square(cell)
	return s.From <= at && at < s.To
}

// square returns how far out a cell is.
func (s Slice) square(cell int) int {
	u, v := 2*(cell%s.Columns)+1-s.Columns, 2*(cell/s.Columns)+1-s.Rows
	return max(u, -u, v, -v)
}

// Cells is how many cells of a slice a strip has.
func (s Strip) Cells(of Slice) int {
	n := 0
	for cell := range of.Columns * of.Rows {
		if s.Has(of, cell) {
			n++
		}
	}
	return n
}

// Strips splits a slice into strips from the middle outwards, each with about so many cells or
// with one square, whichever is more.
func (s Slice) Strips(cells int) []Strip {
	most := max(s.Columns, s.Rows)
	in := make([]int, most+1) // cells by their square
	for cell := range s.Columns * s.Rows {
		in[s.square(cell)]++
	}
	var out []Strip
	from, held := 0, 0
	for at, n := range in {
		if held += n; held >= cells || at == most {
			out = append(out, Strip{from, at + 1})
			from, held = at+1, 0
		}
	}
	return out
}
