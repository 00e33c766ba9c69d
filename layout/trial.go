package layout

import (
	"slices"

	"pappus/layout/body"
	"pappus/layout/design"
	"pappus/layout/fit"
	"pappus/layout/spread"

	"gonum.org/v1/gonum/spatial/r3"
)

// trial asks of a changed design whether all its drivers would fit.
type trial struct {
	design *design.Design
	least  int // mounts that must be left
	// Even places are not spread for each size that is tried: on a ball it is enough
	// that room for all is found, and on a body with faces they stay in these
	// directions. Where that is not the last word, what was found is proved with
	// places spread anew.
	directions []r3.Vec
	prove      bool
}

func newTrial(a *Array, d *design.Design, whole *body.Body) *trial {
	t := &trial{design: d, least: len(a.Mounts)}
	if d.Mounts.On != "even" {
		return t
	}
	if !whole.IsBall() {
		for _, m := range a.Mounts {
			t.directions = append(t.directions, r3.Unit(m.Point))
		}
	}
	if d.Mounts.Over != "dome" && d.Body.HasCut {
		t.least = 1 // the cut takes of what is spread anew what it takes
		t.prove = true
	}
	t.prove = t.prove || t.directions != nil
	return t
}

// with tells whether all drivers fit once a copy of the design is changed.
func (t *trial) with(change func(*design.Design)) bool { return t.fits(change, false) }

// proved tells whether a change does that was found to.
func (t *trial) proved(change func(*design.Design)) bool { return !t.prove || t.fits(change, true) }

func (t *trial) fits(change func(*design.Design), exact bool) bool {
	d := *t.design
	d.Mounts.Skip = slices.Clone(d.Mounts.Skip)
	change(&d)
	whole, err := wholeBody(&d)
	if err != nil {
		return false
	}
	shell, err := cutBody(&d, whole)
	if err != nil {
		return false
	}
	if d.Mounts.On == "even" && whole.IsBall() && !exact {
		return evenHolds(&d, whole, shell)
	}
	var m []Mount
	if t.directions != nil && !exact {
		if m = onBody(whole, t.directions); shell != whole {
			toShell(m, whole, shell)
		}
	} else if p, err := place(&d, whole, shell); err == nil {
		m = p.mounts
	}
	if len(m) < t.least {
		return false
	}
	fits, err := fit.All(shell, fitMounts(m), outlineOf(d.Driver), limitsOf(&d))
	return err == nil && fits
}

// evenHolds tells whether even places for all drivers are found on a ball.
func evenHolds(d *design.Design, whole, shell *body.Body) bool {
	zone, room := evenRoom(d, whole, shell)
	return room >= d.Mounts.Count && spread.Holds(d.Mounts.Count, zone)
}

// evenRoom gives the zone for even places on a ball, and how many at most, which is
// none where not even one at the top fits.
func evenRoom(d *design.Design, whole, shell *body.Body) (spread.Zone, int) {
	zone, room, err := evenZone(d, whole, shell)
	if err != nil {
		return zone, 0
	}
	fits, err := fit.All(shell, fitMounts(onBody(whole, []r3.Vec{{Z: 1}})), outlineOf(d.Driver), limitsOf(d))
	if err != nil || !fits {
		return zone, 0
	}
	return zone, room
}
