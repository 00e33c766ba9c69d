package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"errors"
	"flag"
	"fmt"
	"image/png"
	"io"
	"io/fs"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"runtime/debug"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/preview"
	"pappus/preview/decode"
	"pappus/render/document"
	"pappus/render/outdir"
	"pappus/timing"
)

var (
	designs    = flag.Int("designs", 30, "designs that TestAnyDesign plans")
	designSeed = flag.Uint64("designseed", 1, "seed of the first of them")
	shows      = flag.String("shows", "plan", "what it makes of them: plan, or what any command does that takes a design")
)

// TestAnyDesign: a design that the parser takes is planned, with every file, or refused with the
// file, the line and the key, and what may stand there. No file, screen or answer holds what is
// no number. What fails is told as small as leaving keys out makes it.
func TestAnyDesign(t *testing.T) {
	folder := t.TempDir()
	writeFiles(t, folder)
	if err := os.WriteFile(filepath.Join(folder, "before.toml"), design.DefaultTOML(), 0o600); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(folder, "any.toml")
	if *designs > 100 {
		defer debug.SetGCPercent(debug.SetGCPercent(400)) // a long run has a machine's memory to itself
	}
	refused, begun, longest, slowest := 0, time.Now(), time.Duration(0), uint64(0)
	for seed := *designSeed; seed < *designSeed+uint64(*designs); seed++ {
		d := newDrawer(seed)
		s, _ := d.good(path)
		if d.chance(0.15) {
			s = d.byHand(path, s)
		}
		at := time.Now()
		why, fault := attempt(path, s, seed)
		if took := time.Since(at); took > longest {
			longest, slowest = took, seed
		}
		if why != nil {
			refused++
			t.Logf("seed %d: %v", seed, why)
		}
		if fault != nil {
			t.Errorf("seed %d: %v", seed, fault)
			t.Logf("%s", smaller(path, s, seed, fault))
		}
	}
	t.Logf("%d designs, %d of them refused, in %v; the slowest, seed %d, took %v", *designs, refused, time.Since(begun), slowest, longest)
}

// byHand is a sketch with channels laid out by hand, where its drivers are known.
func (d *drawer) byHand(path string, s sketch) sketch {
	for _, keys := range [][2]string{{"wiring", "channels"}, {"wiring", "split"}, {"wiring", "longest_string"}, {"search", ""}} {
		s = s.without(keys[0], keys[1])
	}
	g, err := design.Parse(path, []byte(s.String()))
	if err != nil {
		return s
	}
	a, err := layout.Build(g)
	if err != nil {
		return s
	}
	n := d.few(4)
	drivers := make([][]string, n)
	for i, m := range a.Mounts[:len(a.Mounts)/len(a.Bodies())] {
		at := d.IntN(n)
		if i < n {
			at = i
		}
		drivers[at] = append(drivers[at], strconv.Itoa(m.ID))
	}
	with := s
	for i, of := range drivers {
		c := section{path: fmt.Sprintf("channel[%d]", i+1), keys: []given{{"drivers", "[" + strings.Join(of, ", ") + "]"}}}
		for _, k := range d.keys["channel"][1:] {
			if d.chance(0.4) {
				c.keys = append(c.keys, given{k.Name, d.value(k)})
			}
		}
		if len(of) > 0 {
			with = append(with[:len(with):len(with)], c)
		}
	}
	if _, err := design.Parse(path, []byte(with.String())); err != nil {
		return s
	}
	return with
}

// patient is how long a design that fails is made smaller.
const patient = 30 * time.Second

// smaller leaves out what a fault is not about.
func smaller(path string, s sketch, seed uint64, fault error) sketch {
	kind, begun := kindOf(fault), time.Now()
	fails := func(s sketch) bool {
		if time.Since(begun) > patient {
			return false
		}
		_, is := attempt(path, s, seed)
		return is != nil && kindOf(is) == kind
	}
	for _, t := range slices.Clone(s) {
		if less := s.without(t.path, ""); fails(less) {
			s = less
			continue
		}
		for _, k := range t.keys {
			if less := s.without(t.path, k.name); fails(less) {
				s = less
			}
		}
	}
	return s
}

// kindOf tells faults apart by their words, without numbers.
func kindOf(fault error) string {
	words := regexp.MustCompile(`[^a-zA-Z.]+`).ReplaceAllString(fault.Error(), " ")
	return words[:min(len(words), 40)]
}

// attempt makes all that a command makes of a design: why it refuses to, and what is wrong with
// what it made or with the words of the refusal.
func attempt(path string, s sketch, seed uint64) (why, fault error) {
	defer func() {
		if p := recover(); p != nil {
			fault = fmt.Errorf("panic: %v\n%s", p, debug.Stack())
		}
	}()
	if err := os.WriteFile(path, []byte(s.String()), 0o600); err != nil {
		return nil, err
	}
	if *shows != "plan" {
		return command(path, s.String(), seed%2 == 1)
	}
	plan, err := new(flags).planOf(context.Background(), nil, path)
	if err != nil {
		return err, helps(path, s.String(), err)
	}
	o, err := planned(nil, plan)
	if err != nil {
		return err, helps(path, s.String(), err)
	}
	return nil, unspoiled(plan, o, rand.New(rand.NewPCG(seed, 3)))
}

