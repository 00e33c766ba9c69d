package unlike_test

import (
	"fmt"
	"math"
	"math/cmplx"
	"strings"
	"testing"

	"pappus/layout/impedance"
	"pappus/timing/unlike"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

// small is a small wide-band driver of invented values.
var small = unlike.Driver{Resonance: 150, Qms: 3.2, Qes: 1.14, DCOhm: 7.1, Inductance: 0.05e-3}

func solver(t testing.TB, n unlike.Network) *unlike.Solver {
	t.Helper()
	s, err := n.NewSolver()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// strung returns equal strings, count of so many drivers, on one channel and in one box.
func strung(count, drivers int) []unlike.String {
	out := make([]unlike.String, count)
	for i := range out {
		for k := range drivers {
			out[i].Places = append(out[i].Places, i*drivers+k)
		}
	}
	return out
}

// TestTwins: with all alike it is one driver in a closed box of its own part (Small 1972):
// resonance and both Q are those in free air times the root of 1 + stiffness.
func TestTwins(t *testing.T) {
	const stiffness = 3.7
	s := solver(t, unlike.Network{Nominal: small, Strings: strung(3, 4), Volt: []float64{8}, Stiffness: stiffness})
	up := math.Sqrt(1 + stiffness)
	c, err := impedance.New(impedance.Driver{Resonance: up * small.Resonance, QMS: up * small.Qms, QES: up * small.Qes, DCOhm: small.DCOhm, Inductance: small.Inductance})
	if err != nil {
		t.Fatal(err)
	}
	for hz := 20.0; hz < 20000; hz *= 1.3 {
		s.At(hz)
		want := 8 / (c.At(hz) * 4 / 3)
		if cmplx.Abs(s.Ampere[0]-want) > 1e-12*cmplx.Abs(want) {
			t.Errorf("%.0f Hz: %v A, want %v", hz, s.Ampere[0], want)
		}
		// i w v over the voltage far up the band: u2/(1 - u2 + i u/Q), the coil's inductance apart.
		u, motional := hz/(up*small.Resonance), c.At(hz)-complex(small.DCOhm, 2*math.Pi*hz*small.Inductance)
		if got := s.Velocity[7] * cmplx.Sqrt(complex(2*math.Pi*small.Resonance*small.DCOhm/small.Qes, 0)); cmplx.Abs(got-motional*s.String[1]) > 1e-12*cmplx.Abs(got) {
			t.Errorf("%.0f Hz (%.2f of the resonance): Bl v is %v, want %v", hz, u, got, motional*s.String[1])
		}
		if v := s.Volt[5]; cmplx.Abs(v-2) > 1e-12 {
			t.Errorf("%.0f Hz: %v V over a driver, want 2", hz, v)
		}
	}
}

// TestStringIsASum: without a box, a string's load is the sum of its drivers' impedances, and
// its current goes through each of them; levels differ as they are told.
func TestStringIsASum(t *testing.T) {
	other := unlike.Driver{Resonance: 190, Qms: 2.5, Qes: 0.8, DCOhm: 6.5, Inductance: 0.07e-3, Level: -1.2}
	s := solver(t, unlike.Network{Nominal: small, Strings: strung(1, 2), Volt: []float64{1}})
	if err := s.Fill([]unlike.Driver{small, other}); err != nil {
		t.Fatal(err)
	}
	ohm := func(d unlike.Driver, hz float64) complex128 {
		c, err := impedance.New(impedance.Driver{Resonance: d.Resonance, QMS: d.Qms, QES: d.Qes, DCOhm: d.DCOhm, Inductance: d.Inductance})
		if err != nil {
			t.Fatal(err)
		}
		return c.At(hz)
	}
	for hz := 20.0; hz < 20000; hz *= 1.3 {
		s.At(hz)
		if load, want := 1/s.Ampere[0], ohm(small, hz)+ohm(other, hz); cmplx.Abs(load-want) > 1e-12*cmplx.Abs(want) {
			t.Errorf("%.0f Hz: %v ohm, want %v", hz, load, want)
		}
	}
	s.At(1e6) // where both follow mass alone, the current is one: -1.2 times 6.5/7.1 for an ampere
	if got, want := s.Velocity[1]/s.Velocity[0], -1.2*6.5/7.1; math.Abs(real(got)-want) > 1e-6 || math.Abs(imag(got)) > 1e-3 {
		t.Errorf("%v times the nominal driver, want %.4f", got, want)
	}
}

// TestLevelFollowsFromMass: a driver that has the nominal moving mass is as loud as Bl/Re says.
func TestLevelFollowsFromMass(t *testing.T) {
	loose := small
	loose.Resonance, loose.Qms, loose.Qes = 120, small.Qms*120/150, small.Qes*120/150 // only softer
	if got := loose.LevelOf(small); math.Abs(got-1) > 1e-12 {
		t.Errorf("a softer suspension changes the level to %g", got)
	}
	hot := small
	hot.DCOhm, hot.Qes = 2*small.DCOhm, 2*small.Qes // more wire, the same Bl
	if got := hot.LevelOf(small); math.Abs(got-0.5) > 1e-12 {
		t.Errorf("twice the resistance makes it %g, want half", got)
	}
	if got := (unlike.Driver{DCOhm: 8}).LevelOf(small); got != 1 {
		t.Errorf("a driver that is not known to move: %g", got)
	}
}

// TestAgainstEquations solves each equation of the network in one dense system that knows
// nothing of strings or boxes.
func TestAgainstEquations(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := unlike.Network{Nominal: small, FeedOhm: rapid.Float64Range(0, 2).Draw(t, "feed"), Stiffness: rapid.Float64Range(0, 8).Draw(t, "stiffness")}
		var drivers []unlike.Driver
		for c := range rapid.IntRange(1, 3).Draw(t, "channels") {
			n.Volt = append(n.Volt, rapid.Float64Range(0.5, 20).Draw(t, "volt"))
			for range rapid.IntRange(1, 3).Draw(t, "strings") {
				s := unlike.String{Channel: c, Box: rapid.IntRange(0, 1).Draw(t, "box")}
				for range rapid.IntRange(1, 4).Draw(t, "drivers") {
					s.Places = append(s.Places, len(drivers))
					drivers = append(drivers, unlike.Driver{
						Resonance: rapid.Float64Range(80, 300).Draw(t, "fs"), Qms: rapid.Float64Range(1, 6).Draw(t, "Qms"),
						Qes: rapid.Float64Range(0.4, 2).Draw(t, "Qes"), DCOhm: rapid.Float64Range(3, 12).Draw(t, "Re"),
						Inductance: rapid.Float64Range(0, 2e-4).Draw(t, "Le"), Level: rapid.Float64Range(0.5, 2).Draw(t, "level")})
				}
				n.Strings = append(n.Strings, s)
			}
		}
		s, err := n.NewSolver()
		if err != nil {
			t.Fatal(err)
		}
		if err := s.Fill(drivers); err != nil {
			t.Fatal(err)
		}
		hz := rapid.Float64Range(20, 2000).Draw(t, "hz")
		s.At(hz)
		ampere, volt, velocity := equations(t, n, drivers, hz)
		near := func(name string, got, want []complex128) {
			scale := 0.0
			for _, v := range want {
				scale = max(scale, cmplx.Abs(v))
			}
			for i := range want {
				if cmplx.Abs(got[i]-want[i]) > 1e-9*scale {
					t.Fatalf("%s %d: %v, the equations have %v", name, i, got[i], want[i])
				}
			}
		}
		near("string", s.String, ampere)
		near("voltage", s.Volt, volt)
		near("velocity", s.Velocity, velocity)
	})
}

