package impedancefit

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout/box"
	"pappus/layout/impedance"
)

// TestThresholds: where each line is drawn, and why there.
func TestThresholds(t *testing.T) {
	good := Fit{Resonance: Estimate{100, 1}, Qts: Estimate{1, 0.01}, DCOhm: Estimate{7, 0}, Qes: Estimate{1, 0}, seen: [2]float64{20, 20000}}
	changed := func(change func(*Fit)) Fit {
		f := good
		change(&f)
		return f
	}
	misfit := func(m float64) Fit { return changed(func(f *Fit) { f.Systematic, f.Misfit = true, m }) }
	unsure := func(e float64) error { return changed(func(f *Fit) { f.Qts.Error = e }).judge() }
	offPlan := func(ohm float64) bool { return Study{Fit: good, PlannedOhm: 7 / ohm}.OffPlan() }
	shifted := func(hz float64) error {
		_, err := good.Mechanical(changed(func(f *Fit) { f.Resonance.Value = hz }), Second{Mass: 1e-3, Area: 1e-3, Air: box.Air{Density: 1.2, SoundSpeed: 343}})
		return err
	}
	load := func(at, other float64) Load {
		var l Load
		l.choose(at, []Cause{{State: impedance.Alive, Ratio: 1}, {State: impedance.Open, Ratio: math.Exp(other)}}, Tolerance)
		return l
	}
	filled := func(share, octaves float64) error {
		const low, high = 100.5, 804.0 // three octaves, of which the end, of so many, has a share
		whole := make([]complex128, 1000)
		for hz := range whole {
			at := math.Log2(float64(hz)/low) * 3
			size := math.Exp2(-at / 3 / 2)
			if at > 9-3*octaves {
				size *= math.Sqrt(share)
			}
			whole[hz] = complex(size, 0)
		}
		return reaches(whole, 1, low, high)
	}
	bump := func(height, noise float64) error {
		log := make([]float64, 101)
		for i := range log {
			x := float64(i-50) / 12
			log[i] = height*math.Exp(-x*x) + noise*float64(1-2*(i%2))
		}
		_, err := peak(log)
		return err
	}
	// share of the phase that goes with the peak, with so many standard errors of it by noise
	phases := func(over, share, sigma float64) error {
		d := definitions{Resonance: 100, PeakOhm: 7 * over, DCOhm: 7, Low: 50, High: 200, Qms: 3}
		var points []impedance.Point
		one := 0.0
		for hz := 50.0; hz <= 200; hz *= 1.05 {
			want := cmplx.Phase(complex(7, 0) + impedance.Motional(7*(over-1), 3, hz/100))
			one += want * want
			points = append(points, impedance.Point{Frequency: hz, Ohm: 7, Degrees: share * want * 180 / math.Pi})
		}
		n := float64(len(points))
		for i := range points {
			points[i].Degrees += sigma * math.Sqrt(one*(n-1)/n) * float64(1-2*(i%2)) * 180 / math.Pi
		}
		return d.phases(points)
	}
	for _, test := range []struct {
		why       string
		got, want bool
	}{
		{"1.1 percent that is not noise is worth a second look", misfit(0.011).Rough(), true},
		{"0.9 percent is what meters leave", misfit(0.009).Rough(), false},
		{"8.5 percent is no driver with one resonance", misfit(0.085).judge() == nil, false},
		{"7.5 percent may be one behind resistive openings", misfit(0.075).judge() == nil, true},
		{"a Qts known to 29 percent tells the box", unsure(0.29) == nil, true},
		{"one known to 31 does not", unsure(0.31) == nil, false},
		{"Re that is 5.5 percent off has a wrong resistor in it", offPlan(1.055), true},
		{"4.5 percent are a warm coil", offPlan(1.045), false},
		{"a mass that lowers the resonance by three standard errors of both is there", shifted(95.5) == nil, true},
		{"by less it is noise", shifted(96) == nil, false},
		{"drivers differ by 5 percent: a load 4.5 percent off may be either", len(load(0, 0.045).Others) > 0, true},
		{"and 5.5 is told apart", len(load(0, 0.055).Others) > 0, false},
		{"9.5 percent off is twice that at most, and sure", load(0.095, 1).Sure, true},
		{"10.5 is explained by nothing", load(0.105, 1).Sure, false},
		{"a third of an octave 29.6 dB under the middle one is swept", filled(1.1e-3, 1.0/3) == nil, true},
		{"30.5 dB is not", filled(0.9e-3, 1.0/3) == nil, false},
		{"0.28 octaves that are not swept are part of a third that is", filled(0, 0.28) == nil, true},
		{"0.36 octaves are a third without a sweep", filled(0, 0.36) == nil, false},
		{"a peak of 5.5 percent is one", bump(0.055, 0) == nil, true},
		{"one of 4.5 is a meter's step", bump(0.045, 0) == nil, false},
		{"6.7 times the noise is a peak", bump(0.2, 0.014) == nil, true},
		{"5.4 times is none", bump(0.2, 0.018) == nil, false},
		{"27 percent of the phase that goes with the peak may be a poor meter's", phases(3, 0.27, 0) == nil, true},
		{"23 percent is none", phases(3, 0.23, 0) == nil, false},
		{"10 percent of it may be so too, where three standard errors are 17 more", phases(3, 0.1, 0.17/3) == nil, true},
		{"where they are 13 more it is none", phases(3, 0.1, 0.13/3) == nil, false},
		{"a peak of 1.25 Re hardly turns the phase", phases(1.25, 0, 0) == nil, true},
		{"one of 1.35 must", phases(1.35, 0, 0) == nil, false},
	} {
		t.Run(test.why, func(t *testing.T) {
			if test.got != test.want {
				t.Error(test.got)
			}
		})
	}
}
