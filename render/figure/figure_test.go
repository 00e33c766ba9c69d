package figure_test

import (
	"bytes"
	"context"
	"encoding/base64"
	"encoding/xml"
	"errors"
	"flag"
	"image/png"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/render/figure"
	"pappus/render/words"
	"pappus/timing"
)

var keep = flag.String("keep", "", "folder to leave the pictures in, to be looked at")

type demo struct {
	plan            *timing.Plan
	above, sideways *timing.Coverage
}

// lantern is the demo design, computed once.
var lantern = sync.OnceValues(func() (demo, error) {
	d := design.Default()
	a, err := layout.Build(d)
	if err != nil {
		return demo{}, err
	}
	a.Coverage.Cells = 60
	p, err := timing.Make(context.Background(), a)
	if err != nil {
		return demo{}, err
	}
	above, err := timing.Cover(&p.Spot, timing.HorizontalSlice(&p.Spot))
	if err != nil {
		return demo{}, err
	}
	sideways, err := timing.Cover(&p.Spot, timing.VerticalSlice(&p.Spot))
	return demo{p, above, sideways}, err
})

type picture struct {
	name string
	draw func(io.Writer, figure.Format) error
}

func pictures(t testing.TB) []picture {
	t.Helper()
	d, err := lantern()
	if err != nil {
		t.Fatal(err)
	}
	p := d.plan
	second := *p
	array := *p.Array
	array.Name = "The same without delays"
	second.Array, second.Response.Aligned = &array, p.Response.Unaligned
	open := figure.CombOnset(d.above)
	open.Values = slices.Clone(open.Values)
	for i, v := range open.Values {
		if v > 2000 {
			open.Values[i] = math.Inf(1)
		}
	}
	type form = figure.Format
	return []picture{
		{"response", func(w io.Writer, f form) error { return figure.Response(w, f, p) }},
		{"compare", func(w io.Writer, f form) error { return figure.Compare(w, f, []*timing.Plan{p, &second}) }},
		{"phase", func(w io.Writer, f form) error { return figure.Phase(w, f, p) }},
		{"arrivals", func(w io.Writer, f form) error { return figure.Arrivals(w, f, p) }},
		{"horizontal", func(w io.Writer, f form) error { return figure.Polar(w, f, p, p.Horizontal, false) }},
		{"vertical", func(w io.Writer, f form) error { return figure.Polar(w, f, p, p.Vertical, true) }},
		{"level", func(w io.Writer, f form) error { return figure.Coverage(w, f, p, d.above, figure.Level(d.above, 4)) }},
		{"smear", func(w io.Writer, f form) error { return figure.Coverage(w, f, p, d.sideways, figure.Smear(d.sideways)) }},
		{"comb", func(w io.Writer, f form) error { return figure.Coverage(w, f, p, d.above, figure.CombOnset(d.above)) }},
		{"open", func(w io.Writer, f form) error { return figure.Coverage(w, f, p, d.above, open) }},
	}
}

func TestPNG(t *testing.T) {
	for _, pic := range pictures(t) {
		t.Run(pic.name, func(t *testing.T) {
			t.Parallel()
			var out bytes.Buffer
			if err := pic.draw(&out, figure.PNG); err != nil {
				t.Fatal(err)
			}
			leave(t, pic.name+".png", out.Bytes())
			img, err := png.Decode(&out)
			if err != nil {
				t.Fatal(err)
			}
			size := img.Bounds().Size()
			if size.X != 1400 || size.Y != 900 {
				t.Errorf("size %v, want 1400 by 900", size)
			}
			marked := 0
			for y := range size.Y {
				for x := range size.X {
					r, g, b, _ := img.At(x, y).RGBA()
					if min(r, g, b) < 0xb000 {
						marked++
					}
				}
			}
			if marked < 5000 {
				t.Errorf("only %d dots are marked: as good as blank", marked)
			}
		})
	}
}

func TestSVG(t *testing.T) {
	embedded := regexp.MustCompile(`base64,([A-Za-z0-9+/=]+)`)
	for _, pic := range pictures(t) {
		t.Run(pic.name, func(t *testing.T) {
			t.Parallel()
			var out bytes.Buffer
			if err := pic.draw(&out, figure.SVG); err != nil {
				t.Fatal(err)
			}
			leave(t, pic.name+".svg", out.Bytes())
			if out.Len() > 300_000 {
				t.Errorf("%d bytes, want 300 kB at most", out.Len())
			}
			for _, found := range embedded.FindAllSubmatch(out.Bytes(), -1) {
				raw, err := base64.StdEncoding.DecodeString(string(found[1]))
				if err != nil {
					t.Fatal(err)
				}
				if _, err := png.Decode(bytes.NewReader(raw)); err != nil {
					t.Error(err)
				}
			}
			if n := elements(t, &out); n < 40 {
				t.Errorf("only %d elements", n)
			}
		})
	}
}

// elements counts the paths, words and images of an SVG.
func elements(t *testing.T, r io.Reader) int {
	t.Helper()
	n := 0
	for d := xml.NewDecoder(r); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return n
		}
		if err != nil {
			t.Fatal(err)
		}
		if e, ok := token.(xml.StartElement); ok {
			switch e.Name.Local {
			case "path", "text", "image":
				n++
			}
		}
	}
}

func leave(t *testing.T, name string, data []byte) {
	t.Helper()
	if *keep == "" {
		return
	}
	if err := os.WriteFile(filepath.Join(*keep, name), data, 0o644); err != nil {
		t.Fatal(err)
	}
}