// moreFlags are those that make a command quick, or make it take more of its ways.
var moreFlags = map[string][]string{"tolerance": {"--runs", "59"}, "sweep": {"--length-s", "1"}, "rehearse": {"--rehearse", "--length-s", "1"},
	"measure": {"--length-s", "1"}, "impedance": {"--channel", "1"}, "fit": {"--write", "--anyway"}, "listen": {"--programme", "clicks"}}

// soon is when a search is stopped, which then offers what it has found.
const soon = 3 * time.Second

// command runs a command on a design, for people or for programs, and looks at all that it wrote.
func command(path, text string, json bool) (why, fault error) {
	folder := filepath.Dir(path)
	into, before := filepath.Join(folder, "out"), filepath.Join(folder, "before.toml")
	if err := os.RemoveAll(into); err != nil {
		return nil, err
	}
	ctx, args := context.Background(), arguments(path, json)
	switch *shows {
	case "measure":
		made := filepath.Join(folder, "recorded")
		if err := os.RemoveAll(made); err != nil {
			return nil, err
		}
		if err := silently(ctx, io.Discard, "sweep", path, "-o", made, "--rehearse", "--length-s", "1"); err != nil {
			return err, helps(path, text, err)
		}
		args = append(args, "-i", made)
	case "search":
		within, end := context.WithTimeout(ctx, soon)
		defer end()
		ctx = within
	}
	var out bytes.Buffer
	if err := silently(ctx, &out, args...); err != nil && ctx.Err() == nil {
		return err, helps(path, text, err)
	}
	if at := noNumber(out.Bytes()); at >= 0 {
		return nil, fmt.Errorf("%s: %q: %s", *shows, out.Bytes()[at:at+3], out.String())
	}
	if err := readAll(into); err != nil && (ctx.Err() == nil || !errors.Is(err, fs.ErrNotExist)) { // stopped when nothing was found
		return nil, err
	}
	return nil, os.WriteFile(before, []byte(text), 0o600)
}

// arguments are what a command is called with that makes all that it can of a design.
func arguments(path string, json bool) []string {
	folder := filepath.Dir(path)
	args := append([]string{*shows, path, "-o", filepath.Join(folder, "out"), fmt.Sprintf("--json=%t", json)}, moreFlags[*shows]...)
	switch *shows {
	case "compare": // with the good one of before
		args = slices.Insert(args, 2, filepath.Join(folder, "before.toml"))
	case "drivers":
		args = slices.Insert(args, 1, filepath.Join(folder, "drivers"))
	case "impedance", "fit":
		args[0] = "impedance"
		args = slices.Insert(args, 1, filepath.Join(folder, "drivers", "a.csv"))
	case "rehearse":
		args[0] = "sweep"
	}
	return args
}

// silently runs a command that says nothing but its answer.
func silently(ctx context.Context, out io.Writer, args ...string) error {
	root := newRoot()
	root.SetArgs(args)
	root.SetOut(out)
	root.SetErr(io.Discard)
	return root.ExecuteContext(ctx)
}

// readAll tells what is wrong with the files of a folder.
func readAll(folder string) error {
	return filepath.WalkDir(folder, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		if err == nil && !strings.HasPrefix(d.Name(), ".") {
			err = read(d.Name(), data)
		}
		if err != nil {
			return fmt.Errorf("%s: %w", d.Name(), err)
		}
		return nil
	})
}

// helps tells what an error lacks that says what is wrong with a design.
func helps(path, text string, err error) error {
	var e *design.Error
	switch {
	case !errors.As(err, &e):
		return fmt.Errorf("an error of another kind, %T: %w", err, err)
	case filepath.Dir(e.File) != filepath.Dir(path) || e.Key == "" || e.Line == 0 && strings.Contains(text, "["+strings.SplitN(e.Key, ".", 2)[0]):
		return fmt.Errorf("an error without file, line or key: %w", err)
	case !says.MatchString(e.Reason):
		return fmt.Errorf("an error that does not say what may stand there: %w", err)
	}
	return nil
}

var says = regexp.MustCompile(`must|did you mean|leave|only|at least|at most|left out|give`)

