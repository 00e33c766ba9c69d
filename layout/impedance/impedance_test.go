package impedance_test

import (
	"fmt"
	"math"
	"math/cmplx"
	"strings"
	"testing"

	"pappus/layout/impedance"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// small is a small wide-band driver of invented values.
var small = impedance.Driver{Resonance: 220, QMS: 3.2, QES: 0.9, DCOhm: 7.1, Inductance: 0.12e-3}

func curve(t testing.TB, d impedance.Driver) impedance.Curve {
	t.Helper()
	c, err := impedance.New(d)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func bank(t testing.TB, lengths []int, feed, wire float64) impedance.Bank {
	t.Helper()
	b, err := impedance.NewBank(lengths, feed, wire)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// Small 1972: at resonance the moving part is Re Qms/Qes and real; r0 is the
// peak over Re, and at f1 and f2, where f1 f2 = fs^2 and the magnitude is Re
// sqrt(r0), Qms = fs sqrt(r0)/(f2-f1). That rule for reading the Q off a measured
// curve is the reverse of the model and holds without inductance.
func TestDriver(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := impedance.Driver{
			Resonance: rapid.Float64Range(20, 900).Draw(t, "fs"),
			QMS:       rapid.Float64Range(0.5, 12).Draw(t, "Qms"),
			QES:       rapid.Float64Range(0.2, 3).Draw(t, "Qes"),
			DCOhm:     rapid.Float64Range(1, 30).Draw(t, "Re"),
		}
		c, err := impedance.New(d)
		if err != nil {
			t.Fatal(err)
		}
		r0 := 1 + d.QMS/d.QES
		if off := c.At(d.Resonance) - complex(d.DCOhm*r0, 0); cmplx.Abs(off) > 1e-12*d.DCOhm*r0 {
			t.Fatalf("%v at resonance", c.At(d.Resonance))
		}
		apart := d.Resonance * math.Sqrt(r0) / d.QMS // f2 - f1, with f1 f2 = fs^2
		f2 := apart/2 + math.Hypot(apart/2, d.Resonance)
		for _, hz := range []float64{f2, d.Resonance * d.Resonance / f2} {
			if size := cmplx.Abs(c.At(hz)); math.Abs(size-d.DCOhm*math.Sqrt(r0)) > 1e-11*size {
				t.Fatalf("%g ohm at %g Hz, want %g", size, hz, d.DCOhm*math.Sqrt(r0))
			}
		}
	})
}

// The moving part is a parallel circuit of resistance, capacitance and inductance
// (Small 1972, figure 4): the same impedance from its three parts by name.
func TestDriverIsACircuit(t *testing.T) {
	c := curve(t, small)
	ws := 2 * math.Pi * small.Resonance
	res := small.DCOhm * small.QMS / small.QES
	capacitance, inductance := small.QMS/(ws*res), res/(ws*small.QMS)
	for hz := 5.0; hz < 40000; hz *= 1.1 {
		w := 2 * math.Pi * hz
		want := complex(small.DCOhm, w*small.Inductance) + 1/(complex(1/res, w*capacitance)+1/complex(0, w*inductance))
		if got := c.At(hz); cmplx.Abs(got-want) > 1e-12*cmplx.Abs(want) {
			t.Fatalf("%.1f Hz: %v, want %v", hz, got, want)
		}
	}
}

func TestMeasured(t *testing.T) {
	c, err := impedance.Measured([]impedance.Point{{100, 4, 170}, {400, 16, -170}, {1600, 16, -150}})
	if err != nil {
		t.Fatal(err)
	}
	tests := []struct {
		name             string
		hz, ohm, degrees float64
	}{
		{"below: held", 20, 4, 170},
		{"a point", 400, 16, -170},
		{"half way, the shorter way round", 200, 8, 180},
		{"half way", 800, 16, -160},
		{"above: held", 9000, 16, -150},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			want := cmplx.Rect(test.ohm, test.degrees*math.Pi/180)
			if got := c.At(test.hz); cmplx.Abs(got-want) > 1e-12*test.ohm {
				t.Errorf("%v, want %v", got, want)
			}
		})
	}
}

