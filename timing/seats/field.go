package seats

// Figures are losses in dB against all drivers in step.
type Figures struct {
	Worst, Mean, Between float64
	Seat                 []float64   // of each seat
	Band                 [][]float64 // [seat][band]
}
