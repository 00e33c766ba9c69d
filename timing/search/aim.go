package search

// More tells whether an aim is to be made large.
func (a Aim) More() bool { return a == Level }

// Of returns what an aim is about, of figures: in dB, pieces, money, hours or litres.
func (a Aim) Of(f Figures) float64 {
	if a.More() {
		return -a.of(f)
	}
	return a.of(f)
}
