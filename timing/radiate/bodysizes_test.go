package radiate

import (
	"math"
	"math/cmplx"
	"slices"
	"strings"
	"testing"

	try "pappus/testdata/thorough"
	"pappus/timing/harmonic"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestBodySizes: the sum of the drivers' sizes is within 0.05 dB, and above 3 kHz 0.12 dB, of that
// taken place by place.
func TestBodySizes(t *testing.T) {
	frame := harmonic.Round(r3.Unit(r3.Vec{X: 0.1, Y: 0.2, Z: 1}))
	designs := map[string]string{"free": small, "table": small + placed["table"], "two": small + placed["two"]}
	if try.Set {
		designs["to 4 kHz"] = strings.NewReplacer("cube", "dodecahedron", "= 120", "= 150", "= 500", "= 4000").Replace(small)
	}
	for name, text := range designs {
		for _, height := range []float64{0, 0.1, 0.7} {
			var places []r3.Vec
			for i := range 60 {
				sin, cos := math.Sincos(0.73 * float64(i))
				r := 0.15 + 0.05*float64(i)
				places = append(places, r3.Add(r3.Scale(height, frame.Z), r3.Add(r3.Scale(r*cos, frame.X), r3.Scale(r*sin, frame.Y))))
			}
			s := hearing(t, laid(t, text), 125, 400, 700, 2000, 2700, 3500, 3900, 8000, 11000)
			for _, way := range s.Direct() {
				off := sizesOff(s, s.Rings(way, frame, places), way, places)
				t.Logf("%s, body %d, %g m: %.4f dB", name, way.Body, height, off)
				if slices.Max(off) > 0.12 || slices.Max(off[:5]) > 0.05 {
					t.Errorf("%s, body %d, %g m high: sizes are %.3f dB off", name, way.Body, height, off)
				}
			}
		}
	}
}

// sizesOff returns how far the sums of sizes are off those taken place by place, in dB, at
// each frequency.
func sizesOff(s *Scene, rings *Rings, way Way, places []r3.Vec) []float64 {
	n := len(s.Medium.Frequency)
	group, gain, response := make([]int, len(s.Array.Mounts)), []float64{1, -0.4}, make([]complex128, n)
	for m := range group {
		group[m] = m % 2
	}
	for f := range response {
		response[f] = cmplx.Rect(1+float64(f), 1)
	}
	got := make([]float64, len(places)*n)
	s.NewSizes(rings, response, 0, n).Sum(group, gain, response).Add(got, rings)
	from, to := Of(s.Array.Mounts, way.Body)
	heard, off := make([]complex128, (to-from)*n), make([]float64, n)
	for _, ring := range rings.Ring {
		for _, p := range ring.Place {
			s.Field.At(heard, s.Array.Mounts[from:to], way.Moved(places[p]))
			for f := range n {
				want := 0.0
				for m := range to - from {
					want += math.Abs(gain[group[from+m]]) * cmplx.Abs(heard[m*n+f]*response[f])
				}
				off[f] = max(off[f], 20*math.Abs(math.Log10(got[p*n+f]/want)))
			}
		}
	}
	return off
}

// TestBodyPower: the power out of the waves is the mean of the squared far field.
func TestBodyPower(t *testing.T) {
	for _, name := range []string{"free", "two"} {
		s := hearing(t, laid(t, small, placed[name]), 125, 400, 700, 2000, 4000, 8000, 11000)
		n, feed, around := len(s.Medium.Frequency), feeding(s), NewAround(r3.Vec{X: 0.3, Y: 0.2, Z: 0.8}, false, 31)
		energy := s.Energy([]Feed{feed}, around)[0]
		want := make([]float64, n)
		for i, share := range around.Share {
			for f := range want {
				want[f] += share * energy[i*n+f]
			}
		}
		for f, got := range s.Power(feed) {
			if dB := 10 * math.Abs(math.Log10(got/want[f])); dB > 0.02 {
				t.Errorf("%s, %.0f Hz: %.3f dB off the mean of the far field", name, s.Medium.Frequency[f], dB)
			}
		}
	}
}
