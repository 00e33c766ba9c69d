package seats

import "context"

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

// Tries makes so many tries to better a plan for eight channels.
func Tries(f *Field, tries int) {
	p, err := newPlanner(context.Background(), f, Even, Limits{Channels: 8, Step: stride})
	if err != nil {
		panic(err)
	}
	starts := p.starts(8, 1)
	p.each(p.problem, 8, 1, func(s *search, _ int) {
		s.wide, s.work = true, tries
		s.begin(starts[0])
		s.descend()
		s.explore(1)
	})
}

// Free is what was found with free phases for Worst, and for Mean.
func (f *Field) Free(groups [][]int, gain []float64) (worst, mean Figures) {
	p := newPhased(f, groups, gain)
	p.worst()
	worst = f.figures(groups, p.feed(gain), gain)
	p = newPhased(f, groups, gain)
	p.mean()
	return worst, f.figures(groups, p.feed(gain), gain)
}

func (p *phased) feed(gain []float64) []complex128 {
	n := len(p.Frequency)
	feed := make([]complex128, p.channels*n)
	for i := range feed {
		feed[i] = p.turn[i%n][i/n]
		if gain != nil {
			feed[i] *= complex(gain[i/n], 0)
		}
	}
	return feed
}
