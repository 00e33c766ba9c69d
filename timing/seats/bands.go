package seats

import (
	"math"

	"pappus/timing/band"
)

// OfBands returns the figures of losses in dB by seat and third octave, its exact centres in
// Hz among those of Frequencies, with the weights of the seats, each of which is one place. A seat's loss is of the mean
// share of the energy in step over the frequencies, of which each third has as many as
// Frequencies says.
func OfBands(loss [][]float64, centre, weight []float64) Figures {
	frequency, _, _ := Frequencies()
	out := Figures{Worst: math.Inf(-1), Band: loss}
	for _, row := range loss {
		share, all := 0.0, 0.0
		for b, v := range row {
			low, high := band.Edges(centre[b], 3)
			from, to := band.Range(frequency, low, high)
			count := float64(to - from)
			share, all = share+count*math.Pow(10, -v/10), all+count
		}
		out.Seat = append(out.Seat, decibels(share/all))
		out.Worst = max(out.Worst, out.Seat[len(out.Seat)-1])
	}
	f := Field{Weight: weight, Seat: []int{len(weight) - 1}}
	out.Mean, out.Between = overBands(loss, f.weights())
	return out
}
