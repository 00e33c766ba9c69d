package seats

import (
	"context"
	"math"
	"math/rand/v2"
)

// better is by how many dB a change must be better to be made: far over rounding, so that
// rounding settles nothing.
const better = 1e-7

// search is a set of groups and delays that is being made better. It is for one goroutine.
type search struct {
	*problem
	*scorer
	step    float64 // s
	low     int     // the least and the greatest delay in steps
	high    int
	tre     [][]float64 // [delay-low][frequency] exp(-i 2 pi f delay)
	tim     [][]float64
	ctx     context.Context
	allowed []bool // [drivers in a group]
	regroup bool   // drivers may change groups
	fixed   []bool // [group] its delay is not to be changed; nil: none

	group  []int // [driver]
	count  []int // [group] drivers
	delay  []int // [group] steps
	cost   float64
	work   int  // evaluations left
	stride int  // between the delays that are tried, in steps, before those about the best of them
	wide   bool // all delays that can be set are tried, and swaps with all drivers; else those nearby

	gre, gim       [][]float64 // [group][place*nf+f] without delay
	sre, sim       []float64   // the sum with delays
	flat, cre, cim []float64   // scratch: shares without and by a group's turn
	sum            []float64   // [place*bands+band]
}

// nearby is how many strides from a delay others are tried after a kick, half a period of the
// highest frequency, and mostNear how many of the nearest drivers one is swapped with. With
// the same tries, over the lantern and the ball of 60 and several aims, all delays and all
// swaps leave 0.1 to 0.3 dB more; 2 to 6 strides, and 2 to 16 drivers, the same within 0.1 dB.
const (
	nearby   = 3
	mostNear = 4
)

// spent tells whether the search is to end.
func (s *search) spent() bool { return s.work <= 0 || s.ctx.Err() != nil }

// snapshot is what search can go back to.
type snapshot struct {
	group, delay []int
	cost         float64
}

func (s *search) save(to *snapshot) {
	to.group, to.delay, to.cost = append(to.group[:0], s.group...), append(to.delay[:0], s.delay...), s.cost
}

func (s *search) load(from *snapshot) {
	copy(s.group, from.group)
	copy(s.delay, from.delay)
	s.refresh()
}

// phases holds exp(-i 2 pi f delay) for delays in steps.
type phases struct {
	step      float64
	low, high int
	re, im    [][]float64
}

func newPhases(frequency []float64, step float64, low, high int) *phases {
	p := &phases{step: step, low: low, high: high}
	for d := low; d <= high; d++ {
		re, im := make([]float64, len(frequency)), make([]float64, len(frequency))
		for f, hz := range frequency {
			t := turn(hz, float64(d)*step)
			re[f], im[f] = real(t), imag(t)
		}
		p.re, p.im = append(p.re, re), append(p.im, im)
	}
	return p
}

// newSearch makes room for a search with so many groups.
func newSearch(p *problem, sc *scorer, t *phases, groups int) *search {
	n := p.np * p.nf
	s := &search{problem: p, scorer: sc, step: t.step, low: t.low, high: t.high, tre: t.re, tim: t.im, regroup: true,
		group: make([]int, len(p.driver)), count: make([]int, groups), delay: make([]int, groups),
		sre: make([]float64, n), sim: make([]float64, n), flat: make([]float64, n), cre: make([]float64, n), cim: make([]float64, n),
		sum: make([]float64, p.np*p.bands), stride: max(1, int(stride/t.step+0.5))}
	for range groups {
		s.gre, s.gim = append(s.gre, make([]float64, n)), append(s.gim, make([]float64, n))
	}
	return s
}

// turns returns exp(-i 2 pi f delay) of a group's delay.
func (s *search) turns(g int) (re, im []float64) {
	return s.tre[s.delay[g]-s.low], s.tim[s.delay[g]-s.low]
}

// refresh sums up what the groups give, free of what many changes leave of rounding.
func (s *search) refresh() {
	s.work -= len(s.group) / 5 // it takes as long as so many tries
	clear(s.count)
	for g := range s.gre {
		clear(s.gre[g])
		clear(s.gim[g])
	}
	for d, g := range s.group {
		s.count[g]++
		s.addTo(s.gre[g], s.gim[g], d, 1)
	}
	clear(s.sre)
	clear(s.sim)
	for g := range s.gre {
		tre, tim := s.turns(g)
		for p := range s.np {
			from, to := p*s.nf, (p+1)*s.nf
			addTurned(s.sre[from:to], s.sim[from:to], s.gre[g][from:to], s.gim[g][from:to], tre, tim)
		}
	}
	s.cost = s.now()
}

