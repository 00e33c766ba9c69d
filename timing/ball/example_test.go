package ball_test

import (
	"fmt"
	"math"
	"math/cmplx"

	"pappus/timing/ball"
)

// A driver of 28 mm on a ball of 300 mm, heard from 2 m at 1 kHz: in front, at the
// side and from behind.
func ExampleCap_Pressure() {
	c := ball.Cap{Radius: 0.15, HalfAngle: math.Asin(0.014 / 0.15)}
	k := 2 * math.Pi * 1000 / 343.2
	for _, degrees := range []float64{0, 90, 150} {
		h, err := c.Pressure(k, 2, degrees*math.Pi/180)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%3.0f degrees: %.2f dB of a point source at 1 m\n", degrees, 20*math.Log10(cmplx.Abs(h)))
	}
	_, err := c.Pressure(k, 0.1, 0)
	fmt.Println(err)
	// Output:
	//   0 degrees: -0.61 dB of a point source at 1 m
	//  90 degrees: -5.03 dB of a point source at 1 m
	// 150 degrees: -10.75 dB of a point source at 1 m
	// point inside the ball: r = 0.1 m is under the radius 0.15 m
}

// The same from a table, for two frequencies.
func ExampleTable() {
	c := ball.Cap{Radius: 0.15, HalfAngle: math.Asin(0.014 / 0.15)}
	k := []float64{2 * math.Pi * 1000 / 343.2, 2 * math.Pi * 8000 / 343.2}
	t, err := ball.NewTable(c, k, 0.2, 6, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	at, ok := t.At(2)
	if !ok {
		fmt.Println("outside the table")
		return
	}
	sum := make([]complex128, t.Len())
	gain := []complex128{1, 1}
	for _, gamma := range []float64{0, math.Pi / 2} {
		t.Add(sum, gain, at, gamma, c.Path(2, gamma))
	}
	for _, p := range sum {
		fmt.Printf("%.1f dB\n", 20*math.Log10(cmplx.Abs(p)))
	}
	// Output:
	// -8.1 dB
	// -1.4 dB
}