// TestMeasuredFollowsDriver: a fine table of the model gives it back.
func TestMeasuredFollowsDriver(t *testing.T) {
	model := curve(t, small)
	var points []impedance.Point
	for hz := 10.0; hz < 30000; hz *= math.Pow(2, 1.0/48) {
		z := model.At(hz)
		points = append(points, impedance.Point{Frequency: hz, Ohm: cmplx.Abs(z), Degrees: cmplx.Phase(z) * 180 / math.Pi})
	}
	table, err := impedance.Measured(points)
	if err != nil {
		t.Fatal(err)
	}
	for hz := 11.0; hz < 28000; hz *= 1.07 {
		if off := cmplx.Abs(table.At(hz)/model.At(hz) - 1); off > 2e-3 {
			t.Errorf("%.0f Hz: off by %.4f", hz, off)
		}
	}
}

// TestLoad: equal strings without wire divide the impedance
// as Ohm's law says; wire adds.
func TestLoad(t *testing.T) {
	c := curve(t, small)
	frequency := []float64{30, 220, 1000, 9000}
	z, got := make([]complex128, 4), make([]complex128, 4)
	c.Fill(z, frequency)
	tests := []struct {
		name       string
		lengths    []int
		feed, wire float64
		want       func(z complex128) complex128
	}{
		{"one driver", []int{1}, 0, 0, func(z complex128) complex128 { return z }},
		{"4 by 6", []int{4, 4, 4, 4, 4, 4}, 0, 0, func(z complex128) complex128 { return z * 4 / 6 }},
		{"3, 3 and 2", []int{3, 3, 2}, 0, 0, func(z complex128) complex128 { return z * 6 / 7 }},
		{"wire", []int{2, 2}, 0.3, 0.1, func(z complex128) complex128 { return 0.3 + (2*z+0.1)/2 }},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			bank(t, test.lengths, test.feed, test.wire).Load(got, z)
			for f := range z {
				if want := test.want(z[f]); cmplx.Abs(got[f]-want) > 1e-12*cmplx.Abs(want) {
					t.Errorf("%g Hz: %v, want %v", frequency[f], got[f], want)
				}
			}
		})
	}
}

// TestLowest compares with a fine search, and shows that the lowest magnitude is
// above the resistance yet far below what the nominal impedance may suggest.
func TestLowest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := small
		d.Resonance = rapid.Float64Range(60, 900).Draw(t, "fs")
		d.QMS = rapid.Float64Range(0.5, 9).Draw(t, "Qms")
		d.Inductance = rapid.Float64Range(0, 1e-3).Draw(t, "Le")
		c, err := impedance.New(d)
		if err != nil {
			t.Fatal(err)
		}
		b, err := impedance.NewBank([]int{3, 3, 2}, 0, 0)
		if err != nil {
			t.Fatal(err)
		}
		hz, ohm := b.Lowest(c, 20, 20000)
		if ohm < d.DCOhm*6/7 {
			t.Fatalf("%g ohm is below the resistance", ohm)
		}
		if at := cmplx.Abs(c.At(hz)) * 6 / 7; math.Abs(at-ohm) > 1e-12*ohm {
			t.Fatalf("%g ohm, but %g at %g Hz", ohm, at, hz)
		}
		for x := 20.0; x <= 20000; x *= 1.0005 {
			if other := cmplx.Abs(c.At(x)) * 6 / 7; other < ohm*(1-1e-9) {
				t.Fatalf("%g ohm at %g Hz, but %g at %g Hz", ohm, hz, other, x)
			}
		}
	})
}

// TestDeadShort: without wire nothing can be said but that the load is 0; with a
// feed the shorted strings share the current.
func TestDeadShort(t *testing.T) {
	var flow impedance.Flow
	b := bank(t, []int{1, 1, 1}, 0, 0)
	b.Strings[0].Drivers[0], b.Strings[1].Drivers[0] = impedance.Shorted, impedance.Shorted
	z := []complex128{8, 8, 8}
	b.Flow(&flow, z, 3)
	if flow.Load != 0 || flow.Known || !cmplx.IsNaN(flow.Ampere) || !cmplx.IsNaN(flow.String[2]) {
		t.Errorf("no wire: %+v", flow)
	}
	b.FeedOhm = 0.5
	b.Flow(&flow, z, 3)
	if diff := cmp.Diff([]complex128{3, 3, 0}, flow.String); diff != "" || flow.Load != 0.5 || flow.Ampere != 6 || !flow.Known {
		t.Errorf("fed: %+v", flow)
	}
}

