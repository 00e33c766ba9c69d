package seats

import (
	"context"
	"math/rand/v2"
)

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

// Costs returns what the search takes a random state of five channels for, and its figures'
// own worth.
func Costs(f *Field, aim Aim, seed uint64) (cost, own float64) {
	p, err := newPlanner(context.Background(), f, aim, Limits{Channels: 5, Step: stride})
	if err != nil {
		panic(err)
	}
	random := rand.New(rand.NewPCG(seed, 9))
	from := &snapshot{group: make([]int, f.Drivers), delay: make([]int, 5)}
	for d := range from.group {
		from.group[d] = d % 5
	}
	for g := range from.delay {
		from.delay[g] = p.phases.low + random.IntN(len(p.phases.re))
	}
	p.each(p.problem, 5, 1, func(s *search, _ int) {
		s.load(from)
		s.work = 100
		s.wide = true
		s.descend()
		s.save(from)
	})
	return from.cost, f.Value(aim, p.answer(from).Figures)
}

var FastLog2 = fastLog2
