package layout

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"pappus/layout/body"
	"pappus/layout/design"
	"pappus/layout/fit"
	"pappus/layout/poly"
	"pappus/layout/spread"

	"gonum.org/v1/gonum/spatial/r3"
)

// What can be wrong with places for drivers, beside what package design names.
var (
	ErrNoMounts      = errors.New("no driver left")
	ErrTooManyMounts = errors.New("too many drivers")
	ErrNoSuchMount   = errors.New("no such mount")
)

// placed are the mounts of a design, and how many of its places carry none.
type placed struct {
	mounts []Mount
	empty  []Mount // that are skipped
	places int     // in all
	// Left out: below the cut or, of even places, too near it; below the lowest
	// elevation; in a kept-clear zone.
	cut, low, kept int
}

// place gives the places that carry a driver, numbered. Their faces are those
// of the shell: the body that is left after the cut.
func place(d *design.Design, whole, shell *body.Body) (placed, error) {
	var p placed
	m, err := places(d, whole, shell)
	if err != nil {
		return p, err
	}
	p.places = len(m)
	if shell != whole {
		toShell(m, whole, shell)
	}
	if m, err = aboveCut(d, whole, shell, m); err != nil {
		return p, err
	}
	p.cut = p.places - len(m)
	m = slices.DeleteFunc(m, func(m Mount) bool { return tooLow(d.Mounts.KeepClearBelowDeg, m.Point) })
	p.low = p.places - p.cut - len(m)
	zone := spread.Zone{Clear: keptClear(d, whole)}
	m = slices.DeleteFunc(m, func(m Mount) bool { return !zone.Contains(r3.Unit(m.Point)) })
	p.kept = p.places - p.cut - p.low - len(m)

	number(m, whole.Radius)
	for _, id := range d.Mounts.Skip {
		// Those of a list are looked for where it is read.
		if d.Mounts.On != "list" && id > len(m) && len(m) > 0 {
			return p, fault(d, "mounts.skip", "", fmt.Sprintf("there is no mount %d; must be from 1 to %d", id, len(m)), ErrNoSuchMount)
		}
	}
	for _, m := range m {
		if slices.Contains(d.Mounts.Skip, m.ID) {
			p.empty = append(p.empty, m)
		} else {
			p.mounts = append(p.mounts, m)
		}
	}

	if n := len(p.mounts); n == 0 {
		return p, fault(d, "mounts", "", fmt.Sprintf(
			"no driver left: of %d places %d are cut away, %d kept clear and %d skipped; must leave at least 1",
			p.places, p.cut, p.low+p.kept, len(p.empty)), ErrNoMounts)
	} else if n > design.MaxDrivers {
		return p, fault(d, "mounts", "", fmt.Sprintf("%d drivers; must be at most %d", n, design.MaxDrivers), ErrTooManyMounts)
	}
	return p, nil
}

// places gives all the places on the whole body, not numbered.
func places(d *design.Design, whole, shell *body.Body) ([]Mount, error) {
	switch d.Mounts.On {
	case "vertices":
		return onVertices(whole), nil
	case "edges":
		return onEdges(whole), nil
	case "even":
		return even(d, whole, shell)
	case "list":
		return listed(d, whole)
	default:
		return onFaces(whole), nil
	}
}

// aboveCut leaves out the mounts whose cut-out is not all above the cut. Of places
// that were spread evenly over the whole body, which are the program's own, it leaves
// out all where the cut or its base is in the driver's way, unless it is everywhere.
func aboveCut(d *design.Design, whole, shell *body.Body, m []Mount) ([]Mount, error) {
	cutout := d.Driver.CutoutRadius
	m = slices.DeleteFunc(m, func(m Mount) bool { return !clearsCut(shell, m, cutout) })
	if d.Mounts.On != "even" || d.Mounts.Over == "dome" || !shell.IsCut {
		return m, nil
	}
	top := onBody(whole, []r3.Vec{{Z: 1}})
	if shell != whole {
		toShell(top, whole, shell)
	}
	off, err := fit.OffBase(shell, fitMounts(append(top, m...)), d.Driver.Outline, limitsOf(d))
	if err != nil {
		return nil, fault(d, "driver", "", err.Error(), err)
	}
	if !off[0] {
		return m, nil
	}
	var free []Mount
	for i := range m {
		if off[i+1] {
			free = append(free, m[i])
		}
	}
	return free, nil
}

// clearsCut says whether a mount's cut-out is all above the cut plane, or
// touches it.
func clearsCut(shell *body.Body, m Mount, cutout float64) bool {
	if !shell.IsCut {
		return true
	}
	reach := cutout * math.Sqrt(max(0, 1-m.Normal.Z*m.Normal.Z))
	return m.Point.Z-reach >= shell.Cut-shell.Radius*rounding
}

// tooLow says whether a point is below an elevation seen from the centre.
func tooLow(below *float64, p r3.Vec) bool {
	if below == nil {
		return false
	}
	elevation := math.Atan2(p.Z, math.Hypot(p.X, p.Y))
	return elevation < *below*math.Pi/180-rounding
}

// rounding is how far a length over the radius, or an angle in rad, may be off
// by rounding: a thousandth of what anyone could build.
const rounding = 1e-9

// toShell turns faces of the whole body into those that a cut left of it; -1
// where it left nothing. No two faces look the same way.
func toShell(m []Mount, whole, shell *body.Body) {
	left := facePlanes(shell)
	for i := range m {
		if m[i].Face < 0 {
			continue
		}
		n := whole.Normal(m[i].Face)
		m[i].Face = slices.IndexFunc(left, func(p plane) bool { return r3.Norm(r3.Sub(p.normal, n)) < sameNormal })
		if m[i].Face >= 0 && shell.Faces[m[i].Face].Base() {
			m[i].Face = -1
		}
	}
}

// sameNormal is how near unit normals of one face are: far over rounding, far
// under the turn from one face to the next of the finest geodesic.
const sameNormal = 1e-6

// sameHeight is how near, over the radius, heights in one ring are.
const sameHeight = 1e-6

// number sorts mounts from the top down, ring by ring, each ring
// counter-clockwise from x, and numbers them from 1. radius is the body's, in m.
// Mounts of a list have their numbers and their order already.
func number(m []Mount, radius float64) {
	if len(m) > 0 && m[0].ID > 0 {
		return
	}
	slices.SortStableFunc(m, func(a, b Mount) int { return cmp.Compare(b.Point.Z, a.Point.Z) })
	for from := 0; from < len(m); {
		to := from + 1
		for to < len(m) && m[from].Point.Z-m[to].Point.Z <= sameHeight*radius {
			to++
		}
		slices.SortStableFunc(m[from:to], func(a, b Mount) int {
			from, _ := poly.Bearing(a.Point)
			to, _ := poly.Bearing(b.Point)
			return cmp.Compare(from, to)
		})
		from = to
	}
	for i := range m {
		m[i].ID = i + 1
	}
}
