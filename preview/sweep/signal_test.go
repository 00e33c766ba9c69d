package sweep_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	sound "pappus/preview/sweep"
	"pappus/timing"
	"pappus/timing/recording"
	"pappus/timing/sweep"

	"github.com/go-audio/wav"
)

var planned = sync.OnceValues(func() (*timing.Plan, error) {
	d, err := design.Parse("lantern.toml", design.DefaultTOML())
	if err != nil {
		return nil, err
	}
	a, err := layout.Build(d)
	if err != nil {
		return nil, err
	}
	return timing.Make(context.Background(), a)
})

func demo(t testing.TB) *timing.Plan {
	t.Helper()
	p, err := planned()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestSafeByItself(t *testing.T) {
	p := demo(t)
	s, err := sound.New(p, sound.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if s.Sweep.Start != p.Protection.Corner || s.Sweep.Start <= 0 || s.Rate != 48000 || len(s.Cautions) < 2 {
		t.Errorf("%+v", s)
	}
	x := s.Samples()
	peak := 0.0
	for i, v := range x {
		peak = max(peak, math.Abs(v))
		if quiet := i < 2*s.Rate || i > len(x)-s.Rate/4; quiet && v != 0 {
			t.Fatalf("sample %d of the silence is %g", i, v)
		}
	}
	if db := 20 * math.Log10(peak); math.Abs(db+20) > 0.05 {
		t.Errorf("peaks at %.2f dB", db)
	}
	for i := range x[1:] { // no step above that of a full sine at its highest frequency
		if d := math.Abs(x[i+1] - x[i]); d > peak*2*math.Pi*s.Sweep.Stop/float64(s.Rate) {
			t.Fatalf("a step of %g at sample %d", d, i)
		}
	}
}

func TestNotBelowUnlessAsked(t *testing.T) {
	p := demo(t)
	o := sound.Options{Start: p.Protection.Corner / 2, Length: 1}
	if _, err := sound.New(p, o); err == nil || !strings.HasPrefix(err.Error(), "below the high-pass") {
		t.Errorf("error %v", err)
	}
	o.Below = true
	s, err := sound.New(p, o)
	if err != nil {
		t.Fatal(err)
	}
	if text := strings.Join(s.Cautions, "\n"); s.Sweep.Start != o.Start || !strings.Contains(text, "below the high-pass") {
		t.Errorf("from %g Hz; cautions %s", s.Sweep.Start, text)
	}
}

func TestErrors(t *testing.T) {
	p := demo(t)
	for _, level := range []float64{1, math.NaN()} {
		if _, err := sound.New(p, sound.Options{Level: level}); err == nil || !strings.HasPrefix(err.Error(), "impossible level") {
			t.Errorf("%g dB: %v", level, err)
		}
	}
	for name, c := range map[string]struct {
		o    sound.Options
		want error
	}{
		"rate too low": {sound.Options{Rate: 16000, Stop: 9000}, sweep.ErrRate},
		"too long":     {sound.Options{Length: 100}, sweep.ErrSweep},
		"falls":        {sound.Options{Stop: 100}, sweep.ErrSweep},
		"not a number": {sound.Options{Start: math.NaN()}, sweep.ErrSweep},
	} {
		if _, err := sound.New(p, c.o); !errors.Is(err, c.want) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// TestFiles: each file, read by another hand, is recovered as what went nowhere.
func TestFiles(t *testing.T) {
	p := demo(t)
	s, err := sound.New(p, sound.Options{Length: 2, Rate: 44100})
	if err != nil {
		t.Fatal(err)
	}
	files := s.Files(p)
	if len(files) != 1+len(p.Channels) {
		t.Fatalf("%d files", len(files))
	}
	names := map[string]bool{}
	for _, f := range files {
		names[f.Name] = true
	}
	if len(names) != len(files) || !names["sweep_channel_1.wav"] {
		t.Errorf("names %v", names)
	}
	f := files[1]
	var b bytes.Buffer
	if err := f.Write(&b); err != nil {
		t.Fatal(err)
	}
	d := wav.NewDecoder(bytes.NewReader(b.Bytes()))
	all, err := d.FullPCMBuffer()
	if err != nil {
		t.Fatal(err)
	}
	x := make([]float64, len(all.Data))
	for i, v := range all.Data {
		x[i] = float64(v) / (1 << 23)
	}
	if d.ReadMetadata(); !strings.Contains(d.Metadata.Comments, "channel 1 on") {
		t.Errorf("text %+v", d.Metadata)
	}
	m, err := recording.Analyse(recording.Take{Rate: float64(d.SampleRate), Samples: x}, s.Sweep, recording.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for i, db := range m.Gated.Level {
		if !(math.Abs(db+20) < 0.05) {
			t.Fatalf("%.2f dB at %.0f Hz, want -20", db, m.Frequency[i])
		}
	}
}

func ExampleNew() {
	p, err := planned()
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := sound.New(p, sound.Options{Start: 30})
	fmt.Println(s.Sweep.Length, err)
	// Output: 0 below the high-pass: it would begin at 30 Hz, the high-pass stands at 150 Hz; a cone can move too far below it
}

// TestLongSilence: half of the silence after a sweep is more than what delays wait for, as for a woofer that is 190 m away,
// and the usual second where all is near.
func TestLongSilence(t *testing.T) {
	near, err := sound.New(demo(t), sound.Options{})
	if err != nil || near.Sweep.Tail != 1 {
		t.Fatalf("%g s, %v", near.Sweep.Tail, err)
	}
	for away, want := range map[float64]float64{190: 3, 500: 5, 900: 7, 5000: sweep.MostSilence} {
		p := *demo(t)
		p.Arrivals = slices.Clone(p.Arrivals)
		for i := range p.Arrivals {
			p.Arrivals[i].Delay += away / p.SpeedOfSound
		}
		if s, err := sound.New(&p, sound.Options{}); err != nil || s.Sweep.Tail != want || want < sweep.MostSilence && s.Sweep.Tail/2 < away/p.SpeedOfSound {
			t.Errorf("%g m: %g s, want %g; %v", away, s.Sweep.Tail, want, err)
		}
	}
}
