package decode

import "fmt"

// How long a recording may be that is held in memory, 10 minutes at 48 kHz, and how
// wide.
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
	s, err := open(w)
	switch {
	case err != nil:
	case s.frames > mostFrames:
		err = fmt.Errorf("%w: %d samples, %d are possible", ErrUnsupported, s.frames, mostFrames)
	case s.channels > mostChannels:
		err = fmt.Errorf("%w: %d channels, %d are possible", ErrUnsupported, s.channels, mostChannels)
	case s.short:
		err = ErrShort
	}
	if err != nil {
		return 0, nil, err
	}
	channels, numbers := make([][]float64, s.channels), make([]float64, block*s.channels)
	for at := 0; at < s.frames; {
		n, err := s.decoder.read(numbers[:min(block, s.frames-at)*s.channels])
		if n == 0 {
			return 0, nil, fmt.Errorf("%w after %d of %d samples: %w", ErrShort, at, s.frames, err)
		}
		for i, v := range numbers[:n*s.channels] {
			channels[i%s.channels] = append(channels[i%s.channels], v)
		}
		at += n
	}
	if p, ok := s.decoder.(*pcm); ok && p.odd != nil {
		return 0, nil, p.odd
	}
	return s.rate, channels, nil
}
