package figure

import (
	"math"
	"pappus/layout/prose"

	"gonum.org/v1/plot"
)

// frequencyTicks marks 1, 2 and 5 of each decade with a label, the rest
// without.
type frequencyTicks struct{}

// Ticks returns the ticks between two frequencies in Hz.
func (frequencyTicks) Ticks(low, high float64) []plot.Tick {
	var ticks []plot.Tick
	for d := math.Floor(math.Log10(low)); d <= math.Log10(high); d++ {
		for n := 1; n <= 9; n++ {
			f := float64(n) * math.Pow(10, d)
			if f < low*(1-1e-9) || f > high*(1+1e-9) {
				continue
			}
			t := plot.Tick{Value: f}
			if n == 1 || n == 2 || n == 5 {
				t.Label = short(f)
			}
			ticks = append(ticks, t)
		}
	}
	return ticks
}

// short writes a number with k for thousands.
func short(v float64) string {
	if math.Abs(v) >= 1000 {
		return prose.Number(v/1000, 4) + "k"
	}
	return prose.Number(v, 4)
}

// evenTicks marks whole multiples of a step.
type evenTicks struct{ step float64 }

// Ticks returns the ticks between two values.
func (e evenTicks) Ticks(low, high float64) []plot.Tick {
	var ticks []plot.Tick
	for i := math.Ceil(low/e.step - 1e-9); i*e.step <= high+1e-9*e.step; i++ {
		v := i * e.step
		ticks = append(ticks, plot.Tick{Value: v, Label: decimal(v, e.step)})
	}
	return ticks
}

// decimal writes a value to the places that a step needs, with a true minus.
func decimal(v, step float64) string {
	places := max(0, int(math.Ceil(-math.Log10(step)-1e-9)))
	return prose.Minus(prose.Fixed(v, places))
}

// niceStep returns 1, 2 or 5 times a power of ten, such that a span has at
// most so many steps.
func niceStep(span float64, most int) float64 {
	least := span / float64(most)
	decade := math.Pow(10, math.Floor(math.Log10(least)))
	for _, n := range []float64{1, 2, 5} {
		if n*decade >= least*(1-1e-9) {
			return n * decade
		}
	}
	return 10 * decade
}
