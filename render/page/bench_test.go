package page

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// TestTicks are kept in a file beside the design, of each string by itself.
func TestTicks(t *testing.T) {
	p, path := newPage(t, small)
	file := filepath.Join(filepath.Dir(path), "mine.bench.toml")
	if all, err := p.ticks.read(); err != nil || len(all) != 0 {
		t.Fatalf("at first %v, %v", all, err)
	}
	one, two := ticked{[]int{2, 1}, []int{2}, false, false}, ticked{[]int{3, 4}, []int{}, true, true}
	for _, in := range []ticked{one, two, {[]int{2, 1}, []int{2, 1}, true, false}} {
		if _, err := p.tick(nil, nil, in); err != nil {
			t.Fatal(err)
		}
	}
	again, err := New(options(path))
	if err != nil {
		t.Fatal(err)
	}
	got, err := again.readTicks(nil, nil, ticksAsked{})
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(ticksAnswer{"mine.bench.toml", []ticked{{[]int{2, 1}, []int{2, 1}, true, false}, two}}, got); diff != "" {
		t.Error(diff)
	}
	if text, err := os.ReadFile(file); err != nil || !strings.HasPrefix(string(text), "# What is soldered of mine.toml, ") {
		t.Errorf("the file: %v, %s", err, text)
	}
	if err := os.WriteFile(file, []byte("[[string]]\ndrivers = \"all\"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := p.tick(nil, nil, one); err == nil || !strings.Contains(err.Error(), "mend the file or move it away") {
		t.Errorf("a file that cannot be read: %v", err)
	}
	if text, _ := os.ReadFile(file); !strings.Contains(string(text), "all") {
		t.Error("a file that cannot be read was written over")
	}
}

// TestTicksRefused is what is no tick, or has no place.
func TestTicksRefused(t *testing.T) {
	p, path := newPage(t, small)
	for _, test := range []struct {
		name string
		in   ticked
		says string
	}{
		{"no drivers", ticked{}, "drivers: must be from 1"},
		{"twice", ticked{Drivers: []int{2, 2}}, "there once"},
		{"below one", ticked{Drivers: []int{0}}, "from 1 to"},
		{"of another string", ticked{Drivers: []int{1}, Soldered: []int{2}}, "soldered: must be drivers of the string"},
	} {
		t.Run(test.name, func(t *testing.T) {
			if _, err := p.tick(nil, nil, test.in); err == nil || !strings.Contains(err.Error(), test.says) {
				t.Errorf("%v", err)
			}
		})
	}
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	if _, err := p.tick(nil, nil, ticked{Drivers: []int{1}}); err == nil || !strings.Contains(err.Error(), "gone from the disk") {
		t.Errorf("of a design that is gone: %v", err)
	}
	demo, err := New(options(""))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := demo.tick(nil, nil, ticked{Drivers: []int{1}}); err == nil || !strings.Contains(err.Error(), "the browser keeps") {
		t.Errorf("of the demo: %v", err)
	}
}
