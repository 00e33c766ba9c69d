package preview

import (
	"bytes"
	"encoding/binary"
	"math"
	"math/cmplx"
	"slices"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/timing"
	"pappus/timing/band"

	"gonum.org/v1/gonum/dsp/fourier"
	"gonum.org/v1/gonum/spatial/r3"
	"gonum.org/v1/gonum/stat"
)

// threeSeats are planned for the first of them, with the delays for the middle one beside; the
// last pays most for the middle one. Every driver has its channel, so that plans for any seat feed all alike.
func threeSeats(t *testing.T) (all, middle *timing.Spot) {
	t.Helper()
	list := []layout.Seat{{Name: "left"}, {Name: "middle"}, {Name: "cushion by the window"}}
	for i, degrees := range []float64{60, 0, -60} {
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		list[i].At = r3.Vec{X: 2 * cos, Y: 2 * sin, Z: 0.6}
	}
	at := func(spot r3.Vec) *timing.Spot {
		return lantern(t, func(a *layout.Array) { a.Wiring.Channels, a.Spot = 0, spot })
	}
	all, middle = at(list[0].At), at(list[1].At)
	all.Array.Seats = list
	all.Seating = &timing.Seating{MiddleSeat: 1}
	all.Seating.Middle.Seat = []float64{2, 1, 3}
	for _, r := range middle.Arrivals {
		all.Seating.MiddleDelay = append(all.Seating.MiddleDelay, r.Delay)
	}
	return all, middle
}

// TestMiddleSeatIsHeard: the middle seat hears its own plan, and another seat hears that plan
// as it does when it is made alone.
func TestMiddleSeatIsHeard(t *testing.T) {
	p, middle := threeSeats(t)
	if got := NamesOf(Usual(p)); !slices.Equal(got, []string{"as_built", "middle_seat", "aligned"}) {
		t.Errorf("usual cases: %v", got)
	}
	for _, seat := range p.Array.Seats {
		who := Listener{At: &seat.At}
		got, want := response(t, p, who, timing.MiddleSeat), response(t, middle, who, timing.Aligned)
		own := response(t, p, who, timing.Aligned)
		most, apart := 0.0, 0.0
		for f := 500.0; f < 8000; f *= 1.02 {
			v := cmplx.Abs(at(want.Left, rate, f))
			most = max(most, math.Abs(20*math.Log10(cmplx.Abs(at(got.Left, rate, f))/v)))
			apart = max(apart, math.Abs(20*math.Log10(cmplx.Abs(at(own.Left, rate, f))/v)))
		}
		if most > 0.01 || apart < 3 {
			t.Errorf("%s: %.3f dB off the middle seat's plan, %.1f dB off the plan for all", seat.Name, most, apart)
		}
	}
}

// thirds returns the energy of a sound from 500 Hz to 8 kHz in thirds of octaves, in dB.
func thirds(samples []float64) (centre, level []float64) {
	centre = band.ThirdsWithin(440, 9000)
	samples = append(samples[:len(samples):len(samples)], make([]float64, 1<<19-len(samples))...)
	spectrum := fourier.NewFFT(len(samples)).Coefficients(nil, samples)
	for _, c := range centre {
		low, high := band.Edges(c, 3)
		sum := 0.0
		for k := int(low * float64(len(samples)) / Rate); float64(k)*Rate/float64(len(samples)) < high; k++ {
			sum += real(spectrum[k])*real(spectrum[k]) + imag(spectrum[k])*imag(spectrum[k])
		}
		level = append(level, 10*math.Log10(sum))
	}
	return centre, level
}

// TestPayersSounds: a plan with seats has the pink noise of the seat that pays most beside the
// sounds at the spot; its thirds, measured on the samples, differ from case to case as the
// transfer there does, but for the loudness that is matched.
func TestPayersSounds(t *testing.T) {
	p, _ := threeSeats(t)
	files, _, _ := SoundFiles(p)
	if len(files) != 15 {
		t.Fatalf("%d files", len(files))
	}
	heard := map[string][]float64{}
	for _, f := range files[12:] {
		var b bytes.Buffer
		if err := f.Write(&b); err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(b.String(), `What the seat "cushion by the window" hears`) {
			t.Errorf("%s does not say whose seat", f.Name)
		}
		data := b.Bytes()[bytes.Index(b.Bytes(), []byte("data"))+4:]
		data = data[4 : 4+binary.LittleEndian.Uint32(data)]
		samples := make([]float64, len(data)/2)
		for i := range samples {
			samples[i] = float64(int16(binary.LittleEndian.Uint16(data[2*i:])))
		}
		heard[f.Name] = samples
	}
	const perBand = 512
	place := p.Array.Seats[2].At
	centre, built := thirds(heard["pink_noise_as_built_seat_3.wav"])
	for name, c := range map[string]timing.Case{"pink_noise_aligned_seat_3.wav": timing.Aligned, "pink_noise_middle_seat_seat_3.wav": timing.MiddleSeat} {
		_, level := thirds(heard[name])
		frequency := band.Frequencies(centre, 3, perBand)
		h, err := timing.NewHearing(p, timing.Listening{Cases: []timing.Case{timing.AsBuilt, c}}, []r3.Vec{place}, frequency)
		if err != nil {
			t.Fatal(err)
		}
		both := [][]complex128{make([]complex128, len(frequency)), make([]complex128, len(frequency))}
		h.At(both, place)
		var off []float64
		for b := range centre {
			var energy [2]float64
			for i, row := range both {
				for _, v := range row[perBand*b : perBand*(b+1)] {
					energy[i] += real(v)*real(v) + imag(v)*imag(v)
				}
			}
			off = append(off, level[b]-built[b]-10*math.Log10(energy[1]/energy[0]))
		}
		if s := stat.StdDev(off, nil); s > 0.05 {
			t.Errorf("%s: thirds are off by %.2f dB from what the seat hears: %.1f", name, s, off)
		}
	}
}
