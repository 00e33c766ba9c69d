package kit

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/box"
	"pappus/layout/carve"
	"pappus/layout/design"
	"pappus/layout/poly"
	"pappus/layout/shell"
	"pappus/testdata/testkit"

	"gonum.org/v1/gonum/spatial/r3"
)

// ventedDesign is a plain design whose drivers' values are known.
func ventedDesign(t testing.TB, body, mounts string, bed float64) *maker {
	t.Helper()
	text := string(fmt.Appendf(nil, plainDesign, body, mounts, bed, ""))
	text = strings.Replace(text, "screw_mm", "dc_ohm = 7.1\nfs_hz = 150\nqms = 3.2\nqes = 1.14\nbl_tm = 2.1\nmms_g = 0.75\nsd_cm2 = 20\nscrew_mm", 1)
	text = strings.Replace(text, "[spot]", "[box]\ntarget_q = 0.82\n[spot]", 1)
	return makerOf(t, built(t, text))
}

func makerOf(t testing.TB, a *layout.Array) *maker {
	t.Helper()
	plan, err := a.Segments()
	if err != nil {
		t.Fatal(err)
	}
	k, err := newMaker(a, plan, 16)
	if err != nil {
		t.Fatal(err)
	}
	return k
}

// TestFloorVents: the built-in design has none, since they would do next to nothing. What is on the
// floor of a higher one keeps apart; its vents are as many and as large as its Q asks for, and no
// smaller Q would be had from any other size by more than what is worthwhile.
func TestFloorVents(t *testing.T) {
	a := built(t, string(design.DefaultTOML()))
	k := makerOf(t, a)
	k.place(3)
	if v := k.Vents; v.Count != 0 || len(k.vents) != 0 || v.Box.Q > v.Closed || v.Box.Q < v.Closed*(1-worthwhile) {
		t.Errorf("%d vents for a Q of %g, from %g closed", v.Count, v.Box.Q, v.Closed)
	}
	a.Stand = 0.1
	k = makerOf(t, a)
	k.place(3)
	v := k.Vents
	if v.Count == 0 || v.Box.Q > v.Closed*(1-worthwhile) {
		t.Errorf("%d vents for a Q of %g, from %g closed", v.Count, v.Box.Q, v.Closed)
	}
	if v.Count != len(k.vents) || len(k.feet) != feetCount || k.gland == nil {
		t.Fatalf("%d of %d vents, %d feet, gland %v", len(k.vents), v.Count, len(k.feet), k.gland)
	}
	all := []disc{{*k.gland, k.outlet.nut()}}
	for _, p := range k.vents {
		all = append(all, disc{p, v.socketRadius()})
	}
	for _, p := range k.feet {
		all = append(all, disc{p, footRadius})
	}
	for _, p := range k.posts {
		all = append(all, disc{r3.Vec{X: p.X, Y: p.Y}, postRadius})
	}
	for i, p := range all {
		for _, q := range all[:i] {
			if r3.Norm(r3.Sub(p.at, q.at)) < p.radius+q.radius {
				t.Errorf("%v and %v overlap", p, q)
			}
		}
	}
	// Its own sum of the air that moves.
	area := float64(v.Count) * math.Pi * v.Bore * v.Bore / 4
	bare := 1.2 * (v.Fill() + 0.85*v.Bore) / area
	if left := v.Box.Mass - v.Under - bare; left < 0 || left > 0.25*v.Box.Mass {
		t.Errorf("%g kg/m4, %g of it under the stand, %g in bores and at their ends", v.Box.Mass, v.Under, bare)
	}
	if v.Reached || v.Box.Q > k.hollow.Closed.Q || math.Abs(v.Gap/(2*math.Pi*a.Body.Radius*a.Stand/area)-1) > 0.03 {
		t.Errorf("%+v", v)
	}
	// What reaches is asked for: a Q that heavier vents give, too.
	a.Box.TargetQ = 1.15
	k = makerOf(t, a)
	k.place(3)
	if w := k.Vents; !w.Reached || w.Count >= v.Count || math.Abs(w.Box.Q-1.15) > 1e-5 {
		t.Errorf("%d of %s: Q %g", w.Count, w.Thread(), w.Box.Q)
	}
}

// TestUnder: of one opening in the middle the air underneath is that of radial flow from its
// edge; the same opening at the rim has none.
func TestUnder(t *testing.T) {
	c := Cartridge{Bore: 40e-3}
	if got, want := under([]r3.Vec{{}}, c, 0.1, 0.02, 1.2), 1.2*math.Log(5)/(2*math.Pi*0.02); math.Abs(got/want-1) > 1e-12 {
		t.Errorf("%g kg/m4, want %g", got, want)
	}
	if got := under([]r3.Vec{{X: 0.1}}, c, 0.1, 0.02, 1.2); got != 0 {
		t.Errorf("%g kg/m4 at the rim", got)
	}
	if got, want := under([]r3.Vec{{X: 0.05}, {}}, c, 0.1, 0.02, 1.2), 1.2*(math.Log(2.5)/4+math.Log(2))/(2*math.Pi*0.02); math.Abs(got/want-1) > 1e-12 {
		t.Errorf("two: %g kg/m4, want %g", got, want)
	}
}

