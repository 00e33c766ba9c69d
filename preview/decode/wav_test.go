package decode

import (
	"bytes"
	"encoding/binary"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// chunk is one chunk of a file, padded to an even length.
func chunk(id string, body []byte) []byte {
	b := binary.LittleEndian.AppendUint32([]byte(id), uint32(len(body)))
	b = append(b, body...)
	return append(b, make([]byte, len(body)%2)...)
}

func riff(chunks ...[]byte) []byte {
	body := append([]byte("WAVE"), bytes.Join(chunks, nil)...)
	return append(binary.LittleEndian.AppendUint32([]byte("RIFF"), uint32(len(body))), body...)
}

// format is a format chunk; with a mask it is of the extensible kind.
func format(tag, channels, rate, bits, mask int) []byte {
	frame := channels * ((bits + 7) / 8)
	outer := tag
	if mask != 0 {
		outer = 0xfffe
	}
	var b []byte
	b = binary.LittleEndian.AppendUint16(b, uint16(outer))
	b = binary.LittleEndian.AppendUint16(b, uint16(channels))
	b = binary.LittleEndian.AppendUint32(b, uint32(rate))
	b = binary.LittleEndian.AppendUint32(b, uint32(rate*frame))
	b = binary.LittleEndian.AppendUint16(b, uint16(frame))
	b = binary.LittleEndian.AppendUint16(b, uint16(bits))
	if mask != 0 {
		b = binary.LittleEndian.AppendUint16(b, 22)
		b = binary.LittleEndian.AppendUint16(b, uint16(bits))
		b = binary.LittleEndian.AppendUint32(b, uint32(mask))
		b = binary.LittleEndian.AppendUint16(b, uint16(tag))
		b = append(b, "\x00\x00\x00\x00\x10\x00\x80\x00\x00\xaa\x00\x38\x9b\x71"...)
	}
	return chunk("fmt ", b)
}

func wavOf(tag, channels, rate, bits, mask int, data []byte) []byte {
	return riff(format(tag, channels, rate, bits, mask), chunk("data", data))
}

func read(t *testing.T, file []byte) []float64 {
	t.Helper()
	s, err := Read(bytes.NewReader(file), 48000)
	if err != nil {
		t.Fatal(err)
	}
	x := rest(t, s)
	if s.Err() != nil {
		t.Fatal(s.Err())
	}
	return x
}

// Full scale and the steps next to nought, by the book: 8 bits are unsigned with
// 128 for nought, the others are signed.
func TestNumbers(t *testing.T) {
	float := func(v float64) []byte {
		return binary.LittleEndian.AppendUint32(nil, math.Float32bits(float32(v)))
	}
	double := func(v float64) []byte { return binary.LittleEndian.AppendUint64(nil, math.Float64bits(v)) }
	for name, c := range map[string]struct {
		tag, bits int
		data      []byte
		want      []float64
	}{
		"8 bit":    {1, 8, []byte{0, 127, 128, 255}, []float64{-1, -1.0 / 128, 0, 127.0 / 128}},
		"16 bit":   {1, 16, []byte("\x00\x80\xff\xff\x01\x00\xff\x7f"), []float64{-1, -1.0 / 32768, 1.0 / 32768, 32767.0 / 32768}},
		"12 in 16": {1, 12, []byte("\x00\x80\xf0\xff\xf0\x7f"), []float64{-1, -1.0 / 2048, 2047.0 / 2048}},
		"24 bit":   {1, 24, []byte("\x00\x00\x80\xff\xff\xff\xff\xff\x7f"), []float64{-1, -0x1p-23, 1 - 0x1p-23}},
		"32 bit":   {1, 32, []byte("\x00\x00\x00\x80\xff\xff\xff\xff\xff\xff\xff\x7f"), []float64{-1, -0x1p-31, 1 - 0x1p-31}},
		"float":    {3, 32, bytes.Join([][]byte{float(-2), float(0.1), float(math.NaN()), float(math.Inf(1))}, nil), []float64{-2, float64(float32(0.1)), 0, 0}},
		"double":   {3, 64, bytes.Join([][]byte{double(-2), double(0.1), double(math.NaN()), double(1e300)}, nil), []float64{-2, 0.1, 0, 0}},
	} {
		for _, mask := range []int{0, 4} {
			t.Run(name, func(t *testing.T) {
				have := read(t, wavOf(c.tag, 1, 48000, c.bits, mask, c.data))
				if diff := cmp.Diff(c.want, have); diff != "" {
					t.Errorf("mask %d: %s", mask, diff)
				}
			})
		}
	}
}

func TestContainers(t *testing.T) {
	data := []byte("\x00\x40\x00\xc0\x00\x20")
	want := []float64{0.5, -0.5, 0.25}
	plain := format(1, 1, 48000, 16, 0)
	sized := func(size uint32) []byte { return binary.LittleEndian.AppendUint32([]byte("data"), size) }
	large := riff(chunk("ds64", append(make([]byte, 8), append([]byte{6}, make([]byte, 19)...)...)), plain,
		append(sized(0xffffffff), append(bytes.Clone(data), chunk("LIST", make([]byte, 10))...)...))
	copy(large, "RF64")
	for name, file := range map[string][]byte{
		"odd chunk before":      riff(chunk("bext", make([]byte, 7)), plain, chunk("data", data)),
		"chunk between":         riff(plain, chunk("LIST", make([]byte, 26)), chunk("data", data)),
		"chunk after":           riff(plain, chunk("data", data), chunk("LIST", make([]byte, 26))),
		"half a frame too much": riff(plain, chunk("data", append(bytes.Clone(data), 7))),
		"down a pipe":           riff(plain, append(sized(0xffffffff), data...)),
		"down another pipe":     riff(plain, append(sized(0x7fffffd8), data...)),
		"longer than 4 GiB":     large,
	} {
		t.Run(name, func(t *testing.T) {
			if diff := cmp.Diff(want, read(t, file)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// A mask gives the channels their places in the order of its bits; without one
// they count alike.
func TestMask(t *testing.T) {
	data := []byte("\x00\x40\x00\x00\x00\x20\x00\x10\x00\x00\x00\x00") // 0.5 0 0.25 0.125 0 0
	for name, c := range map[string]struct {
		mask int
		want float64
	}{
		"none": {0, 0.875 / 6},
		// left, right, centre, effects, back
		"back": {0x3f, (0.7071*0.5 + 0.25) / (2*0.7071 + 1 + 2*0.5)},
		// left, right, centre, effects, sides
		"sides": {0x60f, (0.7071*0.5 + 0.25) / (2*0.7071 + 1 + 2*0.5)},
		// left, right, backs, sides
		"no centre":      {0x633, (0.7071*0.5 + 0.5*0.25 + 0.5*0.125) / (2*0.7071 + 4*0.5)},
		"too few places": {0x3, 0.875 / 6},
	} {
		if have := read(t, wavOf(1, 6, 48000, 16, c.mask, data)); math.Abs(have[0]-c.want) > 1e-12 {
			t.Errorf("%s: %g, want %g", name, have[0], c.want)
		}
	}
}
