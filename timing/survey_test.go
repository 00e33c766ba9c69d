package timing_test

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/layout/body"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestSurveyOfOnePoint: one point source is the same all round, and radiates what
// it radiates.
func TestSurveyOfOnePoint(t *testing.T) {
	a := plain(t)
	a.Body = body.Ball(0.15)
	a.Mounts = []layout.Mount{{ID: 1, Normal: r3.Vec{X: 1}, Face: -1}}
	a.Wiring.Channels = 0
	a.Coverage.Cells = 24
	p := plan(t, a)
	s, err := timing.Look(p)
	if err != nil {
		t.Fatal(err)
	}
	within := s.Above.AreaWithin(p.Array.Spot, 3)
	for b, o := range s.Octaves {
		if o.Reach != within[b] || o.Reach == 0 || o.Reach == s.Above.AreaWithin(p.Array.Spot, 3.7)[b] || o.Reach == s.Above.AreaWithin(p.Array.Spot, 2.3)[b] {
			t.Errorf("%g Hz: %g m2, within 3 dB are %g", o.Band, o.Reach, within[b])
		}
		if math.Abs(o.Directivity) > 1e-9 || math.Abs(o.Power) > 1e-9 || math.Abs(o.Unevenness) > 1e-9 {
			t.Errorf("%g Hz: %+v", o.Band, o)
		}
	}
	for _, r := range s.Omni.Aligned {
		if !r.Pass {
			t.Errorf("%g Hz: %+v", r.Band, r)
		}
	}
	if s.Reverb != nil {
		t.Error("a reverberation time without a room")
	}
}

// TestSurveyOfTwoPoints: the mean over directions of two equal sources d apart is
// 2 + 2 sin(kd)/(kd) (closed form; Kinsler et al., Fundamentals of Acoustics,
// ch. 7), here at low frequencies where three frequencies are nearly one.
func TestSurveyOfTwoPoints(t *testing.T) {
	a := plain(t)
	a.Body = body.Ball(0.15)
	a.Mounts = []layout.Mount{
		{ID: 1, Point: r3.Vec{Y: 0.15}, Normal: r3.Vec{Y: 1}, Face: -1},
		{ID: 2, Point: r3.Vec{Y: -0.15}, Normal: r3.Vec{Y: -1}, Face: -1},
	}
	a.Wiring.Channels = 0
	a.Coverage.Cells = 8
	a.Spot = r3.Vec{X: 2}
	p := plan(t, a)
	s, err := timing.Look(p)
	if err != nil {
		t.Fatal(err)
	}
	for _, o := range s.Octaves {
		want := 0.0
		for i := range 3 {
			low := o.Band * math.Pow(10, -0.15)
			kd := 2 * math.Pi * low * math.Pow(10, 0.3*(float64(i)+0.5)/3) / p.SpeedOfSound * 0.3
			want += (2 + 2*math.Sin(kd)/kd) / 3
		}
		if math.Abs(o.Power-10*math.Log10(want)) > 1e-3 || math.Abs(o.Directivity-10*math.Log10(4/want)) > 1e-3 {
			t.Errorf("%g Hz: %+v, want power %g dB", o.Band, o, 10*math.Log10(want))
		}
	}
}

