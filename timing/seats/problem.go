package seats

import (
	"cmp"
	"math"
	"math/cmplx"
	"slices"

	"pappus/timing/cores"
)

// problem is a field made ready to be searched: drivers' pressures over those of all in
// step, seats and drivers in an order that hangs on what is heard alone, so that the same
// seats told in another order, or mirrored with the body, are searched in the same way.
type problem struct {
	nf, np, bands, seats int
	seat                 []int // [place], rising
	ends                 []int
	frequency            []float64
	weight               []float64   // [seat], sum 1
	share                []float64   // [place] its part of its seat's weight
	order                []int       // the field's index of each seat
	driver               []int       // the field's index of each driver
	re, im               [][]float64 // [driver][place*nf+f]
	arrival              [][]float64 // [driver][seat] s, against the other drivers there
	energy               [][]float64 // [driver][seat]
	nearest              [][]int     // [driver] the few others whose arrivals are nearest, the nearest first
	everyone             []int       // all drivers
	spread               float64     // s, the most from the first to the last arrival at any seat
}

// feed is what a driver is fed before it is planned.
type feed struct {
	gain  float64
	delay float64 // s
}

// newProblem makes a field ready, each driver with its feed; nil: all as loud, none delayed.
func newProblem(f *Field, fed []feed) *problem {
	n := len(f.Frequency)
	p := &problem{nf: n, np: len(f.Place), bands: len(f.Ends), seats: f.seats(), ends: f.Ends, frequency: f.Frequency}
	heard, places := f.inStepped(fed), make([][]int, p.seats)
	for place := range f.Place {
		s := f.seat(place)
		places[s] = append(places[s], place)
	}
	loud := loudness(heard, places, f.Drivers)
	p.order = seatOrder(f.weights(), loud, heard, places, n)
	weight := f.weights()
	for s, from := range p.order {
		p.weight = append(p.weight, weight[from])
		for range places[from] {
			p.seat = append(p.seat, s)
			p.share = append(p.share, weight[from]/float64(len(places[from])))
		}
	}
	p.driver = driverOrder(loud, p.order)
	for _, d := range p.driver {
		re, im := make([]float64, 0, p.np*n), make([]float64, 0, p.np*n)
		for _, from := range p.order {
			for _, place := range places[from] {
				for _, v := range heard[place][d*n : (d+1)*n] {
					re, im = append(re, real(v)), append(im, imag(v))
				}
			}
		}
		p.re, p.im = append(p.re, re), append(p.im, im)
		energy := make([]float64, p.seats)
		for s, from := range p.order {
			energy[s] = loud[from][d]
		}
		p.energy = append(p.energy, energy)
	}
	p.arrive()
	p.meet()
	return p
}

// rough is a problem with the first place of each seat alone.
func (p *problem) rough() *problem {
	if p.np == p.seats {
		return p
	}
	r := *p
	r.np, r.seat, r.share = p.seats, nil, p.weight
	r.re, r.im = make([][]float64, len(p.driver)), make([][]float64, len(p.driver))
	for place, s := range p.seat {
		if place > 0 && p.seat[place-1] == s {
			continue
		}
		r.seat = append(r.seat, s)
		for d := range p.driver {
			from, to := place*p.nf, (place+1)*p.nf
			r.re[d], r.im[d] = append(r.re[d], p.re[d][from:to]...), append(r.im[d], p.im[d][from:to]...)
		}
	}
	return &r
}

// inStepped returns the drivers' pressures over the sum of their magnitudes, or over
// Field.Full, [place][driver*n+f].
func (f *Field) inStepped(fed []feed) [][]complex128 {
	n := len(f.Frequency)
	out := make([][]complex128, len(f.Place))
	cores.Each(len(f.Place), func(_, place int) {
		row, inStep := slices.Clone(f.Place[place]), make([]float64, n)
		for i := range row {
			if fed != nil {
				row[i] *= complex(fed[i/n].gain, 0) * turn(f.Frequency[i%n], fed[i/n].delay)
			}
			inStep[i%n] += cmplx.Abs(row[i])
		}
		if f.Full != nil {
			copy(inStep, f.Full)
		}
		for i := range row {
			if inStep[i%n] > 0 {
				row[i] /= complex(inStep[i%n], 0)
			}
		}
		out[place] = row
	})
	return out
}