// TestTwoGaps: they share the voltage in equal parts.
func TestTwoGaps(t *testing.T) {
	var flow impedance.Flow
	b := bank(t, []int{3}, 0, 0)
	b.Strings[0].Drivers[0], b.Strings[0].Drivers[2] = impedance.Open, impedance.Open
	b.Flow(&flow, []complex128{8, 8, 8}, 5)
	if diff := cmp.Diff([]complex128{2.5, 0, 2.5}, flow.Volt); diff != "" || flow.Ampere != 0 {
		t.Errorf("%s %+v", diff, flow)
	}
}

func TestErrors(t *testing.T) {
	table := func(p ...impedance.Point) error { _, err := impedance.Measured(p); return err }
	driver := func(change func(*impedance.Driver)) error {
		d := small
		change(&d)
		_, err := impedance.New(d)
		return err
	}
	bank := func(lengths []int, feed, wire float64) error {
		_, err := impedance.NewBank(lengths, feed, wire)
		return err
	}
	good := impedance.Point{Frequency: 100, Ohm: 8}
	tests := []struct {
		name string
		err  error
		want string
		says string
	}{
		{"no resonance", driver(func(d *impedance.Driver) { d.Resonance = 0 }), "impossible driver", "resonance"},
		{"no Qms", driver(func(d *impedance.Driver) { d.QMS = math.NaN() }), "impossible driver", "Qms"},
		{"endless Qes", driver(func(d *impedance.Driver) { d.QES = math.Inf(1) }), "impossible driver", "Qes"},
		{"no resistance", driver(func(d *impedance.Driver) { d.DCOhm = -7 }), "impossible driver", "-7"},
		{"inductance below 0", driver(func(d *impedance.Driver) { d.Inductance = -1 }), "impossible driver", "inductance"},
		{"one point", table(good), "impossible impedance table", "1 point,"},
		{"0 Hz", table(impedance.Point{Ohm: 8}, good), "impossible impedance table", "point 1"},
		{"0 ohm", table(good, impedance.Point{Frequency: 200}), "impossible impedance table", "0 ohm"},
		{"phase", table(good, impedance.Point{Frequency: 200, Ohm: 8, Degrees: 181}), "impossible impedance table", "181"},
		{"falling", table(good, good), "impossible impedance table", "rise"},
		{"no strings", bank(nil, 0, 0), "impossible bank", "no strings"},
		{"empty string", bank([]int{2, 0}, 0, 0), "impossible bank", "string 2"},
		{"wire", bank([]int{2}, 0, -1), "impossible bank", "-1 ohm"},
		{"feed", bank([]int{2}, math.NaN(), 0), "impossible bank", "nan"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if !strings.HasPrefix(test.err.Error(), test.want) || !strings.Contains(test.err.Error(), test.says) {
				t.Errorf("%v, want %v that says %q", test.err, test.want, test.says)
			}
		})
	}
}

func ExampleBank_Lowest() {
	c, _ := impedance.New(impedance.Driver{Resonance: 220, QMS: 3.2, QES: 0.9, DCOhm: 7.1, Inductance: 0.12e-3})
	b, _ := impedance.NewBank([]int{3, 3, 3, 3}, 0, 0)
	hz, ohm := b.Lowest(c, 100, 20000)
	fmt.Printf("%.2f ohm at %.0f Hz\n", ohm, hz)
	// Output: 5.36 ohm at 1713 Hz
}

func BenchmarkLoad(b *testing.B) {
	c, bk := curve(b, small), bank(b, []int{4, 4, 4, 4, 4, 4}, 0.2, 0.1)
	frequency, z, dst := make([]float64, 256), make([]complex128, 256), make([]complex128, 256)
	for f := range frequency {
		frequency[f] = 20 * math.Pow(1000, float64(f)/255)
	}
	b.ReportAllocs()
	for b.Loop() {
		c.Fill(z, frequency)
		bk.Load(dst, z)
	}
}

func BenchmarkLowest(b *testing.B) {
	c, bk := curve(b, small), bank(b, []int{4, 4, 4, 4, 4, 4}, 0.2, 0.1)
	b.ReportAllocs()
	for b.Loop() {
		bk.Lowest(c, 20, 20000)
	}
}

func BenchmarkFlow(b *testing.B) {
	bk := bank(b, []int{4, 4, 4, 4, 4, 4}, 0.2, 0.1)
	z := make([]complex128, bk.Count())
	for i := range z {
		z[i] = complex(7, 2)
	}
	var flow impedance.Flow
	b.ReportAllocs()
	for b.Loop() {
		bk.Flow(&flow, z, 5)
	}
}
