package kit

import (
	"errors"
	"math"
	"testing"

	"pappus/layout"
	"pappus/layout/carve"
	"pappus/layout/design"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestFitted: cartridges, lids and feet where they go are in nobody's way, and a cartridge's head
// lies against the floor; no post of the floor is on its joints.
func TestFitted(t *testing.T) {
	a, err := layout.Build(design.Default())
	if err != nil {
		t.Fatal(err)
	}
	a.Stand = 0.1 // high enough for vents to be worth while
	k := makerOf(t, a)
	jobs, err := k.floors()
	if err != nil {
		t.Fatal(err)
	}
	m := Made{Beside: Beside{Vents: k.Vents, Ground: k.ground(), Sockets: k.sockets()}}
	for _, j := range append(jobs, k.cartridges()...) {
		p, err := j()
		if err != nil {
			t.Fatal(err)
		}
		m.Parts = append(m.Parts, p)
	}
	fitted := m.Fitted(a.Body.Cut, a.Stand)
	if len(fitted) != 2*m.Vents.Count+feetCount {
		t.Fatalf("%d parts are fitted", len(fitted))
	}
	for i, p := range append(fitted[:2:2], fitted[len(fitted)-1]) {
		for _, q := range append(m.Parts[:len(jobs)-1:len(jobs)-1], fitted[:i]...) {
			if !near(p.Mesh, q.Mesh) {
				continue
			}
			if both, err := carve.Combine(func(in []bool) bool { return in[0] && in[1] }, p.Mesh, q.Mesh); !errors.Is(err, carve.ErrEmpty) && both.Volume() > 1e-12 {
				t.Errorf("%s and %s have %g mm3 in common (%v)", p.Name, q.Name, 1e9*both.Volume(), err)
			}
		}
	}
	if low := fitted[0].Mesh.Bounds().Min.Z; math.Abs(low-(a.Body.Cut-headTall)) > 1e-6 {
		t.Errorf("a vent begins at %g m", low)
	}
	for _, p := range k.posts {
		for j := range k.sectors {
			azimuth := 2 * math.Pi * float64(j) / float64(k.sectors)
			if along := direction(azimuth); r3.Dot(p, along) > 0 && math.Abs(r3.Dot(p, direction(azimuth+math.Pi/2))) < m3Head {
				t.Errorf("a screw at %v is on a joint", p)
			}
		}
	}
}

// TestFittings: screws by the holes that parts have, and lengths and masses by hand.
func TestFittings(t *testing.T) {
	a, err := layout.Build(design.Default())
	if err != nil {
		t.Fatal(err)
	}
	k := makerOf(t, a)
	if _, err := k.floors(); err != nil {
		t.Fatal(err)
	}
	got := map[Bought]Fitting{}
	for _, f := range k.fittings() {
		got[f.Bought] = f
	}
	places, length := 0, 0.0
	for _, s := range k.seams {
		places += len(k.fastened[s.number])
		// A seam is bent a little: it is as long as its furthest points are apart, and some more.
		far := 0.0
		for _, p := range s.points {
			for _, q := range s.points {
				far = max(far, r3.Norm(r3.Sub(p, q)))
			}
		}
		length += 1.05 * far
	}
	if n := got[LapScrew].Count + got[Dowel].Count; n != places || got[FloorScrew].Count != len(k.posts)+feetCount || got["cable gland M25"].Count != 1 {
		t.Errorf("%d of %d fasteners, %+v", n, places, got)
	}
	if d := got[Dowel]; math.Abs(d.Length-8e-3*float64(d.Count)) > 1e-12 {
		t.Errorf("%g m of dowels", d.Length)
	}
	if g := got[Glue]; math.Abs(g.Length/length-1) > 0.1 || math.Abs(g.Mass/(g.Length*1.2e-3*0.8e-3*1100)-1) > 1e-9 {
		t.Errorf("%g m of glue, want about %g; %g kg", g.Length, length, g.Mass)
	}
	if f := got[Foam]; math.Abs(f.Length/(2*math.Pi*0.134)-1) > 0.02 {
		t.Errorf("%g m of foam", f.Length)
	}
}
