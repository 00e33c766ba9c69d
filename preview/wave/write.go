package wave

import (
	"fmt"
	"io"
	"math"

	"github.com/go-audio/audio"
	"github.com/go-audio/wav"
	"github.com/gopxl/beep/v2"
)

// block is how many samples are written at once.
const block = 4096

// factCount is where the fact chunk of a floating point file holds its number of
// samples.
const factCount = 12 + 26 + 8

// Write writes all of s to w as a WAV file. The same stream gives the same
// bytes. Where w can seek it must stand at its beginning, and memory does not
// grow with the length; else the file is put together in memory first.
//
// Errors wrap ErrFormat, tell of a file that would be too long, or come from s or w.
func Write(w io.Writer, s beep.Streamer, f Format) error {
	if err := f.check(); err != nil {
		return fmt.Errorf("WAV: %w", err)
	}
	if file, ok := w.(io.WriteSeeker); ok {
		if at, err := file.Seek(0, io.SeekCurrent); err == nil && at == 0 {
			return wrap(encode(file, s, f))
		}
	}
	m := &memory{}
	if err := encode(m, s, f); err != nil {
		return wrap(err)
	}
	_, err := w.Write(m.data)
	return wrap(err)
}

func wrap(err error) error {
	if err != nil {
		return fmt.Errorf("WAV: %w", err)
	}
	return nil
}

// encode writes the file. It hides from the encoder that w may be a file on disk,
// which would be forced out to the disk.
func encode(w io.WriteSeeker, s beep.Streamer, f Format) error {
	e := wav.NewEncoder(struct{ io.WriteSeeker }{w}, f.Rate, f.Depth.bits(), f.Channels, 1)
	e.Metadata = f.text()
	if f.Depth == Float32 {
		if err := floatHeader(e, f); err != nil {
			return err
		}
	}
	frames, err := copySamples(e, s, f)
	if err != nil {
		return err
	}
	if frames*f.frame()%2 == 1 { // chunks begin at even places
		if err := e.AddLE(uint8(0)); err != nil {
			return err
		}
	}
	if err := e.Close(); err != nil {
		return err
	}
	if f.Depth == Float32 {
		return count(e, w, frames)
	}
	return nil
}

// floatHeader writes the header of a floating point file, which the encoder
// cannot: with an empty extension to the format, and a fact chunk.
func floatHeader(e *wav.Encoder, f Format) error {
	for _, field := range []any{
		[]byte("RIFF"), uint32(0), []byte("WAVE"),
		[]byte("fmt "), uint32(18), uint16(3), uint16(f.Channels), uint32(f.Rate),
		uint32(f.Rate * f.frame()), uint16(f.frame()), uint16(f.Depth.bits()), uint16(0),
		[]byte("fact"), uint32(4), uint32(0),
	} {
		if err := e.AddLE(field); err != nil {
			return err
		}
	}
	return nil
}

// count writes the number of samples into the fact chunk.
func count(e *wav.Encoder, w io.WriteSeeker, frames int) error {
	if _, err := w.Seek(factCount, io.SeekStart); err != nil {
		return err
	}
	if err := e.AddLE(uint32(frames)); err != nil {
		return err
	}
	_, err := w.Seek(0, io.SeekEnd)
	return err
}

// copySamples writes all of s and returns how many samples it had.
func copySamples(e *wav.Encoder, s beep.Streamer, f Format) (int, error) {
	q := newQuantiser(f.Depth)
	samples := make([][2]float64, block)
	data := make([]int, 0, block*f.Channels)
	buffer := &audio.IntBuffer{
		Format:         &audio.Format{NumChannels: f.Channels, SampleRate: f.Rate},
		SourceBitDepth: f.Depth.bits(),
	}
	frames := 0
	for ok := true; ok; {
		var n int
		if n, ok = s.Stream(samples); !ok {
			n = 0 // an empty stream still gets its data chunk
		}
		frames += n
		if int64(frames)*int64(f.frame()) > math.MaxUint32-1024-int64(len(f.Title)+len(f.Comment)) {
			return frames, errTooLong
		}
		buffer.Data = numbers(data[:0], samples[:n], f.Channels, q)
		if err := e.Write(buffer); err != nil {
			return frames, err
		}
	}
	return frames, s.Err()
}

// numbers appends the samples to dst, channel by channel.
func numbers(dst []int, samples [][2]float64, channels int, q *quantiser) []int {
	for _, v := range samples {
		if channels == 1 {
			dst = append(dst, q.number((v[0]+v[1])/2))
			continue
		}
		dst = append(dst, q.number(v[0]), q.number(v[1]))
	}
	return dst
}
