package impedancefit

import (
	"encoding/binary"
	"math"
	"testing"

	"pappus/testdata/drawn"
)

// FuzzRecording: two bytes are a rate, two a resistor, and the rest 16 bit samples of both sides in
// turn; whatever they are, the impedance is one that a table may hold, or there is an error.
func FuzzRecording(f *testing.F) {
	sides := func(n int, whole, driver func(x float64) float64) string {
		out := binary.LittleEndian.AppendUint16(nil, 8000)
		out = binary.LittleEndian.AppendUint16(out, 80)
		for i := range n {
			x := float64(i) / float64(n)
			out = binary.LittleEndian.AppendUint16(out, uint16(int16(20000*whole(x))))
			out = binary.LittleEndian.AppendUint16(out, uint16(int16(20000*driver(x))))
		}
		return string(out)
	}
	glide := func(x float64) float64 { return math.Sin(400 * x * x) }
	drawn.Bytes(f, []string{
		sides(256, glide, func(x float64) float64 { return 0.5 * glide(x) }),
		sides(256, glide, glide),
		sides(64, func(float64) float64 { return 0 }, glide),
		sides(100, func(x float64) float64 { return math.Exp(-50 * x) }, func(x float64) float64 { return 0.3 * math.Exp(-40*x) }),
		"\x40\x1f\x50\x00",
	}, func(t testing.TB, data []byte) {
		if len(data) < 4 {
			return
		}
		r := Recording{Rate: float64(binary.LittleEndian.Uint16(data)), SeriesOhm: float64(binary.LittleEndian.Uint16(data[2:])) / 10, Low: 20, High: 20000}
		for data = data[4:]; len(data) >= 4; data = data[4:] {
			r.Whole = append(r.Whole, float64(int16(binary.LittleEndian.Uint16(data)))/32768)
			r.Driver = append(r.Driver, float64(int16(binary.LittleEndian.Uint16(data[2:])))/32768)
		}
		points, err := r.Impedance()
		if err != nil {
			return
		}
		last := 0.0
		for _, p := range points {
			if !(p.Frequency > last) || !(p.Ohm > 0) || math.IsInf(p.Ohm, 0) || math.IsNaN(p.Degrees) {
				t.Fatalf("%+v after %g Hz", p, last)
			}
			last = p.Frequency
		}
	})
}
