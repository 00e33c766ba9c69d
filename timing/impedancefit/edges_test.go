package impedancefit_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"pappus/timing/impedancefit"

	"gonum.org/v1/gonum/dsp/fourier"
)

// filtered is a recording of a sweep up to 3.9 kHz at 8 kHz through 10 ohm into an impedance, with
// noise 50 dB below it.
func filtered(at func(hz float64) complex128) impedancefit.Recording {
	const rate, n, seconds, low, high, noise = 8000, 1 << 16, 6, 20, 3900, 1e-3
	random := rand.New(rand.NewPCG(3, 41))
	whole := make([]float64, n)
	for i := range seconds * rate {
		t := float64(i) / rate
		whole[i+rate/2] = 0.4 * math.Sin(2*math.Pi*low*seconds/math.Log(high/low)*(math.Exp(t/seconds*math.Log(high/low))-1))
	}
	fft := fourier.NewFFT(n)
	spectrum := fft.Coefficients(nil, whole)
	for i := range spectrum {
		z := at(float64(i) * rate / n)
		spectrum[i] *= z / (z + 10) / n
	}
	driver := fft.Sequence(nil, spectrum)
	for i := range whole {
		whole[i] += noise * random.NormFloat64()
		driver[i] += noise * random.NormFloat64()
	}
	return impedancefit.Recording{Whole: whole, Driver: driver, Rate: rate, SeriesOhm: 10, Low: low, High: high}
}

// TestRecordingShares: how much of a recording must tell something. Points are 24 to the octave, from 20 to
// 3760 Hz, which is 0.47 of the rate, so that half of them are below 274 Hz.
func TestRecordingShares(t *testing.T) {
	below := func(hz float64, there complex128) impedancefit.Recording {
		return filtered(func(f float64) complex128 {
			if f < hz {
				return there
			}
			return 10
		})
	}
	for _, c := range []struct {
		name string
		of   impedancefit.Recording
		want error
	}{
		{"45 percent of the points are over the whole", below(210, -1000), nil},
		{"55 are", below(350, -1000), impedancefit.ErrSwapped},
		{"45 percent tell nothing", below(210, 1e6), nil},
		{"55 tell nothing", below(350, 1e6), impedancefit.ErrVague},
	} {
		points, err := c.of.Impedance()
		if !errors.Is(err, c.want) {
			t.Errorf("%s: %d points, %v", c.name, len(points), err)
		}
		if err == nil {
			if last := points[len(points)-1].Frequency; last > 0.47*8000 || last < 0.45*8000 {
				t.Errorf("the last at %g Hz", last)
			}
		}
	}
}

// TestUsualLow: where nobody says from where on a sweep is, and it does not begin at 10 Hz, it is taken from 20 Hz on,
// at points seven bins apart and, further up, 24 to the octave.
func TestUsualLow(t *testing.T) {
	r := filtered(func(float64) complex128 { return 7 + 7i })
	read := impedancefit.Reader{Series: 10, High: 3900, Decode: func(string) (int, [][]float64, error) {
		return int(r.Rate), [][]float64{r.Whole, r.Driver}, nil
	}}
	points, err := read.Read("driver.wav")
	if err != nil {
		t.Fatal(err)
	}
	if points[0].Frequency != 20 {
		t.Errorf("from %g Hz on", points[0].Frequency)
	}
	if by := (points[1].Frequency - points[0].Frequency) * float64(len(r.Whole)) / r.Rate; math.Abs(by-7) > 0.05 {
		t.Errorf("the first two are %g bins apart, want 7", by)
	}
	for _, p := range points {
		if math.Abs(p.Degrees-45) > 3 {
			t.Errorf("at %g Hz a phase of %g degrees, want 45", p.Frequency, p.Degrees)
		}
	}
	n := len(points)
	if by := math.Log2(points[n-1].Frequency / points[n-2].Frequency); math.Abs(24*by-1) > 1e-9 {
		t.Errorf("the last two are %g octaves apart, want 1/24", by)
	}
}
