package ball_test

import (
	"fmt"
	"math"
	"math/cmplx"

	"pappus/timing/ball"
)

// A driver of 28 mm on a ball of 300 mm, heard from 2 m at 1 kHz: in front, at the
// side and from behind.
func ExampleSeries() {
	c := ball.Cap{Radius: 0.15, HalfAngle: math.Asin(0.014 / 0.15)}
	s, err := ball.NewSeries(c, []float64{2 * math.Pi * 1000 / 343.2}, 1e-9)
	if err != nil {
		fmt.Println(err)
		return
	}
	s.Move(2)
	h := make([]complex128, 1)
	for _, degrees := range []float64{0, 90, 150} {
		s.At(h, degrees*math.Pi/180)
		fmt.Printf("%3.0f degrees: %.2f dB of a point source at 1 m\n", degrees, 20*math.Log10(cmplx.Abs(h[0])/2))
	}
	// Output:
	//   0 degrees: -0.61 dB of a point source at 1 m
	//  90 degrees: -5.03 dB of a point source at 1 m
	// 150 degrees: -10.75 dB of a point source at 1 m
}
