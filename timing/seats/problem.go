package seats

import (
	"cmp"
	"math"
	"math/cmplx"
	"slices"
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
	for _, row := range places {
		share := complex(1/math.Sqrt(float64(len(row))), 0)
		for _, place := range row {
			for i := range heard[place] {
				heard[place][i] *= share
			}
		}
	}
	loud := loudness(heard, places, f.Drivers)
	order := seatOrder(f.weights(), loud, heard, places, n)
	weight := f.weights()
	for s, from := range order {
		p.weight = append(p.weight, weight[from])
		for range places[from] {
			p.seat = append(p.seat, s)
		}
	}
	p.driver = driverOrder(loud, order)
	for _, d := range p.driver {
		re, im := make([]float64, 0, p.np*n), make([]float64, 0, p.np*n)
		for _, from := range order {
			for _, place := range places[from] {
				for _, v := range heard[place][d*n : (d+1)*n] {
					re, im = append(re, real(v)), append(im, imag(v))
				}
			}
		}
		p.re, p.im = append(p.re, re), append(p.im, im)
		energy := make([]float64, p.seats)
		for s, from := range order {
			energy[s] = loud[from][d]
		}
		p.energy = append(p.energy, energy)
	}
	p.arrive()
	p.meet()
	return p
}

// inStepped returns the drivers' pressures over the sum of their magnitudes, or over Field.Full, [place][driver*n+f].
func (f *Field) inStepped(fed []feed) [][]complex128 {
	n := len(f.Frequency)
	out := make([][]complex128, len(f.Place))
	inStep := make([]float64, n)
	for place, pressure := range f.Place {
		row := slices.Clone(pressure)
		clear(inStep)
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
	}
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
	for place, s := range p.seat {
		count[s]++
		loudest, most := 0, 0.0
		for d := range p.driver {
			if e := p.energyAt(d, place); e > most*(1+alike) {
				loudest, most = d, e
			}
		}
		for d := range p.driver {
			p.arrival[d][s] += p.lag(d, loudest, place)
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

// lag returns by how much in s a driver is heard after another at a place: of the slopes
// that start at one of the phases that the lowest frequency may have, the nearest to none
// that fits, or the one that fits best.
func (p *problem) lag(d, after, place int) float64 {
	const fits, turns = 0.7, 15
	slope, best := p.slope(d, after, place, 0)
	for turn := 1; turn <= turns && best < fits; turn++ {
		for _, start := range []int{turn, -turn} {
			if other, fit := p.slope(d, after, place, start); fit > best+alike {
				slope, best = other, fit
			}
		}
	}
	return slope
}

// slope is that of the phase through the origin and the lowest frequency's, whole turns
// added, and how well it fits: 1 where all frequencies are in step with it.
func (p *problem) slope(d, after, place, turns int) (slope, fit float64) {
	var top, under, total float64
	re, im := p.re[d][place*p.nf:], p.im[d][place*p.nf:]
	toRe, toIm := p.re[after][place*p.nf:], p.im[after][place*p.nf:]
	phase := make([]float64, 0, 64)
	for f, hz := range p.frequency {
		x, y := re[f]*toRe[f]+im[f]*toIm[f], im[f]*toRe[f]-re[f]*toIm[f]
		w, at, omega := math.Hypot(x, y), -math.Atan2(y, x), 2*math.Pi*hz
		if f == 0 {
			at += 2 * math.Pi * float64(turns)
		} else {
			at += 2 * math.Pi * math.Round((slope*omega-at)/(2*math.Pi))
		}
		phase = append(phase, at)
		top, under, total = top+w*omega*at, under+w*omega*omega, total+w
		if under > 0 {
			slope = top / under
		}
	}
	for f, hz := range p.frequency {
		w := math.Hypot(re[f], im[f]) * math.Hypot(toRe[f], toIm[f])
		fit += w * math.Cos(phase[f]-slope*2*math.Pi*hz)
	}
	return slope, fit / max(total, math.SmallestNonzeroFloat64)
}

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
