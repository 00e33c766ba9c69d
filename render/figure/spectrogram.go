package figure

import (
	"errors"
	"fmt"
	"io"
	"math"
	"pappus/render/words"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Sound is a sound to be drawn.
type Sound struct {
	Words   string // for people: which sound, in which case
	Samples []float64
}

const (
	mostSounds = 5  // in one picture
	mostLines  = 3  // of a name
	deep       = 60 // dB that pictures of sounds reach down from the greatest
)

// Spectrograms draws up to five sounds, rate samples a second, side by side:
// their short-time spectra over frequency, from 50 Hz to 20 kHz or half the rate,
// and time, in colours over 60 dB down from the greatest level of all. A row takes
// the power in its band, or in the window's noise bandwidth where that is wider, so
// that a tone shows its own level in any row, up to 3 dB less between two. All time
// axes are as long as the longest sound. No sound, one without samples, more than
// five, or a rate outside of 1000 to 1000000, is an error. What is no number is drawn as silence, in all windows that it falls into.
func Spectrograms(w io.Writer, f Format, title string, sounds []Sound, rate int) error {
	if err := drawable(sounds, rate); err != nil {
		return fmt.Errorf("spectrogram: %w", err)
	}
	s := spectrograms{title: title, sounds: sounds, rate: rate, dots: 2, top: min(highest, float64(rate)/2)}
	if f == SVG {
		s.dots = 1
	}
	for _, sound := range sounds {
		s.seconds = max(s.seconds, float64(len(sound.Samples))/float64(rate))
	}
	return write(w, f, s.paint)
}

// drawable tells what of sounds cannot be drawn.
func drawable(sounds []Sound, rate int) error {
	if len(sounds) == 0 {
		return errors.New("nothing to draw")
	}
	if len(sounds) > mostSounds {
		return fmt.Errorf("too many sounds for one picture: %d, at most %d", len(sounds), mostSounds)
	}
	if rate < 1000 || rate > 1e6 {
		return fmt.Errorf("no such sample rate: %d, 1000 to 1000000 a second", rate)
	}
	for _, s := range sounds {
		if len(s.Samples) == 0 {
			return fmt.Errorf("nothing to draw in %q", s.Words)
		}
	}
	return nil
}

// spectrograms are sounds being drawn.
type spectrograms struct {
	title   string
	sounds  []Sound
	rate    int
	dots    int     // of a picture to a point of the page
	top     float64 // Hz
	seconds float64 // of the longest sound
}

func (s spectrograms) paint(c draw.Canvas) {
	const bar, gap = 75, 18
	c = heading(c, words.Picture{Title: s.title, Below: fmt.Sprintf("short-time spectrum, Hann windows of %.0f ms; 0 dB: the greatest level shown",
		1000*float64(windowLength(s.rate))/float64(s.rate))})
	whole := axisTitles(draw.Crop(c, 0, -bar-gap, 0, 0), "time, s", "frequency, Hz")
	time := scale{low: 0, high: s.seconds}
	panels := s.shareOut(whole, time)
	// The pictures come before any line, so that no line is covered.
	for i, img := range s.pictures(panels[0].Size()) {
		lay(&c, panels[i].Rectangle, img)
	}
	frequency := scale{low: lowest, high: s.top, log: true}
	for i, p := range panels {
		p.name(&c, wrap(s.sounds[i].Words, p.Size().X, mostLines))
		p.up(&c, frequency.ticks(), frequency, i == 0)
		p.across(&c, s.timeTicks(p).Ticks(time.low, time.high), time, true)
		p.frame(&c)
	}
	c.Min = vg.Point{X: whole.Max.X + gap, Y: panels[0].Min.Y}
	c.Max = vg.Point{X: c.Min.X + bar, Y: panels[0].Max.Y + 20} // the unit stands above the bar
	drawBar(c, Quantity{Unit: decibel}, scale{low: -deep, high: 0}, 0)
}

// shareOut divides the page among the sounds, in whole points.
func (s spectrograms) shareOut(c draw.Canvas, time scale) []panel {
	n := vg.Length(len(s.sounds))
	wide := c.Size().X / n
	ticks := s.timeTicks(panel{vg.Rectangle{Max: vg.Point{X: wide}}}).Ticks(time.low, time.high)
	gap := vg.Length(math.Ceil(float64(font(tickSize, ink).Width(ticks[len(ticks)-1].Label)))) + 7
	wide = vg.Length(math.Floor(float64((c.Size().X - gap*(n-1)) / n)))
	lines := 0
	for _, sound := range s.sounds {
		lines = max(lines, len(wrap(sound.Words, wide, mostLines)))
	}
	high := max(20, vg.Length(lines)*nameLine+4) // the bar's unit needs 20
	var panels []panel
	for i := range s.sounds {
		x := c.Min.X + vg.Length(i)*(wide+gap)
		panels = append(panels, panel{vg.Rectangle{
			Min: vg.Point{X: x, Y: c.Min.Y}, Max: vg.Point{X: x + wide, Y: c.Max.Y - high},
		}})
	}
	return panels
}

func (s spectrograms) timeTicks(p panel) evenTicks {
	return evenTicks{niceStep(s.seconds, min(max(2, int(p.Size().X/30)), 10))}
}
