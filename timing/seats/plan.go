package seats

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"pappus/timing/cores"
	"pappus/timing/split"
)

// Limits are what a plan may not go beyond.
type Limits struct {
	Channels int                    // how many; no more are used than there are drivers
	Step     float64                // s, between delays that can be set; 0: fineStep
	Allowed  func(drivers int) bool // whether so many can share a channel; nil: any number

	// Channels laid out by hand: their drivers, gains (nil: all as loud) and delays in s, NaN
	// where free (nil: all). Then Channels and Allowed do not count.
	Groups      [][]int
	Gain, Delay []float64
}

// fineStep is the step in s where any delay can be set: a hundred and twenty-fifth of a
// period of the highest frequency, which moves no level by 0.01 dB.
const fineStep = 1e-6

// Answer is a set of channels and their delays, and what they leave.
type Answer struct {
	Groups [][]int   // drivers of each channel, rising; nil: so many channels cannot be had
	Delay  []float64 // s, of each, the least 0 unless some are set by hand
	Figures
}

// Quick returns a first answer, within some hundredths of a second for a few seats.
func (f *Field) Quick(aim Aim, l Limits) (Answer, error) {
	p, err := newPlanner(context.Background(), f, aim, l)
	if err != nil {
		return Answer{}, err
	}
	return p.quick()
}

// Plan returns the best answer found. The error is one of a field or limits that cannot be,
// ErrSizes, or that of ctx once it ends.
func (f *Field) Plan(ctx context.Context, aim Aim, l Limits) (Answer, error) {
	p, err := newPlanner(ctx, f, aim, l)
	if err != nil {
		return Answer{}, err
	}
	if l.Groups != nil {
		return p.byHand(thorough)
	}
	all, err := p.upTo(l.Channels)
	if err != nil {
		return Answer{}, err
	}
	if last := all[len(all)-1]; last.Groups != nil {
		return last, nil
	}
	return Answer{}, ErrSizes
}

// PlanUpTo returns the answers of Plan for 1, 2 … l.Channels channels, at the cost of the last.
func (f *Field) PlanUpTo(ctx context.Context, aim Aim, l Limits) ([]Answer, error) {
	p, err := newPlanner(ctx, f, aim, l)
	if err != nil {
		return nil, err
	}
	return p.upTo(l.Channels)
}

// ErrSizes tells that drivers cannot be sorted into so many channels of sizes that may be.
var ErrSizes = fmt.Errorf("seats: drivers cannot be sorted into so many channels of sizes that may be")

// planner looks for answers to one field.
type planner struct {
	ctx     context.Context
	field   *Field
	aim     Aim
	limits  Limits
	problem *problem
	rough   *problem // of one place of each seat
	phases  *phases
	sizes   []bool
	lines   []*split.Splits        // of the arrivals at each seat
	room    []map[*problem]*search // of each worker, for the number of groups looked at last
}

func newPlanner(ctx context.Context, f *Field, aim Aim, l Limits) (*planner, error) {
	if err := f.check(); err != nil {
		return nil, err
	}
	if err := aim.check(); err != nil {
		return nil, err
	}
	if l.Groups == nil && l.Channels < 1 {
		return nil, fmt.Errorf("seats: there must be a channel")
	}
	fed, err := l.feeds(f.Drivers)
	if err != nil {
		return nil, err
	}
	p := &planner{ctx: ctx, field: f, aim: aim, limits: l, problem: newProblem(f, fed), sizes: make([]bool, f.Drivers+1)}
	if !(p.limits.Step > 0) {
		p.limits.Step = fineStep
	}
	for n := 1; n <= f.Drivers; n++ {
		p.sizes[n] = l.Allowed == nil || l.Allowed(n)
	}
	// No channel waits for longer than half as long again as from the first to the last
	// driver at any seat. On the lantern and the ball of 60 plans have 0.25 to 0.8 of that
	// time, and are no better for twice of it.
	span := int(math.Ceil(1.5 * p.problem.spread / p.limits.Step))
	low := -(span + 1) / 2
	if l.anySet() {
		low = 0 // no delay is negative, and those set by hand say what 0 is
	}
	p.phases, p.rough = newPhases(f.Frequency, p.limits.Step, low, low+span), p.problem.rough()
	return p, nil
}

// allowed tells of a number of drivers whether they can share a channel.
func (p *planner) allowed(drivers int) bool { return p.sizes[drivers] }