// equations solves for each string's current, each driver's voltage and velocity, each
// channel's voltage and each box's pressure.
func equations(t *rapid.T, n unlike.Network, drivers []unlike.Driver, hz float64) (ampere, volt, velocity []complex128) {
	w, strings, count, channels := 2*math.Pi*hz, len(n.Strings), len(drivers), len(n.Volt)
	const boxes = 2
	size := strings + 2*count + channels + boxes
	a, b := mat.NewDense(2*size, 2*size, nil), mat.NewVecDense(2*size, nil)
	row := 0
	set := func(col int, v complex128) {
		for _, e := range []struct {
			r, c int
			v    float64
		}{{row, col, real(v)}, {row + size, col + size, real(v)}, {row, col + size, -imag(v)}, {row + size, col, imag(v)}} {
			a.Set(e.r, e.c, a.At(e.r, e.c)+e.v)
		}
	}
	voltAt, velocityAt := func(i int) int { return strings + i }, func(i int) int { return strings + count + i }
	channelAt, boxAt := func(i int) int { return strings + 2*count + i }, func(i int) int { return strings + 2*count + channels + i }
	inBox := make([]float64, boxes)
	k0 := math.Sqrt(2*math.Pi*n.Nominal.Resonance*n.Nominal.DCOhm/n.Nominal.Qes) / n.Nominal.DCOhm
	for si, s := range n.Strings {
		inBox[s.Box] += float64(len(s.Places))
		for _, i := range s.Places {
			d := drivers[i]
			ws := 2 * math.Pi * d.Resonance
			square := ws * d.DCOhm / d.Qes // Bl2/M
			once := d.Level * k0 * d.DCOhm // Bl/M
			bl := square / once
			mass := bl / once
			set(voltAt(i), 1)
			set(si, -complex(d.DCOhm, w*d.Inductance))
			set(velocityAt(i), complex(-bl, 0))
			row++
			set(velocityAt(i), complex(mass, 0)*(complex(ws/d.Qms, w)+complex(ws*ws, 0)/complex(0, w)))
			set(si, complex(-bl, 0))
			set(boxAt(s.Box), 1)
			row++
		}
		for _, i := range s.Places {
			set(voltAt(i), 1)
		}
		set(channelAt(s.Channel), -1)
		row++
	}
	for c := range channels {
		set(channelAt(c), 1)
		for si, s := range n.Strings {
			if s.Channel == c {
				set(si, complex(n.FeedOhm, 0))
			}
		}
		b.SetVec(row, n.Volt[c])
		row++
	}
	ws := 2 * math.Pi * n.Nominal.Resonance
	for box := range boxes {
		set(boxAt(box), complex(0, w))
		for _, s := range n.Strings {
			for _, i := range s.Places {
				if s.Box == box {
					set(velocityAt(i), complex(-n.Stiffness*ws*ws/inBox[box], 0))
				}
			}
		}
		row++
	}
	var x mat.VecDense
	if err := x.SolveVec(a, b); err != nil {
		if _, poor := err.(mat.Condition); !poor {
			t.Fatal(err)
		}
	}
	at := func(i int) complex128 { return complex(x.AtVec(i), x.AtVec(i+size)) }
	for i := range strings {
		ampere = append(ampere, at(i))
	}
	for i := range count {
		volt, velocity = append(volt, at(voltAt(i))), append(velocity, at(velocityAt(i)))
	}
	return ampere, volt, velocity
}

