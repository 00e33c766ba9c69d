package recording

import (
	"math"
	"math/rand/v2"
	"testing"

	"pappus/layout"
	"pappus/timing/sweep"
)

// TestLength: the least product of twos, threes and fives with one of each at least, by trying all.
func TestLength(t *testing.T) {
	fits := func(n int) bool {
		if n%30 != 0 {
			return false
		}
		for _, by := range []int{2, 3, 5} {
			for n%by == 0 {
				n /= by
			}
		}
		return n == 1
	}
	for n := 1; n < 20000; n += 1 + n/50 {
		want := n
		for !fits(want) {
			want++
		}
		if got := Length(n); got != want {
			t.Errorf("%d: %d, want %d", n, got, want)
		}
	}
}

// TestWeighted: a window is faded in over a fifth of what is ahead of the peak and out over a fifth of what is after
// it, each as the running sum of a Hann window at the middles of samples, which sums up to half of the fade's length,
// and its square to 3/8 - 5/(16 pi2) - ... of it: here by a sum that is ten thousand times as fine.
func TestWeighted(t *testing.T) {
	h := &impulse{h: make([]float64, 1000), rate: 1}
	for i := range h.h {
		h.h[i] = 1
	}
	x, square := h.weighted(window{100, 400}, 200)
	sum, squares := 0.0, 0.0
	for i, v := range x {
		sum, squares = sum+v, squares+v*v
		if (v == 1) != (i >= 20 && i < 260) {
			t.Errorf("sample %d: %g", i, v)
		}
	}
	fine := 0.0
	const n = 100000
	for i := range n {
		u := (float64(i) + 0.5) / n
		v := u - math.Sin(2*math.Pi*u)/(2*math.Pi)
		fine += v * v / n
	}
	if want := 300 - (20+40)/2.0; math.Abs(sum-want) > 1e-9 {
		t.Errorf("weights sum up to %g, want %g", sum, want)
	}
	if want := 240 + (20+40)*fine; math.Abs(square-want) > 0.01 || math.Abs(squares-square) > 1e-9 {
		t.Errorf("their squares to %g, said to be %g, want %g", squares, square, want)
	}
}

// TestDensity: noise is averaged over a third of an octave, and over four bins at least.
func TestDensity(t *testing.T) {
	n := noise{hz: 10, sums: make([]float64, 1001)}
	energy := func(k int) float64 { // of bin k: some at 1100 Hz, beyond 2^(1/6) of 1000 Hz is none
		switch {
		case k == 110 || k == 90:
			return 1
		case k == 3:
			return 4
		}
		return 0
	}
	for k := range 1000 {
		n.sums[k+1] = n.sums[k] + energy(k)
	}
	for _, c := range []struct{ hz, want float64 }{{1000, 2.0 / 23}, {10, 1}, {20, 1}, {1250, 0}, {800, 0}} {
		if got := n.density(c.hz); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%g Hz: %g, want %g", c.hz, got, c.want)
		}
	}
}

// TestCorrectedLevel is in decibels of an energy, less what the microphone reads too high.
func TestCorrectedLevel(t *testing.T) {
	o := Options{Microphone: []layout.MicrophonePoint{{Frequency: 100, Level: 3}}}
	if got := correctedLevel(100, 1000, o); math.Abs(got-17) > 1e-12 {
		t.Errorf("%g dB, want 17", got)
	}
}

// TestLeastShare: where less than 0.03 of the sweep was sent, it is not taken for more than that.
func TestLeastShare(t *testing.T) {
	s := seldom(t)
	const rate = 8000.0
	x := s.Samples(rate)
	d := newDivision(Take{Rate: rate, Samples: x, Reference: x}, s, found{int(s.First() * rate), rate})
	for _, c := range []struct{ sent, want float64 }{{1, 1}, {0.033, 1}, {0.027, 0.81}} {
		heard := make([]complex128, len(d.sent))
		for k := range heard {
			d.sent[k] = complex(c.sent*d.expected(max(k, 1)), 0)
			heard[k] = d.sent[k]
		}
		h := d.over(heard)
		got := 0.0
		for k, v := range Spectrum(h.h, d.n) {
			if hz := d.hz(k); hz > 500 && hz < 510 {
				got = real(v)
			}
		}
		if math.Abs(got-c.want) > 1e-6 {
			t.Errorf("%g of the sweep: %g, want %g", c.sent, got, c.want)
		}
	}
}

