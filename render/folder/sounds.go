package folder

import (
	"io"
	"sync"

	"pappus/render/figure"
)

// Spectrograms lists the picture of sounds, at rate samples a second, which are made once.
func Spectrograms(name, title string, rate int, sounds func() ([]figure.Sound, error)) []file {
	return ofSounds(name, sounds, func(w io.Writer, f figure.Format, s []figure.Sound) error {
		return figure.Spectrograms(w, f, title, s, rate)
	})
}

// Impulses lists the picture of what is heard of a click in each case.
func Impulses(title string, rate int, sounds func() ([]figure.Sound, error)) []file {
	return ofSounds("impulse", sounds, func(w io.Writer, f figure.Format, s []figure.Sound) error {
		return figure.Energy(w, f, title, s, rate)
	})
}

func ofSounds(name string, sounds func() ([]figure.Sound, error), draw func(io.Writer, figure.Format, []figure.Sound) error) []file {
	made := sync.OnceValues(sounds)
	return drawn(name, func(w io.Writer, f figure.Format) error {
		s, err := made()
		if err != nil {
			return err
		}
		return draw(w, f, s)
	})
}
