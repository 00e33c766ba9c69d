package words_test

import (
	"math"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/kit"
	"pappus/render/words"
	"pappus/testdata/planned"
	"pappus/timing/loom"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestReadingsInWords: a fault is told only where its readings are none of a sound one.
func TestReadingsInWords(t *testing.T) {
	short := func(told bool) loom.StringReading {
		return loom.StringReading{Short: loom.Fault{Reads: loom.Range{Least: 6.1, Most: 8.12}, Told: told}}
	}
	open := func(told bool) loom.ChannelReading {
		return loom.ChannelReading{Open: loom.Fault{Reads: loom.Range{Least: 12.5, Most: 15.9}, Told: told}}
	}
	for _, c := range []struct{ name, got, want string }{
		{"one driver", words.StringFaults(1, short(true)), "no reading: a joint is open or a coil broken; more: a poor joint; next to nothing: shorted"},
		{"told", words.StringFaults(2, short(true)), "no reading: a joint is open or a coil broken; more: a poor joint; 6.1 to 8.1: one driver is shorted or left out"},
		{"not told", words.StringFaults(13, short(false)), "no reading: a joint is open or a coil broken; more: a poor joint; one driver shorted is not to be told from none: read each alone"},
		{"one string", words.ChannelFaults(1, open(true)), "as its string does, or a terminal is loose"},
		{"two strings", words.ChannelFaults(2, open(true)), "12.5 to 15.9 or more: a string is not joined; less than the least: two leads touch"},
		{"twelve strings", words.ChannelFaults(12, open(false)), "a string that is not joined is not to be told here: trust the strings' own readings"},
		{"a digit", words.ColourCode(3), "orange"},
		{"two digits", words.ColourCode(10), "brown, black"},
		{"wire", words.WireTakes(8, loom.String{Order: []int{0, 1}, Pieces: []loom.Piece{{Cut: 0.3}, {Cut: 0.4}}, WireOhm: 0.16}), "0.7 m: 0.16 ohm, 0.09 dB"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q, want %q", c.name, c.got, c.want)
		}
	}
	if loss := 20 * math.Log10(16.16/16); math.Abs(loss-0.0864) > 1e-3 {
		t.Error(loss)
	}
}

// TestWiringSteps: how drivers come in, what closes the body, what hangs, and what a woofer is set to, each
// where the design has it.
func TestWiringSteps(t *testing.T) {
	for name, c := range map[string]struct {
		change    func(*design.Design)
		says, not []string
	}{
		"the demo": {nil, []string{"from outside, from the one furthest from the opening on", "over its seal"}, []string{"last driver", "bears no weight", "Woofer:"}},
		"from the rear": {func(d *design.Design) { d.Kit.Mounting = kit.Rear },
			[]string{"from inside, from the one furthest from the opening on, before the floor is on"}, []string{"from outside, from"}},
		"a whole ball": {func(d *design.Design) {
			d.Body.Shape, d.Body.HasCut, d.Mounts.On, d.Mounts.Count, d.Mounts.Skip = "ball", false, "even", 12, nil
		}, []string{"furthest from where the cable comes out", "by its last driver"}, []string{"the opening", "over its seal"}},
		"hung": {func(d *design.Design) { d.Placing.On, d.Spot.Z = layout.OnCeiling, -1 }, []string{"Weigh it before it goes up. The cable bears no weight"}, nil},
		"with a woofer": {func(d *design.Design) {
			d.Woofer.Present, d.Woofer.At, d.Woofer.Crossover, d.Woofer.Order = true, r3.Vec{X: -0.5, Y: 0.3, Z: 0.1}, 450, 4
		}, []string{"Woofer: "}, nil},
	} {
		p := planned.Demo(t, c.change)
		text := strings.Join(words.WiringSteps(p, loom.Strings(p)), "\n")
		for _, say := range c.says {
			if !strings.Contains(text, say) {
				t.Errorf("%s: %q is not in %q", name, say, text)
			}
		}
		for _, say := range c.not {
			if strings.Contains(text, say) {
				t.Errorf("%s: %q is in %q", name, say, text)
			}
		}
	}
}
