package main

import (
	"errors"
	"fmt"
	"math"
	"math/cmplx"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
)

// sketch is a design's text as its tables with their keys, in order.
type sketch []section

// section is one table of a sketch.
type section struct {
	path string // empty at the top; seat[2] for the second [[seat]]
	keys []given
}

// given is a key with what stands behind its equals sign.
type given struct{ name, value string }

func (s sketch) String() string {
	var out strings.Builder
	for _, t := range s {
		if name, _, many := strings.Cut(t.path, "["); many {
			fmt.Fprintf(&out, "\n[[%s]]\n", name)
		} else if t.path != "" {
			fmt.Fprintf(&out, "\n[%s]\n", t.path)
		}
		for _, k := range t.keys {
			fmt.Fprintf(&out, "%s = %s\n", k.name, k.value)
		}
	}
	return out.String()
}

// without is the sketch without a key, or without a whole table where name is empty.
func (s sketch) without(path, name string) sketch {
	out := sketch{}
	for _, t := range s {
		if t.path == path && name == "" {
			continue
		}
		if t.path == path {
			t.keys = slices.DeleteFunc(slices.Clone(t.keys), func(k given) bool { return k.name == name })
		}
		out = append(out, t)
	}
	return out
}

// drawer draws designs that the parser takes, by the rows of keys that package design has.
type drawer struct {
	*rand.Rand
	keys map[string][]design.Key // of each table
	big  bool                    // several times as many drivers, seats and cells
	more float64                 // how likely a key is that need not be there
}

func newDrawer(seed uint64) *drawer {
	d := &drawer{Rand: rand.New(rand.NewPCG(seed, 2)), keys: map[string][]design.Key{}}
	for _, k := range design.Keys() {
		d.keys[k.Table] = append(d.keys[k.Table], k)
	}
	d.big, d.more = d.IntN(200) == 0, 0.05+0.4*d.Float64()*d.Float64()
	return d
}

func (d *drawer) chance(p float64) bool { return d.Float64() < p }

// few is a small number, more seldom a larger one, up to most.
func (d *drawer) few(most int) int { return 1 + int(float64(most)*math.Pow(d.Float64(), 3)) }

// sketch draws a design that need not be a good one.
func (d *drawer) sketch() sketch {
	var out sketch
	for _, g := range design.Tables() {
		n := 1
		switch {
		case g.Name == "channel": // they hang on the drivers that there are
			n = 0
		case g.Many && d.chance(0.2):
			n = d.few(3)
		case g.Many, g.Optional && !d.chance(0.3), g.Name == "spot" && len(out) > 0 && d.chance(0.1):
			n = 0
		}
		for i := range n {
			path := g.Name
			if g.Many {
				path = fmt.Sprintf("%s[%d]", g.Name, i+1)
			}
			t := section{path: path}
			for _, k := range d.keys[g.Name] {
				if k.Needed || k.Path == "coverage.cells" || k.Path == "room.order" || d.chance(d.more) {
					t.keys = append(t.keys, given{k.Name, d.value(k)})
				}
			}
			out = append(out, t)
		}
	}
	return out
}

// mostOf are what keeps a design quick to plan.
var mostOf = map[string]float64{
	"mounts.count": 24, "coverage.cells": 12, "body.subdivision": 2, "body.m": 2, "body.n": 1, "body.sides": 8, "room.order": 2, "area.count": 4,
	"wiring.channels": 12, "mounts.symmetry": 6, "timing.solve_to_hz": 700, "body.radius_mm": 250, "driver.diameter_mm": 80,
}

// usual are words and numbers of which others are drawn seldom.
var usual = map[string]string{"timing.model": `"sphere"`, "body.dual": "false", "mounts.on": `"faces"`}

// small are bodies of few faces.
var small = []string{"tetrahedron", "cube", "octahedron", "dodecahedron", "cuboctahedron", "prism", "antiprism", "ball", "truncated tetrahedron"}

