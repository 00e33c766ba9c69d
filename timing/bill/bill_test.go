package bill_test

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/poly"
	"pappus/layout/shell"
	"pappus/testdata/planned"
	"pappus/timing/bill"
	"pappus/timing/loom"

	"gonum.org/v1/gonum/spatial/r3"
)

func value(v float64) *float64 { return &v }

// TestOf: each sum by hand from the design's own figures.
func TestOf(t *testing.T) {
	p := planned.Demo(t, func(d *design.Design) {
		d.Driver.Price, d.Driver.Mass, d.Print.Price, d.Build.WirePrice = value(4.5), 0.030, value(20), value(0.4)
		d.Wiring.WireLength = 3
		d.Parts = []design.Part{{Name: "screw", Count: 156, Price: value(0.05), Mass: 0.0003, Time: 12}, {Name: "varnish", Count: 1, Price: value(9)}}
	})
	print, err := p.Array.Segments()
	if err != nil {
		t.Fatal(err)
	}
	b := bill.Of(p, print, 0.012)
	plastic, length, joints := 0.0, 0.0, 0
	for _, s := range print.Segments {
		plastic += s.Volume
	}
	for _, s := range loom.Strings(p) {
		length += s.Length()
		joints += 2*len(s.Order) + 2
	}
	n := float64(len(p.Array.Mounts))
	cable := 3 * float64(len(p.Channels))
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"mass", b.Mass, plastic*1240 + n*0.030 + length*0.5e-6*8960 + 2*cable*0.75e-6*8960 + 0.012 + 156*0.0003},
		{"price", b.Price, plastic*1240*20 + (n+2)*4.5 + length*0.4 + 156*0.05 + 9},
		{"print, s", b.Print, plastic / 5e-9},
		{"work, s", b.Work, n*360 + float64(joints)*240 + 156*12},
		{"joints", float64(b.Joints), float64(joints)},
	} {
		if math.Abs(c.got-c.want) > 1e-9*c.want {
			t.Errorf("%s: %.9g, want %.9g", c.name, c.got, c.want)
		}
	}
	if len(b.NoMass) != 0 || len(b.NoPrice) != 1 || b.NoPrice[0] != bill.Cable {
		t.Errorf("no price %v, no mass %v", b.NoPrice, b.NoMass)
	}
}

// TestSpares: five in a hundred, and one for few; none where none are asked for.
func TestSpares(t *testing.T) {
	for _, c := range []struct {
		name  string
		share float64
		want  int
	}{{"none", 0, 0}, {"a twentieth of 39", 0.05, 2}, {"as many again", 1, 39}, {"few", 0.001, 1}} {
		p := planned.Demo(t, func(d *design.Design) { d.Build.Spares = c.share })
		for _, it := range bill.Of(p, shell.Plan{}, 0).Items {
			if it.Kind == bill.Driver && it.Spares != c.want {
				t.Errorf("%s: %d", c.name, it.Spares)
			}
		}
	}
}

// TestSegments: a shell printed in one piece stands in one row; its segments in rows of their own
// from two on.
func TestSegments(t *testing.T) {
	p := planned.Demo(t, nil)
	for _, c := range []struct{ segments, want int }{{0, 0}, {1, 0}, {2, 2}, {3, 3}} {
		got := 0
		for _, it := range bill.Of(p, shell.Plan{Segments: make([]shell.Segment, c.segments)}, 0).Items {
			if it.Kind == bill.Segment {
				got++
			}
		}
		if got != c.want {
			t.Errorf("%d segments: %d rows", c.segments, got)
		}
	}
}

// box is a closed box as a mesh, standing in for a shell.
func box(at r3.Vec, half float64) poly.Mesh {
	s := poly.Box(half)
	var m poly.Mesh
	for _, v := range s.Vertices {
		m.Vertices = append(m.Vertices, r3.Add(v, at))
	}
	for _, f := range s.Faces {
		for k := 2; k < len(f.Corners); k++ {
			m.Triangles = append(m.Triangles, [3]int{f.Corners[0], f.Corners[k-1], f.Corners[k]})
		}
	}
	return m
}

// TestBalance: a lever by hand. Drivers of a whole solid balance each other, one that is left
// out pulls the middle to the other side; a box aside leans by the angle to its middle.
func TestBalance(t *testing.T) {
	a, err := layout.Build(design.Default())
	if err != nil {
		t.Fatal(err)
	}
	if _, known := bill.BalanceOf(a, box(r3.Vec{}, 0.1)); known {
		t.Error("the balance of drivers whose mass is not known")
	}
	a.Driver.Mass, a.Driver.Depth, a.Print.Density = 0.030, 0, 1000
	a.On = layout.OnCeiling
	var sum r3.Vec
	for _, m := range a.Own() {
		sum = r3.Add(sum, m.Point)
	}
	n := float64(len(a.Own()))
	aside := r3.Vec{X: 0.03, Z: 0.02}
	b, known := bill.BalanceOf(a, box(aside, 0.05)) // 1 kg
	want := r3.Scale(1/(1+0.030*n), r3.Add(aside, r3.Scale(0.030, sum)))
	if !known || math.Abs(b.Mass-1-0.030*n) > 1e-12 || r3.Norm(r3.Sub(b.Centre, want)) > 1e-12 {
		t.Fatalf("%+v, want %v", b, want)
	}
	down := math.Hypot(want.X, want.Y)
	if lean := math.Atan2(down, b.Hook.Z-want.Z); math.Abs(b.Lean-lean) > 1e-12 {
		t.Errorf("leans by %v, want %v", b.Lean, lean)
	}
	if math.Abs(b.Counter*a.Body.Radius-b.Mass*down) > 1e-12 {
		t.Errorf("counterweight %v", b.Counter)
	}
	// A half ball that hangs by its cut face, whose top is down then: the middle is below it.
	hung := *a
	hung.Placings = []layout.Placing{{Turn: design.Placing{On: design.OnCeiling}.Turn(design.Angles{})}}
	if down, _ := bill.BalanceOf(&hung, box(aside, 0.05)); math.Abs(down.Lean-math.Atan2(math.Hypot(want.X, want.Y), want.Z-down.Hook.Z)) > 1e-12 || want.Z < down.Hook.Z {
		t.Errorf("hung by its cut face it leans by %v of %+v", down.Lean, down)
	}
	a.Driver.Depth = 0.020 // drivers reach inward: so does the middle of each, along its own axis
	inner, _ := bill.BalanceOf(a, box(aside, 0.05))
	var in r3.Vec
	for _, m := range a.Own() {
		in = r3.Add(in, r3.Scale(0.6*0.020*0.030, m.Normal))
	}
	if off := r3.Sub(r3.Sub(b.Centre, inner.Centre), r3.Scale(1/b.Mass, in)); r3.Norm(off) > 1e-12 {
		t.Errorf("off by %v", off)
	}
}