// TestLate: the standard deviation of the strongest sound's time is that of many, in noise of another seed each.
func TestLate(t *testing.T) {
	const rate, count, size = 8000.0, 400, 0.02
	s := seldom(t)
	random := rand.New(rand.NewPCG(2, 2))
	clean := delayedBy(s, rate, func(float64) float64 { return 0.003 })
	clean.lead = 10
	var square, said float64
	for range count {
		h := &impulse{h: append([]float64(nil), clean.h...), rate: rate, lead: 10}
		top := math.Abs(clean.lag(24))
		for i := range h.h {
			h.h[i] += size * top * random.NormFloat64()
		}
		h.findPeak(100, 100)
		off := h.at/rate - 0.003
		square += off * off / count
		said += h.noise(s).late(h) / count
	}
	if by := math.Sqrt(square) / said; math.Abs(by-1) > 0.12 {
		t.Errorf("off by %.2f us, said to be %.2f", 1e6*math.Sqrt(square), 1e6*said)
	}
}

// TestLead: what counts as ahead of the strongest sound is the least whole number of periods of Start beyond which less
// than -60 dB of a sound's energy rings in a band of five octaves, and a fifth of the way to the second harmonic where that is less.
func TestLead(t *testing.T) {
	const rate = 16000.0
	s := seldom(t)
	s.Length = 6
	l := delayedBy(s, rate, func(float64) float64 { return 0.01 })
	if err := l.locate(); err != nil {
		t.Fatal(err)
	}
	ahead := func(lead int) float64 {
		all, out := 0.0, 0.0
		for i := -len(l.h) / 2; i < len(l.h)/2; i++ {
			v := l.lag(l.peak() + i)
			if all += v * v; i < -lead || i > lead {
				out += v * v
			}
		}
		return 10 * math.Log10(out/all)
	}
	if got, less := ahead(l.lead), ahead(l.lead-int(rate/s.Start)); got > -60 || less < -60 || l.lead%int(rate/s.Start) > 1 {
		t.Errorf("%d samples: %.1f dB are beyond, and %.1f dB beyond a period less", l.lead, got, less)
	}
	s.Length = 0.3
	l.sweep = s
	if err := l.locate(); err != nil {
		t.Fatal(err)
	}
	if share := float64(l.lead) / rate / s.Ahead(2); math.Abs(share-0.2) > 0.01 {
		t.Errorf("%.3f of the way to the second harmonic", share)
	}
}

// TestNoiseStretch: the noise is that from 0.75 to 0.22 of the way to the second harmonic; where the lead reaches
// further than that, what is ahead of it.
func TestNoiseStretch(t *testing.T) {
	const rate = 8000.0
	s := seldom(t)
	n := Length(int(rate))
	way := s.Ahead(2) * rate
	for _, c := range []struct {
		at, lead float64 // shares of the way
		heard    bool
	}{{0.5, 0, true}, {0.73, 0, true}, {0.77, 0, false}, {0.24, 0, true}, {0.2, 0, false}, {0.35, 0.4, false}, {0.45, 0.4, true}} {
		h := &impulse{h: make([]float64, n), rate: rate, lead: int(c.lead * way)}
		h.h[n-int(c.at*way)] = 1
		if got := h.noise(s).sums; (got[len(got)-1] > 0) != c.heard {
			t.Errorf("%+v: energy %g", c, got[len(got)-1])
		}
	}
}

// TestPeak: a harmonic's peak is that of its levels over a sixth of an octave: of eight frequencies, half of which are
// 10 dB over the others here.
func TestPeak(t *testing.T) {
	m := Measured{Frequency: make([]float64, 60)}
	h := Harmonic{Order: 2, Level: make([]float64, 60), Floor: make([]float64, 60)}
	for i := range m.Frequency {
		m.Frequency[i], h.Level[i], h.Floor[i] = 1000*math.Exp2(float64(i)/48), -40, -90
		if i >= 28 && i < 32 {
			h.Level[i] = -30
		}
	}
	want := 10 * math.Log10((4*1e-3+4*1e-4)/8)
	if level, hz := m.Peak(h); math.Abs(level-want) > 0.2 || math.Abs(math.Log2(hz/1000)*48-29.5) > 2 {
		t.Errorf("%.2f dB at %.0f Hz, want %.2f", level, hz, want)
	}
}

