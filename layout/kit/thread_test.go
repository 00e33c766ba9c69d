package kit

import (
	"math"
	"slices"
	"testing"

	"pappus/layout/carve"
	"pappus/layout/poly"
	"pappus/testdata/testkit"
)

// TestThread measures threads from their meshes: the profile in a half plane through the axis
// has the diameters, the pitch and the flanks of ISO 2901 and 2904, which are worked out here
// from the profile's own definition: a triangle of 30 degrees, 1.866 pitches high, half a pitch
// of which is engaged; and a nut stands off its bolt by the gap.
func TestThread(t *testing.T) {
	for _, c := range []struct {
		d, p, d2, d3, inner, outer float64 // mm, as ISO 2904 lists them
	}{
		{16, 2, 15, 13.5, 14, 16.5},
		{28, 3, 26.5, 24.5, 25, 28.5},
		{36, 3, 34.5, 32.5, 33, 36.5},
		{60, 3, 58.5, 56.5, 57, 60.5},
		{70, 4, 68, 65.5, 66, 70.5},
		// Coarser ones, of which cartridges are not made.
		{36, 6, 33, 29, 30, 37},
		{60, 9, 55.5, 50, 51, 61},
	} {
		th := thread{c.d * 1e-3, c.p * 1e-3}
		if made := slices.ContainsFunc(threads, func(t thread) bool { return math.Abs(t.major-th.major)+math.Abs(t.pitch-th.pitch) < 1e-9 }); made != (c.p < 5) {
			t.Errorf("Tr %gx%g is a cartridge's: %v", c.d, c.p, made)
		}
		bolt, nut := th.external(0, 30e-3, 0), th.internal(0, 30e-3, 0)
		for name, m := range map[string]poly.Mesh{"bolt": bolt, "nut": nut} {
			if err := m.Check(); err != nil {
				t.Fatal(name, err)
			}
		}
		b, n := profile(bolt), profile(nut)
		for name, v := range map[string][2]float64{
			"pitch": {b.pitch, c.p}, "d": {2 * b.top, c.d}, "d3": {2 * b.root, c.d3},
			"D1": {2 * n.root, c.inner}, "D4": {2 * n.top, c.outer},
			"flank of the bolt": {b.flank, 15}, "flank of the nut": {n.flank, 15},
			"ridge at d2": {b.widthAt(c.d2 / 2), c.p / 2}, "groove at D2": {n.widthAt(c.d2 / 2), c.p / 2},
		} {
			if math.Abs(v[0]-v[1]) > 1e-9*math.Abs(v[1]) {
				t.Errorf("Tr %gx%g: %s is %.9g, want %g", c.d, c.p, name, v[0], v[1])
			}
		}
		thin, wide := profile(th.external(0, 30e-3, 0.2e-3)), profile(th.internal(0, 30e-3, 0.2e-3))
		axial := (wide.widthAt(c.d2/2) - thin.widthAt(c.d2/2)) / 2 * math.Cos(15*math.Pi/180)
		if math.Abs(axial-0.2) > 1e-9 || math.Abs(wide.top-wide.root-(n.top-n.root)) > 1e-9 || math.Abs(n.top-b.top+0.2-(wide.top-thin.top)) > 1e-9 {
			t.Errorf("Tr %gx%g: flanks are %g mm apart, roots %g", c.d, c.p, axial, wide.top-thin.top)
		}
	}
}

// section is a thread's profile in mm and degrees.
type section struct {
	root, top, pitch, flank float64
	left, right             [2][2]float64 // the flanks: height and radius at either end
}

// profile measures a thread in the half plane of azimuth 0, where corners of its mesh are.
func profile(m poly.Mesh) (s section) {
	var at [][2]float64
	for _, v := range m.Vertices {
		if math.Abs(v.Y) < 1e-12 && v.X > 1e-6 {
			at = append(at, [2]float64{1e3 * v.Z, 1e3 * v.X})
		}
	}
	slices.SortFunc(at, func(a, b [2]float64) int {
		switch {
		case a[0] < b[0]:
			return -1
		case a[0] > b[0]:
			return 1
		}
		return 0
	})
	s.root, s.top = math.Inf(1), 0
	for _, p := range at {
		s.root, s.top = min(s.root, p[1]), max(s.top, p[1])
	}
	var rises []int
	for i := 1; i < len(at); i++ {
		if at[i][1]-at[i-1][1] > 0.5*(s.top-s.root) {
			rises = append(rises, i)
		}
	}
	i := rises[1]
	s.pitch = at[rises[2]][0] - at[i][0]
	s.left = [2][2]float64{at[i-1], at[i]}
	s.right = [2][2]float64{at[i+1], at[i+2]}
	s.flank = math.Atan2(at[i][0]-at[i-1][0], at[i][1]-at[i-1][1]) * 180 / math.Pi
	return s
}

// widthAt returns how wide the ridge is at a radius, in mm.
func (s section) widthAt(radius float64) float64 {
	on := func(e [2][2]float64) float64 {
		return e[0][0] + (radius-e[0][1])/(e[1][1]-e[0][1])*(e[1][0]-e[0][0])
	}
	return on(s.right) - on(s.left)
}

// TestCartridge: a vent and its lid are closed, and go together with a gap between them.
func TestCartridge(t *testing.T) {
	k := &maker{Vents: Vents{Cartridge: cartridge(threads[4], 0.2e-3, floorThick), Count: 2}}
	k.Gap = 0.2e-3
	for _, j := range k.cartridges() {
		p, err := j()
		if err != nil {
			t.Fatal(err)
		}
		if n := len(p.Mesh.Pieces()); n != 1 {
			t.Errorf("%s: %d pieces", p.Name, n)
		}
		testkit.Printable(t, p.Mesh, 1)
		// What of the bore a grid leaves open, cut out of the mesh.
		c := k.Vents.Cartridge
		solid, err := carve.Combine(func(in []bool) bool { return in[0] && in[1] }, p.Mesh, upward.pin(c.Bore/2-0.1e-3, 0.4*grid, 0.6*grid, steps))
		if err != nil {
			t.Fatal(err)
		}
		r := c.Bore/2 - 0.1e-3
		if open := steps*math.Tan(math.Pi/steps)*r*r - solid.Volume()/(0.2*grid); math.Abs(open/c.Open()-1) > 1e-6 {
			t.Errorf("%s: %g mm2 are open, want %g", p.Name, 1e6*open, 1e6*c.Open())
		}
	}
}
