package intake

import (
	"context"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// codes lists why drivers are rejected, by name.
func codes(l *Lot) map[string][]Code {
	out := map[string][]Code{}
	for _, d := range l.Drivers {
		for _, r := range d.Reasons {
			out[d.Name] = append(out[d.Name], r.Code)
		}
	}
	return out
}

// TestFolder: a folder as it may be: odd drivers, broken, copied, doubled and other files.
func TestFolder(t *testing.T) {
	dir, random := t.TempDir(), rand.New(rand.NewPCG(1, 1))
	for i := 1; i <= 12; i++ {
		drawn(random, 0.02).table(t, dir, fmt.Sprintf("driver %d.csv", i), random)
	}
	loose := designed
	loose.fs, loose.qms, loose.qes = 115, 2.5, 0.9
	loose.table(t, dir, "driver 13.csv", random)
	wire := designed
	wire.re, wire.qes = 8.4, 1.3
	wire.table(t, dir, "driver 14.csv", random)
	data, err := os.ReadFile(filepath.Join(dir, "driver 3.csv"))
	if err != nil {
		t.Fatal(err)
	}
	write(t, filepath.Join(dir, "driver 15.csv"), string(data))
	write(t, filepath.Join(dir, "driver 16.csv"), "frequency_hz,ohm\n20,7\n")
	write(t, filepath.Join(dir, "driver 17.zma"), "20 8 0\n2000 8 0\n")
	write(t, filepath.Join(dir, "driver 2.zma"), "20 7 0\n40 7 0\n")
	write(t, filepath.Join(dir, "notes.pdf"), "bought in spring")
	write(t, filepath.Join(dir, ".hidden"), "")
	if err := os.Mkdir(filepath.Join(dir, "old"), 0o700); err != nil {
		t.Fatal(err)
	}
	l := read(t, dir)
	want := map[string][]Code{"driver 13": {Odd, Odd}, "driver 14": {Odd}, "driver 15": {Copy}, "driver 16": {Unreadable}, "driver 17": {Unreadable}}
	if diff := cmp.Diff(want, codes(l)); diff != "" {
		t.Error(diff)
	}
	if l.Drivers[1].Name != "driver 2" || l.Drivers[9].Name != "driver 10" {
		t.Errorf("the second is %s, the tenth %s", l.Drivers[1].Name, l.Drivers[9].Name)
	}
	if diff := cmp.Diff([]Reason{{Code: Second, Other: "driver 2.zma"}}, l.Drivers[1].Notes); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]string{".hidden", "notes.pdf", "old"}, l.Ignored); diff != "" {
		t.Error(diff)
	}
	if m := l.Middles[Resonance]; math.Abs(m.Value/150-1) > 0.03 || m.Scatter < 0.005 || m.Scatter > 0.04 || m.Count != 14 {
		t.Errorf("%+v", m)
	}
	if !math.IsNaN(l.Middles[Level].Value) {
		t.Error("a level without recordings")
	}
}

// TestErrors: folders that hold nothing to judge.
func TestErrors(t *testing.T) {
	empty, broken := t.TempDir(), t.TempDir()
	write(t, filepath.Join(broken, "a.csv"), "nothing")
	tests := []struct{ name, folder, says string }{
		{"none", filepath.Join(empty, "none"), "none"},
		{"empty", empty, "has no table"},
		{"all broken", broken, "a.csv"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if _, err := source(t, test.folder).Read(t.Context()); err == nil || !strings.Contains(err.Error(), test.says) {
				t.Errorf("%v, want one that says %q", err, test.says)
			}
		})
	}
	if _, err := source(t, empty).Read(t.Context()); !errors.Is(err, ErrNone) {
		t.Errorf("%v", err)
	}
	ctx, stop := context.WithCancel(t.Context())
	stop()
	designed.table(t, empty, "a.csv", rand.New(rand.NewPCG(1, 1)))
	if _, err := source(t, empty).Read(ctx); !errors.Is(err, context.Canceled) {
		t.Errorf("%v", err)
	}
}

// TestHeard: level, time, polarity and response of recordings against the middle.
func TestHeard(t *testing.T) {
	dir, random, s := t.TempDir(), rand.New(rand.NewPCG(2, 2)), short(t)
	for i := range 9 {
		m := designed
		m.level = []float64{0.2, -0.2, 0, 0.1, -0.1, 0, 0, 0, -3.5}[i]
		m.late = []float64{0, 0, 40e-6, 0, 0, 0, 0, 0, 0}[i]
		m.reversed, m.wavy = i == 4, i == 6
		m.record(t, s, dir, fmt.Sprintf("%d_heard.wav", i+1), random)
	}
	write(t, filepath.Join(dir, "10_heard.wav"), "")
	l := read(t, dir)
	want := map[string][]Code{"7": {Odd}, "9": {Odd}, "10": {Unreadable}}
	if diff := cmp.Diff(want, codes(l)); diff != "" {
		t.Error(diff)
	}
	for i, d := range l.Drivers[:9] {
		if level := []float64{0.2, -0.2, 0, 0.1, -0.1, 0, 0, 0, -3.5}[i]; i != 6 && !(math.Abs(d.Heard.Level-level) <= 0.1) {
			t.Errorf("%s: %.3f dB, want %g", d.Name, d.Heard.Level, level)
		}
		if late := []float64{0, 0, 40e-6}[min(i, 2)]; i < 3 && !(math.Abs(d.Heard.Late-late) <= 3e-6) {
			t.Errorf("%s: %g s, want %g", d.Name, d.Heard.Late, late)
		}
		if d.Heard.Reversed != (i == 4) {
			t.Errorf("%s: reversed %v", d.Name, d.Heard.Reversed)
		}
	}
	if r := l.Drivers[6].Reasons[0]; r.Value != Response || r.Is < 1.5 {
		t.Errorf("%+v", r)
	}
}

