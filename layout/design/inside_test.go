package design

import (
	"strings"
	"testing"
)

// Who begins a design sees every key there is, each with a remark.
func TestStarterShowsEveryKey(t *testing.T) {
	text := string(Starter())
	look := func(table string, keys []key) {
		for _, k := range keys {
			if !strings.Contains(text, "\n"+k.name+" = ") && !strings.Contains(text, "\n# "+k.name+" = ") {
				t.Errorf("[%s] %s is not in the starter", table, k.name)
			}
		}
	}
	for _, tb := range defaults().tables() {
		look(tb.name, tb.keys)
		if tb.name != "" && !strings.Contains(text, "\n["+tb.name+"]\n") && !strings.Contains(text, "\n# ["+tb.name+"]\n") {
			t.Errorf("[%s] is not in the starter", tb.name)
		}
	}
	look("channel", (&Channel{}).keys())
}

// The room that the starter shows in remarks is a good one.
func TestStarterRoom(t *testing.T) {
	text := string(Starter())
	from, to := strings.Index(text, "[surface]\n"), strings.Index(text, "# [room]\n")
	if from < 0 || to < from {
		t.Fatal("no surface or no room")
	}
	room, rest, _ := strings.Cut(text[to:], "\n\n")
	d, err := Parse("a.toml", []byte(text[:from]+strings.ReplaceAll("\n"+room, "\n# ", "\n")+"\n\n"+rest))
	if err != nil {
		t.Fatal(err)
	}
	if !d.Room.Present || d.Surface.Present {
		t.Errorf("room %+v, surface %+v", d.Room, d.Surface)
	}
}

// So is the woofer.
func TestStarterWoofer(t *testing.T) {
	head, rest, found := strings.Cut(string(Starter()), "# [woofer]\n")
	if !found {
		t.Fatal("no woofer")
	}
	woofer, rest, _ := strings.Cut(rest, "\n\n")
	d, err := Parse("a.toml", []byte(head+"[woofer]"+strings.ReplaceAll("\n"+woofer, "\n# ", "\n")+"\n\n"+rest))
	if err != nil {
		t.Fatal(err)
	}
	if w := d.Woofer; !w.Present || w.Order != 4 || w.SensitivityDB == nil {
		t.Errorf("woofer %+v", w)
	}
}
