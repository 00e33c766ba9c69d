package words

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/kit"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestKitSteps: what has no part in a kit has no step; drivers mounted from the rear come in
// before the floor is on.
func TestKitSteps(t *testing.T) {
	parts := func(names ...string) (out []kit.Part) {
		for _, n := range names {
			out = append(out, kit.Part{Name: n, Count: 1})
		}
		return out
	}
	floor := kit.Ground{Sectors: 3, Outline: make([]r3.Vec, 3), Feet: make([]r3.Vec, 4), Gland: &r3.Vec{}, Bare: []int{36, 37}}
	for _, c := range []struct {
		name      string
		joint     string
		mounting  string
		m         kit.Made
		on        string
		says, not []string
	}{
		{"ball in one", kit.Lap, kit.Front, kit.Made{Parts: parts("shell")}, "", []string{"printed in one", "that is to be drilled", "before the last driver"}, []string{"Floor:", "vent", "Vent", "tape", "foam strip"}},
		{"dome", kit.Lap, kit.Front, kit.Made{Parts: parts("segment-1"), Beside: kit.Beside{Ground: floor, Vents: kit.Vents{Count: 2}}}, "",
			[]string{"from segment-1 on: each goes onto those before it in one straight line", "Tongues lie inside", "F1 to the next", "feet on from above", "and a lid on its vent", "Vents: weigh", "not over vents", "tape the vents over", "Take the tape off", "from outside, strings joined", "foam strip", "Behind drivers 36 and 37 there is no ledge"}, []string{"drilled"}},
		{"flanges from the rear", kit.Flange, kit.Rear, kit.Made{Parts: parts("segment-1"), Beside: kit.Beside{Ground: kit.Ground{Sectors: 1, Outline: make([]r3.Vec, 3)}}}, layout.OnSurface,
			[]string{"flange to flange", "from the rear, before the floor"}, []string{"F1", "feet on", "no ledge", "bear nothing"}},
		{"under the ceiling", kit.Lap, kit.Front, kit.Made{Parts: parts("segment-1"), Beside: kit.Beside{Ground: floor}}, layout.OnCeiling,
			[]string{"off the ceiling and bear nothing", "a second line from the shell"}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			a := &layout.Array{}
			a.On = c.on
			a.Kit.Joint, a.Kit.Mounting, a.Kit.Gap = c.joint, c.mounting, 0.2e-3
			got := strings.Join(KitSteps(a, c.m), "\n")
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

// TestGoingOn: the segment that may lean the least is named, and one that may not lean at all slides; by hand.
func TestGoingOn(t *testing.T) {
	lean := func(degrees ...float64) (m kit.Made) {
		for i, d := range degrees {
			m.Parts = append(m.Parts, kit.Part{Name: "segment-" + strconv.Itoa(i+2), Off: r3.Vec{Z: 1}, Lean: d * math.Pi / 180})
		}
		m.Parts = append(m.Parts, kit.Part{Name: "foot"})
		return m
	}
	const text = "Go by the numbers, from segment-1 on: each goes onto those before it in one straight line from outside. From where, as an azimuth from the front to the left and an elevation, and by how much it may lean, stands in kit.csv and in the table of segments below"
	for _, c := range []struct {
		m    kit.Made
		want string
	}{
		{lean(), text + ". "},
		{lean(9, 3.7, 5), text + "; segment-3 must go the straightest, within 3 degrees. "},
		{lean(1.2), text + "; segment-2 must go the straightest, within 1 degree. "},
		{lean(9, 0), text + "; one that may not lean, such as segment-3, slides in along an edge. "},
	} {
		if got := goingOn(c.m); got != c.want {
			t.Errorf("%q\nwant %q", got, c.want)
		}
	}
}
