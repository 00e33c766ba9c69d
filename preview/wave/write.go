package wave

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math"
	"math/rand/v2"

	"github.com/gopxl/beep/v2"
)

var little = binary.LittleEndian

// block is how many samples are written at once.
const block = 4096

// Write writes all of s to w as a WAV file. The same stream gives the same
// bytes. Where w can seek it must stand at its beginning, and memory does not
// grow with the length; else the file is put together in memory first.
//
// Errors wrap ErrFormat, or come from s or w.
func Write(w io.Writer, s beep.Streamer, f Format) error {
	err := f.check()
	if err == nil {
		err = write(w, s, f)
	}
	if err != nil {
		return fmt.Errorf("WAV: %w", err)
	}
	return nil
}

func write(w io.Writer, s beep.Streamer, f Format) error {
	if file, ok := w.(io.WriteSeeker); ok {
		if at, err := file.Seek(0, io.SeekCurrent); err == nil && at == 0 {
			return writeFile(file, s, f)
		}
	}
	var body bytes.Buffer
	frames, err := writeBody(&body, s, f)
	if err == nil {
		_, err = w.Write(f.header(frames))
	}
	if err == nil {
		_, err = body.WriteTo(w)
	}
	return err
}

// writeFile comes back to the header once it is known how many samples there are.
func writeFile(w io.WriteSeeker, s beep.Streamer, f Format) error {
	if _, err := w.Write(f.header(0)); err != nil {
		return err
	}
	frames, err := writeBody(w, s, f)
	if err != nil {
		return err
	}
	if _, err := w.Seek(0, io.SeekStart); err != nil {
		return err
	}
	if _, err := w.Write(f.header(frames)); err != nil {
		return err
	}
	_, err = w.Seek(0, io.SeekEnd)
	return err
}

// writeBody writes all of s and the text after it, and returns how many samples s had.
func writeBody(w io.Writer, s beep.Streamer, f Format) (frames int, err error) {
	q := quantiser{f.Depth, rand.New(rand.NewPCG(16, 1992))}
	samples, data := make([][2]float64, block), make([]byte, 0, block*f.frame())
	for {
		n, ok := s.Stream(samples)
		if !ok {
			break
		}
		frames += n
		if int64(frames)*int64(f.frame()) > math.MaxUint32-1024-int64(len(f.text())) {
			return frames, errors.New("longer than a WAV file can be (4 GiB)")
		}
		data = data[:0]
		for _, v := range samples[:n] {
			if f.Channels == 1 {
				data = q.number(data, (v[0]+v[1])/2)
				continue
			}
			data = q.number(q.number(data, v[0]), v[1])
		}
		if _, err := w.Write(data); err != nil {
			return frames, err
		}
	}
	if err := s.Err(); err != nil {
		return frames, err
	}
	_, err = w.Write(append(make([]byte, frames*f.frame()%2), f.text()...)) // chunks begin at even places
	return frames, err
}

// quantiser turns samples into the numbers that stand in the file.
type quantiser struct {
	depth  Depth
	dither *rand.Rand
}

// number appends v, full scale 1. What is past full scale is clipped, except in floating
// point; what is not a number becomes 0.
func (q quantiser) number(dst []byte, v float64) []byte {
	if math.IsNaN(v) {
		v = 0
	}
	switch q.depth {
	case PCM16:
		return little.AppendUint16(dst, uint16(round(v*(1<<15)+q.dither.Float64()-q.dither.Float64(), 1<<15)))
	case PCM24:
		n := round(v*(1<<23), 1<<23)
		return append(dst, byte(n), byte(n>>8), byte(n>>16))
	}
	return little.AppendUint32(dst, math.Float32bits(float32(v)))
}

// round returns the integer nearest to v that fits below scale.
func round(v, scale float64) int {
	return int(math.RoundToEven(min(max(v, -scale), scale-1)))
}
