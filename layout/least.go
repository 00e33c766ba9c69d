package layout

import (
	"math"

	"pappus/layout/design"
	"pappus/layout/fit"
	"pappus/layout/solve"

	"gonum.org/v1/gonum/spatial/r3"
)

// Places returns the places on a design's whole body, before any cut and with none left out,
// in the order of their numbers, and about the least radius in m at which the body takes
// the driver on all of them. Errors are those of Build, and that no size
// takes the driver.
func Places(d *design.Design) (mounts []Mount, radius float64, err error) {
	all := *d
	all.Body.HasCut, all.Mounts.Skip, all.Mounts.KeepClear, all.Mounts.KeepClearBelowDeg = false, nil, nil, nil
	whole, err := wholeBody(&all)
	if err != nil {
		return nil, 0, err
	}
	if mounts, err = places(&all, whole, whole); err != nil {
		return nil, 0, err
	}
	number(mounts, whole.Radius)
	factor, err := fit.SmallBody(whole, fitMounts(mounts), all.Driver.Outline, limitsOf(&all), aboutLeast)
	if err != nil {
		return nil, 0, fault(d, "driver", "", err.Error(), err)
	}
	return mounts, factor * whole.Radius, nil
}

// aboutLeast is by what share the radius of Places may be too large: a tenth of the steps in
// which a search goes on from it.
const aboutLeast = 0.005

// mostBall is the largest radius in m that a design may have.
const mostBall = 5.0

// LeastBall returns the least radius in m of a ball on which drivers that are seen at an angle
// in rad from its centre keep apart. The error tells that none is large enough.
func LeastBall(d *design.Design, angle float64) (float64, error) {
	apart := func(radius float64) bool {
		least, err := fit.LeastAngle(radius, d.Driver.Outline, limitsOf(d))
		return err == nil && least <= angle
	}
	if !apart(mostBall) {
		return 0, fault(d, "driver", "", "no ball is large enough for so many", ErrTooManyMounts)
	}
	return solve.Edge(apart, mostBall, d.Driver.FlangeRadius, 1e-5, 0), nil
}

// DomeFloor returns the elevation in degrees, seen from the centre, from which up a driver on
// a ball keeps off the cut and its base; +Inf where none does, not even at the top.
func DomeFloor(d *design.Design) (float64, error) {
	whole, err := wholeBody(d)
	if err != nil {
		return 0, err
	}
	shell, err := cutBody(d, whole)
	if err != nil {
		return 0, err
	}
	floor, found, err := domeFloor(d, whole, shell)
	if err != nil || !found {
		return math.Inf(1), err
	}
	return floor * 180 / math.Pi, nil
}

// Period returns by how many degrees places may be turned about z until they are where they
// were, at least a twelfth of a turn; 360 where only a whole turn does it.
func Period(mounts []Mount) float64 {
	for fold := mostFold; fold > 1; fold-- {
		if repeats(mounts, fold) {
			return 360 / float64(fold)
		}
	}
	return 360
}

// mostFold is the most turns that a body is looked at for: beyond it a turn moves no driver
// by much more than its own width.
const mostFold = 12

// repeats tells whether places are where they were once they are turned by that part of a
// turn.
func repeats(mounts []Mount, fold int) bool {
	sin, cos := math.Sincos(2 * math.Pi / float64(fold))
	for _, m := range mounts {
		p := r3.Vec{X: cos*m.Point.X - sin*m.Point.Y, Y: sin*m.Point.X + cos*m.Point.Y, Z: m.Point.Z}
		near := math.Inf(1)
		for _, q := range mounts {
			near = min(near, r3.Norm2(r3.Sub(p, q.Point)))
		}
		if near > sameHeight*sameHeight*r3.Norm2(m.Point) {
			return false
		}
	}
	return true
}
