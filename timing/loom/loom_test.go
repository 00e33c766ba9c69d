package loom_test

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/testdata/planned"
	"pappus/timing/loom"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestPieces: every piece against the law of cosines on the mounts' own polar places, from their
// numbers in the table of delays, and each driver in just one string.
func TestPieces(t *testing.T) {
	p := planned.Demo(t, nil)
	entry := r3.Vec{Z: p.Array.Body.Lowest()}
	polar := func(m int) (r, az, el float64) {
		v := entry
		if m != loom.Terminal {
			v = p.Array.Mounts[m].Point
		}
		r = math.Sqrt(v.X*v.X + v.Y*v.Y + v.Z*v.Z)
		return r, math.Atan2(v.Y, v.X), math.Asin(v.Z / max(r, 1e-12))
	}
	seen := map[int]int{}
	for _, s := range loom.Strings(p) {
		if len(s.Pieces) != len(s.Order)+1 || s.Pieces[0].From != loom.Terminal || s.Pieces[len(s.Order)].To != loom.Terminal {
			t.Fatalf("%+v", s)
		}
		wire := 0.0
		for i, c := range s.Pieces {
			if i > 0 && c.From != s.Pieces[i-1].To {
				t.Errorf("piece %d begins at %d", i, c.From)
			}
			r1, a1, e1 := polar(c.From)
			r2, a2, e2 := polar(c.To)
			angle := math.Sin(e1)*math.Sin(e2) + math.Cos(e1)*math.Cos(e2)*math.Cos(a1-a2)
			want := math.Sqrt(r1*r1 + r2*r2 - 2*r1*r2*angle)
			if math.Abs(c.Straight-want) > 1e-9 {
				t.Errorf("from %d to %d: %.6f m, want %.6f", c.From, c.To, c.Straight, want)
			}
			if over := c.Cut - want - 2*0.060; over < -1e-9 || over >= loom.Step {
				t.Errorf("cut %.3f m for %.4f", c.Cut, want)
			}
			if cm := 100 * c.Cut; math.Abs(cm-math.Round(cm)) > 1e-9 {
				t.Errorf("cut %.4f m: no whole centimetres", c.Cut)
			}
			wire += c.Cut * 1e-6 / 58 / 0.5e-6 // IEC 60028
		}
		if math.Abs(wire-s.WireOhm) > 1e-12 {
			t.Errorf("%.6f ohm of wire, want %.6f", s.WireOhm, wire)
		}
		for _, m := range s.Order {
			seen[m]++
		}
	}
	for m := range p.Array.Mounts {
		if seen[m] != 1 {
			t.Errorf("driver %d is in %d strings", p.Array.Mounts[m].ID, seen[m])
		}
	}
}

// TestBatches: all pieces are in them, once.
func TestBatches(t *testing.T) {
	strings := loom.Strings(planned.Demo(t, nil))
	length, count := 0.0, 0
	for _, s := range strings {
		length += s.Length()
		count += len(s.Pieces)
	}
	last := 0.0
	for _, b := range loom.Batches(strings) {
		if b.Cut <= last || b.Count < 1 {
			t.Errorf("%+v after %.2f", b, last)
		}
		last = b.Cut
		length -= float64(b.Count) * b.Cut
		count -= b.Count
	}
	if math.Abs(length) > 1e-9 || count != 0 {
		t.Errorf("%.3f m and %d pieces are in none", length, count)
	}
}

func in(r loom.Range, ohm float64) bool { return ohm >= r.Least && ohm <= r.Most }

// TestSeen: an eye sees a tenth of a millimetre.
func TestSeen(t *testing.T) {
	if loom.Seen != 0.0001 {
		t.Errorf("%g m", loom.Seen)
	}
}

