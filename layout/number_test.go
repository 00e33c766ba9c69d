package layout

import (
	"bytes"
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"pappus/layout/design"
	"pappus/testdata/drawn"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// dome gives a few rings of mounts that begin on a turn in rad.
func dome(turn float64) []Mount {
	m := []Mount{{Point: r3.Vec{Z: 1}}}
	for ring, n := range []int{5, 8, 3} {
		z := 0.6 - 0.4*float64(ring)
		for i := range n {
			sin, cos := math.Sincos(turn + 2*math.Pi*float64(i)/float64(n))
			m = append(m, Mount{Point: r3.Vec{X: cos * math.Sqrt(1-z*z), Y: sin * math.Sqrt(1-z*z), Z: z}, Face: i})
		}
	}
	return m
}

// Numbers do not hang on the order in which the mounts were made, nor on the
// last bits of their places.
func TestNumberForgetsOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		seed := rapid.Uint64().Draw(t, "seed")
		want, got := dome(0), dome(0)
		number(want, 1)
		random := rand.New(rand.NewPCG(seed, 1))
		random.Shuffle(len(got), func(i, j int) { got[i], got[j] = got[j], got[i] })
		for i := range got {
			p := &got[i].Point
			*p = r3.Add(*p, r3.Vec{X: 1e-15 * random.NormFloat64(), Y: 1e-15 * random.NormFloat64(), Z: 1e-15 * random.NormFloat64()})
		}
		number(got, 1)
		for i := range want {
			if got[i].ID != want[i].ID || r3.Norm(r3.Sub(got[i].Point, want[i].Point)) > 1e-12 {
				t.Fatalf("mount %d is at %v, want %v", got[i].ID, got[i].Point, want[i].Point)
			}
		}
	})
}

// A body that is turned about its axis by less than the way from the last mount
// of each ring to x keeps its numbers.
func TestNumberTurnsWithTheBody(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		turn := rapid.Float64Range(0, 0.99*2*math.Pi/8).Draw(t, "turn in rad")
		want, got := dome(0), dome(turn)
		number(want, 1)
		number(got, 1)
		for i := range want {
			if got[i].ID != want[i].ID || got[i].Face != want[i].Face {
				t.Fatalf("mount %d was made as %d of its ring, want %d", got[i].ID, got[i].Face, want[i].Face)
			}
		}
	})
}

func FuzzResponse(f *testing.F) {
	drawn.Bytes(f, []string{
		"frequency_hz,level_db,phase_deg\n100,-6,90\n1000,0,-10\n",
		"\ufefffrequency_hz,level_db,phase_deg\r\n# note\r\n5e2,-0,+1\r\n0x1p12,1,-1e6\r\n",
		"frequency_hz,level_db,phase_deg\n\"1\n\",2,3\n1,nan,3\n",
		"frequency_hz;level_db;phase_deg\n100,5;-6;90\n1000;0;-10\n",
	}, func(t testing.TB, data []byte) {
		points, err := parseResponse("fuzz.csv", data)
		if err != nil {
			checkFault(t, err, data)
			return
		}
		last := 0.0
		for _, p := range points {
			if !(p.Frequency > last && p.Frequency <= 1e5) || !(math.Abs(p.Level) <= 500) || !(math.Abs(p.Phase) < 2e4) {
				t.Fatalf("%+v after %g Hz", p, last)
			}
			last = p.Frequency
		}
		if len(points) < 2 {
			t.Fatalf("%d points", len(points))
		}
	})
}

func FuzzImpedance(f *testing.F) {
	drawn.Bytes(f, []string{
		"frequency_hz,ohm,degrees\n100,8,45\n1000,6,-10\n",
		"\ufefffrequency_hz,ohm,degrees\r\n# note\r\n5e2,1e-3,+1\r\n0x1p12,1,-90\r\n",
		"frequency_hz,ohm,degrees\n1,0,0\n2,-1,0\n",
		"frequency_hz\tohm\tdegrees\n100\t8,1\t45°\n",
	}, func(t testing.TB, data []byte) {
		points, err := parseImpedance("fuzz.csv", data)
		if err != nil {
			checkFault(t, err, data)
			return
		}
		last := 0.0
		for _, p := range points {
			if !(p.Frequency > last && p.Frequency <= 1e5) || !(p.Ohm >= 0.001 && p.Ohm <= 1e9) || !(math.Abs(p.Degrees) <= 90) {
				t.Fatalf("%+v after %g Hz", p, last)
			}
			last = p.Frequency
		}
	})
}

// FuzzMicrophone: any bytes give a rising table or an error that names the file.
func FuzzMicrophone(f *testing.F) {
	const head = "frequency_hz,level_db\n"
	drawn.Bytes(f, []string{"", head, head + "20,0\n20000,1e1\n", "\ufeff" + head + "1,-0\n2,nan\n", "# \n\"frequency_hz\",level_db\n1,\"2\n"},
		func(t testing.TB, data []byte) {
			points, err := parseMicrophone("fuzz.csv", data)
			if err != nil {
				checkFault(t, err, data)
				return
			}
			last := 0.0
			for _, p := range points {
				if !(p.Frequency > last && math.Abs(p.Level) <= 100) {
					t.Fatalf("%+v after %g Hz", p, last)
				}
				last = p.Frequency
			}
		})
}

func FuzzMountList(f *testing.F) {
	drawn.Bytes(f, []string{
		"x_mm,y_mm,z_mm,nx,ny,nz\n0,0,100,0,0,1\n",
		"\ufeffx_mm,y_mm,z_mm,nx,ny,nz\r\n# note\r\n1e3,-0,+1,nan,0x1p-2,1\r\n",
		"x_mm,y_mm,z_mm,nx,ny,nz\n\"1\n\",2,3,4,5,6\n1,2,3\n",
		"x_mm;y_mm;z_mm;nx;ny;nz;number\n0;0;100,5;0;0;1;4\n0;100;0;0;1;0;9\n",
	}, func(t testing.TB, data []byte) {
		list, err := parseList("fuzz.csv", data)
		if err != nil {
			checkFault(t, err, data)
			return
		}
		for _, l := range list {
			if p := r3.Norm(l.Point); !(math.Abs(r3.Norm(l.Normal)-1) < 1e-12) || !(p > 0 && p < 20) || !(r3.Dot(l.Normal, l.Point) > 0) {
				t.Fatalf("line %d: %v", l.line, cmp.Diff(Mount{}, l.Mount))
			}
		}
	})
}

// checkFault fails where an error is not one that a user can read.
func checkFault(t testing.TB, err error, text []byte) {
	t.Helper()
	var e *design.Error
	if !errors.As(err, &e) || e.Line < 0 || e.Line > 2+bytes.Count(text, []byte("\n"))+bytes.Count(text, []byte("\r")) || e.Err == nil {
		t.Fatalf("%#v", err)
	}
	if strings.ContainsAny(err.Error(), "\n\r\x1b") {
		t.Fatalf("%q", err)
	}
}

// What a saw cannot keep is written finer, since it would be nothing.
func TestMillimetres(t *testing.T) {
	for m, want := range map[float64]string{0.045e-3: "0.05", 0.044e-3: "0.04", 0.055e-3: "0.1", 1.23e-3: "1.2", 0: "0.0"} {
		if got := millimetres(m); got != want {
			t.Errorf("%v m is %s mm, want %s", m, got, want)
		}
	}
}