// TestLooseMovesMore: in a shared box a driver with a softer suspension moves further below
// the resonance than its twins would, and theirs with it a little less.
func TestLooseMovesMore(t *testing.T) {
	s := solver(t, unlike.Network{Nominal: small, Strings: strung(8, 1), Volt: []float64{2}, Stiffness: 2})
	s.At(20)
	twin := cmplx.Abs(s.Velocity[0])
	drivers := make([]unlike.Driver, 8)
	for i := range drivers {
		drivers[i] = small
	}
	drivers[3].Resonance, drivers[3].Qms, drivers[3].Qes = 120, small.Qms*0.8, small.Qes*0.8
	if err := s.Fill(drivers); err != nil {
		t.Fatal(err)
	}
	s.At(20)
	// Far below the resonance forces alone count: with k the spring of a cone and K = 2 k of the
	// box, x = (F - K mean(x))/k. So the loose one, of 0.64 k, moves as its spring says.
	mean := (7 + 1/0.64) / 8 / (1 + 2*(7+1/0.64)/8) // of x over F/k
	loose, rest := (1-2*mean)/0.64*3, (1-2*mean)*3  // over the twins' 1/3
	if got := cmplx.Abs(s.Velocity[3]) / twin; math.Abs(got/loose-1) > 0.01 {
		t.Errorf("the loose one moves %.3f times as far, want %.3f", got, loose)
	}
	if got := cmplx.Abs(s.Velocity[0]) / twin; math.Abs(got/rest-1) > 0.01 {
		t.Errorf("the others move %.3f times as far, want %.3f", got, rest)
	}
}