// TestPlaces: a driver 114 degrees from the top is drawn with the others, one at 116 makes two
// discs, which part at the equator. The loudspeaker's left is at the right of what is seen from
// below, and at the left of what is seen from above.
func TestPlaces(t *testing.T) {
	left := func(degrees float64) layout.Mount {
		a := degrees * math.Pi / 180
		var m layout.Mount
		m.Point = r3.Vec{Y: 0.1 * math.Sin(a), Z: 0.1 * math.Cos(a)}
		return m
	}
	for _, c := range []struct {
		name    string
		degrees []float64
		right   []float64
		lower   []bool
	}{
		{"one disc", []float64{0, 57, 75, 100, 114}, []float64{0, 0.5, 75.0 / 114, 100.0 / 114, 1}, make([]bool, 5)},
		{"two discs", []float64{45, 75, 90, 100, 116}, []float64{0.5, 75.0 / 90, 1, -80.0 / 90, -64.0 / 90}, []bool{false, false, false, true, true}},
	} {
		var a layout.Array
		for _, d := range c.degrees {
			a.Mounts = append(a.Mounts, left(d))
		}
		places, halves := loom.Places(&a)
		if halves != c.lower[len(c.lower)-1] {
			t.Errorf("%s: %v", c.name, halves)
		}
		for i, p := range places {
			if math.Abs(p.Right-c.right[i]) > 1e-12 || math.Abs(p.Up) > 1e-12 || p.Lower != c.lower[i] {
				t.Errorf("%s, %g degrees: %+v, want %g to the right", c.name, c.degrees[i], p, c.right[i])
			}
		}
	}
}

// TestReadings: by Ohm's law at both ends of the tolerance, and what of faults it tells: of a
// string of two a short for certain, of one of thirteen not; of two strings an open one for
// certain, of twelve not.
func TestReadings(t *testing.T) {
	p := planned.Demo(t, nil)
	ohm := p.Array.Driver.DCOhm
	made := func(n int) loom.String {
		return loom.String{Order: make([]int, n), WireOhm: 0.02}
	}
	for _, c := range []struct {
		n    int
		told bool
	}{{1, true}, {2, true}, {5, true}, {6, false}, {13, false}} {
		r := loom.ReadString(p, made(c.n))
		n := float64(c.n)
		if math.Abs(r.Whole.Least-(0.9*n*ohm+0.02)) > 1e-9 || math.Abs(r.Whole.Most-(1.1*n*ohm+0.02)) > 1e-9 {
			t.Errorf("%d drivers read %+v", c.n, r.Whole)
		}
		if r.Short.Told != c.told || !in(r.Short.Reads, (n-1)*ohm+0.02) {
			t.Errorf("%d drivers, one shorted: %+v", c.n, r.Short)
		}
		if want := 1.5 / n * p.Cone().Excursion(0) / math.Sqrt2; math.Abs(r.Move-want) > 1e-12 {
			t.Errorf("a cell moves the cones by %v, want %v", r.Move, want)
		}
	}
	for _, c := range []struct {
		strings int
		told    bool
	}{{1, true}, {2, true}, {3, true}, {12, false}} {
		all := make([]loom.String, c.strings)
		for i := range all {
			all[i] = made(2)
		}
		r := loom.ReadChannel(p, all)
		whole, open := r.Whole.Behind(0.1), r.Open.Reads.Behind(0.1)
		if want := (2*ohm+0.02)/float64(c.strings) + 0.1; math.Abs(whole.Ohm-want) > 1e-12 || !in(whole, want) || r.Open.Told != c.told {
			t.Errorf("%d strings: %+v", c.strings, r)
		}
		if c.strings > 1 && !in(open, (2*ohm+0.02)/float64(c.strings-1)+0.1) {
			t.Errorf("%d strings, one open: %+v", c.strings, r.Open)
		}
	}
	// Strings that differ: the one that is missed least is the longest.
	r := loom.ReadChannel(p, []loom.String{made(1), made(4)})
	if !in(r.Open.Reads, ohm+0.02) {
		t.Errorf("%+v", r.Open)
	}
	unknown := *p
	a := *p.Array
	unknown.Array = &a
	a.Driver.Small.BL = 0
	if r := loom.ReadString(&unknown, made(1)); !math.IsNaN(r.Move) {
		t.Error("cones move of which nothing is known")
	}
}
