package words

import (
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing"
)

// TestHeardAs: what stands for a body in the models that have one, and how far off a ball is that does.
func TestHeardAs(t *testing.T) {
	for _, c := range []struct {
		name, body, model string
		waits             bool
		want              string
	}{
		{"ball for a cube", "cube", "sphere", false, "All figures take the body for a ball; the level of one driver can be off by up to 3.9 dB."},
		{"ball till it is solved for", "cube", "sphere", true, "Until the field of the body is solved for, all figures take it for a ball."},
		{"ball for a ball", "ball", "sphere", false, "All figures take the body for a ball."},
		{"points", "cube", "point", false, ""},
		{"as it is", "cube", "body", false, "All figures take the body as it is, with its faces and edges, up to 780 Hz; from 930 Hz on a ball stands for it."},
	} {
		d, err := design.Parse("x.toml", []byte("name = \"x\"\n[body]\nshape = \""+c.body+"\"\nradius_mm = 100\n[mounts]\non = \"even\"\ncount = 4\n[driver]\ndiameter_mm = 30\n[spot]\nx_m = 2\ny_m = 0\nz_m = 0.3\n[timing]\nmodel = \""+c.model+"\"\nsolve_to_hz = 500\n"))
		if err != nil {
			t.Fatal(err)
		}
		a, err := layout.Build(d)
		if err != nil {
			t.Fatal(err)
		}
		planner, err := timing.NewPlanner(a)
		if err != nil {
			t.Fatal(err)
		}
		s, err := planner.Spot(a.Spot)
		if err != nil {
			t.Fatal(err)
		}
		if got := HeardAs(&timing.Plan{Spot: *s}, c.waits); got != c.want {
			t.Errorf("%s: %q", c.name, got)
		}
	}
}