// TestSameBytes draws each picture twice at once.
func TestSameBytes(t *testing.T) {
	for _, pic := range pictures(t) {
		var out [2]bytes.Buffer
		var group sync.WaitGroup
		for i := range out {
			group.Go(func() {
				if err := pic.draw(&out[i], figure.PNG); err != nil {
					t.Error(err)
				}
			})
		}
		group.Wait()
		if !bytes.Equal(out[0].Bytes(), out[1].Bytes()) {
			t.Errorf("%s: two drawings differ", pic.name)
		}
	}
}

func TestErrors(t *testing.T) {
	d, err := lantern()
	if err != nil {
		t.Fatal(err)
	}
	empty := &timing.Plan{Spot: timing.Spot{Array: d.plan.Array}}
	for _, test := range []struct {
		name string
		want string
		got  error
	}{
		{"format", "no such picture format", figure.Response(io.Discard, "bmp", d.plan)},
		{"response", "nothing to draw", figure.Response(io.Discard, figure.PNG, empty)},
		{"compare", "nothing to draw", figure.Compare(io.Discard, figure.PNG, []*timing.Plan{empty})},
		{"no plans", "nothing to draw", figure.Compare(io.Discard, figure.PNG, nil)},
		{"phase", "nothing to draw", figure.Phase(io.Discard, figure.PNG, empty)},
		{"arrivals", "nothing to draw", figure.Arrivals(io.Discard, figure.PNG, empty)},
		{"polar", "nothing to draw", figure.Polar(io.Discard, figure.PNG, empty, empty.Horizontal, false)},
		{"slice", "nothing to draw", figure.Coverage(io.Discard, figure.PNG, d.plan, &timing.Coverage{}, figure.Quantity{})},
		{"values", "do not match", figure.Coverage(io.Discard, figure.PNG, d.plan, d.above, figure.Quantity{Values: make([]float64, 3)})},
	} {
		if test.got == nil || !strings.Contains(test.got.Error(), test.want) {
			t.Errorf("%s: got %v, want %q", test.name, test.got, test.want)
		}
	}
}

// TestOddValues draws what a calculation may leave behind: infinities, no
// numbers, constants.
func TestOddValues(t *testing.T) {
	d, err := lantern()
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range []float64{math.Inf(1), math.Inf(-1), math.NaN(), 0, 1500} {
		for _, log := range []bool{false, true} {
			q := figure.Quantity{Name: "test", Unit: "Hz", Log: log, Low: math.NaN(), High: math.NaN()}
			q.Values = filled(len(d.above.Smear), v)
			if err := figure.Coverage(io.Discard, figure.SVG, d.plan, d.above, q); err != nil {
				t.Errorf("slice of %g: %v", v, err)
			}
		}
		p := *d.plan
		p.Response.Aligned = filled(len(p.Response.Frequency), v)
		if err := figure.Response(io.Discard, figure.SVG, &p); err != nil {
			t.Errorf("response of %g: %v", v, err)
		}
		round := timing.Polar{Angle: []float64{-2, 0, 2}, Band: []float64{1000}, Aligned: [][]float64{filled(3, v)}}
		if err := figure.Polar(io.Discard, figure.SVG, d.plan, round, false); err != nil {
			t.Errorf("polar of %g: %v", v, err)
		}
	}
}

func filled(n int, v float64) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = v
	}
	return out
}

func BenchmarkPNG(b *testing.B) {
	for _, pic := range pictures(b) {
		b.Run(pic.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := pic.draw(io.Discard, figure.PNG); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// TestSilentSpot: where no sound comes to the spot each picture of it says so.
func TestSilentSpot(t *testing.T) {
	d, err := lantern()
	if err != nil {
		t.Fatal(err)
	}
	p := *d.plan
	p.Arrivals = slices.Clone(p.Arrivals)
	for i := range p.Arrivals {
		p.Arrivals[i].Level, p.Arrivals[i].Field = math.Inf(-1), math.NaN()
	}
	p.Response.Aligned = filled(len(p.Response.Frequency), math.Inf(-1))
	p.Phase.Aligned.Angle, p.Phase.Aligned.Group = filled(len(p.Phase.Frequency), math.NaN()), filled(len(p.Phase.Frequency), math.NaN())
	silent := timing.Polar{Angle: []float64{-2, 0, 2}, Band: []float64{1000}, Aligned: [][]float64{filled(3, math.Inf(-1))}}
	for _, test := range []struct {
		name string
		draw func(w io.Writer) error
	}{
		{"response", func(w io.Writer) error { return figure.Response(w, figure.SVG, &p) }},
		{"phase", func(w io.Writer) error { return figure.Phase(w, figure.SVG, &p) }},
		{"arrivals", func(w io.Writer) error { return figure.Arrivals(w, figure.SVG, &p) }},
		{"ways", func(w io.Writer) error { return figure.Ways(w, figure.SVG, &p) }},
		{"polar", func(w io.Writer) error { return figure.Polar(w, figure.SVG, &p, silent, false) }},
		{"impulse", func(w io.Writer) error {
			return figure.Energy(w, figure.SVG, "", []figure.Sound{{Words: "aligned", Samples: make([]float64, 99)}}, 8000)
		}},
	} {
		t.Run(test.name, func(t *testing.T) {
			var b bytes.Buffer
			if err := test.draw(&b); err != nil {
				t.Fatal(err)
			}
			if !strings.Contains(b.String(), words.NoSound) {
				t.Error("the picture says nothing")
			}
		})
	}
}