// each calls work for each index below n on all cores, with a search of a problem for count
// groups.
func (p *planner) each(of *problem, count, n int, work func(s *search, i int)) {
	for len(p.room) < cores.Count() {
		p.room = append(p.room, map[*problem]*search{})
	}
	cores.Each(n, func(worker, i int) {
		s := p.room[worker][of]
		if s == nil || len(s.delay) != count {
			s = newSearch(of, newScorer(p.aim, p.field.Loud, of), p.phases, count)
			s.ctx, s.allowed, s.regroup = p.ctx, p.sizes, p.limits.Groups == nil
			for g := range p.limits.Groups {
				s.fixed = append(s.fixed, p.limits.set(g))
			}
			p.room[worker][of] = s
		}
		work(s, i)
	})
}

// begin sets a search to a start.
func (s *search) begin(from start) {
	copy(s.group, from.group)
	middle := slices.Min(from.delay)
	if s.low < 0 {
		middle = s.step * math.Round((middle+slices.Max(from.delay))/2/s.step)
	}
	for g, d := range from.delay {
		if s.fixed != nil && s.fixed[g] {
			s.delay[g] = 0
			continue
		}
		s.delay[g] = min(max(int(math.Round((d-middle)/s.step)), s.low), s.high)
	}
	s.refresh()
}

// starts returns what to begin with for so many groups: the exact splits, and so many
// clusters of arrivals.
func (p *planner) starts(count, clusters int) []start {
	if p.lines == nil {
		p.lines = p.problem.lines(p.allowed)
	}
	var out []start
	for _, line := range p.lines {
		if groups := line.Groups(count); groups != nil {
			out = append(out, p.problem.startOf(groups))
		}
	}
	clusters = max(1, min(clusters, mostSorted/(count*len(p.problem.driver)*p.problem.seats)))
	random := rand.New(rand.NewPCG(uint64(count), 1))
	for range clusters {
		if s, ok := p.problem.clusters(count, p.sizes, random); ok {
			out = append(out, s)
		}
	}
	return out
}

// mostSorted is how many distances the clusters of one number of channels are worth in each
// step, and mostHalves how many groups are tried to be split, the widest: neither counts with
// less than hundreds of drivers and dozens of channels, which would take minutes.
const (
	mostSorted = 2_000_000
	mostHalves = 16
)

// halves returns the starts that come of an answer by splitting one of its groups.
func (p *planner) halves(from *snapshot) (out []start) {
	groups := members(from.group, len(from.delay))
	for _, g := range p.problem.widest(groups) {
		drivers := groups[g]
		if len(drivers) < 2 || len(out) == mostHalves {
			continue
		}
		value, weight := p.problem.along(drivers)
		two := splitTwo(value, weight, p.allowed)
		if two == nil {
			continue
		}
		s := start{slices.Clone(from.group), make([]float64, len(groups)+1)}
		for h, d := range from.delay {
			s.delay[h] = float64(d) * p.limits.Step
		}
		s.delay[len(groups)] = s.delay[g]
		for _, i := range two {
			s.group[drivers[i]] = len(groups)
		}
		out = append(out, s)
	}
	return out
}

// effort is how long to search: tries are changes whose worth is worked out.
type effort struct {
	clusters int   // starts of this kind
	tries    int   // in all, for each number of channels
	most     int   // for all numbers of channels, times places and frequencies
	rounds   []int // how many go on in each round; the second half of the rounds is at all places
}

// The search's efforts. A try takes half a microsecond for five places on one core, and is
// shared by the places of a seat, so that a first answer takes 20 ms for five seats, and
// eight channels, found from one to eight, less than a second. With very many seats and
// channels it ends sooner, within about half a minute for forty seats and 64 channels.
var (
	first    = effort{3, 25_000, 10_000_000, []int{2, 1}}
	thorough = effort{6, 100_000, 1_200_000_000, []int{8, 4, 2, 1}}
)

// allowance is how many tries there are of a problem, shared by so many numbers of channels:
// half as many as places would make fewer where seats have several, since there is less of
// the search at all of them.
func (e effort) allowance(of *problem, channels int) int {
	return min(e.tries, 2*e.tries*of.seats/of.np, e.most/channels/(of.np*of.nf))
}

// quick takes the best of few starts.
func (p *planner) quick() (Answer, error) {
	if p.limits.Groups != nil {
		return p.byHand(first)
	}
	count := min(p.limits.Channels, p.field.Drivers)
	best := p.best(count, p.starts(count, first.clusters), first, 1)
	if best == nil {
		return Answer{}, ErrSizes
	}
	return p.answer(best), nil
}

// stride is how many steps apart delays are tried at first, in s: a sixth of a period of the
// highest frequency. Those between are tried about the best.
const stride = 1. / 48000

