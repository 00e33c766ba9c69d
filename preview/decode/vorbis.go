package decode

import (
	"errors"
	"fmt"
	"io"

	"github.com/jfreymuth/oggvorbis"
)

// vorbisPlaces are the places of Vorbis's channels, by their number (Vorbis I
// specification, section 4.3.9).
var vorbisPlaces = map[int][]place{
	3: {left, centre, right},
	4: {left, right, backLeft, backRight},
	5: {left, centre, right, backLeft, backRight},
	6: {left, centre, right, backLeft, backRight, effects},
	7: {left, centre, right, sideLeft, sideRight, back, effects},
	8: {left, centre, right, sideLeft, sideRight, backLeft, backRight, effects},
}

func openVorbis(w *window) (sound, error) {
	r, err := oggvorbis.NewReader(w)
	if err != nil {
		return sound{}, fmt.Errorf("an Ogg Vorbis file: %w", unread(w, broken(err)))
	}
	s := sound{rate: r.SampleRate(), channels: r.Channels()}
	if r.Length() > 0 {
		s.frames = int(r.Length() - r.Position()) // a part of a broadcast does not start at 0
	}
	if err := limits(s.rate, s.channels); err != nil {
		return sound{}, fmt.Errorf("an Ogg Vorbis file: %w", err)
	}
	s.weights = weights(s.channels, vorbisPlaces[s.channels])
	s.decoder = &vorbisDecoder{r, make([]float32, block*s.channels)}
	return s, nil
}

// unread says of a file that the library takes for damaged whether it may be one
// of those that it cannot read: of six channels, as the usual coder writes them.
func unread(w *window, err error) error {
	const at = 39 // the number of channels in the first packet of the first page
	head, _ := headAt(w, at, 1)
	if errors.Is(err, ErrBroken) && len(head) == 1 && head[0] == 6 {
		return fmt.Errorf("%w: six channels", ErrUnsupported)
	}
	return err
}

type vorbisDecoder struct {
	from    *oggvorbis.Reader
	numbers []float32
}

func (d *vorbisDecoder) read(dst []float64) (int, error) {
	got, err := d.from.Read(d.numbers[:len(dst)])
	for i, v := range d.numbers[:got] {
		dst[i] = float64(v)
	}
	n := got / d.from.Channels()
	if n > 0 && err == io.EOF {
		err = nil // comes again at the next call
	}
	return n, err
}