// TestUnknown: of drivers whose cones are not known to move, voltage and resistance count.
func TestUnknown(t *testing.T) {
	plain := unlike.Driver{DCOhm: 8}
	s := solver(t, unlike.Network{Nominal: plain, Strings: strung(1, 2), Volt: []float64{2}, Stiffness: 1})
	if err := s.Fill([]unlike.Driver{{DCOhm: 8}, {DCOhm: 12, Level: 2}}); err != nil {
		t.Fatal(err)
	}
	s.At(100)
	if s.Ampere[0] != 0.1 || cmplx.Abs(s.Velocity[1]/s.Velocity[0]-3) > 1e-12 {
		t.Errorf("%v A, the second %v times as loud: want 0.1 and 3", s.Ampere[0], s.Velocity[1]/s.Velocity[0])
	}
}

func TestErrors(t *testing.T) {
	with := func(change func(*unlike.Network)) error {
		n := unlike.Network{Nominal: small, Strings: strung(2, 2), Volt: []float64{1}}
		change(&n)
		_, err := n.NewSolver()
		return err
	}
	tests := []struct {
		name   string
		change func(*unlike.Network)
		says   string
	}{
		{"no drivers", func(n *unlike.Network) { n.Strings = nil }, "no drivers"},
		{"a channel that is not there", func(n *unlike.Network) { n.Strings[1].Channel = 1 }, "string 2"},
		{"a place twice", func(n *unlike.Network) { n.Strings[1].Places = []int{0, 3} }, "place 0"},
		{"wire", func(n *unlike.Network) { n.FeedOhm = -1 }, "-1 ohm"},
		{"stiffness", func(n *unlike.Network) { n.Stiffness = math.NaN() }, "stiffness"},
		{"no resistance", func(n *unlike.Network) { n.Nominal.DCOhm = 0 }, "resistance"},
		{"no Qes", func(n *unlike.Network) { n.Nominal.Qes = 0 }, "Qes"},
		{"level", func(n *unlike.Network) { n.Nominal.Level = math.Inf(1) }, "finite"},
		{"inductance", func(n *unlike.Network) { n.Nominal.Inductance = -1 }, "inductance"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if err := with(test.change); err == nil || !strings.Contains(err.Error(), test.says) {
				t.Errorf("%v, want one that says %q", err, test.says)
			}
		})
	}
	s := solver(t, unlike.Network{Nominal: small, Strings: strung(1, 1), Volt: []float64{1}})
	if err := s.Fill([]unlike.Driver{{DCOhm: 8}}); err == nil {
		t.Error("a driver that is not known to move among others that are")
	}
}

func ExampleSolver_At() {
	n := unlike.Network{Nominal: small, Strings: []unlike.String{{Places: []int{0, 1}}}, Volt: []float64{2}}
	s, _ := n.NewSolver()
	soft := small
	soft.DCOhm = 10
	_ = s.Fill([]unlike.Driver{small, soft})
	s.At(1500)
	fmt.Printf("%.2f V and %.2f V\n", cmplx.Abs(s.Volt[0]), cmplx.Abs(s.Volt[1]))
	// Output: 0.83 V and 1.17 V
}

func BenchmarkAt(b *testing.B) {
	s := solver(b, unlike.Network{Nominal: small, Strings: strung(75, 4), Volt: []float64{8}, Stiffness: 2, FeedOhm: 0.1})
	b.ReportAllocs()
	for b.Loop() {
		s.At(300)
	}
}
