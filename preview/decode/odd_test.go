package decode_test

import (
	"bytes"
	"encoding/binary"
	"math"
	"strings"
	"testing"

	"pappus/preview/decode"
)

// floatWAV is a stereo file of 32 bit floats.
func floatWAV(samples ...float32) []byte {
	var data bytes.Buffer
	for _, v := range samples {
		data.Write(binary.LittleEndian.AppendUint32(nil, math.Float32bits(v)))
	}
	var out []byte
	out = append(out, "RIFF"...)
	out = binary.LittleEndian.AppendUint32(out, uint32(36+data.Len()))
	out = append(out, "WAVEfmt "...)
	out = binary.LittleEndian.AppendUint32(out, 16)
	for _, v := range []uint16{3, 2} {
		out = binary.LittleEndian.AppendUint16(out, v)
	}
	out = binary.LittleEndian.AppendUint32(out, 48000)
	out = binary.LittleEndian.AppendUint32(out, 48000*8)
	for _, v := range []uint16{8, 32} {
		out = binary.LittleEndian.AppendUint16(out, v)
	}
	out = append(out, "data"...)
	out = binary.LittleEndian.AppendUint32(out, uint32(data.Len()))
	return append(out, data.Bytes()...)
}

// TestOddNumbers: a recording that holds what no recorder writes is refused, with what it is and
// where; a level up to 120 dB over full scale is taken.
func TestOddNumbers(t *testing.T) {
	for name, c := range map[string]struct {
		odd  float32
		want string
	}{
		"no number": {float32(math.NaN()), "sample 3 of channel 2 is no number (NaN)"},
		"infinite":  {float32(math.Inf(-1)), "sample 3 of channel 2 is infinite"},
		"huge":      {3e38, "sample 3 of channel 2 is 770 dB above full scale"},
		"too much":  {1.1e6, "sample 3 of channel 2 is 121 dB above full scale"},
		"much":      {0.9e6, ""},
	} {
		_, channels, err := decode.ReadChannels(bytes.NewReader(floatWAV(0.1, 0.2, 0.3, 0.4, 0.5, c.odd, 0.7, c.odd)))
		switch {
		case c.want == "" && (err != nil || channels[1][2] != float64(c.odd)):
			t.Errorf("%s: %v, %v", name, channels, err)
		case c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)):
			t.Errorf("%s: %v", name, err)
		}
	}
}
