package document_test

import (
	"bytes"
	"math"
	"testing"

	"pappus/render/document"
	"pappus/timing"
	"pappus/timing/sweep"

	"gonum.org/v1/gonum/spatial/r3"
)

// at follows keys and indices into a decoded document.
func at(in any, path ...any) any {
	for _, step := range path {
		switch step := step.(type) {
		case string:
			in = in.(map[string]any)[step]
		case int:
			in = in.([]any)[step]
		}
	}
	return in
}

// near tells whether a number of a document is a value, to a share.
func near(got any, want, share float64) bool {
	v, ok := got.(float64)
	return ok && math.Abs(v-want) <= share*math.Abs(want)
}

// TestWorkshop: what the sheets were computed from, in the units of the keys; what is not
// known is null.
func TestWorkshop(t *testing.T) {
	p, _ := demo(t)
	a := p.Array
	fits, segments := a.Fit(), must(a.Segments())(t)
	hollow := must(a.Hollow())(t)
	write := func() map[string]any {
		return decoded(t, func(b *bytes.Buffer) error {
			return document.Write(b, document.OfWorkshop(document.Written{Folder: "out", Files: []string{"a.csv"}}, a, fits, hollow, segments, "no shell", "no cut"))
		})
	}
	got := write()
	mass := 0.0
	for _, s := range segments.Segments {
		mass += 1000 * s.Mass
	}
	if at(got, "folder") != "out" || at(got, "shell", "no_shell") != "no shell" || at(got, "shell", "no_cut") != "no cut" ||
		!near(at(got, "shell", "mass_g"), mass, 1e-3) || !near(at(got, "shell", "segments"), float64(len(segments.Segments)), 0) {
		t.Errorf("shell %v", at(got, "shell"))
	}
	if len(at(got, "drivers", "at").([]any)) != len(a.Mounts) || at(got, "drivers", "at", 0, "fits") != fits.Reports[0].Fits(a.Limits) ||
		!near(at(got, "drivers", "largest_flange_mm"), 2000*fits.Largest.FlangeRadius, 1e-3) || !near(at(got, "drivers", "smallest_radius_mm"), 1000*fits.Smallest, 1e-3) {
		t.Errorf("drivers %v", at(got, "drivers"))
	}
	if hollow.Closed == nil || hollow.Vented == nil {
		t.Fatalf("the demo has no box: %+v", hollow)
	}
	if box := at(got, "box"); !near(at(box, "inside_l"), 1000*hollow.Room.Net, 1e-3) || !near(at(box, "resonance_hz"), hollow.Closed.Resonance, 1e-3) ||
		!near(at(box, "q"), hollow.Closed.Q, 1e-3) || !near(at(box, "stuffing_g"), 1000*hollow.Stuffing, 1e-3) || !near(at(box, "vent_holes"), float64(hollow.Vent.Number), 0) {
		t.Errorf("box %v", box)
	}
	hollow.Closed, hollow.Vented, fits.Smallest = nil, nil, 0
	got = write()
	if box := at(got, "box"); at(box, "q") != nil || at(box, "vent_holes") != nil || at(got, "drivers", "smallest_radius_mm") != nil {
		t.Errorf("of a box that is not known it says %v", box)
	}
}

func must[T any](v T, err error) func(testing.TB) T {
	return func(t testing.TB) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func TestSweepJSON(t *testing.T) {
	got := decoded(t, func(b *bytes.Buffer) error {
		return document.Write(b, document.OfSweep(document.Written{}, sweep.Sweep{Start: 50, Stop: 20000, Length: 3}, 48000, -12.3456, nil))
	})
	if at(got, "start_hz") != 50.0 || at(got, "stop_hz") != 20000.0 || at(got, "length_s") != 3.0 || at(got, "rate_hz") != 48000.0 || at(got, "level_db") != -12.346 ||
		len(at(got, "cautions").([]any)) != 0 {
		t.Errorf("%v", got)
	}
}

// TestComparison: one row for each design; an onset or an octave that there is not is null.
func TestComparison(t *testing.T) {
	p, _ := demo(t)
	omni := must(p.Omni())(t)
	q := *p
	q.Aligned.CombOnset = math.Inf(1)
	got := decoded(t, func(b *bytes.Buffer) error {
		return document.Write(b, map[string]any{"rows": document.OfComparison([]timing.Candidate{{Plan: p, Omni: omni, Unevenness: 1.23456, Within3DB: 2, Spatial: timing.Spatial{AsBuilt: timing.Deviations{Mean: 1.2345678}, Aligned: timing.Deviations{Mean: math.Inf(1)}}}, {Plan: &q}})})
	})
	first, second := at(got, "rows", 0), at(got, "rows", 1)
	if at(first, "name") != p.Array.Name || !near(at(first, "aligned_smear_us"), 1e6*p.Aligned.Smear, 1e-3) || at(first, "unevenness_db") != 1.235 ||
		at(first, "spatial_as_built_mean_db") != 1.235 || at(first, "spatial_mean_db") != nil ||
		!near(at(first, "omni_as_built_up_to_hz"), timing.UpTo(omni.AsBuilt), 1e-3) {
		t.Errorf("%v", first)
	}
	if at(second, "aligned_comb_onset_hz") != nil || at(second, "omni_aligned_up_to_hz") != nil || at(second, "unaligned_comb_onset_hz") == nil {
		t.Errorf("%v", second)
	}
}

// TestSpot: what a plan has for its spot is what the document of the plan has.
func TestSpot(t *testing.T) {
	p, s := demo(t)
	a := *p.Array
	p.Array, a.Wiring.Watt, a.Wiring.IntoOhm = &a, 25, 4
	whole := decoded(t, func(b *bytes.Buffer) error { return document.Write(b, document.OfPlan(p, s)) })
	spot := decoded(t, func(b *bytes.Buffer) error { return document.Write(b, document.OfSpot(&p.Spot)) })
	for _, key := range []string{"delay_us", "level_db", "path_m", "field_arrival_us"} {
		if at(whole, "drivers", 3, key) != at(spot, "drivers", 3, key) || at(spot, "drivers", 3, key) == nil {
			t.Errorf("%s: %v, of the plan %v", key, at(spot, "drivers", 3, key), at(whole, "drivers", 3, key))
		}
	}
	if at(whole, "amplifier", "watt") != 25.0 || at(whole, "amplifier", "into_ohm") != 4.0 {
		t.Errorf("amplifier %v", at(whole, "amplifier"))
	}
	where := at(spot, "spot_m").([]any)
	if got := (r3.Vec{X: where[0].(float64), Y: where[1].(float64), Z: where[2].(float64)}); r3.Norm(r3.Sub(got, a.Spot)) > 1e-5 {
		t.Errorf("at %v, want %v", got, a.Spot)
	}
	circle := decoded(t, func(b *bytes.Buffer) error { return document.Write(b, document.OfPolar(p.Horizontal)) })
	if !near(at(circle, "angle_deg", 1), p.Horizontal.Angle[1]*180/math.Pi, 1e-9) || !near(at(circle, "level_db", 3, 5), p.Horizontal.Aligned[3][5], 1e-2) ||
		len(at(circle, "unaligned_db").([]any)) != len(p.Horizontal.Band) {
		t.Errorf("%v", at(circle, "angle_deg"))
	}
}
