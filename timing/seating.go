package timing

import "pappus/timing/seats"

// Seating is how one set of delays serves all seats, by losses in dB against all drivers in
// step over the thirds from 500 Hz to 8 kHz, of the direct sound.
type Seating struct {
	Aim        string    // even, worst, mean or round
	Thirds     []float64 // Hz, exact centres
	MiddleSeat int       // index into Array.Seats: the nearest to the middle of all
	Planned    seats.Figures
	Middle     seats.Figures // with delays for the middle seat alone
	Without    seats.Figures // without delays
	Bound      seats.Figures // with any phase for each channel and frequency: no processing of these channels does better
	Counts     []SeatCount

	MiddleDelay []float64 // s, of each driver, as planned for the middle seat alone and as it can be set
}

// SeatCount is what a number of channels would leave at the seats.
type SeatCount struct {
	Channels int
	seats.Figures
}