// TestManyChannels: a microphone and a wire are heard, a third channel is refused.
func TestManyChannels(t *testing.T) {
	s := Source{}
	s.Impedance.Decode = func(string) (int, [][]float64, error) { return rate, make([][]float64, 3), nil }
	if err := s.hear(nil, 0, "three.wav"); err == nil || !strings.Contains(err.Error(), "three.wav: 3 channels, must be 1 or 2") {
		t.Errorf("%v", err)
	}
}

// TestFew: one to four drivers are held against the design, if there is one.
func TestFew(t *testing.T) {
	for n := 1; n < fewest; n++ {
		dir, random := t.TempDir(), rand.New(rand.NewPCG(3, uint64(n)))
		for i := range n {
			m := designed
			if i == 0 {
				m.fs = 190
			}
			m.table(t, dir, fmt.Sprintf("%c.csv", 'a'+i), random)
		}
		l := read(t, dir)
		if len(codes(l)) != 0 {
			t.Errorf("%d drivers: %v", n, codes(l))
		}
		a := array(t)
		l.Judge(&a.Driver)
		if diff := cmp.Diff(map[string][]Code{"a": {OffDesign}}, codes(l)); diff != "" {
			t.Errorf("%d drivers: %s", n, diff)
		}
	}
}

// TestOffDesign: a lot whose middle is elsewhere than the design is told of, and kept.
func TestOffDesign(t *testing.T) {
	dir, random := t.TempDir(), rand.New(rand.NewPCG(4, 4))
	for i := range 6 {
		m := drawn(random, 0.01)
		m.fs *= 1.2
		m.table(t, dir, fmt.Sprintf("%d.csv", i), random)
	}
	l, err := source(t, dir).Read(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	a := array(t)
	l.Judge(&a.Driver)
	if len(l.OffDesign) != 1 || l.OffDesign[0].Value != Resonance || math.Abs(l.OffDesign[0].Want-150) > 1e-9 || len(codes(l)) != 0 {
		t.Errorf("%+v, %v", l.OffDesign, codes(l))
	}
}

// array is the built-in design.
func array(t testing.TB) *layout.Array {
	t.Helper()
	a, err := layout.Build(design.Default())
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// TestDeal: sorted, the drivers scatter less than as they come, each place has one, and all is the
// same on any number of cores; with a driver too few nothing is dealt.
func TestDeal(t *testing.T) {
	p, err := timing.Make(t.Context(), array(t))
	if err != nil {
		t.Fatal(err)
	}
	need := len(p.Arrivals)
	random := rand.New(rand.NewPCG(6, 6))
	l := lotOf(random, need+5, 0.05, nil)
	l.Judge(&p.Array.Driver)
	deal := func(cores int) *Deal {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(cores))
		d, err := l.Deal(t.Context(), p)
		if err != nil {
			t.Fatal(err)
		}
		d.Plan = nil
		return d
	}
	d := deal(1)
	if diff := cmp.Diff(d, deal(3), cmpopts.EquateNaNs()); diff != "" {
		t.Error(diff)
	}
	if d.Lacking != 0 || len(d.Places) != need || !(d.Sorted.Scatter < 0.8*d.AsCome.Scatter) || !(d.Sorted.Rise < d.AsCome.Rise) {
		t.Errorf("%d lack, %d places; scatter %g of %g, rise %g of %g dB", d.Lacking, len(d.Places), d.Sorted.Scatter, d.AsCome.Scatter, d.Sorted.Rise, d.AsCome.Rise)
	}
	good, used, mounts := 0, map[int]bool{}, map[int]bool{}
	for _, one := range l.Drivers {
		if one.Good() {
			good++
		}
	}
	for _, at := range d.Places {
		if !l.Drivers[at.Driver].Good() || used[at.Driver] || mounts[at.Mount] {
			t.Errorf("%+v", at)
		}
		used[at.Driver], mounts[at.Mount] = true, true
		if got := p.Banks[at.Channel].Strings[at.String][at.Joint]; got != at.Mount {
			t.Errorf("%+v: the plan has mount %d there", at, got)
		}
	}
	for _, s := range d.Spares {
		if used[s] {
			t.Errorf("spare %d is used", s)
		}
	}
	if len(d.Spares) != good-need {
		t.Errorf("%d spares of %d good ones for %d places", len(d.Spares), good, need)
	}
	few := lotOf(random, need-1, 0.01, nil)
	few.Judge(nil)
	if d, err := few.Deal(t.Context(), p); err != nil || d.Lacking != 1 || d.Places != nil {
		t.Errorf("%v: %+v", err, d)
	}
}

// TestNatural: names as people count.
func TestNatural(t *testing.T) {
	got := []string{"b", "10", "2", "a10", "a9", "a09", "1", "a", "a9b"}
	slices.SortFunc(got, natural)
	if diff := cmp.Diff([]string{"1", "2", "10", "a", "a09", "a9", "a9b", "a10", "b"}, got); diff != "" {
		t.Error(diff)
	}
}
