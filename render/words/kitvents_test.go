package words

import (
	"math"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/body"
	"pappus/layout/box"
	"pappus/layout/kit"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestOutlet: a gland that there is no room for below the floor, or in it, is told of.
func TestOutlet(t *testing.T) {
	m := kit.Made{Beside: kit.Beside{Outlet: kit.Outlet{Cores: 16, Cable: 0.014, Thread: 0.025}}}
	a := &layout.Array{Stand: 0.08}
	if got := Outlet(a, m); !strings.Contains(got, "16 cores, about 14 mm thick, in a hole of 25.3 mm that is to be drilled") {
		t.Error(got)
	}
	m.Ground.Gland = &r3.Vec{}
	if got := Outlet(a, m); !strings.Contains(got, "about 90 mm, and the stand has 80 mm") {
		t.Error(got)
	}
	a.Stand = 0.082
	if got := Outlet(a, m); strings.Contains(got, "stand") || strings.Contains(got, "drilled") {
		t.Error(got)
	}
}

// TestFastest: air that goes through stuffing at more than a metre in a second is told of.
func TestFastest(t *testing.T) {
	a := &layout.Array{Body: &body.Body{}}
	a.Box.TargetQ = 0.7
	d, err := box.Driver{Fs: 150, Qms: 3.2, Qes: 1.14, Re: 7.1, Mms: 0.75e-3, Sd: 8e-4}.Complete(box.Air{Density: 1.2, SoundSpeed: 343})
	if err != nil {
		t.Fatal(err)
	}
	v := kit.Vents{Cartridge: kit.Cartridge{Bore: 0.04}, Count: 4, Reached: true, Closed: 1.2,
		Box: box.Vented{Driver: d, Number: 39, Volume: 0.0054, Air: box.Air{Density: 1.2, SoundSpeed: 343}, Resistance: 16e3, Mass: 8, Q: 0.7, Resonance: 240}}
	_, flow, err := v.Box.Flow(1, 240)
	if err != nil {
		t.Fatal(err)
	}
	one := v.Area() / (math.Sqrt2 * flow) // volt for 1 m/s
	for volt, want := range map[float64]bool{0.9 * one: false, 1.1 * one: true} {
		if got := strings.Contains(strings.Join(KitVents(a, v, volt), "\n"), "resists loud tones more"); got != want {
			t.Errorf("%g V: told %v", volt, got)
		}
	}
}

// TestKitVents: what a reader is told of vents that reach their target, that do not, that do next
// to nothing, and that have no place.
func TestKitVents(t *testing.T) {
	a := &layout.Array{Body: &body.Body{}, Stand: 0.03}
	a.Body.IsCut = true
	a.Box.TargetQ = 0.7
	vents := func(change func(*kit.Vents)) kit.Vents {
		v := kit.Vents{Cartridge: kit.Cartridge{Bore: 0.04}, Count: 4, Reached: true, Closed: 1.2, Gap: 8,
			Box: box.Vented{Resistance: 10e3, Mass: 8, Q: 0.7, Resonance: 200}}
		if change != nil {
			change(&v)
		}
		return v
	}
	for _, c := range []struct {
		name      string
		v         kit.Vents
		says, not []string
	}{
		{"none asked for", kit.Vents{}, nil, []string{"vent"}},
		{"why none", kit.Vents{Why: "for want of values"}, []string{"No vents: for want of values."}, nil},
		{"no room", kit.Vents{Closed: 1.2}, []string{"no room for a vent"}, nil},
		{"reached", vents(nil), []string{"4 cartridges", "bring the Q to 0.70 at 200 Hz, from 1.20", "g of loose polyester fibre"}, []string{"reads about", "tighter", "All round under the stand"}},
		{"short", vents(func(v *kit.Vents) { v.Reached, v.Box.Q, v.Under = false, 0.93, 2 }), []string{"25 percent of it under the stand", "box.target_q = 0.93", "2.5 dB at 200 Hz"}, nil},
		{"next to nothing", vents(func(v *kit.Vents) { v.Count, v.Reached, v.Box.Q = 0, false, 1.15 }), []string{"No vents", "below 1.15, from 1.20 closed", "4.7 dB"}, []string{"cartridge", "Leave"}},
		{"packed", vents(func(v *kit.Vents) { v.Box.Resistance = 80e3 }), []string{"packed tighter than the 60 kg/m3"}, nil},
		{"low stand", vents(func(v *kit.Vents) { v.Gap = 4.9 }), []string{"4.9 times the vents' area", "body.stand_height_mm = 31 it is 5 times"}, nil},
		{"high enough", vents(func(v *kit.Vents) { v.Gap = 5.1 }), nil, []string{"All round under the stand"}},
		{"flat on the table", vents(func(v *kit.Vents) { v.Gap = math.NaN() }), []string{"no air comes to vents"}, nil},
		{"in place of drivers", vents(func(v *kit.Vents) { v.Count, v.Mounts = 0, 5 }), []string{"In place of 5 drivers", "Q to 0.70, from 1.20"}, []string{"Stuffing alone"}},
		{"too few drivers", vents(func(v *kit.Vents) { v.Count, v.Mounts, v.Reached, v.Box.Q = 0, 5, false, 1.1 }), []string{"not to 0.70", "Stuffing alone"}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := strings.Join(KitVents(a, c.v, 2.83), "\n")
			for _, s := range c.says {
				if !strings.Contains(got, s) {
					t.Errorf("%q is not in:\n%s", s, got)
				}
			}
			for _, s := range c.not {
				if strings.Contains(got, s) {
					t.Errorf("%q is in:\n%s", s, got)
				}
			}
		})
	}
}

// TestReadings: what is read of light vents rises with their fibre, that of far too open ones falls,
// and between them it does not tell.
func TestReadings(t *testing.T) {
	air := box.Air{Density: 1.2, SoundSpeed: 343}
	d, err := box.Driver{Fs: 150, Qms: 3.2, Qes: 1.14, Re: 7.1, Mms: 0.75e-3, Sd: 8e-4}.Complete(air)
	if err != nil {
		t.Fatal(err)
	}
	right, err := box.DampHeavy(d, 39, 0.0054, 1, 1, air)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, says string
		box        box.Vented
	}{
		{"light", "Put in or take out", right},
		{"between", "does not tell too much from too little", right.With(right.Resistance*0.3, 4)},
		{"open", "Put in or take out", right.With(right.Resistance/8, 4)},
	} {
		got := readings(kit.Vents{Cartridge: kit.Cartridge{Bore: 0.04}, Count: 4, Box: c.box})
		if !strings.Contains(got, c.says) {
			t.Errorf("%s: %q", c.name, got)
		}
	}
	if got := readings(kit.Vents{Cartridge: kit.Cartridge{Bore: 0.04}, Count: 4, Box: box.Vented{Resistance: 1}}); got != "" {
		t.Errorf("of a driver that nothing is known of: %q", got)
	}
}