// value draws what may stand behind a key.
func (d *drawer) value(k design.Key) string {
	if v := usual[k.Path]; v != "" && d.chance(0.6) {
		return v
	}
	switch k.Kind {
	case design.Flag:
		return strconv.FormatBool(d.IntN(2) == 0)
	case design.Choice:
		if k.Path == "timing.model" && !d.chance(0.02) { // solving takes seconds
			return strconv.Quote(k.Choices[d.IntN(3)])
		}
		if k.Path == "body.shape" && !d.big && d.chance(0.7) {
			return strconv.Quote(small[d.IntN(len(small))])
		}
		return strconv.Quote(k.Choices[d.IntN(len(k.Choices))])
	case design.Text:
		return d.text(k)
	case design.List:
		return d.list(k)
	case design.Whole:
		if k.Choices != nil {
			return k.Choices[d.IntN(len(k.Choices))]
		}
		return strconv.Itoa(int(math.Round(d.number(k))))
	}
	v := d.number(k)
	if d.chance(0.8) {
		if short, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 3, 64), 64); short >= k.Low && short <= k.High {
			v = short
		}
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// number draws a number in a key's range: often its edges and its default, else each size of
// number as likely as another.
func (d *drawer) number(k design.Key) float64 {
	low, high := k.Low, k.High
	if most, capped := mostOf[k.Path]; capped && d.big {
		high = min(high, 3*most)
	} else if capped {
		high = max(low, most)
	}
	byDefault, has := k.Default.(float64)
	switch n := d.IntN(20); {
	case n == 0:
		return low
	case n == 1:
		return high
	case n < 6 && has && byDefault <= high:
		return byDefault
	}
	if low > 0 {
		return low * math.Pow(high/low, d.Float64())
	}
	v := max(-low, high) * math.Pow(1e-3, d.Float64())
	if v > high || low < 0 && d.IntN(2) == 0 {
		v = -v
	}
	return min(max(v, low), high)
}

// names are what people call things, and what other programs trip over.
var names = []string{"Ball", "cushion by the window", "seat, \"left\"", "<b>&amp;", "ähm — ½ µ", "=1+1", "日本", "a%sb", "100 %", "..", "x\\y", "'"}

// text draws a name, or that of a file that files writes.
func (d *drawer) text(k design.Key) string {
	switch k.Name {
	case "response", "impedance", "list":
		return strconv.Quote(k.Name + ".csv")
	case "file":
		return strconv.Quote([]string{"pyramid.off", "pyramid.stl"}[d.IntN(2)])
	}
	return strconv.Quote(names[d.IntN(len(names))])
}

// list draws a list of numbers.
func (d *drawer) list(k design.Key) string {
	several := func(n int) string {
		var out []string
		for range n {
			out = append(out, strconv.FormatFloat(math.Round(1000*d.number(k))/1000, 'f', -1, 64))
		}
		return "[" + strings.Join(out, ", ") + "]"
	}
	switch {
	case strings.HasSuffix(k.Name, "absorption"):
		if d.IntN(2) == 0 {
			return several(7)
		}
		return strings.Trim(several(1), "[]")
	case k.Name == "keep_clear_deg":
		return fmt.Sprintf("[[%d, %d, %d]]", d.IntN(721)-360, d.IntN(181)-90, 1+d.IntN(40))
	case k.Name == "skip", k.Name == "drivers":
		return fmt.Sprintf("[%d, %d]", 1+d.IntN(4), 5+d.IntN(9))
	case k.Name == "aims":
		return `["loss", "cost"]`
	}
	return several(3)
}

