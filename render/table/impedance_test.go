package table_test

import (
	"bytes"
	"encoding/csv"
	"math"
	"math/cmplx"
	"strings"
	"testing"
	"unicode/utf8"

	"pappus/layout"
	"pappus/layout/impedance"
	"pappus/render/table"
	"pappus/timing/impedancefit"
)

// coneImpedance is an invented driver's impedance, in a box or not.
func coneImpedance(t testing.TB, hz, qms, qes float64) []impedance.Point {
	t.Helper()
	curve, err := impedance.New(impedance.Driver{Resonance: hz, QMS: qms, QES: qes, DCOhm: 7.1, Inductance: 5e-5})
	if err != nil {
		t.Fatal(err)
	}
	points := make([]impedance.Point, 241)
	for i := range points {
		f := 20 * math.Pow(1000, float64(i)/240)
		z := curve.At(f) * complex(1+0.003*math.Sin(float64(i*i)), 0.003*math.Cos(float64(3*i*i)))
		points[i] = impedance.Point{Frequency: f, Ohm: cmplx.Abs(z), Degrees: cmplx.Phase(z) * 180 / math.Pi}
	}
	return points
}

func measuredDriver(t testing.TB) impedancefit.Study {
	t.Helper()
	points := coneImpedance(t, 150, 3.2, 1.14)
	f, err := impedancefit.Best(points)
	if err != nil {
		t.Fatal(err)
	}
	m := impedancefit.Mechanical{Vas: impedancefit.Estimate{Value: 1.36e-4, Error: 1e-6}, Mass: impedancefit.Estimate{Value: 7.5e-4, Error: 1e-5},
		BL: impedancefit.Estimate{Value: 2.1, Error: 0.02}, Cms: impedancefit.Estimate{Value: 1.5e-3, Error: 1e-5}}
	return impedancefit.Study{Name: "driver.csv", Points: points, Fit: f, Mechanical: &m}
}

func lines(t *testing.T, text string, wanted ...string) {
	t.Helper()
	for _, line := range strings.Split(text, "\n") {
		if utf8.RuneCountInString(line) > 80 {
			t.Errorf("a line of %d columns: %s", utf8.RuneCountInString(line), line)
		}
	}
	flat := strings.Join(strings.Fields(text), " ")
	for _, want := range wanted {
		if !strings.Contains(flat, want) {
			t.Errorf("does not say %q:\n%s", want, text)
		}
	}
}

func TestImpedanceScreen(t *testing.T) {
	m := measuredDriver(t)
	m.Fit.Systematic = true
	m.Fit.LeftOut = []float64{50, 100, 150, 200, 250, 300, 350}
	var plain, coloured bytes.Buffer
	if err := table.ImpedanceScreen(&plain, m, false); err != nil {
		t.Fatal(err)
	}
	if err := table.ImpedanceScreen(&coloured, m, true); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(plain.String(), "\x1b") || !strings.Contains(coloured.String(), "\x1b") {
		t.Error("colour does not follow the flag")
	}
	lines(t, plain.String(), "driver.csv", "241 points from 20 Hz to 20 kHz", "the errors stated are wider for it", "7 stand out", "50 Hz, 100 Hz", "and so on",
		"vas_l = 0.136", "mms_g = 0.75", "Vas 0.1360 +- 0.0010 l", "low voltage", "bridged")
}

// TestImpedanceScreenRough: a fit that is off by more than noise says so, and a coil by a
// power law has no inductance of its own.
func TestImpedanceScreenRough(t *testing.T) {
	m := measuredDriver(t)
	m.Fit.Systematic, m.Fit.Misfit, m.Fit.Coil = true, 0.023, impedancefit.Power
	m.Fit.Exponent = impedancefit.Estimate{Value: 0.7, Error: 0.01}
	var b bytes.Buffer
	if err := table.ImpedanceScreen(&b, m, false); err != nil {
		t.Fatal(err)
	}
	lines(t, b.String(), "a power-law inductance", "within 2.3 percent", "only roughly such a circuit", "true errors may be larger", "exponent 0.700 +- 0.010", "inductance at 1 kHz")
	if strings.Contains(b.String(), "Le ") {
		t.Error(b.String())
	}
}

// TestImpedanceTables: the measured table reads back as a design's driver reads it,
// and the fit has each value with its error.
func TestImpedanceTables(t *testing.T) {
	m := measuredDriver(t)
	var b bytes.Buffer
	if err := table.ImpedanceFit(&b, m); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil || len(rows) != 12 {
		t.Fatalf("%v, %v", rows, err)
	}
	if v := numbersOf(t, rows[1][:3], 1); math.Abs(v[0]-150) > 0.5 || !(v[1] > 0 && v[1] < 1) {
		t.Errorf("%v", rows[1])
	}
	path := t.TempDir() + "/measured.csv"
	m.Points[0].Degrees = 93
	writeFile(t, path, func(b *bytes.Buffer) error { return table.MeasuredImpedance(b, m.Points) })
	got, err := layout.ReadImpedance(path)
	if err != nil || len(got) != len(m.Points) || got[0].Degrees != 90 {
		t.Fatalf("%d points, %v", len(got), err)
	}
	for i, p := range m.Points[1:] {
		if q := got[i+1]; math.Abs(q.Ohm-p.Ohm) > 1e-5 || math.Abs(q.Frequency-p.Frequency) > 1e-4 || math.Abs(q.Degrees-p.Degrees) > 1e-4 {
			t.Fatalf("%+v, want %+v", q, p)
		}
	}
}

func TestLoadScreen(t *testing.T) {
	whole := impedancefit.Cause{Ratio: 1}
	open := impedancefit.Cause{State: impedance.Open, Strings: 1, Length: 3, Ratio: 1.5}
	none := impedancefit.Cause{State: impedance.Open, Strings: 3, Ratio: math.Inf(1)}
	cases := []struct {
		name string
		load impedancefit.Load
		want []string
	}{
		{"whole", impedancefit.Load{Ratio: 1.01, Cause: whole, Sure: true}, []string{"Channel 3: 1.01 times", "So all strings play."}},
		{"open", impedancefit.Load{Ratio: 1.5, Cause: open, Sure: true}, []string{"So a string of 3 is open.", "cannot be told from here"}},
		{"or one driver", impedancefit.Load{Ratio: 1.5, Cause: open, Sure: true, Alike: []impedancefit.Mistake{impedancefit.OneDriver}}, []string{"So a string of 3 is open.", "But a single driver alone would measure the same"}},
		{"resistor", impedancefit.Load{Ratio: 1, Cause: whole, Sure: true, Flat: true}, []string{"No resonance is to be seen in it"}},
		{"dead", impedancefit.Load{Ratio: 50, Cause: none, Sure: true}, []string{"over 20 times", "So no string conducts."}},
		{"shorted", impedancefit.Load{Ratio: 0.02, Cause: open}, []string{"under 0.05 times", "Nothing that is thought of here explains it"}},
		{"unsure", impedancefit.Load{Ratio: 1.2, Cause: open, Others: []impedancefit.Cause{whole}}, []string{"Not sure: perhaps a string of 3 is open, perhaps all strings play"}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			var b bytes.Buffer
			if err := table.LoadScreen(&b, 3, c.load, c.name != "whole", false); err != nil {
				t.Fatal(err)
			}
			lines(t, b.String(), append(c.want, "can overheat and burn")...)
			if strings.Contains(b.String(), "no impedance of its driver") != (c.name == "whole") {
				t.Error(b.String())
			}
		})
	}
}
