package words_test

import (
	"strings"
	"testing"

	"pappus/layout/design"
	"pappus/render/words"
	"pappus/testdata/planned"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
)

// TestBodies: where each of several bodies is and how it is heard, to the letter.
func TestBodies(t *testing.T) {
	p := planned.Demo(t, func(d *design.Design) {
		d.Placing.On, d.Spot = design.OnCeiling, r3.Vec{X: 1.5, Z: -1}
		d.Copies = []design.Copy{
			{At: r3.Vec{X: 3}, Angles: design.Angles{YawDeg: 180}, Channels: design.OwnChannels},
			{At: r3.Vec{Y: -1.5, Z: -0.2}, Channels: design.SharedChannels},
		}
	})
	got := words.Bodies(p)
	want := []string{
		"3 bodies with 39 drivers each; each is taken for a rigid ball of its own, which neither shades another nor sends its sound back.",
		"Body 1 (where places count from; drivers from 1): 1.80 m from the spot, heard there after",
		"Body 2 (3.00 m forward of body 1; with channels of its own; hung from the ceiling: its top points straight down, its front mark backward; drivers from 201): 1.80 m from the spot, heard there after",
		"Body 3 (1.50 m to the right and 0.20 m down of body 1; on the channels of body 1; drivers from 301): 2.27 m from the spot, heard there after",
		"The delays bring the bodies into step at the spot alone: an ear 80 mm beside it can lose the sound of two of them from",
	}
	for i := range want {
		if i < len(got) && strings.HasPrefix(got[i], want[i]) {
			continue
		}
		t.Errorf("%s", cmp.Diff(want, got))
		break
	}
	one := planned.Demo(t, func(d *design.Design) { d.Placing.On, d.Spot = design.OnCeiling, r3.Vec{X: 1.5, Z: -1} })
	if words.Bodies(one) != nil {
		t.Error("one body is spoken of as of several")
	}
}