// TestFrequencies are 48 an octave, within the band that the sweep is whole in.
func TestFrequencies(t *testing.T) {
	const rate = 8000.0
	s := seldom(t)
	m, err := Analyse(Take{Rate: rate, Samples: s.Samples(rate)}, s, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if m.Low != 140 || m.High != 2700 || m.Frequency[0] != 140 || math.Abs(m.Frequency[len(m.Frequency)-1]-2700) > 1e-6 {
		t.Errorf("from %g to %g Hz", m.Low, m.High)
	}
	if by := math.Log2(m.Frequency[1]/m.Frequency[0]) * 48; math.Abs(by-1) > 0.01 {
		t.Errorf("steps of %.3f of a 48th of an octave", by)
	}
	if got := m.SNR(1600); math.IsNaN(got) {
		t.Error("no band round 1600 Hz, as the band of 1585 Hz is called")
	}
	if got := m.SNR(1012); !math.IsNaN(got) {
		t.Errorf("%g dB in a band round 1012 Hz, which is none", got)
	}
	if got := m.Gated.To - m.At; math.Abs(got-0.01) > 1/rate {
		t.Errorf("a gate of %g s", got)
	}
}

// TestHarmonicWindows: a harmonic is what stands from 0.3 of the way to the next one ahead of its place to 0.6 of the
// way to the one before after it, and 0.1 s after it at most.
func TestHarmonicWindows(t *testing.T) {
	const rate = 8000.0
	for _, c := range []struct {
		length float64 // s, of the sweep
		off    float64 // s after its place
		want   bool
	}{
		{1, 0.55 * math.Log(3.0/2), true}, {1, 0.65 * math.Log(3.0/2), false},
		{1, -0.27 * math.Log(4.0/3), true}, {1, -0.33 * math.Log(4.0/3), false},
		{20, 0.095 * math.Log(30) / 20, true}, {20, 0.105 * math.Log(30) / 20, false},
	} {
		s := sweep.Sweep{Start: 100, Stop: 3000, Length: c.length}
		at := int((c.off*s.Growth() - s.Ahead(3)) * rate)
		n := Length(int(2 * c.length * rate))
		h := &impulse{h: make([]float64, n), rate: rate, lead: int(rate)}
		h.h[(at+n)%n] = 1
		m := Measured{High: 3000, Frequency: []float64{500}, Whole: Response{To: 1, Transfer: []complex128{1}}}
		got := harmonics(hearing{h, noise{1000, make([]float64, 10)}, nil}, m, s, Options{})[1]
		if in := !math.IsInf(got.Level[0], -1); in != c.want {
			t.Errorf("a sweep of %g s, %.0f ms after the third: %g dB", c.length, 1000*c.off*s.Growth(), got.Level[0])
		}
	}
}

// TestHarmonicFloor: ten times the noise's density is a floor 10 dB higher, under a tone ten times as strong one 20 dB
// lower.
func TestHarmonicFloor(t *testing.T) {
	const rate = 8000.0
	s := sweep.Sweep{Start: 100, Stop: 3000, Length: 1}
	floor := func(density float64, tone complex128) float64 {
		n := noise{1, make([]float64, int(rate))}
		for k := range n.sums {
			n.sums[k] = density * float64(k)
		}
		h := &impulse{h: make([]float64, Length(int(2*rate))), rate: rate, lead: int(rate)}
		m := Measured{High: 3000, Frequency: []float64{500}, Whole: Response{To: 1, Transfer: []complex128{tone}}}
		return harmonics(hearing{h, n, nil}, m, s, Options{})[0].Floor[0]
	}
	if louder, under := floor(10, 1)-floor(1, 1), floor(1, 10)-floor(1, 1); math.Abs(louder-10) > 1e-9 || math.Abs(under+20) > 1e-9 {
		t.Errorf("%g dB higher, %g dB under a stronger tone", louder, under)
	}
}

// TestOverloadedOf: it is the third and the fifth harmonic that tell of something cut off, no other.
func TestOverloadedOf(t *testing.T) {
	for order, want := range map[int]bool{2: false, 3: true, 4: false, 5: true, 6: false} {
		m := evenly(2 * perOctave)
		m.Harmonics = []Harmonic{{Order: order, Level: make([]float64, 2*perOctave), Floor: make([]float64, 2*perOctave)}}
		for i := range m.Frequency {
			m.Harmonics[0].Level[i], m.Harmonics[0].Floor[i] = -10, -60
		}
		if got := len(m.overloaded()) > 0; got != want {
			t.Errorf("harmonic %d: %v", order, got)
		}
	}
}

// TestErrorIsThatOfNoise: levels of one sound in white noise scatter as much as their errors say.
func TestErrorIsThatOfNoise(t *testing.T) {
	const rate, size, count = 8000.0, 0.01, 300
	s := seldom(t)
	clean := delayedBy(s, rate, func(float64) float64 { return 0.01 })
	clean.at, clean.lead = 80, 20
	ring := clean.ringing(s)
	frequency := []float64{300, 500, 800, 1200, 1700, 2300}
	random := rand.New(rand.NewPCG(3, 3))
	top, sum := clean.lag(80), 0.0
	for range count {
		h := &impulse{h: append([]float64(nil), clean.h...), rate: rate, at: 80, lead: 20}
		for i := range h.h {
			h.h[i] += size * top * random.NormFloat64()
		}
		density := size * size * top * top // of a sample of white noise is its variance
		n := noise{rate, []float64{0, density, 2 * density, 3 * density, 4 * density, 5 * density}}
		r, _ := hearing{h, n, ring}.respond(frequency, window{60, 480}, 0)
		for f, level := range r.Level {
			z := level / r.Error[f]
			sum += z * z / float64(count*len(frequency))
		}
	}
	if by := math.Sqrt(sum); math.Abs(by-1) > 0.06 {
		t.Errorf("levels scatter by %.3f of their errors", by)
	}
}

// TestEnergyDecibels: a sound a hundredth as strong as the strongest is 40 dB under it.
func TestEnergyDecibels(t *testing.T) {
	m := Measured{Rate: 1000, Impulse: make([]float64, 1000)}
	for i := range m.Impulse {
		burst := func(at float64) float64 {
			return math.Exp(-math.Pow((float64(i)-at)/20, 2)) * math.Cos(1.5*(float64(i)-at))
		}
		m.Impulse[i] = burst(300) + 0.01*burst(700)
	}
	_, level := m.Energy(0.001)
	if math.Abs(level[700]+40) > 0.1 || math.Abs(level[300]) > 0.1 {
		t.Errorf("%g and %g dB", level[300], level[700])
	}
}

// TestCorrected: transfers, levels and floors have a microphone's response taken out alike.
func TestCorrected(t *testing.T) {
	r := Response{Transfer: []complex128{2i}, Level: []float64{20 * math.Log10(2)}, Floor: []float64{-60}}
	r.correct([]float64{500}, Options{Microphone: []layout.MicrophonePoint{{Frequency: 100, Level: 3}}})
	if got := 20 * math.Log10(imag(r.Transfer[0])); math.Abs(got-r.Level[0]) > 1e-12 || math.Abs(r.Level[0]-(20*math.Log10(2)-3)) > 1e-12 || r.Floor[0] != -63 {
		t.Errorf("%g dB, said to be %g over %g", got, r.Level[0], r.Floor[0])
	}
}

// TestBandsAreThirds: a band is the mean of the energies within a sixth of an octave on each side: of twelve of its
// sixteen frequencies here that are within an eighth, and of four that are a hundred times as strong.
func TestBandsAreThirds(t *testing.T) {
	m := Measured{High: 1500, Gated: Response{Lowest: 800}}
	for i := range 200 {
		hz := 500 * math.Exp2((float64(i)+0.5)/48)
		m.Frequency = append(m.Frequency, hz)
		m.Gated.Transfer = append(m.Gated.Transfer, 10)
		if math.Abs(math.Log2(hz/1000)) < 1.0/8 {
			m.Gated.Transfer[i] = 1
		}
	}
	for _, b := range bands(m, noise{1000, make([]float64, 10)}, 1, Options{}) {
		if want := 10 * math.Log10((12+400.0)/16); b.Centre == 1000 && math.Abs(b.Level-want) > 0.1 {
			t.Errorf("%g dB, want %g", b.Level, want)
		}
	}
}