// addTurned adds (are + i aim)(tre + i tim) to a row.
func addTurned(dre, dim, are, aim, tre, tim []float64) {
	dim, are, aim, tre, tim = dim[:len(dre)], are[:len(dre)], aim[:len(dre)], tre[:len(dre)], tim[:len(dre)]
	for f := range dre {
		dre[f] += are[f]*tre[f] - aim[f]*tim[f]
		dim[f] += are[f]*tim[f] + aim[f]*tre[f]
	}
}

// addTo adds a driver times a factor.
func (s *search) addTo(re, im []float64, d int, factor float64) {
	for i, v := range s.re[d] {
		re[i] += factor * v
	}
	for i, v := range s.im[d] {
		im[i] += factor * v
	}
}

// now is what the sum is worth.
func (s *search) now() float64 {
	clear(s.sum)
	for p := range s.np {
		row, from := s.sum[p*s.bands:(p+1)*s.bands], 0
		re, im := s.sre[p*s.nf:(p+1)*s.nf], s.sim[p*s.nf:(p+1)*s.nf]
		for b, end := range s.ends {
			v := 0.0
			for f := from; f < end; f++ {
				v += re[f]*re[f] + im[f]*im[f]
			}
			row[b] += v
			from = end
		}
	}
	return s.value(s.sum, math.Inf(1))
}

// retime gives a group the delay that is best with the others as they are, of all that can
// be set, and tells whether that made it better.
func (s *search) retime(g int) bool {
	if s.fixed != nil && s.fixed[g] {
		return false
	}
	tre, tim := s.turns(g)
	gre, gim := s.gre[g], s.gim[g]
	// |R + G t|^2 = |R|^2 + |G|^2 + 2 Re(conj(R) G t), R being the sum of the others.
	for p := range s.np {
		for f := range s.nf {
			i := p*s.nf + f
			r := s.sre[i] - (gre[i]*tre[f] - gim[i]*tim[f])
			q := s.sim[i] - (gre[i]*tim[f] + gim[i]*tre[f])
			s.flat[i] = r*r + q*q + gre[i]*gre[i] + gim[i]*gim[i]
			s.cre[i] = 2 * (r*gre[i] + q*gim[i])
			s.cim[i] = 2 * (r*gim[i] - q*gre[i])
		}
	}
	best, least := s.delay[g], s.cost-better
	try := func(from, to, stride int) {
		for d := max(from, s.low); d <= min(to, s.high); d += stride {
			if v := s.turned(s.tre[d-s.low], s.tim[d-s.low], least); v < least {
				best, least = d, v
			}
			s.work--
		}
	}
	if s.wide {
		try(s.low, s.high, s.stride)
	} else {
		try(s.delay[g]-nearby*s.stride, s.delay[g]+nearby*s.stride, s.stride)
	}
	if s.stride > 1 {
		middle := best
		try(middle-s.stride+1, middle-1, 1)
		try(middle+1, middle+s.stride-1, 1)
	}
	if best == s.delay[g] {
		return false
	}
	for p := range s.np {
		from, to := p*s.nf, (p+1)*s.nf
		subTurned(s.sre[from:to], s.sim[from:to], gre[from:to], gim[from:to], tre, tim)
		addTurned(s.sre[from:to], s.sim[from:to], gre[from:to], gim[from:to], s.tre[best-s.low], s.tim[best-s.low])
	}
	s.delay[g], s.cost = best, least
	return true
}

func subTurned(dre, dim, are, aim, tre, tim []float64) {
	dim, are, aim, tre, tim = dim[:len(dre)], are[:len(dre)], aim[:len(dre)], tre[:len(dre)], tim[:len(dre)]
	for f := range dre {
		dre[f] -= are[f]*tre[f] - aim[f]*tim[f]
		dim[f] -= are[f]*tim[f] + aim[f]*tre[f]
	}
}

