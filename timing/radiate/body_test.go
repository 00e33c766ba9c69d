package radiate

import (
	"math"
	"math/cmplx"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing/air"
	"pappus/timing/harmonic"

	"gonum.org/v1/gonum/spatial/r3"
)

// small is a cube with a driver on each face, solved for up to 500 Hz and a little more.
const small = `
[body]
shape = "cube"
radius_mm = 120
stand_height_mm = 20
[driver]
diameter_mm = 40
[wiring]
channels = 1
[spot]
x_m = 2
y_m = 0
z_m = 0
[timing]
model = "body"
solve_to_hz = 500
`

// laid lays a design out.
func laid(t testing.TB, text ...string) *layout.Array {
	t.Helper()
	d, err := design.Parse("small.toml", []byte(strings.Join(text, "\n")))
	if err != nil {
		t.Fatal(err)
	}
	a, err := layout.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// hearing is an array in still air at frequencies in Hz.
func hearing(t testing.TB, a *layout.Array, frequency ...float64) *Scene {
	t.Helper()
	s, err := NewScene(a, NewMedium(air.Air{Temperature: 293.15, Humidity: 0.5, Pressure: 101325}, frequency).WithoutLoss())
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// the places that sums are held at: some in a plane, some anywhere; all before the ceiling, the
// wall and the floor of the designs below.
func somewhere() []r3.Vec {
	var out []r3.Vec
	for i := range 12 {
		sin, cos := math.Sincos(0.4 * float64(i))
		out = append(out, r3.Vec{X: 0.9 + 0.8*cos, Y: 0.8 * sin, Z: -0.03 + 0.01*float64(i%3)})
	}
	return append(out, r3.Vec{X: 0.14, Y: 0.12, Z: 0.01}, r3.Vec{X: 3, Y: 1, Z: 0.05})
}

// placed are designs whose bodies are held, turned, copied and surrounded in every way.
var placed = map[string]string{
	"free":       "",
	"skipped":    "[mounts]\nskip = [2, 5]\n",
	"table":      "[surface]\nabsorption = 0.1\n",
	"ceiling":    "[placing]\non = \"ceiling\"\nyaw_deg = 20\n[surface]\nabsorption = 0.1\n",
	"wall":       "[placing]\non = \"wall\"\nyaw_deg = 20\npitch_deg = 5\n[surface]\nabsorption = 0.1\n",
	"two":        "[placing]\nyaw_deg = 20\nroll_deg = 10\n[[body_at]]\nx_m = 0.5\ny_m = -0.9\nz_m = 0\nyaw_deg = 50\n",
	"two, table": "[surface]\nabsorption = 0.1\n[[body_at]]\nx_m = 0.5\ny_m = -0.9\nz_m = 0\nyaw_deg = 50\n",
	"room":       "[placing]\nyaw_deg = 20\n[room]\nsize_m = [5, 4, 3]\nbody_at_m = [1.5, 2, 1.2]\nabsorption = 0.2\norder = 1\n",
}

// feeding is a feed that differs from mount to mount and over frequency.
func feeding(s *Scene) Feed {
	f := Feed{}
	for m := range s.Array.Mounts {
		f.Group = append(f.Group, m)
		row := make([]complex128, len(s.Medium.Frequency))
		for i := range row {
			row[i] = cmplx.Rect(1+0.3*math.Sin(float64(7*m)), float64(m*m)+0.001*s.Medium.Frequency[i])
		}
		f.Weight = append(f.Weight, row)
	}
	return f
}

// apart returns how far sums at places are from those driver by driver at each frequency, as
// a part of the root of the drivers' energies, at most.
func apart(s *Scene, feed Feed, places []r3.Vec, sum []complex128) []float64 {
	n := len(s.Medium.Frequency)
	heard, out := make([]complex128, len(s.Array.Mounts)*n), make([]float64, n)
	for p, at := range places {
		s.Hear(heard, s.Ways, at)
		one, energy := make([]complex128, n), make([]float64, n)
		feed.AddTo(one, heard)
		for i, v := range heard {
			energy[i%n] += real(v)*real(v) + imag(v)*imag(v)
		}
		for f := range one {
			out[f] = max(out[f], cmplx.Abs(one[f]-sum[p*n+f])/math.Sqrt(energy[f]))
		}
	}
	return out
}

// TestBodySums: sums over harmonics are those of the drivers one by one, however the body is
// held, wherever a plane or walls are and however many bodies there are; at the frequencies
// that the table has within the single precision that it is kept in, between them as near as two
// polynomials through it are to each other, above it as near as series of the ball.
func TestBodySums(t *testing.T) {
	for name, text := range placed {
		t.Run(name, func(t *testing.T) {
			a := laid(t, small, text)
			x, _ := newSolving(a)
			table, err := x.table(t.Context(), nil)
			if err != nil {
				t.Fatal(err)
			}
			speed := air.Air{Temperature: 293.15, Humidity: 0.5, Pressure: 101325}.SpeedOfSound()
			of := func(step float64) float64 { return step * table.Step * speed / (2 * math.Pi) }
			top := float64(len(table.Waves) - 1)
			s := hearing(t, a, of(2), of(2.5), of(0.4), of(0.85*top), of(1.3*top))
			feed, places := feeding(s), somewhere()
			sum := make([]complex128, len(places)*len(s.Medium.Frequency))
			s.NewSummed(feed, s.Ways, harmonic.Round(r3.Vec{Z: 1}), places).Add(sum, nil)
			off := apart(s, feed, places, sum)
			t.Logf("%.1e", off)
			for f, most := range []float64{1e-6, 2e-4, 1e-3, 2e-4, 1e-4} {
				if off[f] > most {
					t.Errorf("%.0f Hz: sums are %.1e off", s.Medium.Frequency[f], off[f])
				}
			}
		})
	}
}

// TestBodyPlane: the plane of the equations is that which mirrors what is heard, seen from the
// body, to the nanometre that it is kept to, and all of the body is before it.
func TestBodyPlane(t *testing.T) {
	for _, name := range []string{"table", "ceiling", "wall"} {
		a := laid(t, small, placed[name])
		plane, ways := plane(a), Ways(a, NewMedium(air.Air{Temperature: 293.15, Pressure: 101325}, []float64{100}))
		if !plane.Present {
			t.Fatalf("%s: none", name)
		}
		for _, at := range somewhere() {
			own, mirrored := ways[0].Moved(at), ways[1].Moved(at)
			want := r3.Sub(own, r3.Scale(2*(r3.Dot(own, plane.Normal)-plane.Height), plane.Normal))
			if r3.Norm(r3.Sub(mirrored, want)) > 1e-12 {
				t.Errorf("%s: %v mirrored is %v, want %v", name, own, mirrored, want)
			}
			if r3.Dot(own, plane.Normal) < plane.Height {
				t.Errorf("%s: %v is behind the plane", name, at)
			}
		}
		nearest := math.Inf(1)
		for _, v := range a.Body.Vertices {
			nearest = min(nearest, r3.Dot(v, plane.Normal)-plane.Height)
		}
		if math.Abs(nearest-0.02) > 1e-9 {
			t.Errorf("%s: the body is %g m before the plane, want 0.02", name, nearest)
		}
	}
	for _, name := range []string{"free", "room", "two, table"} {
		if a := laid(t, small, placed[name]); plane(a).Present {
			t.Errorf("%s: a plane", name)
		}
	}
}

// TestBodyHeldAsTurned: a body with its plane sounds as it does on a table where all is turned:
// under a ceiling and on a wall.
func TestBodyHeldAsTurned(t *testing.T) {
	table := hearing(t, laid(t, small, "[surface]\nabsorption = 0.1\n"), 150, 400)
	for name, turn := range map[string]func(r3.Vec) r3.Vec{ // from the room over the table
		"ceiling": func(v r3.Vec) r3.Vec { return r3.Vec{X: v.X, Y: -v.Y, Z: -v.Z} },
		"wall":    func(v r3.Vec) r3.Vec { return r3.Vec{X: v.Z, Y: v.Y, Z: -v.X} },
	} {
		s := hearing(t, laid(t, small, "[placing]\non = \""+name+"\"\n[surface]\nabsorption = 0.1\n"), 150, 400)
		n := 2 * len(s.Array.Mounts)
		for _, at := range []r3.Vec{{X: 2, Z: 0.2}, {X: -1, Y: 0.4, Z: 0.5}, {Y: 0.3, Z: 0.3}} {
			want, got := make([]complex128, n), make([]complex128, n)
			table.Hear(want, table.Ways, at)
			s.Hear(got, s.Ways, turn(at))
			for i := range got {
				if cmplx.Abs(got[i]-want[i]) > 1e-4*cmplx.Abs(want[i]) {
					t.Errorf("%s, %v, mount %d: %v, over a table %v", name, at, i/2+1, got[i], want[i])
				}
			}
		}
	}
}

// TestBodyOfNoPlaneIsAnother: the plane's part in the field is heard at the nearest.
func TestBodyOfNoPlaneIsAnother(t *testing.T) {
	free, table := hearing(t, laid(t, small), 400), hearing(t, laid(t, small, placed["table"]), 400)
	a, b := make([]complex128, 6), make([]complex128, 6)
	free.Field.At(a, free.Array.Mounts, r3.Vec{X: 2})
	table.Field.At(b, table.Array.Mounts, r3.Vec{X: 2})
	most := 0.0
	for i := range a {
		most = max(most, cmplx.Abs(a[i]-b[i])/cmplx.Abs(a[i]))
	}
	if most < 0.05 || most > 1 {
		t.Errorf("a table changes what the body gives by a part of %.3f", most)
	}
}
