package document_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

func TestWoofer(t *testing.T) {
	p, _ := demo(t)
	write := func() string {
		rows, err := timing.Processor(p, nil)
		if err != nil {
			t.Fatal(err)
		}
		var b bytes.Buffer
		if err := writeChannels(&b, p, rows); err != nil {
			t.Fatal(err)
		}
		return b.String()
	}
	if strings.Contains(write(), "woofer") {
		t.Error("speaks of a woofer where there is none")
	}
	a := *p.Array
	p.Array = &a
	a.Woofer = layout.Woofer{Present: true, At: r3.Vec{X: -0.5, Z: 0.2}, Crossover: 450, Order: 4}
	w, err := timing.WithWoofer(&p.Spot)
	if err != nil {
		t.Fatal(err)
	}
	var got struct {
		Processor []struct {
			Name    string
			Filters []struct{ Name string }
		}
		Woofer struct {
			Crossover float64   `json:"crossover_hz"`
			Delay     float64   `json:"array_delay_ms"`
			Matched   bool      `json:"matched"`
			Frequency []float64 `json:"frequency_hz"`
			Sum       []float64 `json:"sum_db"`
		}
	}
	if err := json.Unmarshal([]byte(write()), &got); err != nil {
		t.Fatal(err)
	}
	if diff := got.Woofer.Delay - 1000*w.ArrayDelay; diff > 1e-6 || diff < -1e-6 || got.Woofer.Crossover != 450 || !got.Woofer.Matched {
		t.Errorf("%+v", got.Woofer)
	}
	if n := len(w.Frequency); len(got.Woofer.Frequency) != n || len(got.Woofer.Sum) != n {
		t.Errorf("%d frequencies, %d levels, want %d", len(got.Woofer.Frequency), len(got.Woofer.Sum), n)
	}
	last := got.Processor[len(got.Processor)-1]
	if last.Name != "woofer" || len(last.Filters) != 2 || last.Filters[0].Name != "crossover low-pass" || got.Processor[0].Name != "" {
		t.Errorf("row %+v", last)
	}
}
