package figure_test

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"image/png"
	"io"
	"math"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"pappus/render/figure"
)

const rate = 48000

// hiss is pink-like noise by two paths 0.5 ms apart, with a click in it.
func hiss(samples int) []float64 {
	r := rand.New(rand.NewPCG(1, 2))
	direct := make([]float64, samples+24)
	low := 0.0
	for i := range direct {
		low = 0.98*low + 0.2*r.NormFloat64()
		direct[i] = low + 0.1*r.NormFloat64()
	}
	direct[len(direct)/2] = 20
	out := make([]float64, samples)
	for i := range out {
		out[i] = direct[i] + direct[i+24]
	}
	return out
}

// ring is an impulse response: two arrivals and a decay.
func ring(gap int) []float64 {
	out := make([]float64, 4096)
	for i := range 2000 {
		out[48+i] = 0.2 * math.Exp(-float64(i)/80) * math.Cos(float64(i)/20)
	}
	out[48]++
	out[48+gap] += 0.7
	return out
}

func soundPictures() []picture {
	type form = figure.Format
	noise, long := hiss(6*rate), "measured at the listening spot, once more with all the delays set"
	var five, responses []figure.Sound
	for i, name := range []string{"as built", "aligned", "ideal point", long, strings.Repeat("x", 60)} {
		five = append(five, figure.Sound{Words: name, Samples: noise[:(i+1)*rate]})
		responses = append(responses, figure.Sound{Words: name, Samples: ring(10 + 7*i)})
	}
	spectra := func(sounds []figure.Sound) func(io.Writer, form) error {
		return func(w io.Writer, f form) error { return figure.Spectrograms(w, f, "Sounds side by side", sounds, rate) }
	}
	energy := func(sounds []figure.Sound) func(io.Writer, form) error {
		return func(w io.Writer, f form) error { return figure.Energy(w, f, "Energy over time", sounds, rate) }
	}
	return []picture{
		{"spectrogram", func(w io.Writer, f form) error {
			return figure.Spectrograms(w, f, "A sound", []figure.Sound{{Samples: noise}}, rate)
		}},
		{"spectrograms_3", spectra(five[:3])},
		{"spectrograms_5", spectra(five)},
		{"energy_1", energy(responses[:1])},
		{"energy_3", energy(responses[:3])},
		{"energy_5", energy(responses)},
	}
}

func TestSoundPictures(t *testing.T) {
	embedded := regexp.MustCompile(`base64,([A-Za-z0-9+/=]+)`)
	for _, pic := range soundPictures() {
		t.Run(pic.name, func(t *testing.T) {
			t.Parallel()
			var dots, again, lines bytes.Buffer
			for _, err := range []error{pic.draw(&dots, figure.PNG), pic.draw(&again, figure.PNG), pic.draw(&lines, figure.SVG)} {
				if err != nil {
					t.Fatal(err)
				}
			}
			leave(t, pic.name+".png", dots.Bytes())
			leave(t, pic.name+".svg", lines.Bytes())
			if !bytes.Equal(dots.Bytes(), again.Bytes()) {
				t.Error("two drawings differ")
			}
			if img, err := png.Decode(&dots); err != nil || img.Bounds().Dx() != 1400 || img.Bounds().Dy() != 900 {
				t.Errorf("not a picture of 1400 by 900: %v", err)
			}
			if lines.Len() > 300_000 {
				t.Errorf("%d bytes of svg, want 300 kB at most", lines.Len())
			}
			for _, found := range embedded.FindAllSubmatch(lines.Bytes(), -1) {
				raw, err := base64.StdEncoding.DecodeString(string(found[1]))
				if err != nil {
					t.Fatal(err)
				}
				if _, err := png.Decode(bytes.NewReader(raw)); err != nil {
					t.Error(err)
				}
			}
			if n := elements(t, &lines); n < 30 {
				t.Errorf("only %d elements", n)
			}
		})
	}
}

// A picture in an SVG keeps its own proportions, and would not fill its panel if
// that had others.
func TestPicturesFillTheirPanels(t *testing.T) {
	var out bytes.Buffer
	if err := figure.Spectrograms(&out, figure.SVG, "A sound", []figure.Sound{{Samples: hiss(rate)}}, rate); err != nil {
		t.Fatal(err)
	}
	found := regexp.MustCompile(`width="(\d+)" height="(\d+)" xlink:href="data:[^,]*,([A-Za-z0-9+/=]+)`).FindStringSubmatch(out.String())
	if found == nil {
		t.Fatal("no picture of whole points")
	}
	raw, err := base64.StdEncoding.DecodeString(found[3])
	if err != nil {
		t.Fatal(err)
	}
	img, err := png.DecodeConfig(bytes.NewReader(raw))
	if err != nil {
		t.Fatal(err)
	}
	if fmt.Sprint(img.Width, img.Height) != found[1]+" "+found[2] {
		t.Errorf("%d by %d dots on %s by %s points", img.Width, img.Height, found[1], found[2])
	}
}

func TestSoundErrors(t *testing.T) {
	one := []figure.Sound{{Words: "one", Samples: []float64{1, 0}}}
	six := make([]figure.Sound, 6)
	for i := range six {
		six[i] = one[0]
	}
	for _, c := range []struct {
		name   string
		format figure.Format
		sounds []figure.Sound
		rate   int
		want   string
	}{
		{"format", "bmp", one, rate, "no such picture format"},
		{"none", figure.PNG, nil, rate, "nothing to draw"},
		{"empty", figure.PNG, []figure.Sound{one[0], {}}, rate, "nothing to draw"},
		{"six", figure.PNG, six, rate, "too many sounds"},
		{"slow", figure.PNG, one, 999, "no such sample rate"},
		{"fast", figure.PNG, one, 1e6 + 1, "no such sample rate"},
		{"negative", figure.PNG, one, -1, "no such sample rate"},
	} {
		for _, draw := range []func(io.Writer, figure.Format, string, []figure.Sound, int) error{figure.Spectrograms, figure.Energy} {
			var out bytes.Buffer
			if err := draw(&out, c.format, "", c.sounds, c.rate); err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("%s: got %v, want %q", c.name, err, c.want)
			}
			if out.Len() > 0 {
				t.Errorf("%s: %d bytes written", c.name, out.Len())
			}
		}
	}
}

// TestOddSounds draws what a calculation may leave behind.
func TestOddSounds(t *testing.T) {
	for _, v := range []float64{0, 1, -1e-300, 1e200, math.NaN(), math.Inf(1), math.Inf(-1)} {
		for _, n := range []int{1, 2, 5000} {
			samples := filled(n, v)
			mixed := append([]float64{1, -1}, samples...)
			if err := figure.Spectrograms(io.Discard, figure.SVG, "", []figure.Sound{{Samples: samples}, {Samples: mixed}}, 8000); err != nil {
				t.Errorf("%d of %g: %v", n, v, err)
			}
			err := figure.Energy(io.Discard, figure.SVG, "", []figure.Sound{{Samples: samples}}, 8000)
			if square := v * v; square >= 0 && !math.IsInf(square, 1) { // silence says so in the picture
				if err != nil {
					t.Errorf("energy of %d of %g: %v", n, v, err)
				}
			} else if err == nil || !strings.Contains(err.Error(), "nothing to draw") {
				t.Errorf("energy of %d of %g: got %v", n, v, err)
			}
		}
	}
}

func BenchmarkSounds(b *testing.B) {
	for _, pic := range soundPictures() {
		for _, f := range []figure.Format{figure.PNG, figure.SVG} {
			b.Run(pic.name+"/"+string(f), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if err := pic.draw(io.Discard, f); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