// files are what a design may name, beside it.
var files = map[string]string{
	"response.csv":  "frequency_hz,level_db,phase_deg\n100,-12,90\n500,0,10\n5000,1,-20\n20000,-9,-170\n",
	"impedance.csv": "frequency_hz,ohm,degrees\n20,7.4,3\n150,21,10\n160,22,0\n1000,8,-2\n20000,14,40\n",
	"list.csv":      "x_mm,y_mm,z_mm,nx,ny,nz\n0,0,100,0,0,1\n100,0,0,1,0,0\n0,100,0,0,1,0\n",
	"pyramid.off":   "OFF\n5 5 8\n60 60 -30\n-60 60 -30\n-60 -60 -30\n60 -60 -30\n0 0 90\n3 0 1 4\n3 1 2 4\n3 2 3 4\n3 3 0 4\n4 3 2 1 0\n",
	"pyramid.stl": "solid a\nfacet normal 0 0 0\nouter loop\nvertex 0 0 90\nvertex 60 0 -30\nvertex 0 60 -30\nendloop\nendfacet\nfacet normal 0 0 0\nouter loop\nvertex 0 0 90\nvertex 0 60 -30\nvertex -60 -60 -30\nendloop\nendfacet\n" +
		"facet normal 0 0 0\nouter loop\nvertex 0 0 90\nvertex -60 -60 -30\nvertex 60 0 -30\nendloop\nendfacet\nfacet normal 0 0 0\nouter loop\nvertex 0 60 -30\nvertex 60 0 -30\nvertex -60 -60 -30\nendloop\nendfacet\nendsolid a\n",
}

// writeFiles puts files into a folder, and drivers that were measured into one in it.
func writeFiles(t testing.TB, folder string) {
	if err := os.Mkdir(filepath.Join(folder, "drivers"), 0o700); err != nil {
		t.Fatal(err)
	}
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for i, name := range []string{"a", "b", "c", "d"} {
		if err := os.WriteFile(filepath.Join(folder, "drivers", name+".csv"), resonating(150+10*float64(i)), 0o600); err != nil {
			t.Fatal(err)
		}
	}
}

// resonating is the table of a driver's impedance that resonates at a frequency in Hz: 6 ohm, and 30
// with a Q of 5 beside them.
func resonating(resonance float64) []byte {
	out := []byte("frequency_hz,ohm,degrees\n")
	for f := 20.0; f < 20000; f *= 1.1 {
		z := 6 + 30/complex(1, 5*(f/resonance-resonance/f))
		out = fmt.Appendf(out, "%.2f,%.4f,%.3f\n", f, cmplx.Abs(z), cmplx.Phase(z)*180/math.Pi)
	}
	return out
}

// longestWay is how many changes make a design good, or another is drawn.
const longestWay = 60

// good draws until the parser takes a design, and mostly until it can be laid out: what an error
// names is drawn again, put in where it is missing and else left out.
func (d *drawer) good(path string) (sketch, *design.Design) {
	for laid := d.chance(0.9); ; {
		s := d.sketch()
		for range longestWay {
			got, err := design.Parse(path, []byte(s.String()))
			if err == nil && laid {
				_, err = layout.Build(got)
			}
			var e *design.Error
			if !errors.As(err, &e) {
				return s, got
			}
			s = d.mended(s, e)
		}
	}
}

// mended is a sketch without what an error is about, or with it.
func (d *drawer) mended(s sketch, e *design.Error) sketch {
	table, name := "", e.Key
	if at := strings.LastIndexByte(e.Key, '.'); at >= 0 {
		table, name = e.Key[:at], e.Key[at+1:]
	}
	if i := slices.IndexFunc(s, func(t section) bool { return t.path == e.Key }); i >= 0 && table == "" {
		return s.without(e.Key, "") // a table that may not be there
	}
	plain, _, _ := strings.Cut(table, "[")
	k := slices.IndexFunc(d.keys[plain], func(k design.Key) bool { return k.Name == name })
	if k < 0 {
		return d.sketch()
	}
	s = s.without(table, name)
	if !errors.Is(e.Err, design.ErrMissing) && (errors.Is(e.Err, design.ErrIdle) || !d.keys[plain][k].Needed && d.chance(0.5)) {
		return s
	}
	i := slices.IndexFunc(s, func(t section) bool { return t.path == table })
	if i < 0 {
		s = append(s, section{path: table})
		i = len(s) - 1
	}
	s[i].keys = append(slices.Clone(s[i].keys), given{name, d.value(d.keys[plain][k])})
	return s
}
