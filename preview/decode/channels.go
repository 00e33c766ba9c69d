package decode

import (
	"fmt"
)

// How long a recording may be that is held in memory, 10 minutes at 48 kHz, and how
// wide: each channel is a pass through the file.
const (
	mostFrames   = 10 * 60 * 48000
	mostChannels = 16
)

// Channels reads all of a WAV file, each channel by itself, at the file's own rate: a
// recording that is to be measured. Errors name the file and wrap those of this
// package or of os; a file that is too long or has more than 16 channels is ErrUnsupported.
func Channels(path string) (rate int, channels [][]float64, err error) {
	file, err := openFile(path)
	if err != nil {
		return 0, nil, err
	}
	defer file.Close()
	rate, channels, err = ReadChannels(file)
	if err != nil {
		return 0, nil, fmt.Errorf("%s: %w", path, err)
	}
	return rate, channels, nil
}

// ReadChannels is [Channels] of a file that is open, or in memory; errors do not name it.
func ReadChannels(file File) (rate int, channels [][]float64, err error) {
	w, kind, open, err := recognise(file)
	if err == nil && kind != "WAV" {
		err = fmt.Errorf("%w: a measurement takes a WAV file, this is %s", ErrUnsupported, kind)
	}
	if err != nil {
		return 0, nil, err
	}
	for i := 0; i == 0 || i < len(channels); i++ {
		s, err := open(w)
		switch {
		case err != nil:
		case s.frames > mostFrames:
			err = fmt.Errorf("%w: %d samples, %d are possible", ErrUnsupported, s.frames, mostFrames)
		case s.channels > mostChannels:
			err = fmt.Errorf("%w: %d channels, %d are possible", ErrUnsupported, s.channels, mostChannels)
		}
		if err != nil {
			return 0, nil, err
		}
		if channels == nil {
			rate, channels = s.rate, make([][]float64, s.channels)
		}
		if channels[i], err = s.only(i); err != nil {
			return 0, nil, err
		}
	}
	return rate, channels, nil
}

// only reads all of one channel of a WAV file.
func (s sound) only(channel int) ([]float64, error) {
	decoder := s.decoder.(*pcm)
	decoder.mix.weights = make([]float64, s.channels)
	decoder.mix.weights[channel] = 1
	out := make([]float64, s.frames)
	for at := 0; at < len(out); {
		n, err := decoder.read(out[at:])
		if n == 0 {
			return nil, fmt.Errorf("%w after %d of %d samples: %w", ErrShort, at, len(out), err)
		}
		at += n
	}
	if s.short {
		return nil, ErrShort
	}
	return out, nil
}