// unspoiled tells what is wrong with the files of an outcome, its screen and its answer. Sounds, maps
// and pictures as dots, which take longest, are made of a part of the designs.
func unspoiled(p *timing.Plan, o outcome, r *rand.Rand) error {
	heard, dots, maps := r.IntN(100) == 0, r.IntN(40) == 0, r.IntN(20) == 0
	for _, f := range o.files {
		sounds := strings.HasPrefix(f.Name, "spectrogram") || strings.HasPrefix(f.Name, "impulse") || filepath.Ext(f.Name) == ".wav"
		if sounds && !heard || filepath.Ext(f.Name) == ".png" && !dots || strings.HasPrefix(f.Name, "coverage") && !maps {
			continue
		}
		if err := whole(f); err != nil {
			return fmt.Errorf("%s: %w", f.Name, err)
		}
	}
	var out bytes.Buffer
	if err := o.screen(&out, false); err != nil {
		return fmt.Errorf("screen: %w", err)
	}
	if at := noNumber(out.Bytes()); at >= 0 {
		return fmt.Errorf("screen: %q: %s", out.Bytes()[at:at+3], out.String())
	}
	if err := document.Write(io.Discard, o.json(document.Written{})); err != nil {
		return fmt.Errorf("answer: %w", err)
	}
	if !heard {
		return nil
	}
	_, first, clicks := preview.SoundFiles(&p.Spot)
	for _, made := range []func() ([]preview.Sound, error){first, clicks} {
		sounds, err := made()
		if err != nil {
			return fmt.Errorf("sounds: %w", err)
		}
		for _, s := range sounds {
			if i := slices.IndexFunc(s.Samples, func(v float64) bool { return math.IsNaN(v) || math.IsInf(v, 0) }); i >= 0 {
				return fmt.Errorf("sound %q has %g at %d", s.Words, s.Samples[i], i)
			}
		}
	}
	return nil
}

// odd is what stands where a number is none, or where words were put together wrongly; odds is how
// that begins, with the letter before it.
var (
	odd  = regexp.MustCompile(`(?i)\bnan\b|\binf\b|%!.|e[+-]\d\d\d`)
	odds = [256]bool{'n': true, 'N': true, 'i': true, 'I': true, '%': true, 'e': true, 'E': true}
)

// noNumber is where a text has something odd; -1 where nowhere. It is told from a few letters, since
// nine tenths of the time of looking through files would go into the expression.
func noNumber(text []byte) int {
	for i, c := range text[:max(0, len(text)-2)] {
		if !odds[c] || c != '%' && text[i+1]|0x20 != 'a' && text[i+1]|0x20 != 'n' && text[i+1] != '+' && text[i+1] != '-' {
			continue
		}
		from := max(0, i-1)
		if at := odd.FindIndex(text[from:min(len(text), i+6)]); at != nil {
			return from + at[0]
		}
	}
	return -1
}

// whole writes a file and tells what is wrong with it.
func whole(f outdir.File) error {
	var out bytes.Buffer
	if err := f.Write(&out); err != nil {
		return err
	}
	return read(f.Name, out.Bytes())
}

// packed are pictures within a picture.
var packed = regexp.MustCompile(`base64,[^"]*`)

// read tells what is wrong with a file of that name.
func read(name string, data []byte) error {
	if len(data) == 0 {
		return errors.New("empty")
	}
	switch filepath.Ext(name) {
	case ".json":
		if !json.Valid(data) {
			return errors.New("no JSON")
		}
	case ".csv":
		if _, err := csv.NewReader(bytes.NewReader(data)).ReadAll(); err != nil {
			return err
		}
	case ".svg":
		for in := xml.NewDecoder(bytes.NewReader(data)); ; {
			if _, err := in.Token(); err == io.EOF {
				break
			} else if err != nil {
				return err
			}
		}
		data = packed.ReplaceAll(data, nil)
	case ".png":
		_, err := png.DecodeConfig(bytes.NewReader(data))
		return err
	case ".wav":
		_, channels, err := decode.ReadChannels(bytes.NewReader(data))
		for _, c := range channels {
			if i := slices.IndexFunc(c, func(v float64) bool { return math.IsNaN(v) || math.Abs(v) > 1e6 }); i >= 0 {
				return fmt.Errorf("sample %d is %g", i, c[i])
			}
		}
		return err
	default:
		return nil
	}
	if at := noNumber(data); at >= 0 {
		return fmt.Errorf("%q: %s", data[at:at+3], data[max(0, at-80):min(len(data), at+20)])
	}
	return nil
}

// TestNoNumber: what is odd is found wherever it stands, and words that hold its letters are not.
func TestNoNumber(t *testing.T) {
	for text, want := range map[string]int{
		"NaN": 0, "x,nan\n": 2, "-Inf": 1, "a +inf": 3, "5 %!d(": 2, "1e-300": 1, "1e+308 Hz": 1,
		"nano": -1, "banana": -1, "info": -1, "1e-30": -1, "50 %": -1, "inferno in": -1, "": -1, "na": -1,
	} {
		if got := noNumber([]byte(text)); got != want {
			t.Errorf("%q: at %d, want %d", text, got, want)
		}
	}
}
