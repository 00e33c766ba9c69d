package document_test

import (
	"bytes"
	"encoding/json"
	"math"
	"testing"

	"pappus/render/document"
	"pappus/render/words"
	"pappus/timing"
)

// TestWriteLevel reads the file back and sets it against the levelling.
func TestWriteLevel(t *testing.T) {
	p, _ := demo(t)
	l, err := timing.Level(&p.Spot)
	if err != nil {
		t.Fatal(err)
	}
	c, err := l.Correction(48000)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := document.Write(&b, document.OfLevel(p, l, c, nil)); err != nil {
		t.Fatal(err)
	}
	var got struct {
		Unit     string  `json:"level_unit"`
		After    float64 `json:"uneven_after_db"`
		Sections []struct {
			Name string
			B0   float64
		}
		Nulls   []struct{ Why string }
		Filters []struct {
			Taps    int
			Latency float64 `json:"latency_ms"`
		}
		Curve struct {
			After []float64 `json:"after_db"`
		}
	}
	if err := json.Unmarshal(b.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	if got.Unit != "dB SPL" || math.Abs(got.After-l.UnevenAfter) > 1e-3 || len(got.Sections) != len(l.Sections) || len(got.Curve.After) != len(l.After) {
		t.Errorf("got %+v", got)
	}
	if got.Sections[0].B0 != c.Sections[0].Coefficients.B0 || got.Sections[0].Name != c.Sections[0].Name {
		t.Errorf("section %+v, want %+v", got.Sections[0], c.Sections[0])
	}
	if got.Nulls[0].Why != words.Nulls(l.Nulls[:1]) {
		t.Errorf("null %+v", got.Nulls[0])
	}
	if f := got.Filters[1]; f.Taps != len(c.Linear.Samples) || math.Abs(f.Latency-1000*c.Linear.Latency) > 1e-3 {
		t.Errorf("filter %+v", f)
	}
	b.Reset()
	if err := document.Write(&b, document.OfLevel(p, timing.Levelling{}, timing.Correction{}, nil)); err != nil || bytes.Contains(b.Bytes(), []byte("null,")) {
		t.Errorf("empty lists are no lists: %v\n%s", err, b.String())
	}
}