// TestGridAir: the air in a grid's holes is longer by an end that is shared with neighbours, by Fok's
// series, written out (Melling 1973, from memory); of holes that leave nothing between them there is none.
func TestGridAir(t *testing.T) {
	c := Cartridge{Bore: 40e-3, Thick: 3.5e-3}
	share := c.Open() / (math.Pi * 20e-3 * 20e-3)
	x := math.Sqrt(share)
	alone := 0.85 * 4e-3
	want := alone * (1 - 1.4092*x + 0.33818*math.Pow(x, 3) + 0.06793*math.Pow(x, 5) - 0.02287*math.Pow(x, 6) + 0.03015*math.Pow(x, 7) - 0.01641*math.Pow(x, 8))
	v := c.asVent(3)
	got := (v.Depth-c.Fill())*share/2 - 2e-3
	if math.Abs(got-want) > 1e-9*alone || v.Number != 3 || v.Radius != 20e-3 || share < 0.3 || share > 0.6 {
		t.Errorf("the end is %.5g m, want %.5g; %.2f open, %+v", got, want, share, v)
	}
	if fok(0) != 1 || fok(1) > 0.01 || fok(1.2) < 0 {
		t.Errorf("%g alone, %g and %g of no wall between", fok(0), fok(1), fok(1.2))
	}
}

// TestGrams: the filling has the flow resistance that the box asks for.
func TestGrams(t *testing.T) {
	v := Vents{Cartridge: Cartridge{Bore: 40e-3, Thick: 3.5e-3}, Count: 4, Box: box.Vented{Resistance: 20e3}}
	likely, least, most := v.Grams()
	room := math.Pi * 20e-3 * 20e-3 * 18e-3
	sigma := 25.989 * math.Pow(likely/room, 1.404)
	if r := sigma * 18e-3 / (4 * math.Pi * 20e-3 * 20e-3); math.Abs(r/20e3-1) > 1e-9 {
		t.Errorf("%g Pa s/m3", r)
	}
	if !(least < likely && likely < most) || math.Abs(v.Density()-likely/room) > 1e-9 {
		t.Errorf("%g, %g, %g kg", least, likely, most)
	}
}

// TestWalledVents: a body without a floor has its vents on bare faces; one whose bare face lies
// on the table has not; one without any is told how many mounts it takes.
func TestWalledVents(t *testing.T) {
	k := ventedDesign(t, prismBody+"\nstand_height_mm = 30", sideMounts, 300)
	if len(k.walled) == 0 || len(k.walled) != k.Vents.Count || k.Vents.Mounts != 0 {
		t.Fatalf("%d in walls: %+v", len(k.walled), k.Vents)
	}
	low, high := 0, 0
	for _, f := range k.bareFaces() {
		if k.array.Body.Plane(f).Normal.Z < 0 {
			low++
		} else {
			high++
		}
	}
	if low != 1 || high != 1 {
		t.Errorf("%d bare faces below, %d above", low, high)
	}
	if flat := ventedDesign(t, prismBody, sideMounts, 300); len(flat.bareFaces()) != 1 {
		t.Errorf("%d bare faces without a stand", len(flat.bareFaces()))
	}
	segment, err := k.segment(0, mustShell(t, k), 1)
	if err != nil {
		t.Fatal(err)
	}
	testkit.Printable(t, segment.Mesh, 1)
	plain := *k
	plain.walled = nil
	bare, err := plain.segment(0, mustShell(t, k), 1)
	if err != nil {
		t.Fatal(err)
	}
	// What a boss adds behind the wall, and what its thread takes out of the wall.
	at, c, sum := k.walled[0], k.Vents.Cartridge, 0.0
	thread := c.internal(-2e-3, k.wall.thick+nutTall+2e-3, k.Gap).Moved(func(v r3.Vec) r3.Vec { return at.place(v.X, v.Y, v.Z) })
	for _, part := range []struct {
		low, high, sign float64
	}{{k.wall.thick, k.wall.thick + nutTall, 1}, {0, k.wall.thick, -1}} {
		m, err := carve.Combine(func(in []bool) bool { return in[0] && in[1] == (part.sign < 0) }, at.pin(c.socketRadius(), part.low, part.high, 48), thread)
		if err != nil {
			t.Fatal(err)
		}
		sum += part.sign * m.Volume()
	}
	if got, want := segment.Mesh.Volume()-bare.Mesh.Volume(), float64(k.Vents.Count)*sum; math.Abs(got-want) > 1e-9 {
		t.Errorf("sockets are %g mm3, want %g", 1e9*got, 1e9*want)
	}
	ball := ventedDesign(t, "shape = \"ball\"\nradius_mm = 100", "on = \"even\"\ncount = 12", 220)
	if len(ball.walled) != 0 || ball.Vents.Count != 0 || ball.Vents.Mounts == 0 || ball.Vents.socketRadius() > 22.5e-3 {
		t.Errorf("a ball: %+v", ball.Vents)
	}
}

func mustShell(t *testing.T, k *maker) poly.Mesh {
	t.Helper()
	m, err := shell.Make(k.array.Body, k.array.Wall, k.array.Holes())
	if err != nil {
		t.Fatal(err)
	}
	return m
}
