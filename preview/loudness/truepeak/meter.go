package truepeak

// Meter measures the true peak of a stream as it comes.
type Meter struct {
	finder Finder
	peak   float64
}

// New returns a Meter for a stream of rate samples a second, over 0.
func New(rate int) *Meter { return &Meter{finder: *NewFinder(rate)} }

// Push takes the next samples in. It allocates nothing.
func (m *Meter) Push(samples [][2]float64) {
	for _, v := range samples {
		m.peak = max(m.peak, m.finder.Push(v, m.peak))
	}
}

// Peak returns the largest magnitude so far, linear, full scale 1, as if silence
// followed. For dBTP take 20 times its logarithm to 10.
func (m *Meter) Peak() float64 {
	rest, peak := m.finder, m.peak
	for range width {
		peak = max(peak, rest.Push([2]float64{}, peak))
	}
	return peak
}