// turned is what the sum is worth with the group of flat, cre and cim turned so; as for
// value, where that is no less than limit it may be anything that is no less.
func (s *search) turned(tre, tim []float64, limit float64) float64 {
	clear(s.sum)
	tim = tim[:len(tre)]
	for p := range s.np {
		row, from := s.sum[p*s.bands:(p+1)*s.bands], 0
		at := p * s.nf
		flat, cre, cim := s.flat[at:at+len(tre)], s.cre[at:at+len(tre)], s.cim[at:at+len(tre)]
		for b, end := range s.ends {
			v := 0.0
			for f := from; f < end; f++ {
				v += flat[f] + cre[f]*tre[f] - cim[f]*tim[f]
			}
			row[b] += v
			from = end
		}
	}
	return s.value(s.sum, limit)
}

// changed is what the sum is worth with driver d moved from group a to b and, unless it is
// below 0, driver e from b to a; limit is as for turned.
func (s *search) changed(d, e, a, b int, limit float64) float64 {
	s.work--
	clear(s.sum)
	are, aim := s.turns(a)
	bre, bim := s.turns(b)
	for p := range s.np {
		row, from, at := s.sum[p*s.bands:(p+1)*s.bands], 0, p*s.nf
		re, im := s.re[d][at:at+len(are)], s.im[d][at:at+len(are)]
		sre, sim := s.sre[at:at+len(are)], s.sim[at:at+len(are)]
		if e < 0 {
			for k, end := range s.ends {
				v := 0.0
				for f := from; f < end; f++ {
					x, y := bre[f]-are[f], bim[f]-aim[f]
					r, q := sre[f]+re[f]*x-im[f]*y, sim[f]+re[f]*y+im[f]*x
					v += r*r + q*q
				}
				row[k] += v
				from = end
			}
			continue
		}
		ere, eim := s.re[e][at:at+len(are)], s.im[e][at:at+len(are)]
		for k, end := range s.ends {
			v := 0.0
			for f := from; f < end; f++ {
				x, y := bre[f]-are[f], bim[f]-aim[f]
				u, w := re[f]-ere[f], im[f]-eim[f]
				r, q := sre[f]+u*x-w*y, sim[f]+u*y+w*x
				v += r*r + q*q
			}
			row[k] += v
			from = end
		}
	}
	return s.value(s.sum, limit)
}

// move puts a driver into a group.
func (s *search) move(d, to int) {
	from := s.group[d]
	for _, x := range []struct {
		g      int
		factor float64
	}{{from, -1}, {to, 1}} {
		s.addTo(s.gre[x.g], s.gim[x.g], d, x.factor)
		tre, tim := s.turns(x.g)
		for p := range s.np {
			a, b := p*s.nf, (p+1)*s.nf
			if x.factor > 0 {
				addTurned(s.sre[a:b], s.sim[a:b], s.re[d][a:b], s.im[d][a:b], tre, tim)
			} else {
				subTurned(s.sre[a:b], s.sim[a:b], s.re[d][a:b], s.im[d][a:b], tre, tim)
			}
		}
	}
	s.group[d] = to
	s.count[from]--
	s.count[to]++
}

// retimeAll retimes groups in turn until none gets better: exact coordinate descent (see
// S. J. Wright, "Coordinate descent algorithms", Math. Program. 151 (2015) 3).
func (s *search) retimeAll() (any bool) {
	for still, g := 0, 0; still < len(s.delay) && !s.spent(); g = (g + 1) % len(s.delay) {
		still++
		if s.retime(g) {
			still, any = 0, true
		}
	}
	return any
}

// fits tells whether groups may be so large.
func (s *search) fits(drivers int) bool { return drivers > 0 && s.allowed[drivers] }

// moveAll moves single drivers to other groups, swaps drivers of two groups, and moves
// pairs, while that is better.
func (s *search) moveAll() (any bool) {
	for d := range s.group {
		if s.spent() {
			return any
		}
		a, best, least := s.group[d], -1, s.cost-better
		if !s.fits(s.count[a] - 1) {
			continue
		}
		for b := range s.count {
			if b != a && s.fits(s.count[b]+1) {
				if v := s.changed(d, -1, a, b, least); v < least {
					best, least = b, v
				}
			}
		}
		if best >= 0 {
			s.move(d, best)
			s.cost, any = least, true
		}
	}
	return any
}

