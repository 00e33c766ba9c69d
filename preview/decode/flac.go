package decode

import (
	"errors"
	"fmt"
	"io"
	"log"
	"sync"

	"github.com/mewkiz/flac"
	"github.com/mewkiz/flac/frame"
)

// flacPlaces are the places of FLAC's channels, by their number (RFC 9639, section
// 9.1.3).
var flacPlaces = map[int][]place{
	3: {left, right, centre},
	4: {left, right, backLeft, backRight},
	5: {left, right, centre, backLeft, backRight},
	6: {left, right, centre, effects, backLeft, backRight},
	7: {left, right, centre, effects, back, sideLeft, sideRight},
	8: {left, right, centre, effects, backLeft, backRight, sideLeft, sideRight},
}

var errFrame = errors.New("a frame unlike the file's beginning")

func openFLAC(w *window) (sound, error) {
	// The library would make room for whatever block stands first.
	head, err := headAt(w, 0, 8)
	if err != nil {
		return sound{}, err
	}
	if len(head) == 8 && (head[4]&0x7f != 0 || head[5] != 0 || head[6] != 0 || head[7] != 34) {
		return sound{}, fmt.Errorf("FLAC: %w: does not begin with its stream information", ErrBroken)
	}
	if _, err := w.Seek(0, io.SeekStart); err != nil {
		return sound{}, err
	}
	stream, err := flac.New(w)
	if err != nil {
		return sound{}, fmt.Errorf("FLAC: %w", broken(err))
	}
	info := stream.Info
	s := sound{rate: int(info.SampleRate), channels: int(info.NChannels), frames: int(info.NSamples)}
	if err := limits(s.rate, s.channels); err != nil {
		return sound{}, fmt.Errorf("FLAC: %w", err)
	}
	if info.BitsPerSample > 24 {
		return sound{}, fmt.Errorf("FLAC: %w: %d bits", ErrUnsupported, info.BitsPerSample)
	}
	s.weights = weights(s.channels, flacPlaces[s.channels])
	s.decoder = &flacDecoder{stream: stream, left: s.frames, bounded: s.frames > 0}
	return s, nil
}

type flacDecoder struct {
	stream  *flac.Stream
	bounded bool // the file says how many frames there are
	left    int  // of these
	frame   *frame.Frame
	at      int // in frame
}

func (d *flacDecoder) read(dst []float64) (int, error) {
	channels := int(d.stream.Info.NChannels)
	want := len(dst) / channels
	if d.bounded {
		if want = min(want, d.left); want == 0 {
			return 0, io.EOF
		}
	}
	for d.frame == nil || d.at == int(d.frame.BlockSize) {
		if err := d.next(); err != nil {
			return 0, err
		}
	}
	n := min(want, int(d.frame.BlockSize)-d.at)
	full := float64(int64(1) << (d.stream.Info.BitsPerSample - 1))
	for c := range channels {
		for i, v := range d.frame.Subframes[c].Samples[d.at : d.at+n] {
			dst[i*channels+c] = float64(v) / full
		}
	}
	d.at += n
	d.left -= n
	return n, nil
}

// next parses the next frame.
func (d *flacDecoder) next() error {
	f, err := parseFrame(d.stream)
	if err != nil {
		return err
	}
	if len(f.Subframes) != int(d.stream.Info.NChannels) || f.BitsPerSample != d.stream.Info.BitsPerSample {
		return errFrame
	}
	d.frame, d.at = f, 0
	return nil
}

var quiet sync.Mutex

// parseFrame parses a frame. At two rates the library prints a plea for test files
// for each, which is kept from the screen.
func parseFrame(s *flac.Stream) (*frame.Frame, error) {
	if s.Info.SampleRate == 24000 || s.Info.SampleRate == 176400 {
		quiet.Lock()
		defer quiet.Unlock()
		before := log.Writer()
		log.SetOutput(io.Discard)
		defer log.SetOutput(before)
	}
	return s.ParseNext()
}
