package box

import (
	"errors"
	"fmt"
	"math"

	"pappus/layout/prose"
)

// What can be wrong with what is asked.
var (
	ErrVolume   = errors.New("nothing is left of the volume")
	ErrValue    = errors.New("must be finite and above 0")
	ErrMissing  = errors.New("the driver's values do not tell")
	ErrTarget   = errors.New("the Q that is asked for is out of reach")
	ErrStuffing = errors.New("stuffing out of range")
)

// Room is what of a body's volume drivers share. All in m3.
type Room struct {
	Gross, Walls, Drivers, Braces float64
	Net                           float64
	Share                         float64 // of each driver
}

// Divide takes walls, n drivers of a volume each (from the flange back; the
// makers' sheets have it, or take the magnet and the basket for cylinders), and
// braces off a gross volume in m3. Errors wrap [ErrVolume] and [ErrValue].
func Divide(gross, walls, driver, braces float64, n int) (Room, error) {
	for _, v := range []struct {
		name string
		m3   float64
	}{{"gross volume", gross}, {"walls", walls}, {"driver", driver}, {"braces", braces}} {
		if !(v.m3 >= 0) || math.IsInf(v.m3, 1) {
			return Room{}, prose.Errorf("%w: the volume of %s is %g m3", ErrVolume, v.name, v.m3)
		}
	}
	if n < 1 {
		return Room{}, fmt.Errorf("the number of drivers %w, not %d", ErrValue, n)
	}
	r := Room{Gross: gross, Walls: walls, Drivers: float64(n) * driver, Braces: braces}
	if r.Net = gross - walls - r.Drivers - braces; !(r.Net > 0) {
		return Room{}, prose.Errorf("%w: %g m3 less %g m3", ErrVolume, gross, walls+r.Drivers+braces)
	}
	r.Share = r.Net / float64(n)
	return r, nil
}

// positive gives an error for a value that is not finite and above 0.
func positive(name string, v float64) error {
	if !(v > 0) || math.IsInf(v, 1) {
		return prose.Errorf("%s %w, not %g", name, ErrValue, v)
	}
	return nil
}