// loudness returns the energy of each driver at each seat, [seat][driver].
func loudness(heard [][]complex128, places [][]int, drivers int) [][]float64 {
	out := make([][]float64, len(places))
	for s, row := range places {
		out[s] = make([]float64, drivers)
		for _, place := range row {
			n := len(heard[place]) / drivers
			for i, v := range heard[place] {
				out[s][i/n] += energy(v)
			}
		}
	}
	return out
}

// alike is by what share two sums of energies may differ and still be taken for equal: far
// over rounding, far under what is heard.
const alike = 1e-7

// before compares rows of numbers above 0, those alike being equal.
func before(a, b []float64) int {
	for i := range a {
		if math.Abs(a[i]-b[i]) > alike*max(math.Abs(a[i]), math.Abs(b[i])) {
			return cmp.Compare(a[i], b[i])
		}
	}
	return 0
}

// seatOrder puts seats in an order by their weight, how their drivers' energies are spread,
// what they hear without delays, and how alike they are to the seats before them.
func seatOrder(weight []float64, loud [][]float64, heard [][]complex128, places [][]int, n int) []int {
	key := make([][]float64, len(places))
	for s, row := range places {
		plain := 0.0
		for _, place := range row {
			for f := range n {
				var sum complex128
				for i := f; i < len(heard[place]); i += n {
					sum += heard[place][i]
				}
				plain += float64(f+1) * energy(sum)
			}
		}
		key[s] = []float64{weight[s], dot(loud[s], loud[s]), plain}
	}
	var order []int
	for range places {
		next := -1
		for s := range places {
			if !slices.Contains(order, s) && (next < 0 || before(key[s], key[next]) < 0) {
				next = s
			}
		}
		order = append(order, next)
		for s := range places {
			key[s] = append(key[s], dot(loud[s], loud[next]))
		}
	}
	return order
}

func dot(a, b []float64) (sum float64) {
	for i, v := range a {
		sum += v * b[i]
	}
	return sum
}

// driverOrder sorts drivers by their energy at the seats, the first first.
func driverOrder(loud [][]float64, order []int) []int {
	drivers := len(loud[0])
	rank := make([][]int, drivers) // [driver][seat]: its place among all, alike ones as one
	by := make([]int, drivers)
	for d := range by {
		by[d] = d
	}
	for _, s := range order {
		slices.SortStableFunc(by, func(a, b int) int { return cmp.Compare(loud[s][b], loud[s][a]) })
		at := 0
		for i, d := range by {
			if i > 0 && loud[s][d] < loud[s][by[i-1]]*(1-alike) {
				at = i
			}
			rank[d] = append(rank[d], at)
		}
	}
	slices.SortFunc(by, func(a, b int) int { return cmp.Or(slices.Compare(rank[a], rank[b]), cmp.Compare(a, b)) })
	return by
}

// arrive finds when each driver is heard at each seat, against the loudest there: the slope
// of the phase between them over frequency, unwrapped from the lowest frequency up by the
// slope of those below it (least squares through the origin, weighted by both magnitudes).
func (p *problem) arrive() {
	p.arrival = make([][]float64, len(p.driver))
	for d := range p.arrival {
		p.arrival[d] = make([]float64, p.seats)
	}
	count := make([]float64, p.seats)
	lags := make([][]float64, p.np)
	cores.Each(p.np, func(_, place int) {
		lags[place] = make([]float64, len(p.driver))
		p.lags(lags[place], place)
	})
	for place, s := range p.seat {
		count[s]++
		for d, t := range lags[place] {
			p.arrival[d][s] += t
		}
	}
	for s := range p.seats {
		low, high := math.Inf(1), math.Inf(-1)
		for d := range p.driver {
			p.arrival[d][s] /= count[s]
			low, high = min(low, p.arrival[d][s]), max(high, p.arrival[d][s])
		}
		p.spread = max(p.spread, high-low)
		middle, total := 0.0, 0.0
		for d := range p.driver {
			middle, total = middle+p.energy[d][s]*p.arrival[d][s], total+p.energy[d][s]
		}
		for d := range p.driver {
			if total > 0 {
				p.arrival[d][s] -= middle / total
			}
		}
	}
}

func (p *problem) energyAt(d, place int) (sum float64) {
	for i := place * p.nf; i < (place+1)*p.nf; i++ {
		sum += p.re[d][i]*p.re[d][i] + p.im[d][i]*p.im[d][i]
	}
	return sum
}

