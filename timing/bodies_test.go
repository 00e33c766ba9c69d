package timing_test

import (
	"math"
	"slices"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"gonum.org/v1/gonum/spatial/r3"
)

// copyAt is one more body.
func copyAt(x, y, z, yaw float64, channels string) design.Copy {
	return design.Copy{At: r3.Vec{X: x, Y: y, Z: z}, Angles: design.Angles{YawDeg: yaw}, Channels: channels}
}

// far is by how many dB the mean of one list is over that of another, in energy.
func over(a, b []float64) float64 {
	mean := func(level []float64) (sum float64) {
		for _, v := range level {
			sum += math.Pow(10, v/10)
		}
		return sum / float64(len(level))
	}
	return 10 * math.Log10(mean(a)/mean(b))
}

// TestTwoBodies: two domes, one left and one right of who sits between them, each turned to
// the other: in step they are 6 dB louder than one, and out of step their energies add up to
// 3 dB more. A copy is heard as the body itself at its place.
func TestTwoBodies(t *testing.T) {
	spot := r3.Vec{X: 1.5, Z: 0.4}
	one := plan(t, built(t, func(d *design.Design) { d.Spot = spot }))
	two := plan(t, built(t, func(d *design.Design) {
		d.Spot, d.Copies = spot, []design.Copy{copyAt(3, 0, 0, 180, design.OwnChannels)}
	}))
	n := len(one.Arrivals)
	if d := cmp.Diff(one.Arrivals, two.Arrivals[:n], cmpopts.EquateApprox(1e-9, 1e-13), cmpopts.IgnoreFields(timing.Arrival{}, "Delay")); d != "" {
		t.Errorf("the first body: %s", d)
	}
	if d := cmp.Diff(one.Arrivals, two.Arrivals[n:], cmpopts.EquateApprox(1e-9, 1e-13), cmpopts.IgnoreFields(timing.Arrival{}, "Delay", "Channel")); d != "" {
		t.Errorf("its copy: %s", d)
	}
	if len(two.Channels) != 2*len(one.Channels) {
		t.Fatalf("%d channels", len(two.Channels))
	}
	for f := range one.Response.Frequency {
		for _, x := range [][2]float64{{two.Response.InStep[f], one.Response.InStep[f]}, {two.Response.Unaligned[f], one.Response.Unaligned[f]}} {
			if math.Abs(x[0]-x[1]-20*math.Log10(2)) > 1e-6 {
				t.Fatalf("%.0f Hz: %.3f dB more", one.Response.Frequency[f], x[0]-x[1])
			}
		}
	}
	if more := over(two.Response.Aligned, one.Response.Aligned); math.Abs(more-6.02) > 0.1 {
		t.Errorf("in step %.2f dB more", more)
	}
	heard := two.Bodies()
	if math.Abs(heard[0].Arrival-heard[1].Arrival) > 1e-12 || math.Abs(heard[0].Level+3.01) > 0.01 || math.Abs(heard[1].Distance-r3.Norm(spot)) > 1e-12 {
		t.Errorf("bodies %+v", heard)
	}

	far := plan(t, built(t, func(d *design.Design) {
		d.Spot, d.Copies = spot, []design.Copy{copyAt(4.4, 0, 0, 180, design.OwnChannels)}
	}))
	alone := plan(t, built(t, func(d *design.Design) { d.Spot = r3.Vec{X: 2.9, Z: 0.4} }))
	sum := make([]float64, len(one.Response.Frequency))
	for f := range sum {
		sum[f] = 10 * math.Log10(math.Pow(10, one.Response.Unaligned[f]/10)+math.Pow(10, alone.Response.Unaligned[f]/10))
	}
	if off := over(far.Response.Unaligned[100:], sum[100:]); math.Abs(off) > 0.3 {
		t.Errorf("energies add up but for %.2f dB", off)
	}
	if got, want := far.Bodies()[0].Delay-far.Bodies()[1].Delay, (alone.Bodies()[0].Arrival - one.Bodies()[0].Arrival); math.Abs(got-want) > 30e-6 {
		t.Errorf("programme delay %.3f ms, want %.3f", 1000*got, 1000*want)
	}
	hz, beside := two.BodyComb()
	u := r3.Unit(r3.Sub(r3.Vec{}, spot))
	v := r3.Unit(r3.Sub(r3.Vec{X: 3}, spot))
	if want := two.SpeedOfSound / 2 / 0.08 / r3.Norm(r3.Sub(u, v)); beside != 0.08 || math.Abs(hz-want) > 1e-9*want {
		t.Errorf("comb at %g Hz, want %g", hz, want)
	}
}

// TestFourBodies: four domes hung over a hall. Those as far from the spot are heard alike, and
// all together are what they are one by one.
func TestFourBodies(t *testing.T) {
	hall := func(d *design.Design) {
		d.Surface.Present, d.Placing.On = false, design.OnCeiling
		d.Room = layout.Room{Present: true, Size: r3.Vec{X: 16, Y: 12, Z: 4}, Body: r3.Vec{X: 4, Y: 8, Z: 4}, Order: 1}
		for i := range d.Room.Absorption {
			for band := range d.Room.Absorption[i] {
				d.Room.Absorption[i][band] = 0.3
			}
		}
	}
	at := []r3.Vec{{}, {X: 6}, {Y: -4}, {X: 6, Y: -4}}
	spot := r3.Vec{X: 3, Y: -2, Z: -2.5}
	all := plan(t, built(t, func(d *design.Design) {
		hall(d)
		d.Spot = spot
		for _, p := range at[1:] {
			d.Copies = append(d.Copies, design.Copy{At: p, Channels: design.OwnChannels})
		}
	}))
	n := len(all.Arrivals) / 4
	for i, p := range at {
		one := plan(t, built(t, func(d *design.Design) {
			hall(d)
			d.Spot = r3.Sub(spot, p)
			d.Room.Body = r3.Add(d.Room.Body, p)
		}))
		times := cmpopts.IgnoreFields(timing.Arrival{}, "Delay", "Channel", "Level")
		if d := cmp.Diff(one.Arrivals, all.Arrivals[i*n:(i+1)*n], cmpopts.EquateApprox(1e-9, 1e-13), times); d != "" {
			t.Errorf("body %d: %s", i+1, d)
		}
	}
	for i, h := range all.Bodies() {
		if math.Abs(h.Level+6.02) > 0.2 || math.Abs(h.Distance-r3.Norm(spot)) > 1e-12 {
			t.Errorf("body %d: %+v", i+1, h)
		}
	}
	// no body's strings hold those of the others down
	for _, c := range all.Channels {
		if c.Series > 2 {
			t.Errorf("channel %d has strings of %d", c.ID, c.Series)
		}
	}
}

