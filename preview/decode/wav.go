package decode

import (
	"encoding/binary"
	"fmt"
	"io"
)

// Tags of a WAV file's samples.
const (
	tagPCM        = 1
	tagFloat      = 3
	tagExtensible = 0xfffe
)

// streamed is the size from which on a WAV file's data were written down a pipe,
// by a program that could not know their length (common practice).
const streamed = 0x7fff0000

// wavFormat is a WAV file's format chunk.
type wavFormat struct {
	tag, channels, bits int
	rate, frame         int
	mask                uint32
}

// openWAV walks the chunks to the samples.
func openWAV(w *window) (sound, error) {
	var format *wavFormat
	large := int64(-1) // the size that RF64 gives apart
	at := int64(12)
	for {
		head, err := headAt(w, at, 8)
		if err != nil {
			return sound{}, err
		}
		if len(head) < 8 {
			return sound{}, fmt.Errorf("WAV: %w: no samples in it", ErrShort)
		}
		size := int64(binary.LittleEndian.Uint32(head[4:]))
		at += 8
		switch string(head[:4]) {
		case "fmt ":
			if format, err = readFormat(w, at, size); err != nil {
				return sound{}, err
			}
		case "ds64":
			ds64, err := headAt(w, at, 16)
			if err != nil {
				return sound{}, err
			}
			if len(ds64) == 16 {
				large = int64(binary.LittleEndian.Uint64(ds64[8:]))
			}
		case "data":
			if size == 0xffffffff && large >= 0 {
				size = large
			}
			return samples(w, at, size, format)
		}
		at += size + size%2
	}
}

// readFormat reads the format chunk.
func readFormat(w *window, at, size int64) (*wavFormat, error) {
	b, err := headAt(w, at, int(min(size, 40)))
	if err != nil {
		return nil, err
	}
	if len(b) < 16 {
		return nil, fmt.Errorf("WAV: %w: format chunk of %d bytes", ErrBroken, len(b))
	}
	f := &wavFormat{
		tag:      int(binary.LittleEndian.Uint16(b)),
		channels: int(binary.LittleEndian.Uint16(b[2:])),
		rate:     int(binary.LittleEndian.Uint32(b[4:])),
		frame:    int(binary.LittleEndian.Uint16(b[12:])),
		bits:     int(binary.LittleEndian.Uint16(b[14:])),
	}
	if f.tag == tagExtensible && len(b) >= 40 {
		f.mask = binary.LittleEndian.Uint32(b[20:])
		f.tag = int(binary.LittleEndian.Uint16(b[24:])) // how the identifier of the samples' kind begins
	}
	return f, nil
}

// samples makes the decoder of a data chunk.
func samples(w *window, at, size int64, f *wavFormat) (sound, error) {
	if f == nil {
		return sound{}, fmt.Errorf("WAV: %w: samples without a format", ErrBroken)
	}
	if err := limits(f.rate, f.channels); err != nil {
		return sound{}, fmt.Errorf("WAV: %w", err)
	}
	// Numbers of odd bits stand at the top of whole bytes.
	width := (f.bits + 7) / 8
	if f.frame != width*f.channels {
		return sound{}, fmt.Errorf("WAV: %w: %d bytes for %d channels of %d bits", ErrBroken, f.frame, f.channels, f.bits)
	}
	number := f.number(width)
	if number == nil {
		return sound{}, fmt.Errorf("WAV: %w: samples of kind %d, %d bits", ErrUnsupported, f.tag, f.bits)
	}
	s := sound{rate: f.rate, channels: f.channels}
	held := w.Size() - at
	if size > held {
		s.short = size < streamed
		size = held
	}
	s.frames = int(size / int64(f.frame))
	if s.frames == 0 && s.short {
		return sound{}, fmt.Errorf("WAV: %w: no samples in it", ErrShort)
	}
	if _, err := w.Seek(at, io.SeekStart); err != nil {
		return sound{}, err
	}
	from := io.LimitReader(w, int64(s.frames)*int64(f.frame))
	s.weights = weights(f.channels, f.places())
	s.decoder = newPCM(from, number, width, f.channels)
	return s, nil
}

// number returns what reads a number of the format, or nil.
func (f *wavFormat) number(width int) func([]byte) float64 {
	switch {
	case f.tag == tagPCM && width >= 1 && width <= 4:
		return [...]func([]byte) float64{unsigned8, signed16, signed24, signed32}[width-1]
	case f.tag == tagFloat && f.bits == 32:
		return float32s
	case f.tag == tagFloat && f.bits == 64:
		return float64s
	}
	return nil
}

// places returns the places of the channels, from the lowest bit of the mask up.
func (f *wavFormat) places() []place {
	var places []place
	for bit := place(1); bit != 0; bit <<= 1 {
		if place(f.mask)&bit != 0 {
			places = append(places, bit)
		}
	}
	return places
}