// fits is how well the phases of a driver fit its arrival where they tell it, 1 being the
// best. In the deep shadow, where sound from all sides meets, they may not.
const fits = 0.7

// lags sets dst to by how much in s each driver is heard after the loudest at a place. Those
// that the phases do not tell are kept within the others.
func (p *problem) lags(dst []float64, place int) {
	loudest, most := 0, 0.0
	for d := range p.driver {
		if e := p.energyAt(d, place); e > most*(1+alike) {
			loudest, most = d, e
		}
	}
	phase, weight := make([]float64, p.nf), make([]float64, p.nf)
	var bad []int
	low, high := 0.0, 0.0
	for d := range p.driver {
		p.cross(phase, weight, d, loudest, place)
		slope, fit := p.lag(phase, weight)
		if dst[d] = slope; fit < fits {
			bad = append(bad, d)
		} else {
			low, high = min(low, slope), max(high, slope)
		}
	}
	for _, d := range bad {
		dst[d] = min(max(dst[d], low), high)
	}
}

// cross sets phase to by how much in rad a driver is behind another at a place, at each
// frequency, and weight to the product of their magnitudes.
func (p *problem) cross(phase, weight []float64, d, other, place int) {
	re, im := p.re[d][place*p.nf:], p.im[d][place*p.nf:]
	toRe, toIm := p.re[other][place*p.nf:], p.im[other][place*p.nf:]
	for f := range phase {
		x, y := re[f]*toRe[f]+im[f]*toIm[f], im[f]*toRe[f]-re[f]*toIm[f]
		phase[f], weight[f] = -math.Atan2(y, x), math.Hypot(x, y)
	}
}

// lag returns the slope in s of phases over angular frequency, through the origin, and how
// well they fit it. They are unwrapped from the lowest frequency up, each by the slope of
// those below it; the turns of the lowest are those of the group delay over the lowest
// octave.
func (p *problem) lag(phase, weight []float64) (slope, fit float64) {
	var top, under, total float64
	expected := p.groupDelay(phase)
	for f, hz := range p.frequency {
		omega := 2 * math.Pi * hz
		phase[f] += wholeTurns(expected*omega - phase[f])
		top, under, total = top+weight[f]*omega*phase[f], under+weight[f]*omega*omega, total+weight[f]
		if under > 0 {
			expected = top / under
		}
	}
	for f, hz := range p.frequency {
		fit += weight[f] * math.Cos(phase[f]-expected*2*math.Pi*hz)
	}
	return expected, fit / max(total, math.SmallestNonzeroFloat64)
}

// groupDelay returns the slope of phases over the lowest octave, each unwrapped by the slope
// of those below it (least squares with a free intercept).
func (p *problem) groupDelay(phase []float64) float64 {
	var x, y, xx, xy, n, slope, last float64
	for f, hz := range p.frequency {
		if hz > 2*p.frequency[0] && n > 2 {
			break
		}
		at := 2 * math.Pi * (hz - p.frequency[0])
		now := phase[f]
		if f > 0 {
			now += wholeTurns(last + slope*2*math.Pi*(hz-p.frequency[f-1]) - now)
		}
		last, n = now, n+1
		x, y, xx, xy = x+at, y+now, xx+at*at, xy+at*now
		if spread := n*xx - x*x; spread > 0 {
			slope = (n*xy - x*y) / spread
		}
	}
	return slope
}

// wholeTurns rounds an angle in rad to whole turns.
func wholeTurns(angle float64) float64 { return 2 * math.Pi * math.Round(angle/(2*math.Pi)) }

// meet finds each driver's nearest.
func (p *problem) meet() {
	p.nearest = make([][]int, len(p.driver))
	far := make([]float64, len(p.driver))
	for d := range p.driver {
		p.everyone = append(p.everyone, d)
		row := make([]int, 0, mostNear+1)
		for e := range p.driver {
			if e == d {
				continue
			}
			far[e] = p.apart(d, p.arrival[e])
			at := len(row)
			for at > 0 && far[e] < far[row[at-1]]*(1-alike) {
				at--
			}
			if at < mostNear {
				row = slices.Insert(row, at, e)[:min(len(row)+1, mostNear)]
			}
		}
		p.nearest[d] = row
	}
}
