package decode

import (
	"encoding/binary"
	"io"
	"math"
)

// block is how many frames are decoded at once, at most.
const block = 1024

// pcm decodes interleaved numbers of one width.
type pcm struct {
	from     io.Reader
	number   func([]byte) float64
	width    int // bytes of a number
	channels int
	raw      []byte
}

func newPCM(from io.Reader, number func([]byte) float64, width, channels int) *pcm {
	return &pcm{from, number, width, channels, make([]byte, block*channels*width)}
}

func (p *pcm) read(dst []float64) (int, error) {
	got, err := io.ReadFull(p.from, p.raw[:len(dst)*p.width])
	n := got / (p.width * p.channels)
	if n == 0 {
		if err == io.ErrUnexpectedEOF {
			err = io.EOF // less than a frame is left
		}
		return 0, err
	}
	if err == io.EOF || err == io.ErrUnexpectedEOF {
		err = nil // comes again at the next call
	}
	for i := range dst[:n*p.channels] {
		dst[i] = p.number(p.raw[i*p.width:])
	}
	return n, err
}

func unsigned8(b []byte) float64 { return (float64(b[0]) - 128) / (1 << 7) }

func signed16(b []byte) float64 { return float64(int16(binary.LittleEndian.Uint16(b))) / (1 << 15) }

func signed24(b []byte) float64 {
	return float64(int32(uint32(b[0])<<8|uint32(b[1])<<16|uint32(b[2])<<24)) / (1 << 31)
}

func signed32(b []byte) float64 { return float64(int32(binary.LittleEndian.Uint32(b))) / (1 << 31) }

func float32s(b []byte) float64 {
	return finite(float64(math.Float32frombits(binary.LittleEndian.Uint32(b))))
}

func float64s(b []byte) float64 {
	return finite(math.Float64frombits(binary.LittleEndian.Uint64(b)))
}

// finite makes silence of what is no number of a sound: what is not finite, or
// more than 120 dB above full scale.
func finite(v float64) float64 {
	if !(math.Abs(v) <= 1e6) {
		return 0
	}
	return v
}
