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
	one := ticking{[]int{2, 1}, "driver", 1, true}
	for _, in := range []ticking{
		one, {[]int{3, 4}, "alone", 0, true}, {[]int{2, 1}, "driver", 2, true}, {[]int{3, 4}, "joined", 0, true},
		{[]int{2, 1}, "joined", 0, true}, {[]int{3, 4}, "driver", 3, true}, {[]int{3, 4}, "driver", 3, false}, {[]int{2, 1}, "joined", 0, false},
		{[]int{2, 1}, "alone", 0, true},
	} {
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
	want := ticksAnswer{"mine.bench.toml", []ticked{{[]int{2, 1}, []int{2, 1}, true, false}, {[]int{3, 4}, []int{}, true, true}}, hashOf([]byte(small))}
	if diff := cmp.Diff(want, got); diff != "" {
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
		in   ticking
		says string
	}{
		{"no drivers", ticking{Step: "alone"}, "drivers: must be from 1"},
		{"twice", ticking{Drivers: []int{2, 2}, Step: "alone"}, "there once"},
		{"below one", ticking{Drivers: []int{0}, Step: "alone"}, "from 1 to"},
		{"of another string", ticking{Drivers: []int{1}, Step: "driver", Driver: 2}, "driver: must be one of the string's"},
		{"no driver", ticking{Drivers: []int{1}, Step: "driver"}, "driver: must be one of the string's"},
		{"a driver that is read", ticking{Drivers: []int{1}, Step: "joined", Driver: 1}, "driver: must be 0"},
		{"no step", ticking{Drivers: []int{1}}, "step: must be driver, alone or joined"},
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
	if _, err := p.tick(nil, nil, ticking{Drivers: []int{1}, Step: "alone"}); err == nil || !strings.Contains(err.Error(), "gone from the disk") {
		t.Errorf("of a design that is gone: %v", err)
	}
	demo, err := New(options(""))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := demo.tick(nil, nil, ticking{Drivers: []int{1}, Step: "alone"}); err == nil || !strings.Contains(err.Error(), "the browser keeps") {
		t.Errorf("of the demo: %v", err)
	}
}