// TestRoomIsTheFreeFieldWithoutWalls: walls that take everything leave what the
// free field has, and walls that take nothing do not.
func TestRoomIsTheFreeFieldWithoutWalls(t *testing.T) {
	a := demo(t)
	a.Surface.Present = false
	free := plan(t, a)
	a.Room = layout.Room{Present: true, Size: r3.Vec{X: 6, Y: 5, Z: 3}, Body: r3.Vec{X: 2, Y: 2, Z: 1}, Order: 2}
	for wall := range a.Room.Absorption {
		for b := range a.Room.Absorption[wall] {
			a.Room.Absorption[wall][b] = 1
		}
	}
	dead := plan(t, a)
	a.Room.Absorption = [6]layout.Absorption{}
	live := plan(t, a)
	for i, f := range free.Response.Frequency {
		if math.Abs(free.Response.Aligned[i]-dead.Response.Aligned[i]) > 1e-9 {
			t.Fatalf("%g Hz: free %g dB, dead room %g", f, free.Response.Aligned[i], dead.Response.Aligned[i])
		}
	}
	var gain float64
	for i := range live.Response.InStep {
		gain += (live.Response.InStep[i] - free.Response.InStep[i]) / float64(len(live.Response.InStep))
	}
	if gain < 3 {
		t.Errorf("hard walls add only %g dB", gain)
	}
	s, err := timing.Look(func() *timing.Plan { a.Coverage.Cells = 8; return plan(t, a) }())
	if err != nil {
		t.Fatal(err)
	}
	if z := s.Side.Point(0, 0).Z; math.Abs(z-(-1+s.Side.Step/2)) > 1e-12 {
		t.Errorf("the side slice begins at %g m, the floor is at -1", z)
	}
	if !math.IsNaN(s.Above.Level[0][0]) {
		t.Error("a cell outside the room has a level")
	}
	if len(s.Reverb) != 7 || s.Reverb[0].Sabine < 1 {
		t.Errorf("reverberation of a hard room: %v", s.Reverb)
	}
}

// TestSensitivityMakesLevelsAbsolute: one driver of 88 dB at 1 m in half space,
// 2.83 V, gives 82 dB as a point source at 1 m, and 6 dB less at 2 m (common
// practice).
func TestSensitivityMakesLevelsAbsolute(t *testing.T) {
	a := plain(t)
	a.Body = body.Ball(0.15)
	a.Mounts = []layout.Mount{{ID: 1, Point: r3.Vec{X: 0.15}, Normal: r3.Vec{X: 1}, Face: -1}}
	a.Wiring.Channels, a.Wiring.Voltage = 0, 2.83
	a.Driver.Sensitivity = 88
	a.Spot = r3.Vec{X: 2.15}
	p := plan(t, a)
	want := 88 - 20*math.Log10(2) - 20*math.Log10(2)
	if got := p.Response.Aligned[0]; !p.IsAbsolute() || math.Abs(got-want) > 0.001 {
		t.Errorf("got %g dB, want %g", got, want)
	}
	a.Wiring.Voltage = 28.3
	if got := plan(t, a).Response.Aligned[0]; math.Abs(got-want-20) > 0.001 {
		t.Errorf("ten times the voltage: got %g dB, want %g", got, want+20)
	}
}

// TestCautionForHearing: 85 dB(A) is the limit for eight hours that NIOSH
// recommends (publication 98-126).
func TestCautionForHearing(t *testing.T) {
	for _, test := range []struct {
		name        string
		volt        float64
		sensitivity float64
		warns       bool
	}{{"quiet", 0.1, 82, false}, {"loud", 10, 82, true}, {"not known", 10, math.NaN(), false}} {
		t.Run(test.name, func(t *testing.T) {
			a := demo(t)
			a.Wiring.Voltage, a.Driver.Sensitivity = test.volt, test.sensitivity
			p := plan(t, a)
			warns := false
			for _, w := range p.Warnings {
				warns = warns || w.Code == "hearing"
			}
			if warns != test.warns {
				t.Errorf("warnings: %+v", p.Warnings)
			}
		})
	}
}

// TestResonanceTakesTheBass: a high-pass of Q 0.7071 is 3 dB down at its
// resonance (Small, JAES 1972).
func TestResonanceTakesTheBass(t *testing.T) {
	a := plain(t)
	flat := plan(t, a)
	a.Driver.Resonance, a.Driver.ResonanceQ = 200, math.Sqrt(0.5)
	bass := plan(t, a)
	best, at := math.Inf(1), 0
	for i, f := range flat.Response.Frequency {
		if d := math.Abs(f - 200); d < best {
			best, at = d, i
		}
	}
	x := flat.Response.Frequency[at] / 200
	want := 10 * math.Log10(x*x*x*x/(1+x*x*x*x))
	if got := bass.Response.Aligned[at] - flat.Response.Aligned[at]; math.Abs(got-want) > 1e-6 {
		t.Errorf("got %g dB, want %g", got, want)
	}
}

func BenchmarkLook(b *testing.B) {
	p := plan(b, demo(b))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := timing.Look(p); err != nil {
			b.Fatal(err)
		}
	}
}
