package impedance_test

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout/impedance"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

// network is a circuit of two-terminal parts between nodes, node 0 being ground:
// a solver that knows nothing of strings. It sets up the modified nodal equations
// (C. W. Ho, A. E. Ruehli and P. A. Brennan, IEEE Trans. Circuits Syst. 22 (1975)
// 504), every part with its own current, and solves them with the complex numbers
// written as blocks of real ones.
type network struct {
	nodes int
	parts []part
}

type part struct {
	from, to int
	z        complex128
	open     bool
	volt     float64 // a source where above 0
}

func (n *network) node() int { n.nodes++; return n.nodes }

// add adds a part and returns its number.
func (n *network) add(p part) int { n.parts = append(n.parts, p); return len(n.parts) - 1 }

// solve returns the voltage of each node, node 0 first, and the current of each part.
func (n *network) solve(t *rapid.T) (volt, ampere []complex128) {
	size := n.nodes + len(n.parts)
	a, b := mat.NewDense(2*size, 2*size, nil), mat.NewVecDense(2*size, nil)
	set := func(row, col int, v complex128) {
		a.Set(row, col, a.At(row, col)+real(v))
		a.Set(row+size, col+size, a.At(row+size, col+size)+real(v))
		a.Set(row, col+size, a.At(row, col+size)-imag(v))
		a.Set(row+size, col, a.At(row+size, col)+imag(v))
	}
	for i, p := range n.parts {
		row := n.nodes + i
		for _, end := range []struct {
			node int
			sign complex128
		}{{p.from, 1}, {p.to, -1}} {
			if end.node > 0 {
				set(end.node-1, row, end.sign) // currents at the joint sum to 0
				if !p.open {
					set(row, end.node-1, end.sign)
				}
			}
		}
		switch {
		case p.open:
			set(row, row, 1)
		case p.volt > 0:
			b.SetVec(row, p.volt)
		default:
			set(row, row, -p.z)
		}
	}
	var x mat.VecDense
	if err := x.SolveVec(a, b); err != nil {
		t.Fatal(err)
	}
	at := func(i int) complex128 { return complex(x.AtVec(i), x.AtVec(i+size)) }
	volt = make([]complex128, n.nodes+1)
	for i := range n.nodes {
		volt[i+1] = at(i)
	}
	for i := range n.parts {
		ampere = append(ampere, at(n.nodes+i))
	}
	return volt, ampere
}

// TestFlowAgainstNodalSolution wires random banks, drivers of different
// impedance, some dead, part by part into the nodal solver.
func TestFlowAgainstNodalSolution(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lengths := rapid.SliceOfN(rapid.IntRange(1, 6), 1, 6).Draw(t, "lengths")
		volt := rapid.Float64Range(0.5, 40).Draw(t, "volt")
		b, err := impedance.NewBank(lengths, rapid.Float64Range(0.01, 2).Draw(t, "feed"), rapid.Float64Range(0.001, 1).Draw(t, "wire"))
		if err != nil {
			t.Fatal(err)
		}
		z := make([]complex128, b.Count())
		for i := range z {
			z[i] = complex(rapid.Float64Range(1, 40).Draw(t, "ohm"), rapid.Float64Range(-20, 20).Draw(t, "reactance"))
		}
		var n network
		source, top := n.node(), n.node()
		supply := n.add(part{from: source, volt: volt})
		n.add(part{from: source, to: top, z: complex(b.FeedOhm, 0)})
		var wires, drivers []int
		for _, s := range b.Strings {
			gap := false
			at := n.node()
			wires = append(wires, n.add(part{from: top, to: at, z: complex(s.WireOhm, 0)}))
			for d := range s.Drivers {
				state := impedance.State(rapid.IntRange(0, 2).Draw(t, "state"))
				if state == impedance.Open && gap {
					state = impedance.Alive // a node between two gaps floats
				}
				gap = gap || state == impedance.Open
				s.Drivers[d] = state
				next := 0
				if d < len(s.Drivers)-1 {
					next = n.node()
				}
				p := part{from: at, to: next, z: z[len(drivers)], open: state == impedance.Open}
				if state == impedance.Shorted {
					p.z = 0
				}
				drivers = append(drivers, n.add(p))
				at = next
			}
		}
		v, i := n.solve(t)
		var flow impedance.Flow
		b.Flow(&flow, z, volt)

		near := func(name string, got, want complex128, scale float64) {
			if cmplx.Abs(got-want) > 1e-11*scale {
				t.Fatalf("%s %v, the nodal solution has %v", name, got, want)
			}
		}
		most := cmplx.Abs(i[supply])
		near("amplifier", flow.Ampere, -i[supply], most)
		near("bank", flow.BankVolt, v[top], volt)
		if most > 0 {
			load := complex(volt, 0) / -i[supply]
			near("load", flow.Load, load, cmplx.Abs(load))
		} else if !cmplx.IsInf(flow.Load) {
			t.Fatalf("load %v, but no current flows", flow.Load)
		}
		sum := -flow.Ampere
		for s, w := range wires {
			near("string", flow.String[s], i[w], most)
			sum += flow.String[s]
		}
		near("joint", sum, 0, most)
		watts := make([]float64, len(z))
		b.Watts(watts, &flow)
		total, driver := 0.0, 0
		for s, str := range b.Strings {
			amps := cmplx.Abs(flow.String[s])
			total += amps * amps * str.WireOhm
			for _, state := range str.Drivers {
				p := n.parts[drivers[driver]]
				near("driver", flow.Volt[driver], v[p.from]-v[p.to], volt)
				if state != impedance.Alive && watts[driver] != 0 {
					t.Fatalf("a driver that is %v gets %g W", state, watts[driver])
				}
				total += watts[driver]
				driver++
			}
		}
		total += most * most * b.FeedOhm
		if given := real(flow.Ampere) * volt; math.Abs(total-given) > 1e-11*given {
			t.Fatalf("%g W used of %g W", total, given)
		}
	})
}
