package seats

// Arrivals returns when each driver is heard at each place, in s, against the mean there
// weighted by energy, and the range from the first to the last.
func Arrivals(f *Field) (late [][]float64, span float64) {
	p := newProblem(f, nil)
	late = make([][]float64, f.Drivers)
	at := make([]int, p.seats) // the field's seat of each
	for s, from := range p.order {
		at[from] = s
	}
	for d, from := range p.driver {
		for _, s := range at {
			late[from] = append(late[from], p.arrival[d][s])
		}
	}
	return late, p.spread
}