// best searches from starts and returns the best found; nil without any. A third of the
// tries goes into the delays of all starts, the rest into rounds, of which each takes the
// best of the last further. channels is how many numbers of channels share the effort.
func (p *planner) best(count int, starts []start, e effort, channels int) *snapshot {
	if len(starts) == 0 {
		return nil
	}
	if count == 1 {
		e.tries = 0 // one channel's delay changes nothing
	}
	found := make([]*snapshot, len(starts))
	tries := e.allowance(p.rough, channels)
	p.each(p.rough, count, len(starts), func(s *search, i int) {
		found[i] = &snapshot{}
		s.soft, s.wide, s.work = true, true, tries/3/len(starts)
		s.begin(starts[i])
		s.retimeAll()
		s.save(found[i])
	})
	of := p.rough
	for round, few := range e.rounds {
		if round >= len(e.rounds)/2 {
			of = p.problem
		}
		tries = e.allowance(of, channels)
		slices.SortStableFunc(found, byCost)
		found = found[:min(few, len(found))]
		p.each(of, count, len(found), func(s *search, i int) {
			s.soft, s.wide, s.work = true, true, tries*2/3/len(e.rounds)/len(found)
			s.load(found[i])
			if round == 0 {
				s.descend()
			}
			s.wide = false
			s.explore(uint64(count*1000 + round*100 + i))
			s.save(found[i])
		})
	}
	slices.SortStableFunc(found, byCost)
	return p.polished(count, found[:1], tries/8)
}

// polished searches on by the aim itself, where the search was by a smooth one, and returns
// the best.
func (p *planner) polished(count int, found []*snapshot, tries int) *snapshot {
	p.each(p.problem, count, len(found), func(s *search, i int) {
		s.soft, s.wide, s.work = false, true, tries/len(found)
		s.load(found[i])
		s.descend()
		s.wide = false
		s.explore(uint64(count*1000 + 999))
		s.save(found[i])
	})
	return slices.MinFunc(found, byCost)
}

// asTheyAre returns what starts are without any change.
func (p *planner) asTheyAre(count int, starts []start) []*snapshot {
	out := make([]*snapshot, len(starts))
	p.each(p.problem, count, len(starts), func(s *search, i int) {
		out[i] = &snapshot{}
		s.soft, s.work = false, 0
		s.begin(starts[i])
		s.save(out[i])
	})
	return out
}

// byCost puts the better first, those alike as they were.
func byCost(a, b *snapshot) int {
	if math.Abs(a.cost-b.cost) <= better {
		return 0
	}
	return cmp.Compare(a.cost, b.cost)
}

// upTo finds the answers for 1 to count groups, each beginning with the last, one group
// split, too, so that none is worse.
func (p *planner) upTo(count int) ([]Answer, error) {
	count = min(count, p.field.Drivers)
	var out []Answer
	var last *snapshot
	feasible := 0
	for k := 1; k <= count; k++ {
		var halves []start
		if last != nil {
			halves = p.halves(last)
		}
		starts := append(p.starts(k, thorough.clusters), halves...)
		if len(starts) > 0 {
			feasible++
		}
		e := thorough
		e.tries *= k / max(feasible, 1)
		best := p.best(k, starts, e, count)
		if quick := p.best(k, p.starts(k, first.clusters), first, 1); quick != nil && byCost(quick, best) < 0 {
			best = quick // never worse than what was shown first
		}
		if err := p.ctx.Err(); err != nil {
			return nil, err
		}
		if best == nil {
			out, last = append(out, Answer{}), nil
			continue
		}
		if last != nil && best.cost > last.cost {
			best = p.polished(k, append(p.asTheyAre(k, halves), best), e.allowance(p.problem, count)/4)
		}
		last = best
		out = append(out, p.answer(last))
	}
	return out, nil
}

// answer tells what was found in the field's own order.
func (p *planner) answer(from *snapshot) Answer {
	groups := members(from.group, len(from.delay))
	type channel struct {
		drivers []int
		delay   int
	}
	var all []channel
	for g, drivers := range groups {
		for i, d := range drivers {
			drivers[i] = p.problem.driver[d]
		}
		slices.Sort(drivers)
		all = append(all, channel{drivers, from.delay[g]})
	}
	slices.SortFunc(all, func(a, b channel) int { return a.drivers[0] - b.drivers[0] })
	first := slices.Min(from.delay)
	out := Answer{}
	for _, c := range all {
		out.Groups = append(out.Groups, c.drivers)
		out.Delay = append(out.Delay, float64(c.delay-first)*p.limits.Step)
	}
	out.Figures = p.field.Judge(out.Groups, nil, out.Delay)
	return out
}
