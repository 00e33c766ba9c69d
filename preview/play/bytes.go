package play

import (
	"encoding/binary"
	"io"
	"math"
	"sync/atomic"

	"github.com/gopxl/beep/v2"
)

// frameBytes is the size of one sample, left and right, as 32 bit floating
// point.
const frameBytes = 8

// source turns a stream into the bytes that the device takes, and counts them.
type source struct {
	stream  beep.Streamer
	samples [][2]float64
	given   atomic.Int64 // bytes
}

// Read fills p with whole samples. It ends with io.EOF, or with the stream's
// error.
func (s *source) Read(p []byte) (int, error) {
	want := len(p) / frameBytes
	if cap(s.samples) < want {
		s.samples = make([][2]float64, want)
	}
	n, ok := s.stream.Stream(s.samples[:want])
	if !ok {
		if err := s.stream.Err(); err != nil {
			return 0, err
		}
		return 0, io.EOF
	}
	for i, v := range s.samples[:n] {
		for c := range v {
			binary.LittleEndian.PutUint32(p[frameBytes*i+4*c:], math.Float32bits(float32(v[c])))
		}
	}
	s.given.Add(int64(n * frameBytes))
	return n * frameBytes, nil
}
