package loudness

import "math"

// Gates of the integrated loudness.
const (
	absolute = -70.0 // LUFS
	relative = -10.0 // LU
)

// steps is how many steps of 100 ms a block has.
const steps = 4

// Meter measures a stream as it comes. Its memory does not grow.
type Meter struct {
	rate    int
	filters [2]filter
	blocks  histogram

	sum   float64        // of squares in this step
	count int            // samples in this step
	ends  int            // the step's number of samples
	whole int            // steps so far
	past  [steps]float64 // sums of the last steps, a ring
	sizes [steps]int     // and their samples

	totalSum   float64 // of the steps that are whole
	totalCount int
}

// New returns a Meter for a stream of rate samples a second, at least 8000. From
// 32000 on it reads within 0.1 LU what it would at 48000; below, the bilinear
// transform bends the shelf, and 1 kHz reads 0.2 LU low at 8000. Left and right count
// alike, as the standard's front channels do.
func New(rate int) *Meter {
	m := &Meter{rate: rate}
	for c := range m.filters {
		m.filters[c].sections = Weighting(float64(rate))
	}
	m.ends = m.end(0)
	return m
}

// end returns the samples of a step: 100 ms, rounded so that no error gathers.
func (m *Meter) end(step int) int { return (step+1)*m.rate/10 - step*m.rate/10 }

// Push takes the next samples in. What is not finite counts as silence. It
// allocates nothing.
func (m *Meter) Push(samples [][2]float64) {
	for _, v := range samples {
		m.sum += m.power(v)
		if m.count++; m.count == m.ends {
			m.step()
		}
	}
}

// power returns the weighted square of one sample of all channels.
func (m *Meter) power(v [2]float64) float64 {
	for c := range v {
		if math.IsNaN(v[c]) || math.IsInf(v[c], 0) {
			v[c] = 0
		}
	}
	left, right := m.filters[0].next(v[0]), m.filters[1].next(v[1])
	return left*left + right*right
}

// step ends a step and, from the fourth, a block.
func (m *Meter) step() {
	m.past[m.whole%steps], m.sizes[m.whole%steps] = m.sum, m.count
	m.totalSum += m.sum
	m.totalCount += m.count
	m.sum, m.count = 0, 0
	m.whole++
	m.ends = m.end(m.whole)
	if m.whole >= steps {
		m.blocks.add(m.block())
	}
	for c := range m.filters {
		m.filters[c].rest()
	}
}

// block returns the mean of the last four steps.
func (m *Meter) block() float64 {
	sum, count := 0.0, 0
	for i, s := range m.past {
		sum += s
		count += m.sizes[i]
	}
	return sum / float64(count)
}

// Integrated returns what the gated loudness in LUFS of all so far would be had it been
// played gain dB louder, to 0.01 LU; minus infinity where no block of 400 ms is louder than
// -70 LUFS then. That is not what it is plus gain, where blocks are lifted over -70 LUFS or
// drop below.
func (m *Meter) Integrated(gain float64) float64 {
	mean := m.blocks.above(absolute - gain)
	gate := max(absolute-gain, lufs(mean)+relative)
	return lufs(m.blocks.above(gate)) + gain
}

// Ungated returns the loudness in LUFS of all so far, however short, without
// blocks and gates; minus infinity in silence.
func (m *Meter) Ungated() float64 {
	count := m.totalCount + m.count
	if count == 0 {
		return math.Inf(-1)
	}
	return lufs((m.totalSum + m.sum) / float64(count))
}
