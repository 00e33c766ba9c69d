package document_test

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"pappus/render/document"
	"pappus/timing/recording"
	"pappus/timing/verdict"
)

// TestMeasuredJSON: what is not known is null, and what was not recorded is null as a whole.
func TestMeasuredJSON(t *testing.T) {
	p, _ := demo(t)
	nothing := decoded(t, func(b *bytes.Buffer) error { return document.Write(b, document.OfMeasured(p, verdict.Found{})) })
	if nothing["channels"] != nil || nothing["level"] != nil || len(nothing["faults"].([]any)) != 0 {
		t.Errorf("nothing: %v", nothing)
	}
	no := math.NaN()
	var channels verdict.Channels
	for i, c := range p.Channels {
		one := verdict.Channel{ID: c.ID, Planned: 0.006, Arrival: 0.0060001, Late: 1e-7, Error: 1e-8, Delay: 0.0005, Level: -3.5, LevelError: 0.4, Beside: no, Residual: 0.01, DeadString: 2}
		if i == 1 {
			one = verdict.Channel{ID: c.ID, Planned: 0.006, Arrival: no, Late: no, Error: no, Level: math.Inf(-1), LevelError: no, Beside: no, Silent: true, DeadString: -1}
		}
		if i == 2 {
			one = verdict.Channel{ID: c.ID, Arrival: no, Late: no, Error: no, Delay: no, Level: no, Missing: true, DeadString: -1}
		}
		channels.Channels = append(channels.Channels, one)
	}
	level := verdict.Level{Low: 500, High: 4000, Uneven: 1.25, Frequency: []float64{100, 110, 120, 130}, Measured: []float64{no, 1, 1, 1}, Planned: []float64{0, 0, 0, 0},
		Bands: []verdict.Band{{Centre: 1000, Measured: 1, Planned: 3, Difference: -2, Error: 0.1}, {Centre: 2000}}}
	whole := recording.Measured{Drift: 40, Bands: []recording.Band{{Centre: 1000, Level: 1, Noise: -59}}}
	out := decoded(t, func(b *bytes.Buffer) error {
		return document.Write(b, document.OfMeasured(p, verdict.Found{Channels: &channels, Level: &level, Whole: &whole,
			Faults: []verdict.Fact{{Code: verdict.Silent, Channels: []int{2}}}, Notes: []verdict.Fact{{Code: verdict.NoWire}}}))
	})
	rows := out["channels"].([]any)
	first, second := rows[0].(map[string]any), rows[1].(map[string]any)
	if len(rows) != len(p.Channels) || first["dead_string"] != 3.0 || first["proposed_delay_us"] != 500.0 || first["late_us"] != 0.1 || first["level_db"] != -3.5 || first["level_error_db"] != 0.4 || first["beside_db"] != nil {
		t.Errorf("the first channel: %v", first)
	}
	if second["dead_string"] != nil || second["measured_us"] != nil || second["level_db"] != nil || second["silent"] != true {
		t.Errorf("the silent channel: %v", second)
	}
	if third := rows[2].(map[string]any); third["proposed_delay_us"] != nil || third["missing"] != true || third["level_db"] != nil || !strings.HasPrefix(out["notes"].([]any)[0].(string), "without a wire") {
		t.Errorf("a missing channel: %v, notes %v", third, out["notes"])
	}
	l := out["level"].(map[string]any)
	smooth, raw, bands := l["smoothed_db"].([]any), l["measured_db"].([]any), l["bands"].([]any)
	if raw[0] != nil || smooth[0] != nil || math.Abs(smooth[2].(float64)-1) > 1e-3 || l["drift_ppm"] != 40.0 {
		t.Errorf("the level: %v", l)
	}
	if b := bands[0].(map[string]any); b["difference_db"] != -2.0 || b["signal_to_noise_db"] != 60.0 || bands[1].(map[string]any)["signal_to_noise_db"] != nil {
		t.Errorf("bands: %v", bands)
	}
	if !strings.HasPrefix(out["faults"].([]any)[0].(string), "channel 2 is silent") {
		t.Errorf("faults: %v", out["faults"])
	}
}
