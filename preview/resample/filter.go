package resample

import (
	"math"

	lru "github.com/hashicorp/golang-lru/v2"
)

// The filter's design, frequencies as shares of the lower rate.
const (
	attenuation = 100.0 // dB, of what must go, and of the ripple of what stays
	passes      = 0.45
	stops       = 0.5
)

// largest is the most coefficients that a table may have, unless one phase of it
// alone has more: 2 MB.
const largest = 1 << 18

// kaiser returns the order and the shape of a window that gives a sinc the
// attenuation over a transition of width times the rate (Oppenheim and Schafer,
// equations 7.75 and 7.76).
func kaiser(width float64) (order, beta float64) {
	return (attenuation - 8) / (2.285 * 2 * math.Pi * width), 0.1102 * (attenuation - 8.7)
}

// Kaiser is the Kaiser window of shape beta, 1 in the middle, over places from -1 to 1.
func Kaiser(beta float64) func(at float64) float64 {
	peak := bessel(beta)
	return func(at float64) float64 { return bessel(beta*math.Sqrt(max(0, 1-at*at))) / peak }
}

// bessel is the modified Bessel function of the first kind and order 0, by its
// series (M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions,
// 9.6.12).
func bessel(x float64) float64 {
	sum, term := 1.0, 1.0
	for k := 1.0; term > 1e-17*sum; k++ {
		term *= x * x / (4 * k * k)
		sum += term
	}
	return sum
}

// sinc is sin(pi x)/(pi x).
func sinc(x float64) float64 {
	if x == 0 {
		return 1
	}
	return math.Sin(math.Pi*x) / (math.Pi * x)
}

// bank holds the phases of a filter, each a row of taps. The row p computes the
// value that lies p/phases after the sample before the row's middle.
type bank struct {
	taps, phases int
	rows         []float64 // one row more than phases: the last is the first, one sample on
}

// newBank designs the filter that goes from down to up samples, in lowest terms.
func newBank(up, down int) bank {
	lower := min(1, float64(up)/float64(down)) // of the input's rate
	order, beta := kaiser((stops - passes) * lower)
	half := int(math.Ceil(order / 2))
	b := bank{taps: 2 * half, phases: min(up, max(1, largest/(2*half)))}
	b.rows = make([]float64, (b.phases+1)*b.taps)
	cut, window := (stops+passes)*lower, Kaiser(beta) // twice the edge
	for p := range b.phases + 1 {
		row := b.row(p)
		for k := range row {
			x := float64(k-half+1) - float64(p)/float64(b.phases) // samples from the value
			row[k] = cut * sinc(cut*x) * window(x/float64(half))
		}
	}
	return b
}

// mostBanks are for the rates that one listener's files have: 16 MB at most.
const mostBanks = 8

// banks are those made last, by up and down. Nobody writes to one.
var banks = func() *lru.Cache[[2]int, bank] {
	c, err := lru.New[[2]int, bank](mostBanks)
	if err != nil {
		panic(err) // of a size below 1
	}
	return c
}()

// bankOf is newBank, which takes milliseconds, for rates that were asked for before.
func bankOf(up, down int) bank {
	b, ok := banks.Get([2]int{up, down})
	if !ok {
		b = newBank(up, down)
		banks.Add([2]int{up, down}, b)
	}
	return b
}

func (b bank) row(p int) []float64 { return b.rows[p*b.taps : (p+1)*b.taps] }
