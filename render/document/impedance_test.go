package document_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"testing"

	"pappus/layout/dampinglog"
	"pappus/layout/impedance"
	"pappus/render/document"
	"pappus/timing/damping"
	"pappus/timing/impedancefit"
)

func decoded(t *testing.T, write func(*bytes.Buffer) error) map[string]any {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	var out map[string]any
	if err := json.Unmarshal(b.Bytes(), &out); err != nil {
		t.Fatal(err)
	}
	return out
}

func TestImpedanceJSON(t *testing.T) {
	curve, err := impedance.New(impedance.Driver{Resonance: 150, QMS: 3.2, QES: 1.14, DCOhm: 7.1, Inductance: 5e-5})
	if err != nil {
		t.Fatal(err)
	}
	var points []impedance.Point
	for i := range 241 {
		hz := 20 * math.Pow(1000, float64(i)/240)
		z := curve.At(hz) * complex(1+0.003*math.Sin(float64(i*i)), 0.003*math.Cos(float64(i*i)))
		points = append(points, impedance.Point{Frequency: hz, Ohm: math.Hypot(real(z), imag(z)), Degrees: math.Atan2(imag(z), real(z)) * 180 / math.Pi})
	}
	f, err := impedancefit.Best(points)
	if err != nil {
		t.Fatal(err)
	}
	got := decoded(t, func(b *bytes.Buffer) error { return document.Write(b, document.OfImpedance(f, nil)) })
	if hz := got["resonance_hz"].(map[string]any)["value"].(float64); math.Abs(hz-150) > 0.5 {
		t.Error(hz)
	}
	if got["vas_l"] != nil || got["driver"].(map[string]any)["qms"] == nil || got["coil"] != "ideal inductance" {
		t.Errorf("%v", got)
	}
	m := impedancefit.Mechanical{Vas: impedancefit.Estimate{Value: 1.36e-4, Error: 1e-6}, Mass: impedancefit.Estimate{Value: 1e-3}, BL: impedancefit.Estimate{Value: 2}}
	got = decoded(t, func(b *bytes.Buffer) error { return document.Write(b, document.OfImpedance(f, &m)) })
	if v := got["vas_l"].(map[string]any)["value"].(float64); v != 0.136 {
		t.Error(v)
	}
	load := impedancefit.Load{Ratio: 1.5, Cause: impedancefit.Cause{State: impedance.Open, Strings: 1, Length: 3, Ratio: 1.5}, Sure: true}
	got = decoded(t, func(b *bytes.Buffer) error { return document.Write(b, document.OfLoad(3, load, true)) })
	if got["cause"] != "a string of 3 is open" || got["sure"] != true || got["channel"] != 3.0 || len(got["others"].([]any)) != 0 {
		t.Errorf("%v", got)
	}
}

func TestTuningJSON(t *testing.T) {
	one := func(stuffing, q float64) damping.Trial {
		return damping.Trial{Trial: dampinglog.Trial{StuffingG: stuffing}, Q: impedancefit.Estimate{Value: q, Error: 0.01}, Uneven: math.NaN()}
	}
	trials := []damping.Trial{one(0, 1.4), one(40, 0.9)}
	g := damping.Goal{Q: 0.7, MostG: 90, StartG: 40}
	next, err := damping.Propose(trials, g)
	if err != nil {
		t.Fatal(err)
	}
	got := decoded(t, func(b *bytes.Buffer) error {
		return document.Write(b, document.OfTuning(damping.Study{Trials: trials, Goal: g, Next: next}))
	})
	n := got["next"].(map[string]any)
	if n["thing"] != "stuffing" || n["base"] != 2.0 || n["stuffing_g"] != next.Trial.StuffingG || len(got["changes"].([]any)) != 1 {
		t.Errorf("%v", got)
	}
	if first := got["trials"].([]any)[0].(map[string]any); first["uneven_db"] != nil || first["q"].(map[string]any)["value"] != 1.4 {
		t.Errorf("%v", first)
	}
	why := errors.New("no")
	got = decoded(t, func(b *bytes.Buffer) error {
		return document.Write(b, document.OfTuning(damping.Study{Goal: g, Why: why}))
	})
	if got["next"] != nil || got["why"] != "no" {
		t.Errorf("%v", got)
	}
}
