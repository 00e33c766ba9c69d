package decode

import (
	"encoding/binary"
	"fmt"
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
	count    int   // of numbers read
	odd      error // the first number that was none of a sound; nil: none was
}

func newPCM(from io.Reader, number func([]byte) float64, width, channels int) *pcm {
	return &pcm{from: from, number: number, width: width, channels: channels, raw: make([]byte, block*channels*width)}
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
		v := p.number(p.raw[i*p.width:])
		if !isSound(v) {
			if p.odd == nil {
				p.odd = oddNumber(v, (p.count+i)/p.channels+1, i%p.channels+1)
			}
			v = 0
		}
		dst[i] = v
	}
	p.count += n * p.channels
	return n, err
}

func unsigned8(b []byte) float64 { return (float64(b[0]) - 128) / (1 << 7) }

func signed16(b []byte) float64 { return float64(int16(binary.LittleEndian.Uint16(b))) / (1 << 15) }

func signed24(b []byte) float64 {
	return float64(int32(uint32(b[0])<<8|uint32(b[1])<<16|uint32(b[2])<<24)) / (1 << 31)
}

func signed32(b []byte) float64 { return float64(int32(binary.LittleEndian.Uint32(b))) / (1 << 31) }

func float32s(b []byte) float64 {
	return float64(math.Float32frombits(binary.LittleEndian.Uint32(b)))
}

func float64s(b []byte) float64 { return math.Float64frombits(binary.LittleEndian.Uint64(b)) }

// most is 120 dB above full scale, as no sound is.
const most = 1e6

// isSound tells whether a number is one of a sound: finite, and not above most. Of what is heard
// others are silence; what is measured has none.
func isSound(v float64) bool { return math.Abs(v) <= most }

// oddNumber says which number is none of a sound, by its sample and channel from 1.
func oddNumber(v float64, sample, channel int) error {
	what := fmt.Sprintf("%.0f dB above full scale", 20*math.Log10(math.Abs(v)))
	switch {
	case math.IsNaN(v):
		what = "no number (NaN)"
	case math.IsInf(v, 0):
		what = "infinite"
	}
	return fmt.Errorf("%w: sample %d of channel %d is %s: no recorder writes that; record again, or export as 24 bit", ErrBroken, sample, channel, what)
}