func (s *search) swapAll() (any bool) {
	for d := range s.group {
		a, best, least := s.group[d], -1, s.cost-better
		if s.spent() {
			return any
		}
		others := s.nearest[d]
		if s.wide {
			others = s.everyone
		}
		for _, e := range others {
			if b := s.group[e]; b != a {
				if v := s.changed(d, e, a, b, least); v < least {
					best, least = e, v
				}
			}
		}
		if best >= 0 {
			b := s.group[best]
			s.move(d, b)
			s.move(best, a)
			s.cost, any = least, true
		}
	}
	return any
}

// mostShifted is the most drivers that are moved at once where single ones may not: strings
// of up to so many are common.
const mostShifted = 6

// shiftAll moves several drivers at once between groups that may not take or give fewer.
func (s *search) shiftAll() (any bool) {
	for a := range s.count {
		for b := range s.count {
			for m := 2; m <= mostShifted && a != b && s.count[a] > m; m++ {
				if s.spent() {
					return any
				}
				if s.fits(s.count[a]-m) && s.fits(s.count[b]+m) && !s.smaller(a, b, m) {
					any = s.shift(a, b, m) || any
					break
				}
			}
		}
	}
	return any
}

// smaller tells whether fewer than m drivers may go from a to b.
func (s *search) smaller(a, b, m int) bool {
	for k := 1; k < m; k++ {
		if s.fits(s.count[a]-k) && s.fits(s.count[b]+k) {
			return true
		}
	}
	return false
}

// shift moves m drivers from a to b, each the best with those before, where all together
// are better.
func (s *search) shift(a, b, m int) bool {
	before := s.cost
	moved := make([]int, 0, mostShifted)
	for range m {
		best, least := -1, math.Inf(1)
		for d, g := range s.group {
			if g == a {
				if v := s.changed(d, -1, a, b, least); v < least-better {
					best, least = d, v
				}
			}
		}
		s.move(best, b)
		s.cost = least
		moved = append(moved, best)
	}
	if s.cost < before-better {
		return true
	}
	for _, d := range moved {
		s.move(d, a)
	}
	s.cost = before
	return false
}

// descend makes all changes that are better.
func (s *search) descend() {
	for !s.spent() {
		any := s.retimeAll()
		if s.regroup {
			any = s.moveAll() || any
			if !any {
				any = s.swapAll() || s.shiftAll()
			}
		}
		s.refresh()
		if !any {
			return
		}
	}
}

// explore makes a search better by kicks, each followed by a descent, while its work lasts:
// iterated local search (H. R. Lourenço, O. C. Martin and T. Stützle, in Handbook of
// Metaheuristics, 2003).
func (s *search) explore(seed uint64) {
	const fewest, more = 5, 4 // 2 to 4 leave 0.1 dB more on the ball, 3 to 12 the same
	random := rand.New(rand.NewPCG(seed, 2))
	var best snapshot
	s.save(&best)
	for !s.spent() {
		s.kick(random, fewest+random.IntN(more))
		s.descend()
		if s.cost < best.cost-better {
			s.save(&best)
		} else {
			s.load(&best)
		}
	}
	s.load(&best)
}

// kick makes some changes at random.
func (s *search) kick(random *rand.Rand, changes int) {
	if !s.regroup {
		changes = 1 + changes/5 // of delays alone, which a descent undoes less easily
	}
	for range changes {
		if !s.regroup {
			s.work -= len(s.group) // the sums that are made anew below
			g := random.IntN(len(s.delay))
			if s.fixed == nil || !s.fixed[g] {
				s.delay[g] = s.low + random.IntN(s.high-s.low+1)
			}
			continue
		}
		d := random.IntN(len(s.group))
		g := random.IntN(len(s.count))
		a := s.group[d]
		switch {
		case g == a:
			s.delay[g] = min(max(s.delay[g]+random.IntN(13)-6, s.low), s.high)
		case s.fits(s.count[a]-1) && s.fits(s.count[g]+1):
			s.group[d] = g
			s.count[a]--
			s.count[g]++
		default:
			e := random.IntN(len(s.group))
			s.group[d], s.group[e] = s.group[e], s.group[d]
		}
	}
	s.refresh()
}
