package decode

import (
	"fmt"

	"github.com/hajimehoshi/go-mp3"
)

// checkMP3 looks at a frame's header (ISO/IEC 11172-3, 2.4.1.3): what may follow
// the mark by which it was known, and what the decoder can read.
func checkMP3(head []byte) error {
	version, layer := head[1]>>3&3, head[1]>>1&3
	switch bitrate, rate := head[2]>>4, head[2]>>2&3; {
	case version == 1 || layer == 0 || bitrate == 15 || rate == 3:
		return ErrFormat
	case layer != 1:
		return fmt.Errorf("%w: MPEG audio of layer %d, not 3", ErrUnsupported, 4-layer)
	case version == 0:
		return fmt.Errorf("%w: MP3 of a rate below 16000 samples a second", ErrUnsupported)
	case bitrate == 0:
		return fmt.Errorf("%w: MP3 of a free bit rate", ErrUnsupported)
	}
	return nil
}

func openMP3(w *window) (sound, error) {
	d, err := mp3.NewDecoder(w)
	if err != nil {
		return sound{}, fmt.Errorf("MP3: %w", broken(err))
	}
	// A last frame that is cut short counts in the length but is never decoded.
	const frame = 4 // bytes: 16 bit, two channels, whatever the file holds
	s := sound{rate: d.SampleRate(), channels: 2, frames: int(d.Length() / frame)}
	if err := limits(s.rate, s.channels); err != nil {
		return sound{}, fmt.Errorf("MP3: %w", err)
	}
	s.weights = weights(s.channels, nil)
	s.decoder = newPCM(d, signed16, frame/2, s.channels)
	return s, nil
}