// TestSharedChannels: bodies that share channels have their banks in parallel, each with the
// same strings, and the load is judged so.
func TestSharedChannels(t *testing.T) {
	p := plan(t, built(t, func(d *design.Design) {
		d.Spot, d.Copies = r3.Vec{X: 1.6, Y: -0.8, Z: 0.6}, []design.Copy{copyAt(0, -1.6, 0, 0, design.SharedChannels), copyAt(0, 3, 0, 0, design.OwnChannels)}
	}))
	a, n := p.Array, len(p.Arrivals)/3
	if len(p.Channels) != 16 {
		t.Fatalf("%d channels", len(p.Channels))
	}
	for i, c := range p.Channels {
		if c.DCOhm < a.Wiring.MinimumLoad {
			t.Errorf("channel %d loads the amplifier with %.2f ohm", c.ID, c.DCOhm)
		}
		half := len(c.Mounts)
		if i < 8 {
			half /= 2
			for k, m := range c.Mounts[:half] {
				if c.Mounts[half+k] != m+n {
					t.Errorf("channel %d drives %v", c.ID, a.IDs(c.Mounts))
				}
			}
		}
		drivers := 0
		for _, s := range p.Banks[i].Strings {
			drivers += len(s)
			if len(s) != c.Series || slices.ContainsFunc(s, func(m int) bool { return a.Mounts[m].Body != a.Mounts[s[0]].Body }) {
				t.Errorf("channel %d has the string %v", c.ID, a.IDs(s))
			}
		}
		if drivers != len(c.Mounts) || c.Series*c.Parallel != drivers {
			t.Errorf("channel %d has %d drivers in strings, %d of %d", c.ID, drivers, c.Parallel, c.Series)
		}
	}
	// Body 2 is further away by 0.9 ms, which is borne, and by 1.1 ms, which is told.
	for _, test := range []struct {
		late float64 // s
		told bool
	}{{0.9e-3, false}, {1.1e-3, true}} {
		late := plan(t, built(t, func(d *design.Design) {
			d.Spot, d.Copies = r3.Vec{X: 1.6, Z: 0.6}, []design.Copy{copyAt(3.2+p.SpeedOfSound*test.late*r3.Norm(r3.Vec{X: 1.6, Z: 0.6})/1.6, 0, 0, 180, design.SharedChannels)}
		}))
		i := slices.IndexFunc(late.Warnings, func(f timing.Finding) bool { return f.Code == "bodies_shared_late" })
		if (i >= 0) != test.told {
			t.Errorf("%.1f ms: told %v", 1000*test.late, i >= 0)
			continue
		}
		if i >= 0 {
			if f := late.Warnings[i].Fact.(timing.SharedLate); f.First != 1 || f.Last != 2 || math.Abs(f.Late-test.late) > 0.05e-3 {
				t.Errorf("%+v", f)
			}
		}
	}
}

// TestBodiesRoundTheRoom: the power of two bodies is twice that of one, and their directivity
// that of one; what hearing takes for all of them at the spot is the plan's level there.
func TestBodiesRoundTheRoom(t *testing.T) {
	for _, model := range []string{"sphere", "point"} {
		change := func(d *design.Design) {
			d.Surface.Present, d.Timing.Model, d.Wiring.Channels, d.Spot = false, model, 0, r3.Vec{X: 1.5}
			d.Mounts.Skip = nil
		}
		one := plan(t, built(t, change))
		two := plan(t, built(t, func(d *design.Design) { change(d); d.Copies = []design.Copy{copyAt(0, 1.2, 0, 0, design.OwnChannels)} }))
		a, err := timing.Look(one)
		if err != nil {
			t.Fatal(err)
		}
		b, err := timing.Look(two)
		if err != nil {
			t.Fatal(err)
		}
		for i := range a.Octaves[:3] {
			if more := b.Octaves[i].Power - a.Octaves[i].Power; math.Abs(more-3.01) > 0.5 {
				t.Errorf("%s: power %.2f dB more at %.0f Hz", model, more, a.Octaves[i].Band)
			}
			if more := b.Octaves[i].Directivity - a.Octaves[i].Directivity; math.Abs(more) > 0.5 {
				t.Errorf("%s: directivity %.2f dB more at %.0f Hz", model, more, a.Octaves[i].Band)
			}
		}
		heard := two.Transfer(nil, timing.Aligned, two.Response.Frequency)
		for f, v := range heard {
			if level := 10 * math.Log10(real(v)*real(v)+imag(v)*imag(v)); math.Abs(level-two.Response.Aligned[f]) > 1e-6 {
				t.Fatalf("%s: %.4f dB heard at %.0f Hz, %.4f planned", model, level, two.Response.Frequency[f], two.Response.Aligned[f])
			}
		}
	}
}
