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
	from    io.Reader
	number  func([]byte) float64
	width   int // bytes of a number
	mix     *downmix
	raw     []byte
	numbers []float64
}

func newPCM(from io.Reader, number func([]byte) float64, width int, mix *downmix) *pcm {
	n := block * len(mix.weights)
	return &pcm{from, number, width, mix, make([]byte, n*width), make([]float64, n)}
}

// read fills dst with mono samples.
func (p *pcm) read(dst []float64) (int, error) {
	channels := len(p.mix.weights)
	frame := p.width * channels
	got, err := io.ReadFull(p.from, p.raw[:min(len(dst), block)*frame])
	n := got / frame
	if n == 0 {
		if err == io.ErrUnexpectedEOF {
			err = io.EOF // less than a frame is left
		}
		return 0, err
	}
	if err == io.EOF || err == io.ErrUnexpectedEOF {
		err = nil // comes again at the next call
	}
	numbers := p.numbers[:n*channels]
	for i := range numbers {
		numbers[i] = p.number(p.raw[i*p.width:])
	}
	sum(dst[:n], numbers, p.mix)
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
